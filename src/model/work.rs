//! Work: what a step does, in facts.

use super::text::{Expression, Name, Text};
use super::verb::Verb;
use crate::source::Span;

/// One thing that a step does.
#[derive(Debug, Clone)]
pub struct Work {
    /// What is done.
    pub verb: Verb,
    /// The place of the verb.
    pub verb_span: Span,
    /// What it is done to: pieces, copies, edges, notions.
    pub touches: Vec<Name>,
    /// Plain words that finish the sentence.
    pub words: Vec<Text>,
    /// How far from the edge.
    pub allowance: Option<Expression>,
    /// How long a stitch.
    pub stitch: Option<Expression>,
    /// How long a gap is left for turning.
    pub leave: Option<Expression>,
    /// How much longer one edge may be, eased in.
    pub ease: Option<Expression>,
    /// How long a gathered edge becomes.
    pub gather: Option<Expression>,
    /// How many buttons, holes or fasteners.
    pub count: Option<Expression>,
    /// Whether it is sewn by hand.
    pub by_hand: bool,
    /// More to print.
    pub note: Option<Text>,
    /// The whole fact.
    pub span: Span,
}

/// What a booklet hands to a shared part.
#[derive(Debug, Clone)]
pub struct Param {
    /// The name by which the part calls it.
    pub name: Name,
    /// What was handed over.
    pub text: Text,
    /// The same as a formula, where it is one.
    pub expression: Option<Expression>,
}

//! Work: what a step does, in facts.

use super::text::{Expression, Name, Text};
use crate::source::Span;

/// What a work fact does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[allow(missing_docs, reason = "each is the word of the trade")]
pub enum Verb {
    Cut,
    Fuse,
    Quilt,
    Mark,
    Pin,
    Sew,
    Topstitch,
    Baste,
    Press,
    Turn,
    Trim,
    Clip,
    Fold,
    Hem,
    Bind,
    Gather,
    Box,
    Open,
    Close,
    Attach,
}

impl Verb {
    /// All verbs, as they are written.
    pub const ALL: &'static [(&'static str, Verb)] = &[
        ("cut", Verb::Cut),
        ("fuse", Verb::Fuse),
        ("quilt", Verb::Quilt),
        ("mark", Verb::Mark),
        ("pin", Verb::Pin),
        ("sew", Verb::Sew),
        ("topstitch", Verb::Topstitch),
        ("baste", Verb::Baste),
        ("press", Verb::Press),
        ("turn", Verb::Turn),
        ("trim", Verb::Trim),
        ("clip", Verb::Clip),
        ("fold", Verb::Fold),
        ("hem", Verb::Hem),
        ("bind", Verb::Bind),
        ("gather", Verb::Gather),
        ("box", Verb::Box),
        ("open", Verb::Open),
        ("close", Verb::Close),
        ("attach", Verb::Attach),
    ];

    /// The verb that is written so.
    pub fn parse(word: &str) -> Option<Verb> {
        Verb::ALL.iter().find(|(written, _)| *written == word).map(|(_, verb)| *verb)
    }

    /// How it is written.
    pub fn word(self) -> &'static str {
        Verb::ALL.iter().find(|(_, verb)| *verb == self).map_or("", |(written, _)| written)
    }

    /// Whether thread holds layers together at a distance from an edge.
    pub fn joins_at_allowance(self) -> bool {
        matches!(self, Verb::Sew | Verb::Box)
    }

    /// Whether the machine makes stitches.
    pub fn stitches(self) -> bool {
        matches!(
            self,
            Verb::Sew
                | Verb::Topstitch
                | Verb::Baste
                | Verb::Hem
                | Verb::Bind
                | Verb::Gather
                | Verb::Box
                | Verb::Quilt
                | Verb::Close
        )
    }
}

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

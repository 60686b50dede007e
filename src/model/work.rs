//! Work: what a step does, in facts.

use super::prose::Block;
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
    pub touches: Vec<Touch>,
    /// What is caught in the seam: it lies between the layers and is held by the same stitches.
    pub caught: Vec<Touch>,
    /// Plain words that finish the sentence.
    pub words: Vec<Text>,
    /// How far from the edge.
    pub allowance: Option<Expression>,
    /// How long a stitch.
    pub stitch: Option<Expression>,
    /// How long a gap is left.
    pub leave: Option<Expression>,
    /// Where the gap begins; `None` where that is the maker's.
    pub leave_at: Option<Place>,
    /// What the gap is for: a notion that closes it, or `slit`; `None` for a gap to turn through.
    pub leave_for: Option<Name>,
    /// Where on its edge the work begins and ends; `None` for the end of the edge.
    pub part: [Option<Place>; 2],
    /// How much longer one edge is, eased in.
    pub ease: Option<Expression>,
    /// How long a gathered edge becomes.
    pub gather: Option<Expression>,
    /// How many buttons, holes or fasteners.
    pub count: Option<Expression>,
    /// Whether it is sewn by hand.
    pub by_hand: bool,
    /// How a raw edge is finished.
    pub finish: Option<EdgeFinish>,
    /// How far layers lie over each other.
    pub lap: Option<Expression>,
    /// How far apart lines of quilting are.
    pub gap: Option<Expression>,
    /// How far up its seams, from the stitching, a corner is boxed that was not cut out.
    pub up: Option<Expression>,
    /// Whether layers count as one from here on.
    pub as_one: bool,
    /// Which sides lie on each other, where `with:` says it; without it a seam has the right ones together.
    pub with: Option<Together>,
    /// Whether the wrong sides lie on each other, by `with:` or in plain words: the allowances are then outside.
    pub wrong_sides: bool,
    /// Whether the ends of a strip that binds are turned in.
    pub ends_in: bool,
    /// How what is put lies to what is named last; `None` for all other work.
    pub around: Option<Around>,
    /// More to print.
    pub note: Vec<Block>,
    /// The whole fact.
    pub span: Span,
}

/// Which sides of two layers lie on each other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Together {
    /// The right sides: the allowances are inside once the work is turned.
    RightSides,
    /// The wrong sides: the allowances are outside.
    WrongSides,
}

impl Together {
    /// All, as they are written.
    pub const ALL: &'static [(&'static str, Together)] =
        &[("right sides together", Together::RightSides), ("wrong sides together", Together::WrongSides)];
}

/// How one tube lies to another.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Around {
    /// It lies inside the other.
    Into,
    /// It lies round the other.
    Over,
}

impl Around {
    /// Both, as they are written.
    pub const ALL: &'static [(&'static str, Around)] = &[("into", Around::Into), ("over", Around::Over)];

    /// How it is written.
    pub fn word(self) -> &'static str {
        Around::ALL.iter().find(|(_, around)| *around == self).map_or("", |(word, _)| word)
    }
}

/// One thing that a work fact names.
#[derive(Debug, Clone)]
pub struct Touch {
    /// The name.
    pub name: Name,
    /// The row that it stands in, if it stands in one: edges that follow each other and count as one.
    pub row: Option<usize>,
}

/// How a raw edge is kept from fraying.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs, reason = "each is the word of the trade")]
pub enum EdgeFinish {
    Overlock,
    Zigzag,
    Pinking,
    Binding,
    Hand,
}

impl EdgeFinish {
    /// All, as they are written.
    pub const ALL: &'static [(&'static str, EdgeFinish)] = &[
        ("overlock", EdgeFinish::Overlock),
        ("zigzag", EdgeFinish::Zigzag),
        ("pinking", EdgeFinish::Pinking),
        ("binding", EdgeFinish::Binding),
        ("hand", EdgeFinish::Hand),
    ];

    /// How it is written.
    pub fn word(self) -> &'static str {
        EdgeFinish::ALL.iter().find(|(_, finish)| *finish == self).map_or("", |(word, _)| word)
    }
}

/// A place on the edge that a work fact names first.
#[derive(Debug, Clone)]
pub struct Place {
    /// How far along.
    pub far: Far,
    /// The edge beside it, or `start` or `end`, from which one counts; `None` for the start.
    pub from: Option<Name>,
    /// As written.
    pub text: Text,
}

/// How far along an edge a place lies.
#[derive(Debug, Clone)]
pub enum Far {
    /// At the end that one counts from.
    Here,
    /// At the other end.
    There,
    /// Halfway.
    Centre,
    /// At a notch, counted from 1.
    Notch(usize),
    /// A length, or a share of the edge.
    Along(Expression),
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

/// All that a part was handed, in each size.
#[derive(Debug, Clone, Default)]
pub struct Handed(Vec<Vec<Param>>);

impl Handed {
    /// What a part was handed in each of all sizes, in their order.
    pub fn new(by_size: Vec<Vec<Param>>) -> Handed {
        Handed(by_size)
    }

    /// What it was handed in one size.
    pub fn of(&self, size: usize) -> &[Param] {
        self.0.get(size).map_or(&[], Vec::as_slice)
    }

    /// All that it was handed, each as it is written once.
    pub fn each(&self) -> impl Iterator<Item = &Param> {
        let all = self.0.iter().enumerate();
        all.flat_map(move |(at, own)| {
            let before = &self.0[..at];
            let known = move |param: &&Param| {
                before
                    .iter()
                    .flatten()
                    .any(|other| (other.name.span, other.text.span) == (param.name.span, param.text.span))
            };
            own.iter().filter(move |param| !known(param))
        })
    }
}

impl Param {
    /// A name behind a dot of what was handed over, such as `front.top` for `main.top`; `None` where the name is
    /// not this parameter's with a dot, or no single name was handed over.
    pub fn behind_dot(&self, name: &str) -> Option<String> {
        let (owner, field) = name.split_once('.')?;
        let text = self.text.text.trim();
        let is_name =
            text.chars().all(|letter| letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == '_');
        (owner == self.name.text && is_name && !text.is_empty()).then(|| format!("{text}.{field}"))
    }
}

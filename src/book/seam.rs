//! The line of a seam: what is told of the work below the words of its step.

use serde::{Deserialize, Serialize};

use super::amount::Value;
use super::prose::Block;

/// A fact of a step's work, as it is told below its words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SeamFact {
    /// The verb: the key of its word.
    pub verb: String,
    /// What it is done to: the sides that are laid on each other, or one list.
    pub what: Vec<Vec<DoneTo>>,
    /// What its stitches catch, by the names on the page.
    pub caught: Vec<String>,
    /// How or where, in the author's plain words.
    pub words: Vec<String>,
    /// How far from the edge.
    pub allowance: Option<Value>,
    /// How long a stitch.
    pub stitch: Option<Value>,
    /// Which sides lie on each other: the key of the words; empty where the work does not say.
    pub together: String,
    /// Whether the ends of a strip are turned in.
    pub ends_in: bool,
    /// The key of the word between what is put and what it is put into or over; empty for all other work.
    pub around: String,
    /// Whether it is sewn by hand.
    pub by_hand: bool,
    /// How long a gap is left.
    pub leave: Option<Value>,
    /// How much is eased in.
    pub ease: Option<Value>,
    /// How long a gathered edge becomes.
    pub gather: Option<Value>,
    /// How far apart lines of quilting are.
    pub gap: Option<Value>,
    /// How far up from its corner a base is sewn across.
    pub up: Option<Value>,
    /// How far layers lie over each other.
    pub lap: Option<Value>,
    /// How an edge is finished: the key of its word; empty where it is not.
    pub finish: String,
    /// What the gap is for, by its name on the page; empty for one to turn through.
    pub leave_for: String,
    /// Where the seam begins and ends, and where its gap lies.
    pub places: Vec<PlaceFact>,
    /// How many buttons, holes or fasteners.
    pub count: Option<Value>,
    /// More to know, in the author's words; empty where there is nothing.
    pub note: Vec<Block>,
    /// The sizes that it is for; empty where it is for all that have the step.
    pub sizes: Vec<usize>,
}

/// What a fact is done to, by the names on the page.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct DoneTo {
    /// The piece, the edge or the notion; whose the parts and the marks are, where there are any; `all` for everything.
    pub name: String,
    /// Several edges of it; empty where `name` says all.
    pub parts: Vec<String>,
    /// How many sides it has, where those are all that it has; else 0.
    pub sides: usize,
    /// The marks at which it is done.
    pub marks: Vec<String>,
    /// Whether those are several places.
    pub several: bool,
}

/// A place on an edge.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PlaceFact {
    /// What lies there: the key of its word.
    pub role: String,
    /// How far along; `None` where a word says it.
    pub far: Option<Value>,
    /// The key of the word that says how far, a number or a name behind it (`middle` for a gap in the middle); empty
    /// where a figure does.
    pub point: String,
    /// The edge that one counts from, by its name on the page; the key of a word for an end; empty where
    /// one counts from the beginning and a word says how far.
    pub from: String,
}

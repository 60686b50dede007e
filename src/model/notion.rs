//! What is bought beside fabric: the kinds of notions, and the figures that each kind takes.

use std::collections::BTreeMap;

use super::matter::Matter;
use super::prose::Block;
use super::size::BySize;
use super::sourcing::Sourcing;
use super::text::{Name, Text};

/// A figure that is stated of a notion.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum NotionFigure {
    /// How long one is.
    Length,
    /// How wide one is, or the width of what it takes.
    Width,
    /// How large one is, across or by its number in the trade.
    Size,
    /// How much of it is needed in all.
    Amount,
    /// How many.
    Count,
}

impl NotionFigure {
    /// All of them, as they are written.
    pub const ALL: &'static [(&'static str, NotionFigure)] = &[
        ("length", NotionFigure::Length),
        ("width", NotionFigure::Width),
        ("size", NotionFigure::Size),
        ("amount", NotionFigure::Amount),
        ("count", NotionFigure::Count),
    ];

    /// The figure that is written so.
    pub fn parse(word: &str) -> Option<NotionFigure> {
        NotionFigure::ALL.iter().find(|(written, _)| *written == word).map(|(_, figure)| *figure)
    }

    /// How it is written.
    pub fn word(self) -> &'static str {
        NotionFigure::ALL.iter().find(|(_, figure)| *figure == self).map_or("", |(written, _)| written)
    }
}

/// What sort of thing a notion is, where that matters.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// A zip: it has edges and is open or shut.
    Zip,
    /// Sewing thread: every stitch uses it.
    Thread,
    /// A button: it goes through a hole.
    Button,
    /// A snap, a hook, a buckle, a ring or a rivet.
    Fastener,
    /// Elastic: it passes through a casing or is sewn on.
    Elastic,
    /// Webbing, ribbon, cord or ready binding.
    Tape,
    /// Stuffing, beads, or a pad made to a size.
    Filling,
    /// Anything else.
    Other,
}

/// A kind of notion: how it is written, what it is, and the figures that it takes.
#[derive(Debug, Clone, Copy)]
pub struct KindDoc {
    /// How it is written.
    pub word: &'static str,
    /// The kind.
    pub kind: Kind,
    /// The figures that it takes.
    pub takes: &'static [NotionFigure],
    /// Words of the trade that a designer may try, and that mean this kind.
    pub also: &'static [&'static str],
}

/// Every kind.
#[rustfmt::skip]
pub const KINDS: &[KindDoc] = {
    use NotionFigure::{Amount, Count, Length, Size, Width};
    &[
        KindDoc { word: "zip", kind: Kind::Zip, takes: &[Length, Width, Amount, Count], also: &["zipper", "fly"] },
        KindDoc { word: "thread", kind: Kind::Thread, takes: &[Length, Amount, Count], also: &["cotton", "yarn"] },
        KindDoc { word: "button", kind: Kind::Button, takes: &[Size, Count], also: &["toggle", "bead"] },
        KindDoc { word: "fastener", kind: Kind::Fastener, takes: &[Length, Width, Size, Count], also: &["snap", "hook", "buckle", "ring", "rivet", "clasp", "clip", "popper", "eyelet", "stud", "press_stud", "hook_and_eye", "cord_lock"] },
        KindDoc { word: "elastic", kind: Kind::Elastic, takes: &[Length, Width, Amount, Count], also: &["rubber", "shirring"] },
        KindDoc { word: "tape", kind: Kind::Tape, takes: &[Length, Width, Amount, Count], also: &["webbing", "ribbon", "cord", "binding", "braid", "strap", "lace", "piping", "drawstring", "bias_binding", "hook_and_loop", "twill_tape"] },
        KindDoc { word: "filling", kind: Kind::Filling, takes: &[Length, Width, Size, Amount, Count], also: &["stuffing", "pad", "pillow", "beads", "foam", "insert"] },
        KindDoc { word: "other", kind: Kind::Other, takes: &[Length, Width, Size, Amount, Count], also: &[] },
    ]
};

impl Kind {
    /// The kind in the table.
    pub fn doc(self) -> &'static KindDoc {
        // Every kind has its line, which a test holds; the last one takes every figure.
        KINDS.iter().find(|doc| doc.kind == self).unwrap_or(&KINDS[KINDS.len() - 1])
    }
}

/// Something bought beside fabric.
#[derive(Debug, Clone)]
pub struct Notion {
    /// Its name in the files.
    pub id: Name,
    /// What sort it is.
    pub kind: Kind,
    /// How it is drawn, as the author says or by its name; `None` where neither tells.
    pub look: Option<Matter>,
    /// The sizes that need it (by their place in `sizes`); `None` for all.
    pub sizes: Option<Vec<usize>>,
    /// Its name on the page.
    pub name: Text,
    /// The same for several of it; `None` where the author gives none.
    pub plural: Option<Text>,
    /// The figures that are stated of it.
    pub figures: BTreeMap<NotionFigure, BySize>,
    /// More to know.
    pub note: Vec<Block>,
    /// Where to find it.
    pub sourcing: Sourcing,
}

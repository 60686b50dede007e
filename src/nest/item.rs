//! What is laid on what, and what comes of it: pieces, the strip, places, faults.

use std::hash::{Hash, Hasher};

/// How a piece may be turned on its cloth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Turns {
    /// Only as drawn: cloth with a nap or a one-way print.
    Fixed,
    /// As drawn, or turned end for end.
    Half,
    /// By any number of quarters: cloth without a grain.
    Quarter,
}

/// A piece to lay.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// The closed cutting line, flattened, in mm; the grain runs along y.
    pub outline: Vec<[f64; 2]>,
    /// How it may be turned.
    pub turns: Turns,
    /// Whether it may be mirrored left to right.
    pub may_flip: bool,
    /// Lies with its left edge on x = 0, the fold of doubled cloth. It is never turned by a quarter
    /// nor mirrored left to right; if it may be turned at all, it may be mirrored along the strip,
    /// which is half a turn of the opened piece.
    pub on_fold: bool,
}

/// By the bits of the numbers: outlines that are equal are told as equal, and nothing else is.
impl Hash for Item {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.outline.len().hash(state);
        self.outline.iter().flatten().for_each(|number| number.to_bits().hash(state));
        (self.turns, self.may_flip, self.on_fold).hash(state);
    }
}

/// The cloth.
#[derive(Clone, Copy, Debug)]
pub struct Strip {
    /// The usable width, mm; half of it for doubled cloth.
    pub width: f64,
    /// The least distance between two pieces, mm; none is kept from the edges.
    pub gap: f64,
}

impl Hash for Strip {
    fn hash<H: Hasher>(&self, state: &mut H) {
        (self.width.to_bits(), self.gap.to_bits()).hash(state);
    }
}

/// How long to search.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Effort {
    /// A first look.
    Quick,
    /// Up to 15 pieces in a twentieth of a second or so, 60 within a second.
    #[default]
    Usual,
    /// Many times as long.
    Thorough,
}

impl Effort {
    /// Boxes that may be compared for so many rectangles. However few they are, each mix of their poses is tried.
    pub(super) fn boxes(self, count: usize) -> u64 {
        let square = (count * count) as u64;
        match self {
            Effort::Quick => 12_000_000.min(square * 25_000).max(4_000_000),
            Effort::Usual => 80_000_000.min(square * 25_000).max(12_000_000),
            Effort::Thorough => 400_000_000.min(square * 125_000),
        }
    }

    /// Pairs that may be looked at for so many outlines, at each stage of the search. Each effort goes on where
    /// a lesser one ends, and so never finds a longer layout.
    pub(super) fn outlines(self, count: usize) -> Vec<u64> {
        let square = (count * count) as u64;
        let [quick, usual] = [(square * 400).min(300_000), (square * 4_000).min(9_000_000)];
        match self {
            Effort::Quick => vec![quick],
            Effort::Usual => vec![quick, usual],
            Effort::Thorough => vec![quick, usual, usual + (square * 300_000).min(180_000_000)],
        }
    }
}

/// Where a piece lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// The number of the piece among the items.
    pub item: usize,
    /// The left edge of the turned outline's box, mm.
    pub x: f64,
    /// The edge of that box nearest the start, mm.
    pub y: f64,
    /// Quarters, turned clockwise as seen with y downwards, after any mirroring.
    pub quarter_turns: u8,
    /// Mirrored left to right, before any turning.
    pub flipped: bool,
}

/// All pieces laid.
#[derive(Clone, Debug, PartialEq)]
pub struct Layout {
    /// How much of the strip is used, mm.
    pub length: f64,
    /// One for each item, in the order of the items.
    pub places: Vec<Place>,
}

/// Why no layout can be made.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NestFault {
    /// A piece is wider than the strip in every way it may lie.
    TooWide {
        /// Its number.
        item: usize,
        /// The least width in which it may lie, mm.
        width: f64,
    },
    /// An outline encloses nothing, or has a coordinate that is no number.
    NoArea {
        /// Its number.
        item: usize,
    },
    /// The strip's width is not above 0, or the gap is below 0.
    NoStrip,
}

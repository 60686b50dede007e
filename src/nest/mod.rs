//! Lays pieces on a strip of cloth as short as can be found: rectangles by their boxes, all others
//! by their true outlines, which may nest into each other's hollows.
//!
//! Lengths are in mm; x runs across the strip from its left edge, y along it from its start. The
//! search is bounded by counted steps, never by a clock, and draws its numbers from a generator
//! with a fixed start: the same pieces always get the same layout.

mod boxes;
mod outline;
mod pose;
mod random;
mod raster;
mod settle;
mod shapes;
mod skyline;
mod slabs;

use boxes::{Crate, Size};
use pose::{Piece, least_width};
use settle::Laid;

/// Units of the box search in one mm.
const UNITS: f64 = 1e6;

/// How a piece may be turned on its cloth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
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

/// The cloth.
#[derive(Clone, Copy, Debug)]
pub struct Strip {
    /// The usable width, mm; half of it for doubled cloth.
    pub width: f64,
    /// The least distance between two pieces, mm; none is kept from the edges.
    pub gap: f64,
}

/// How long to search.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Effort {
    /// A first look.
    Quick,
    /// Up to 60 pieces within a second or so.
    #[default]
    Usual,
    /// Several times as long.
    Thorough,
}

impl Effort {
    /// Boxes that may be compared, and columns' reaches for pieces of other outlines.
    fn budgets(self) -> (u64, u64) {
        match self {
            Effort::Quick => (12_000_000, 8_000_000),
            Effort::Usual => (80_000_000, 56_000_000),
            Effort::Thorough => (400_000_000, 400_000_000),
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

/// Lays every item on the strip.
///
/// # Errors
/// Every fault of the strip and of the items; then nothing is laid.
pub fn nest(items: &[Item], strip: &Strip, effort: Effort) -> Result<Layout, Vec<NestFault>> {
    if !(strip.width > 0.0 && strip.width.is_finite() && strip.gap >= 0.0 && strip.gap.is_finite()) {
        return Err(vec![NestFault::NoStrip]);
    }
    let mut pieces = Vec::with_capacity(items.len());
    let mut faults = Vec::new();
    for (item, each) in items.iter().enumerate() {
        let twin = items.iter().position(|other| other == each).unwrap_or(item);
        match Piece::new(each, twin, strip.width, strip.gap) {
            None => faults.push(NestFault::NoArea { item }),
            Some(piece) if piece.poses.is_empty() => {
                let width = least_width(each);
                faults.push(NestFault::TooWide { item, width });
            }
            Some(piece) => pieces.push(piece),
        }
    }
    if !faults.is_empty() {
        return Err(faults);
    }
    let (compared, reaches) = effort.budgets();
    let all_boxes = pieces.iter().all(|piece| piece.is_box);
    let share = if all_boxes { compared } else { compared / 8 };
    let mut laid = lay_boxes(&pieces, strip, share);
    if !all_boxes {
        laid = shapes::lay(&pieces, strip.width + strip.gap, strip.gap, laid, reaches);
    }
    Ok(layout(&pieces, &laid))
}

/// Lays the pieces by their boxes.
fn lay_boxes(pieces: &[Piece], strip: &Strip, budget: u64) -> Vec<Laid> {
    // Far below 2^63: a strip of many kilometres still fits.
    let units = |length: f64| ((length + strip.gap) * UNITS).round() as i64;
    let width = units(strip.width);
    let crates: Vec<Crate> = pieces
        .iter()
        .map(|piece| {
            let size = |pose: &pose::Pose| Size { width: units(pose.width).min(width), height: units(pose.height) };
            Crate::new(piece.poses.iter().map(size).collect(), piece.on_fold)
        })
        .collect();
    let stack = boxes::stack(&crates, width, budget);
    let laid = |spot: &boxes::Spot| Laid { pose: spot.pose, x: spot.x as f64 / UNITS, y: spot.y as f64 / UNITS };
    stack.spots.iter().map(laid).collect()
}

/// The layout in the terms of the caller. The strip and the pieces were grown by half the gap on
/// every side, so that corners are where they were.
fn layout(pieces: &[Piece], laid: &[Laid]) -> Layout {
    let mut layout = Layout { length: 0.0, places: Vec::with_capacity(laid.len()) };
    for (item, (piece, at)) in pieces.iter().zip(laid).enumerate() {
        let pose = &piece.poses[at.pose];
        layout.length = layout.length.max(at.y + pose.height);
        layout.places.push(Place { item, x: at.x, y: at.y, quarter_turns: pose.quarter_turns, flipped: pose.flipped });
    }
    layout
}

//! The way from pieces to their places: by their boxes first, then by their true outlines.

use super::bound::least_length;
use super::boxes::stack;
use super::crates::{Crate, Size, Spot as Corner};
use super::field::Field;
use super::heap::Spot;
use super::item::{Effort, Item, Layout, NestFault, Place, Strip};
use super::pose::{Piece, Pose, least_width};
use super::search::{Goal, search};

/// Units of the box search in one mm.
const UNITS: f64 = 1e6;

/// Boxes that are compared at most where outlines are laid afterwards.
const BOXES_FIRST: u64 = 200_000;

/// Lays every item on the strip. What was laid before is remembered as long as the program runs and asks again: the
/// same pieces are laid alike.
///
/// # Errors
/// Every fault of the strip and of the items; then nothing is laid.
pub fn nest(items: &[Item], strip: &Strip, effort: Effort) -> Result<Layout, Vec<NestFault>> {
    nest_within(items, strip, effort, 0.0)
}

/// Lays every item on the strip, and is content with the first layout that is found to be no longer than
/// `enough`, in mm.
///
/// # Errors
/// Every fault of the strip and of the items; then nothing is laid.
pub fn nest_within(items: &[Item], strip: &Strip, effort: Effort, enough: f64) -> Result<Layout, Vec<NestFault>> {
    remembered(items, strip, effort, enough.to_bits())
}

#[comemo::memoize]
fn remembered(items: &[Item], strip: &Strip, effort: Effort, enough: u64) -> Result<Layout, Vec<NestFault>> {
    lay(items, strip, effort, f64::from_bits(enough))
}

fn lay(items: &[Item], strip: &Strip, effort: Effort, enough: f64) -> Result<Layout, Vec<NestFault>> {
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
    let enough = enough.max(least_length(&pieces, strip.width, strip.gap));
    if pieces.iter().all(|piece| piece.is_box) {
        return Ok(layout(&pieces, &lay_boxes(&pieces, strip, effort.boxes(pieces.len()), enough)));
    }
    let known = lay_boxes(&pieces, strip, BOXES_FIRST, enough);
    let mut field = Field::new(&pieces, strip.gap);
    let spot = |(laid, poses): (&Laid, &Vec<usize>)| Spot { body: poses[laid.pose], at: [laid.x, laid.y] };
    let known: Vec<Spot> = known.iter().zip(&field.poses).map(spot).collect();
    let goal = Goal { enough: enough + strip.gap, budgets: &effort.outlines(pieces.len()) };
    let spots = search(&mut field, strip.width + strip.gap, known, &goal);
    let laid = |(spot, poses): (&Spot, &Vec<usize>)| {
        let pose = poses.iter().position(|body| *body == spot.body).unwrap_or(0);
        Laid { pose, x: spot.at[0], y: spot.at[1] }
    };
    let laid: Vec<Laid> = spots.iter().zip(&field.poses).map(laid).collect();
    Ok(layout(&pieces, &laid))
}

/// Where a piece lies: the corner of its grown outline's box.
struct Laid {
    pose: usize,
    x: f64,
    y: f64,
}

/// Lays the pieces by their boxes, until they are no longer than `enough`.
fn lay_boxes(pieces: &[Piece], strip: &Strip, budget: u64, enough: f64) -> Vec<Laid> {
    // Far below 2^63: a strip of many kilometres still fits.
    let units = |length: f64| ((length + strip.gap) * UNITS).round() as i64;
    let width = units(strip.width);
    let crates: Vec<Crate> = pieces
        .iter()
        .map(|piece| {
            let size = |pose: &Pose| Size { width: units(pose.width).min(width), height: units(pose.height) };
            Crate::new(piece.poses.iter().map(size).collect(), piece.on_fold)
        })
        .collect();
    let stack = stack(&crates, width, budget, units(enough));
    let laid = |spot: &Corner| Laid { pose: spot.pose, x: spot.x as f64 / UNITS, y: spot.y as f64 / UNITS };
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

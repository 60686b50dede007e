//! The way from pieces to their places: by their boxes first, then by their true outlines.

use super::boxes::stack;
use super::crates::{Crate, Size, Spot};
use super::item::{Effort, Item, Layout, NestFault, Place, Strip};
use super::pose::{Piece, Pose, least_width};
use super::settle::Laid;
use super::shapes;

/// Units of the box search in one mm.
const UNITS: f64 = 1e6;

/// Lays every item on the strip. What was laid before is remembered as long as the program runs and asks again: the
/// same pieces are laid alike.
///
/// # Errors
/// Every fault of the strip and of the items; then nothing is laid.
pub fn nest(items: &[Item], strip: &Strip, effort: Effort) -> Result<Layout, Vec<NestFault>> {
    remembered(items, strip, effort)
}

#[comemo::memoize]
fn remembered(items: &[Item], strip: &Strip, effort: Effort) -> Result<Layout, Vec<NestFault>> {
    lay(items, strip, effort)
}

fn lay(items: &[Item], strip: &Strip, effort: Effort) -> Result<Layout, Vec<NestFault>> {
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
            let size = |pose: &Pose| Size { width: units(pose.width).min(width), height: units(pose.height) };
            Crate::new(piece.poses.iter().map(size).collect(), piece.on_fold)
        })
        .collect();
    let stack = stack(&crates, width, budget);
    let laid = |spot: &Spot| Laid { pose: spot.pose, x: spot.x as f64 / UNITS, y: spot.y as f64 / UNITS };
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

/// For trying.
pub fn trial(items: &[Item], strip: &Strip, budget: u64) -> (Layout, f64) {
    let pieces: Vec<Piece> = items.iter().enumerate().map(|(item, each)| {
        let twin = items.iter().position(|other| other == each).unwrap_or(item);
        Piece::new(each, twin, strip.width, strip.gap).unwrap()
    }).collect();
    let mut field = super::field::Field::new(&pieces);
    let spots = super::search::first(&mut field, strip.width + strip.gap);
    let to_laid = |field: &super::field::Field, spots: &[super::heap::Spot]| -> Vec<Laid> {
        spots.iter().zip(&field.poses).map(|(spot, poses)| Laid {
            pose: poses.iter().position(|body| *body == spot.body).unwrap(), x: spot.at[0], y: spot.at[1] }).collect()
    };
    let first = layout(&pieces, &to_laid(&field, &spots)).length;
    let spots = super::search::shrink(&mut field, strip.width + strip.gap, spots, 0.0, budget);
    (layout(&pieces, &to_laid(&field, &spots)), first)
}

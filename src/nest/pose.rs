//! The ways a piece may lie: as drawn, turned, flipped over, whatever its cloth allows.

use super::item::{Item, Turns};
use super::outline::{Parts, Point, area, bounds, cleaned, grown, turned};

/// Outlines whose points differ by less than this (mm) are the same.
const SAME: f64 = 1e-6;

/// One way to lie.
pub(super) struct Pose {
    pub(super) quarter_turns: u8,
    pub(super) flipped: bool,
    /// The true outline's box, mm.
    pub(super) width: f64,
    pub(super) height: f64,
    /// The outline grown by half the gap; its box's corner is the origin, and its box is wider and longer
    /// than the true one by the gap.
    pub(super) outline: Parts,
}

/// A piece with its ways to lie.
pub(super) struct Piece {
    pub(super) poses: Vec<Pose>,
    pub(super) on_fold: bool,
    /// mm²
    pub(super) area: f64,
    /// The number of the first piece that is like this one in every way.
    pub(super) twin: usize,
    /// The outline fills its box.
    pub(super) is_box: bool,
}

impl Piece {
    /// Prepares a piece; None when its outline encloses nothing. Poses wider than the strip are
    /// left out, so there may be none.
    pub(super) fn new(item: &Item, twin: usize, width: f64, gap: f64) -> Option<Piece> {
        if item.outline.iter().flatten().any(|value| !value.is_finite()) {
            return None;
        }
        let cleaned = cleaned(&item.outline);
        let covered: f64 = cleaned.iter().map(|part| area(part)).sum();
        let [left, top, right, bottom] = bounds(item.outline.iter().copied());
        let boxed = (right - left) * (bottom - top);
        if covered.is_nan() || covered <= SAME || boxed <= SAME {
            return None;
        }
        let mut piece = Piece {
            poses: Vec::new(),
            on_fold: item.on_fold,
            area: covered,
            twin,
            is_box: covered >= boxed - SAME * (right - left + bottom - top),
        };
        let mut seen: Vec<Vec<Point>> = Vec::new();
        for &(quarter_turns, flipped) in ways(item) {
            let outline = turned(&item.outline, quarter_turns, flipped);
            let [_, _, wide, high] = bounds(outline.iter().copied());
            let corners = turned(cleaned.first()?, quarter_turns, flipped);
            if wide > width + SAME || seen.iter().any(|known| same(known, &corners)) {
                continue;
            }
            seen.push(corners);
            let parts = grown(&outline, gap / 2.0);
            let [from_x, from_y, ..] = bounds(parts.iter().flatten().copied());
            let home = |part: &Vec<Point>| part.iter().map(|[x, y]| [x - from_x, y - from_y]).collect();
            piece.poses.push(Pose {
                quarter_turns,
                flipped,
                width: wide,
                height: high,
                outline: parts.iter().map(home).collect(),
            });
        }
        Some(piece)
    }
}

/// Quarter turns and whether flipped, the plainest first. A piece on the fold lies with its fold
/// edge at the fold in each: turned end for end it is the mirror image along the strip, which the
/// doubled cloth turns into half a turn of the opened piece.
fn ways(item: &Item) -> &'static [(u8, bool)] {
    const ALL: [(u8, bool); 8] =
        [(0, false), (2, false), (1, false), (3, false), (0, true), (2, true), (1, true), (3, true)];
    match (item.on_fold, &item.turns, item.may_flip) {
        (true, Turns::Fixed, _) => &[(0, false)],
        (true, _, _) => &[(0, false), (2, true)],
        (false, Turns::Fixed, false) => &ALL[..1],
        (false, Turns::Fixed, true) => &[(0, false), (0, true)],
        (false, Turns::Half, false) => &ALL[..2],
        (false, Turns::Half, true) => &[(0, false), (2, false), (0, true), (2, true)],
        (false, Turns::Quarter, false) => &ALL[..4],
        (false, Turns::Quarter, true) => &ALL,
    }
}

/// Whether two closed outlines are one and the same, wherever they begin and whichever way they
/// run.
fn same(one: &[Point], other: &[Point]) -> bool {
    let near = |a: Point, b: Point| (a[0] - b[0]).abs() < SAME && (a[1] - b[1]).abs() < SAME;
    let count = one.len();
    count == other.len()
        && (0..count).any(|shift| {
            (0..count).all(|index| near(one[index], other[(index + shift) % count]))
                || (0..count).all(|index| near(one[index], other[(shift + count - index) % count]))
        })
}

/// The least width in which a piece may lie, mm.
pub(super) fn least_width(item: &Item) -> f64 {
    let widths = ways(item).iter().map(|&(quarter_turns, flipped)| {
        let [left, _, right, _] = bounds(turned(&item.outline, quarter_turns, flipped));
        right - left
    });
    widths.fold(f64::INFINITY, f64::min)
}

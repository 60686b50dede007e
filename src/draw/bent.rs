//! The allowance of an edge that bends, turned out of sight: no straight cut gives that.

use kurbo::{BezPath, Point, Vec2};

use super::part::Part;
use super::trace::{beside, closed_line, corners, edge_to_edge, length, nearest, place, stretch};

/// Folds the allowance of a bent edge out of sight, so deep, in mm on paper; whether it could be.
pub(super) fn fold_away(part: &mut Part, edge: &str, deep: f64) -> bool {
    let lines = part.rim(edge).map(|rim| rim.lines.clone()).unwrap_or_default();
    let holds = part.holds(edge);
    if lines.is_empty() || lines.len() != holds.len() {
        return false;
    }
    for (line, (_, inner)) in lines.iter().zip(holds) {
        let Some(left) = without(&part.visible, line, inner, deep) else { return false };
        part.visible = left;
    }
    part.hidden.push(edge.to_owned());
    true
}

/// What is turned: the band between two distances from the edge, from side to side of what is seen.
pub(super) fn band(line: &BezPath, inner: Vec2, (from, to): (f64, f64), visible: &BezPath) -> BezPath {
    let points = corners(line);
    let at = |far: f64| edge_to_edge(&beside(&points, inner, far), visible);
    // The crease is a side of what is seen: a hair inside it, one meets both its ends.
    let (outer, mut inward) = (at(from + 0.01), at(to));
    inward.reverse();
    closed_line(&[outer, inward].concat())
}

/// A closed line with one of its sides moved inwards.
fn without(outline: &BezPath, line: &BezPath, inner: Vec2, deep: f64) -> Option<BezPath> {
    let edge = corners(line);
    let crease = edge_to_edge(&beside(&edge, inner, deep), outline);
    let (first, last) = (*crease.first()?, *crease.last()?);
    let rest = beyond(outline, &edge)?;
    let (from, to) = (nearest(&rest, first), nearest(&rest, last));
    let kept = stretch(&rest, from.min(to), from.max(to));
    let crease: Vec<Point> = match from <= to {
        true => crease.into_iter().rev().collect(),
        false => crease,
    };
    (kept.len() > 1).then(|| closed_line(&[kept, crease].concat()))
}

/// The closed line from one end of a side to the other, the long way round: without the side.
fn beyond(outline: &BezPath, side: &[Point]) -> Option<Vec<Point>> {
    let mut ring = corners(outline);
    let start = *ring.first()?;
    if ring.last()?.distance(start) > 1e-6 {
        ring.push(start);
    }
    let whole = length(&ring);
    let (middle, _) = place(side, length(side) / 2.0)?;
    let at = |point: Point| nearest(&ring, point);
    let (one, two, middle) = (at(*side.first()?), at(*side.last()?), at(middle));
    let (low, high) = (one.min(two), one.max(two));
    let twice: Vec<Point> = ring.iter().chain(&ring[1..]).copied().collect();
    Some(match (low..high).contains(&middle) {
        true => stretch(&twice, high, low + whole),
        false => stretch(&twice, low, high),
    })
}

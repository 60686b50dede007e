//! Outlines with fewer corners that cover all of the outline they stand for: what a curve gains by that is
//! too little to matter, and the search is the faster.

use super::outline::{Point, bounds};

/// The outline with a corner less at a time, as long as none of them moves its line by more than `most` mm; its
/// box stays as it is. It may come to touch itself where it nearly did before.
pub(super) fn eased(outline: &[Point], most: f64) -> Vec<Point> {
    let mut points = outline.to_vec();
    // Corners in the one order, so that a turn to the left is a corner that stands out.
    if signed(&points) < 0.0 {
        points.reverse();
    }
    let limits = bounds(points.iter().copied());
    while points.len() > 4 {
        let least = (0..points.len())
            .filter_map(|at| Some((at, without(&points, at, limits)?)))
            .min_by(|a, b| a.1.moved.total_cmp(&b.1.moved));
        let Some((at, change)) = least.filter(|(_, change)| change.moved <= most) else { break };
        match change.corner {
            None => {
                points.remove(at);
            }
            Some(corner) => {
                let next = (at + 1) % points.len();
                points[at] = corner;
                points.remove(next);
            }
        }
    }
    points
}

/// What comes of leaving a corner out.
struct Change {
    /// How far the line moves at most, mm.
    moved: f64,
    /// The corner that stands for this one and the next; `None` where this one is left out alone.
    corner: Option<Point>,
}

/// A corner that lies in is left out; two that stand out become the one in which their lines meet.
fn without(points: &[Point], at: usize, limits: [f64; 4]) -> Option<Change> {
    let count = points.len();
    let [before, here, next, last] = [at + count - 1, at, at + 1, at + 2].map(|index| points[index % count]);
    let turn = cross(sub(here, before), sub(next, here));
    if turn <= 0.0 {
        return Some(Change { moved: away(here, before, next), corner: None });
    }
    let (into, out) = (sub(here, before), sub(next, last));
    let meet = cross(into, out);
    if cross(sub(next, here), sub(last, next)) <= 0.0 || meet >= 0.0 {
        return None;
    }
    let part = cross(sub(next, here), out) / meet;
    let corner = [here[0] + into[0] * part, here[1] + into[1] * part];
    let [left, top, right, bottom] = limits;
    let inside = corner[0] >= left && corner[0] <= right && corner[1] >= top && corner[1] <= bottom;
    inside.then(|| Change { moved: away(corner, here, next), corner: Some(corner) })
}

fn sub(one: Point, other: Point) -> Point {
    [one[0] - other[0], one[1] - other[1]]
}

fn cross(one: Point, other: Point) -> f64 {
    one[0] * other[1] - one[1] * other[0]
}

/// The distance of a point from the line through two others.
fn away(point: Point, from: Point, to: Point) -> f64 {
    let along = sub(to, from);
    let long = (along[0] * along[0] + along[1] * along[1]).sqrt();
    let aside = sub(point, from);
    if long > 0.0 { (cross(along, aside) / long).abs() } else { (aside[0] * aside[0] + aside[1] * aside[1]).sqrt() }
}

fn signed(points: &[Point]) -> f64 {
    let next = points.iter().cycle().skip(1);
    points.iter().zip(next).map(|(from, to)| cross(*from, *to)).sum()
}

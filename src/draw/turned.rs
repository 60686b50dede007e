//! The outline of a piece that was turned right side out: its seams lie at the edge, what is not sewn reaches beyond.

use kurbo::{BezPath, Point};

use super::trace::{closed_line, corners, nearest, open_line, place};
use crate::geometry::Shape;

/// Points nearer than this are one, in mm of cloth.
const SAME: f64 = 0.2;

/// The outline as it is turned, in the author's drawing, and the lines of its edges as they lie then, each with its name
/// and whether its seam is hidden.
pub(super) struct Turned {
    pub outline: BezPath,
    pub edges: Vec<(String, BezPath, bool)>,
}

impl Turned {
    /// A piece of which some edges were sewn when it was turned.
    pub fn of(shape: &Shape, is_sewn: impl Fn(&str) -> bool) -> Turned {
        let mut ring = corners(&shape.stitching().path);
        let mut edges = Vec::new();
        for edge in shape.edges().iter().filter(|edge| !edge.on_fold) {
            if is_sewn(&edge.name) {
                edges.push((edge.name.clone(), edge.seam.clone(), true));
                continue;
            }
            let (seam, cut) = (corners(&edge.seam), corners(&edge.cut));
            let ends =
                seam.first().zip(seam.last()).and_then(|(from, to)| on_line(*from, &cut).zip(on_line(*to, &cut)));
            if let (Some((from, to)), [first, _, ..]) = (ends, &seam[..]) {
                reach(&mut ring, (*first, seam[seam.len() - 1]), (from, to));
                edges.push((edge.name.clone(), open_line(&[from, to]), false));
            } else {
                edges.push((edge.name.clone(), edge.seam.clone(), true));
            }
        }
        Turned { outline: closed_line(&ring), edges }
    }
}

/// The point of a line nearest to one.
fn on_line(point: Point, line: &[Point]) -> Option<Point> {
    place(line, nearest(line, point)).map(|(at, _)| at)
}

/// Lets a straight side of a ring reach out to a line beside it.
fn reach(ring: &mut Vec<Point>, (from, to): (Point, Point), (out_from, out_to): (Point, Point)) {
    let count = ring.len();
    let near = |one: Point, other: Point| one.distance(other) < SAME;
    for at in 0..count {
        let (here, next) = (ring[at], ring[(at + 1) % count]);
        let ends = match () {
            () if near(here, from) && near(next, to) => [out_from, out_to],
            () if near(here, to) && near(next, from) => [out_to, out_from],
            () => continue,
        };
        ring.splice(at + 1..at + 1, ends);
        return;
    }
}

//! The mouth of a dart: what the line is shaped like where the dart lies, so that its cloth ends with the edge
//! once it is folded to the side on which it is laid and the edge is cut straight across.
//!
//! Folded to one side, the half of the dart next to that side lies on it as in a mirror held to its leg, and the
//! other half on the first as in a mirror held to the middle (plane geometry).

use kurbo::{Affine, Line, ParamCurve, PathSeg, Point, Vec2};

use super::super::ring::Seg;
use super::ray;

/// Ends that lie closer than this, in mm, are made one point: a step so short would be taken for a crossing.
const SAME_POINT: f64 = 0.02;

/// A dart where it meets one line.
#[derive(Debug, Clone, Copy)]
pub(super) struct Opening {
    pub edge: usize,
    pub point: Point,
    /// Where its two legs meet the line, clockwise.
    pub sides: [Point; 2],
    pub onto_first: bool,
}

/// The runs across the mouth, clockwise; `beside` are those of the side onto which the dart is laid, walking away
/// from it. `None` when they end before the dart does.
pub(super) fn runs(opening: &Opening, beside: &[Seg]) -> Option<Vec<Seg>> {
    let Opening { point, sides, onto_first, .. } = *opening;
    let ways = sides.map(|side| (side - point).normalize());
    let middle = (ways[0] + ways[1]).normalize();
    let own = if onto_first { ways[0] } else { ways[1] };
    let over_leg = Affine::reflect(point, own);
    let over_middle = Affine::reflect(point, middle);
    let lying = 2.0 * middle.dot(own) * own - middle;
    // From the leg to the middle.
    let near: Vec<PathSeg> = until(beside, point, lying)?.into_iter().map(|run| over_leg * run).collect();
    let far: Vec<PathSeg> = near.iter().rev().map(|run| over_middle * run.reverse()).collect();
    let mut runs: Vec<PathSeg> = near.into_iter().chain(far).collect();
    if !onto_first {
        runs = turned(&runs);
    }
    let [first, last] = sides;
    runs = begun_at(runs, first);
    runs = begun_at(turned(&runs), last);
    runs = turned(&runs);
    Some(runs.into_iter().map(|curve| Seg { edge: Some(opening.edge), curve, ends: None }).collect())
}

fn turned(runs: &[PathSeg]) -> Vec<PathSeg> {
    runs.iter().rev().map(PathSeg::reverse).collect()
}

/// The runs from a place near their start: moved there, or led there by a step along the leg.
fn begun_at(mut runs: Vec<PathSeg>, place: Point) -> Vec<PathSeg> {
    let Some(first) = runs.first_mut() else { return runs };
    let start = first.start();
    if (start - place).hypot() > SAME_POINT {
        runs.insert(0, PathSeg::Line(Line::new(place, start)));
        return runs;
    }
    match first {
        PathSeg::Line(line) => line.p0 = place,
        PathSeg::Quad(quad) => quad.p0 = place,
        PathSeg::Cubic(cubic) => cubic.p0 = place,
    }
    runs
}

/// The runs as far as a ray from the point of the dart.
fn until(beside: &[Seg], point: Point, way: Vec2) -> Option<Vec<PathSeg>> {
    let mut runs = Vec::new();
    for seg in beside {
        let ahead = ray::crossings(&seg.curve, point, way).into_iter().filter(|(reach, _)| *reach > 0.0);
        let met = ahead.map(|(_, t)| t).reduce(f64::min);
        match met {
            Some(t) => {
                runs.push(seg.curve.subsegment(0.0..t.clamp(0.0, 1.0)));
                return Some(runs);
            }
            None => runs.push(seg.curve),
        }
    }
    None
}

//! Where the legs of a dart begin: on the stitching line at equal distances from the middle of its mouth, the
//! shorter leg lengthened until both are equal, as a drafter trues a dart (common practice, no source).

use kurbo::{ParamCurve, ParamCurveNearest, PathSeg, Point, Shape as _, Vec2};

use super::super::dart::{Laid, Tip};
use super::super::limits::FARTHEST;
use super::super::part::Spot;
use super::super::ring;
use super::super::shape::Shape;
use super::super::spec::Along;
use super::fault::ShapingFault;
use super::{ray, way};
use crate::measure::{Exact, to_f64};

/// Legs may differ by no more than this share of the width before they are trued: beyond it the dart lies
/// along its edge. It is the sine of 45 degrees.
const SLANT: f64 = 0.71;

/// A dart at an edge, before the lines are shaped. Its two sides stand clockwise.
#[derive(Debug, Clone)]
pub(super) struct Mouth {
    pub edge: usize,
    pub point: Point,
    /// On the stitching line as drawn.
    pub sides: [Point; 2],
    /// The same as places on the runs of that line.
    pub spots: [Spot; 2],
    /// How far the longer leg reaches farther than each.
    pub lengthened: [Vec2; 2],
    /// The direction in which it is laid.
    pub towards: Vec2,
    pub width: Exact,
}

impl Mouth {
    /// Where its legs end on the stitching line, trued.
    pub fn ends(&self) -> [Point; 2] {
        [self.sides[0] + self.lengthened[0], self.sides[1] + self.lengthened[1]]
    }

    /// Whether it is laid onto the side that comes first as one goes round.
    pub fn onto_first(&self) -> bool {
        self.towards.dot(self.sides[1] - self.sides[0]) < 0.0
    }
}

/// What an author says of a dart at an edge.
pub(super) struct Said<'a> {
    pub edge: &'a str,
    pub at: Along,
    pub width: Exact,
    pub tip: Tip,
    pub laid: Option<Laid>,
}

/// Finds the place of a dart on the lines as they were drawn.
pub(super) fn place(shape: &Shape, said: &Said<'_>) -> Result<Mouth, ShapingFault> {
    let edge = edge_of(shape, said.edge)?;
    let off = || ShapingFault::OffEdge { edge: said.edge.to_owned() };
    if !said.width.is_positive() {
        return Err(ShapingFault::NotAboveZero { what: "width" });
    }
    let middle = shape.point_at(said.edge, said.at).ok_or_else(off)?;
    let runs: Vec<PathSeg> = shape.stitching.of_edge(edge).map(|seg| seg.curve).collect();
    let stitching = Point::new(middle.stitching[0], middle.stitching[1]);
    let at = distance_of(&runs, stitching);
    let half = to_f64(said.width) / 2.0;
    let spots = [spot(&runs, at - half).ok_or_else(off)?, spot(&runs, at + half).ok_or_else(off)?];
    let sides = spots.map(|(run, t)| runs[run].eval(t));
    let point = match said.tip {
        Tip::Point([x, y]) => Point::new(to_f64(x), to_f64(y)),
        Tip::Straight(length) if !length.is_positive() => {
            return Err(ShapingFault::NotAboveZero { what: "length" });
        }
        Tip::Straight(length) => stitching + Vec2::new(middle.inward[0], middle.inward[1]) * to_f64(length),
    };
    if point.to_vec2().hypot() > 2.0 * FARTHEST || !lies_on(shape, point, sides) {
        return Err(ShapingFault::OffPiece);
    }
    let legs = sides.map(|side| (side - point).hypot());
    if (legs[0] - legs[1]).abs() > SLANT * (sides[1] - sides[0]).hypot() {
        return Err(ShapingFault::AlongEdge { edge: said.edge.to_owned() });
    }
    let longest = legs[0].max(legs[1]);
    let lengthened = [0, 1].map(|at| match longest - legs[at] {
        // What binary figures leave over is no slant.
        little if little < 1e-6 => Vec2::ZERO,
        _ => (sides[at] - point) * (longest / legs[at] - 1.0),
    });
    let across = (sides[1] - sides[0]).normalize();
    let towards = way::towards(shape, stitching, across, said.laid)?;
    Ok(Mouth { edge, point, sides, spots, lengthened, towards, width: said.width })
}

pub(super) fn edge_of(shape: &Shape, name: &str) -> Result<usize, ShapingFault> {
    shape.edges.iter().position(|edge| edge.name == name).ok_or_else(|| ShapingFault::NoSuchEdge {
        edge: name.to_owned(),
        known: shape.edges.iter().map(|edge| edge.name.clone()).collect(),
    })
}

/// Whether the point lies inside the stitching line and both legs on the cloth.
fn lies_on(shape: &Shape, point: Point, sides: [Point; 2]) -> bool {
    let (cutting, stitching) = (&shape.cutting.outline.path, &shape.stitching.outline.path);
    let shares = (1..10).map(|tenth| f64::from(tenth) / 10.0);
    stitching.contains(point)
        && shares.flat_map(|share| sides.map(|side| point.lerp(side, share))).all(|on| cutting.contains(on))
}

/// How far along the runs the place nearest to a point lies.
fn distance_of(runs: &[PathSeg], point: Point) -> f64 {
    let mut done = 0.0;
    let mut best = (f64::INFINITY, 0.0);
    for run in runs {
        let near = run.nearest(point, 1e-9);
        if near.distance_sq < best.0 {
            best = (near.distance_sq, done + ring::length(&run.subsegment(0.0..near.t)));
        }
        done += ring::length(run);
    }
    best.1
}

/// The place so far along the runs; `None` when that lies beyond an end.
fn spot(runs: &[PathSeg], distance: f64) -> Option<Spot> {
    let mut rest = distance;
    for (at, run) in runs.iter().enumerate() {
        let length = ring::length(run);
        let last = at + 1 == runs.len();
        if rest <= length + if last { 1e-7 } else { 0.0 } {
            return (rest >= -1e-7).then(|| (at, ring::share(run, rest.clamp(0.0, length))));
        }
        rest -= length;
    }
    None
}

/// Where a leg that is sewn on from the stitching line meets the runs of another line.
pub(super) fn met(runs: &[PathSeg], point: Point, side: Point) -> Option<Spot> {
    let leg = (side - point).hypot();
    let mut best: Option<(f64, Spot)> = None;
    for (at, run) in runs.iter().enumerate() {
        for (reach, t) in ray::crossings(run, point, (side - point) / leg) {
            if reach >= leg - 1e-6 && best.is_none_or(|(known, _)| reach < known) {
                best = Some((reach, (at, t)));
            }
        }
    }
    best.map(|(_, spot)| spot)
}

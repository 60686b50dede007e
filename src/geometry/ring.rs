//! A closed line as runs that know their edge: the form in which outlines are read, offset and
//! measured.

use kurbo::{BezPath, CubicBez, ParamCurve, ParamCurveArclen, ParamCurveDeriv, PathSeg, Point, Vec2};

use crate::measure::{Exact, to_f64};

/// Lengths are summed to this accuracy for each run, in mm.
const LENGTH_WITHIN: f64 = 1e-7;

/// A point whose two coordinates are exact, in mm.
pub(super) type ExactPoint = [Exact; 2];

/// One straight or cubic run of a line.
#[derive(Debug, Clone)]
pub(super) struct Seg {
    /// The edge it belongs to, by its place in [`Ring::edges`]. `None`: the short line that squares
    /// a corner off or steps from one allowance to another.
    pub edge: Option<usize>,
    /// The run: a line or a cubic.
    pub curve: PathSeg,
    /// Its two ends, where they are known exactly.
    pub ends: Option<[ExactPoint; 2]>,
}

impl Seg {
    pub fn line(edge: Option<usize>, from: Point, to: Point) -> Self {
        Self { edge, curve: PathSeg::Line(kurbo::Line::new(from, to)), ends: None }
    }

    pub fn is_straight(&self) -> bool {
        matches!(self.curve, PathSeg::Line(_))
    }

    pub fn reversed(&self) -> Self {
        Self { edge: self.edge, curve: self.curve.reverse(), ends: self.ends.map(|[from, to]| [to, from]) }
    }
}

/// The name of an edge, and whether its author counts along it against the clock.
#[derive(Debug, Clone)]
pub(super) struct Named {
    pub name: String,
    pub against: bool,
}

/// A closed line, clockwise, the runs of each edge one after the other.
#[derive(Debug, Clone)]
pub(super) struct Ring {
    /// In the order in which the author wrote them.
    pub edges: Vec<Named>,
    pub segs: Vec<Seg>,
}

impl Ring {
    pub fn name(&self, edge: Option<usize>) -> String {
        edge.and_then(|edge| self.edges.get(edge)).map_or_else(String::new, |edge| edge.name.clone())
    }
}

pub(super) fn point([x, y]: ExactPoint) -> Point {
    Point::new(to_f64(x), to_f64(y))
}

/// The unit direction at `t`, from 0 to 1. A cubic whose control point lies on its end has none
/// there, so it is read a little further in.
pub(super) fn direction(curve: &PathSeg, t: f64) -> Vec2 {
    match curve {
        PathSeg::Line(line) => unit(line.p1 - line.p0),
        other => {
            let cubic = other.to_cubic();
            unit(speed(&cubic, t))
        }
    }
}

/// The derivative of a cubic at `t`, read a little further in where it vanishes.
pub(super) fn speed(cubic: &CubicBez, t: f64) -> Vec2 {
    let size = (cubic.p1 - cubic.p0).hypot() + (cubic.p2 - cubic.p1).hypot() + (cubic.p3 - cubic.p2).hypot();
    let here = cubic.deriv().eval(t).to_vec2();
    if here.hypot() > 1e-6 * size {
        return here;
    }
    let nudged = if t < 0.5 { t + 1e-4 } else { t - 1e-4 };
    cubic.deriv().eval(nudged).to_vec2()
}

fn unit(vector: Vec2) -> Vec2 {
    let length = vector.hypot();
    if length > 0.0 { vector / length } else { Vec2::new(1.0, 0.0) }
}

/// To the left of the walker, which is outwards on a line that runs clockwise.
pub(super) fn outward(direction: Vec2) -> Vec2 {
    Vec2::new(direction.y, -direction.x)
}

pub(super) fn length(curve: &PathSeg) -> f64 {
    curve.arclen(LENGTH_WITHIN)
}

/// The parameter so many mm along a run.
pub(super) fn share(curve: &PathSeg, distance: f64) -> f64 {
    if distance >= length(curve) { 1.0 } else { curve.inv_arclen(distance, LENGTH_WITHIN) }
}

/// The area inside a closed line, in mm²; below 0 when it runs against the clock as seen.
pub(super) fn signed_area(segs: &[Seg]) -> f64 {
    segs.iter().map(|seg| kurbo::ParamCurveArea::signed_area(&seg.curve)).sum()
}

/// The runs as one path, closed or open; runs that do not meet start a new stretch.
pub(super) fn to_path<'a>(segs: impl Iterator<Item = &'a PathSeg>, closed: bool) -> BezPath {
    let mut path = BezPath::new();
    let mut at: Option<Point> = None;
    for curve in segs {
        if at.is_none_or(|at| (at - curve.start()).hypot() > 1e-6) {
            path.move_to(curve.start());
        }
        path.push(curve.as_path_el());
        at = Some(curve.end());
    }
    if closed && at.is_some() {
        path.close_path();
    }
    path
}

//! What lies inside a piece on the sheets: darts, pleats, marks, and the bracket that says which edge is laid on
//! the fold of the cloth.

use kurbo::{BezPath, Circle, Line, Point, Shape as _, Vec2};

use crate::draw::{Detail, Plan};

/// How large the dot of a point is, in mm across its radius.
const DOT: f64 = 0.9;
/// How far the bracket at a fold stands in from it, in mm, where the piece has room.
const BRACKET: f64 = 9.0;

/// The line of one detail with its class; nothing for a name.
pub(super) fn stroke(detail: &Detail) -> Option<(&'static str, BezPath)> {
    match detail {
        Detail::Sewn(one) => Some(("nb-dart", path(*one))),
        Detail::Folded(one) => Some(("nb-inner-fold", path(*one))),
        Detail::Onto(one) => Some(("nb-onto", path(*one))),
        Detail::Laid(one) | Detail::Up(one) => Some(("nb-arrow", arrow(*one))),
        Detail::Dot(point) => Some(("nb-dot", dot(*point))),
        Detail::Placed(path) => Some(("nb-placed", path.clone())),
        Detail::Hole(one) => Some(("nb-hole", path(*one))),
        Detail::Name(..) => None,
    }
}

fn path(line: Line) -> BezPath {
    let mut path = BezPath::new();
    path.move_to(line.p0);
    path.line_to(line.p1);
    path
}

/// A ring with a cross in it, whose middle is the point.
fn dot(point: Point) -> BezPath {
    let mut dot = Circle::new(point, DOT).to_path(0.05);
    for by in [Vec2::new(DOT, 0.0), Vec2::new(0.0, DOT)] {
        dot.extend(path(Line::new(point - by, point + by)));
    }
    dot
}

fn arrow(line: Line) -> BezPath {
    let mut arrow = path(line);
    head(&mut arrow, line.p0, line.p1);
    arrow
}

/// A head at the end of a line that comes from `from`.
fn head(into: &mut BezPath, from: Point, end: Point) {
    let length = (end - from).hypot();
    let back = (from - end) / length.max(1e-9) * length.min(2.6);
    let across = Vec2::new(-back.y, back.x) * 0.45;
    into.move_to(end + back + across);
    into.line_to(end);
    into.line_to(end + back - across);
}

/// The bracket at the fold: along it, inside the piece, with an arrow at each end turned to the edge. `None` for a
/// piece that is not cut on the fold.
pub(super) fn bracket(plan: &Plan) -> Option<(BezPath, Point)> {
    let fold = plan.fold.as_ref()?;
    let segments: Vec<_> = fold.segments().collect();
    let (start, end) = (kurbo::ParamCurve::start(segments.first()?), kurbo::ParamCurve::end(segments.last()?));
    let along = end - start;
    let middle = start.midpoint(end);
    let across = Vec2::new(-along.y, along.x).normalize();
    let inward = if plan.cutting.contains(middle + across * 0.5) { across } else { -across };
    // A narrow piece has no room for the whole depth.
    let room = [0.2, 0.5, 0.8].map(|at| start.lerp(end, at));
    let fits = |depth: f64| room.iter().all(|place| plan.cutting.contains(*place + inward * depth));
    let depth = [BRACKET, BRACKET * 0.6, BRACKET * 0.3].into_iter().find(|depth| fits(*depth * 1.2))?;
    let (first, last) = (start.lerp(end, 0.2), start.lerp(end, 0.8));
    let mut bracket = BezPath::new();
    bracket.move_to(first);
    bracket.line_to(first + inward * depth);
    bracket.line_to(last + inward * depth);
    bracket.line_to(last);
    for end in [first, last] {
        head(&mut bracket, end + inward * depth, end);
    }
    Some((bracket, start.lerp(end, 0.3) + inward * (depth + 1.5)))
}

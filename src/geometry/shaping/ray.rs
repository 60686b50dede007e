//! Where a straight line meets a run. By halving and not by formula: the formula for cubics loses its figures
//! where a curve is nearly of a lower degree, as a gentle waistline is.

use kurbo::{ParamCurve, PathSeg, Point, Vec2};

/// Into how many stretches a curve is divided to look for a change of side.
const STRETCHES: usize = 64;
/// How often a stretch is halved: as often as binary figures have places.
const HALVINGS: usize = 52;

/// Where a run crosses the line through a point: how far from there along `way` (one long; below 0 behind it), and
/// the parameter on the run.
pub(super) fn crossings(run: &PathSeg, from: Point, way: Vec2) -> Vec<(f64, f64)> {
    let side = |t: f64| way.cross(run.eval(t) - from);
    let stretches = if matches!(run, PathSeg::Line(_)) { 1 } else { STRETCHES };
    let mut found = Vec::new();
    for at in 0..stretches {
        let (mut low, mut high) = (at as f64 / stretches as f64, (at + 1) as f64 / stretches as f64);
        let (begins, ends) = (side(low), side(high));
        if (begins > 0.0) == (ends > 0.0) {
            continue;
        }
        for _ in 0..HALVINGS {
            let middle = f64::midpoint(low, high);
            if (side(middle) > 0.0) == (begins > 0.0) { low = middle } else { high = middle }
        }
        let t = if begins == 0.0 { low } else { high };
        found.push(((run.eval(t) - from).dot(way), t));
    }
    found
}

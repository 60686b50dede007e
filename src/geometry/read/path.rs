//! Paths written run by run: straight lines, curves and arcs from point to point.

use kurbo::{Arc, CubicBez, Line, PathSeg, Point, SvgArc, Vec2};

use super::super::fault::ShapeFault;
use super::super::ring::{ExactPoint, Ring, Seg, point};
use super::super::spec::{Run, RunKind};
use super::edges::{ARC_WITHIN, name_edges, too_far};
use crate::measure::{Exact, to_f64};

/// Ends that lie closer together than this, in mm, are one point.
const SAME_POINT: f64 = 1e-9;

/// Reads a path in the order written.
pub(super) fn read(runs: &[Run]) -> Result<Ring, Vec<ShapeFault>> {
    let Some((Run { to: Some(start), kind: RunKind::Start, .. }, rest)) = runs.split_first() else {
        return Err(vec![ShapeFault::StartMisplaced]);
    };
    let closes_early = rest.iter().rev().skip(1).any(|run| run.to.is_none());
    let starts_again = rest.iter().any(|run| run.kind == RunKind::Start);
    if rest.is_empty() || closes_early || starts_again {
        return Err(vec![ShapeFault::StartMisplaced]);
    }
    let mut named: Vec<(String, Seg)> = Vec::new();
    let mut faults = Vec::new();
    let mut at = *start;
    for run in rest {
        let to = run.to.unwrap_or(*start);
        match curves(run, at, to) {
            Ok(curves) => {
                let ends = (curves.len() == 1).then_some([at, to]);
                named.extend(curves.into_iter().map(|curve| (run.name.clone(), Seg { edge: None, curve, ends })));
            }
            Err(fault) => faults.push(fault),
        }
        at = to;
    }
    let gap = (point(at) - point(*start)).hypot();
    if faults.is_empty() && gap > SAME_POINT {
        faults.push(ShapeFault::NotClosed { gap });
    }
    if !faults.is_empty() {
        return Err(faults);
    }
    name_edges(named)
}

/// The lines and cubics of one run; more than one only for an arc.
fn curves(run: &Run, from: ExactPoint, to: ExactPoint) -> Result<Vec<PathSeg>, ShapeFault> {
    let edge = || run.name.clone();
    let (start, end) = (point(from), point(to));
    if too_far(start) || too_far(end) {
        return Err(ShapeFault::TooFar { edge: edge() });
    }
    let together = (end - start).hypot() < SAME_POINT;
    match &run.kind {
        RunKind::Straight | RunKind::Start if together => Err(ShapeFault::Degenerate(edge())),
        RunKind::Straight | RunKind::Start => Ok(vec![PathSeg::Line(Line::new(start, end))]),
        RunKind::Cubic([first, second]) => {
            let cubic = CubicBez::new(start, point(*first), point(*second), end);
            if too_far(cubic.p1) || too_far(cubic.p2) {
                return Err(ShapeFault::TooFar { edge: edge() });
            }
            let reach = (cubic.p1 - start).hypot() + (cubic.p2 - start).hypot();
            if together && reach < SAME_POINT {
                return Err(ShapeFault::Degenerate(edge()));
            }
            Ok(vec![PathSeg::Cubic(cubic)])
        }
        RunKind::Arc { .. } if together => Err(ShapeFault::Degenerate(edge())),
        RunKind::Arc { radius, left, large } => arc(edge(), *radius, !left, *large, [start, end]),
    }
}

fn arc(
    edge: String,
    radius: Exact,
    clockwise: bool,
    large: bool,
    [from, to]: [Point; 2],
) -> Result<Vec<PathSeg>, ShapeFault> {
    if !radius.is_positive() {
        return Err(ShapeFault::Degenerate(edge));
    }
    let radius = to_f64(radius);
    if too_far(Point::new(radius, 0.0)) {
        return Err(ShapeFault::TooFar { edge });
    }
    let needed = (to - from).hypot() / 2.0;
    // A half circle whose radius was reckoned from a root may miss by the last figure of that root.
    if radius < needed - 1e-6 {
        return Err(ShapeFault::ArcTooShort { edge, needed });
    }
    let drawn = SvgArc {
        from,
        to,
        radii: Vec2::new(radius.max(needed), radius.max(needed)),
        x_rotation: 0.0,
        large_arc: large,
        sweep: clockwise,
    };
    let Some(arc) = Arc::from_svg_arc(&drawn) else {
        return Err(ShapeFault::Degenerate(edge));
    };
    let mut cubics: Vec<CubicBez> = Vec::new();
    let mut at = from;
    arc.to_cubic_beziers(ARC_WITHIN, |first, second, end| {
        cubics.push(CubicBez::new(at, first, second, end));
        at = end;
    });
    // The last cubic ends where the author said, to the last figure.
    if let Some(last) = cubics.last_mut() {
        last.p3 = to;
    }
    Ok(cubics.into_iter().map(PathSeg::Cubic).collect())
}

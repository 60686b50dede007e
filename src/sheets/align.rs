//! How the sizes of one piece lie over one another: on the fold, on the middle of what is alike on both sides, and
//! else as their author drew them.

use kurbo::{Affine, BezPath, Point, Rect, Shape as _, Vec2};

use super::window;
use crate::draw::Plan;

/// How far a mirrored corner may lie from its other, in mm.
const NEAR: f64 = 0.05;

/// Where the upper left corner of each size's box lies, on axes that all sizes share.
pub(super) fn corners(plans: &[&Plan]) -> Vec<(f64, f64)> {
    let drawn: Vec<(f64, f64)> = plans.iter().map(|plan| plan.origin).collect();
    if let Some(folds) = plans.iter().map(|plan| fold(plan)).collect::<Option<Vec<Vec2>>>() {
        return drawn.iter().zip(folds).map(|(at, over)| (at.0 + over.x, at.1 + over.y)).collect();
    }
    let middled = |across: bool| plans.iter().all(|plan| is_alike(plan, across));
    let (level, upright) = (middled(true), middled(false));
    let at = |(plan, drawn): (&&Plan, (f64, f64))| {
        let x = if level { -plan.size.0 / 2.0 } else { drawn.0 };
        let y = if upright { -plan.size.1 / 2.0 } else { drawn.1 };
        (x, y)
    };
    plans.iter().zip(drawn).map(at).collect()
}

/// What brings the fold, as its author drew it, onto a line through nought; `None` for a piece without a fold, or one
/// whose fold lies aslant.
fn fold(plan: &Plan) -> Option<Vec2> {
    let edge = plan.fold.as_ref()?.bounding_box();
    let drawn = edge + Vec2::new(plan.origin.0, plan.origin.1);
    match (edge.width() < NEAR, edge.height() < NEAR) {
        (true, _) => Some(Vec2::new(-drawn.x0, 0.0)),
        (_, true) => Some(Vec2::new(0.0, -drawn.y0)),
        _ => None,
    }
}

/// Whether a piece is the same mirrored from side to side, or from top to bottom.
fn is_alike(plan: &Plan, across: bool) -> bool {
    let own = plan.cutting.bounding_box();
    let middle = own.center();
    let turn = match across {
        true => Affine::new([-1.0, 0.0, 0.0, 1.0, 2.0 * middle.x, 0.0]),
        false => Affine::new([1.0, 0.0, 0.0, -1.0, 0.0, 2.0 * middle.y]),
    };
    let mirrored = turn * plan.cutting.clone();
    points(&mirrored).iter().all(|point| lies_on(&plan.cutting, *point))
}

fn points(path: &BezPath) -> Vec<Point> {
    let mut found = Vec::new();
    window::segments(path, &mut |from, to| found.extend([from, from.midpoint(to)]));
    found
}

fn lies_on(path: &BezPath, point: Point) -> bool {
    let mut near = false;
    let room = Rect::from_center_size(point, (2.0 * NEAR, 2.0 * NEAR));
    window::segments(path, &mut |from, to| near |= window::clip(from, to, room).is_some());
    near
}

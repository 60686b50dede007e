//! Lines cut at the edge of a window, so that a sheet holds what it shows and nothing else.

use kurbo::{BezPath, PathEl, Point, Rect};

/// How far a flattened curve may leave the true one, in mm: a tenth of a hairline.
const TOLERANCE: f64 = 0.01;

/// Calls `see` with each straight stretch of a path.
pub(super) fn segments(path: &BezPath, see: &mut dyn FnMut(Point, Point)) {
    let mut start = Point::ZERO;
    let mut last = Point::ZERO;
    kurbo::flatten(path, TOLERANCE, |element| match element {
        PathEl::MoveTo(to) => {
            start = to;
            last = to;
        }
        PathEl::LineTo(to) => {
            see(last, to);
            last = to;
        }
        PathEl::ClosePath => {
            if last.distance(start) > 1e-9 {
                see(last, start);
            }
            last = start;
        }
        // Flattening leaves nothing but straight lines.
        PathEl::QuadTo(..) | PathEl::CurveTo(..) => {}
    });
}

/// The part of a stretch that lies in a window (Liang and Barsky's method); `None` when none does.
pub(super) fn clip(from: Point, to: Point, window: Rect) -> Option<(Point, Point)> {
    let along = to - from;
    let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
    let sides = [
        (-along.x, from.x - window.x0),
        (along.x, window.x1 - from.x),
        (-along.y, from.y - window.y0),
        (along.y, window.y1 - from.y),
    ];
    for (towards, room) in sides {
        if towards == 0.0 {
            if room < 0.0 {
                return None;
            }
            continue;
        }
        let at = room / towards;
        if towards < 0.0 { enter = enter.max(at) } else { leave = leave.min(at) }
    }
    (enter < leave).then(|| (from + along * enter, from + along * leave))
}

/// A path as seen through a window: its stretches inside, joined where they follow each other.
pub(super) fn through(path: &BezPath, window: Rect) -> BezPath {
    let mut seen = BezPath::new();
    let mut last: Option<Point> = None;
    segments(path, &mut |from, to| {
        let Some((from, to)) = clip(from, to, window) else {
            last = None;
            return;
        };
        if last.is_none_or(|last| last.distance(from) > 1e-9) {
            seen.move_to(from);
        }
        seen.line_to(to);
        last = Some(to);
    });
    seen
}

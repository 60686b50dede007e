//! Darts, pleats, tucks and marks on a piece: where they are sewn, folded and laid, and what they are called.

use kurbo::{BezPath, Circle, Line, Point, Shape as _, Vec2};

use super::handled::Handled;
use super::inside::Detail;
use super::page::{Anchor, Page};
use super::part::Part;
use super::trace::open_line;
use crate::resolve::{Inside, Touched};

/// How large the ring of a point is, in mm across its radius.
const RING: f64 = 0.55;

/// What a fact names inside a piece; of a piece named as a whole, all its marks.
pub(super) fn wanted(one: &Handled<'_, '_>, part: &Part) -> Vec<Inside> {
    let named: Vec<Inside> = one
        .work
        .touched()
        .filter_map(|touched| match touched {
            Touched::Inside(copy, inside) if copy == one.copy => Some(inside),
            _ => None,
        })
        .collect();
    let marks = part.inside.iter().map(|(inside, _)| *inside).filter(|inside| matches!(inside, Inside::Mark(_)));
    if named.is_empty() && one.edges.is_empty() { marks.collect() } else { named }
}

/// Draws them on the piece.
pub(super) fn draw(page: &mut Page<'_>, part: &Part, wanted: &[Inside]) {
    let found = || part.inside.iter().filter(|(inside, _)| wanted.contains(inside)).flat_map(|(_, details)| details);
    for detail in found() {
        match detail {
            Detail::Sewn(line) => page.path("stitch", whole(*line)),
            Detail::Folded(line) => page.path("fold", whole(*line)),
            Detail::Onto(line) => page.path("mark", whole(*line)),
            Detail::Laid(line) | Detail::Up(line) => page.path("arrow", whole(*line)),
            Detail::Dot(point) => page.path("mark", ring(*point)),
            Detail::Placed(path) => page.path("mark", path.clone()),
            Detail::Hole(line) => page.path("cut-line", whole(*line)),
            Detail::Name(..) => {}
        }
    }
    // Words keep clear of lines, so that all lines come first.
    for detail in found() {
        if let Detail::Name(at, name) = detail {
            let beside = [0.0, 4.0, -4.0, 8.0, -8.0].map(|down| Vec2::new(2.0, down));
            let right = beside.iter().any(|by| page.label_if_clear(name, *at + *by, Anchor::Start));
            let left =
                |page: &mut Page<'_>, by: &Vec2| page.label_if_clear(name, *at + Vec2::new(-by.x, by.y), Anchor::End);
            // What has no room beside it is told below.
            if !right && !beside.iter().any(|by| left(page, by)) {
                page.caption(name.clone());
            }
        }
    }
}

fn whole(line: Line) -> BezPath {
    open_line(&[line.p0, line.p1])
}

fn ring(point: Point) -> BezPath {
    Circle::new(point, RING).to_path(0.02)
}

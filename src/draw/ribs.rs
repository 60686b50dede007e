//! Lines of quilting on a thing that is made up, as far apart as the fact says, from the middle outwards.

use kurbo::{BezPath, Shape as _, Vec2};

use super::desk::Desk;
use super::past::{copies, held, millimetres};
use super::seen::works;
use super::trace::{edge_to_edge, open_line};
use crate::model::Verb;
use crate::resolve::CopyId;

/// How many lines are drawn to each side of the middle at the most.
const LINES: i32 = 60;
/// How near lines may lie, in mm on paper.
const NEAR: f64 = 1.4;

/// The lines on an outline of a copy; none where no fact says how far apart they are.
pub(super) fn ribs(desk: &Desk<'_, '_>, copy: CopyId, outline: &BezPath, scale: f64) -> Vec<BezPath> {
    let Some((gap, way)) = told(desk, copy) else { return Vec::new() };
    let gap = gap / scale;
    let bounds = outline.bounding_box();
    if gap < NEAR {
        return Vec::new();
    }
    let across = Vec2::new(-way.y, way.x);
    let reach = bounds.width().max(bounds.height()) / 2.0;
    let rows = (-LINES..=LINES).filter_map(|nth| {
        let middle = bounds.center() + across * (f64::from(nth) * gap);
        let line = edge_to_edge(&[middle - way * reach, middle + way * reach], outline);
        (line.len() > 1).then(|| open_line(&line))
    });
    rows.collect()
}

/// How far apart the lines are on a copy, in mm of cloth, and which way they run: level, unless the words say otherwise.
fn told(desk: &Desk<'_, '_>, copy: CopyId) -> Option<(f64, Vec2)> {
    let facts = &desk.edition.draft.facts;
    let member = &desk.edition.cast[copy];
    let from = member.fabric.and_then(|fabric| facts.fabrics[fabric].from.as_ref());
    // What is cut from quilted cloth has the lines of that.
    let is_of = |other: CopyId| {
        other == copy || from.is_some_and(|from| facts.pieces[desk.edition.cast[other].piece].id.text == from.text)
    };
    let mut quilted = works(desk).filter(|work| work.verb == Verb::Quilt);
    let work = quilted.find(|work| copies(&held(work, desk.edition)).into_iter().any(is_of))?;
    let words = work.work.words.iter().map(|words| words.text.to_lowercase()).collect::<Vec<_>>().join(", ");
    let says = |all: &[&str]| all.iter().any(|word| words.contains(word));
    let way = match () {
        () if says(&["slant", "diagonal", "bias"]) => Vec2::new(1.0, -1.0).normalize(),
        () if says(&["upright", "vertical", "top to bottom", "lengthwise"]) => Vec2::new(0.0, 1.0),
        () => Vec2::new(1.0, 0.0),
    };
    Some((work.gap.and_then(millimetres)?, way))
}

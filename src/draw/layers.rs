//! Layers that become one cloth: fused with the iron, quilted, or basted as one; a corner turned back shows both.

use kurbo::{Affine, Point, Rect, Vec2};

use super::cloth::Face;
use super::desk::Desk;
use super::page::{Anchor, Page};
use super::paint::{CLOSE, QUILTING, stitching};
use super::part::Part;
use super::past::{Held, copies, held, millimetres};
use super::told::{Quilting, Way, lines, words_of};
use super::trace::{Side, closed_line, open_line};
use crate::model::{Together, Verb};
use crate::resolve::{CopyId, EditionWork};

pub(super) fn draw<'a>(desk: &Desk<'a, '_>, verb: Verb, scale: f64, beside: bool) -> Option<Page<'a>> {
    let mut drawings = Vec::new();
    let mut looks: Vec<String> = Vec::new();
    let mut again: Vec<String> = Vec::new();
    let mut rows = Page::new(desk.ruler);
    for work in desk.step.works.iter().filter(|work| work.verb == verb) {
        let mut group = copies(&held(work, desk.edition));
        if verb == Verb::Quilt {
            // Quilting is sewn with the outer cloth up.
            group.sort_by_key(|copy| desk.cloth(*copy).is_outer());
        }
        if group.is_empty() {
            continue;
        }
        desk.sewing(&mut rows, work);
        let look = |copy: &CopyId| format!("{:?} {}", desk.edition.cast[*copy].piece, desk.class(*copy, Face::Right));
        let look = group.iter().map(look).collect::<Vec<_>>().join(", ");
        if looks.contains(&look) {
            again.extend(group.iter().map(|copy| desk.name(*copy)));
            continue;
        }
        looks.push(look);
        drawings.push(pile(desk, &group, work, scale)?);
    }
    let mut page = Page::flowed(desk.ruler, drawings, beside, 4.0, desk.sheet);
    rows.take_captions().into_iter().for_each(|words| page.caption(words));
    desk.tell(&mut page, "draw_same_with", &again);
    Some(page)
}

/// Whether every fact of a verb bastes whole layers that are one from then on.
pub(super) fn are_one(desk: &Desk<'_, '_>, verb: Verb) -> bool {
    let mut works = desk.step.works.iter().filter(|work| work.verb == verb).peekable();
    let whole = |work: &EditionWork<'_>| {
        let named = held(work, desk.edition);
        work.work.as_one && copies(&named).len() > 1 && named.iter().all(|one| matches!(one, Held::Copy(_)))
    };
    works.peek().is_some() && works.all(whole)
}

/// How a copy lies and what it is called.
struct Lying {
    copy: CopyId,
    face: Face,
    words: String,
}

/// Fusing glues the wrong side of the cloth to the glue side of its layer. What is basted as one shows its right sides
/// outside, unless the words say otherwise (common practice, no source).
fn lying(desk: &Desk<'_, '_>, group: &[CopyId], work: &EditionWork<'_>) -> Vec<Lying> {
    let verb = work.verb;
    let lowest = group.first().is_some_and(|copy| desk.cloth(*copy).is_layer());
    let all_up = ["right side up", "right sides up"].iter().any(|up| words_of(work).contains(up));
    let lie = |copy: &CopyId| {
        let layer = desk.cloth(*copy).is_layer();
        let top = group.last() == Some(copy);
        let face = match (verb, work.work.with) {
            (Verb::Quilt, _) => Face::Right,
            _ if layer => Face::Right,
            (Verb::Fuse, _) if lowest => Face::Right,
            (Verb::Baste, Some(Together::RightSides)) if !top => Face::Right,
            (Verb::Baste, None | Some(Together::WrongSides)) if top || all_up => Face::Right,
            _ => Face::Wrong,
        };
        let words = match (layer && verb == Verb::Fuse, lowest) {
            (true, true) => desk.say("draw_glue_up", &[("name", &desk.name(*copy))]),
            (true, false) => desk.say("draw_glue_down", &[("name", &desk.name(*copy))]),
            (false, _) => desk.name_and_side(*copy, face),
        };
        Lying { copy: *copy, face, words }
    };
    group.iter().map(lie).collect()
}

fn pile<'a>(desk: &Desk<'a, '_>, group: &[CopyId], work: &EditionWork<'_>, scale: f64) -> Option<Page<'a>> {
    let mut page = Page::new(desk.ruler);
    let verb = work.verb;
    let lying = lying(desk, group, work);
    let (top, lower) = lying.split_last()?;
    let lowest = Part::copy(desk, lying[0].copy, lying[0].face, scale)?;
    let onto = |part: Part| {
        let by = match verb {
            Verb::Baste => level_with(&part, &lowest, scale),
            _ => lowest.bounds().center() - part.bounds().center(),
        };
        part.moved(Affine::translate(by))
    };
    let mut below = Vec::new();
    for (at, one) in lower.iter().enumerate() {
        let part = onto(Part::copy(desk, one.copy, one.face, scale)?);
        // A layer between stands out, so that it is seen under the corner.
        let shift = Vec2::new(1.4, 1.4) * (lower.len() - 1 - at) as f64;
        let part = part.moved(Affine::translate(shift));
        page.path(desk.class(one.copy, one.face), part.outline.clone());
        below.push(part);
    }
    let whole = onto(Part::copy(desk, top.copy, top.face, scale)?);
    let bounds = whole.bounds();
    let mut seen = whole.clone();
    let back = (bounds.width().min(bounds.height()) * 0.42).min(14.0);
    let square =
        whole.outline.elements().len() <= 6 && (kurbo::Shape::area(&whole.outline).abs() - bounds.area()).abs() < 0.5;
    let mut shown = Point::new(bounds.x1 - back * 0.3, bounds.y1 - back * 0.3);
    if lower.is_empty() {
        // Nothing lies under it.
    } else if square {
        let (up, left) = (Point::new(bounds.x1, bounds.y1 - back), Point::new(bounds.x1 - back, bounds.y1));
        seen.cut_back(up, Vec2::new(-1.0, -1.0).normalize(), Side::Straight);
        page.path(desk.class(top.copy, top.face), seen.visible.clone());
        page.path(desk.class(top.copy, top.face.over()), closed_line(&[up, left, Point::new(left.x, up.y)]));
    } else {
        let at = bounds.x0 + bounds.width() * 0.6;
        seen.cut_back(Point::new(at, bounds.center().y), Vec2::new(-1.0, 0.0), Side::Torn);
        shown = Point::new(bounds.x0 + bounds.width() * 0.8, bounds.center().y);
    }
    if lower.is_empty() || !square {
        page.path(desk.class(top.copy, top.face), seen.visible.clone());
    }
    if verb == Verb::Quilt {
        quilting(desk, &mut page, &seen, group, scale);
    } else if verb == Verb::Baste {
        desk.quilting(&mut page, top.copy, (&seen.visible, bounds.center()), seen.turn, scale);
        let edges: Vec<&str> = seen.rims.iter().map(|rim| rim.name.as_str()).collect();
        let far = work.allowance.and_then(millimetres).unwrap_or(CLOSE) / scale;
        stitching(&seen, &edges, far, None).stretches.into_iter().for_each(|row| page.path("stitch", row));
    } else {
        let free =
            Rect::new(bounds.x0, bounds.y0, bounds.x1 - if square { back } else { bounds.width() * 0.4 }, bounds.y1);
        let size = (free.width().min(free.height()) - 2.0).clamp(5.0, 13.0);
        page.symbol("iron", free.center(), size, 0.0);
    }
    let size = desk.ruler.type_size();
    let drawn = page.bounds();
    // Beside a narrow piece words that began and ended with it would reach out on both sides.
    let narrow = drawn.width() < 40.0;
    let place = |end: f64, anchor: Anchor| match narrow {
        true => (drawn.center().x, Anchor::Middle),
        false => (end, anchor),
    };
    let (x, anchor) = place(drawn.x0, Anchor::Start);
    page.label(&top.words, Point::new(x, drawn.y0 - 1.2), anchor);
    if let Some(under) = lower.last() {
        let foot = Point::new(shown.x - 1.0, drawn.y1 + 1.2);
        page.path("context", open_line(&[shown, foot]));
        let (x, anchor) = place(drawn.x1, Anchor::End);
        page.label(&under.words, Point::new(x, foot.y + size + 0.4), anchor);
    }
    for one in lower.iter().rev().skip(1) {
        page.caption(desk.say("draw_underneath", &[("names", &one.words)]));
    }
    below.push(seen);
    desk.nap_arrows(&mut page, &below.iter().collect::<Vec<_>>());
    Some(page)
}

/// How far a part is moved to lie on another: level with it where they are as large as each other or share an edge of one name
/// and one length, and in its middle otherwise.
fn level_with(part: &Part, on: &Part, scale: f64) -> Vec2 {
    let (own, room) = (part.bounds(), on.bounds());
    let same = |one: f64, other: f64| (one - other).abs() * scale < 1.0;
    let middle = room.center() - own.center();
    if same(own.width(), room.width()) && same(own.height(), room.height()) {
        return middle;
    }
    let shared = part.rims.iter().filter(|rim| same(part.length(&rim.name), on.length(&rim.name)));
    let mut holds = shared.filter_map(|rim| part.hold(&rim.name).zip(on.hold(&rim.name)));
    let level = holds.find(|((_, inner), (_, its))| inner.dot(*its) > 0.9);
    level.map_or(middle, |((from, _), (to, _))| to - from)
}

/// Lines over all that is seen of a part, as the facts say them.
fn quilting(desk: &Desk<'_, '_>, page: &mut Page<'_>, seen: &Part, group: &[CopyId], scale: f64) {
    let told = Quilting::of(desk.edition, group);
    let apart = told.and_then(|told| told.apart);
    let way = told.and_then(|told| told.way);
    let far = apart.and_then(millimetres).map_or(QUILTING, |apart| apart / scale);
    let middle = kurbo::Shape::bounding_box(&seen.outline).center();
    let rows = lines(&seen.visible, middle, seen.turn, way.unwrap_or(Way::Slanting), far);
    rows.into_iter().for_each(|row| page.path("stitch", row));
    if way.is_none() {
        page.caption(desk.say("draw_quilt_told", &[]));
    }
    if let Some(apart) = &apart {
        page.caption(desk.say("draw_lines_apart", &[("length", &desk.spoken(apart))]));
    }
}

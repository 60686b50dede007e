//! Layers that become one cloth: fused with the iron, or quilted; a corner turned back shows both.

use kurbo::{Affine, Point, Rect, Vec2};

use super::cloth::{Cloth, Face};
use super::desk::{Desk, spoken};
use super::page::{Anchor, Page};
use super::paint::QUILTING;
use super::part::Part;
use super::past::{copies, held, millimetres};
use super::told::{Quilting, Way, lines};
use super::trace::{Side, closed_line, open_line};
use crate::diag::listed;
use crate::model::Verb;
use crate::resolve::CopyId;

pub(super) fn draw<'a>(desk: &Desk<'a, '_>, verb: Verb, scale: f64, beside: bool) -> Option<Page<'a>> {
    let mut drawings = Vec::new();
    let mut looks: Vec<String> = Vec::new();
    let mut again: Vec<String> = Vec::new();
    for work in desk.step.works.iter().filter(|work| work.verb == verb) {
        let mut group = copies(&held(work, desk.edition));
        if verb == Verb::Quilt {
            // Quilting is sewn with the outer cloth up.
            group.sort_by_key(|copy| desk.cloth(*copy).is_outer());
        }
        if group.is_empty() {
            continue;
        }
        let look = |copy: &CopyId| format!("{:?} {}", desk.edition.cast[*copy].piece, desk.class(*copy, Face::Right));
        let look = group.iter().map(look).collect::<Vec<_>>().join(", ");
        if looks.contains(&look) {
            again.extend(group.iter().map(|copy| desk.name(*copy)));
            continue;
        }
        looks.push(look);
        drawings.push(pile(desk, &group, verb, scale)?);
    }
    let mut page = Page::flowed(desk.ruler, drawings, beside, 4.0, desk.sheet);
    if !again.is_empty() {
        page.caption(format!("the same with {}", listed(&again)));
    }
    Some(page)
}

fn is_layer(cloth: Cloth) -> bool {
    cloth.is_layer()
}

/// How a copy lies and what it is called.
struct Lying {
    copy: CopyId,
    face: Face,
    words: String,
}

/// Fusing glues the wrong side of the cloth to the glue side of its layer.
fn lying(desk: &Desk<'_, '_>, group: &[CopyId], verb: Verb) -> Vec<Lying> {
    let lowest = group.first().is_some_and(|copy| is_layer(desk.cloth(*copy)));
    let lie = |copy: &CopyId| {
        let layer = is_layer(desk.cloth(*copy));
        let face = if verb == Verb::Quilt || lowest || layer { Face::Right } else { Face::Wrong };
        let words = match (layer && verb == Verb::Fuse, lowest) {
            (true, true) => format!("{}, glue side up", desk.name(*copy)),
            (true, false) => format!("{}, glue side down", desk.name(*copy)),
            (false, _) => desk.name_and_side(*copy, face),
        };
        Lying { copy: *copy, face, words }
    };
    group.iter().map(lie).collect()
}

fn pile<'a>(desk: &Desk<'a, '_>, group: &[CopyId], verb: Verb, scale: f64) -> Option<Page<'a>> {
    let mut page = Page::new(desk.ruler);
    let lying = lying(desk, group, verb);
    let (top, lower) = lying.split_last()?;
    let lowest = Part::copy(desk, lying[0].copy, lying[0].face, scale)?;
    let centre = lowest.bounds().center();
    let onto = |part: Part| {
        let by = centre - part.bounds().center();
        part.moved(Affine::translate(by))
    };
    for (at, one) in lower.iter().enumerate() {
        let part = onto(Part::copy(desk, one.copy, one.face, scale)?);
        // A layer between stands out, so that it is seen under the corner.
        let shift = Vec2::new(1.4, 1.4) * (lower.len() - 1 - at) as f64;
        page.path(desk.class(one.copy, one.face), part.moved(Affine::translate(shift)).outline);
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
        page.caption(format!("{} underneath", one.words));
    }
    Some(page)
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
        page.caption("lines of quilting as the words say");
    }
    if let Some(apart) = &apart {
        page.caption(format!("lines {} apart", spoken(desk, apart)));
    }
}

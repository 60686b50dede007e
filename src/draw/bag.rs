//! A bag whose corners are boxed, as a plain picture of the thing in the proportions of its size: face, side and base
//! seen from above the right, its zip or its open top.
//!
//! With the cloth W wide and H high, allowances s at the sides, b at the base and t at the top, and a corner boxed d
//! deep, the bag is W − 2s wide where it is flat, W − 2s − d at its base, and H − t − b − d/2 high (plane geometry).

use kurbo::{Affine, BezPath, Point, Rect, Shape as _, Vec2};

use super::cloth::{Cloth, Face};
use super::desk::{Desk, Undrawn};
use super::edges;
use super::handled::drawn_of;
use super::page::{Anchor, Page};
use super::past::{Held, copies, held, millimetres};
use super::trace::{closed_line, open_line};
use crate::geometry::Shape;
use crate::model::Verb;
use crate::resolve::{CopyId, EditionWork};

/// How far back one of depth is drawn: to the right, and up.
const BACK: (f64, f64) = (0.42, 0.3);
/// How wide the tapes of a zip are together, in mm of cloth (common practice, no source).
const ZIP: f64 = 30.0;

/// The verbs whose work on a boxed bag is drawn on the whole of it.
pub(super) fn draws(verb: Verb) -> bool {
    matches!(
        verb,
        Verb::Box
            | Verb::Sew
            | Verb::Baste
            | Verb::Bind
            | Verb::Turn
            | Verb::Press
            | Verb::Put
            | Verb::Close
            | Verb::Topstitch
            | Verb::Edgestitch
    )
}

/// Whether the facts of a verb name copies that were boxed before.
pub(super) fn is_boxed(desk: &Desk<'_, '_>, verb: Verb) -> bool {
    let works = desk.step.works.iter().filter(|work| work.verb == verb);
    let named: Vec<Held> = works.flat_map(|work| drawn_of(work, desk.edition)).collect();
    let found = boxed(desk, verb).len();
    // A handle that is basted to a bag is seen at its edge.
    verb != Verb::Box && found > 0 && (verb != Verb::Baste || found == copies(&named).len())
}

/// The boxed copies that the facts of a verb name, in their order.
fn boxed(desk: &Desk<'_, '_>, verb: Verb) -> Vec<CopyId> {
    let works = desk.step.works.iter().filter(|work| work.verb == verb);
    let named: Vec<Held> = works.flat_map(|work| drawn_of(work, desk.edition)).collect();
    let is_boxed = |copy: &CopyId| desk.past.boxed.iter().any(|(other, _)| other == copy);
    copies(&named).into_iter().filter(is_boxed).collect()
}

/// The measures of a bag, in mm on paper.
pub(super) struct Measures {
    /// How wide it is where it is flat, and at its base.
    pub wide: f64,
    pub base: f64,
    pub deep: f64,
    pub high: f64,
}

/// The points of a bag: its base from the front left round, and its top.
pub(super) struct Corners {
    pub base: [Point; 4],
    /// Of an open bag the corners of its rim as those of the base; of one with a zip both ends of it.
    pub top: Vec<Point>,
}

pub(super) fn draw<'a>(desk: &Desk<'a, '_>, verb: Verb, scale: f64) -> Result<Option<Page<'a>>, Undrawn> {
    let named = boxed(desk, verb);
    let Some(first) = named.first().copied() else { return Ok(None) };
    let Some(measures) = measures(desk, first, scale) else {
        return Err(Undrawn::unclear(format!("nothing says how deep {} is boxed", desk.name(first))));
    };
    let works: Vec<&EditionWork<'_>> = desk.step.works.iter().filter(|work| work.verb == verb).collect();
    if verb == Verb::Close {
        return Ok(base_closed(desk, first, &works, &measures, scale));
    }
    let put = desk.step.works.iter().find(|work| work.verb == Verb::Put);
    let inner = put.and_then(|work| copies(&held(work, desk.edition)).first().copied());
    let outer = put.and_then(|work| copies(&held(work, desk.edition)).get(1).copied());
    let shown = outer.unwrap_or(first);
    let turned = verb == Verb::Turn || desk.past.turned.contains_key(&shown);
    let face = if turned { Face::Right } else { Face::Wrong };
    let within = inner.unwrap_or_else(|| lining_of(desk, shown).unwrap_or(shown));
    let inside = match (within == shown, put) {
        (false, Some(work)) if work.work.with == Some(crate::model::Together::RightSides) => Face::Wrong,
        (false, _) => Face::Right,
        (true, _) => face.over(),
    };
    let mut page = Page::new(desk.ruler);
    let corners = corners(&measures, is_zipped(desk, shown));
    paint(desk, &mut page, &corners, (shown, face), (within, inside), scale);
    let front = front_of(&corners);
    match verb {
        Verb::Turn => page.symbol("turn-arrow", front.center() - Vec2::new(0.0, front.height() * 0.2), 11.0, 0.0),
        Verb::Press => page.symbol("iron", front.center() - Vec2::new(0.0, front.height() * 0.2), 11.0, 0.0),
        Verb::Put => {
            let top = corners.top.iter().fold(Vec2::ZERO, |sum, point| sum + point.to_vec2());
            let middle = (top / corners.top.len().max(1) as f64).to_point();
            page.path("arrow", open_line(&[middle - Vec2::new(0.0, 12.0), middle + Vec2::new(0.0, 1.0)]));
        }
        _ => {
            let mut far =
                works.iter().find_map(|work| work.allowance.and_then(millimetres)).unwrap_or(super::paint::CLOSE);
            if let (Verb::Bind, Some(work)) = (verb, works.first()) {
                let (deep, row) = edges::bound(work);
                far = row;
                let band = rim(&corners, deep / scale).into_iter().rev();
                page.path("binding", closed_line(&rim(&corners, 0.0).into_iter().chain(band).collect::<Vec<_>>()));
            }
            let row = rim(&corners, far / scale);
            page.path("stitch", open_line(&row));
            if let Some((work, allowance)) = works.iter().find_map(|work| Some((work, work.allowance?))) {
                page.caption(desk.row(work.verb, "draw_from_rim", &allowance));
            }
        }
    }
    let words = desk.name_and_out(shown, face);
    page.name(&words, Rect::new(front.x0, front.center().y, front.x1, front.y1));
    if let (Some(inner), Some(outer)) = (inner, outer) {
        page.caption(desk.say("draw_lies_in", &[("inner", &desk.name(inner)), ("outer", &desk.name(outer))]));
    }
    Ok(Some(page))
}

/// The measures of the bag that a copy is a face of; `None` where nothing tells how deep it is.
pub(super) fn measures(desk: &Desk<'_, '_>, copy: CopyId, scale: f64) -> Option<Measures> {
    let piece = desk.edition.cast[copy].piece;
    let shape: &Shape = desk.edition.values.whole(piece)?;
    let bounds = shape.cutting().bounds();
    let deep = depth(desk, copy)?;
    // What its seams take at each side of the box round it.
    let taken = |way: Vec2| {
        let edges = desk.past.seams_of(copy).filter_map(|(seam, edge)| {
            let line = &shape.edge(edge)?.cut;
            let (middle, inner) = super::trace::inward(line, &shape.cutting().path)?;
            let at_side = (middle - bounds.center()).dot(way) > 0.0 && inner.dot(way) < -0.7;
            at_side.then_some(seam.allowance).flatten()
        });
        edges.fold(0.0, f64::max)
    };
    let wide = bounds.width() - taken(Vec2::new(1.0, 0.0)) - taken(Vec2::new(-1.0, 0.0));
    let high = bounds.height() - taken(Vec2::new(0.0, 1.0)) - taken(Vec2::new(0.0, -1.0)) - deep / 2.0;
    let base = wide - deep;
    (base > 0.0 && high > 0.0).then(|| Measures {
        wide: wide / scale,
        base: base / scale,
        deep: deep / scale,
        high: high / scale,
    })
}

/// How deep a copy was boxed, in mm of cloth: twice what was measured up, or a leg of its cut corner less the allowance
/// of the seam beside it, and the allowance of its own seam on both sides.
fn depth(desk: &Desk<'_, '_>, copy: CopyId) -> Option<f64> {
    let works = desk.edition.steps_to(Some(desk.step.number)).flat_map(|step| &step.works);
    let boxing = works.filter(|work| work.verb == Verb::Box);
    let found = boxing.filter_map(|work| {
        let edges = held(work, desk.edition).into_iter().find_map(|one| match one {
            Held::Edge(other, edge) if other == copy => Some(edge),
            _ => None,
        });
        let edge = edges?;
        if let Some(up) = work.up.and_then(millimetres) {
            return Some(2.0 * up);
        }
        let shape = desk.edition.values.whole(desk.edition.cast[copy].piece)?;
        let bounds = shape.edge(&edge)?.cut.bounding_box();
        let own = work.allowance.and_then(millimetres).unwrap_or(0.0);
        let beside =
            desk.past.seams_of(copy).filter(|(_, other)| *other != edge).filter_map(|(seam, _)| seam.allowance);
        Some(2.0 * (bounds.width() - beside.fold(0.0, f64::max) + own))
    });
    let mut found = found.filter(|deep| *deep > 1.0);
    found.next()
}

/// Whether the top of a bag is sewn to a zip.
pub(super) fn is_zipped(desk: &Desk<'_, '_>, copy: CopyId) -> bool {
    desk.past.seams_of(copy).any(|(seam, _)| seam.members.iter().any(|one| matches!(one, Held::ZipEdge(..))))
}

/// What is sewn to the same edge as a copy and lies inside the bag.
pub(super) fn lining_of(desk: &Desk<'_, '_>, copy: CopyId) -> Option<CopyId> {
    let lining = |other: &CopyId| *other != copy && desk.cloth(*other) == Cloth::Lining;
    desk.past.seams_of(copy).flat_map(|(seam, _)| copies(&seam.members)).find(lining)
}

pub(super) fn corners(measures: &Measures, zipped: bool) -> Corners {
    let back = Vec2::new(measures.deep * BACK.0, -measures.deep * BACK.1);
    let (left, right) = (Point::ORIGIN, Point::new(measures.base, 0.0));
    let up = Vec2::new(0.0, -measures.high);
    let base = [left, right, right + back, left + back];
    let top = match zipped {
        true => {
            let over = Vec2::new((measures.wide - measures.base) / 2.0, 0.0);
            vec![left + back / 2.0 + up - over, right + back / 2.0 + up + over]
        }
        false => base.map(|corner| corner + up).to_vec(),
    };
    Corners { base, top }
}

/// The box of the front face, as far as words have room on it.
fn front_of(corners: &Corners) -> Rect {
    let [left, right, ..] = corners.base;
    let top = corners.top.iter().map(|point| point.y).fold(f64::MIN, f64::max);
    Rect::new(left.x, top, right.x, left.y)
}

pub(super) fn paint(
    desk: &Desk<'_, '_>,
    page: &mut Page<'_>,
    corners: &Corners,
    (shown, face): (CopyId, Face),
    (within, inside): (CopyId, Face),
    scale: f64,
) {
    let class = desk.class(shown, face);
    let [left, right, back, _] = corners.base;
    match corners.top[..] {
        [from, to] => {
            page.path(class, closed_line(&[right, back, to]));
            let front = closed_line(&[left, right, to, from]);
            page.path(class, front.clone());
            desk.quilting(page, shown, (&front, front.bounding_box().center()), Affine::IDENTITY, scale);
            let wide = Vec2::new(0.0, ZIP / 2.0 / scale);
            page.path("zip", closed_line(&[from - wide / 2.0, to - wide / 2.0, to + wide / 2.0, from + wide / 2.0]));
            page.line("zip", from, to);
            page.symbol("zip-slider", to.lerp(from, 0.12), 5.4, 90.0);
        }
        [rim_left, rim_right, rim_back, rim_back_left] => {
            page.path(desk.class(within, inside), closed_line(&[rim_left, rim_right, rim_back, rim_back_left]));
            page.path(class, closed_line(&[right, back, rim_back, rim_right]));
            let front = closed_line(&[left, right, rim_right, rim_left]);
            page.path(class, front.clone());
            desk.quilting(page, shown, (&front, front.bounding_box().center()), Affine::IDENTITY, scale);
            // The seam at the side of the bag.
            page.path("stitched", open_line(&[right.midpoint(back), rim_right.midpoint(rim_back)]));
        }
        _ => {}
    }
}

/// A row beside the top, along the faces that are seen.
pub(super) fn rim(corners: &Corners, far: f64) -> Vec<Point> {
    let down = Vec2::new(0.0, far);
    match corners.top[..] {
        [left, right, back, _] => vec![left + down, right + down, back + down],
        [from, to] => vec![from + down, to + down],
        _ => Vec::new(),
    }
}

/// The base of a bag, seen flat from outside, with the gap in its seam closed.
fn base_closed<'a>(
    desk: &Desk<'a, '_>,
    copy: CopyId,
    works: &[&EditionWork<'_>],
    measures: &Measures,
    scale: f64,
) -> Option<Page<'a>> {
    let named: Vec<Held> = works.iter().flat_map(|work| held(work, desk.edition)).collect();
    let gap = desk.past.seams_of(copy).find_map(|(seam, edge)| {
        let is_named = named.contains(&Held::Edge(copy, edge.to_owned()));
        seam.gap.filter(|_| is_named)
    })?;
    let mut page = Page::new(desk.ruler);
    let room = Rect::new(0.0, 0.0, measures.base, measures.deep);
    page.path(desk.class(copy, Face::Right), room.to_path(0.02));
    let middle = room.center();
    let half = Vec2::new(gap / 2.0 / scale, 0.0);
    let seam = |from: Point, to: Point| -> BezPath { open_line(&[from, to]) };
    page.path("stitched", seam(Point::new(room.x0, middle.y), middle - half));
    page.path("stitched", seam(middle + half, Point::new(room.x1, middle.y)));
    page.path("stitch", seam(middle - half, middle + half));
    if works.iter().any(|work| work.work.by_hand) {
        page.symbol("needle", middle - Vec2::new(0.0, 5.5), 9.0, 0.0);
    }
    let base = desk.say("draw_base", &[("name", &desk.name(copy))]);
    let words = match desk.side(copy, Face::Right) {
        side if side.is_empty() => base,
        side => desk.say("draw_side", &[("name", &base), ("side", &side)]),
    };
    let size = desk.ruler.type_size();
    page.label(&words, Point::new(middle.x, room.y1 + size + 1.2), Anchor::Middle);
    Some(page)
}

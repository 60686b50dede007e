//! A strip with its end at an edge of another piece: a loop, a tie, a strap, or a handle with both its ends.

use kurbo::{Point, Rect, Shape as _, Vec2};

use super::cloth::Face;
use super::desk::Desk;
use super::inside::Detail;
use super::page::Page;
use super::paint::CLOSE;
use super::part::{FOLD, Part};
use super::past::{Held, held, millimetres};
use super::rows::rooms;
use super::told::words_of;
use super::trace::{Side, chains, closed_line, corners, inward, nearest, open_line, place, straight};
use crate::model::Verb;
use crate::resolve::{CopyId, EditionWork, Inside};

/// How much of the lower piece is drawn beside a strip and below it, in mm on paper.
const ROUND: f64 = 9.0;
/// How much of a strip is drawn at the most, in mm on paper.
const LONGEST: f64 = 34.0;
/// How far the ends of a handle lie apart, as a share of its length, where it is drawn as an arch.
const ARCH: f64 = 0.3;

/// Where an end lies: a place on an edge, and the way into the piece.
type Spot = (Point, Vec2);

/// A strip at an edge of which nothing says where on it: a stretch of the edge, torn off on both sides.
pub(super) fn at_edge<'a>(
    desk: &Desk<'a, '_>,
    strap: CopyId,
    base: CopyId,
    edge: &str,
    work: &EditionWork<'_>,
    scale: f64,
) -> Option<Page<'a>> {
    let (below, spot) = at_middle(desk, base, edge, scale)?;
    let inwards = points_in(desk, work, base, edge);
    let part = lying(desk, strap, spot, inwards, scale)?;
    let mut below = below;
    below.torn_at(spot.0, spot.1, half_width(&part, spot) + ROUND, reach(&part, spot) + ROUND);
    let mut page = Page::new(desk.ruler);
    on_base(desk, &mut page, (&below, base), (&part, strap), (spot, inwards), work, scale);
    let (name, base) = (desk.name(strap), desk.name(base));
    page.caption(desk.say("draw_at_edge", &[("name", &name), ("edge", &spoken_edge(edge)), ("base", &base)]));
    Some(page)
}

/// A strip at a mark of the base, which is drawn whole.
pub(super) fn at_mark<'a>(
    desk: &Desk<'a, '_>,
    strap: CopyId,
    base: CopyId,
    mark: usize,
    work: &EditionWork<'_>,
    scale: f64,
) -> Option<Page<'a>> {
    let below = Part::copy(desk, base, face_of(desk, base), scale)?;
    let (_, details) = below.inside.iter().find(|(inside, _)| *inside == Inside::Mark(mark))?;
    let point = details.iter().find_map(|detail| match detail {
        Detail::Dot(point) => Some(*point),
        _ => None,
    })?;
    let lines = below.rims.iter().flat_map(|rim| rim.lines.iter().map(move |line| (rim.name.clone(), corners(line))));
    let far = |line: &Vec<Point>| place(line, nearest(line, point)).map_or(f64::MAX, |(near, _)| near.distance(point));
    let (edge, line) = lines.min_by(|one, other| far(&one.1).total_cmp(&far(&other.1)))?;
    let (at, along) = place(&line, nearest(&line, point))?;
    let (_, inner) = inward(&open_line(&line), &below.outline)?;
    let normal = Vec2::new(-along.y, along.x);
    let spot = (at, if normal.dot(inner) < 0.0 { -normal } else { normal });
    let inwards = points_in(desk, work, base, &edge);
    let part = lying(desk, strap, spot, inwards, scale)?;
    let mut page = Page::new(desk.ruler);
    on_base(desk, &mut page, (&below, base), (&part, strap), (spot, inwards), work, scale);
    Some(page)
}

/// A handle with both ends at an edge, hanging down onto the piece.
pub(super) fn arch<'a>(
    desk: &Desk<'a, '_>,
    (strap, ends): (CopyId, &[String; 2]),
    base: CopyId,
    edge: &str,
    work: &EditionWork<'_>,
    scale: f64,
) -> Option<Page<'a>> {
    let (mut below, (at, inner)) = at_middle(desk, base, edge, scale)?;
    let flat = Part::copy(desk, strap, Face::Right, scale)?;
    let wide = flat.length(&ends[0]);
    let (first, _) = flat.hold(&ends[0])?;
    let (last, _) = flat.hold(&ends[1])?;
    let long = first.distance(last);
    let apart = (long * ARCH).min(below.length(edge) - wide).max(wide * 1.5);
    let along = Vec2::new(-inner.y, inner.x);
    let leg = ((long - std::f64::consts::FRAC_PI_2 * apart) / 2.0).max(0.0);
    let round = |radius: f64| -> Vec<Point> {
        let middle = at + inner * leg;
        let turn = |step: i32| std::f64::consts::PI * f64::from(step) / 24.0;
        (0..=24)
            .map(|step| middle - along * (radius * turn(step).cos()) + inner * (radius * turn(step).sin()))
            .collect()
    };
    let (outer, inside) = (apart / 2.0 + wide / 2.0, apart / 2.0 - wide / 2.0);
    let mut band = vec![at - along * outer];
    band.extend(round(outer));
    band.extend([at + along * outer, at + along * inside]);
    band.extend(round(inside).into_iter().rev());
    band.push(at - along * inside);
    below.torn_at(at, inner, outer + ROUND, leg + outer + ROUND);
    let mut page = Page::new(desk.ruler);
    desk.paint(&mut page, &below, Vec2::ZERO, scale);
    let band = closed_line(&band);
    page.path(desk.class(strap, Face::Right), band.clone());
    let far = work.allowance.and_then(millimetres).unwrap_or(CLOSE) / scale;
    for side in [-1.0, 1.0] {
        row_across(&mut page, work.verb, at + along * (side * apart / 2.0) + inner * far, along, wide);
    }
    let bounds = band.bounding_box();
    page.name(
        &desk.name(strap),
        Rect::from_center_size(at + inner * (leg * 0.6), (2.0 * inside, bounds.height() * 0.5)),
    );
    page.label_in_one(&desk.name_and_side(base, below.face), &rooms(below.bounds(), &[bounds]));
    let base = desk.name(base);
    page.caption(desk.say("draw_ends_at_edge", &[("edge", &spoken_edge(edge)), ("base", &base)]));
    Some(page)
}

/// The base with the side up that the words of the step tell, and the middle of an edge of it.
fn at_middle(desk: &Desk<'_, '_>, base: CopyId, edge: &str, scale: f64) -> Option<(Part, Spot)> {
    let below = Part::copy(desk, base, face_of(desk, base), scale)?;
    let (chain, closed) = chains(&below.rim(edge)?.lines).into_iter().next()?;
    let spot = match closed {
        true => below.hold(edge)?,
        false => inward(&open_line(&chain), &below.outline)?,
    };
    Some((below, spot))
}

/// Which side of a base is up: the right one, unless words of the step say otherwise.
fn face_of(desk: &Desk<'_, '_>, base: CopyId) -> Face {
    let mut about = desk.step.works.iter().filter(|work| work.touched().any(|one| one.copy() == Some(base)));
    if about.any(|work| words_of(work).contains("wrong side")) { Face::Wrong } else { Face::Right }
}

/// Whether a strip lies on the piece: so it is where its edge is raw and a seam or a binding catches it later; at an edge
/// that is finished it points away (common practice, no source).
fn points_in(desk: &Desk<'_, '_>, work: &EditionWork<'_>, base: CopyId, edge: &str) -> bool {
    let words = words_of(work);
    let says = |all: &[&str]| all.iter().any(|word| words.contains(word));
    if says(&["outward", "pointing out", "away", "pointing up"]) {
        return false;
    }
    if work.verb == Verb::Baste || says(&["inward", "pointing in", "hanging down", "hang down"]) {
        return true;
    }
    let wanted = Held::Edge(base, edge.to_owned());
    let steps = desk.edition.steps();
    let about = |step: usize, verb: Verb| match verb {
        Verb::Hem | Verb::Fold | Verb::Finish => step <= desk.step.number,
        Verb::Bind => true,
        _ => false,
    };
    let mut works = steps.flat_map(|step| step.works.iter().map(move |work| (step.number, work)));
    let finished = works.any(|(step, other)| about(step, other.verb) && held(other, desk.edition).contains(&wanted));
    work.verb == Verb::Sew || (work.verb != Verb::Attach && !finished)
}

/// The end that a strip is held by: of one that is folded end to end the fold where its ends are meant to stay raw, and its
/// ends otherwise; else a short end.
fn end_of(desk: &Desk<'_, '_>, strap: CopyId, part: &Part) -> Option<String> {
    let facts = &desk.edition.draft.facts.pieces[desk.edition.cast[strap].piece];
    let raw = |name: &str| facts.raw.iter().any(|raw| raw.text == "all" || raw.text == name);
    let ends = part.rims.iter().filter(|rim| rim.lines.first().is_some_and(|line| straight(line).is_some()));
    let shortest = ends.min_by(|one, other| part.length(&one.name).total_cmp(&part.length(&other.name)))?;
    let across = desk.past.lies(strap).folds.long < 1.0;
    let fold = part.rims.iter().find(|rim| rim.name == FOLD).filter(|_| across);
    match fold {
        Some(fold) => {
            let own = part
                .rims
                .iter()
                .filter(|rim| rim.name != FOLD && (part.length(&rim.name) - part.length(FOLD)).abs() < 0.01);
            let ends: Vec<&str> = own.map(|rim| rim.name.as_str()).collect();
            let free = !ends.is_empty() && ends.iter().all(|end| raw(end));
            if free { Some(fold.name.clone()) } else { ends.first().map(|end| (*end).to_owned()) }
        }
        None => Some(shortest.name.clone()),
    }
}

/// A strip laid with its end at a spot: on the piece, or over its edge and outwards. What is longer than the sheet can show
/// is torn off.
fn lying(desk: &Desk<'_, '_>, strap: CopyId, (at, inner): Spot, inwards: bool, scale: f64) -> Option<Part> {
    let part = Part::copy(desk, strap, Face::Right, scale)?;
    let end = end_of(desk, strap, &part)?;
    let wide = part.length(&end);
    let mut part = match inwards {
        true => part.laid(&end, 0.0, at, inner)?,
        false => part.laid(&end, 0.0, at + inner * wide, -inner)?,
    };
    let way = if inwards { inner } else { -inner };
    let from = if inwards { at } else { at + inner * wide };
    // A loop is shown to its fold; of what is held at its fold, the ends are free.
    if (part.doubled.is_none() || end == FOLD) && reach(&part, (from, way)) > LONGEST {
        part.cut_back(from + way * LONGEST, -way, Side::Torn);
    }
    Some(part)
}

/// How far a part reaches from a spot on its way.
fn reach(part: &Part, (at, way): Spot) -> f64 {
    corners(&part.visible).into_iter().map(|point| (point - at).dot(way)).fold(0.0, f64::max)
}

fn half_width(part: &Part, (at, inner): Spot) -> f64 {
    let along = Vec2::new(-inner.y, inner.x);
    corners(&part.visible).into_iter().map(|point| (point - at).dot(along).abs()).fold(0.0, f64::max)
}

fn on_base(
    desk: &Desk<'_, '_>,
    page: &mut Page<'_>,
    (below, base): (&Part, CopyId),
    (part, strap): (&Part, CopyId),
    ((at, inner), inwards): (Spot, bool),
    work: &EditionWork<'_>,
    scale: f64,
) {
    desk.paint(page, below, Vec2::ZERO, scale);
    desk.paint(page, part, Vec2::ZERO, scale);
    let along = Vec2::new(-inner.y, inner.x);
    let far = work.allowance.and_then(millimetres).unwrap_or(CLOSE) / scale;
    let half = half_width(part, (at, inner));
    match (work.verb, inwards) {
        (Verb::Pin, _) => page.pin(at + along * (half + 3.0) + inner * 2.5, at - along * (half + 1.0) + inner * 2.5),
        (verb, true) => row_across(page, verb, at + inner * far, along, 2.0 * half),
        (_, false) => {
            // Over the edge: round what lies on the piece.
            let (near, deep, side) = (far, (2.0 * half - far).max(far), (half - far).max(half * 0.3));
            let box_of = [
                at + inner * near - along * side,
                at + inner * near + along * side,
                at + inner * deep + along * side,
                at + inner * deep - along * side,
            ];
            page.path("stitch", closed_line(&box_of));
        }
    }
    let (room, seen) = (part.bounds(), below.bounds());
    page.label_in_one(&desk.name(strap), &[room]);
    page.label_in_one(&desk.name_and_side(base, below.face), &rooms(seen, &[room.intersect(seen)]));
    desk.nap_arrows(page, &[below, part]);
}

/// A row across the end of a strip, a little longer than that.
fn row_across(page: &mut Page<'_>, verb: Verb, middle: Point, along: Vec2, wide: f64) {
    let half = wide / 2.0 + 1.2;
    match verb {
        Verb::Pin => page.pin(middle + along * (half + 2.0), middle - along * half),
        _ => page.path("stitch", open_line(&[middle - along * half, middle + along * half])),
    }
}

fn spoken_edge(edge: &str) -> String {
    edge.replace('_', " ")
}

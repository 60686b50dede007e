//! A piece stitched on where another is marked for it: it lies on its mark, and the row runs along its edges.

use kurbo::{Affine, Shape as _, Vec2};

use super::cloth::Face;
use super::desk::Desk;
use super::inside::Detail;
use super::page::Page;
use super::paint::{CLOSE, stitching};
use super::part::Part;
use super::past::{Held, held, millimetres};
use super::rows::rooms;
use crate::model::Verb;
use crate::resolve::{CopyId, EditionWork, Inside, MarkAt, Touched};

/// A piece on its mark.
struct Placed<'d, 'e> {
    /// What is stitched on, and the edges that the fact names; none for all round.
    patch: CopyId,
    edges: Vec<String>,
    /// What it lies on, and which of its marks.
    base: CopyId,
    mark: usize,
    work: &'d EditionWork<'e>,
}

/// Whether every fact of a verb stitches a piece onto its mark.
pub(super) fn is_placed(desk: &Desk<'_, '_>, verb: Verb) -> bool {
    if !(verb.stitches() || verb == Verb::Attach) || verb.counts() {
        return false;
    }
    let mut works = desk.step.works.iter().filter(|work| work.verb == verb).peekable();
    works.peek().is_some() && works.all(|work| placed(desk, work).is_some())
}

/// Whether a fact stitches a piece onto its mark.
pub(super) fn lies_on_mark(desk: &Desk<'_, '_>, work: &EditionWork<'_>) -> bool {
    placed(desk, work).is_some()
}

fn placed<'d, 'e>(desk: &Desk<'_, '_>, work: &'d EditionWork<'e>) -> Option<Placed<'d, 'e>> {
    let edition = desk.edition;
    let marks = work.touched().filter_map(|touched| match touched {
        Touched::Inside(copy, Inside::Mark(at)) => Some((copy, at)),
        _ => None,
    });
    marks.into_iter().find_map(|(base, mark)| {
        let MarkAt::Outline { piece, .. } = edition.values.marks(edition.cast[base].piece).get(mark)?.as_ref()? else {
            return None;
        };
        let on_it = held(work, edition);
        let is_patch = |copy: CopyId| copy != base && edition.cast[copy].piece == *piece;
        let patch = on_it.iter().find_map(|target| match target {
            Held::Copy(copy) | Held::Edge(copy, _) if is_patch(*copy) => Some(*copy),
            _ => None,
        })?;
        let edges = on_it.iter().filter_map(|target| match target {
            Held::Edge(copy, edge) if *copy == patch => Some(edge.clone()),
            _ => None,
        });
        Some(Placed { patch, edges: edges.collect(), base, mark, work })
    })
}

/// Draws each piece on its mark; what looks the same is drawn once.
pub(super) fn draw<'a>(desk: &Desk<'a, '_>, verb: Verb, scale: f64, beside: bool) -> Option<Page<'a>> {
    let mut page = Page::new(desk.ruler);
    let mut looks: Vec<String> = Vec::new();
    let mut again: Vec<String> = Vec::new();
    let works = desk.step.works.iter().filter(|work| work.verb == verb);
    for one in works.filter_map(|work| placed(desk, work)) {
        let piece = |copy: CopyId| desk.edition.cast[copy].piece;
        let look = format!(
            "{:?} {} {:?} {} {:?} {}",
            piece(one.patch),
            desk.class(one.patch, Face::Right),
            piece(one.base),
            desk.class(one.base, Face::Right),
            one.edges,
            one.mark
        );
        if looks.contains(&look) {
            again.push(desk.name(one.patch));
            continue;
        }
        looks.push(look);
        page.join(on_mark(desk, &one, scale)?, beside, 5.0);
        if let Some(allowance) = &one.work.allowance {
            page.caption(desk.row(verb, "draw_from_its_edges", allowance));
        }
    }
    desk.tell(&mut page, "draw_same_with", &again);
    Some(page)
}

fn on_mark<'a>(desk: &Desk<'a, '_>, one: &Placed<'_, '_>, scale: f64) -> Option<Page<'a>> {
    let mut page = Page::new(desk.ruler);
    let base = Part::copy(desk, one.base, Face::Right, scale)?;
    let (_, details) = base.inside.iter().find(|(inside, _)| *inside == Inside::Mark(one.mark))?;
    let place = details.iter().find_map(|detail| match detail {
        Detail::Placed(path) => Some(path.bounding_box()),
        _ => None,
    })?;
    let mut patch = Part::copy(desk, one.patch, Face::Right, scale)?;
    turn_in(desk, &mut patch, one.patch, scale)?;
    let shift = place.center() - patch.bounds().center();
    let patch = patch.moved(Affine::translate(shift));
    desk.paint(&mut page, &base, Vec2::ZERO, scale);
    desk.paint(&mut page, &patch, Vec2::ZERO, scale);
    let far = one.work.allowance.and_then(millimetres).unwrap_or(CLOSE);
    let sewn = rows(desk, one, &patch);
    let sewn: Vec<&str> = sewn.iter().map(String::as_str).collect();
    let line = stitching(&patch, &sewn, far / scale, None);
    line.stretches.into_iter().for_each(|stretch| page.path("stitch", stretch));
    let room = patch.bounds();
    page.label_in_one(&desk.name(one.patch), &[room]);
    page.label_in_one(&desk.name_and_side(one.base, base.face), &rooms(base.bounds(), &[room]));
    desk.nap_arrows(&mut page, &[&base, &patch]);
    Some(page)
}

/// The edges that are stitched: those that the fact names; of a piece named as a whole all but what was hemmed before,
/// since the opening of a pocket stays open, unless the words say that the row goes all round.
fn rows(desk: &Desk<'_, '_>, one: &Placed<'_, '_>, patch: &Part) -> Vec<String> {
    if !one.edges.is_empty() {
        return one.edges.clone();
    }
    let round = one.work.work.words.iter().any(|words| words.text.contains("all round"));
    let hemmed = |edge: &str| {
        let wanted = Held::Edge(one.patch, edge.to_owned());
        let steps = desk.edition.steps().take_while(|step| step.number <= desk.step.number);
        let mut hems = steps.flat_map(|step| &step.works).filter(|work| work.verb == Verb::Hem);
        hems.any(|work| held(work, desk.edition).contains(&wanted))
    };
    let names = patch.rims.iter().map(|rim| rim.name.clone());
    names.filter(|edge| round || !hemmed(edge)).collect()
}

/// Turns all edges of a piece in along its stitching line, with their seams and their hems out of sight; `None` where it
/// has no outline.
fn turn_in(desk: &Desk<'_, '_>, patch: &mut Part, copy: CopyId, scale: f64) -> Option<()> {
    let member = &desk.edition.cast[copy];
    let shape = desk.edition.values.whole(member.piece)?;
    let turn = if member.mirrored { Affine::FLIP_X } else { Affine::IDENTITY };
    let placed = Affine::scale(1.0 / scale) * turn;
    patch.visible = placed * shape.stitching().path.clone();
    patch.outline = patch.visible.clone();
    for rim in &mut patch.rims {
        if let Some(edge) = shape.edge(&rim.name) {
            rim.lines = vec![placed * edge.seam.clone()];
        }
        patch.hidden.push(rim.name.clone());
    }
    Some(())
}

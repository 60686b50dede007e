//! A strip that is sewn along an edge to bind it: it lies flat on the piece, its raw edge on the edge, before it is
//! turned over.

use kurbo::Vec2;

use super::cloth::Face;
use super::desk::{Desk, Undrawn};
use super::page::Page;
use super::paint::{CLOSE, stitching};
use super::part::Part;
use super::past::{Held, held, millimetres};
use super::trace::{beside, closed_line, corners, inward};
use crate::model::{NotionFigure, Verb};
use crate::resolve::{CopyId, EditionWork, NotionId};

/// How much wider than its allowance a strip is drawn where nothing tells its width.
const WIDER: f64 = 3.0;

/// Whether a fact sews a strip of a notion along edges of one piece.
pub(super) fn is_laid(desk: &Desk<'_, '_>, work: &EditionWork<'_>) -> bool {
    work.verb == Verb::Sew && laid(desk, work).is_some()
}

/// Whether all seams of the step do.
pub(super) fn are_laid(desk: &Desk<'_, '_>) -> bool {
    let mut sewn = desk.step.works.iter().filter(|work| work.verb == Verb::Sew).peekable();
    sewn.peek().is_some() && sewn.all(|work| is_laid(desk, work))
}

/// The notion, and the piece with its edges.
fn laid(desk: &Desk<'_, '_>, work: &EditionWork<'_>) -> Option<(NotionId, CopyId, Vec<String>)> {
    let mut strip = None;
    let mut piece = None;
    let mut edges = Vec::new();
    for target in held(work, desk.edition) {
        match target {
            Held::Notion(notion) if strip.is_none() => strip = Some(notion),
            Held::Edge(copy, edge) if piece.is_none_or(|known| known == copy) => {
                piece = Some(copy);
                edges.push(edge);
            }
            _ => return None,
        }
    }
    Some((strip?, piece?, edges))
}

pub(super) fn draw<'a>(desk: &Desk<'a, '_>, scale: f64, in_row: bool) -> Result<Option<Page<'a>>, Undrawn> {
    let mut drawings = Vec::new();
    let mut names: Vec<String> = Vec::new();
    for work in desk.step.works.iter().filter(|work| work.verb == Verb::Sew) {
        let Some((strip, copy, edges)) = laid(desk, work) else { continue };
        let Some(part) = Part::copy(desk, copy, Face::Right, scale) else { return Ok(None) };
        let mut page = Page::new(desk.ruler);
        desk.paint(&mut page, &part, Vec2::ZERO, scale);
        let width = desk.figure(strip, NotionFigure::Width);
        let far = work.allowance.and_then(millimetres).unwrap_or(CLOSE);
        let wide = width.unwrap_or(far * WIDER).max(far * 1.5) / scale;
        for line in edges.iter().filter_map(|edge| part.rim(edge)).flat_map(|rim| &rim.lines) {
            let Some((_, inner)) = inward(line, &part.outline) else { continue };
            let edge = corners(line);
            let mut band = beside(&edge, inner, wide);
            band.reverse();
            page.path(desk.strip(strip), closed_line(&[edge, band].concat()));
        }
        let own: Vec<&str> = edges.iter().map(String::as_str).collect();
        let row = stitching(&part, &own, far / scale, None);
        row.stretches.into_iter().for_each(|stretch| page.path("stitch", stretch));
        page.name(&desk.name_and_side(copy, part.face), part.bounds());
        names.push(desk.notion(strip));
        drawings.push(page);
    }
    names.dedup();
    let mut page = Page::flowed(desk.ruler, drawings, in_row, 4.0, desk.sheet);
    desk.tell(&mut page, "draw_strip_along", &names);
    for work in desk.step.works.iter().filter(|work| work.verb == Verb::Sew) {
        desk.sewing(&mut page, work);
    }
    Ok(Some(page))
}

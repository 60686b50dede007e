//! A piece laid on another by edges that facts name, of which they do not say wholly where: it lies where its edges are held
//! to those of the other by any fact, and else in a part of it that is torn off all round.

use kurbo::{Affine, Point, Rect, Vec2};

use super::cloth::Face;
use super::desk::Desk;
use super::page::Page;
use super::paint::{CLOSE, stitching};
use super::part::Part;
use super::past::{Held, held, millimetres};
use super::rows::rooms;
use super::told::{rows, words_of};
use super::trace::{Side, open_line, runs_inside};
use crate::construct::LONG;
use crate::model::Verb;
use crate::resolve::{CopyId, EditionWork};

/// How much of the lower piece is drawn beyond the upper one, in mm on paper.
const ROUND: f64 = 8.0;
/// How far two sides may differ and still be one, in mm of cloth.
const LEVEL: f64 = 2.0;
/// How much of a long strip is drawn from the end that is held, in its widths.
const END: f64 = 2.0;

/// Draws a patch on its base, with the rows of all facts that hold it there.
pub(super) fn draw<'a>(
    desk: &Desk<'a, '_>,
    patch: CopyId,
    base: CopyId,
    facts: &[(Vec<String>, &EditionWork<'_>)],
    scale: f64,
) -> Option<Page<'a>> {
    let mut page = Page::new(desk.ruler);
    let mut below = Part::copy(desk, base, Face::Right, scale)?;
    let mut part = Part::copy(desk, patch, Face::Right, scale)?;
    turn_in(desk, &mut part, patch, scale);
    let (shift, anchored) = place(desk, (&part, patch), (&below, base), scale);
    let mut part = part.moved(Affine::translate(shift));
    strip_end(&mut part, facts);
    let room = part.bounds().inflate(ROUND, ROUND);
    below.torn_to(room, [anchored[0], anchored[0], anchored[1], anchored[1]]);
    desk.paint(&mut page, &below, Vec2::ZERO, scale);
    desk.paint(&mut page, &part, Vec2::ZERO, scale);
    for (edges, work) in facts {
        let far = work.allowance.and_then(millimetres).unwrap_or(CLOSE) / scale;
        let words = words_of(work);
        let (shares, level) = rows(&words);
        let edges: Vec<&str> = edges.iter().map(String::as_str).collect();
        if work.verb == Verb::Pin {
            edges.iter().for_each(|edge| desk.hold(&mut page, &part, edge, false));
            continue;
        }
        let row = stitching(&part, &edges, far, None);
        row.stretches.into_iter().for_each(|stretch| page.path("stitch", stretch));
        across(&mut page, &part, &shares, level);
        if let Some(allowance) = work.allowance.as_ref().filter(|_| !edges.is_empty()) {
            let from = if work.verb == Verb::Baste { "draw_from_its_edge" } else { "draw_from_its_edges" };
            page.caption(desk.row(work.verb, from, allowance));
        }
    }
    let taken = part.bounds();
    page.label_in_one(&desk.name(patch), &[taken.inset(-1.0)]);
    let seen = below.bounds();
    page.label_in_one(&desk.name_and_side(base, below.face), &rooms(seen, &[taken.intersect(seen)]));
    desk.nap_arrows(&mut page, &[&below, &part]);
    if anchored != [true, true] {
        page.caption(desk.say("draw_on", &[("name", &desk.name(patch)), ("names", &desk.name(base))]));
    }
    Some(page)
}

/// Folds away what was turned under at the edges of a patch, in this step or before.
fn turn_in(desk: &Desk<'_, '_>, part: &mut Part, patch: CopyId, scale: f64) {
    let steps = desk.edition.steps().take_while(|step| step.number <= desk.step.number);
    let folds = steps.flat_map(|step| &step.works).filter(|work| matches!(work.verb, Verb::Fold | Verb::Hem));
    let named: Vec<Held> = folds.flat_map(|work| held(work, desk.edition)).collect();
    let piece = desk.edition.cast[patch].piece;
    let names: Vec<String> = part.rims.iter().map(|rim| rim.name.clone()).collect();
    for edge in names.into_iter().filter(|edge| named.contains(&Held::Edge(patch, edge.clone()))) {
        let deep = desk.edition.values.allowance(piece, &edge).map_or(0.0, crate::measure::to_f64) / scale;
        if deep <= 0.0 || !part.runs_straight(&edge) {
            continue;
        }
        part.fold_away(&edge, deep);
        let moved: Vec<Vec2> = part.holds(&edge).into_iter().map(|(_, inner)| inner * deep).collect();
        if let Some(rim) = part.rims.iter_mut().find(|rim| rim.name == edge) {
            for (line, by) in rim.lines.iter_mut().zip(moved) {
                *line = Affine::translate(by) * line.clone();
            }
        }
    }
    part.outline = part.visible.clone();
}

/// How a patch is moved onto its base, and whether that is told across and down.
fn place(
    desk: &Desk<'_, '_>,
    (part, patch): (&Part, CopyId),
    (below, base): (&Part, CopyId),
    scale: f64,
) -> (Vec2, [bool; 2]) {
    let (own, room) = (part.bounds(), below.bounds());
    let mut shift = room.center() - own.center();
    let level = |one: f64, other: f64| (one - other).abs() * scale <= LEVEL;
    let mut told = [level(own.width(), room.width()), level(own.height(), room.height())];
    for work in
        desk.edition.steps().flat_map(|step| &step.works).filter(|work| work.verb.stitches() || work.verb == Verb::Pin)
    {
        let named = held(work, desk.edition);
        let of = |wanted: CopyId| {
            let edges = named.iter().filter_map(move |one| match one {
                Held::Edge(copy, edge) if *copy == wanted => Some(edge.as_str()),
                _ => None,
            });
            edges.collect::<Vec<_>>()
        };
        let ([mine], [its]) = (&of(patch)[..], &of(base)[..]) else { continue };
        let (Some((point, way)), Some((to, inner))) = (part.hold(mine), below.hold(its)) else { continue };
        // Edges that lie on each other look the same way.
        if way.dot(inner) < 0.9 {
            continue;
        }
        let by = (to - point).dot(inner);
        if inner.x.abs() > 0.9 {
            (shift.x, told[0]) = (by * inner.x, true);
        } else if inner.y.abs() > 0.9 {
            (shift.y, told[1]) = (by * inner.y, true);
        }
    }
    (shift, told)
}

/// Of a long strip that is held by one end, the end alone.
fn strip_end(part: &mut Part, facts: &[(Vec<String>, &EditionWork<'_>)]) {
    let bounds = part.bounds();
    let (short, long) = (bounds.width().min(bounds.height()), bounds.width().max(bounds.height()));
    let [(edges, _)] = facts else { return };
    let [edge] = &edges[..] else { return };
    if long < 2.0 * LONG * short || part.length(edge) > short * 1.1 {
        return;
    }
    if let Some((at, inner)) = part.hold(edge) {
        part.cut_back(at + inner * (short * END), -inner, Side::Torn);
    }
}

/// Rows across a part at shares of its width, or of its height.
fn across(page: &mut Page<'_>, part: &Part, shares: &[f64], level: bool) {
    let bounds: Rect = part.bounds();
    for share in shares {
        let line = match level {
            true => {
                let y = bounds.y0 + bounds.height() * share;
                [Point::new(bounds.x0 - 1.0, y), Point::new(bounds.x1 + 1.0, y)]
            }
            false => {
                let x = bounds.x0 + bounds.width() * share;
                [Point::new(x, bounds.y0 - 1.0), Point::new(x, bounds.y1 + 1.0)]
            }
        };
        runs_inside(&line, &part.visible).into_iter().for_each(|run| page.path("stitch", open_line(&run)));
    }
}

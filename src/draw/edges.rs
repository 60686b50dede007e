//! Edges turned to the wrong side, bound, trimmed and clipped.

use kurbo::{BezPath, Point, Vec2};

use super::bent;
use super::cloth::Cloth;
use super::desk::{Desk, Undrawn};
use super::handled::Handled;
use super::page::Page;
use super::paint::{CLOSE, stitching};
use super::part::{Part, Who};
use super::past::millimetres;
use super::told::words_of;
use super::trace::{Side, beside, closed_line, corners, cut_back, edge_to_edge, inward, length, open_line, place};
use crate::measure::to_f64;
use crate::model::Verb;
use crate::resolve::{CopyId, EditionWork};

/// How far binding reaches over an edge, in mm of cloth (common practice, no source).
const BINDING: f64 = 10.0;

/// An edge turned to the wrong side along its stitching line: what is turned shows the right side.
pub(super) fn turn(
    desk: &Desk<'_, '_>,
    page: &mut Page<'_>,
    part: &mut Part,
    one: &Handled<'_, '_>,
    verb: Verb,
    scale: f64,
) -> Result<(), Undrawn> {
    let piece = desk.edition.cast[one.copy].piece;
    let mut bands = Vec::new();
    for edge in &one.edges {
        let own = desk.edition.values.allowance(piece, edge).map(to_f64);
        let told = || one.work.allowance.and_then(millimetres).or_else(|| desk.hemmed(one.copy, edge));
        let Some(deep) = own.filter(|deep| *deep > 0.0).or_else(told).filter(|deep| *deep > 0.0) else {
            return Err(Undrawn::unclear(format!("nothing says how deep `{edge}` is turned")));
        };
        let twice =
            one.work.work.words.iter().any(|word| word.text.contains("twice")) || desk.turned_twice(one.copy, edge);
        bands.push((edge, deep / scale, if twice { deep / 2.0 } else { deep } / scale));
    }
    for (edge, deep, _) in &bands {
        if part.runs_straight(edge) {
            part.fold_away(edge, *deep);
        } else if !bent::fold_away(part, edge, *deep) {
            return Err(Undrawn::unclear(format!("`{edge}` bends too sharply to be drawn turned")));
        }
    }
    desk.paint(page, part, Vec2::ZERO, scale);
    let right = desk.class(one.copy, part.face.over());
    for (edge, deep, band) in &bands {
        let lines = part.rim(edge).map(|rim| rim.lines.clone()).unwrap_or_default();
        for (line, (point, inner)) in lines.iter().zip(part.holds(edge)) {
            let crease = point + inner * *deep;
            page.path(
                right,
                match part.runs_straight(edge) {
                    true => cut_back(&part.visible, crease + inner * *band, -inner, Side::Straight),
                    false => bent::band(line, inner, (*deep, deep + band), &part.visible),
                },
            );
            if verb == Verb::Hem {
                continue;
            }
            let fold = beside(&corners(line), inner, deep + 0.02);
            page.path("fold", open_line(&edge_to_edge(&fold, &part.visible)));
            // Over the fold, from what was outside to where it lies now.
            let along = Vec2::new(-inner.y, inner.x);
            let (from, to) = (crease - inner * 3.0 + along * 6.0, crease + inner * (band + 3.0) + along * 6.0);
            let mut arrow = BezPath::new();
            arrow.move_to(from);
            arrow.curve_to(from - along * 4.0, to - along * 4.0, to);
            page.path("arrow", arrow);
        }
        if verb == Verb::Hem {
            let near = (band - CLOSE / scale).max(band * 0.6);
            let line = stitching(part, &[edge.as_str()], deep + near, None);
            line.stretches.into_iter().for_each(|stretch| page.path("stitch", stretch));
        }
    }
    Ok(())
}

impl Desk<'_, '_> {
    /// Whether both edges that meet at a corner are sewn.
    fn is_sewn_round(&self, part: &Part, copy: CopyId, corner: Point) -> bool {
        let near = |point: Point| point.distance(corner) < 0.02;
        let meeting = part.rims.iter().filter(|rim| rim.lines.iter().any(|line| corners(line).into_iter().any(near)));
        meeting
            .map(|rim| self.seam_at(copy, &rim.name).is_some())
            .fold((true, 0), |(all, count), sewn| (all && sewn, count + 1))
            >= (true, 1)
    }

    /// Whether a fact of the step snips into the allowance of an edge.
    fn is_clipped(&self, copy: CopyId, edge: &str) -> bool {
        let wanted = super::past::Held::Edge(copy, edge.to_owned());
        let mut clips = self.step.works.iter().filter(|work| work.verb == Verb::Clip);
        clips.any(|work| super::past::held(work, self.edition).contains(&wanted))
    }

    /// How deep the hem is at which an edge is turned for good, in mm of cloth.
    fn hemmed(&self, copy: CopyId, edge: &str) -> Option<f64> {
        let wanted = super::past::Held::Edge(copy, edge.to_owned());
        let mut hems = self.edition.steps().flat_map(|step| &step.works).filter(|work| work.verb == Verb::Hem);
        let hem = hems.find(|work| super::past::held(work, self.edition).contains(&wanted))?;
        hem.allowance.and_then(millimetres)
    }

    /// Whether a fold before, or in this step, turned an edge twice.
    fn turned_twice(&self, copy: CopyId, edge: &str) -> bool {
        let wanted = super::past::Held::Edge(copy, edge.to_owned());
        let steps = self.edition.steps_to(Some(self.step.number));
        steps.flat_map(|step| &step.works).filter(|work| work.verb == Verb::Fold).any(|work| {
            work.work.words.iter().any(|word| word.text.contains("twice"))
                && super::past::held(work, self.edition).contains(&wanted)
        })
    }
}

/// How wide binding is over its edge, and how far from that edge it is stitched, in mm of cloth.
pub(super) fn bound(work: &EditionWork<'_>) -> (f64, f64) {
    let deep = work.allowance.and_then(millimetres).filter(|deep| *deep > 0.0).unwrap_or(BINDING);
    (deep, (deep - CLOSE).max(deep * 0.6))
}

/// Binding round edges, stitched along its inner side.
pub(super) fn bind(desk: &Desk<'_, '_>, page: &mut Page<'_>, part: &Part, one: &Handled<'_, '_>, scale: f64) {
    if desk.cloth(one.copy) == Cloth::Binding {
        // The binding itself has no edge of its own to bind.
        desk.paint(page, part, Vec2::ZERO, scale);
        return;
    }
    desk.paint(page, part, Vec2::ZERO, scale);
    let (deep, far) = bound(one.work);
    let (deep, far) = (deep / scale, far / scale);
    let all = one.edges_of(part);
    for rim in part.rims.iter().filter(|rim| all.contains(&rim.name.as_str())) {
        for line in &rim.lines {
            let Some((_, inner)) = inward(line, &part.outline) else { continue };
            let edge = corners(line);
            let mut band = beside(&edge, inner, deep);
            band.reverse();
            page.path("binding", closed_line(&[edge, band].concat()));
        }
    }
    let line = stitching(part, &all, far, None);
    line.stretches.into_iter().for_each(|stretch| page.path("stitch", stretch));
}

/// Allowances cut narrower, corners cut across, or edges snipped.
pub(super) fn cut(
    desk: &Desk<'_, '_>,
    page: &mut Page<'_>,
    part: &Part,
    one: &Handled<'_, '_>,
    verb: Verb,
    scale: f64,
) -> Result<(), Undrawn> {
    let corner = words_of(one.work).contains("corner");
    if one.edges.is_empty() && !corner {
        return Err(Undrawn::unclear("nothing says which edges are trimmed or clipped"));
    }
    desk.paint(page, part, Vec2::ZERO, scale);
    if corner {
        let allowance = desk.past.seams_of(one.copy).filter_map(|(seam, _)| seam.allowance).fold(0.0, f64::max);
        let reach = if allowance > 0.0 { allowance * 1.6 } else { 8.0 } / scale;
        let mut outline = corners(&part.outline);
        if outline.first() == outline.last() {
            outline.pop();
        }
        let count = outline.len();
        for at in 0..count {
            let (before, here, after) = (outline[(at + count - 1) % count], outline[at], outline[(at + 1) % count]);
            let (back, on) = (before - here, after - here);
            let sharp = back.normalize().dot(on.normalize()).abs() < 0.5;
            if sharp && part.turns_out(before, here, after) && desk.is_sewn_round(part, one.copy, here) {
                let (from, to) = (here + back.normalize() * reach, here + on.normalize() * reach);
                // Two dashes and the gap between them.
                let more = (from - to).normalize() * ((7.4 - from.distance(to)) / 2.0).max(0.6);
                page.path("cut-line", open_line(&[from + more, to - more]));
            }
        }
        let bounds = part.bounds();
        page.symbol("scissors", bounds.center() + Vec2::new(0.0, bounds.height() * 0.28), 8.0, 0.0);
        return Ok(());
    }
    for edge in &one.edges {
        let seam = desk.seam_at(one.copy, edge).and_then(|seam| seam.allowance).unwrap_or(10.0) / scale;
        let left = one.work.allowance.and_then(millimetres).map_or(seam / 2.0, |left| (seam - left / scale).max(0.2));
        let Some(rim) = part.rim(edge) else { continue };
        for line in &rim.lines {
            let points = corners(line);
            let Some((_, inner)) = inward(line, &part.outline) else { continue };
            if verb == Verb::Clip || desk.is_clipped(one.copy, edge) {
                snips(page, &points, inner, seam);
            }
            if verb != Verb::Clip {
                page.path("cut-line", open_line(&beside(&points, inner, left)));
                if verb == Verb::Grade {
                    // The other layer is left wider.
                    page.path("cut-line", open_line(&beside(&points, inner, left / 2.0)));
                }
                if let Some((point, along)) = place(&points, length(&points) * 0.2) {
                    page.symbol("scissors", point + inner * left, 6.5, along.atan2().to_degrees());
                }
            }
        }
    }
    Ok(())
}

/// Snips into an allowance, up to near its seam.
fn snips(page: &mut Page<'_>, points: &[Point], inner: Vec2, seam: f64) {
    let count = (length(points) / 4.0).max(2.0) as usize;
    for at in 1..count {
        let far = length(points) * at as f64 / count as f64;
        let Some((point, along)) = place(points, far) else { continue };
        let normal = Vec2::new(-along.y, along.x);
        let inside = if normal.dot(inner) > 0.0 { normal } else { -normal };
        page.path("cut-line", open_line(&[point, point + inside * (seam * 0.75)]));
    }
}

impl Part {
    /// Whether a corner of the outline points outwards.
    fn turns_out(&self, before: Point, here: Point, after: Point) -> bool {
        let inside = here + ((before - here).normalize() + (after - here).normalize()) * 0.05;
        matches!(self.who, Who::Copy(_)) && kurbo::Shape::contains(&self.outline, inside)
    }
}

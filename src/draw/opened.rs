//! A seam after it is sewn: the pieces opened out and pressed, seen from the right side.

use kurbo::{Point, Vec2};

use super::cloth::{Cloth, Face};
use super::desk::Desk;
use super::page::{Anchor, Page};
use super::paint::{CLOSE, stitching};
use super::part::{Part, Who};
use super::past::{Held, Seam, held, millimetres};
use super::stack::opened;
use super::trace::Side;
use crate::model::Verb;
use crate::resolve::{CopyId, EditionWork, ZipEdge};

/// How far what lies behind stands out, in mm on paper.
const BEHIND: Vec2 = Vec2::new(2.2, 1.8);
/// How deep a piece is drawn from its seam, in mm on paper: alone, and with another on the far side.
const DEEP: (f64, f64) = (36.0, 17.0);

/// What lies round a seam that is opened out.
struct Spread {
    parts: Vec<Part>,
    behind: Vec<Part>,
}

/// Draws topstitching beside seams, or seams under the iron.
pub(super) fn draw<'a>(desk: &Desk<'a, '_>, verb: Verb, scale: f64, beside: bool) -> Option<Page<'a>> {
    let mut page = Page::new(desk.ruler);
    let works: Vec<&EditionWork<'_>> = desk.step.works.iter().filter(|work| work.verb == verb).collect();
    let mut named: Vec<(CopyId, Vec<String>, &EditionWork<'_>)> = Vec::new();
    for work in works {
        for target in held(work, desk.edition) {
            let (copy, edges) = match target {
                Held::Edge(copy, edge) => (copy, vec![edge]),
                Held::Copy(copy) => (copy, all_edges(desk, copy, verb, scale)?),
                _ => continue,
            };
            match named.iter_mut().find(|(known, ..)| *known == copy) {
                Some((_, known, _)) => {
                    known.extend(edges.into_iter().filter(|edge| !known.contains(edge)).collect::<Vec<_>>())
                }
                None => named.push((copy, edges, work)),
            }
        }
    }
    let mut looks: Vec<String> = Vec::new();
    let mut again: Vec<String> = Vec::new();
    let mut shown: Vec<CopyId> = Vec::new();
    for (copy, edges, work) in &named {
        if shown.contains(copy) {
            continue;
        }
        let look = format!("{:?} {} {edges:?}", desk.edition.cast[*copy].piece, desk.class(*copy, Face::Right));
        if looks.contains(&look) {
            again.push(desk.name(*copy));
            continue;
        }
        looks.push(look);
        let spread = desk.spread(*copy, edges, scale)?;
        shown.extend(spread.parts.iter().chain(&spread.behind).filter_map(|part| match part.who {
            Who::Copy(copy) => Some(copy),
            Who::Zip(_) => None,
        }));
        page.join(one(desk, &spread, &named, verb, scale), beside, 5.0);
        if verb != Verb::Press
            && let Some(allowance) = &work.allowance
        {
            let sewn = edges.iter().any(|edge| desk.seam_at(*copy, edge).is_some());
            let from = if sewn { "draw_from_seam" } else { "draw_from_edge" };
            page.caption(desk.row(verb, from, allowance));
        }
    }
    desk.tell(&mut page, "draw_same_with", &again);
    Some(page)
}

/// All edges of a copy; when it is pressed, those that were sewn.
fn all_edges(desk: &Desk<'_, '_>, copy: CopyId, verb: Verb, scale: f64) -> Option<Vec<String>> {
    let part = Part::copy(desk, copy, Face::Right, scale)?;
    let names = part.rims.iter().map(|rim| rim.name.clone());
    Some(names.filter(|edge| verb != Verb::Press || desk.seam_at(copy, edge).is_some()).collect())
}

fn one<'a>(
    desk: &Desk<'a, '_>,
    spread: &Spread,
    named: &[(CopyId, Vec<String>, &EditionWork<'_>)],
    verb: Verb,
    scale: f64,
) -> Page<'a> {
    let mut page = Page::new(desk.ruler);
    for part in &spread.behind {
        desk.paint(&mut page, part, BEHIND, scale);
    }
    for part in &spread.parts {
        desk.paint(&mut page, part, Vec2::ZERO, scale);
    }
    let zip = spread.parts.iter().find(|part| matches!(part.who, Who::Zip(_)));
    if let Some(zip) = zip {
        desk.slider(&mut page, zip, scale);
    }
    for part in &spread.parts {
        let Who::Copy(copy) = part.who else { continue };
        let Some((_, edges, work)) = named.iter().find(|(known, ..)| *known == copy) else { continue };
        if verb == Verb::Press {
            if let Some((point, inner)) = edges.first().and_then(|edge| part.hold(edge)) {
                let at = point + inner * 7.5;
                page.symbol("iron", Point::new(at.x - part.bounds().width().min(60.0) / 4.0, at.y), 11.0, 0.0);
            }
            continue;
        }
        let far = work.allowance.and_then(millimetres).unwrap_or(CLOSE);
        let mut runs: Vec<(f64, Vec<&str>)> = Vec::new();
        for edge in edges {
            let seam = desk.seam_at(copy, edge).and_then(|seam| seam.allowance).unwrap_or(0.0);
            match runs.iter_mut().find(|(known, _)| (*known - seam).abs() < 0.01) {
                Some((_, run)) => run.push(edge),
                None => runs.push((seam, vec![edge])),
            }
        }
        for (seam, run) in runs {
            let line = stitching(part, &run, (seam + far) / scale, None);
            line.stretches.into_iter().for_each(|stretch| page.path("stitch", stretch));
        }
    }
    for part in &spread.parts {
        if let Who::Copy(copy) = part.who
            && !desk.is_zip_end(copy)
        {
            page.name(&desk.name_and_side(copy, part.face), part.bounds());
        }
    }
    if let Some(zip) = zip {
        let (bounds, all) = (zip.bounds(), page.bounds());
        if bounds.y0 - all.y0 < 1.5 {
            page.label(&desk.zip_face(Face::Right), Point::new(bounds.center().x, all.y0 - 1.2), Anchor::Middle);
        }
    }
    desk.nap_arrows(&mut page, &spread.behind.iter().chain(&spread.parts).collect::<Vec<_>>());
    let behind: Vec<String> = spread
        .behind
        .iter()
        .filter_map(|part| match part.who {
            Who::Copy(copy) => Some(desk.name(copy)),
            Who::Zip(_) => None,
        })
        .collect();
    desk.tell(&mut page, "draw_behind", &behind);
    page
}

impl Desk<'_, '_> {
    /// The seam that holds an edge since before the step.
    pub fn seam_at(&self, copy: CopyId, edge: &str) -> Option<&Seam> {
        self.past.seams_of(copy).find(|(_, held)| *held == edge).map(|(seam, _)| seam)
    }

    /// Whether a copy is sewn to the end of a zip.
    fn is_zip_end(&self, copy: CopyId) -> bool {
        let end = |member: &Held| matches!(member, Held::ZipEdge(_, edge) if !edge.is_tape());
        self.past.seams_of(copy).any(|(seam, _)| seam.members.iter().any(end))
    }

    fn spread(&self, root: CopyId, edges: &[String], scale: f64) -> Option<Spread> {
        let part = Part::copy(self, root, Face::Right, scale)?;
        let mut spread = Spread { parts: vec![part], behind: Vec::new() };
        let whole = edges.len() > 2;
        for edge in edges.iter().filter(|_| !whole) {
            if let Some(seam) = self.seam_at(root, edge).cloned() {
                self.unfold(&mut spread, root, edge, &seam, scale);
            }
        }
        self.shorten(&mut spread, root, edges);
        Some(spread)
    }

    /// Lays out what a seam holds beside the root: cloth opened out; with a zip, the zip, what lies
    /// beyond it, and the cloth that is pressed away from it to the back.
    fn unfold(&self, spread: &mut Spread, root: CopyId, edge: &str, seam: &Seam, scale: f64) {
        let allowance = seam.allowance.unwrap_or(0.0) / scale;
        let base = spread.parts[0].clone();
        if !base.is_straight(edge) {
            return;
        }
        let zip = seam.members.iter().find_map(|member| match member {
            Held::ZipEdge(zip, tape) => Some((*zip, *tape)),
            _ => None,
        });
        let others: Vec<(CopyId, String)> = cloth_of(seam).into_iter().filter(|(copy, _)| *copy != root).collect();
        spread.parts[0].fold_away(edge, allowance);
        let Some((zip, tape)) = zip else {
            for (copy, its) in others.iter().take(1) {
                let Some(part) = Part::copy(self, *copy, Face::Right, scale) else { continue };
                if (part.length(its) - base.length(edge)).abs() * scale > 1.0 || !part.is_straight(its) {
                    continue;
                }
                let Some(mut part) = opened(part, its, allowance, &base, edge, allowance) else { continue };
                part.fold_away(its, allowance);
                spread.parts.push(part);
            }
            return;
        };
        self.lay_behind(spread, &others, &base, edge, allowance, scale);
        let along = tape.is_tape();
        let long = self.zip_length(zip, along.then(|| base.length(edge) * scale));
        let Some(mut strip) =
            opened(Part::zip(zip, long, Face::Right, scale), tape.word(), allowance, &base, edge, allowance)
        else {
            return;
        };
        if !along && let Some((point, inner)) = strip.hold(tape.word()) {
            let bounds = base.bounds();
            let across = bounds.width() * inner.x.abs() + bounds.height() * inner.y.abs();
            strip.cut_back(point + inner * across * 1.2, -inner, Side::Torn);
            spread.parts.insert(0, strip);
            return;
        }
        let mut ends = Vec::new();
        self.zip_ends(&strip, &[], scale, &mut ends);
        let other = if tape == ZipEdge::TapeA { ZipEdge::TapeB } else { ZipEdge::TapeA };
        let held = Held::ZipEdge(zip, other);
        if let Some(seam) = self.past.seams.iter().find(|seam| seam.members.contains(&held)) {
            let allowance = seam.allowance.unwrap_or(0.0) / scale;
            let mut cloths = cloth_of(seam);
            // The outer cloth lies in front.
            cloths.sort_by_key(|(copy, _)| self.cloth(*copy) == Cloth::Lining);
            if let Some(((copy, its), rest)) = cloths.split_first()
                && let Some(mut part) = Part::copy(self, *copy, Face::Right, scale)
                    .and_then(|part| opened(part, its, allowance, &strip, other.word(), allowance))
            {
                self.lay_behind(spread, rest, &part, its, allowance, scale);
                part.fold_away(its, allowance);
                spread.parts.push(part);
            }
        }
        // The cloth beside the zip lies on its tapes.
        spread.parts.insert(0, strip);
        spread.parts.splice(1..1, ends);
        let at = spread.parts.iter().position(|part| part.who == Who::Copy(root)).unwrap_or(0);
        let root = spread.parts.remove(at);
        spread.parts.push(root);
    }

    /// Cloth pressed to the back of a part: its wrong side towards it, the seam lines on each other.
    fn lay_behind(
        &self,
        spread: &mut Spread,
        cloths: &[(CopyId, String)],
        front: &Part,
        edge: &str,
        allowance: f64,
        scale: f64,
    ) {
        let Some((point, inner)) = front.hold(edge) else { return };
        for (copy, its) in cloths {
            let part = Part::copy(self, *copy, Face::Wrong, scale);
            if let Some(mut part) = part.and_then(|part| part.laid(its, allowance, point + inner * allowance, inner)) {
                part.fold_away(its, allowance);
                spread.behind.push(part);
            }
        }
    }

    /// Cuts deep pieces back, so that the seam is drawn large.
    fn shorten(&self, spread: &mut Spread, root: CopyId, edges: &[String]) {
        let [edge] = edges else { return };
        let Some(base) =
            spread.parts.iter().find(|part| part.who == Who::Copy(root)).filter(|part| part.is_straight(edge))
        else {
            return;
        };
        let Some((point, inner)) = base.hold(edge) else { return };
        let across = spread
            .parts
            .iter()
            .any(|part| matches!(part.who, Who::Copy(copy) if copy != root && !self.is_zip_end(copy)));
        let deep = if across { DEEP.1 } else { DEEP.0 };
        for part in spread.parts.iter_mut().chain(&mut spread.behind) {
            let Who::Copy(copy) = part.who else { continue };
            if self.is_zip_end(copy) {
                continue;
            }
            let bounds = part.bounds();
            let own = (bounds.center() - point).dot(inner) > 0.0;
            let reach = |way: Vec2| {
                (bounds.center() - point).dot(way)
                    + (bounds.width() * way.x.abs() + bounds.height() * way.y.abs()) / 2.0
            };
            let (way, far) = if own { (inner, reach(inner)) } else { (-inner, reach(-inner)) };
            // The far side begins beyond the zip.
            let near = (bounds.center() - point).dot(way)
                - (bounds.width() * way.x.abs() + bounds.height() * way.y.abs()) / 2.0;
            if far - near.max(0.0) > deep * 1.15 {
                part.cut_back(point + way * (near.max(0.0) + deep), -way, Side::Torn);
            }
        }
    }
}

/// The copies in a seam with their edges.
fn cloth_of(seam: &Seam) -> Vec<(CopyId, String)> {
    let cloths = seam.members.iter().filter_map(|member| match member {
        Held::Edge(copy, edge) => Some((*copy, edge.clone())),
        _ => None,
    });
    cloths.collect()
}

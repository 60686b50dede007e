//! Pieces laid on each other as they are sewn: which lies where, worked out from the edges that meet.

use kurbo::{Point, Vec2};

use super::cloth::{Cloth, Face};
use super::desk::Desk;
use super::part::{Part, Who};
use super::past::{Held, Seam};
use super::told::words_of;
use super::trace::{Side, corners, length, nearest, place};
use crate::model::{NotionFigure, Verb};
use crate::resolve::{CopyId, NotionId, ZipEdge};

/// How far two edges may differ and still be one line, in mm of cloth.
const LEVEL: f64 = 1.0;

/// How many seams are tried as the first of a pile.
const MOST: usize = 5;

/// A thing with its edges in a seam.
pub(super) type Owner = (Who, Vec<String>);

/// Pieces on each other, the lowest first.
pub(super) struct Stack {
    pub layers: Vec<Vec<Part>>,
    /// The seams that hold, by their places in what was asked.
    pub seams: Vec<usize>,
}

impl Stack {
    pub fn part(&self, who: Who) -> Option<&Part> {
        self.layers.iter().flatten().find(|part| part.who == who)
    }

    fn layer(&self, who: Who) -> Option<usize> {
        self.layers.iter().position(|layer| layer.iter().any(|part| part.who == who))
    }

    /// The layers that are cloth, by their places.
    pub fn cloths(&self) -> Vec<usize> {
        let cloth = |layer: &Vec<Part>| matches!(layer[0].who, Who::Copy(_));
        self.layers.iter().enumerate().filter(|(_, layer)| cloth(layer)).map(|(at, _)| at).collect()
    }
}

/// The things that a seam holds, cloth before zips at the bottom, each with its edges.
pub(super) fn owners(seam: &Seam) -> Vec<Owner> {
    let mut found: Vec<Owner> = Vec::new();
    for member in &seam.members {
        let (who, edge) = match member {
            Held::Edge(copy, edge) => (Who::Copy(*copy), edge.clone()),
            Held::ZipEdge(zip, edge) => (Who::Zip(*zip), edge.word().to_owned()),
            Held::Copy(_) | Held::Notion(_) => continue,
        };
        match found.iter_mut().find(|(known, _)| *known == who) {
            Some((_, edges)) => edges.push(edge),
            None => found.push((who, vec![edge])),
        }
    }
    if let Some(first) = found.iter().position(|(who, _)| matches!(who, Who::Copy(_))) {
        let first = found.remove(first);
        found.insert(0, first);
    }
    found
}

impl Desk<'_, '_> {
    /// Lays the pieces of the first seam on each other, and joins the seams after it that fit the same
    /// pile. `None` when the edges of the first do not meet as drawn.
    pub fn stack(&self, seams: &[&Seam], scale: f64) -> Option<Stack> {
        let first = owners(seams.first()?);
        let (Who::Copy(lowest), edges) = first.first()? else { return None };
        if first.len() < 2 {
            return None;
        }
        let base = Part::copy(self, *lowest, Face::Right, scale)?;
        let mut stack = Stack { layers: vec![vec![base.clone()]], seams: vec![0] };
        let mut covered = Vec::new();
        for owner in &first[1..] {
            let part = match self.twin(&base, owner, seams, scale) {
                Some(twin) => twin,
                None => self.lay_on(owner, &base, edges, &mut covered, scale)?,
            };
            let mut layer = vec![part.clone()];
            if matches!(part.who, Who::Zip(_)) {
                self.zip_ends(&part, seams, scale, &mut layer);
            }
            stack.layers.push(layer);
        }
        for (at, seam) in seams.iter().enumerate().skip(1) {
            let held = owners(seam);
            let before = stack.layers.clone();
            self.beside(&mut stack, &base, &held, &mut covered, scale);
            if held.iter().all(|(who, _)| self.open_to(&mut stack, *who, scale)) && fits(&stack, &held) {
                stack.seams.push(at);
            } else {
                stack.layers = before;
            }
        }
        Some(stack)
    }

    /// Lays another piece beside the one on the base, where a seam joins it to another of the base's edges.
    fn beside(&self, stack: &mut Stack, base: &Part, held: &[Owner], covered: &mut Vec<String>, scale: f64) {
        let Some((_, edges)) = held.iter().find(|(who, _)| *who == base.who) else { return };
        let [other] = held.iter().filter(|(who, _)| *who != base.who).collect::<Vec<_>>()[..] else { return };
        if stack.part(other.0).is_some() || !matches!(other.0, Who::Copy(_)) || stack.layers.len() != 2 {
            return;
        }
        let Some(part) = self.lay_on(other, base, edges, covered, scale) else { return };
        let room = part.bounds();
        let free = |known: &Part| known.bounds().intersect(room).area() < 0.15 * room.area().min(known.bounds().area());
        if stack.layers[1].iter().all(free) {
            stack.layers[1].push(part);
        }
    }

    /// Whether a copy lies on another with its right side up: it was stitched on it from that side, or the words say so.
    fn lies_up(&self, copy: CopyId, below: CopyId) -> bool {
        let works = self.edition.steps_to(Some(self.step.number)).flat_map(|step| &step.works);
        let mut both = works.filter(|work| {
            let of = |wanted: CopyId| work.touched().any(|touched| touched.copy() == Some(wanted));
            of(copy) && of(below)
        });
        both.any(|work| {
            matches!(work.verb, Verb::Topstitch | Verb::Edgestitch | Verb::Applique | Verb::Boxstitch)
                || ["right side up", "right sides up"].iter().any(|up| words_of(work).contains(up))
        })
    }

    /// The pile that holds most of some seams, whichever it begins with, the first of several alike: a pocket that is as wide as
    /// its panel lies level with it only if its lower edge is laid first. The seams in the order in which they were asked.
    pub fn best_stack<'s>(&self, seams: &[&'s Seam], scale: f64) -> Option<(Stack, Vec<&'s Seam>)> {
        let mut best: Option<(Stack, Vec<&'s Seam>)> = None;
        for first in 0..seams.len().min(MOST) {
            let mut order = seams.to_vec();
            order[..=first].rotate_right(1);
            let Some(stack) = self.stack(&order, scale) else { continue };
            let count = stack.seams.len();
            if best.as_ref().is_none_or(|(known, _)| known.seams.len() < count) {
                best = Some((stack, order));
            }
            if count == seams.len() {
                break;
            }
        }
        best
    }

    /// A copy of the base's own piece, all of whose seams join edges of one name: that is only meant of
    /// a piece which looks the same turned over.
    fn twin(&self, base: &Part, (who, _): &Owner, seams: &[&Seam], scale: f64) -> Option<Part> {
        let (Who::Copy(lower), Who::Copy(upper)) = (base.who, *who) else { return None };
        let (one, other) = (&self.edition.cast[lower], &self.edition.cast[upper]);
        let joins: Vec<Vec<Owner>> =
            seams.iter().map(|seam| owners(seam)).filter(|held| held.iter().any(|(known, _)| known == who)).collect();
        let edges =
            |held: &[Owner], who: Who| held.iter().find(|(known, _)| *known == who).map(|(_, edges)| edges.clone());
        let same = joins.iter().all(|held| edges(held, base.who) == edges(held, *who));
        if one.piece != other.piece || one.mirrored != other.mirrored || !same || !looks_same_over(base) {
            return None;
        }
        let mut twin = Part::copy(self, upper, Face::Right, scale)?;
        twin.face = Face::Wrong;
        Some(twin)
    }

    /// Another part laid on the base so that its edges lie on the base's, right sides together.
    fn lay_on(
        &self,
        (who, own): &Owner,
        base: &Part,
        edges: &[String],
        covered: &mut Vec<String>,
        scale: f64,
    ) -> Option<Part> {
        let who = *who;
        let part = match (who, base.who) {
            (Who::Copy(copy), Who::Copy(below)) if self.lies_up(copy, below) => {
                Part::copy(self, copy, Face::Right, scale)?
            }
            (Who::Copy(copy), _) => Part::copy(self, copy, Face::Wrong, scale)?,
            (Who::Zip(zip), Who::Copy(below)) => {
                // A zip faces the right side of the outer cloth.
                let face = if self.cloth(below) == Cloth::Lining { Face::Right } else { Face::Wrong };
                let along = own.iter().any(|edge| edge.starts_with("tape"));
                let beside = edges.first().filter(|_| along).map(|edge| base.length(edge) * scale);
                Part::zip(zip, self.zip_length(zip, beside), face, scale)
            }
            _ => return None,
        };
        // Edges of one length and one name meet before others, unless others bring cloth to more edges
        // of the base.
        let mut pairs: Vec<(&String, &String)> =
            own.iter().flat_map(|mine| edges.iter().map(move |edge| (mine, edge))).collect();
        pairs.sort_by_key(|(mine, edge)| {
            let apart = (part.length(mine) - base.length(edge)).abs() * scale / LEVEL;
            (apart.round() as u64, mine != edge)
        });
        let mut best: Option<(usize, Part)> = None;
        for (mine, edge) in pairs {
            let Some((point, way)) = base.hold(edge) else { continue };
            let Some(mut laid) = part.clone().laid(mine, 0.0, point, way) else { continue };
            if !meet(&laid, own, base, edges, scale) {
                continue;
            }
            // What is cut on the straight grain lies along it, too.
            let straight = part.hold(mine).is_some_and(|(_, inside)| inside.dot(way).abs() > 0.9);
            let reached =
                edges.iter().filter(|edge| !covered.contains(edge) && reaches(&laid, own, base, edge)).count();
            let more = 2 * reached + usize::from(straight);
            if best.as_ref().is_some_and(|(known, _)| *known >= more) {
                continue;
            }
            if matches!(who, Who::Zip(_)) && matches!(mine.as_str(), "start" | "end") {
                // Only the end of the zip matters there.
                let bounds = base.bounds();
                let across = if way.x.abs() > way.y.abs() { bounds.width() } else { bounds.height() };
                laid.cut_back(point + way * across * 2.0, -way, Side::Torn);
            }
            best = Some((more, laid));
        }
        let (_, laid) = best?;
        covered.extend(edges.iter().filter(|edge| reaches(&laid, own, base, edge)).cloned());
        Some(laid)
    }

    /// The cloth that was sewn to the ends of a zip, turned outwards.
    pub fn zip_ends(&self, zip: &Part, seams: &[&Seam], scale: f64, layer: &mut Vec<Part>) {
        let Who::Zip(notion) = zip.who else { return };
        for end in [ZipEdge::Start, ZipEdge::End] {
            let held = Held::ZipEdge(notion, end);
            if seams.iter().any(|seam| seam.members.contains(&held)) {
                continue;
            }
            let Some(seam) = self.past.seams.iter().find(|seam| seam.members.contains(&held)) else { continue };
            let tabs: Vec<(CopyId, &String)> = seam
                .members
                .iter()
                .filter_map(|member| match member {
                    Held::Edge(copy, edge) => Some((*copy, edge)),
                    _ => None,
                })
                .collect();
            // The outer cloth lies on the face of the zip, the lining on its back.
            let wanted =
                tabs.iter().find(|(copy, _)| (self.cloth(*copy) == Cloth::Lining) == (zip.face == Face::Wrong));
            let Some((copy, edge)) = wanted.or(tabs.first()) else { continue };
            let allowance = seam.allowance.unwrap_or(0.0) / scale;
            let Some(mut tab) = Part::copy(self, *copy, Face::Right, scale)
                .and_then(|tab| opened(tab, edge, allowance, zip, end.word(), allowance))
            else {
                continue;
            };
            tab.fold_away(edge, allowance);
            if self.past.trimmed.contains(copy) {
                for tape in ["tape_a", "tape_b"] {
                    if let Some((point, inner)) = zip.hold(tape) {
                        tab.cut_back(point, inner, Side::Straight);
                    }
                }
            }
            layer.push(tab);
        }
    }

    /// How long a zip is drawn, in mm of cloth: between its ends' cloth as long as the edge that it
    /// is sewn to; else its own length, as far as the edge goes.
    pub fn zip_length(&self, zip: NotionId, beside: Option<f64>) -> f64 {
        let own = self.figure(zip, NotionFigure::Length).unwrap_or(200.0);
        let Some(beside) = beside else { return own };
        let mut between = beside;
        let mut ends = 0;
        for end in [ZipEdge::Start, ZipEdge::End] {
            let held = Held::ZipEdge(zip, end);
            let Some(seam) = self.past.seams.iter().find(|seam| seam.members.contains(&held)) else { continue };
            let tab = seam.members.iter().find_map(|member| match member {
                Held::Edge(copy, edge) => Some((*copy, edge)),
                _ => None,
            });
            let Some((copy, edge)) = tab else { continue };
            let Some(part) = Part::copy(self, copy, Face::Right, 1.0) else { continue };
            let Some((point, inner)) = part.hold(edge) else { continue };
            let reach = part.bounds().center() - point;
            between -= 2.0 * reach.dot(inner) - 2.0 * seam.allowance.unwrap_or(0.0);
            ends += 1;
        }
        // What the tape loses at its sewn ends is counted above once for each.
        if ends > 0 && between > 0.0 { between.min(own) } else { own.min(beside) }
    }

    /// Whether a part is in the pile; one that was sewn to a part of it before is opened out beside it.
    fn open_to(&self, stack: &mut Stack, who: Who, scale: f64) -> bool {
        if stack.layer(who).is_some() {
            return true;
        }
        let Who::Copy(copy) = who else { return false };
        for (seam, edge) in self.past.seams_of(copy) {
            for member in &seam.members {
                let Held::Edge(other, its) = member else { continue };
                let Some(layer) = stack.layer(Who::Copy(*other)).filter(|_| *other != copy) else { continue };
                let allowance = seam.allowance.unwrap_or(0.0) / scale;
                let Some(known) = stack.part(Who::Copy(*other)).cloned() else { continue };
                let Some(part) = Part::copy(self, copy, known.face, scale) else { continue };
                let fits = (part.length(edge) - known.length(its)).abs() * scale <= LEVEL;
                if !fits || !part.is_straight(edge) || !known.is_straight(its) {
                    continue;
                }
                let Some(mut part) = opened(part, edge, allowance, &known, its, allowance) else { continue };
                part.fold_away(edge, allowance);
                if let Some(known) = stack.layers[layer].iter_mut().find(|part| part.who == Who::Copy(*other)) {
                    known.fold_away(its, allowance);
                }
                stack.layers[layer].push(part);
                return true;
            }
        }
        false
    }
}

/// Whether an outline turned over from side to side is itself again.
fn looks_same_over(part: &Part) -> bool {
    let outline = corners(&part.outline);
    let middle = part.bounds().center().x;
    let closed: Vec<Point> = outline.iter().copied().chain(outline.first().copied()).collect();
    let over = outline.iter().map(|point| Point::new(2.0 * middle - point.x, point.y));
    over.into_iter()
        .all(|point| place(&closed, nearest(&closed, point)).is_some_and(|(near, _)| near.distance(point) < 0.05))
}

/// Opened out: the seam lines of both edges lie on each other, the parts on both sides of it.
pub(super) fn opened(part: Part, edge: &str, allowance: f64, to: &Part, its: &str, its_allowance: f64) -> Option<Part> {
    let (point, inner) = to.hold(its)?;
    part.laid(edge, allowance, point + inner * its_allowance, -inner)
}

/// Whether all edges of a seam meet in the pile.
fn fits(stack: &Stack, held: &[Owner]) -> bool {
    let Some(((who, edges), others)) = held.split_first() else { return false };
    let Some(base) = stack.part(*who) else { return false };
    others.iter().all(|(other, own)| {
        stack
            .part(*other)
            .is_some_and(|part| stack.layer(*who) != stack.layer(*other) && meet(part, own, base, edges, 1.0))
    })
}

/// Whether the edges of one part lie on those of another: the shorter run lies on the longer.
fn meet(part: &Part, own: &[String], base: &Part, edges: &[String], scale: f64) -> bool {
    let lines = |part: &Part, names: &[String]| -> Vec<Vec<Point>> {
        names.iter().filter_map(|name| part.rim(name)).flat_map(|rim| rim.lines.iter().map(corners)).collect()
    };
    let (mine, its) = (lines(part, own), lines(base, edges));
    let long = |lines: &[Vec<Point>]| lines.iter().map(|line| length(line)).sum::<f64>();
    let (short, other) = if long(&mine) <= long(&its) { (&mine, &its) } else { (&its, &mine) };
    let within = (LEVEL / scale).max(0.6);
    let level = |point: Point| {
        other
            .iter()
            .any(|line| place(line, nearest(line, point)).is_some_and(|(near, _)| near.distance(point) <= within))
    };
    let shares = [0.02, 0.25, 0.5, 0.75, 0.98];
    !short.is_empty()
        && short.iter().all(|line| {
            shares.iter().all(|share| place(line, length(line) * share).is_some_and(|(point, _)| level(point)))
        })
}

/// Whether an edge of the base lies under one of a part's.
fn reaches(part: &Part, own: &[String], base: &Part, edge: &str) -> bool {
    let Some((middle, _)) = base.hold(edge) else { return false };
    let rims = own.iter().filter_map(|name| part.rim(name)).flat_map(|rim| &rim.lines);
    rims.map(corners)
        .any(|line| place(&line, nearest(&line, middle)).is_some_and(|(near, _)| near.distance(middle) < 1.0))
}

/// The sides of the sheet on which a seam's edge lies: the direction out of the piece.
pub(super) fn outwards(part: &Part, edges: &[String]) -> Vec<Vec2> {
    edges.iter().filter_map(|edge| part.hold(edge)).map(|(_, inner)| -inner).collect()
}

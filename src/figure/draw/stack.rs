//! Pieces laid on each other as they are sewn: which lies where, worked out from the edges that meet.

use kurbo::{Point, Vec2};

use super::Desk;
use super::cloth::{Cloth, Face};
use super::part::{Part, Who};
use super::past::Seam;
use super::trace::{Side, corners, length, nearest, place};
use crate::construct::Target;

/// How far two edges may differ and still be one line, in mm of cloth.
const LEVEL: f64 = 1.0;

/// A thing with its edges in a seam.
pub(super) type Owner = (Who, Vec<String>);

/// Pieces on each other, the lowest first.
pub(super) struct Stack {
    pub layers: Vec<Vec<Part>>,
    /// The seams that hold, by their places in what was asked.
    pub seams: Vec<usize>,
    /// Edges at which parts of one layer are opened out.
    pub opened: Vec<(usize, String)>,
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

    /// The opened edges of a part.
    pub fn hidden(&self, part: &Part) -> Vec<&str> {
        let mine = |copy: usize| part.who == Who::Copy(copy);
        self.opened.iter().filter(|(copy, _)| mine(*copy)).map(|(_, edge)| edge.as_str()).collect()
    }
}

/// The things that a seam holds, cloth before zips at the bottom, each with its edges.
pub(super) fn owners(seam: &Seam) -> Vec<Owner> {
    let mut found: Vec<Owner> = Vec::new();
    for member in &seam.members {
        let (who, edge) = match member {
            Target::Edge(copy, edge) => (Who::Copy(*copy), edge.clone()),
            Target::NotionEdge(zip, edge) => (Who::Zip(*zip), edge.clone()),
            Target::Copy(_) | Target::Notion(_) | Target::Unknown => continue,
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
        let mut stack = Stack { layers: vec![vec![base.clone()]], seams: vec![0], opened: Vec::new() };
        for (who, own) in &first[1..] {
            let part = self.lay_on(*who, own, &base, edges, scale)?;
            let mut layer = vec![part.clone()];
            if matches!(part.who, Who::Zip(_)) {
                self.zip_ends(&part, seams, scale, &mut layer);
            }
            stack.layers.push(layer);
        }
        for (at, seam) in seams.iter().enumerate().skip(1) {
            let held = owners(seam);
            let before = (stack.layers.clone(), stack.opened.clone());
            if held.iter().all(|(who, _)| self.open_to(&mut stack, *who, scale)) && fits(&stack, &held) {
                stack.seams.push(at);
            } else {
                (stack.layers, stack.opened) = before;
            }
        }
        Some(stack)
    }

    /// Another part laid on the base so that its edges lie on the base's, right sides together.
    fn lay_on(&self, who: Who, own: &[String], base: &Part, edges: &[String], scale: f64) -> Option<Part> {
        let part = match (who, base.who) {
            (Who::Copy(copy), _) => Part::copy(self, copy, Face::Wrong, scale)?,
            (Who::Zip(zip), Who::Copy(below)) => {
                // A zip faces the right side of the outer cloth.
                let face = if self.cloth(below) == Cloth::Lining { Face::Right } else { Face::Wrong };
                let beside = edges.first().map(|edge| base.length(edge) * scale);
                Part::zip(zip, self.zip_length(zip, beside), face, scale)
            }
            _ => return None,
        };
        // Edges of one name meet before others.
        let same = own.iter().flat_map(|mine| edges.iter().filter(move |edge| *edge == mine).map(move |edge| (mine, edge)));
        let all = own.iter().flat_map(|mine| edges.iter().map(move |edge| (mine, edge)));
        for (mine, edge) in same.chain(all) {
            let Some((point, way)) = base.hold(edge) else { continue };
            let Some(laid) = part.clone().laid(mine, 0.0, point, way) else { continue };
            if meet(&laid, own, base, edges, scale) {
                let mut laid = laid;
                if matches!(who, Who::Zip(_)) && matches!(mine.as_str(), "start" | "end") {
                    // Only the end of the zip matters there.
                    let bounds = base.bounds();
                    let across = if way.x.abs() > way.y.abs() { bounds.width() } else { bounds.height() };
                    laid.cut_back(point + way * across * 2.0, -way, Side::Torn);
                }
                return Some(laid);
            }
        }
        None
    }

    /// The cloth that was sewn to the ends of a zip, turned outwards.
    pub fn zip_ends(&self, zip: &Part, seams: &[&Seam], scale: f64, layer: &mut Vec<Part>) {
        let Who::Zip(notion) = zip.who else { return };
        for end in ["start", "end"] {
            let held = Target::NotionEdge(notion, end.to_owned());
            if seams.iter().any(|seam| seam.members.contains(&held)) {
                continue;
            }
            let Some(seam) = self.past.seams.iter().find(|seam| seam.members.contains(&held)) else { continue };
            let tabs: Vec<(usize, &String)> = seam
                .members
                .iter()
                .filter_map(|member| match member {
                    Target::Edge(copy, edge) => Some((*copy, edge)),
                    _ => None,
                })
                .collect();
            // The outer cloth lies on the face of the zip, the lining on its back.
            let wanted = tabs.iter().find(|(copy, _)| (self.cloth(*copy) == Cloth::Lining) == (zip.face == Face::Wrong));
            let Some((copy, edge)) = wanted.or(tabs.first()) else { continue };
            let allowance = seam.allowance.unwrap_or(0.0) / scale;
            let Some(mut tab) = Part::copy(self, *copy, Face::Right, scale)
                .and_then(|tab| opened(tab, edge, allowance, zip, end, allowance))
            else {
                continue;
            };
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
    pub fn zip_length(&self, zip: usize, beside: Option<f64>) -> f64 {
        let own = self.edition.draft.facts.notions[zip].length.as_ref();
        let own = own.and_then(|length| length.get(self.edition.size())).and_then(|length| self.edition.sheet.quiet(length));
        let own = own.and_then(super::past::millimetres).unwrap_or(200.0);
        let Some(beside) = beside else { return own };
        let mut between = beside;
        let mut ends = 0;
        for end in ["start", "end"] {
            let held = Target::NotionEdge(zip, end.to_owned());
            let Some(seam) = self.past.seams.iter().find(|seam| seam.members.contains(&held)) else { continue };
            let tab = seam.members.iter().find_map(|member| match member {
                Target::Edge(copy, edge) => Some((*copy, edge)),
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
                let Target::Edge(other, its) = member else { continue };
                let Some(layer) = stack.layer(Who::Copy(*other)).filter(|_| *other != copy) else { continue };
                let allowance = seam.allowance.unwrap_or(0.0) / scale;
                let Some(known) = stack.part(Who::Copy(*other)).cloned() else { continue };
                let Some(part) = Part::copy(self, copy, known.face, scale) else { continue };
                let fits = (part.length(edge) - known.length(its)).abs() * scale <= LEVEL;
                if !fits || !part.is_straight(edge) || !known.is_straight(its) {
                    continue;
                }
                let Some(mut part) = opened(part, edge, allowance, &known, its, allowance) else { continue };
                fold_away(&mut part, edge, allowance);
                if let Some(known) = stack.layers[layer].iter_mut().find(|part| part.who == Who::Copy(*other)) {
                    fold_away(known, its, allowance);
                }
                stack.opened.extend([(copy, edge.to_owned()), (*other, its.clone())]);
                stack.layers[layer].push(part);
                return true;
            }
        }
        false
    }
}

/// Opened out: the seam lines of both edges lie on each other, the parts on both sides of it.
pub(super) fn opened(part: Part, edge: &str, allowance: f64, to: &Part, its: &str, its_allowance: f64) -> Option<Part> {
    let (point, inner) = to.hold(its)?;
    part.laid(edge, allowance, point + inner * its_allowance, -inner)
}

/// The allowance of an edge folded out of sight.
pub(super) fn fold_away(part: &mut Part, edge: &str, allowance: f64) {
    if let Some((point, inner)) = part.hold(edge) {
        part.cut_back(point + inner * allowance, inner, Side::Straight);
    }
}

/// Whether all edges of a seam meet in the pile.
fn fits(stack: &Stack, held: &[Owner]) -> bool {
    let Some(((who, edges), others)) = held.split_first() else { return false };
    let Some(base) = stack.part(*who) else { return false };
    others.iter().all(|(other, own)| stack.part(*other).is_some_and(|part| stack.layer(*who) != stack.layer(*other) && meet(part, own, base, edges, 1.0)))
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
        other.iter().any(|line| place(line, nearest(line, point)).is_some_and(|(near, _)| near.distance(point) <= within))
    };
    let shares = [0.02, 0.25, 0.5, 0.75, 0.98];
    !short.is_empty()
        && short.iter().all(|line| shares.iter().all(|share| place(line, length(line) * share).is_some_and(|(point, _)| level(point))))
}

/// The sides of the sheet on which a seam's edge lies: the direction out of the piece.
pub(super) fn outwards(part: &Part, edges: &[String]) -> Vec<Vec2> {
    edges.iter().filter_map(|edge| part.hold(edge)).map(|(_, inner)| -inner).collect()
}

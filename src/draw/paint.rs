//! Parts and seams put on the page.

use kurbo::{Affine, BezPath, Line, Point, Shape as _, Vec2};

use super::cloth::Face;
use super::desk::Desk;
use super::gaps::Gap;
use super::inside::Detail;
use super::page::{Anchor, Page};
use super::part::{Part, Who, midpoint};
use super::past::{Held, Seam, millimetres};
use super::told::{Quilting, Way, lines};
use super::trace::{
    beside, chains, closed_line, corners, edge_to_edge, inward, length, nearest, open_line, place, ring_inside,
    runs_inside, straight, stretch,
};
use crate::model::Verb;
use crate::resolve::{CopyId, EditionWork, Worked};

/// How far a line of stitching beside an edge is drawn where the fact gives no distance, in mm of
/// cloth (common practice, no source: edge stitching lies 2 to 3 mm in).
pub(super) const CLOSE: f64 = 3.0;

/// How far apart quilting is drawn where no fact says it, in mm on paper.
pub(super) const QUILTING: f64 = 6.0;

/// How far the lower layer of a folded piece stands out, in mm on paper.
const DOUBLED: f64 = 0.7;

/// How much of a closed row may lie outside what is seen of a piece before it is cut to that, in mm on paper.
const LEFT: f64 = 0.2;

/// A line of stitching: its stretches, and where a gap is.
pub(super) struct Stitching {
    pub stretches: Vec<BezPath>,
    /// Both ends of the gap on the edge, and the direction from there out of the piece.
    pub gap: Option<(Point, Point, Vec2)>,
}

/// The stitching at some edges of a part, `distance` mm on paper from the cutting line; edges that
/// meet are sewn in one run.
pub(super) fn stitching(part: &Part, edges: &[&str], distance: f64, gap: Option<&Gap>) -> Stitching {
    let rims: Vec<_> = edges.iter().filter_map(|edge| part.rim(edge)).collect();
    let lines: Vec<BezPath> = rims.iter().flat_map(|rim| rim.lines.iter().cloned()).collect();
    let longest = lines.iter().max_by(|one, other| length(&corners(one)).total_cmp(&length(&corners(other)))).cloned();
    let mut stitched = Stitching { stretches: Vec::new(), gap: None };
    for (chain, closed) in chains(&lines) {
        let points = match closed {
            true => {
                let mut ring = ring_inside(&closed_line(&chain), distance);
                // The run begins at a corner, and comes back to it.
                ring.extend(ring.first().copied());
                let seen = runs_inside(&ring, &part.visible);
                let whole = length(&ring);
                if seen.iter().map(|run| length(run)).sum::<f64>() < whole - LEFT {
                    // Of a piece that is cut back on the drawing, what is seen of the round.
                    stitched.stretches.extend(seen.iter().map(|run| open_line(run)));
                    continue;
                }
                ring
            }
            false => {
                let Some((_, inner)) = inward(&open_line(&chain), &part.outline) else { continue };
                edge_to_edge(&beside(&chain, inner, distance), &part.visible)
            }
        };
        if points.len() < 2 {
            continue;
        }
        let gapped = gap.zip(longest.as_ref()).and_then(|(gap, edge)| {
            let (middle, inner) = gap.middle(part).or_else(|| inward(edge, &part.outline))?;
            let far = nearest(&points, middle + inner * distance);
            let near = place(&points, far)?.0.distance(middle) < distance * 1.5 + 0.1;
            near.then_some((far - gap.long / 2.0, far + gap.long / 2.0, inner))
        });
        let Some((from, to, inner)) = gapped.filter(|_| stitched.gap.is_none()) else {
            stitched.stretches.push(if closed { closed_line(&points[..points.len() - 1]) } else { open_line(&points) });
            continue;
        };
        let out = -inner * (distance - 0.2).clamp(0.6, 1.3);
        let mut first = stretch(&points, 0.0, from);
        let mut second = stretch(&points, to, length(&points));
        if let (Some(end), Some(start)) = (first.last().copied(), second.first().copied()) {
            let outwards = -inner * distance;
            stitched.gap = Some((end + outwards, start + outwards, -inner));
            // The ends of the seam are fastened.
            first.push(end + out);
            second.insert(0, start + out);
        }
        stitched.stretches.extend([open_line(&first), open_line(&second)]);
    }
    stitched
}

/// How long the arrow is at least that says which edge is up, in mm on paper.
const UP: f64 = 5.0;

/// Says which edge of a part is up, where that is to be seen.
fn up(desk: &Desk<'_, '_>, page: &mut Page<'_>, part: &Part) {
    for detail in part.inside.iter().flat_map(|(_, details)| details) {
        let Detail::Up(line) = detail else { continue };
        let along = line.p1 - line.p0;
        let from = line.p1 - along / along.hypot().max(1e-9) * along.hypot().max(UP);
        if part.visible.contains(from) && part.visible.contains(line.p1) {
            page.path("arrow", open_line(&[from, line.p1]));
            page.label_if_free(&desk.say("draw_top", &[]), from + Vec2::new(1.5, 1.0), Anchor::Start);
        }
    }
}

impl Desk<'_, '_> {
    /// What is seen of a copy, with a layer that does not reach its edges, and its quilting.
    pub fn cloth_of(&self, page: &mut Page<'_>, copy: CopyId, part: &Part, scale: f64) {
        let class = self.class(copy, part.face);
        match &part.layer {
            Some(layer) if part.face == Face::Wrong => {
                page.path(self.bare(copy), part.visible.clone());
                page.path(class, layer.clone());
            }
            _ => page.path(class, part.visible.clone()),
        }
        if !self.past.is_folded(copy) {
            self.quilting(page, copy, (&part.visible, part.outline.bounding_box().center()), part.turn, scale);
        }
    }

    /// How a copy was quilted before the step, or the cloth that it is cut from.
    fn quilted(&self, copy: CopyId) -> Option<&Quilting> {
        let facts = &self.edition.draft.facts;
        let fabric = self.edition.cast[copy].fabric.map(|fabric| &facts.fabrics[fabric]);
        let from = fabric.and_then(|fabric| fabric.from.as_ref());
        let is_from = |other: &CopyId| {
            from.is_some_and(|from| facts.pieces[self.edition.cast[*other].piece].id.text == from.text)
        };
        let mut quilted = self.past.quilted.iter().rev();
        quilted.find(|(group, _)| group.contains(&copy) || group.iter().any(is_from)).map(|(_, told)| told)
    }

    /// The quilting of a copy on what is seen of it, round the middle of the whole.
    pub fn quilting(
        &self,
        page: &mut Page<'_>,
        copy: CopyId,
        (seen, middle): (&BezPath, Point),
        turn: Affine,
        scale: f64,
    ) {
        let Some(told) = self.quilted(copy) else { return };
        let apart = told.apart.and_then(millimetres).map_or(QUILTING, |apart| apart / scale);
        let rows = lines(seen, middle, turn, told.way.unwrap_or(Way::Slanting), apart);
        rows.into_iter().for_each(|row| page.path("stitched", row));
    }

    /// A part with what was sewn to it before, moved by `shift`.
    pub fn paint(&self, page: &mut Page<'_>, part: &Part, shift: Vec2, scale: f64) {
        let part = part.clone().moved(kurbo::Affine::translate(shift));
        match part.who {
            Who::Zip(_) => {
                page.path("zip", part.visible.clone());
                let ends =
                    ["start", "end"].map(|end| part.rim(end).and_then(|rim| straight(&rim.lines[0])).map(midpoint));
                if let [Some(from), Some(to)] = ends {
                    let teeth = edge_to_edge(&[from, to], &part.visible);
                    if let [from, .., to] = teeth[..] {
                        page.line("zip", from, to);
                    }
                }
            }
            Who::Copy(copy) => {
                if let Some(way) = part.doubled {
                    page.path(
                        self.class(copy, part.face),
                        kurbo::Affine::translate(way * DOUBLED) * part.visible.clone(),
                    );
                }
                self.cloth_of(page, copy, &part, scale);
                for fold in part.gathers.iter().flat_map(|fold| runs_inside(&corners(fold), &part.visible)) {
                    page.path("context", open_line(&fold));
                }
                up(self, page, &part);
                for detail in &part.shut {
                    let (class, line) = match detail {
                        Detail::Sewn(line) => ("stitched", line),
                        Detail::Folded(line) => ("fold", line),
                        _ => continue,
                    };
                    if let [from, .., to] = seen_of(*line, &part)[..] {
                        page.path(class, open_line(&[from, to]));
                    }
                }
                for seam in &self.past.seams {
                    let edges: Vec<&str> = edges_of(seam, copy)
                        .into_iter()
                        .filter(|edge| !part.hidden.iter().any(|hidden| hidden == edge))
                        .collect();
                    let Some(allowance) = seam.allowance.filter(|_| !edges.is_empty()) else { continue };
                    let gap = self.gap_on(seam, part.who, scale);
                    for line in stitching(&part, &edges, allowance / scale, gap.as_ref()).stretches {
                        page.path("stitched", line);
                    }
                }
                for (_, edge, far) in self.past.topstitched.iter().filter(|(other, ..)| *other == copy) {
                    let seam = self.seam_at(copy, edge).and_then(|seam| seam.allowance).unwrap_or(0.0);
                    let far = (seam + far.unwrap_or(CLOSE)) / scale;
                    stitching(&part, &[edge.as_str()], far, None)
                        .stretches
                        .into_iter()
                        .for_each(|line| page.path("stitched", line));
                }
            }
        }
    }

    /// The notches of some edges of a part.
    pub fn notches(&self, page: &mut Page<'_>, part: &Part, edges: &[&str]) {
        for (_, point, inner) in part.notches.iter().filter(|(edge, ..)| edges.contains(&edge.as_str())) {
            let across = Vec2::new(-inner.y, inner.x) * 1.2;
            let back = *point + *inner * 2.2;
            page.path("notch", closed_line(&[*point, back + across, back - across]));
        }
    }

    /// The gap of a seam, measured outside its edge.
    pub fn gap(&self, page: &mut Page<'_>, gap: (Point, Point, Vec2), worked: &Worked) {
        let (from, to, out) = gap;
        let away = out * 3.0;
        let (mut from, mut to) = (from + away, to + away);
        if from.x > to.x + 0.01 || ((from.x - to.x).abs() <= 0.01 && from.y > to.y) {
            (from, to) = (to, from);
        }
        let level = (to - from).x.abs() > (to - from).y.abs();
        let words = self.around("draw_leave_open", &self.spoken(worked), level);
        page.dimension(from, to, &words, out);
    }

    /// What to do with the needle, in words: `sew 6 mm (¼ in) from the edge`.
    pub fn sewing(&self, page: &mut Page<'_>, work: &EditionWork<'_>) {
        let Some(allowance) = work.allowance else { return };
        let verb = match work.verb {
            Verb::Baste | Verb::Staystitch | Verb::Easestitch | Verb::Topstitch => work.verb,
            Verb::Sew | Verb::Box | Verb::Attach => Verb::Sew,
            _ => return,
        };
        page.caption(self.row(verb, "draw_from_edge", &allowance));
    }

    /// Holds layers together at an edge with clips or pins.
    pub fn hold(&self, page: &mut Page<'_>, part: &Part, edge: &str, clips: bool) {
        let Some(rim) = part.rim(edge) else { return };
        for line in &rim.lines {
            let points = corners(line);
            let Some((_, inner)) = inward(line, &part.outline) else { continue };
            let long = length(&points);
            let count = if long > 40.0 { 4 } else { 3 };
            for at in 0..count {
                let Some((point, _)) = place(&points, long * (at as f64 + 0.5) / f64::from(count)) else { continue };
                if clips {
                    page.symbol("clip", point - inner * 1.2, 5.6, inner.atan2().to_degrees());
                } else {
                    page.pin(point - inner * 1.8, point + inner * 4.0);
                }
            }
        }
    }

    /// The slider of a zip that lies face up, near its end.
    pub fn slider(&self, page: &mut Page<'_>, part: &Part, scale: f64) {
        let (Who::Zip(_), Face::Right) = (part.who, part.face) else { return };
        let ends = ["start", "end"].map(|end| part.rim(end).and_then(|rim| straight(&rim.lines[0])).map(midpoint));
        if let [Some(from), Some(to)] = ends {
            let back = (from - to).normalize();
            if !kurbo::Shape::contains(&part.visible, to + back * (40.0 / scale)) {
                return;
            }
            // The symbol points downwards.
            page.symbol("zip-slider", to + back * (40.0 / scale), 5.4, back.atan2().to_degrees() - 90.0);
        }
    }
}

/// What of a line is seen of a part that may be cut back: both ends, or nothing.
fn seen_of(line: Line, part: &Part) -> Vec<Point> {
    let seen = |point: &Point| kurbo::Shape::contains(&part.visible, *point);
    let points: Vec<Point> = (1..40).map(|at| line.p0.lerp(line.p1, f64::from(at) / 40.0)).filter(seen).collect();
    match points[..] {
        [from, .., to] => vec![from, to],
        _ => Vec::new(),
    }
}

/// The edges of a copy that a seam holds.
pub(super) fn edges_of(seam: &Seam, copy: CopyId) -> Vec<&str> {
    let mine = seam.members.iter().filter_map(|member| match member {
        Held::Edge(other, edge) if *other == copy => Some(edge.as_str()),
        _ => None,
    });
    mine.collect()
}

//! A boxed corner: the cut corner with the arrow that brings seam to seam, and the opened corner
//! sewn straight across.
//!
//! With the allowances a at the side and b at the base and a corner cut c across and d up, the opened
//! edge is c − a long on one side of the matched seams and d − b on the other (plane geometry), and
//! widens by the allowance of the corner's own seam on each side up to the stitching.

use kurbo::{Affine, BezPath, Point, Vec2};

use super::cloth::Face;
use super::desk::Desk;
use super::page::{Anchor, Page};
use super::part::Part;
use super::past::{Held, millimetres};
use super::trace::{Side, corners, cut_back, length, open_line, straight};
use crate::figure::numbers;
use crate::measure::{Dimension, to_f64};
use crate::model::Verb;
use crate::resolve::{CopyId, SewnMeasure};

/// How much cloth is drawn round the corner, in mm on paper.
const ROUND: f64 = 12.0;

pub(super) fn draw<'a>(desk: &Desk<'a, '_>, scale: f64) -> Option<Page<'a>> {
    let seam = desk.past.now.iter().find(|seam| desk.step.works[seam.work].verb == Verb::Box)?;
    let (copy, edge) = seam.members.iter().find_map(|member| match member {
        Held::Edge(copy, edge) => Some((*copy, edge.as_str())),
        _ => None,
    })?;
    let part = Part::copy(desk, copy, Face::Wrong, scale)?;
    let legs = legs(&part, edge)?;
    let beside = |at: usize| desk.neighbour(&part, edge, legs[at]);
    let (first, second) = (beside(0)?, beside(2)?);
    let halves = (length(&legs[..2]) - first.1 / scale, length(&legs[1..]) - second.1 / scale);
    // Only legs of one length come to one line.
    if (halves.0 - halves.1).abs() * scale > 1.0 {
        return None;
    }
    let mut page = Page::new(desk.ruler);
    page.join(cut_corner(desk, &part, copy, &legs, &[first, second], scale), true, 6.0);
    let own = seam.allowance.unwrap_or(0.0) / scale;
    page.join(opened_corner(desk, &part, copy, halves.0, own, scale), true, 6.0);
    let name = desk.name_and_side(copy, Face::Wrong);
    page.caption(name);
    desk.sewing(&mut page, &desk.step.works[seam.work]);
    Some(page)
}

/// The three points of a corner with two straight legs.
fn legs(part: &Part, edge: &str) -> Option<Vec<Point>> {
    let rim = part.rim(edge)?;
    let line = rim.lines.first().filter(|_| rim.lines.len() == 1)?;
    let points = corners(line);
    let right_angle = |points: &[Point]| (points[1] - points[0]).dot(points[2] - points[1]).abs() < 0.05;
    (points.len() == 3 && right_angle(&points)).then_some(points)
}

impl Desk<'_, '_> {
    /// The edge that meets a corner at a point: its name and the allowance of its seam, in mm of cloth.
    fn neighbour(&self, part: &Part, corner: &str, point: Point) -> Option<(String, f64)> {
        let super::part::Who::Copy(copy) = part.who else { return None };
        let rim = part.rims.iter().filter(|rim| rim.name != corner).find(|rim| {
            rim.lines
                .iter()
                .filter_map(straight)
                .any(|(from, to)| from.distance(point) < 0.02 || to.distance(point) < 0.02)
        })?;
        Some((rim.name.clone(), self.seam_at(copy, &rim.name)?.allowance?))
    }
}

/// The corner as it is cut, with both seams and the way that one takes to the other.
fn cut_corner<'a>(
    desk: &Desk<'a, '_>,
    part: &Part,
    copy: CopyId,
    legs: &[Point],
    seams: &[(String, f64); 2],
    scale: f64,
) -> Page<'a> {
    let mut page = Page::new(desk.ruler);
    let mut part = part.clone();
    let bounds = part.bounds();
    let middle = bounds.center();
    let tip = legs[1];
    for way in [Vec2::new(1.0, 0.0), Vec2::new(0.0, 1.0)] {
        let towards = (middle - tip).dot(way).signum();
        let whole = if way.x > 0.0 { bounds.width() } else { bounds.height() };
        if whole > ROUND * 2.0 {
            part.cut_back(tip + way * towards * ROUND, -way * towards, Side::Torn);
        }
    }
    desk.cloth_of(&mut page, copy, &part, scale);
    let mut ends = Vec::new();
    for (at, (edge, allowance)) in [0, 2].into_iter().zip(seams) {
        let edges = [edge.as_str()];
        for line in super::paint::stitching(&part, &edges, allowance / scale, None).stretches {
            page.path("stitched", line);
        }
        let leg = (tip - legs[at]).normalize();
        ends.push(legs[at] + leg * (allowance / scale));
    }
    // From the end of one seam to the end of the other, through the square that was cut away.
    let down = (legs[2] - tip).normalize();
    let aside = (legs[0] - tip).normalize();
    let (from, to) = (ends[0] + down * 1.3, ends[1] + aside * 1.3);
    let mut arrow = BezPath::new();
    arrow.move_to(from);
    arrow.quad_to(ends[0] + (ends[1] - tip) * 0.9, to);
    page.path("arrow", arrow);
    let below = page.bounds();
    page.label(
        &desk.say("draw_bring_seams", &[]),
        Point::new(below.center().x, below.y1 + 1.4 + desk.ruler.type_size()),
        Anchor::Middle,
    );
    page
}

/// The opened corner, both seams in its middle, and the stitching across.
fn opened_corner<'a>(desk: &Desk<'a, '_>, part: &Part, copy: CopyId, half: f64, own: f64, scale: f64) -> Page<'a> {
    let mut page = Page::new(desk.ruler);
    let (wide, high) = (half + own + 3.0, own + 3.0 + 12.0);
    let at = |x: f64, y: f64| Point::new(x, -y);
    let mut cloth = BezPath::new();
    cloth.move_to(at(-half, 0.0));
    cloth.line_to(at(half, 0.0));
    cloth.line_to(at(wide, own + 3.0));
    cloth.line_to(at(wide, high));
    let waves = 4;
    let step = 2.0 * wide / f64::from(waves);
    for wave in 0..waves {
        let x = wide - step * f64::from(wave);
        let bulge = if wave % 2 == 0 { 1.2 } else { -1.2 };
        cloth.quad_to(at(x - step / 2.0, high - bulge), at(x - step, high));
    }
    cloth.line_to(at(-wide, own + 3.0));
    cloth.close_path();
    let class = desk.class(copy, Face::Wrong);
    match &part.layer {
        // A layer stays as far from the corner's edge as it stays from the others.
        Some(layer) => {
            let short = (part.bounds().width() - kurbo::Shape::bounding_box(layer).width()) / 2.0;
            let on = cut_back(&cloth, at(0.0, short), Vec2::new(0.0, -1.0), Side::Straight);
            page.path(desk.bare(copy), cloth.clone());
            page.path(class, on);
        }
        None => page.path(class, cloth.clone()),
    }
    if part.layer.is_none() {
        // Both faces meet at the seam in the middle; their lines lie on either side of it.
        desk.quilting(&mut page, copy, (&cloth, at(0.0, 0.0)), Affine::IDENTITY, scale);
    }
    page.path("stitched", open_line(&[at(0.0, 0.0), at(0.0, high - 0.4)]));
    page.path("stitch", open_line(&[at(-half - own, own), at(half + own, own)]));
    let (left, right) = (at(-half - own, -3.0), at(half + own, -3.0));
    match desk.depth(copy, 2.0 * (half + own) * scale) {
        Some(words) => page.dimension(left, right, &[words], Vec2::new(0.0, 1.0)),
        None => {
            page.label(&desk.say("draw_sew_across", &[]), Point::new(0.0, 1.6 + desk.ruler.type_size()), Anchor::Middle)
        }
    }
    page
}

impl Desk<'_, '_> {
    /// The finished depth, where the booklet states it and the corner is as long: the figure as the
    /// booklet prints it.
    fn depth(&self, copy: CopyId, drawn: f64) -> Option<String> {
        let piece = self.edition.cast[copy].piece;
        let same = |copy: &CopyId| self.edition.cast[*copy].piece == piece;
        let rows = self.edition.sewn.iter().filter(|row| row.measure == SewnMeasure::Depth);
        let mut worked = rows.filter(|row| row.copies.iter().any(same)).filter_map(|row| row.stated);
        let worked = worked.find(|worked| {
            worked.quantity.dimension == Dimension::Length && (to_f64(worked.quantity.value) - drawn).abs() < 1.0
        })?;
        millimetres(worked).map(|_| numbers::spoken(&self.edition.figures(&worked)))
    }
}

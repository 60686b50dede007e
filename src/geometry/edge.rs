//! One edge of a piece, and the points along it.

use kurbo::{BezPath, ParamCurve, ParamCurveNearest, PathSeg, Point};

use super::part::Part;
use super::ring::{self, direction, outward};
use super::spec::Drawn;
use crate::measure::{Exact, to_f64};

/// One edge. Lengths are in mm; those of a piece cut on the fold are of the half that is drawn, but in
/// [`Shape::whole`](super::Shape::whole).
#[derive(Debug, Clone)]
pub struct Edge {
    /// Its name.
    pub name: String,
    /// The edge of the drawn outline that it is, or is a half of: its own name but in a piece cut on the
    /// fold, opened.
    pub drawn: String,
    /// Whether it lies on the fold of the cloth.
    pub on_fold: bool,
    /// The edge on the line that the author drew, in the direction in which it is counted: as
    /// written; for a rectangle from the left or from the top.
    pub path: BezPath,
    /// The length of that path, with its darts and pleats open.
    pub length: f64,
    /// The same exactly. `None` where it bends or is no ratio of whole numbers.
    pub exact: Option<Exact>,
    /// The length of that path with its darts closed and its pleats laid.
    pub closed: f64,
    /// The same exactly. `None` where the whole is not exact or a dart slants.
    pub exact_closed: Option<Exact>,
    /// The length on the stitching line, between the stitching lines of its neighbours, with its darts
    /// closed and its pleats laid: what is sewn.
    pub seam_length: f64,
    /// The same exactly. `None` where it bends or slants.
    pub exact_seam: Option<Exact>,
    /// The edge on the stitching line, the mouths of its darts with it.
    pub seam: BezPath,
    /// The length on the cutting line, with its darts closed and its pleats laid.
    pub cut_length: f64,
    /// The same exactly. `None` where it bends or slants.
    pub exact_cut: Option<Exact>,
    /// The edge on the cutting line, the mouths of its darts with it.
    pub cut: BezPath,
    /// The allowance between the two lines.
    pub allowance: Exact,
    // Clockwise, so that the inside is to the right.
    pub(super) runs: Vec<PathSeg>,
    pub(super) against: bool,
    // Where a dart was trued, the runs are not quite where they were drawn.
    pub(super) shifted: Vec<Part>,
}

/// A point on an edge, in mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EdgePoint {
    /// On the line that the author drew.
    pub at: [f64; 2],
    /// One long, at a right angle to the edge, into the piece.
    pub inward: [f64; 2],
    /// From the start of the edge, along it.
    pub distance: f64,
    /// Straight across on the cutting line.
    pub cutting: [f64; 2],
    /// Straight across on the stitching line.
    pub stitching: [f64; 2],
}

impl Edge {
    /// Is sewn as long as that of a half, once or twice.
    pub(super) fn take_lengths(&mut self, half: &Edge, times: i64) {
        let exact = |length: Option<Exact>| length.and_then(|length| length.checked_mul(Exact::from_integer(times)));
        let factor = times as f64;
        (self.closed, self.exact_closed) = (half.closed * factor, exact(half.exact_closed));
        (self.seam_length, self.exact_seam) = (half.seam_length * factor, exact(half.exact_seam));
        (self.cut_length, self.exact_cut) = (half.cut_length * factor, exact(half.exact_cut));
    }

    /// How far along it, as it is counted, and how far off the point of it lies that is nearest to another, in mm.
    pub fn nearest(&self, point: Point) -> (f64, f64) {
        let mut best = (0.0, f64::MAX);
        let mut walked = 0.0;
        for run in self.path.segments() {
            let near = run.nearest(point, 1e-6);
            let far = near.distance_sq.sqrt();
            if far < best.1 {
                best = (walked + ring::length(&run.subsegment(0.0..near.t)), far);
            }
            walked += ring::length(&run);
        }
        best
    }

    pub(super) fn point(&self, drawn: Drawn, distance: f64) -> Option<EdgePoint> {
        let edge = self;
        let (at, inward) = edge.place(if edge.against { edge.length - distance } else { distance })?;
        let across = inward * to_f64(edge.allowance);
        let (cutting, stitching) = match drawn {
            Drawn::Cutting => (at, at + across),
            Drawn::Stitching => (at - across, at),
        };
        Some(EdgePoint {
            at: [at.x, at.y],
            inward: [inward.x, inward.y],
            distance,
            cutting: [cutting.x, cutting.y],
            stitching: [stitching.x, stitching.y],
        })
    }

    /// The point so many mm along the edge, clockwise, and the direction into the piece.
    pub(super) fn place(&self, mut distance: f64) -> Option<(Point, kurbo::Vec2)> {
        let last = self.runs.len().checked_sub(1)?;
        for (index, run) in self.runs.iter().enumerate() {
            let length = ring::length(run);
            if distance <= length || index == last {
                let t = ring::share(run, distance);
                let pushed = self.shifted.iter().find_map(|part| part.push(index, t)).unwrap_or_default();
                return Some((run.eval(t) + pushed, -outward(direction(run, t))));
            }
            distance -= length;
        }
        None
    }
}

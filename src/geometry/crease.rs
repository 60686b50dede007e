//! A piece that is folded along a line once it is cut: what the fold leaves of each edge, and which edges then lie
//! on each other.

use kurbo::{Affine, BezPath, PathEl, Point, Rect, Vec2};

use super::edge::Edge;
use super::shape::Shape;

/// How far two edges may lie apart and still lie on each other, in mm.
const ON_EACH_OTHER: f64 = 1.0;

/// A straight line along which a piece is folded, in mm, in the author's drawing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Crease {
    /// A point on it.
    at: Point,
    /// Its direction, one long.
    along: Vec2,
}

/// What a fold leaves of the lines of an edge, as shares of them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Kept {
    /// Of the stitching line.
    pub seam: f64,
    /// Of the cutting line.
    pub cut: f64,
}

impl Kept {
    /// Nothing is folded.
    pub const WHOLE: Kept = Kept { seam: 1.0, cut: 1.0 };
}

impl Crease {
    /// The line through two points; `None` where they are one.
    pub fn through([from, to]: [Point; 2]) -> Option<Crease> {
        let way = to - from;
        (way.hypot() > 1e-6).then(|| Crease { at: from, along: way / way.hypot() })
    }

    /// The line that folds a piece in half, along its longer side or across it.
    pub fn in_half(shape: &Shape, lengthwise: bool) -> Option<Crease> {
        let (cutting, stitching) = shape.unfolded();
        let bounds = if shape.author_is_cutting() { cutting } else { stitching }.bounds();
        let across = (bounds.width() >= bounds.height()) == lengthwise;
        let along = if across { Vec2::new(1.0, 0.0) } else { Vec2::new(0.0, 1.0) };
        (bounds.area() > 0.0).then(|| Crease { at: bounds.center(), along })
    }

    /// Whether it runs straight across; `Some(false)` straight down, `None` where it slants.
    pub fn is_level(&self) -> Option<bool> {
        match self.along {
            along if along.y.abs() < 1e-6 => Some(true),
            along if along.x.abs() < 1e-6 => Some(false),
            _ => None,
        }
    }

    /// Which share of a box lies above it, or to the left of it where it runs down; `None` where it slants.
    pub fn share(&self, bounds: Rect) -> Option<f64> {
        Some(match self.is_level()? {
            true => (self.at.y - bounds.y0) / bounds.height(),
            false => (self.at.x - bounds.x0) / bounds.width(),
        })
    }

    /// What it leaves of an edge: the longer of the parts at its two sides.
    pub fn keeps(&self, edge: &Edge) -> Kept {
        Kept { seam: self.larger(&edge.seam), cut: self.larger(&edge.cut) }
    }

    /// Whether an edge lies, but for its ends, at one side of it, and not on it.
    pub fn is_beside(&self, edge: &Edge) -> bool {
        self.larger(&edge.path) > 1.0 - 1e-6
    }

    /// Whether two edges lie on each other once the piece is folded.
    pub fn lays(&self, one: &Edge, on: &Edge) -> bool {
        let turned = Affine::reflect(self.at, self.along) * one.path.clone();
        let (here, there) = (corners(&turned), corners(&on.path));
        let near = |from: &[Point], to: &[Point]| from.iter().all(|point| off(*point, to) <= ON_EACH_OTHER);
        near(&here, &there) && near(&there, &here)
    }

    /// The share of a line that lies at that side of which there is more.
    fn larger(&self, line: &BezPath) -> f64 {
        let corners = corners(line);
        let side = |point: Point| self.along.cross(point - self.at);
        let (mut left, mut right) = (0.0, 0.0);
        for pair in corners.windows(2) {
            let (one, two, length) = (side(pair[0]), side(pair[1]), pair[0].distance(pair[1]));
            let share = if one * two < 0.0 {
                one.abs() / (one - two).abs()
            } else {
                f64::from(u8::from(one.abs() >= two.abs()))
            };
            let (first, second) = (length * share, length * (1.0 - share));
            *(if one >= 0.0 { &mut left } else { &mut right }) += first;
            *(if two >= 0.0 { &mut left } else { &mut right }) += second;
        }
        if left + right > 0.0 { f64::max(left, right) / (left + right) } else { 1.0 }
    }
}

/// The corners of a line that hardly leaves it.
fn corners(line: &BezPath) -> Vec<Point> {
    let mut corners = Vec::new();
    kurbo::flatten(line, 0.01, |element| {
        if let PathEl::MoveTo(point) | PathEl::LineTo(point) = element {
            corners.push(point);
        }
    });
    corners
}

/// How far a point lies from a line with these corners.
fn off(point: Point, corners: &[Point]) -> f64 {
    let from = |pair: &[Point]| {
        let way = pair[1] - pair[0];
        let share = ((point - pair[0]).dot(way) / way.hypot2().max(1e-12)).clamp(0.0, 1.0);
        point.distance(pair[0] + way * share)
    };
    corners.windows(2).map(from).fold(f64::MAX, f64::min)
}

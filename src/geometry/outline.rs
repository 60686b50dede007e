//! One closed line as others see it: a path to draw, its area, its length and its box.

use kurbo::{BezPath, ParamCurve as _, ParamCurveExtrema as _, PathEl, PathSeg, Rect, Shape as _};

/// A closed line, clockwise as seen, in mm.
#[derive(Debug, Clone, PartialEq)]
pub struct Outline {
    /// The line.
    pub path: BezPath,
}

impl Outline {
    /// The corners of a polygon that leaves the line by no more than `tolerance_mm`; the first is
    /// not repeated at the end.
    pub fn flatten(&self, tolerance_mm: f64) -> Vec<[f64; 2]> {
        let mut corners = Vec::new();
        kurbo::flatten(&self.path, tolerance_mm, |element| match element {
            PathEl::MoveTo(point) | PathEl::LineTo(point) => corners.push([point.x, point.y]),
            // Flattening leaves nothing but straight lines.
            PathEl::QuadTo(..) | PathEl::CurveTo(..) | PathEl::ClosePath => {}
        });
        if let (Some(first), Some(last)) = (corners.first(), corners.last())
            && corners.len() > 1
            && (first[0] - last[0]).hypot(first[1] - last[1]) < 1e-9
        {
            corners.pop();
        }
        corners
    }

    /// The same with the points that lie farthest left, right, up and down among its corners: it is as wide and as
    /// high as the line itself, however coarse it is.
    pub fn flatten_to_its_bounds(&self, tolerance_mm: f64) -> Vec<[f64; 2]> {
        let mut path = BezPath::new();
        for segment in self.path.segments() {
            if path.is_empty() {
                path.move_to(segment.start());
            }
            let ends = segment.extrema().into_iter().chain([1.0]);
            let mut from = 0.0;
            for to in ends.filter(|to| *to > 0.0) {
                match segment.subsegment(from..to) {
                    PathSeg::Line(line) => path.line_to(line.p1),
                    PathSeg::Quad(quad) => path.quad_to(quad.p1, quad.p2),
                    PathSeg::Cubic(cubic) => path.curve_to(cubic.p1, cubic.p2, cubic.p3),
                }
                from = to;
            }
        }
        Outline { path }.flatten(tolerance_mm)
    }

    /// The area inside, in mm².
    pub fn area(&self) -> f64 {
        self.path.area()
    }

    /// The length of the whole line, in mm.
    pub fn length(&self) -> f64 {
        self.path.perimeter(1e-6)
    }

    /// The least upright box round the line.
    pub fn bounds(&self) -> Rect {
        self.path.bounding_box()
    }

    /// The width and the height of that box, in mm.
    pub fn box_size(&self) -> (f64, f64) {
        let bounds = self.bounds();
        (bounds.width(), bounds.height())
    }
}

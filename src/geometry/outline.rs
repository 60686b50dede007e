//! One closed line as others see it: a path to draw, its area, its length and its box.

use kurbo::{BezPath, PathEl, Rect, Shape as _};

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

//! Marks at their places.

use kurbo::{BezPath, ParamCurveNearest, Point, Shape as _, Vec2};

use super::ids::{EdgeId, PieceId};
use crate::geometry::{Edge, Shape};
use crate::measure::{Exact, to_f64};

/// How far a mark may lie over the cutting line and still be on the piece, in mm: less than a pencil line.
const ON_LINE: f64 = 0.05;

/// How far from its edge a row of buttons or holes may lie, in mm (common practice, no source).
const REACH: f64 = 40.0;

/// A mark at its place, in mm, in the author's drawing of the piece.
#[derive(Debug, Clone, PartialEq)]
pub enum MarkAt {
    /// A point.
    Point(Point),
    /// The side that is up: from a place on the piece to the edge.
    Up([Point; 2]),
    /// Where another piece is laid.
    Outline {
        /// The piece.
        piece: PieceId,
        /// Its stitching line, opened where it is cut on the fold.
        line: BezPath,
    },
    /// A line, with places along it.
    Line {
        /// Its two ends.
        ends: [Point; 2],
        /// The places, from end to end; empty where it has none.
        places: Vec<Point>,
        /// How long each is, as a step along its direction; `None` for dots.
        each: Option<Vec2>,
    },
}

impl MarkAt {
    /// A line, with so many places along it, each so long, along the line or across it.
    pub(super) fn line([from, to]: [Point; 2], row: Option<(u32, Option<Exact>, bool)>) -> MarkAt {
        let Some((count, each, along)) = row else {
            return MarkAt::Line { ends: [from, to], places: Vec::new(), each: None };
        };
        let last = f64::from(count.saturating_sub(1));
        let places =
            (0..count).map(|at| if last > 0.0 { from.lerp(to, f64::from(at) / last) } else { from.midpoint(to) });
        let way = (to - from) / (to - from).hypot().max(1e-9);
        let way = if along { way } else { Vec2::new(-way.y, way.x) };
        MarkAt::Line { ends: [from, to], places: places.collect(), each: each.map(|each| way * to_f64(each)) }
    }

    /// The places where something is set: a point, or those along a line; none for an outline and a plain line.
    pub fn places(&self) -> &[Point] {
        match self {
            MarkAt::Point(point) => std::slice::from_ref(point),
            MarkAt::Line { places, .. } => places,
            MarkAt::Outline { .. } | MarkAt::Up(_) => &[],
        }
    }

    /// The edge that a row of places runs along: the nearest one that none of them is far from; `None` for a
    /// single place, which tells no direction.
    pub fn edge_along(&self, shape: &Shape) -> Option<EdgeId> {
        let places = self.places();
        if places.len() < 2 {
            return None;
        }
        let far = |edge: &Edge| {
            let from = |place: &Point| {
                edge.path.segments().map(|run| run.nearest(*place, 0.1).distance_sq.sqrt()).fold(f64::MAX, f64::min)
            };
            places.iter().map(from).fold(0.0, f64::max)
        };
        let edges = EdgeId::each(shape.edges()).map(|(id, edge)| (id, far(edge)));
        edges.filter(|(_, far)| *far <= REACH).min_by(|one, other| one.1.total_cmp(&other.1)).map(|(id, _)| id)
    }

    /// Whether all of it lies on the cloth of the opened piece.
    pub(super) fn lies_on(&self, shape: &Shape) -> bool {
        let cloth = shape.unfolded().0.path;
        let on = |point: Point| {
            let beside = [(0.0, 0.0), (ON_LINE, 0.0), (-ON_LINE, 0.0), (0.0, ON_LINE), (0.0, -ON_LINE)];
            beside.into_iter().any(|by| cloth.contains(point + Vec2::from(by)))
        };
        match self {
            MarkAt::Point(point) => on(*point),
            MarkAt::Up(ends) => ends.iter().all(|end| on(*end)),
            MarkAt::Outline { line, .. } => {
                let mut all = true;
                kurbo::flatten(line, 0.1, |element| all &= element.end_point().is_none_or(on));
                all
            }
            MarkAt::Line { ends: [from, to], places, each } => {
                let reach = each.unwrap_or_default() / 2.0;
                (0..=20).all(|at| on(from.lerp(*to, f64::from(at) / 20.0)))
                    && places.iter().all(|place| on(*place - reach) && on(*place + reach))
            }
        }
    }
}

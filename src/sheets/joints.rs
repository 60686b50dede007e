//! Where sheets meet: which joint is closed when, and its marks, which bear its number on both sheets.

use kurbo::{BezPath, Circle, Point, Rect, Shape as _};

use super::crowd::Crowd;
use super::plan::SheetPlan;

/// A joint between two sheets.
#[derive(Debug, Clone)]
pub(super) struct Joint {
    /// From 1, in the order of joining. A sheet that is not printed takes its numbers with it, and the others keep
    /// their order.
    pub number: usize,
    /// The sheet that is laid on the other one.
    pub later: (usize, usize),
    /// The sheet on which it is laid: to its left, or above it.
    pub earlier: (usize, usize),
    /// Whether the joint runs up and down.
    pub upright: bool,
    /// The middles of its marks.
    pub marks: [Point; 2],
}

/// The half height of a joint's mark, in mm: within half of the usual overlap.
pub(super) const MARK: f64 = 4.0;
/// How far its number stands from the joint, and how much room number and mark take across, in mm.
pub(super) const BESIDE: f64 = MARK * 0.75 + 0.8;
const ROOM: f64 = BESIDE + 4.5;
/// Where a mark lies along its joint, at the first place through which no line runs.
const PLACES: [[f64; 5]; 2] = [[0.25, 0.2, 0.3, 0.16, 0.34], [0.75, 0.8, 0.7, 0.84, 0.66]];

/// All joints, in their order.
pub(super) fn joints(plan: &SheetPlan, crowd: &Crowd) -> Vec<Joint> {
    let mut found = Vec::new();
    for later in &plan.tiles {
        let (row, column) = *later;
        let left = column.checked_sub(1).map(|column| ((row, column), true));
        let above = row.checked_sub(1).map(|row| ((row, column), false));
        for (earlier, upright) in [left, above].into_iter().flatten() {
            if plan.tiles.contains(&earlier) {
                let area = plan.tile(row, column);
                let marks = PLACES.map(|shares| place(area, upright, shares, crowd));
                found.push(Joint { number: found.len() + 1, later: *later, earlier, upright, marks });
            }
        }
    }
    found
}

fn place(area: Rect, upright: bool, shares: [f64; 5], crowd: &Crowd) -> Point {
    let at = |share: f64| match upright {
        true => Point::new(area.x0, area.y0 + area.height() * share),
        false => Point::new(area.x0 + area.width() * share, area.y0),
    };
    let free = |point: &Point| {
        let (dx, dy) = if upright { (ROOM, MARK) } else { (MARK, ROOM) };
        crowd.is_clear(Rect::new(point.x - dx, point.y - dy, point.x + dx, point.y + dy))
    };
    shares.map(at).into_iter().find(free).unwrap_or_else(|| at(shares[0]))
}

/// A joint's mark: a lozenge across the joint with a ring at its heart.
pub(super) fn mark(at: Point, upright: bool) -> BezPath {
    let (along, across) = (MARK, MARK * 0.75);
    let (dx, dy) = if upright { (across, along) } else { (along, across) };
    let mut path = BezPath::new();
    path.move_to(Point::new(at.x - dx, at.y));
    path.line_to(Point::new(at.x, at.y - dy));
    path.line_to(Point::new(at.x + dx, at.y));
    path.line_to(Point::new(at.x, at.y + dy));
    path.close_path();
    path.extend(Circle::new(at, 1.1).to_path(0.01));
    path
}

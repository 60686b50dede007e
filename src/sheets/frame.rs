//! What stands round the plan on each sheet: its name, its joints with their marks, its neighbours.
//!
//! Every sheet shows half of the overlap beyond each joint, and its marks whole. So one edge of a pair
//! may be trimmed or folded along its joint and laid on the other's, where half of each mark meets
//! its other half; or both may be laid over each other against a window, mark upon mark.

use kurbo::{BezPath, Circle, Point, Rect, Shape as _};

use super::labels::Words;
use super::plan::{SheetPlan, tile_name};
use super::{inside, window};
use crate::measure::to_f64;

/// The frame of one sheet, in the plan's own places.
#[derive(Debug, Clone, Default)]
pub(super) struct Frame {
    /// Joints: where to trim or fold.
    pub joints: BezPath,
    /// The marks on the joints.
    pub marks: BezPath,
    /// Names and neighbours.
    pub words: Vec<Words>,
}

/// The half height of a joint's mark, in mm: within half of the usual overlap.
const MARK: f64 = 4.0;
/// Where along an edge its neighbour is named: in the middle, or as near to it as the lines of the pieces let.
/// The marks lie at a quarter and at three quarters.
const JOINS: [f64; 11] = [0.5, 0.44, 0.56, 0.38, 0.62, 0.32, 0.68, 0.16, 0.84, 0.1, 0.9];
/// The height of the type of a neighbour's name, in mm.
const NAME: f64 = 2.5;

/// The window that a sheet shows: what it adds, and half of the overlap at each edge.
pub(super) fn window(plan: &SheetPlan, tile: (usize, usize)) -> Rect {
    let half = if plan.paper.size().1.is_some() { to_f64(plan.settings.overlap) / 2.0 } else { 0.0 };
    plan.tile(tile.0, tile.1).inflate(half, half)
}

/// The frame of a sheet.
pub(super) fn frame(plan: &SheetPlan, tile: (usize, usize)) -> Frame {
    let mut frame = Frame::default();
    let area = plan.tile(tile.0, tile.1);
    let (row, column) = tile;
    type Side = (Option<(usize, usize)>, Point, Point, bool);
    let sides: [Side; 4] = [
        (
            column.checked_sub(1).map(|left| (row, left)),
            Point::new(area.x0, area.y0),
            Point::new(area.x0, area.y1),
            true,
        ),
        (Some((row, column + 1)), Point::new(area.x1, area.y0), Point::new(area.x1, area.y1), true),
        (
            row.checked_sub(1).map(|above| (above, column)),
            Point::new(area.x0, area.y0),
            Point::new(area.x1, area.y0),
            false,
        ),
        (Some((row + 1, column)), Point::new(area.x0, area.y1), Point::new(area.x1, area.y1), false),
    ];
    // The sheet's own name, large and in the same place on each.
    let corner = window(plan, tile);
    let text = tile_name(tile);
    // Clear of the joint, however long it is.
    let wide = (text.chars().count() as f64 * 4.0).max(8.0);
    frame.words.push(Words { at: Point::new(corner.x1 - 8.0 - wide, corner.y1 - 9.0), text, size: 6.0, strong: true });
    for (at, (neighbour, from, to, upright)) in sides.into_iter().enumerate() {
        let Some(neighbour) = neighbour.filter(|neighbour| plan.tiles.contains(neighbour)) else { continue };
        let half = window(plan, tile);
        let (from, to) = match upright {
            true => (Point::new(from.x, half.y0), Point::new(to.x, half.y1)),
            false => (Point::new(half.x0, from.y), Point::new(half.x1, to.y)),
        };
        frame.joints.move_to(from);
        frame.joints.line_to(to);
        for share in [0.25, 0.75] {
            frame.marks.extend(mark(area_point(area, at, share), upright));
        }
        // Each neighbour is named inside this sheet, at its edge, where no line of a piece runs through the name.
        let text = format!("joins {}", tile_name(neighbour));
        let places = JOINS.map(|share| beside(area, at, share));
        let clear = |place: &Point| !is_crossed(plan, Rect::new(place.x, place.y - NAME, place.x + 13.0, place.y));
        let place = places.into_iter().find(clear).unwrap_or(places[0]);
        frame.words.push(Words { at: place, text, size: NAME, strong: false });
    }
    frame
}

/// Where the name of a neighbour begins.
fn beside(area: Rect, side: usize, share: f64) -> Point {
    let middle = area_point(area, side, share);
    match side {
        0 => Point::new(middle.x + 6.5, middle.y),
        1 => Point::new(middle.x - 20.0, middle.y),
        2 => Point::new(middle.x - 6.5, middle.y + 8.0),
        _ => Point::new(middle.x - 6.5, middle.y - 6.5),
    }
}

/// Whether a line of a piece runs through a place.
fn is_crossed(plan: &SheetPlan, room: Rect) -> bool {
    let near = room.inflate(1.0, 1.0);
    let mut crossed = false;
    for piece in plan.pieces.iter().flat_map(|piece| &piece.outlines).map(|(_, piece)| piece) {
        let inner = piece.details.iter().filter_map(inside::stroke).map(|(_, path)| path);
        let bracket = inside::bracket(piece).map(|(bracket, _)| bracket);
        for path in [piece.cutting.clone(), piece.stitching.clone()].into_iter().chain(inner).chain(bracket) {
            window::segments(&path, &mut |from, to| crossed |= window::clip(from, to, near).is_some());
        }
        crossed |= piece.grain.is_some_and(|grain| window::clip(grain.p0, grain.p1, near).is_some());
    }
    crossed
}

/// A point on the left, right, upper or lower edge of a sheet's area.
fn area_point(area: Rect, side: usize, share: f64) -> Point {
    let (x, y) = (area.x0 + area.width() * share, area.y0 + area.height() * share);
    match side {
        0 => Point::new(area.x0, y),
        1 => Point::new(area.x1, y),
        2 => Point::new(x, area.y0),
        _ => Point::new(x, area.y1),
    }
}

/// A joint's mark: a lozenge across the joint with a ring at its heart.
fn mark(at: Point, upright: bool) -> BezPath {
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

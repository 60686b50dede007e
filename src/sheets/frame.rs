//! What stands round the plan on each sheet: its name, its joints with their marks, its neighbours.
//!
//! Every sheet shows half of the overlap beyond each joint, and its marks whole. So the left and the upper edge of a
//! sheet are trimmed or folded along the joint and laid on the sheet before it, where half of each mark meets
//! its other half; or both may be laid over each other against a window, mark upon mark.

use kurbo::{BezPath, Point, Rect};

use super::crowd::Crowd;
use super::face::{face, is_beam, width};
use super::joints::{BESIDE, Joint, MARK, mark};
use super::labels::Words;
use super::plan::{SheetPlan, tile_name};
use crate::measure::to_f64;
use crate::model::HouseWords;

/// The frame of one sheet, in the plan's own places.
#[derive(Debug, Clone, Default)]
pub(super) struct Frame {
    /// Joints: where to trim or fold.
    pub joints: BezPath,
    /// The marks on the joints.
    pub marks: BezPath,
    /// Neighbours, and the numbers of the joints.
    pub words: Vec<Words>,
}

/// Where along an edge its neighbour is named: in the middle, or as near to it as the lines of the pieces let.
/// The marks lie near a quarter and three quarters.
const JOINS: [f64; 9] = [0.5, 0.46, 0.54, 0.42, 0.58, 0.08, 0.92, 0.05, 0.95];
/// The height of the type of a neighbour's name and of a joint's number, in mm.
const NAME: f64 = 2.5;

/// The window that a sheet shows: what it adds, and half of the overlap at each edge.
pub(super) fn window(plan: &SheetPlan, tile: (usize, usize)) -> Rect {
    let area = plan.tile(tile.0, tile.1);
    match plan.paper.size().1 {
        Some(_) => {
            let half = to_f64(plan.settings.overlap) / 2.0;
            area.inflate(half, half)
        }
        // Words at the foot of a beam need a band below all else.
        None if is_beam(plan.paper) => Rect::new(area.x0, area.y0, area.x1, area.y1 + face(plan.paper).foot.1),
        None => area,
    }
}

/// The sheet's own name, large and in the same place on each, clear of the joint however long it is.
pub(super) fn name(plan: &SheetPlan, tile: (usize, usize)) -> Words {
    let corner = window(plan, tile);
    let text = tile_name(tile);
    let wide = (text.chars().count() as f64 * 4.0).max(8.0);
    Words { at: Point::new(corner.x1 - 8.0 - wide, corner.y1 - 9.0), text, size: 6.0, strong: true, block: None }
}

/// The frame of a sheet, among what lies on it.
pub(super) fn frame(
    plan: &SheetPlan,
    tile: (usize, usize),
    (joints, house): (&[Joint], &HouseWords),
    crowd: &Crowd,
) -> Frame {
    let mut frame = Frame::default();
    let area = plan.tile(tile.0, tile.1);
    let seen = window(plan, tile);
    for joint in joints.iter().filter(|joint| joint.later == tile || joint.earlier == tile) {
        let is_later = joint.later == tile;
        let line = match joint.upright {
            true => {
                if is_later {
                    area.x0
                } else {
                    area.x1
                }
            }
            false => {
                if is_later {
                    area.y0
                } else {
                    area.y1
                }
            }
        };
        let (from, to) = match joint.upright {
            true => (Point::new(line, seen.y0), Point::new(line, seen.y1)),
            false => (Point::new(seen.x0, line), Point::new(seen.x1, line)),
        };
        frame.joints.move_to(from);
        frame.joints.line_to(to);
        for at in joint.marks {
            frame.marks.extend(mark(at, joint.upright));
            frame.words.push(number(joint, at, is_later));
        }
        // Each neighbour is named inside this sheet, at its edge, where nothing runs through the name.
        let other = tile_name(if is_later { joint.earlier } else { joint.later });
        let text = house.fill("sheet_joins", &[("name", &other)]);
        let places = JOINS.map(|share| beside(area, joint.upright, is_later, share));
        let clear = |place: &Point| crowd.is_clear(room(*place));
        let place = places.into_iter().find(clear).unwrap_or(places[0]);
        frame.words.push(Words { at: place, text, size: NAME, strong: false, block: None });
    }
    frame
}

/// The number of a joint beside one of its marks, on this sheet's side of it.
fn number(joint: &Joint, at: Point, is_later: bool) -> Words {
    let text = joint.number.to_string();
    let wide = width(&text, NAME);
    let place = match (joint.upright, is_later) {
        (true, true) => Point::new(at.x + BESIDE, at.y + NAME * 0.36),
        (true, false) => Point::new(at.x - BESIDE - wide, at.y + NAME * 0.36),
        (false, true) => Point::new(at.x - wide / 2.0, at.y + BESIDE + NAME * 0.8),
        (false, false) => Point::new(at.x - wide / 2.0, at.y - BESIDE),
    };
    Words { at: place, text, size: NAME, strong: true, block: None }
}

/// Where the name of a neighbour begins.
fn beside(area: Rect, upright: bool, is_later: bool, share: f64) -> Point {
    let (x, y) = (area.x0 + area.width() * share, area.y0 + area.height() * share);
    match (upright, is_later) {
        (true, true) => Point::new(area.x0 + MARK + 2.5, y),
        (true, false) => Point::new(area.x1 - 20.0, y),
        (false, true) => Point::new(x - 6.5, area.y0 + 8.0),
        (false, false) => Point::new(x - 6.5, area.y1 - 6.5),
    }
}

fn room(place: Point) -> Rect {
    Rect::new(place.x - 1.0, place.y - NAME - 1.0, place.x + 14.0, place.y + 1.0)
}

//! A piece of which only a part is drawn, torn off where it goes on.

use kurbo::{Point, Rect, Shape as _, Vec2};

use super::part::Part;
use super::trace::Side;

impl Part {
    /// Leaves what lies in a box: each side of it that the part reaches well beyond is torn off. Those that are told in
    /// `kept` stay: left, right, top, bottom.
    pub fn torn_to(&mut self, room: Rect, kept: [bool; 4]) {
        let all = self.outline.bounding_box();
        let sides = [
            (Vec2::new(-1.0, 0.0), Point::new(room.x0, room.center().y), room.x0 - all.x0),
            (Vec2::new(1.0, 0.0), Point::new(room.x1, room.center().y), all.x1 - room.x1),
            (Vec2::new(0.0, -1.0), Point::new(room.center().x, room.y0), room.y0 - all.y0),
            (Vec2::new(0.0, 1.0), Point::new(room.center().x, room.y1), all.y1 - room.y1),
        ];
        for ((out, at, beyond), _) in sides.into_iter().zip(kept).filter(|(_, kept)| !kept) {
            if beyond > 1.0 {
                self.cut_back(at, -out, Side::Torn);
            }
        }
    }

    /// Leaves what lies round a place at an edge: so far along it to both sides, and so deep.
    pub fn torn_at(&mut self, at: Point, inner: Vec2, aside: f64, deep: f64) {
        let along = Vec2::new(-inner.y, inner.x);
        let all = self.outline.bounding_box();
        let far = |way: Vec2| {
            let corners = [(all.x0, all.y0), (all.x1, all.y0), (all.x0, all.y1), (all.x1, all.y1)];
            corners.into_iter().map(|(x, y)| (Point::new(x, y) - at).dot(way)).fold(f64::MIN, f64::max)
        };
        for (way, reach) in [(along, aside), (-along, aside), (inner, deep)] {
            if far(way) > reach + 1.0 {
                self.cut_back(at + way * reach, -way, Side::Torn);
            }
        }
    }
}

//! What already lies on the sheets, so that words can be set where nothing runs through them.

use kurbo::{BezPath, Point, Rect};

use super::plan::{PlacedPiece, SheetPlan};
use super::{inside, window};

/// Lines and the rooms of words, in the plan's own places.
#[derive(Debug, Clone, Default)]
pub(super) struct Crowd {
    lines: Vec<(Point, Point)>,
    rooms: Vec<Rect>,
}

impl Crowd {
    /// All lines of the pieces and the gauge.
    pub(super) fn of(plan: &SheetPlan) -> Crowd {
        let mut crowd = Crowd::default();
        plan.pieces.iter().for_each(|piece| crowd.piece(piece, plan.sizes.len() > 1));
        crowd.rooms.push(plan.gauge);
        crowd
    }

    fn piece(&mut self, piece: &PlacedPiece, nested: bool) {
        for (_, lines) in piece.drawn() {
            self.path(&lines.cutting);
            if lines.has_allowance() && (piece.once || !nested) {
                self.path(&lines.sewn);
            }
            lines.details.iter().filter_map(inside::stroke).for_each(|(_, path)| self.path(&path));
            self.lines.extend(lines.notches.iter().map(|notch| (notch.p0, notch.p1)));
        }
        if let Some((bracket, _)) = piece.smallest().and_then(inside::bracket) {
            self.path(&bracket);
        }
        if let Some(grain) = piece.outlines.first().and_then(|(_, lines)| lines.grain) {
            self.lines.push((grain.p0, grain.p1));
        }
    }

    /// Adds a line.
    pub(super) fn path(&mut self, path: &BezPath) {
        window::segments(path, &mut |from, to| self.lines.push((from, to)));
    }

    /// Adds the room of words or of a mark.
    pub(super) fn room(&mut self, room: Rect) {
        self.rooms.push(room);
    }

    /// What of it lies in a window.
    pub(super) fn within(&self, seen: Rect) -> Crowd {
        let lines = self.lines.iter().filter(|(from, to)| window::clip(*from, *to, seen).is_some());
        let rooms = self.rooms.iter().filter(|room| room.overlaps(seen));
        Crowd { lines: lines.copied().collect(), rooms: rooms.copied().collect() }
    }

    /// Whether nothing lies in a place.
    pub(super) fn is_clear(&self, place: Rect) -> bool {
        self.is_unlined(place) && self.is_unsaid(place)
    }

    /// Whether no words stand in a place.
    pub(super) fn is_unsaid(&self, place: Rect) -> bool {
        self.rooms.iter().all(|room| !room.overlaps(place))
    }

    /// Whether no line runs through a place.
    pub(super) fn is_unlined(&self, place: Rect) -> bool {
        self.lines.iter().all(|(from, to)| window::clip(*from, *to, place).is_none())
    }
}

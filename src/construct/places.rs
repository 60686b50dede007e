//! Places along an edge, and the part of an edge that a work fact is about.

use super::deed::Deed;
use super::fault::{Fault, OffEdge};
use super::player::Player;
use crate::geometry::Along;
use crate::measure::{Dimension, Exact, to_f64};
use crate::model::Far;
use crate::resolve::{CopyId, EdgeId, Placed};

/// How far two corners may lie apart and still be one, in mm.
const SAME_CORNER: f64 = 0.5;

impl Player<'_> {
    /// How much of the first edge of a side lies behind a place, as one counts, in mm; `None` where the place
    /// lies nowhere, which is told by itself.
    pub fn behind(&self, side: &[(CopyId, EdgeId)], placed: &Placed<'_>) -> Option<f64> {
        let (copy, edge) = side.first()?;
        let (far, _) = self.counted(*copy, *edge, placed).ok()?;
        Some(self.drawn_length(&[(*copy, *edge)]) - far)
    }

    fn place_on(&self, copy: CopyId, edge: EdgeId, placed: &Placed<'_>) -> Result<f64, OffEdge> {
        let (far, from_end) = self.counted(copy, edge, placed)?;
        Ok(if from_end { self.drawn_length(&[(copy, edge)]) - far } else { far })
    }

    /// How far a place lies from the end that one counts from, in mm, and whether that is the edge's end.
    fn counted(&self, copy: CopyId, edge: EdgeId, placed: &Placed<'_>) -> Result<(f64, bool), OffEdge> {
        let length = self.drawn_length(&[(copy, edge)]);
        let from_end = match placed.place.from.as_ref().map(|from| from.text.as_str()) {
            None | Some("start") => false,
            Some("end") => true,
            Some(beside) => self.lies_at_end(copy, edge, beside)?,
        };
        let far = match &placed.place.far {
            Far::Here => 0.0,
            Far::There => length,
            Far::Centre => length / 2.0,
            Far::Notch(number) => {
                let mut notches = self.notches(copy, edge);
                if from_end {
                    notches = notches.iter().rev().map(|far| length - far).collect();
                }
                let found = number.checked_sub(1).and_then(|at| notches.get(at));
                *found.ok_or(OffEdge::NoNotch(notches.len()))?
            }
            Far::Along(_) => match placed.along.map(|along| along.quantity) {
                Some(along) if along.dimension == Dimension::Length => to_f64(along.value),
                Some(along) if along.dimension == Dimension::Count => to_f64(along.value) * length,
                _ => return Err(OffEdge::Follows),
            },
        };
        if !(0.0..=length + SAME_CORNER).contains(&far) {
            return Err(OffEdge::TooFar(length));
        }
        Ok((far, from_end))
    }

    /// Whether the edge `beside` meets an edge at its end, and not at its start.
    fn lies_at_end(&self, copy: CopyId, edge: EdgeId, beside: &str) -> Result<bool, OffEdge> {
        let shape = self.edition.values.whole(self.edition.cast[copy].piece).ok_or(OffEdge::Follows)?;
        let ends = |name: &str| {
            let at = |share| shape.point_at(name, Along::Fraction(share)).map(|point| point.at);
            Some([at(Exact::ZERO)?, at(Exact::ONE)?])
        };
        let name = &shape.edges()[edge.at()].name;
        let own = ends(name).ok_or(OffEdge::Follows)?;
        let meets = |name: &str, corner: [f64; 2]| {
            let near = |other: &[f64; 2]| (other[0] - corner[0]).hypot(other[1] - corner[1]) < SAME_CORNER;
            ends(name).is_some_and(|ends| ends.iter().any(near))
        };
        // An edge off the fold stands twice, and is called as it was drawn.
        let called = |corner| {
            let named = shape.edges().iter().filter(|other| other.name == beside || other.drawn == beside);
            named.filter(|other| other.name != *name).any(|other| meets(&other.name, corner))
        };
        match (called(own[0]), called(own[1])) {
            (true, _) => Ok(false),
            (false, true) => Ok(true),
            (false, false) => {
                let others = shape.edges().iter().filter(|other| other.name != *name && !other.on_fold);
                let known = others.filter(|other| own.iter().any(|corner| meets(&other.name, *corner)));
                Err(OffEdge::NotBeside(known.map(|other| other.drawn.clone()).collect()))
            }
        }
    }

    /// The share of its first edge that a fact is about, from 0 to 1; `None` for the whole.
    pub fn part_of(&self, deed: &Deed<'_, '_>, side: &[(CopyId, EdgeId)]) -> Option<(f64, f64)> {
        let (copy, edge) = side.first()?;
        self.part_on(deed, *copy, *edge)
    }

    fn part_on(&self, deed: &Deed<'_, '_>, copy: CopyId, edge: EdgeId) -> Option<(f64, f64)> {
        let [from, to] = &deed.work.part;
        if from.is_none() && to.is_none() {
            return None;
        }
        let length = self.drawn_length(&[(copy, edge)]);
        let at = |placed: &Option<Placed<'_>>, otherwise: f64| match placed {
            Some(placed) => self.place_on(copy, edge, placed).ok(),
            None => Some(otherwise),
        };
        // Without a beginning, the part begins at the end that the other place is not counted from.
        let whole = (at(from, 0.0)?, at(to, length)?);
        let (low, high) = (whole.0.min(whole.1), whole.0.max(whole.1));
        (length > 0.0).then_some((low / length, high / length))
    }

    /// The shares of each edge that a fact holds: of the first edge the part that it names, of the others
    /// what lies on it.
    pub fn shares(&self, deed: &Deed<'_, '_>, copy: CopyId, edge: EdgeId) -> (f64, f64) {
        let sides = deed.sides();
        let Some(first) = sides.first() else { return (0.0, 1.0) };
        let Some((low, high)) = self.part_of(deed, first) else { return (0.0, 1.0) };
        let Some((first_copy, first_edge)) = first.first().copied() else { return (0.0, 1.0) };
        if (first_copy, first_edge) == (copy, edge) {
            return (low, high);
        }
        let (own, other) = (self.drawn_length(first), self.drawn_length(&[(copy, edge)]));
        // A short edge on a part of a long one is sewn from end to end.
        if other < own - SAME_CORNER && other <= (high - low) * own * 1.02 + SAME_CORNER {
            return (0.0, 1.0);
        }
        let by_itself = deed.work.part.iter().flatten().all(|placed| placed.place.from.is_some());
        if let Some(part) = self.part_on(deed, copy, edge).filter(|_| by_itself) {
            return part;
        }
        match self.same_way((first_copy, first_edge), (copy, edge)) {
            true => (low, high),
            false => (1.0 - high, 1.0 - low),
        }
    }

    /// Places that lie on no edge.
    pub fn check_places(&mut self, deed: &Deed<'_, '_>) {
        let sides = deed.sides();
        let Some((copy, edge)) = sides.first().and_then(|side| side.first()).copied() else { return };
        for placed in deed.work.part.iter().chain([&deed.work.leave_at]).flatten() {
            match self.place_on(copy, edge, placed) {
                Ok(_) | Err(OffEdge::Follows) => {}
                Err(why) => {
                    let edge = self.edition.edge_name(copy, edge);
                    self.faults.push(Fault::PlaceOff { edge, place: placed.place.text.span, why });
                }
            }
        }
    }
}

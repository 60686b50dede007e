//! The part of a seam that a work fact is about, reckoned along an edge or along edges in a row.

use super::corners::SAME_CORNER;
use super::deed::{Deed, Side};
use super::fault::{Fault, OffEdge};
use super::player::Player;
use crate::measure::{Dimension, to_f64};
use crate::model::Far;
use crate::resolve::{CopyId, EdgeId, Placed};

/// An edge of a row, as it lies along the row, in mm; where it meets another, the allowance is taken off.
pub(super) struct Stretch {
    pub of: (CopyId, EdgeId),
    /// Where it begins in the row.
    pub from: f64,
    /// How long it lies there.
    pub long: f64,
    /// What its seam with the edge before takes of its length.
    pub taken: f64,
    /// Whether the row runs along it from its end to its start.
    pub turned: bool,
}

/// A part of a seam, in mm along the side that it is counted on.
pub(super) struct Part {
    pub side: Side,
    pub from: f64,
    pub to: f64,
    /// How long its seam is: where it reaches an end of the side, the allowance there is taken off.
    pub sewn: f64,
}

impl Player<'_> {
    /// The part that a fact is about; `None` for the whole.
    pub fn part_of(&self, deed: &Deed<'_, '_>) -> Option<Part> {
        let [from, to] = &deed.work.part;
        if from.is_none() && to.is_none() {
            return None;
        }
        let side = self.counted_on(deed)?;
        let row = self.stretches(&side);
        let length = total(&row);
        let at = |placed: &Option<Placed<'_>>, otherwise: f64, last: bool| match placed {
            Some(placed) => self.place_in(&row, placed, last).ok(),
            None => Some(otherwise),
        };
        // Without a beginning, the part begins at the end that the other place is not counted from.
        let (one, two) = (at(from, 0.0, false)?, at(to, length, true)?);
        let (from, to) = (one.min(two), one.max(two));
        let taken = |stretch: Option<&Stretch>| stretch.map_or(0.0, |stretch| self.taken_at_ends(stretch.of));
        let first = if from < SAME_CORNER { taken(row.first()) } else { 0.0 };
        let last = if to > length - SAME_CORNER { taken(row.last()) } else { 0.0 };
        (length > 0.0).then_some(Part { side, from, to, sewn: to - from - first - last })
    }

    /// The side that places are counted along: one that holds a mark that is named, else the first.
    fn counted_on(&self, deed: &Deed<'_, '_>) -> Option<Side> {
        let sides = deed.sides();
        let marked = deed.places().find_map(|placed| placed.mark);
        let holds = |side: &&Side| {
            let mark =
                marked.filter(|mark| side.iter().any(|(copy, edge)| self.mark_on(*copy, *edge, *mark).is_some()));
            mark.is_some()
        };
        sides.iter().find(holds).or(sides.first()).cloned()
    }

    /// The share of an edge that a fact holds, from 0 to 1: of the side that it is counted on the part that it
    /// names, of the others what lies on it.
    pub fn shares(&self, deed: &Deed<'_, '_>, copy: CopyId, edge: EdgeId) -> (f64, f64) {
        let Some(part) = self.part_of(deed) else { return (0.0, 1.0) };
        let own = self.stretches(&part.side);
        if let Some(at) = own.iter().position(|one| one.of == (copy, edge)) {
            return share(&own[at], (part.from, part.to));
        }
        let side = deed.sides().into_iter().find(|side| side.contains(&(copy, edge)));
        let side = side.unwrap_or_else(|| vec![(copy, edge)]);
        let other = self.stretches(&side);
        let Some(stretch) = other.iter().find(|one| one.of == (copy, edge)) else { return (0.0, 1.0) };
        let (whole, length) = (total(&own), total(&other));
        // What is shorter is sewn from end to end on a part of what is longer: its seam has its darts closed, and no
        // allowances at its ends.
        let edges = side.iter().filter_map(|(copy, edge)| self.edition.edge(*copy, *edge));
        let sewn: f64 = edges.map(|edge| edge.seam_length).sum();
        if sewn < whole - SAME_CORNER && sewn <= part.sewn * 1.02 + SAME_CORNER {
            return (0.0, 1.0);
        }
        if let Some(found) = self.counted_by_itself(deed, &other) {
            return share(stretch, found);
        }
        let scaled = (part.from * length / whole, part.to * length / whole);
        match self.runs_along(&own, &other) {
            true => share(stretch, scaled),
            false => share(stretch, (length - scaled.1, length - scaled.0)),
        }
    }

    /// The part on another side whose places are all counted from an edge or an end that it has as well.
    fn counted_by_itself(&self, deed: &Deed<'_, '_>, row: &[Stretch]) -> Option<(f64, f64)> {
        let [from, to] = &deed.work.part;
        let named = deed
            .work
            .part
            .iter()
            .flatten()
            .all(|placed| (placed.place.from.is_some() || placed.beside.is_some()) && placed.mark.is_none());
        let at = |placed: &Option<Placed<'_>>, otherwise: f64, last: bool| match placed {
            Some(placed) => self.place_in(row, placed, last).ok(),
            None => Some(otherwise),
        };
        let (one, two) = (at(from, 0.0, false)?, at(to, total(row), true)?);
        (named && row.len() == 1).then(|| (one.min(two), one.max(two)))
    }

    /// Whether two sides are counted the same way once they lie on each other; rows are named the same way.
    fn runs_along(&self, one: &[Stretch], other: &[Stretch]) -> bool {
        let (Some(first), Some(second)) = (one.first(), other.first()) else { return true };
        let rows = one.len() > 1 && other.len() > 1;
        rows || (self.same_way(first.of, second.of) ^ first.turned ^ second.turned)
    }

    /// A side's edges as they lie in their row.
    pub fn stretches(&self, side: &[(CopyId, EdgeId)]) -> Vec<Stretch> {
        let mut from = 0.0;
        let last = side.len().saturating_sub(1);
        let mut row = Vec::new();
        for (at, of) in side.iter().enumerate() {
            let length = self.drawn_length(&[*of]);
            let taken = |joined: bool| if joined { self.taken_at_ends(*of) } else { 0.0 };
            let (before, behind) = (taken(at > 0), taken(at < last));
            let long = length - before - behind;
            let turned = match at < last {
                true => self.meets_at_end(*of, side[at + 1]) == Some(false),
                false => at > 0 && self.meets_at_end(*of, side[at - 1]) == Some(true),
            };
            row.push(Stretch { of: *of, from, long, taken: before, turned });
            from += long;
        }
        row
    }

    /// What the seams beside an edge take of its length at each end, in mm.
    pub fn taken_at_ends(&self, (copy, edge): (CopyId, EdgeId)) -> f64 {
        let edge = self.edition.edge(copy, edge);
        edge.map_or(0.0, |edge| (edge.closed - edge.seam_length).max(0.0) / 2.0)
    }

    /// How long a side lies, in mm, the seams between its edges taken off.
    pub fn laid_length(&self, side: &[(CopyId, EdgeId)]) -> f64 {
        total(&self.stretches(side))
    }

    /// Whether an edge meets another of its row at its end, through edges beside them that are sewn; `None` where
    /// nothing tells.
    fn meets_at_end(&self, one: (CopyId, EdgeId), other: (CopyId, EdgeId)) -> Option<bool> {
        self.meetings(one, other).first().map(|(_, at_end)| *at_end)
    }

    /// Where a place lies along a row, in mm from its beginning; `last` for the place where a part ends.
    fn place_in(&self, row: &[Stretch], placed: &Placed<'_>, last: bool) -> Result<f64, OffEdge> {
        let place_on = |stretch: &Stretch| {
            let (copy, edge) = stretch.of;
            let far = self.place_on(copy, edge, placed)?;
            let far = if stretch.turned { self.drawn_length(&[stretch.of]) - far } else { far };
            Ok(stretch.from + (far - stretch.taken).clamp(0.0, stretch.long))
        };
        let from = placed.place.from.as_ref().map(|from| from.text.as_str());
        let whole = matches!(from, None | Some("start" | "end")) && !matches!(placed.place.far, Far::Notch(_));
        if row.len() > 1 && whole && placed.mark.is_none() && placed.beside.is_none() {
            return along(total(row), placed, from == Some("end"));
        }
        let mut found = Err(OffEdge::Follows);
        let mut edges: Vec<&Stretch> = row.iter().collect();
        if last {
            edges.reverse();
        }
        for stretch in edges {
            let here = place_on(stretch);
            if here.is_ok() {
                return here;
            }
            if matches!(found, Err(OffEdge::Follows)) {
                found = here;
            }
        }
        found
    }

    /// How much of a side lies behind a place where a gap begins, in mm; `None` where the place lies nowhere, which is
    /// told by itself.
    pub fn behind(&self, deed: &Deed<'_, '_>, side: &[(CopyId, EdgeId)], placed: &Placed<'_>) -> Option<f64> {
        // A gap at the end of a seam ends there, and one at the centre lies in the middle of it.
        if matches!(placed.place.far, Far::There | Far::Centre) {
            return None;
        }
        if let ([(copy, edge)], None) = (side, placed.mark) {
            let (far, _) = self.counted(*copy, *edge, placed).ok()?;
            return Some(self.drawn_length(side) - far);
        }
        let row = self.stretches(&self.counted_on(deed)?);
        let far = self.place_in(&row, placed, false).ok()?;
        Some(far.max(total(&row) - far))
    }

    /// Places that lie on no edge.
    pub fn check_places(&mut self, deed: &Deed<'_, '_>) {
        let Some(side) = self.counted_on(deed) else { return };
        let row = self.stretches(&side);
        for placed in deed.places() {
            match self.place_in(&row, placed, false) {
                Ok(_) | Err(OffEdge::Follows) => {}
                Err(why) => {
                    let edge = self.side_name(&side);
                    self.faults.push(Fault::PlaceOff { edge, place: placed.place.text.span, why });
                }
            }
        }
    }
}

fn total(row: &[Stretch]) -> f64 {
    row.last().map_or(0.0, |last| last.from + last.long)
}

/// A place that is counted along a row as one length.
fn along(length: f64, placed: &Placed<'_>, from_end: bool) -> Result<f64, OffEdge> {
    let far = match (&placed.place.far, placed.along.map(|along| along.quantity)) {
        (Far::Here, _) => 0.0,
        (Far::There, _) => length,
        (Far::Centre, _) => length / 2.0,
        (_, Some(far)) if far.dimension == Dimension::Length => to_f64(far.value),
        (_, Some(far)) if far.dimension == Dimension::Count => to_f64(far.value) * length,
        _ => return Err(OffEdge::Follows),
    };
    match (0.0..=length + SAME_CORNER).contains(&far) {
        true => Ok(if from_end { length - far } else { far }),
        false => Err(OffEdge::TooFar(length)),
    }
}

/// The share of an edge that a part of its row takes.
fn share(stretch: &Stretch, (from, to): (f64, f64)) -> (f64, f64) {
    if stretch.long <= 0.0 {
        return (0.0, 1.0);
    }
    let at = |far: f64| ((far - stretch.from) / stretch.long).clamp(0.0, 1.0);
    let (low, high) = (at(from), at(to));
    if stretch.turned { (1.0 - high, 1.0 - low) } else { (low, high) }
}

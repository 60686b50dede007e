//! Notches of edges that are sewn together: whether they meet.

use std::collections::BTreeSet;

use super::fault::{Fault, Moment};
use super::player::Player;
use crate::geometry::Along;
use crate::model::{Notch, NotchAt};
use crate::resolve::{CopyId, EdgeId};

/// How far two notches may lie apart and still meet, in mm (common practice, no source: a notch is a
/// snip of 2 to 3 mm).
pub(super) const NOTCH_TOLERANCE: f64 = 1.5;

/// An edge with notches: where they are, and how long it is, in mm.
type Noted = (CopyId, EdgeId, Vec<f64>, f64);

impl Player<'_> {
    pub fn check_notches(&mut self, edges: &[(CopyId, EdgeId)], moment: Moment) {
        let noted: Vec<Noted> = edges
            .iter()
            .filter(|(copy, edge)| !self.is_folded_across(*copy, *edge))
            .filter_map(|(copy, edge)| {
                let places = self.notches(*copy, *edge);
                let length = self.edition.edge(*copy, *edge)?.length;
                (!places.is_empty()).then_some((*copy, *edge, places, length))
            })
            .collect();
        let mut seen: BTreeSet<(CopyId, CopyId)> = BTreeSet::new();
        let mirrored = |one: &Noted, other: &Noted| {
            let mut places: Vec<f64> = match self.same_way((one.0, one.1), (other.0, other.1)) {
                true => other.2.clone(),
                false => other.2.iter().map(|place| other.3 - place).collect(),
            };
            places.sort_by(f64::total_cmp);
            places
        };
        let meets = |one: &Noted, other: &Noted| {
            let theirs = mirrored(one, other);
            one.2.len() == theirs.len()
                && one.2.iter().zip(&theirs).all(|(here, there)| can_meet(here - there, one.3 - other.3))
        };
        // An edge that stands in both halves of a piece cut on the fold is sewn in the half where it fits.
        let twins = |one: &Noted, other: &Noted| {
            one.0 == other.0 && self.edition.drawn_word(one.0, one.1) == self.edition.drawn_word(other.0, other.1)
        };
        let mut apart = Vec::new();
        for (at, one) in noted.iter().enumerate() {
            for other in noted[at + 1..].iter().filter(|other| !twins(one, other)) {
                let fits = noted.iter().filter(|twin| twins(twin, other)).any(|twin| meets(one, twin))
                    || noted.iter().filter(|twin| twins(twin, one)).any(|twin| meets(twin, other));
                if !fits && seen.insert((one.0, other.0)) {
                    apart.push((one, other, mirrored(one, other)));
                }
            }
        }
        let faults: Vec<Fault> = apart
            .into_iter()
            .map(|((copy, edge, places, _), (other, other_edge, ..), theirs)| {
                let piece = self.edition.cast[*copy].piece;
                let notch = self.edition.draft.facts.pieces[piece]
                    .notches
                    .iter()
                    .find(|notch| notch.edge.text == self.edition.drawn_word(*copy, *edge))
                    .map_or(moment.verb, |notch| notch.text.span);
                Fault::NotchesDiffer {
                    edges: (self.edition.edge_name(*copy, *edge), self.edition.edge_name(*other, *other_edge)),
                    notch,
                    places: (places.clone(), theirs),
                    sewn: moment,
                }
            })
            .collect();
        self.faults.extend(faults);
    }

    /// Whether two edges are counted the same way once their pieces lie right sides together. One of
    /// them is then turned over, so that two edges that both run clockwise run against each other.
    /// The same upright edge of two copies can only meet when one is turned upside down or is as good
    /// as mirrored; there the second is meant, and both are counted from the top.
    pub fn same_way(&self, first: (CopyId, EdgeId), second: (CopyId, EdgeId)) -> bool {
        let (one, two) = (&self.edition.cast[first.0], &self.edition.cast[second.0]);
        let (Some((one_way, upright)), Some((other_way, _))) = (self.clockwise(first), self.clockwise(second)) else {
            return true;
        };
        let same_edge = one.piece == two.piece && first.1 == second.1 && one.mirrored == two.mirrored;
        (same_edge && upright) || one_way != other_way
    }

    /// Where the notches of an edge are, in mm from its beginning, in order.
    pub fn notches(&self, copy: CopyId, edge: EdgeId) -> Vec<f64> {
        let piece = self.edition.cast[copy].piece;
        let facts = &self.edition.draft.facts.pieces[piece];
        let (Some(shape), Some(own)) = (self.edition.values.shape(piece), self.edition.edge(copy, edge)) else {
            return Vec::new();
        };
        let along = |notch: &Notch| match &notch.at {
            NotchAt::Centre => Some(Along::Centre),
            NotchAt::FromStart(formula) => self.edition.values.along(formula, false),
            NotchAt::FromEnd(formula) => self.edition.values.along(formula, true),
        };
        let mut places: Vec<f64> = facts
            .notches
            .iter()
            .filter(|notch| notch.edge.text == own.drawn)
            .filter_map(along)
            .flat_map(|along| shape.points_of_whole(&own.drawn, along))
            .filter(|(edge, _)| edge.name == own.name)
            .map(|(_, point)| point.distance)
            .collect();
        places.sort_by(f64::total_cmp);
        places
    }
}

/// Whether two notches meet that lie so far apart, counted from the same end, on edges that differ by
/// `longer`. The little that a hand does not notice may lie before the notch or behind it, so that it
/// does not matter from which end, or from which edge, one counts.
pub(super) fn can_meet(apart: f64, longer: f64) -> bool {
    (longer.min(0.0) - NOTCH_TOLERANCE..=longer.max(0.0) + NOTCH_TOLERANCE).contains(&apart)
}

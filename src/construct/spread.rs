//! Notches along a row, and along edges that are eased: whether they can meet.

use super::deed::{Deed, Side};
use super::fault::{Fault, Moment};
use super::notches::{NOTCH_TOLERANCE, can_meet};
use super::parts::Stretch;
use super::player::Player;
use crate::resolve::{CopyId, EdgeId};

/// Notches so close to each other, in mm, are one sign (common practice, no source: a double notch lies 1 cm apart).
const ONE_SIGN: f64 = 25.0;

/// The notches of a side that lie at none of its ends and seams.
struct Noted {
    /// Each with its edge, and how far along the side it lies, in mm.
    notches: Vec<((CopyId, EdgeId), f64)>,
    /// Where one edge meets the next, and both ends.
    joints: Vec<f64>,
    long: f64,
    /// Whether its places are not those on the sewn side, or may be: where darts or pleats take of it, and where an edge
    /// meets its neighbours at both ends, as round an armhole.
    loose: bool,
}

impl Noted {
    fn places(&self) -> Vec<f64> {
        self.notches.iter().map(|(_, place)| *place).collect()
    }

    /// The same, counted from its other end.
    fn reversed(&self) -> Noted {
        let back = |place: &f64| self.long - place;
        let notches = self.notches.iter().rev().map(|(of, place)| (*of, back(place))).collect();
        Noted { notches, joints: self.joints.iter().rev().map(back).collect(), ..*self }
    }

    /// How many notches each sign has, in their order.
    fn signs(&self) -> Vec<usize> {
        let mut signs = Vec::new();
        let mut before: Option<f64> = None;
        for place in self.places() {
            match (signs.last_mut(), before) {
                (Some(last), Some(before)) if place - before <= ONE_SIGN => *last += 1,
                _ => signs.push(1),
            }
            before = Some(place);
        }
        signs
    }
}

impl Player<'_> {
    /// The two sides of a seam of which one is a row or is eased: by their places where these are the same on both, else
    /// by how many there are, and in what order.
    pub fn check_spread(&mut self, deed: &Deed<'_, '_>) {
        let sides = deed.sides();
        let [one, two] = sides.as_slice() else { return };
        let (Some(own), Some(other)) = (self.noted(one), self.noted(two)) else { return };
        if own.notches.is_empty() || other.notches.is_empty() {
            return;
        }
        let loose = own.loose || other.loose || deed.work.ease.is_some() || deed.work.gather.is_some();
        let ways = self.ways(one, two, &other);
        let fits = |other: &Noted| if loose { in_order(&own, other) } else { unmet(&own, other).is_none() };
        if ways.iter().any(fits) {
            return;
        }
        let Some(other) = ways.into_iter().next() else { return };
        let first = if loose { None } else { unmet(&own, &other) };
        let of = first.unwrap_or_else(|| own.notches[0].0);
        self.faults.push(Fault::NotchesDiffer {
            edges: (self.side_name(one), self.side_name(two)),
            notch: self.notch_of(of, deed.moment),
            places: (own.places(), other.places()),
            sewn: deed.moment,
        });
    }

    /// The ways in which the second side can lie along the first: rows are named the same way; one edge beside a row lies
    /// as its piece does right sides together, and either way where nothing tells.
    fn ways(&self, one: &Side, two: &Side, other: &Noted) -> Vec<Noted> {
        let as_named = || other.reversed().reversed();
        if one.len() > 1 && two.len() > 1 {
            return vec![as_named()];
        }
        let clockwise = |side: &Side| match side.as_slice() {
            [(copy, edge)] => {
                let piece = self.edition.cast[*copy].piece;
                let handed = self.edition.values.shape(piece).is_some_and(|shape| !shape.is_symmetric());
                self.clockwise((*copy, *edge)).map(|(clockwise, _)| clockwise).filter(|_| handed)
            }
            _ => self.runs_clockwise(side),
        };
        match (clockwise(one), clockwise(two)) {
            (Some(one), Some(two)) if one != two => vec![as_named()],
            (Some(_), Some(_)) => vec![other.reversed()],
            _ => vec![as_named(), other.reversed()],
        }
    }

    /// The notches along a side; `None` where nothing tells how an edge with notches lies in its row, or where it is
    /// folded.
    fn noted(&self, side: &Side) -> Option<Noted> {
        let row = self.stretches(side);
        let mut notches = Vec::new();
        let mut loose = false;
        for (at, stretch) in row.iter().enumerate() {
            let (copy, edge) = stretch.of;
            let places = self.notches(copy, edge);
            let beside = [at.checked_sub(1), Some(at + 1)].into_iter().flatten().filter_map(|at| side.get(at));
            let known = side.len() == 1 || beside.into_iter().any(|other| self.met(stretch.of, *other).is_some());
            let spread = places.last().zip(places.first()).map_or(0.0, |(last, first)| last - first);
            if self.is_folded_across(copy, edge) || (!known && spread > ONE_SIGN) {
                return None;
            }
            let drawn = self.edition.edge(copy, edge)?;
            loose |= drawn.closed < drawn.length - NOTCH_TOLERANCE || (!known && !places.is_empty());
            notches.extend(along(stretch, &places, drawn.length));
        }
        let long = row.last().map_or(0.0, |last| last.from + last.long);
        let joints: Vec<f64> = row.iter().map(|stretch| stretch.from).chain([long]).collect();
        notches.retain(|(_, place)| !joints.iter().any(|joint| (joint - place).abs() <= NOTCH_TOLERANCE));
        Some(Noted { notches, joints, long, loose })
    }

    fn notch_of(&self, (copy, edge): (CopyId, EdgeId), moment: Moment) -> crate::source::Span {
        let facts = &self.edition.draft.facts.pieces[self.edition.cast[copy].piece];
        let own = self.edition.drawn_word(copy, edge);
        facts.notches.iter().find(|notch| notch.edge.text == own).map_or(moment.verb, |notch| notch.text.span)
    }
}

/// The notches of an edge as they lie along its row.
fn along(stretch: &Stretch, places: &[f64], length: f64) -> Vec<((CopyId, EdgeId), f64)> {
    let place = |far: &f64| {
        let far = if stretch.turned { length - far } else { *far };
        (stretch.of, stretch.from + (far - stretch.taken).clamp(0.0, stretch.long))
    };
    let mut found: Vec<((CopyId, EdgeId), f64)> = places.iter().map(place).collect();
    found.sort_by(|one, other| one.1.total_cmp(&other.1));
    found
}

/// The edge of the first notch that meets neither a notch of the other side nor a seam between its edges; `None` where all
/// do.
fn unmet(one: &Noted, two: &Noted) -> Option<(CopyId, EdgeId)> {
    let lone = |own: &Noted, other: &Noted| {
        let longer = own.long - other.long;
        let meets =
            |place: f64| other.places().iter().chain(&other.joints).any(|there| can_meet(place - there, longer));
        own.notches.iter().find(|(_, place)| !meets(*place)).map(|(of, _)| *of)
    };
    lone(one, two).or_else(|| lone(two, one))
}

/// Whether as many notches lie on both sides, in the same order; a seam between two edges may stand for one.
fn in_order(one: &Noted, two: &Noted) -> bool {
    let (less, more) = if one.notches.len() < two.notches.len() { (one, two) } else { (two, one) };
    match more.notches.len() - less.notches.len() {
        0 => one.signs() == two.signs() || one.signs().len() != two.signs().len(),
        // Both ends stand among the joints.
        apart => apart <= less.joints.len().saturating_sub(2),
    }
}

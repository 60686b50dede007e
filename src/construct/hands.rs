//! Left and right: whether pieces that are sewn right sides together lie on each other.

use super::deed::{Deed, Side};
use super::fault::{Alike, Fault};
use super::lengths::millimetres;
use super::player::{Player, edges};
use crate::geometry::Edge;
use crate::model::Verb;
use crate::resolve::{CopyId, EdgeId, EditionWork, Touched};

/// An edge of a copy.
type Of = (CopyId, EdgeId);

/// Names that tell where an edge lies on the drawing, and nothing of where it goes: a piece may be turned round.
const ACROSS: &[&str] = &["left", "right", "start", "end"];

/// The same where only one end of each edge is called alike.
const ANYWHERE: &[&str] =
    &["top", "bottom", "upper", "lower", "edge", "inner", "outer", "inside", "outside", "long", "short"];

/// How far two notches of a pair may lie apart, ease aside, in mm (common practice, no source).
const NEAR: f64 = 5.0;

/// What tells a left piece from a right one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Hand {
    /// Nothing: turned over, it is the same piece.
    None,
    /// Nothing but that its copies are cut in pairs.
    Paired,
    /// The half of a piece that was cut on the fold.
    Half,
    /// Its shape.
    Shape,
}

impl Player<'_> {
    /// Laid right sides together, one of two pieces is turned over: a left one and a right one are needed wherever
    /// their ends can be told apart.
    pub fn check_hands(&mut self, deed: &Deed<'_, '_>) {
        let whole = |target: &Touched| matches!(target, Touched::Copy(_) | Touched::Inside(..));
        let sides = deed.sides();
        let alike = match sides.as_slice() {
            _ if let Some(alike) = self.curves_alike(deed.work) => Some(alike),
            [one, two] if !deed.work.work.by_hand && !deed.targets.iter().any(whole) => match (&one[..], &two[..]) {
                ([one], [two]) => self.ends_apart(*one, *two),
                ([_, _, ..], [_, _, ..]) => self.same_ways(one, two, millimetres(deed.work.ease).unwrap_or(0.0)),
                _ => None,
            },
            _ => None,
        };
        let Some((copies, edges, why)) = alike else { return };
        // What is told of two pieces once holds for their other seams.
        let known =
            self.faults.iter().any(|fault| matches!(fault, Fault::HandsAlike { copies: told, .. } if *told == copies));
        if !known {
            self.faults.push(Fault::HandsAlike { copies, edges, why, sewn: deed.moment });
        }
    }

    /// Two copies of one hand along an edge that does not look the same from both ends.
    fn curves_alike(&self, work: &EditionWork<'_>) -> Option<Told> {
        // A name that means several copies is sewn to the other names, each copy by itself; alone, to itself.
        let named = work.targets.iter().enumerate();
        let edges: Vec<(usize, Of)> =
            named.flat_map(|(at, target)| edges(&target.touched).into_iter().map(move |edge| (at, edge))).collect();
        edges.iter().enumerate().find_map(|(at, (name, one))| {
            let others = edges[at + 1..].iter().filter(|(other, _)| other != name || work.targets.len() == 1);
            let mut alike = others.map(|(_, other)| *other).filter(|other| self.is_of_one_hand(*one, *other));
            let bent = self.edition.edge(one.0, one.1).is_some_and(|edge| !Edge::is_symmetric(edge));
            alike.next().filter(|_| bent).map(|other| self.copies(*one, other))
        })
    }

    /// Whether two edges are the same of two copies that are cut alike, of a piece that has a left and a right one.
    fn is_of_one_hand(&self, one: Of, other: Of) -> bool {
        let (own, member) = (&self.edition.cast[one.0], &self.edition.cast[other.0]);
        (member.piece, member.mirrored, other.1) == (own.piece, own.mirrored, one.1)
            && other.0 != one.0
            && self.edition.values.shape(own.piece).is_some_and(|shape| !shape.is_symmetric())
    }

    fn copies(&self, one: Of, other: Of) -> Told {
        let why = Alike::Copies(self.edition.cast[one.0].piece);
        ((one.0, other.0), (self.edition.edge_name(one.0, one.1), self.edition.edge_name(other.0, other.1)), why)
    }

    /// Two edges of which like ends would not meet.
    fn ends_apart(&self, one: Of, two: Of) -> Option<Told> {
        let lapped = |edges: &[Of]| edges.contains(&one) && edges.contains(&two);
        if one.0 == two.0 || self.state.laps.iter().any(|(edges, _)| lapped(edges)) {
            return None;
        }
        if self.edition.cast[one.0].piece == self.edition.cast[two.0].piece {
            let twice = self.is_of_one_hand(one, two) && (self.are_layers(one, two) || self.is_told_apart(one, two));
            return twice.then(|| self.copies(one, two));
        }
        if !tells(self.hand(one), self.hand(two)) {
            return None;
        }
        let (own, other) = self.unlike(one, two)?;
        let name = |of: Of| self.edition.edge_name(of.0, of.1);
        let instead = |wrong: Of, kept: Of| {
            let mut others = self.other_hands(wrong).into_iter().filter(|other| self.unlike(*other, kept).is_none());
            others.next().map(|other| (name(wrong), name(other)))
        };
        let why = Alike::Ends { met: (own, other), instead: instead(two, one).or_else(|| instead(one, two)) };
        Some(((one.0, two.0), (name(one), name(two)), why))
    }

    /// The names of the edges beside two edges that would meet right sides together, where that parts an end from the
    /// one that is called alike.
    fn unlike(&self, one: Of, two: Of) -> Option<(String, String)> {
        let (own, other) = (self.corners(one)?, self.corners(two)?);
        if own[0] == own[1] || other[0] == other[1] {
            return None;
        }
        let alike = |at: usize| own[at] == other[at] && !ACROSS.contains(&own[at].as_str());
        // Clockwise, the beginning of one meets the end of the other.
        let at = match [alike(0), alike(1)] {
            [true, true] => 0,
            [true, false] if !ANYWHERE.contains(&own[0].as_str()) => 0,
            [false, true] if !ANYWHERE.contains(&own[1].as_str()) => 1,
            _ => return None,
        };
        Some((own[at].clone(), other[1 - at].clone()))
    }

    /// Two rows that run the same way round their pieces.
    fn same_ways(&self, one: &Side, two: &Side, eased: f64) -> Option<Told> {
        let hand = |side: &Side| side.iter().map(|of| self.hand(*of)).max().unwrap_or(Hand::None);
        let any = |side: &Side| side.iter().any(|of| self.is_folded(of.0));
        if !tells(hand(one), hand(two)) || any(one) || any(two) {
            return None;
        }
        let alike = match self.runs_clockwise(one).zip(self.runs_clockwise(two)) {
            Some((way, other)) => way == other,
            None => self.notches_part(one, two, eased),
        };
        alike.then(|| ((one[0].0, two[0].0), (self.side_name(one), self.side_name(two)), Alike::Rows))
    }

    /// Whether the notches of each edge and the one that it lies on would meet if one piece were not turned over, and do not
    /// as it is: round a ring, nothing else tells.
    fn notches_part(&self, one: &Side, two: &Side, eased: f64) -> bool {
        let close = |places: &[f64], others: &[f64]| {
            let apart = places.iter().zip(others).map(|(place, other)| (place - other).abs());
            apart.fold(0.0, f64::max) <= eased + NEAR
        };
        let mut parted = false;
        for (of, other) in one.iter().zip(two) {
            let (own, theirs) = (self.notches(of.0, of.1), self.notches(other.0, other.1));
            let (long, their) = (self.drawn_length(&[*of]), self.drawn_length(&[*other]));
            if own.len() != theirs.len() || (long - their).abs() > eased + NEAR {
                return false;
            }
            let back: Vec<f64> = theirs.iter().rev().map(|place| their - place).collect();
            let (as_laid, unturned) = if self.same_way(*of, *other) { (&theirs, &back) } else { (&back, &theirs) };
            if !close(&own, unturned) {
                return false;
            }
            parted |= !close(&own, as_laid);
        }
        parted && one.len() == two.len()
    }

    /// What tells the hand of a piece at one of its edges.
    fn hand(&self, (copy, edge): Of) -> Hand {
        let piece = self.edition.cast[copy].piece;
        let Some(shape) = self.edition.values.whole(piece) else { return Hand::None };
        let Some(own) = shape.edges().get(edge.at()).filter(|_| !self.is_folded(copy)) else { return Hand::None };
        let facts = &self.edition.draft.facts.pieces[piece];
        let halves = shape.edges().iter().filter(|other| other.drawn == own.drawn).count();
        match self.edition.values.shape(piece).is_some_and(|shape| !shape.is_symmetric()) {
            true => Hand::Shape,
            false if facts.fold.is_some() && halves == 2 => Hand::Half,
            false if facts.mirrored => Hand::Paired,
            false => Hand::None,
        }
    }

    fn is_folded(&self, copy: CopyId) -> bool {
        let state = &self.state.copies[copy];
        !state.creases.is_empty() || state.folded_small || state.folded_up.is_some()
    }

    /// The same edge of the other half, and of copies of the same cloth that are cut the other way round.
    fn other_hands(&self, (copy, edge): Of) -> Vec<Of> {
        let own = &self.edition.cast[copy];
        let drawn = self.edition.drawn_word(copy, edge);
        let halves = self.edition.edges_of(copy).into_iter();
        let half = halves.filter(|other| *other != edge && self.edition.drawn_word(copy, *other) == drawn);
        let others = self.edition.cast.of_piece(own.piece).filter(|other| {
            let member = &self.edition.cast[*other];
            member.fabric == own.fabric && member.mirrored != own.mirrored
        });
        half.map(|other| (copy, other)).chain(others.map(|other| (other, edge))).collect()
    }

    /// Whether two copies are sewn to each other along another edge that they share as well, so that one lies on the
    /// other.
    fn are_layers(&self, one: Of, two: Of) -> bool {
        let works = self.edition.steps().flat_map(|step| &step.works).filter(|work| work.verb == Verb::Sew);
        works.into_iter().any(|work| {
            let held: Vec<Of> = work.touched().filter_map(edge_of).collect();
            held.iter().any(|(copy, edge)| *copy == one.0 && *edge != one.1 && held.contains(&(two.0, *edge)))
        })
    }

    /// Whether the steps work on the ends of two edges, which are called alike, in two ways: a hem here, a waist
    /// there. Then one cannot be turned round.
    fn is_told_apart(&self, one: Of, two: Of) -> bool {
        let Some(ends) = self.corners(one).filter(|[first, last]| first != last) else { return false };
        let works = self.edition.steps().flat_map(|step| &step.works);
        let held = |work: &EditionWork<'_>| -> Vec<(CopyId, String)> {
            let rows = work.targets.iter().filter(|target| work.verb != Verb::Sew || target.row.is_some());
            let held = rows.flat_map(|target| edges(&target.touched));
            held.map(|(copy, edge)| (copy, self.edition.drawn_word(copy, edge))).collect()
        };
        let shapes = |verb: Verb| matches!(verb, Verb::Sew | Verb::Hem | Verb::Bind | Verb::Gather | Verb::Finish);
        works.filter(|work| shapes(work.verb)).map(held).any(|held| {
            let both = |end: &String| held.contains(&(one.0, end.clone())) && held.contains(&(two.0, end.clone()));
            both(&ends[0]) != both(&ends[1])
        })
    }
}

/// Two copies of which one is of the wrong hand, their edges as authors write them, and why.
type Told = ((CopyId, CopyId), (String, String), Alike);

/// Whether two pieces can be of the wrong hand for each other. Two halves may be called left and right as the wearer
/// has them, and of pieces that are the same turned over nobody can tell.
fn tells(one: Hand, two: Hand) -> bool {
    match (one.min(two), one.max(two)) {
        (Hand::None, _) | (Hand::Paired, Hand::Paired) | (Hand::Half, Hand::Half) => false,
        (Hand::Paired | Hand::Half | Hand::Shape, _) => true,
    }
}

fn edge_of(target: Touched) -> Option<Of> {
    match target {
        Touched::Edge(copy, edge) => Some((copy, edge)),
        _ => None,
    }
}

//! Seams: what is joined to what, at which allowance, and whether the lengths and notches meet.

use std::collections::BTreeSet;

use super::deed::Deed;
use super::fault::{Fault, Moment};
use super::player::Player;
use super::state::Seam;
use crate::geometry::Along;
use crate::measure::{Dimension, Exact, to_f64};
use crate::model::{Notch, NotchAt};
use crate::resolve::{CopyId, EdgeId, EditionWork, Member, Touched, Worked};

/// How far two edges may differ and still be sewn without ease, in mm: what a hand does not notice.
const LENGTH_TOLERANCE: f64 = 1.0;
/// How far two notches may lie apart and still meet, in mm (common practice, no source: a notch is a
/// snip of 2 to 3 mm).
const NOTCH_TOLERANCE: f64 = 1.5;

impl Player<'_> {
    /// Puts a seam on record. A whole piece stands for all its edges that are still free.
    pub fn join(&mut self, deed: &Deed<'_, '_>) {
        let moment = deed.moment;
        let seam = self.state.seams.len();
        let mut members = Vec::new();
        for target in &deed.targets {
            match target {
                Touched::Edge(copy, edge) => {
                    self.handle(*copy, moment);
                    self.state.edge(*copy, *edge).seams.push(seam);
                    members.push(*target);
                }
                Touched::Copy(copy) => {
                    self.handle(*copy, moment);
                    for edge in self.edition.edges_of(*copy) {
                        if !self.state.is_dealt_with(*copy, edge) {
                            self.state.edge(*copy, edge).seams.push(seam);
                            members.push(Touched::Edge(*copy, edge));
                        }
                    }
                }
                Touched::ZipEdge(notion, edge) => {
                    self.state.zip_edges.entry((*notion, *edge)).or_default().push(seam);
                    members.push(*target);
                }
                Touched::Inside(..) | Touched::Notion(_) | Touched::Unknown => members.push(*target),
            }
        }
        self.state.seams.push(Seam {
            sewn: moment,
            members,
            gap: deed.work.leave.map(|_| None),
            leave: deed.work.work.leave.as_ref().map(|leave| leave.span()),
            pressed: false,
        });
    }

    pub fn check_allowance(&mut self, work: &EditionWork<'_>, edges: &[(CopyId, EdgeId)], moment: Moment) {
        let (Some(stated), Some(formula)) = (work.allowance, work.work.allowance.as_ref()) else { return };
        if stated.quantity.dimension != Dimension::Length {
            return;
        }
        let taken = to_f64(stated.quantity.value);
        for (copy, edge) in edges {
            let piece = self.edition.cast[*copy].piece;
            let Some(own) = self.edition.values.allowance(piece, &self.edition.drawn_word(*copy, *edge)) else {
                continue;
            };
            let own = to_f64(own);
            if (own - taken).abs() > 0.01 {
                let edge = self.edition.edge_name(*copy, *edge);
                let stated = formula.span();
                self.faults.push(Fault::AllowanceDiffers { edge, piece, own, taken, sewn: moment, stated });
                return;
            }
        }
    }

    /// Whether all edges fit.
    pub fn check_lengths(&mut self, work: &EditionWork<'_>, edges: &[(CopyId, EdgeId)], moment: Moment) -> bool {
        let gathered = |player: &Self, (copy, edge): &(CopyId, EdgeId)| {
            player.state.known_edge(*copy, *edge).is_some_and(|edge| edge.gathered)
        };
        let lengths: Vec<(CopyId, EdgeId, Lengths)> = edges
            .iter()
            .filter(|edge| !gathered(self, edge))
            .filter_map(|(copy, edge)| Some((*copy, *edge, self.lengths(*copy, *edge)?)))
            .collect();
        let millimetres = |worked: Option<Worked>| {
            worked.filter(|one| one.quantity.dimension == Dimension::Length).map(|one| to_f64(one.quantity.value))
        };
        let eased = millimetres(work.ease).unwrap_or(0.0);
        // A gathered seam meets at the length that it is gathered to.
        let gather = millimetres(work.gather);
        let Some((first_copy, first_edge, first)) = lengths.first().cloned() else { return true };
        if joined_end_to_end(&lengths) {
            return true;
        }
        let before = self.faults.len();
        for (copy, edge, length) in &lengths[1..] {
            let apart = first.apart(*length);
            let fits = match gather {
                Some(to) => (first.shorter(*length) - to).abs() <= LENGTH_TOLERANCE,
                None => apart <= eased + LENGTH_TOLERANCE,
            };
            if !fits {
                let pieces = (self.edition.cast[first_copy].piece, self.edition.cast[*copy].piece);
                self.faults.push(Fault::LengthsDiffer {
                    pieces: (pieces.0.min(pieces.1), pieces.0.max(pieces.1)),
                    first: (self.edition.edge_name(first_copy, first_edge), first.seam),
                    second: (self.edition.edge_name(*copy, *edge), length.seam),
                    eased,
                    sewn: moment,
                });
            }
        }
        self.faults.len() == before
    }

    fn lengths(&self, copy: CopyId, edge: EdgeId) -> Option<Lengths> {
        let edge = self.edition.edge(copy, edge)?;
        Some(Lengths { seam: edge.seam_length, cut: edge.cut_length })
    }

    pub fn check_notches(&mut self, edges: &[(CopyId, EdgeId)], moment: Moment) {
        let noted: Vec<Noted> = edges
            .iter()
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
    fn same_way(&self, first: (CopyId, EdgeId), second: (CopyId, EdgeId)) -> bool {
        let (one, two) = (&self.edition.cast[first.0], &self.edition.cast[second.0]);
        let clockwise = |member: &Member, edge: EdgeId| {
            let shape = self.edition.values.whole(member.piece)?;
            let edge = shape.edges()[edge.at()].name.as_str();
            let at = |share: Exact| shape.point_at(edge, Along::Fraction(share));
            let (here, next) = (at(Exact::of::<500, 1000>())?, at(Exact::of::<501, 1000>())?);
            let walk = [next.at[0] - here.at[0], next.at[1] - here.at[1]];
            // Walking clockwise as seen, the inside is at the right hand.
            let inside = here.inward[0] * -walk[1] + here.inward[1] * walk[0] > 0.0;
            Some((inside != member.mirrored, walk[1].abs() > walk[0].abs()))
        };
        let (Some((one_way, upright)), Some((other_way, _))) = (clockwise(one, first.1), clockwise(two, second.1))
        else {
            return true;
        };
        let same_edge = one.piece == two.piece && first.1 == second.1 && one.mirrored == two.mirrored;
        (same_edge && upright) || one_way != other_way
    }

    /// Where the notches of an edge are, in mm from its beginning, in order.
    fn notches(&self, copy: CopyId, edge: EdgeId) -> Vec<f64> {
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

    /// Edges that were topstitched before this seam.
    pub fn check_topstitched(&mut self, edges: &[(CopyId, EdgeId)], moment: Moment) {
        for (copy, edge) in edges {
            let known = self.state.known_edge(*copy, *edge);
            let early = known
                .filter(|known| known.seams.is_empty() && known.folded.is_none())
                .and_then(|known| known.topstitched);
            if let Some(stitched) = early {
                let edge = self.edition.edge_name(*copy, *edge);
                self.faults.push(Fault::TopstitchedTooSoon { edge, stitched, sewn: moment });
            }
        }
    }
}

/// An edge with notches: where they are, and how long it is, in mm.
type Noted = (CopyId, EdgeId, Vec<f64>, f64);

/// An edge's length on the stitching line and on the cutting line, in mm.
#[derive(Debug, Clone, Copy)]
struct Lengths {
    seam: f64,
    cut: f64,
}

impl Lengths {
    /// Two edges meet when they agree on either line: the allowances beside them may differ.
    fn apart(self, other: Lengths) -> f64 {
        (self.seam - other.seam).abs().min((self.cut - other.cut).abs())
    }

    fn shorter(self, other: Lengths) -> f64 {
        self.seam.min(other.seam)
    }
}

/// Whether two notches meet that lie so far apart, counted from the same end, on edges that differ by
/// `longer`. The little that a hand does not notice may lie before the notch or behind it, so that it
/// does not matter from which end, or from which edge, one counts.
fn can_meet(apart: f64, longer: f64) -> bool {
    (longer.min(0.0) - NOTCH_TOLERANCE..=longer.max(0.0) + NOTCH_TOLERANCE).contains(&apart)
}

/// One edge against several in a row: the long one is as long as the others together.
fn joined_end_to_end(lengths: &[(CopyId, EdgeId, Lengths)]) -> bool {
    if lengths.len() < 3 {
        return false;
    }
    let longest = lengths.iter().map(|(_, _, length)| length.seam).fold(0.0, f64::max);
    let total: f64 = lengths.iter().map(|(_, _, length)| length.seam).sum();
    (total - 2.0 * longest).abs() <= LENGTH_TOLERANCE
}

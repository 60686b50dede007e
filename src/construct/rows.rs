//! Edges in a row: where they meet each other, which way the row runs round its pieces, and whether another order
//! would be joined all along.

use super::corners::SAME_CORNER;
use super::deed::{Deed, Side};
use super::fault::{Fault, Moment};
use super::player::Player;
use super::state::HARDLY;
use crate::model::Far;
use crate::resolve::{CopyId, EdgeId, Filler, Placed, Touched};

/// More edges than this are not put into another order.
const LONGEST: usize = 7;

/// How two edges that follow each other in a row are joined.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Joint {
    /// Not at all, as far as the steps tell.
    Nothing,
    /// By a seam that is open where they meet.
    Open,
    Firm,
}

impl Player<'_> {
    /// Where an edge meets another of its row: through which of its neighbours, sewn to one of the other's or the
    /// other itself, and whether that lies at its end.
    pub fn meetings(&self, one: (CopyId, EdgeId), other: (CopyId, EdgeId)) -> Vec<(EdgeId, bool)> {
        let beside = |of: (CopyId, EdgeId)| {
            let names = self.edition.edges_of(of.0).into_iter().filter(move |edge| *edge != of.1);
            names.filter_map(move |edge| {
                let at_end = self.lies_at_end(of.0, of.1, &self.edition.edge_word(of.0, edge)).ok()?;
                Some((edge, at_end))
            })
        };
        let there: Vec<Touched> = beside(other).map(|(edge, _)| Touched::Edge(other.0, edge)).collect();
        let joined = |edge: EdgeId| {
            let own = Touched::Edge(one.0, edge);
            let holds = |members: &[Touched]| members.contains(&own) && there.iter().any(|edge| members.contains(edge));
            (one.0, edge) == other || self.state.seams.iter().any(|seam| holds(&seam.members))
        };
        beside(one).filter(|(edge, _)| joined(*edge)).collect()
    }

    /// Whether an edge meets another of its row at its end, and not at its start; `None` where nothing tells, or where it
    /// meets it at both.
    pub fn met(&self, of: (CopyId, EdgeId), other: (CopyId, EdgeId)) -> Option<bool> {
        let ends: Vec<bool> = self.meetings(of, other).into_iter().map(|(_, at_end)| at_end).collect();
        let one = ends.first()?;
        ends.iter().all(|end| end == one).then_some(*one)
    }

    /// Whether a row runs clockwise round its pieces as they lie right side up; `None` where nothing tells, or where
    /// its edges disagree.
    pub fn runs_clockwise(&self, side: &Side) -> Option<bool> {
        let met = |of, other: Option<&(CopyId, EdgeId)>| self.met(of, *other?);
        let mut found = None;
        for (at, of) in side.iter().enumerate() {
            let next = met(*of, side.get(at + 1));
            let before = met(*of, at.checked_sub(1).and_then(|before| side.get(before))).map(|at_end| !at_end);
            let as_counted = match (next, before) {
                (Some(next), Some(before)) if next != before => return None,
                (next, before) => next.or(before),
            };
            let Some(as_counted) = as_counted else { continue };
            let clockwise = as_counted == self.clockwise(*of)?.0;
            if found.is_some_and(|found| found != clockwise) {
                return None;
            }
            found = Some(clockwise);
        }
        found
    }

    /// Rows whose edges do not follow each other, though in another order they would.
    pub fn check_order(&mut self, deed: &Deed<'_, '_>) {
        let sides = deed.sides();
        let lone = sides.iter().filter(|side| side.len() > 1).count() == 1;
        for side in sides.iter().filter(|side| (3..=LONGEST).contains(&side.len())) {
            let joints: Vec<Vec<Joint>> =
                side.iter().map(|one| side.iter().map(|other| self.joint(*one, *other)).collect()).collect();
            // What lies against another row may go round a ring from anywhere.
            let parted = |two: &[usize]| match joints[two[0]][two[1]] {
                Joint::Nothing => true,
                Joint::Open => lone,
                Joint::Firm => false,
            };
            let written: Vec<usize> = (0..side.len()).collect();
            let Some(apart) = written.windows(2).find(|two| parted(two)) else { continue };
            let Some(order) = written.iter().find_map(|first| follow(&joints, vec![*first])) else { continue };
            let name = |at: &usize| self.edition.edge_name(side[*at].0, side[*at].1);
            let fault = Fault::RowParted {
                apart: (name(&apart[0]), name(&apart[1])),
                order: order.iter().map(name).collect(),
                sewn: deed.moment,
            };
            self.faults.push(fault);
            return;
        }
    }

    fn joint(&self, one: (CopyId, EdgeId), other: (CopyId, EdgeId)) -> Joint {
        if self.state.laps.iter().any(|(edges, _)| edges.contains(&one) && edges.contains(&other)) {
            return Joint::Firm;
        }
        let through = |edge: EdgeId| match (one.0, edge) == other || self.is_held_at(one, edge) {
            true => Joint::Firm,
            false => Joint::Open,
        };
        let meetings = self.meetings(one, other).into_iter();
        meetings.map(|(edge, _)| through(edge)).max().unwrap_or(Joint::Nothing)
    }

    /// Whether the edge `beside` is sewn at its end where it meets an edge.
    fn is_held_at(&self, of: (CopyId, EdgeId), beside: EdgeId) -> bool {
        let Ok(at_end) = self.lies_at_end(of.0, beside, &self.edition.edge_word(of.0, of.1)) else { return true };
        let Some(known) = self.state.known_edge(of.0, beside) else { return false };
        let reaches = |(from, to): &(f64, f64)| if at_end { *to >= 1.0 - HARDLY } else { *from <= HARDLY };
        let open = known.seams.iter().filter_map(|seam| self.state.seams.get(*seam)).any(|seam| {
            let left = Moment::work_of(self.edition, seam.sewn).and_then(|work| work.leave_at);
            let filled = matches!(seam.leave_for, Some(Filler::Notion(_)));
            filled && left.is_some_and(|placed| self.begins_at((of.0, beside), &placed, at_end))
        });
        known.covered.iter().any(reaches) && !open
    }

    /// Whether a gap begins at an end of an edge.
    fn begins_at(&self, of: (CopyId, EdgeId), placed: &Placed<'_>, at_end: bool) -> bool {
        if matches!(placed.place.far, Far::There) {
            return at_end;
        }
        let counted = self.counted(of.0, of.1, placed);
        counted.is_ok_and(|(far, from_end)| far < SAME_CORNER && from_end == at_end)
    }
}

/// An order in which each edge is joined to the next, begun so; `None` where there is none.
fn follow(joints: &[Vec<Joint>], begun: Vec<usize>) -> Option<Vec<usize>> {
    if begun.len() == joints.len() {
        return Some(begun);
    }
    let last = *begun.last()?;
    let next = (0..joints.len()).filter(|next| !begun.contains(next) && joints[last][*next] == Joint::Firm);
    let mut next = next.map(|next| begun.iter().copied().chain([next]).collect());
    next.find_map(|begun| follow(joints, begun))
}

//! Work that was done before: the same seam sewn twice, the same hem, the same end caught.

use super::deed::Deed;
use super::fault::Fault;
use super::player::{Player, edges};
use super::state::Done;
use crate::model::Verb;
use crate::resolve::{CopyId, EdgeId, Touched};

/// Whether doing it again changes nothing. Rows of stitches are sewn one beside the other.
fn once(verb: Verb) -> bool {
    matches!(
        verb,
        Verb::Sew
            | Verb::Hem
            | Verb::Bind
            | Verb::Finish
            | Verb::Fuse
            | Verb::Dart
            | Verb::Pleat
            | Verb::Tuck
            | Verb::Box
            | Verb::Buttonhole
            | Verb::Slash
            | Verb::Lap
            | Verb::Attach
    )
}

impl Player<'_> {
    /// Takes down what is done; the same work a second time is a fault, unless a part, a note or words of its own tell
    /// it from the first.
    pub fn check_done(&mut self, deed: &Deed<'_, '_>) {
        let work = deed.work;
        let known = deed.targets.iter().all(|target| *target != Touched::Unknown);
        if !once(work.verb)
            || !known
            || (work.verb == Verb::Attach && deed.targets.len() < 2)
            || work.count.is_some()
            || work.part.iter().any(Option::is_some)
            || !work.note.is_empty()
        {
            return;
        }
        let done = Done {
            verb: work.verb,
            to: deed.targets.iter().copied().collect(),
            allowance: work.allowance.map(|allowance| allowance.quantity.value),
            by_hand: work.work.by_hand,
            wrong_sides: work.work.wrong_sides,
            words: work.work.words.iter().map(|words| words.text.clone()).collect(),
            when: deed.moment,
        };
        let same = |other: &&Done| Done { when: done.when, ..(*other).clone() } == done;
        if done.to.is_empty() {
            return;
        }
        match self.done.iter().find(same).map(|first| first.when) {
            Some(first) => self.faults.push(Fault::DoneTwice { caught: None, first, again: deed.moment }),
            None => self.done.push(done),
        }
    }

    /// An end that lies basted to an edge which is not in the seam that names it.
    fn basted_elsewhere(&self, deed: &Deed<'_, '_>, (copy, edge): (CopyId, EdgeId)) -> Option<Fault> {
        let basting = self.state.basted.iter().rev().find(|basting| basting.edges.contains(&(copy, edge)))?;
        let own = edges(&deed.all);
        if basting.edges.iter().any(|other| own.contains(other)) {
            return None;
        }
        let (to, on) = basting.edges.iter().find(|other| **other != (copy, edge))?;
        let (edge, to) = (self.edition.edge_name(copy, edge), self.edition.edge_name(*to, *on));
        Some(Fault::BastedElsewhere { edge, to, basted: basting.basted, caught: deed.moment })
    }

    /// Ends that a fact names as caught, and that a seam holds already.
    pub fn check_caught(&mut self, deed: &Deed<'_, '_>) {
        let named: Vec<Touched> = deed.work.caught.iter().flat_map(|target| target.touched.iter().copied()).collect();
        for (copy, edge) in edges(&named) {
            let known = self.state.known_edge(copy, edge).filter(|known| known.is_held_whole());
            let first = known.and_then(|known| known.seams.last()).map(|seam| self.state.seams[*seam].sewn);
            if let Some(first) = first.filter(|first| *first != deed.moment) {
                if let Some(fault) = self.basted_elsewhere(deed, (copy, edge)) {
                    self.faults.push(fault);
                    return;
                }
                let caught = Some(self.edition.edge_name(copy, edge));
                self.faults.push(Fault::DoneTwice { caught, first, again: deed.moment });
                return;
            }
        }
    }
}

//! What several verbs ask of seams and edges: rows of stitches beside a seam, and work that comes before or
//! after one.

use super::deed::Deed;
use super::fault::{Fault, Moment};
use super::player::Player;
use crate::model::Verb;
use crate::resolve::{CopyId, EdgeId, Touched};

impl Player<'_> {
    /// A row of stitches that shows: it holds what is folded, and wants its seam pressed.
    pub fn topstitch(&mut self, deed: &Deed<'_, '_>) {
        for target in &deed.all {
            self.hold_folds(target);
            for caught in self.caught_beside(target) {
                self.hold_folds(&caught);
            }
        }
        self.fill_gaps(&deed.all, deed.moment);
        for target in &deed.targets {
            let Touched::Edge(copy, edge) = target else { continue };
            let name = self.edition.edge_name(*copy, *edge);
            let pressed = self.state.known_edge(*copy, *edge).and_then(|known| known.seams.last()).map(|seam| {
                let seam = &self.state.seams[*seam];
                (seam.pressed, seam.sewn)
            });
            if let Some((false, sewn)) = pressed {
                self.faults.push(Fault::NotPressed { edge: name, stitched: deed.moment, sewn });
            }
            self.state.edge(*copy, *edge).topstitched.get_or_insert(deed.moment);
        }
    }

    /// The seams that hold targets, each once.
    pub fn seams_at(&self, targets: &[Touched]) -> Vec<usize> {
        let holds = |seam: &usize| {
            self.state.seams[*seam].members.iter().any(|member| {
                targets.iter().any(|target| match (member, target) {
                    (Touched::Edge(copy, _), Touched::Copy(wanted)) => copy == wanted,
                    (member, target) => member == target,
                })
            })
        };
        (0..self.state.seams.len()).filter(holds).collect()
    }

    /// The seams that a fact works on; an edge that is in none is a fault, and so is a piece without any.
    pub fn seams_worked_on(&mut self, deed: &Deed<'_, '_>) -> Vec<usize> {
        for target in &deed.targets {
            let (edge, sewn) = match target {
                Touched::Edge(copy, edge) => {
                    (self.edition.edge_name(*copy, *edge), self.sewn_later(*copy, *edge, deed.moment))
                }
                Touched::Copy(copy) => (self.edition.cast[*copy].name.clone(), None),
                _ => continue,
            };
            if self.seams_at(&[*target]).is_empty() {
                self.faults.push(Fault::SeamNotSewnYet { edge, done: deed.moment, sewn });
                break;
            }
        }
        self.seams_at(&deed.all)
    }

    /// Stitches that prepare an edge for its seam, and come after it.
    pub fn check_prepared(&mut self, deed: &Deed<'_, '_>) {
        for (copy, edge) in self.edges_of(&deed.targets) {
            let known = self.state.known_edge(copy, edge).filter(|known| known.is_held_whole());
            if let Some(seam) = known.and_then(|known| known.seams.first()) {
                let earlier = self.state.seams[*seam].sewn;
                let edge = self.edition.edge_name(copy, edge);
                self.faults.push(Fault::PreparedTooLate { edge, done: deed.moment, earlier });
                return;
            }
        }
    }

    /// Allowances that lie between layers by now, and are worked on.
    pub fn check_not_turned(&mut self, deed: &Deed<'_, '_>) {
        for target in &deed.targets {
            let Touched::Edge(copy, edge) = target else { continue };
            let seams = self.seams_at(&[*target]);
            let turned = seams.iter().filter_map(|seam| self.state.seams[*seam].turned_in).min();
            // What was turned twice may be inside out again.
            let times = |copy: CopyId| self.turns.iter().filter(|(_, copies)| copies.contains(&copy)).count();
            if let Some(turned) = turned.filter(|turned| turned.step <= deed.moment.step && times(*copy) < 2) {
                let edge = self.edition.edge_name(*copy, *edge);
                let verb = deed.work.verb;
                self.faults.push(Fault::TurnedTooSoon { verb, edge, done: deed.moment, turned });
                return;
            }
        }
    }

    /// The moment after `now` at which an edge is sewn.
    pub fn sewn_later(&self, copy: CopyId, edge: EdgeId, now: Moment) -> Option<Moment> {
        for step in self.edition.steps() {
            for (at, work) in step.works.iter().enumerate() {
                if (step.number, at) <= (now.step, now.work) || work.verb != Verb::Sew {
                    continue;
                }
                let holds = work.touched().any(|target| match target {
                    Touched::Edge(other, named) => other == copy && named == edge,
                    Touched::Copy(other) => other == copy,
                    _ => false,
                });
                if holds {
                    return Some(Moment::of(step, at));
                }
            }
        }
        None
    }
}

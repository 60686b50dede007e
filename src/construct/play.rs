//! The play: each step's work in its order.

use super::deed::Deed;
use super::end;
use super::fault::{Fault, Moment, RawOf};
use super::history::History;
use super::log::Logged;
use super::player::Player;
use super::verbs;
use crate::model::Verb;
use crate::resolve::{Edition, EditionWork, Meant, ZipEdge};

/// Plays all steps of one size, or those up to a number, after which the ending is not judged.
pub fn play(edition: &Edition<'_>, until: Option<usize>) -> History {
    let mut player = Player::new(edition);
    for step in edition.steps_to(until) {
        for (at, work) in step.works.iter().enumerate() {
            player.work(work, Moment::of(step, at));
        }
    }
    if until.is_none() {
        verbs::uncut(&mut player);
        end::judge(&mut player);
    }
    History { faults: player.faults, state: player.state }
}

impl Player<'_> {
    fn work(&mut self, work: &EditionWork<'_>, moment: Moment) {
        self.tell_edges(work);
        let deed = Deed::of(work, moment, self);
        if work.verb != Verb::Cut {
            for copy in &deed.touched {
                self.state.copies[*copy].used = true;
                if self.state.copies[*copy].cut.is_none() {
                    self.early.entry(*copy).or_insert(moment);
                }
            }
        }
        if matches!(work.verb, Verb::Sew | Verb::Box | Verb::Bind | Verb::Hem) {
            self.open_when_sewn(&deed);
        }
        self.check_done(&deed);
        (verbs::entry(work.verb).play)(self, &deed);
        self.catch(&deed);
        self.log(&deed);
    }

    /// Takes down what a fact does.
    fn log(&mut self, deed: &Deed<'_, '_>) {
        let (named, caught) = (deed.targets.clone(), deed.caught.iter().copied());
        let touched = deed.all.iter().copied().chain(caught).collect();
        self.logged.push(Logged { verb: deed.work.verb, moment: deed.moment, named, touched });
    }

    /// Names of edges that do not exist are faults, once each; they count as unknown.
    fn tell_edges(&mut self, work: &EditionWork<'_>) {
        let facts = &self.edition.draft.facts;
        for target in &work.targets {
            let (of, id, edge, known) = match &target.meant {
                Meant::NoSuchEdge { owner, edge, known } => {
                    let piece = owner.piece(&self.edition.cast);
                    (RawOf::Piece(piece), &facts.pieces[piece].id, edge, known.clone())
                }
                Meant::NoSuchZipEdge(zip, edge) => {
                    let known = ZipEdge::ALL.iter().map(|(word, _)| (*word).to_owned()).collect();
                    (RawOf::Zip(*zip), &facts.notions[*zip].id, edge, known)
                }
                _ => continue,
            };
            if self.no_such.insert((of, edge.clone())) {
                let (name, owner, edge) = (target.name.clone(), id.text.clone(), edge.clone());
                self.faults.push(Fault::NoSuchEdge { name, owner, edge, known });
            }
        }
    }
}

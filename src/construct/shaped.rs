//! Darts, pleats and tucks: when they are closed, and which are open still.

use super::deed::Deed;
use super::fault::{Fault, Moment};
use super::player::Player;
use crate::model::{DartPlace, Piece};
use crate::resolve::{CopyId, Inside, Touched};

/// Takes down that darts, pleats or tucks are sewn or laid.
pub(super) fn close_inside(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    for target in &deed.targets {
        let Touched::Inside(copy, inside) = target else { continue };
        player.handle(*copy, deed.moment);
        player.state.closed.entry((*copy, *inside)).or_insert(deed.moment);
    }
}

impl Player<'_> {
    /// What is open at edges that are about to be sewn or finished.
    pub fn open_when_sewn(&mut self, deed: &Deed<'_, '_>) {
        for (copy, edge) in self.edges_of(&deed.targets) {
            let word = self.edition.drawn_word(copy, edge);
            let piece = &self.edition.draft.facts.pieces[self.edition.cast[copy].piece];
            let here = Inside::all(piece).filter(|one| edge_of(piece, *one) == Some(&word));
            for inside in here.collect::<Vec<_>>() {
                self.left_open(copy, inside, Some(deed.moment));
            }
        }
    }

    /// What is open at the end, on pieces that are sewn at all.
    pub fn never_closed(&mut self) {
        let handled: Vec<CopyId> = self
            .edition
            .cast
            .copies()
            .map(|(copy, _)| copy)
            .filter(|copy| self.state.copies[*copy].handled && self.state.copies[*copy].cut.is_some())
            .collect();
        for copy in handled {
            let piece = &self.edition.draft.facts.pieces[self.edition.cast[copy].piece];
            for inside in Inside::all(piece).filter(|one| !matches!(one, Inside::Mark(_))) {
                self.left_open(copy, inside, None);
            }
        }
    }

    /// Each is told once, at the first seam that finds it open.
    fn left_open(&mut self, copy: CopyId, inside: Inside, joined: Option<Moment>) {
        if self.state.closed.contains_key(&(copy, inside)) || !self.state.left_open.insert((copy, inside)) {
            return;
        }
        let piece = &self.edition.draft.facts.pieces[self.edition.cast[copy].piece];
        let (name, sort) = inside.called(piece);
        let copy_name = &self.edition.cast[copy].name;
        let edge = edge_of(piece, inside).map(|edge| format!("{copy_name}.{edge}"));
        let (name, place) = (format!("{copy_name}.{}", name.text), name.span);
        let (own, cast) = (&self.edition.cast[copy], &self.edition.cast);
        let twins = cast.of_piece(own.piece).filter(|other| *other != copy && cast[*other].fabric == own.fabric);
        let like = twins.filter_map(|other| self.state.closed.get(&(other, inside))).max().copied();
        self.faults.push(Fault::LeftOpen { sort, name, place, edge, joined, like });
    }
}

/// The edge at which a dart or a pleat opens; `None` for a dart with two points, and for marks.
fn edge_of(piece: &Piece, inside: Inside) -> Option<&String> {
    match inside {
        Inside::Dart(at) => match &piece.darts[at].place {
            DartPlace::Edge { edge, .. } => Some(&edge.text),
            DartPlace::Inside { .. } => None,
        },
        Inside::Pleat(at) => Some(&piece.pleats[at].edge.text),
        Inside::Mark(_) => None,
    }
}

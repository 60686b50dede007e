//! The stage of a play: the state of the work, and what was found so far.

use std::collections::{BTreeMap, BTreeSet};

use super::fault::{Fault, Moment, RawOf};
use super::log::Logged;
use super::state::{CopyState, Done, EdgeState, Layers, State, TapeSewn};
use crate::resolve::{CopyId, EdgeId, Edition, Touched};

/// The stage of a play.
pub(super) struct Player<'a> {
    pub edition: &'a Edition<'a>,
    pub state: State,
    pub faults: Vec<Fault>,
    /// Copies used before they were cut: the first use of each.
    pub early: BTreeMap<CopyId, Moment>,
    /// Edges that do not exist and have been told.
    pub no_such: BTreeSet<(RawOf, String)>,
    /// What the tapes of zips are sewn to.
    pub tapes: Vec<TapeSewn>,
    /// What was done that is done once.
    pub done: Vec<Done>,
    /// All work in its order.
    pub logged: Vec<Logged>,
    /// When what was turned.
    pub turns: Vec<(Moment, BTreeSet<CopyId>)>,
    /// Edges into which something was passed.
    pub passed: Vec<(CopyId, EdgeId)>,
}

impl<'a> Player<'a> {
    pub fn new(edition: &'a Edition<'a>) -> Player<'a> {
        let state = State { copies: vec![CopyState::default(); edition.cast.len()], ..State::default() };
        Player {
            edition,
            state,
            faults: Vec::new(),
            early: BTreeMap::new(),
            no_such: BTreeSet::new(),
            tapes: Vec::new(),
            done: Vec::new(),
            logged: Vec::new(),
            turns: Vec::new(),
            passed: Vec::new(),
        }
    }

    /// Takes down that a copy was worked on by itself.
    pub fn handle(&mut self, copy: CopyId, moment: Moment) {
        let state = &mut self.state.copies[copy];
        state.worked.get_or_insert(moment);
        state.handled = true;
    }

    /// Edges, those of whole copies included.
    pub fn edges_of(&self, targets: &[Touched]) -> Vec<(CopyId, EdgeId)> {
        let mut edges = Vec::new();
        for target in targets {
            match target {
                Touched::Edge(copy, edge) => edges.push((*copy, *edge)),
                Touched::Copy(copy) => edges.extend(self.edition.edges_of(*copy).into_iter().map(|edge| (*copy, edge))),
                _ => {}
            }
        }
        edges
    }

    pub fn is_declared_raw(&self, copy: CopyId, edge: EdgeId) -> bool {
        let piece = &self.edition.draft.facts.pieces[self.edition.cast[copy].piece];
        let edge = self.edition.drawn_word(copy, edge);
        piece.raw.iter().any(|raw| raw.text == edge || raw.text == "all")
    }

    /// Whether nothing shuts an edge, so that a hand passes. That a whole piece may stay raw tells nothing of it.
    pub fn stands_open(&self, copy: CopyId, edge: EdgeId) -> bool {
        let held = self.state.known_edge(copy, edge).is_some_and(EdgeState::is_held_whole);
        let piece = &self.edition.draft.facts.pieces[self.edition.cast[copy].piece];
        !held && !piece.raw.iter().any(|raw| raw.text == "all")
    }

    /// The same of the layers that count as one with a target.
    pub fn fellows(&self, target: &Touched) -> Vec<Touched> {
        let (Touched::Copy(copy) | Touched::Edge(copy, _)) = target else { return Vec::new() };
        let mut fellows = match target {
            Touched::Edge(copy, edge) => self.state.laid_on(*copy, *edge),
            _ => Vec::new(),
        };
        let layers = self.state.layers.iter().filter(|layer| layer.copies.contains(copy));
        let (whole, along): (Vec<&Layers>, Vec<&Layers>) = layers.partition(|layer| layer.edges.is_empty());
        let others = whole.iter().flat_map(|layer| &layer.copies).filter(|other| *other != copy);
        match target {
            Touched::Edge(copy, edge) => {
                let word = self.edition.edge_word(*copy, *edge);
                let called = others.filter_map(|other| Some(Touched::Edge(*other, self.edge_called(*other, &word)?)));
                let along = along.iter().filter(|layer| layer.edges.contains(&(*copy, *edge)));
                let named = along.flat_map(|layer| &layer.edges).filter(|named| **named != (*copy, *edge));
                fellows.extend(called.chain(named.map(|(other, edge)| Touched::Edge(*other, *edge))));
            }
            _ => fellows.extend(others.map(|other| Touched::Copy(*other))),
        }
        fellows
    }

    /// The edge of a copy that is called so.
    pub fn edge_called(&self, copy: CopyId, word: &str) -> Option<EdgeId> {
        self.edition.edges_of(copy).into_iter().find(|edge| self.edition.edge_word(copy, *edge) == word)
    }

    /// Takes down that edges are finished, with the word for it.
    pub fn finish(&mut self, targets: &[Touched], word: &'static str, moment: Moment) {
        for (copy, edge) in self.edges_of(targets) {
            self.finish_edge((copy, edge), (0.0, 1.0), word, moment);
        }
    }

    /// The same for a share of one edge, from 0 to 1.
    pub fn finish_edge(&mut self, of: (CopyId, EdgeId), share: (f64, f64), word: &'static str, moment: Moment) {
        self.handle(of.0, moment);
        let state = self.state.edge(of.0, of.1);
        if share == (0.0, 1.0) {
            state.finished.get_or_insert((moment, word));
        } else {
            state.covered.push(share);
        }
    }

    /// Takes down that a stitch holds what is folded already.
    pub fn hold_folds(&mut self, target: &Touched) {
        for (copy, edge) in self.edges_of(&[*target]) {
            let edge = self.state.edge(copy, edge);
            edge.held |= edge.folded.is_some();
        }
    }

    pub fn each_edge(&mut self, targets: &[Touched], mut act: impl FnMut(&mut EdgeState)) {
        for (copy, edge) in self.edges_of(targets) {
            act(self.state.edge(copy, edge));
        }
    }
}

/// The edges among targets, those of whole copies left out.
pub(super) fn edges(targets: &[Touched]) -> Vec<(CopyId, EdgeId)> {
    targets
        .iter()
        .filter_map(|target| match target {
            Touched::Edge(copy, edge) => Some((*copy, *edge)),
            _ => None,
        })
        .collect()
}

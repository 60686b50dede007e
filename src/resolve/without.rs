//! What one way through a booklet leaves out.

use std::collections::BTreeSet;

use crate::model::{Name, Offer, Step};

/// What one way through a booklet leaves out; nothing where all of it is meant.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Without {
    /// The offers, by their places in the draft.
    pub offers: BTreeSet<usize>,
    /// Copies by their names, pieces of which no copy is left, and notions: what nothing else needs.
    pub names: BTreeSet<String>,
}

impl Without {
    /// Whether nothing needs a piece, a copy or a notion but what is left out.
    pub fn leaves(&self, name: &Name) -> bool {
        self.names.contains(&name.text)
    }

    /// Whether a step is left out.
    pub fn skips(&self, step: &Step) -> bool {
        step.offer.is_some_and(|offer| self.offers.contains(&offer))
    }
}

/// The offers that all but one way of each choice are: those that the usual way leaves out, with `taken` before
/// the first of its choice.
pub fn rivals(offers: &[Offer], present: &BTreeSet<usize>, taken: Option<usize>) -> BTreeSet<usize> {
    let first = |offer: usize| {
        let mut own = present.iter().filter(|other| offers[**other].choice == offers[offer].choice);
        let taken = taken.filter(|taken| offers[*taken].choice == offers[offer].choice);
        taken.or(own.next().copied())
    };
    let is_rival = |offer: &usize| offers[*offer].choice.is_some() && first(*offer) != Some(*offer);
    present.iter().copied().filter(is_rival).collect()
}

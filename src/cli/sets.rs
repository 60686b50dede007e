//! Which booklets and which sets of pattern sheets are made: one for each size, for each view, for all.

use std::collections::BTreeSet;

use crate::book::Book;
use crate::model::{Booklets, by_view};
use crate::pipeline::Workshop;
use crate::resolve::Edition;

/// What the booklet of all sizes is called.
pub(super) const ALL: &str = "all";
/// What the sheets of all sizes are called.
pub(super) const NESTED: &str = "nested";

/// The sizes that stand in one booklet, and in one set of sheets.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Set {
    /// What files call it: a size, a view, or nothing for all.
    pub id: Option<String>,
    /// Its sizes, by their places; in their order.
    pub sizes: Vec<usize>,
}

impl Set {
    /// The size that faults of its files belong to; `None` for several.
    pub fn only(&self) -> Option<usize> {
        match self.sizes.as_slice() {
            [only] => Some(*only),
            _ => None,
        }
    }

    /// Its sizes, worked out.
    pub fn editions<'a>(&self, workshop: &'a Workshop) -> Vec<&'a Edition<'a>> {
        workshop.editions().iter().filter(|edition| self.sizes.contains(&edition.size())).collect()
    }

    /// Its books of one size each, out of those of all.
    pub fn books(&self, books: &[Book]) -> Vec<Book> {
        let own = |book: &&Book| book.shown.iter().all(|size| self.sizes.contains(size));
        books.iter().filter(own).cloned().collect()
    }
}

/// What files can be of: a size, a view, or all together. What is of anything else is of a size that is gone.
pub(super) fn known(workshop: &Workshop) -> BTreeSet<String> {
    let sizes = workshop.draft().map_or(&[][..], |draft| &draft.facts.sizes);
    let views = sizes.iter().filter_map(|size| size.view.as_ref()).map(|view| view.id.text.clone());
    let all = [ALL, NESTED].map(str::to_owned);
    workshop.sizes.iter().cloned().chain(views).chain(all).collect()
}

/// The sets of the chosen sizes as the facts ask for them; `whole` says whether every size is chosen, and
/// `only_sizes` leaves out what holds several.
pub(super) fn sets(workshop: &Workshop, chosen: &[usize], whole: bool, only_sizes: bool) -> Vec<Set> {
    let Some(facts) = workshop.draft().map(|draft| &draft.facts) else { return Vec::new() };
    let of_size = |size: &usize| Set { id: workshop.sizes.get(*size).cloned(), sizes: vec![*size] };
    let sizes: Vec<Set> = chosen.iter().map(of_size).collect();
    if only_sizes {
        return sizes;
    }
    let Booklets { sizes: each, views, all } = facts.booklets;
    let mut sets = if each { sizes.clone() } else { Vec::new() };
    if views {
        for own in by_view(&facts.sizes).into_iter().filter(|own| own.iter().all(|size| chosen.contains(size))) {
            // A view of one size is that size's booklet.
            if own.len() > 1 || !each {
                let id = facts.sizes[own[0]].view.as_ref().map(|view| view.id.text.clone());
                sets.push(Set { id, sizes: own });
            }
        }
    }
    if all && whole && (facts.sizes.len() > 1 || sets.is_empty()) {
        sets.push(Set { id: None, sizes: chosen.to_vec() });
    }
    // Sizes that are asked for by name, and stand in no booklet but one of all, are made by themselves.
    if sets.is_empty() { sizes } else { sets }
}

//! Where the changes of one size meet: each is told once, with what was before and what is now.

use std::collections::{BTreeMap, BTreeSet};

use super::change::{Change, Matter};
use crate::book::{Amount, Plain};

/// The two books of one size, and what was found so far.
pub(super) struct Differ<'a> {
    pub old: Plain<'a>,
    pub new: Plain<'a>,
    /// The size, by its place in the newer edition.
    pub size: usize,
    /// The pieces whose size over all has changed, by their ids.
    pub resized: BTreeSet<String>,
    pub found: Vec<Change>,
    /// The section that is looked at.
    pub section: usize,
}

impl Differ<'_> {
    /// A word of the house with its places filled.
    pub fn word(&self, key: &str, places: &[(&str, &str)]) -> String {
        self.new.word(key, places)
    }

    /// Tells a change by the key of its sentence.
    pub fn tell(&mut self, what: &str, key: &str, places: &[(&str, &str)], matter: Matter) {
        let places: Vec<(&str, &str)> = [("what", what)].into_iter().chain(places.iter().copied()).collect();
        let text = self.word(key, &places);
        let place = (self.section, self.found.len());
        self.found.push(Change { what: what.to_owned(), text, matter, sizes: vec![self.size], place });
    }

    /// Tells what stood before and what stands now; nothing where they are the same.
    pub fn words(&mut self, what: &str, before: Option<String>, after: Option<String>, matter: Matter) {
        match (before, after) {
            (Some(before), Some(after)) if before != after => {
                self.tell(what, "errata_changed", &[("before", &before), ("after", &after)], matter);
            }
            (None, Some(after)) => self.tell(what, "errata_new", &[("after", &after)], matter),
            (Some(_), None) => self.tell(what, "errata_gone", &[], matter),
            _ => {}
        }
    }

    /// The same of a figure, which is another where its quantity is, or the figure that is printed of it.
    pub fn figure(&mut self, what: &str, before: Option<&Amount>, after: Option<&Amount>, matter: Matter) {
        if before == after {
            return;
        }
        let before = before.map(|amount| self.old.amount(amount));
        let after = after.map(|amount| self.new.amount(amount));
        if before.is_some() && before == after {
            // Printed alike, and not the same: what was reckoned from it is told where it is printed.
            return;
        }
        self.words(what, before, after, matter);
    }

    /// The name of a thing and of a figure of it.
    pub fn of(&self, name: &str, figure: &str) -> String {
        self.word("errata_of", &[("name", name), ("figure", &self.word(figure, &[]))])
    }
}

/// The things of two lists by their ids: in the order of the newer list, those that are gone behind.
pub(super) fn paired<'o, 'n, T>(
    old: &'o [T],
    new: &'n [T],
    id: impl Fn(&T) -> String,
) -> Vec<(Option<&'o T>, Option<&'n T>)> {
    let mut known: BTreeMap<String, &T> = old.iter().map(|one| (id(one), one)).collect();
    let mut pairs: Vec<(Option<&T>, Option<&T>)> = new.iter().map(|one| (known.remove(&id(one)), Some(one))).collect();
    let gone = old.iter().filter(|one| known.contains_key(&id(one)));
    pairs.extend(gone.map(|one| (Some(one), None)));
    pairs
}

//! The sheet for buyers: what has changed, whether it matters once the cloth is cut, and which sheets to print again.

use super::change::{Change, Errata, Matter};
use crate::book::{Leaf, Plain};

/// Writes the sheet in the words of the newer edition.
pub fn buyers_sheet(errata: &Errata, plain: &Plain<'_>) -> Leaf {
    let (old, new) = (errata.editions.0.as_str(), errata.editions.1.as_str());
    let places = [("title", plain.book.title.as_str()), ("old", old), ("new", new)];
    let mut leaf = Leaf::default();
    leaf.title(plain.word("errata_title", &places));
    if !errata.tells() {
        leaf.words(plain.word("errata_nothing", &places));
        return leaf;
    }
    leaf.words(plain.word("errata_intro", &places));
    leaf.heading(plain.word("errata_changes", &[]));
    for (sizes, matters) in by_sizes(errata) {
        if !sizes.is_empty() {
            leaf.words(format!("{}:", plain.sizes(&sizes)));
        }
        for (matter, changes) in matters {
            changes.iter().for_each(|change| leaf.item(&change.text));
            leaf.words(plain.word(matter.key(), &[]));
        }
    }
    leaf.heading(plain.word("errata_sheets", &[]));
    if errata.reprints.is_empty() {
        leaf.words(plain.word("errata_no_sheets", &[]));
    }
    for set in &errata.reprints {
        let of =
            plain.word("errata_set", &[("of", &set.of), ("paper", &plain.word(&format!("paper_{}", set.paper), &[]))]);
        for (key, sheets) in [("errata_print", &set.again), ("errata_away", &set.away)] {
            if !sheets.is_empty() {
                leaf.item(plain.word(key, &[("of", &of), ("list", &plain.listed(sheets))]));
            }
        }
    }
    leaf
}

/// The changes of some sizes, those together that mean the same to whoever has cut.
type Group<'a> = (Vec<usize>, Vec<(Matter, Vec<&'a Change>)>);

/// The changes in groups, in the order of the first of each: sizes that are told the same are named once.
fn by_sizes(errata: &Errata) -> Vec<Group<'_>> {
    let mut groups: Vec<Group<'_>> = Vec::new();
    for change in &errata.changes {
        let at = groups.iter().position(|(sizes, _)| *sizes == change.sizes).unwrap_or_else(|| {
            groups.push((change.sizes.clone(), Vec::new()));
            groups.len() - 1
        });
        let matters = &mut groups[at].1;
        match matters.iter_mut().find(|(matter, _)| *matter == change.matter) {
            Some((_, changes)) => changes.push(change),
            None => matters.push((change.matter, vec![change])),
        }
    }
    groups
}

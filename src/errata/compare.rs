//! Two manifests held against each other, size by size.

use std::collections::BTreeSet;

use super::change::{Change, Errata, Matter};
use super::differ::Differ;
use super::{lists, outlines, reprint, steps};
use crate::book::{Drawing, Plain};
use crate::manifest::Manifest;

/// What has changed from one edition to another of the same booklet, in the words of the newer one.
pub fn compare(old: &Manifest, new: &Manifest) -> Errata {
    let plain = Plain { book: &new.all, house: &new.words };
    let mut changes: Vec<Change> = Vec::new();
    for (at, size) in new.all.sizes.iter().enumerate() {
        let Some(old_at) = old.all.sizes.iter().position(|other| other.id == size.id) else {
            changes.push(whole_size(&plain, &size.name, "errata_added", vec![at]));
            continue;
        };
        let (Some(before), Some(after)) = (old.sizes.get(old_at), new.sizes.get(at)) else { continue };
        let mut differ = Differ {
            old: Plain { book: before, house: &new.words },
            new: Plain { book: after, house: &new.words },
            size: at,
            resized: BTreeSet::new(),
            found: Vec::new(),
            section: 0,
        };
        lists::lists(&mut differ);
        outlines::outlines(&mut differ, (old, old_at), new);
        steps::steps(&mut differ);
        steps::answers(&mut differ);
        differ.found.into_iter().for_each(|change| take(&mut changes, change));
    }
    for size in &old.all.sizes {
        if new.all.sizes.iter().all(|other| other.id != size.id) {
            changes.push(whole_size(&plain, &size.name, "errata_gone", Vec::new()));
        }
    }
    changes.sort_by_key(|change| change.place);
    let reprints = reprint::reprints(old, new, &plain);
    let editions = (old.all.edition.clone(), new.all.edition.clone());
    Errata { editions, changes, reprints, otherwise: undated(old) != undated(new) }
}

/// Takes in a change of one size, beside the same one of other sizes.
fn take(changes: &mut Vec<Change>, change: Change) {
    let same = |one: &&mut Change| one.text == change.text && one.matter == change.matter;
    match changes.iter_mut().find(same) {
        Some(known) if !known.sizes.contains(&change.size_of()) => known.sizes.extend(&change.sizes),
        Some(_) => {}
        None => changes.push(change),
    }
}

impl Change {
    fn size_of(&self) -> usize {
        self.sizes.first().copied().unwrap_or(0)
    }
}

fn whole_size(plain: &Plain<'_>, name: &str, key: &str, sizes: Vec<usize>) -> Change {
    let what = plain.word("errata_whole_size", &[("name", name)]);
    let text = plain.word(key, &[("what", &what)]);
    Change { what, text, matter: Matter::Read, sizes, place: (0, 0) }
}

/// An edition without its number, its day and its record, and without what the drawings are made of: what is left is
/// what it says.
fn undated(manifest: &Manifest) -> Manifest {
    let mut manifest = manifest.clone();
    for book in manifest.sizes.iter_mut().chain([&mut manifest.all]) {
        book.edition.clear();
        book.date = None;
        book.record.clear();
        let bare = |drawing: &Drawing| Drawing { svg: String::new(), ..drawing.clone() };
        book.drawings = book.drawings.iter().map(|(name, drawing)| (name.clone(), bare(drawing))).collect();
    }
    manifest
}

//! Which pattern sheets are to be printed again: those on which any line lies otherwise than before.

use std::collections::BTreeMap;

use super::change::Reprint;
use super::differ::paired;
use crate::book::Plain;
use crate::manifest::{Manifest, SheetRecord, SheetsRecord};

/// What stands on a sheet: piece, size and lines.
type Shown<'a> = Vec<(&'a str, &'a str, &'a str)>;

/// Holds every set of sheets against the one of the same name and paper.
pub(super) fn reprints(old: &Manifest, new: &Manifest, plain: &Plain<'_>) -> Vec<Reprint> {
    let mut found = Vec::new();
    for (before, after) in paired(&old.sheets, &new.sheets, |set| format!("{} {}", set.of, set.paper)) {
        let Some(set) = after.or(before) else { continue };
        let pages = |set: Option<&SheetsRecord>, of: &Manifest| -> BTreeMap<String, Vec<(String, String, String)>> {
            let pages = set.map_or(&[][..], |set| set.pages.as_slice());
            let owned =
                |(piece, size, lines): (&str, &str, &str)| (piece.to_owned(), size.to_owned(), lines.to_owned());
            pages.iter().map(|page| (page.name.clone(), shown(page, of).into_iter().map(owned).collect())).collect()
        };
        let (was, is) = (pages(before, old), pages(after, new));
        let names = |set: Option<&SheetsRecord>| -> Vec<String> {
            set.map_or_else(Vec::new, |set| set.pages.iter().map(|page| page.name.clone()).collect())
        };
        let again: Vec<String> = names(after).into_iter().filter(|name| was.get(name) != is.get(name)).collect();
        let away: Vec<String> = names(before).into_iter().filter(|name| !is.contains_key(name)).collect();
        if !again.is_empty() || !away.is_empty() {
            found.push(Reprint { of: called(set, new, plain), paper: set.paper.clone(), again, away });
        }
    }
    found
}

fn shown<'a>(page: &'a SheetRecord, of: &'a Manifest) -> Shown<'a> {
    let size = |at: usize| of.all.sizes.get(at).map_or("", |size| size.id.as_str());
    page.shows.iter().map(|one| (one.piece.as_str(), size(one.size), one.lines.as_str())).collect()
}

/// A set by its name on the page.
fn called(set: &SheetsRecord, of: &Manifest, plain: &Plain<'_>) -> String {
    let size = of.all.sizes.iter().position(|size| size.id == set.of);
    let view = of.all.views.iter().find(|view| view.id == set.of);
    match (size, view) {
        (Some(size), _) => plain.size(size),
        (None, Some(view)) => view.name.clone(),
        (None, None) => plain.word("errata_nested", &[]),
    }
}

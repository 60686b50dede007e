//! Whether what a manifest holds fits together, so that whoever reads on need not ask again.

use std::collections::BTreeSet;

use serde_json::Value;

use super::fault::ManifestFault;
use super::record::Manifest;
use crate::book::Book;
use crate::limits::{PIECES, SIZES, STEPS};
use crate::measure::ratio;

/// Looks at counts, places and fractions; `written` is the manifest as JSON.
pub(super) fn look(manifest: &Manifest, written: &Value) -> Result<(), ManifestFault> {
    let sizes = manifest.all.sizes.len();
    let wrong = |fact: String| Err(ManifestFault::new(fact));
    if sizes == 0 || sizes > SIZES.most || manifest.pieces.len() > PIECES.most {
        return wrong(format!("it has {sizes} sizes and {} pieces, which no booklet has", manifest.pieces.len()));
    }
    if manifest.sizes.len() != sizes {
        return wrong(format!("it names {sizes} sizes and holds the books of {}", manifest.sizes.len()));
    }
    for (at, book) in manifest.sizes.iter().enumerate() {
        if book.shown != [at] || book.sizes != manifest.all.sizes || book.edition != manifest.all.edition {
            return wrong(format!("`/sizes/{at}` is not the book of that size"));
        }
        one_each(book, &format!("/sizes/{at}"))?;
    }
    one_each(&manifest.all, "/all")?;
    if let Some(piece) = manifest.pieces.iter().find(|piece| piece.outlines.len() != sizes) {
        return wrong(format!("the piece `{}` has not one outline for each size", piece.id));
    }
    if let Some(value) = manifest.values.iter().find(|value| value.each.len() != sizes) {
        return wrong(format!("`{}` has not one value for each size", value.name));
    }
    let beyond = |at: &usize| *at >= sizes;
    if let Some(set) = manifest.sheets.iter().find(|set| set.sizes.iter().any(beyond)) {
        return wrong(format!("the sheets `{}` name a size that there is not", set.of));
    }
    twice("piece", manifest.pieces.iter().map(|piece| piece.id.as_str()))?;
    fractions(written)
}

/// Each step, fabric and notion once, in lists as long as the sizes shown.
fn one_each(book: &Book, path: &str) -> Result<(), ManifestFault> {
    let steps: Vec<&str> = book.parts.iter().flat_map(|part| &part.steps).map(|step| step.id.as_str()).collect();
    if steps.len() > STEPS.most {
        return Err(ManifestFault::new(format!("`{path}` has {} steps, which no booklet has", steps.len())));
    }
    twice("step", steps.into_iter())?;
    twice("fabric", book.fabrics.iter().map(|fabric| fabric.id.as_str()))?;
    twice("notion", book.notions.iter().map(|notion| notion.id.as_str()))?;
    let shown = book.shown.len();
    let beyond = book.shown.iter().any(|size| *size >= book.sizes.len());
    let rows = book.body.iter().chain(book.finished.iter().map(|row| &row.measure)).map(|row| row.values.len());
    let needs = book.notions.iter().map(|notion| notion.amounts.len());
    let cuts = book.cuts.iter().flat_map(|list| &list.rows).map(|row| row.dimensions.len());
    match beyond || rows.chain(needs).chain(cuts).any(|length| length != shown) {
        true => Err(ManifestFault::new(format!("a table of `{path}` has not one column for each size"))),
        false => Ok(()),
    }
}

fn twice<'a>(what: &str, ids: impl Iterator<Item = &'a str>) -> Result<(), ManifestFault> {
    let mut known = BTreeSet::new();
    match ids.into_iter().find(|id| !known.insert(*id)) {
        Some(id) => Err(ManifestFault::new(format!("the {what} `{id}` stands twice in one book"))),
        None => Ok(()),
    }
}

/// Every quantity is a fraction in its lowest terms, so that equal ones are written alike.
fn fractions(value: &Value) -> Result<(), ManifestFault> {
    match value {
        Value::Object(record) => {
            if let (Some(Value::String(number)), Some(Value::String(_)), 2) =
                (record.get("value"), record.get("dimension"), record.len())
                && !is_fraction(number)
            {
                return Err(ManifestFault::new(format!("`{number}` is no fraction in its lowest terms")));
            }
            record.values().try_for_each(fractions)
        }
        Value::Array(items) => items.iter().try_for_each(fractions),
        _ => Ok(()),
    }
}

fn is_fraction(text: &str) -> bool {
    let whole = |text: &str| text.parse::<i128>().ok().filter(|number| number.to_string() == text);
    match text.split_once('/') {
        None => whole(text).and_then(|number| ratio(number, 1)).is_some(),
        Some((numer, denom)) => match (whole(numer), whole(denom)) {
            (Some(numer), Some(denom)) if denom > 1 => {
                ratio(numer, denom).is_some_and(|exact| (exact.numer(), exact.denom()) == (numer, denom))
            }
            _ => false,
        },
    }
}

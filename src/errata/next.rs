//! The number of the next edition, and the line for its record.

use std::collections::BTreeSet;

use super::change::{Change, Errata};
use crate::book::Plain;

/// The number that the newer edition should bear: the second part of the older one's rises where buyers are told of
/// something, the third where words alone were put better. `None` where nothing has changed, or the older edition has
/// a name instead of a number.
pub fn next_edition(errata: &Errata) -> Option<String> {
    let mut parts: Vec<u64> =
        errata.editions.0.trim().split('.').map(|part| part.parse().ok()).collect::<Option<_>>()?;
    let place = match (errata.tells(), errata.otherwise) {
        (true, _) => 1,
        (false, true) => 2,
        (false, false) => return None,
    };
    parts.resize(parts.len().max(place + 1), 0);
    parts[place] = parts[place].checked_add(1)?;
    parts[place + 1..].fill(0);
    Some(parts.iter().map(u64::to_string).collect::<Vec<_>>().join("."))
}

/// The entry for `editions:` in `booklet.yaml`: what has changed, thing by thing and by size, without figures, which
/// the booklet itself tells. Sizes are named once, before all that has changed in them.
pub fn record_line(errata: &Errata, edition: &str, plain: &Plain<'_>) -> String {
    // A figure of a thing stands for the thing.
    let told_closer = |change: &Change| {
        let inner = format!("{},", change.what);
        errata.changes.iter().any(|other| other.sizes == change.sizes && other.what.starts_with(&inner))
    };
    let mut things: Vec<(String, BTreeSet<usize>)> = Vec::new();
    for change in errata.changes.iter().filter(|change| !told_closer(change)) {
        let what = change.what.replace(['{', '}', '[', ']', '<', '>'], "");
        match things.iter_mut().find(|(known, _)| *known == what) {
            Some((_, sizes)) => sizes.extend(&change.sizes),
            None => things.push((what, change.sizes.iter().copied().collect())),
        }
    }
    let whole = plain.book.sizes.len();
    let mut groups: Vec<(Vec<usize>, Vec<String>)> = Vec::new();
    for (what, sizes) in things {
        // What all sizes have, and what is of none, needs no names.
        let own: Vec<usize> = if sizes.len() == whole { Vec::new() } else { sizes.into_iter().collect() };
        match groups.iter_mut().find(|(known, _)| *known == own) {
            Some((_, list)) => list.push(what),
            None => groups.push((own, vec![what])),
        }
    }
    groups.sort_by_key(|(sizes, _)| !sizes.is_empty());
    let told = groups.iter().map(|(sizes, list)| match sizes.is_empty() {
        true => plain.word("errata_record", &[("list", &list.join("; "))]),
        false => plain.word("errata_record_of", &[("sizes", &plain.sizes(sizes)), ("list", &list.join("; "))]),
    });
    let told: Vec<String> = told.collect();
    let words = match told.is_empty() {
        true if errata.reprints.is_empty() => plain.word("errata_words", &[]),
        true => plain.word("errata_sheets_alone", &[]),
        false => told.join(" "),
    };
    format!("  - {{edition: {edition}, changes: {}}}", serde_json::Value::from(words))
}

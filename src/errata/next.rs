//! The number of the next edition, and the line for its record.

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
/// the booklet itself tells.
pub fn record_line(errata: &Errata, edition: &str, plain: &Plain<'_>) -> String {
    let whole = plain.book.sizes.len();
    let mut told: Vec<String> = Vec::new();
    // A figure of a thing stands for the thing.
    let told_closer = |change: &Change| {
        let inner = format!("{},", change.what);
        errata.changes.iter().any(|other| other.sizes == change.sizes && other.what.starts_with(&inner))
    };
    for change in errata.changes.iter().filter(|change| !told_closer(change)) {
        let sizes = plain.sizes(&change.sizes);
        let what = change.what.replace(['{', '}', '[', ']', '<', '>'], "");
        let line = match change.sizes.len() == whole || sizes.is_empty() {
            true => what,
            false => format!("{what} ({sizes})"),
        };
        if !told.contains(&line) {
            told.push(line);
        }
    }
    let words = match told.is_empty() {
        true if errata.reprints.is_empty() => plain.word("errata_words", &[]),
        true => plain.word("errata_sheets_alone", &[]),
        false => plain.word("errata_record", &[("list", &told.join("; "))]),
    };
    format!("  - {{edition: {edition}, changes: {}}}", serde_json::Value::from(words))
}

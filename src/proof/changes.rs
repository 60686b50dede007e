//! What is new in this edition: by meaning, by words, and as the author records it.

use std::collections::BTreeSet;

use super::evidence::Evidence;
use super::record::{Change, Changes, RecordRow, Reworded};
use crate::book::{Block, Book, Plain};
use crate::errata::{Errata, compare};
use crate::manifest::Manifest;

/// What is new, and the author's record of it.
pub(super) fn changes(evidence: &Evidence<'_>) -> Changes {
    let plain = evidence.plain();
    let record = evidence.all.record.iter().map(|release| RecordRow {
        edition: release.edition.clone(),
        date: release.date.clone(),
        lines: plain.blocks(&release.changes),
    });
    let mut changes = Changes {
        since: None,
        told: Vec::new(),
        sheets: Vec::new(),
        words: Vec::new(),
        otherwise: false,
        record: record.collect(),
    };
    if let Some((old, new)) = evidence.since {
        let errata = compare(old, new);
        changes.since = Some(old.all.edition.clone());
        changes.told = told(evidence, &errata);
        changes.sheets = sheets(&plain, &errata);
        changes.words = reworded(evidence, old, new);
        changes.otherwise = errata.otherwise;
    }
    changes
}

fn told(evidence: &Evidence<'_>, errata: &Errata) -> Vec<Change> {
    let change =
        |change: &crate::errata::Change| Change { text: change.text.clone(), sizes: evidence.sizes(&change.sizes) };
    errata.changes.iter().map(change).collect()
}

fn sheets(plain: &Plain<'_>, errata: &Errata) -> Vec<String> {
    let mut lines = Vec::new();
    for set in &errata.reprints {
        let paper = plain.word(&format!("paper_{}", set.paper), &[]);
        let of = plain.word("errata_set", &[("of", &set.of), ("paper", &paper)]);
        for (key, sheets) in [("errata_print", &set.again), ("errata_away", &set.away)] {
            if !sheets.is_empty() {
                lines.push(plain.word(key, &[("of", &of), ("list", &plain.listed(sheets))]));
            }
        }
    }
    lines
}

/// Words that are others than before, whatever they mean: of the steps, of the heads of parts, and of the pages round
/// them.
fn reworded(evidence: &Evidence<'_>, old: &Manifest, new: &Manifest) -> Vec<Reworded> {
    let (before, after) = (texts(&old.all, evidence), texts(&new.all, evidence));
    let mut found = Vec::new();
    let find = |list: &[Text], id: &str| list.iter().find(|text| text.id == id).map(|text| text.lines.clone());
    let mut ids: Vec<(&str, &str)> = after.iter().map(|text| (text.id.as_str(), text.name.as_str())).collect();
    ids.extend(
        before
            .iter()
            .filter(|text| find(&after, &text.id).is_none())
            .map(|text| (text.id.as_str(), text.name.as_str())),
    );
    for (id, name) in ids {
        let before = find(&before, id).unwrap_or_default();
        let after = find(&after, id).unwrap_or_default();
        let known: BTreeSet<&String> = before.iter().collect();
        let stays: BTreeSet<&String> = after.iter().collect();
        let gone: Vec<String> = before.iter().filter(|line| !stays.contains(line)).cloned().collect();
        let fresh: Vec<String> = after.iter().filter(|line| !known.contains(line)).cloned().collect();
        if !gone.is_empty() || !fresh.is_empty() {
            found.push(Reworded { what: name.to_owned(), before: gone, after: fresh });
        }
    }
    found
}

/// The words of one thing.
struct Text {
    id: String,
    name: String,
    lines: Vec<String>,
}

fn texts(book: &Book, evidence: &Evidence<'_>) -> Vec<Text> {
    let plain = Plain { book, house: evidence.words };
    let page = |key: &str, blocks: &[Block]| Text {
        id: key.to_owned(),
        name: plain.word(key, &[]),
        lines: plain.blocks(blocks),
    };
    let cautions: Vec<Block> = book.cautions.iter().flat_map(|caution| caution.content.clone()).collect();
    let mut texts = vec![page("read_first", &book.read_first), page("cautions", &cautions)];
    for part in &book.parts {
        let mut lines = vec![plain.inlines(&part.title)];
        lines.extend(plain.blocks(&part.intro));
        texts.push(Text { id: format!("part {}", part.id), name: plain.inlines(&part.title), lines });
        for step in &part.steps {
            let title = plain.inlines(&step.title);
            let name = plain.word("errata_step", &[("n", &step.number.to_string()), ("title", &title)]);
            let mut lines = vec![title];
            lines.extend(plain.blocks(&step.body));
            texts.push(Text { id: format!("step {}", step.id), name, lines });
        }
    }
    texts.extend([page("care", &book.care), page("terms", &book.terms)]);
    texts
}

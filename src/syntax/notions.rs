//! Notions: what is bought beside fabric, each kind with the figures that it takes.

use std::collections::BTreeMap;

use super::fields::{self, Fields};
use super::lengths;
use super::made_of::look;
use super::measures;
use super::reader::Room;
use super::sizes::only_for;
use super::things::{name_of, prose, sourcing};
use super::yaml::Node;
use crate::diag::{Findings, did_you_mean, in_sentence};
use crate::faults::{KEY_UNKNOWN, VALUE_UNREADABLE};
use crate::model::{KINDS, Kind, KindDoc, Notion, NotionFigure, Piece, Size, Text};

/// The keys of a notion.
pub(super) const KEYS: &[&str] = &[
    "kind", "name", "plural", "for", "look", "length", "width", "size", "amount", "count", "cut", "note", "search",
    "instead",
];

/// The words for the kinds.
pub(super) const WORDS: &[&str] = &{
    let mut words = [""; KINDS.len()];
    let mut at = 0;
    while at < words.len() {
        words[at] = KINDS[at].word;
        at += 1;
    }
    words
};

/// Reads the notions, and the pieces that are cut from them.
pub(super) fn read(node: &Node, sizes: &[Size], findings: &mut Findings) -> (Vec<Notion>, Vec<Piece>) {
    let (mut notions, mut pieces) = (Vec::new(), Vec::new());
    for (key, node) in fields::named(node, "notions", findings) {
        let id = fields::name(key, findings);
        let Some(record) = Fields::open(node, "a notion", KEYS, findings) else { continue };
        let kind = record.text("kind", findings).and_then(|text| kind(&text, findings));
        let only = only_for(&record, sizes, findings);
        let mut figures = BTreeMap::new();
        for (word, figure) in NotionFigure::ALL {
            let Some(node) = record.get(word) else { continue };
            if let Some(value) = measures::by_size_for(node, &format!("`{word}`"), only.as_ref(), sizes, findings) {
                figures.insert(*figure, value);
            }
            if let (Some(kind), Some(at)) = (kind, record.key_at(word))
                && !kind.takes.contains(figure)
            {
                findings.push(
                    KEY_UNKNOWN
                        .at(at, format!("a notion of the kind `{}` has no `{word}`", kind.word))
                        .hint(format!("its figures are: {}; more can be told under `note:`", words(kind))),
                );
            }
        }
        let notion = Notion {
            kind: kind.map_or(Kind::Other, |doc| doc.kind),
            name: name_of(&record, key, findings),
            plural: record.text("plural", findings),
            look: look(&record, findings),
            sizes: only,
            figures,
            note: prose(&record, "note", sizes, Room::Cell, findings),
            sourcing: sourcing(&record, sizes, findings),
            id,
        };
        pieces.extend(record.get("cut").map(|node| lengths::read(node, &notion, sizes, findings)).unwrap_or_default());
        notions.push(notion);
    }
    (notions, pieces)
}

fn words(kind: &KindDoc) -> String {
    kind.takes.iter().map(|figure| figure.word()).collect::<Vec<_>>().join(", ")
}

/// The kind that a word names; `None` with a finding where there is none.
fn kind(text: &Text, findings: &mut Findings) -> Option<&'static KindDoc> {
    let word = text.text.as_str();
    if let Some(known) = KINDS.iter().find(|doc| doc.word == word) {
        return Some(known);
    }
    // A word of the trade for one sort of a kind is its name on the page.
    let plain = word.to_lowercase().replace(['-', ' '], "_");
    let also = |doc: &&KindDoc| doc.also.iter().any(|one| plain == *one || plain == format!("{one}s"));
    let hint = match KINDS.iter().find(also) {
        Some(doc) => format!("write `kind: {}`, and say which under `name:`, such as `name: {}`", doc.word, said(word)),
        None => did_you_mean(
            word,
            WORDS.iter().copied(),
            &format!("leave `kind:` out, or write one of: {}", WORDS.join(", ")),
        ),
    };
    findings.push(VALUE_UNREADABLE.at(text.span, format!("`{word}` is no kind of notion")).hint(hint));
    None
}

/// A word as a name on the page begins.
fn said(word: &str) -> String {
    fields::spoken(&in_sentence(word))
}

//! What is bought by the metre and what is at hand: fabrics, tools, words; and the record of editions.

use super::fields::{self, Fields, spoken, yes};
use super::made_of::look;
use super::markdown;
use super::measures;
use super::reader::Room;
use super::sizes::only_for;
use super::yaml::{Node, Value};
use crate::diag::Findings;
use crate::faults::VALUE_UNREADABLE;
use crate::model::{Block, Caution, Date, Fabric, ListItem, Release, Size, Sourcing, Text, Tool, Word};

/// The keys of a fabric.
pub(super) const FABRIC: &[&str] =
    &["name", "for", "from", "widths", "shrinkage", "nap", "grain", "look", "amount", "note", "search", "instead"];

/// The keys of an entry in the record of editions.
pub(super) const RELEASE: &[&str] = &["edition", "date", "changes"];

/// Reads the fabrics.
pub(super) fn fabrics(node: &Node, sizes: &[Size], findings: &mut Findings) -> Vec<Fabric> {
    let mut fabrics = Vec::new();
    for (key, node) in fields::named(node, "fabrics", findings) {
        let id = fields::name(key, findings);
        let Some(record) = Fields::open(node, "a fabric", FABRIC, findings) else { continue };
        let only = only_for(&record, sizes, findings);
        let amount = record.get("amount");
        let widths = record.get("widths").map(fields::list).unwrap_or_default();
        fabrics.push(Fabric {
            name: name_of(&record, key, findings),
            widths: widths.into_iter().filter_map(|node| measures::expression(node, "a width", findings)).collect(),
            shrinkage: record.get("shrinkage").and_then(|node| measures::expression(node, "`shrinkage`", findings)),
            from: record.text("from", findings).map(|text| fields::name(&text, findings)),
            nap: record.text("nap", findings).is_some_and(|text| yes(&text, findings)),
            grainless: record.text("grain", findings).is_some_and(|text| !yes(&text, findings)),
            look: look(&record, findings),
            amount: amount.and_then(|node| measures::by_size_for(node, "`amount`", only.as_ref(), sizes, findings)),
            sizes: only,
            sizes_at: record.key_span("for"),
            note: prose(&record, "note", sizes, Room::Cell, findings),
            sourcing: sourcing(&record, sizes, findings),
            id,
        });
    }
    fabrics
}

/// The keys of a tool, a caution or a meaning that is for some sizes only.
pub(super) const SAID: &[&str] = &["say", "for"];

/// Words alone, or `{say: …, for: …}`, with the sizes that have them.
fn said(
    node: &Node,
    what: &'static str,
    sizes: &[Size],
    findings: &mut Findings,
) -> Option<(Text, Option<Vec<usize>>)> {
    if !matches!(node.value, Value::Map(_)) {
        return Some((fields::text(node, what, findings)?, None));
    }
    let record = Fields::open_needing(&["say"], node, what, SAID, findings)?;
    let only = only_for(&record, sizes, findings);
    Some((record.need_text("say", "Keep it dry.", findings)?, only))
}

/// Reads the tools.
pub(super) fn tools(node: &Node, sizes: &[Size], findings: &mut Findings) -> Vec<Tool> {
    let items = fields::list(node).into_iter();
    items.filter_map(|item| said(item, "a tool", sizes, findings)).map(|(name, sizes)| Tool { name, sizes }).collect()
}

/// Reads the cautions.
pub(super) fn cautions(node: Option<&Node>, sizes: &[Size], findings: &mut Findings) -> Vec<Caution> {
    let items = node.map(fields::list).unwrap_or_default().into_iter();
    let read = |item: &Node| {
        let (text, only) = said(item, "a caution", sizes, findings)?;
        Some(Caution { content: markdown::read_value(&text, sizes, Room::Page, findings), sizes: only })
    };
    items.filter(|item| !matches!(item.value, Value::Empty)).filter_map(read).collect()
}

/// Reads the terms of the trade and their meanings.
pub(super) fn words(node: &Node, sizes: &[Size], findings: &mut Findings) -> Vec<Word> {
    fields::named(node, "words", findings)
        .into_iter()
        .filter_map(|(key, node)| {
            let (meaning, only) = said(node, "a meaning", sizes, findings)?;
            let term = crate::model::Name { text: key.text.clone(), span: key.span };
            Some(Word { term, meaning: markdown::read_value(&meaning, sizes, Room::Cell, findings), sizes: only })
        })
        .collect()
}

/// Reads the record of editions.
pub(super) fn editions(node: &Node, sizes: &[Size], findings: &mut Findings) -> Vec<Release> {
    let mut editions = Vec::new();
    for item in fields::list(node) {
        let Some(record) =
            Fields::open_needing(&["edition"], item, "an entry in the record of editions", RELEASE, findings)
        else {
            continue;
        };
        let Some(edition) = record.need_text("edition", "1.0.0", findings) else { continue };
        editions.push(Release {
            edition,
            date: date(&record, findings),
            changes: prose(&record, "changes", sizes, Room::Page, findings),
            span: item.span,
        });
    }
    editions
}

/// The key `date:`; a finding when it is no day.
pub(super) fn date(record: &Fields<'_>, findings: &mut Findings) -> Option<Text> {
    let date = record.text("date", findings)?;
    if Date::parse(&date.text).is_none() {
        findings.push(
            VALUE_UNREADABLE
                .at(date.span, format!("`{}` is no day", date.text))
                .hint("write year, month and day: `2026-03-01`"),
        );
    }
    Some(date)
}

/// Prose under a key; none when the key is absent.
pub(super) fn prose(record: &Fields<'_>, key: &str, sizes: &[Size], room: Room, findings: &mut Findings) -> Vec<Block> {
    record.text(key, findings).map(|text| markdown::read_value(&text, sizes, room, findings)).unwrap_or_default()
}

/// The keys `search:` and `instead:`, each one line or a list of them.
pub(super) fn sourcing(record: &Fields<'_>, sizes: &[Size], findings: &mut Findings) -> Sourcing {
    let lines = |key: &str, what: &'static str, findings: &mut Findings| -> Vec<Text> {
        let items = record.get(key).map(fields::list).unwrap_or_default().into_iter();
        items.filter_map(|item| fields::text(item, what, findings)).collect()
    };
    let search = lines("search", "a word to look for", findings);
    let instead = lines("instead", "what serves instead", findings);
    let mut items: Vec<Vec<Block>> =
        instead.iter().map(|text| markdown::read_value(text, sizes, Room::Cell, findings)).collect();
    let instead = match items.len() {
        1 => items.remove(0),
        0 => Vec::new(),
        _ => vec![Block::List(None, items.into_iter().map(|content| ListItem { task: false, content }).collect())],
    };
    Sourcing { search, instead }
}

/// The name on the page; without one, the name in the files as words.
pub(super) fn name_of(record: &Fields<'_>, key: &Text, findings: &mut Findings) -> Text {
    record.text("name", findings).unwrap_or_else(|| Text { text: spoken(&key.text), span: key.span, verbatim: false })
}

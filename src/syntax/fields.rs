//! Reading a record key by key: what is missing, what is unknown, what has the wrong shape.

use serde::de::DeserializeOwned;

use super::yaml::{Node, Value};
use crate::diag::{Findings, did_you_mean};
use crate::faults::{KEY_MISSING, KEY_UNKNOWN, VALUE_UNREADABLE};
use crate::model::{Name, Text};
use crate::source::Span;

/// The keys and values of one record, and the names that it may hold.
pub(super) struct Fields<'a> {
    what: &'static str,
    span: Span,
    entries: &'a [(Text, Node)],
}

impl<'a> Fields<'a> {
    /// Opens a record that may hold `known` keys; other keys are findings. `what` names it in
    /// messages: "a piece".
    pub fn open(node: &'a Node, what: &'static str, known: &[&str], findings: &mut Findings) -> Option<Fields<'a>> {
        Fields::open_needing(&[], node, what, known, findings)
    }

    /// The same for a record that must hold the keys `needed`, which are asked for by [`Fields::need`].
    pub fn open_needing(
        needed: &[&str],
        node: &'a Node,
        what: &'static str,
        known: &[&str],
        findings: &mut Findings,
    ) -> Option<Fields<'a>> {
        let entries = match &node.value {
            Value::Map(entries) => entries.as_slice(),
            _ => {
                let first = known.first().copied().unwrap_or("key");
                findings.push(
                    VALUE_UNREADABLE
                        .at(node.span, format!("{what} is a set of keys and values, not {}", node.what()))
                        .hint(format!("write it with its keys, such as `{first}: …`")),
                );
                return None;
            }
        };
        for (key, _) in entries {
            if !known.contains(&key.text.as_str()) {
                let commas = "put words that hold a comma in double quotes: inside `{ }` a comma begins the next key";
                let otherwise = match key.text.contains(' ') {
                    true => commas.to_owned(),
                    false => format!("its keys are: {}", known.join(", ")),
                };
                findings.push(
                    KEY_UNKNOWN.at(key.span, format!("{what} has no key `{}`", key.text)).hint(did_you_mean(
                        &key.text,
                        known.iter().copied(),
                        &otherwise,
                    )),
                );
            }
        }
        for (key, node) in entries.iter().filter(|(key, _)| known.contains(&key.text.as_str())) {
            if matches!(node.value, Value::Empty) && !needed.contains(&key.text.as_str()) {
                findings.push(VALUE_UNREADABLE.at(key.span, format!("`{}` has no value", key.text)).hint(
                    "write one, or take the line out; a value that begins with `#` needs quotes, as a colour does",
                ));
            }
        }
        Some(Fields { what, span: node.span, entries })
    }

    /// The value of a key; `None` when the key is absent or empty.
    pub fn get(&self, key: &str) -> Option<&'a Node> {
        let (_, node) = self.entries.iter().find(|(known, _)| known.text == key)?;
        (!matches!(node.value, Value::Empty)).then_some(node)
    }

    /// Where a key stands; `None` when it is absent.
    pub fn key_at(&self, key: &str) -> Option<Span> {
        self.entries.iter().find(|(known, _)| known.text == key).map(|(known, _)| known.span)
    }

    /// The value of a key that must be there; its absence is a finding.
    pub fn need(&self, key: &str, example: &str, findings: &mut Findings) -> Option<&'a Node> {
        let blank = |node: &Node| matches!(&node.value, Value::Scalar(text) if text.text.trim().is_empty());
        let found = self.get(key).filter(|node| !blank(node));
        if found.is_none() {
            findings.push(match self.entries.iter().find(|(known, _)| known.text == key) {
                Some((known, _)) => KEY_MISSING
                    .at(known.span, format!("`{key}` has no value"))
                    .hint(format!("write it behind the colon: `{key}: {example}`")),
                None => KEY_MISSING
                    .at(self.first_line(), format!("{} has no `{key}`", self.what))
                    .hint(format!("add a line: `{key}: {example}`")),
            });
        }
        found
    }

    /// The words of a key; a finding when they are no single value.
    pub fn text(&self, key: &str, findings: &mut Findings) -> Option<Text> {
        text(self.get(key)?, &format!("`{key}`"), findings)
    }

    /// The words of a key that must be there.
    pub fn need_text(&self, key: &str, example: &str, findings: &mut Findings) -> Option<Text> {
        text(self.need(key, example, findings)?, &format!("`{key}`"), findings)
    }

    /// The place of a key that is written with a value.
    pub fn key_span(&self, key: &str) -> Option<Span> {
        self.get(key)?;
        self.entries.iter().find(|(known, _)| known.text == key).map(|(known, _)| known.span)
    }

    /// The place of the first key, where something that is missing is told.
    pub fn first_line(&self) -> Span {
        self.entries.first().map_or(self.span, |(key, _)| key.span)
    }
}

/// A single value; anything else is a finding that names `what`.
pub(super) fn text(node: &Node, what: &str, findings: &mut Findings) -> Option<Text> {
    match &node.value {
        Value::Scalar(text) => Some(text.clone()),
        _ => {
            findings.push(
                VALUE_UNREADABLE
                    .at(node.span, format!("{what} is a single value, not {}", node.what()))
                    .hint("write one value after the colon; put words that hold `:`, `{` or `[` in double quotes"),
            );
            None
        }
    }
}

/// The keys and values of a record whose keys are the author's own names.
pub(super) fn named<'a>(node: &'a Node, what: &str, findings: &mut Findings) -> Vec<(&'a Text, &'a Node)> {
    match &node.value {
        Value::Map(entries) => entries.iter().map(|(key, node)| (key, node)).collect(),
        Value::Empty => Vec::new(),
        _ => {
            findings.push(
                VALUE_UNREADABLE
                    .at(node.span, format!("{what} are names with values, not {}", node.what()))
                    .hint("write a line for each: `name: value`"),
            );
            Vec::new()
        }
    }
}

/// A list, or a single value as a list of one.
pub(super) fn list(node: &Node) -> Vec<&Node> {
    match &node.value {
        Value::List(items) => items.iter().collect(),
        Value::Empty => Vec::new(),
        _ => vec![node],
    }
}

/// A name in the booklet's one space of names: small letters, digits and underscores, a letter first,
/// since formulas would take a digit for a figure.
pub(super) fn name(text: &Text, findings: &mut Findings) -> Name {
    let starts = |letter: char| letter.is_ascii_lowercase();
    spelt(text, starts, "a letter first", findings)
}

/// The name of a size, which no formula holds: sizes are often numbers.
pub(super) fn size_name(text: &Text, findings: &mut Findings) -> Name {
    let starts = |letter: char| letter.is_ascii_lowercase() || letter.is_ascii_digit();
    spelt(text, starts, "a letter or a digit first", findings)
}

fn spelt(text: &Text, starts: impl Fn(char) -> bool, first: &str, findings: &mut Findings) -> Name {
    let right = |letter: char| letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == '_';
    if !text.text.starts_with(&starts) || !text.text.chars().all(right) {
        let mut better: String =
            text.text.to_lowercase().chars().map(|letter| if right(letter) { letter } else { '_' }).collect();
        if !better.starts_with(&starts) {
            better = format!("a{better}");
        }
        findings.push(
            VALUE_UNREADABLE
                .at(text.span, format!("`{}` cannot be a name", text.text))
                .hint(format!("names have small letters, digits and underscores, {first}: `{better}`")),
        );
    }
    Name { text: text.text.clone(), span: text.span }
}

/// `zip_tab` as words: "Zip tab".
pub(super) fn spoken(id: &str) -> String {
    let words = id.replace('_', " ");
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// Whether a value says yes.
pub(super) fn yes(text: &Text, findings: &mut Findings) -> bool {
    match text.text.as_str() {
        "yes" | "true" => true,
        "no" | "false" => false,
        other => {
            findings.push(
                VALUE_UNREADABLE.at(text.span, format!("`{other}` is neither yes nor no")).hint("write `yes` or `no`"),
            );
            false
        }
    }
}

/// A plain record as a type of ours; a finding at the very value when it does not fit.
pub(super) fn record<T: DeserializeOwned>(node: &Node, what: &str, findings: &mut Findings) -> Option<T> {
    match serde_path_to_error::deserialize(node.to_plain()) {
        Ok(record) => Some(record),
        Err(error) => {
            let at = node.follow(error.path());
            let words = error.inner().to_string();
            let wanted = words.split_once("expected ").map_or("one of the values it may have", |(_, wanted)| wanted);
            let wanted = if wanted == "a string" { "a single value" } else { wanted };
            let message = match &at.value {
                Value::Scalar(text) => format!("{what} cannot be `{}`", text.text),
                _ => format!("{what} cannot be {}", at.what()),
            };
            let place = error.path().to_string();
            findings.push(
                VALUE_UNREADABLE
                    .at(at.span, message.replacen(what, &format!("`{place}` of {what}"), 1))
                    .hint(format!("write {wanted}, or leave the line out")),
            );
            None
        }
    }
}

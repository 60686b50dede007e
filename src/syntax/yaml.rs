//! YAML as a tree in which every key and value knows its place.
//!
//! Anchors, aliases, tags and merge keys are refused: a designer who meets one in a file has
//! nearly always typed `&`, `*` or `!` by chance. Duplicate keys are findings.

use std::collections::HashMap;

use saphyr_parser::{Event, Parser, ScalarStyle};

use super::hidden;
use crate::diag::Findings;
use crate::faults::{DUPLICATE_KEY, NESTED_TOO_DEEP, OVER_LIMIT, YAML_UNREADABLE};
use crate::limits::{ENTRIES, KEYS, Limit, VALUES};
use crate::model::Text;
use crate::source::Span;

/// What helps where a bracket is never closed.
const NO_END: &str = "close it with `]` or `}`; put words that begin with a bracket in double quotes";
/// How deep lists and records may nest.
const DEEPEST: usize = 32;

/// A value with its place.
#[derive(Debug, Clone)]
pub(super) struct Node {
    /// From its first to its last character.
    pub span: Span,
    /// What it is.
    pub value: Value,
}

/// What a value is.
#[derive(Debug, Clone)]
pub(super) enum Value {
    /// Nothing, or `null`, or `~`.
    Empty,
    /// Words or a figure.
    Scalar(Text),
    /// A list.
    List(Vec<Node>),
    /// Keys and values.
    Map(Vec<(Text, Node)>),
}

impl Node {
    /// What it is, for messages.
    pub fn what(&self) -> &'static str {
        match self.value {
            Value::Empty => "nothing",
            Value::Scalar(_) => "a single value",
            Value::List(_) => "a list",
            Value::Map(_) => "a set of keys and values",
        }
    }

    /// The same without places, for readers of plain records.
    pub fn to_plain(&self) -> serde_yaml::Value {
        match &self.value {
            Value::Empty => serde_yaml::Value::Null,
            Value::Scalar(text) => serde_yaml::Value::String(text.text.clone()),
            Value::List(items) => serde_yaml::Value::Sequence(items.iter().map(Node::to_plain).collect()),
            Value::Map(entries) => serde_yaml::Value::Mapping(
                entries
                    .iter()
                    .map(|(key, node)| (serde_yaml::Value::String(key.text.clone()), node.to_plain()))
                    .collect(),
            ),
        }
    }

    /// The node at the end of a path of keys and places in lists; the deepest one that exists.
    pub fn follow(&self, path: &serde_path_to_error::Path) -> &Node {
        let mut node = self;
        for segment in path {
            let next = match (segment, &node.value) {
                (serde_path_to_error::Segment::Map { key }, Value::Map(entries)) => {
                    entries.iter().find(|(name, _)| name.text == *key).map(|(_, node)| node)
                }
                (serde_path_to_error::Segment::Seq { index }, Value::List(items)) => items.get(*index),
                _ => None,
            };
            match next {
                Some(next) => node = next,
                None => break,
            }
        }
        node
    }
}

/// Reads YAML out of `source`; `None` when it cannot be read at all, which is a finding.
pub(super) fn parse(source: &Text, findings: &mut Findings) -> Option<Node> {
    let text = source.text.as_str();
    let bytes: Vec<usize> = text.char_indices().map(|(at, _)| at).chain([text.len()]).collect();
    let byte = |index: usize| bytes.get(index).copied().unwrap_or(text.len());
    let mut builder = Builder { source, findings, stack: Vec::new(), root: None, documents: 0, values: 0 };
    for event in Parser::new_from_str(text) {
        match event {
            Ok((event, span)) => {
                let range = byte(span.start.index())..byte(span.end.index());
                if builder.take(event, range).is_none() {
                    // What was whole before the fault is still worth a look.
                    return builder.root;
                }
            }
            Err(error) => {
                let at = byte(error.marker().index()).min(text.len());
                // An open bracket is the place to look at, wherever the reading gave up.
                let open = builder
                    .open_bracket()
                    .filter(|_| at == text.len() || error.info().contains("while parsing a flow"));
                let (at, message, hint) = match open {
                    Some(open) => (open, "this bracket is never closed".to_owned(), NO_END.to_owned()),
                    None => {
                        let (message, hint) = explain(error.info(), text, at);
                        (at, message, hint)
                    }
                };
                let end = text[at..].find('\n').map_or(text.len(), |length| at + length).max(at);
                let findings = builder.findings;
                findings.push(YAML_UNREADABLE.at(source.at(at..end), message).hint(hint).label("reading stopped here"));
                return None;
            }
        }
    }
    Some(builder.root.unwrap_or(Node { span: source.at(0..0), value: Value::Empty }))
}

struct Builder<'a> {
    source: &'a Text,
    findings: &'a mut Findings,
    stack: Vec<Open>,
    root: Option<Node>,
    documents: usize,
    /// How many events there were so far, of which each value is one or two.
    values: usize,
}

enum Open {
    List { start: usize, items: Vec<Node> },
    Map { start: usize, entries: Vec<(Text, Node)>, known: HashMap<String, Span>, key: Option<Text> },
}

impl Builder<'_> {
    /// The innermost bracket that is still open.
    fn open_bracket(&self) -> Option<usize> {
        let Some(Open::List { start, .. } | Open::Map { start, .. }) = self.stack.last() else { return None };
        self.source.text[*start..].starts_with(['[', '{']).then_some(*start)
    }

    /// Takes in one event; `None` ends the reading.
    fn take(&mut self, event: Event<'_>, range: std::ops::Range<usize>) -> Option<()> {
        if self.stack.len() > DEEPEST {
            self.findings.push(
                NESTED_TOO_DEEP
                    .at(self.source.at(range), "lists and records are nested too deep here")
                    .hint(format!("nest at most {DEEPEST} levels")),
            );
            return None;
        }
        self.values += 1;
        if let Some(limit) = self.crowd() {
            let finding = OVER_LIMIT.at(self.source.at(range), limit.fact()).hint(limit.act);
            self.findings.push(finding.label("reading stopped here"));
            return None;
        }
        match event {
            Event::DocumentStart(_) => {
                self.documents += 1;
                if self.documents == 2 {
                    self.findings.push(
                        YAML_UNREADABLE
                            .at(self.source.at(range), "a second document begins here")
                            .hint("take out the line `---`: one file holds one set of facts"),
                    );
                    return None;
                }
            }
            Event::Alias(_) => {
                self.refuse(&range);
                let text = self.scalar("", ScalarStyle::Plain, range.clone());
                self.node(Node { span: self.source.at(range), value: Value::Scalar(text) });
            }
            Event::Scalar(value, style, anchor, tag) => {
                if anchor != 0 || tag.is_some() {
                    self.refuse(&range);
                }
                let text = self.scalar(&value, style, range.clone());
                self.findings.extend(hidden::escaped(&value, &self.source.text[range.clone()], text.span));
                let empty = style == ScalarStyle::Plain && matches!(&*value, "" | "~" | "null");
                let value = if empty && !self.waits_for_key() { Value::Empty } else { Value::Scalar(text) };
                self.node(Node { span: self.source.at(range), value });
            }
            Event::SequenceStart(..) => {
                self.stack.push(Open::List { start: range.start, items: Vec::new() });
            }
            Event::MappingStart(..) => {
                let known = HashMap::new();
                self.stack.push(Open::Map { start: range.start, entries: Vec::new(), known, key: None });
            }
            Event::SequenceEnd | Event::MappingEnd => match self.stack.pop() {
                Some(Open::List { start, items }) => {
                    let end = items.last().map_or(range.end, |_| range.end.max(start));
                    let span = self.trimmed(start..end);
                    self.node(Node { span, value: Value::List(items) });
                }
                Some(Open::Map { start, entries, .. }) => {
                    let span = self.trimmed(start..range.end.max(start));
                    self.node(Node { span, value: Value::Map(entries) });
                }
                None => {}
            },
            Event::Nothing | Event::StreamStart | Event::StreamEnd | Event::DocumentEnd => {}
        }
        Some(())
    }

    /// What there is too much of.
    fn crowd(&self) -> Option<Limit> {
        if self.values > VALUES.most {
            return Some(VALUES);
        }
        match self.stack.last()? {
            Open::List { items, .. } => (items.len() > ENTRIES.most).then_some(ENTRIES),
            Open::Map { entries, .. } => (entries.len() > KEYS.most).then_some(KEYS),
        }
    }

    fn waits_for_key(&self) -> bool {
        matches!(self.stack.last(), Some(Open::Map { key: None, .. }))
    }

    fn trimmed(&self, range: std::ops::Range<usize>) -> Span {
        let text = self.source.text.get(range.clone()).unwrap_or("");
        self.source.at(range.start..range.start + text.trim_end().len())
    }

    fn refuse(&mut self, range: &std::ops::Range<usize>) {
        let sign = self.source.text[range.clone()].chars().next().unwrap_or('&');
        let message = format!("`{sign}` at the start of a value has a meaning of its own in YAML");
        self.findings.push(
            YAML_UNREADABLE.at(self.source.at(range.clone()), message).hint("put the value in double quotes: \"…\""),
        );
    }

    fn scalar(&self, value: &str, style: ScalarStyle, range: std::ops::Range<usize>) -> Text {
        let quoted = matches!(style, ScalarStyle::SingleQuoted | ScalarStyle::DoubleQuoted);
        let inner = if quoted && range.len() >= 2 { range.start + 1..range.end - 1 } else { range };
        let stands = self.source.text.get(inner.clone()).unwrap_or("");
        if let Some(at) = (!value.is_empty()).then(|| stands.find(value)).flatten() {
            let start = inner.start + at;
            let span = self.source.at(start..start + value.len());
            return Text { text: value.to_owned(), span, verbatim: self.source.verbatim };
        }
        let shown = stands.trim_end().len();
        Text { text: value.to_owned(), span: self.source.at(inner.start..inner.start + shown), verbatim: false }
    }

    fn node(&mut self, node: Node) {
        match self.stack.last_mut() {
            None => {
                self.root.get_or_insert(node);
            }
            Some(Open::List { items, .. }) => items.push(node),
            Some(Open::Map { entries, known, key, .. }) => match key.take() {
                None => {
                    if let Value::Scalar(text) = node.value {
                        *key = Some(text);
                    } else {
                        self.findings.push(
                            YAML_UNREADABLE.at( node.span, format!("{} stands where a key should", node.what()))
                                .hint("a key is one word before a colon; put a value that begins with `{` or `[` in double quotes"),
                        );
                        *key = Some(Text { text: String::new(), span: node.span, verbatim: false });
                    }
                }
                Some(key) => match known.get(&key.text).copied() {
                    Some(first) => self.findings.push(
                        DUPLICATE_KEY
                            .at(key.span, format!("`{}` is written twice", key.text))
                            .hint("take one of the two out, or give it another name")
                            .label("the second one")
                            .note(first, "the first one"),
                    ),
                    None if key.text == "<<" => self.findings.push(
                        YAML_UNREADABLE
                            .at(key.span, "`<<` has a meaning of its own in YAML")
                            .hint("write the keys out"),
                    ),
                    None => {
                        known.insert(key.text.clone(), key.span);
                        entries.push((key, node));
                    }
                },
            },
        }
    }
}

/// The parser's words turned into ours, with what usually helps.
fn explain(info: &str, text: &str, at: usize) -> (String, String) {
    let line = text[..at].rfind('\n').map_or(0, |newline| newline + 1);
    let indent = &text[line..at];
    if indent.contains('\t') || text[at..].starts_with('\t') {
        let hint = "use spaces, not tabs, at the start of a line";
        return ("a tab stands where YAML wants spaces".into(), hint.into());
    }
    if info.contains("recursion") {
        let hint = format!("nest at most {DEEPEST} levels");
        return ("lists and records are nested too deep here".into(), hint);
    }
    if info.contains("mapping values are not allowed") {
        let hint = "put words that hold a colon in double quotes, and give a new line the same indent as its sisters";
        return ("there is a second colon here, or the indent is wrong".into(), hint.into());
    }
    if info.contains("quoted scalar") {
        let hint = "close it with the same sign, `\"` or `'`; inside double quotes write `\\\"` for one";
        return ("these quotes are never closed".into(), hint.into());
    }
    if info.contains("block mapping") || info.contains("':'") {
        if indent.contains(": [") || indent.contains(": {") {
            let hint = "put words that begin with a bracket in double quotes";
            return ("words follow a bracket here".into(), hint.into());
        }
        let hint =
            "look at this line and the one above: the indent of their sisters, a colon and a space after the key";
        return ("this line is no key with its value".into(), hint.into());
    }
    let hint = "check the indent, the colons, and that quotes and brackets are closed";
    (format!("this cannot be read as YAML: {info}"), hint.into())
}

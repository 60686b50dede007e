//! Work blocks: what a step does, as a list of facts in YAML.

use super::expression::parse_expression;
use super::fields::{self, Fields};
use super::measures;
use super::yaml::{self, Node, Value};
use crate::diag::{Findings, is_slip, nearest};
use crate::faults::{KEY_UNKNOWN, VALUE_UNREADABLE, WORK_UNREADABLE};
use crate::model::{Expression, Name, Text, Verb, Work};

/// The keys that may stand below a verb.
pub(super) const KEYS: &[&str] = &["allowance", "stitch", "leave", "ease", "gather", "count", "by", "note"];

/// Reads the inside of a work block.
pub(super) fn read(source: &Text, findings: &mut Findings) -> Vec<Work> {
    let Some(root) = yaml::parse(source, findings) else { return Vec::new() };
    match &root.value {
        Value::List(items) => items.iter().filter_map(|item| fact(item, findings)).collect(),
        Value::Empty => Vec::new(),
        _ => {
            findings.push(
                WORK_UNREADABLE
                    .at(root.span, format!("a work block is a list of facts, not {}", root.what()))
                    .hint("begin each fact with a dash: `- sew: [front.top, back.top]`"),
            );
            Vec::new()
        }
    }
}

fn fact(node: &Node, findings: &mut Findings) -> Option<Work> {
    let Value::Map(entries) = &node.value else {
        findings.push(
            WORK_UNREADABLE
                .at(node.span, "this fact names no work")
                .hint("write a verb, a colon, and what it is done to: `- press: front`"),
        );
        return None;
    };
    let verbs: Vec<(&Text, &Node, Verb)> = entries
        .iter()
        .filter_map(|(key, value)| Verb::parse(&key.text).map(|verb| (key, value, verb)))
        // `gather:` is a verb, and beside another verb the length that an edge is gathered to.
        .collect();
    let chosen = match verbs.as_slice() {
        [] => None,
        [only] => Some(*only),
        several => several.iter().find(|(_, _, verb)| *verb != Verb::Gather).copied(),
    };
    let Some((verb_key, target, verb)) = chosen else {
        let (key, _) = entries.first()?;
        findings.push(
            WORK_UNREADABLE
                .at(key.span, format!("`{}` is no work that notchbook knows", key.text))
                .hint(other_verb(&key.text)),
        );
        return None;
    };
    for (key, _, other) in verbs.iter().filter(|(key, ..)| key.span != verb_key.span) {
        if *other != Verb::Gather {
            findings.push(
                WORK_UNREADABLE
                    .at(key.span, "one fact does two things")
                    .hint(format!("begin a fact of its own: `- {}: …`", key.text))
                    .note(verb_key.span, "the first"),
            );
        }
    }
    let mut known: Vec<&str> = KEYS.to_vec();
    known.extend(verbs.iter().map(|(key, ..)| key.text.as_str()));
    let record = Fields::open(node, "a work fact", &known, findings)?;
    let (touches, words) = touches(target, findings);
    let mut length =
        |key: &str| -> Option<Expression> { measures::expression(record.get(key)?, &format!("`{key}`"), findings) };
    let (allowance, stitch, leave, ease) = (length("allowance"), length("stitch"), length("leave"), length("ease"));
    let gather = if verb == Verb::Gather { None } else { length("gather") };
    let count = length("count").filter(|_| {
        let counts = verb.counts();
        if let Some(at) = record.key_at("count").filter(|_| !counts) {
            findings.push(
                KEY_UNKNOWN
                    .at(at, format!("`{}` takes no `count`", verb.word()))
                    .hint("a `count` stands below `button`, `buttonhole` and `fasten`; tell others under `note:`"),
            );
        }
        counts
    });
    let by = record.text("by", findings);
    if let Some(by) = by.as_ref().filter(|by| !matches!(by.text.as_str(), "hand" | "machine")) {
        findings.push(
            VALUE_UNREADABLE
                .at(by.span, format!("`{}` is no way to sew", by.text))
                .hint("write `by: hand` or `by: machine`"),
        );
    }
    Some(Work {
        verb,
        verb_span: verb_key.span,
        touches,
        words,
        allowance,
        stitch,
        leave,
        ease,
        gather,
        count,
        by_hand: by.is_some_and(|by| by.text == "hand"),
        note: record.text("note", findings),
        span: node.span,
    })
}

/// Words of the trade that lie near a verb and are no slip of the hand.
const TRADE: &[&str] = &["pink", "slip", "snip", "tack", "dart", "stitch", "face", "line", "set", "roll", "loop"];

/// What to write instead of a word that is no verb.
fn other_verb(word: &str) -> String {
    let verbs: Vec<&str> = Verb::ALL.iter().map(|(verb, _)| *verb).collect();
    let slip = nearest(word, verbs.iter().copied()).filter(|verb| is_slip(word, verb) && !TRADE.contains(&word));
    match slip {
        Some(verb) => format!("did you mean `{verb}`?"),
        None => format!("the verbs are: {}", verbs.join(", ")),
    }
}

/// Names first, then plain words: `[lining_front, away from the zip]`.
fn touches(node: &Node, findings: &mut Findings) -> (Vec<Name>, Vec<Text>) {
    let mut names = Vec::new();
    let mut words = Vec::new();
    for item in fields::list(node) {
        let Some(text) = fields::text(item, "what a work fact touches", findings) else { continue };
        if is_name(&text.text) {
            names.push(Name { text: text.text, span: text.span });
        } else if text.text.contains(',') && text.text.split(',').all(|part| is_name(part.trim())) {
            // Names with commas and no brackets say the same.
            let mut at = 0;
            for part in text.text.split(',') {
                let start = at + (part.len() - part.trim_start().len());
                at += part.len() + 1;
                let part = part.trim();
                names.push(Name { text: part.to_owned(), span: text.at(start..start + part.len()) });
            }
        } else if text.text.contains(' ') {
            words.push(text);
        } else {
            findings.push(
                WORK_UNREADABLE.at(text.span, format!("`{}` is neither a name nor words", text.text)).hint(
                    "write a piece, a copy or an edge such as `front.top`; plain words have a space between them",
                ),
            );
        }
    }
    (names, words)
}

/// `front`, `front.top`: small letters, digits, underscores, at most one dot.
fn is_name(text: &str) -> bool {
    let part = |part: &str| {
        part.starts_with(|letter: char| letter.is_ascii_lowercase())
            && part.chars().all(|letter| letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == '_')
    };
    match text.split_once('.') {
        Some((copy, edge)) => part(copy) && part(edge),
        None => part(text),
    }
}

/// A parameter's value as a formula where it reads as one.
pub(super) fn param_formula(text: &Text) -> Option<Expression> {
    parse_expression(text, &mut Findings::default())
}

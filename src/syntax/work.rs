//! Work blocks: what a step does, as a list of facts in YAML.

use super::expression::parse_expression;
use super::fields::{self, Fields};
use super::gaps::{leave, place};
use super::measures;
use super::synonyms;
use super::together;
use super::yaml::{self, Node, Value};
use crate::diag::Findings;
use crate::faults::{KEY_UNKNOWN, VALUE_UNREADABLE, WORK_UNREADABLE};
use crate::model::{Around, EdgeFinish, Expression, Name, Text, Together, Touch, Verb, Work};

/// The keys that may stand below a verb.
pub(super) const KEYS: &[&str] = &[
    "allowance",
    "stitch",
    "from",
    "to",
    "leave",
    "ease",
    "gather",
    "catch",
    "with",
    "into",
    "over",
    "ends",
    "up",
    "gap",
    "count",
    "by",
    "note",
];

/// Keys that stand below one verb alone, and what each says.
const OF_ONE: &[(&str, Verb, &str)] = &[
    ("up", Verb::Box, "how far up from the corner it is sewn across"),
    ("ends", Verb::Bind, "whether the ends of the strip are turned in"),
    ("into", Verb::Put, "what it is put into"),
    ("over", Verb::Put, "what it is drawn over"),
    ("gap", Verb::Quilt, "how far apart the lines are; a gap to turn through is `leave`"),
];

/// A fact with its note, whose prose is read once all of the part has been.
pub(super) type Noted = (Work, Option<Text>);

/// Reads the inside of a work block.
pub(super) fn read(source: &Text, findings: &mut Findings) -> Vec<Noted> {
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

fn fact(node: &Node, findings: &mut Findings) -> Option<Noted> {
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
                .hint(synonyms::instead(&key.text)),
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
    let (mut touches, words) = touches(target, findings);
    let around = if verb == Verb::Put { around(&record, verb_key, &mut touches, findings) } else { None };
    let caught = record.get("catch").map_or_else(Vec::new, |node| caught(node, verb, findings));
    let (leave, leave_at, leave_for) = record.get("leave").map_or((None, None, None), |node| leave(node, findings));
    let part = [record.get("from"), record.get("to")].map(|node| place(node?, findings));
    let mut length =
        |key: &str| -> Option<Expression> { measures::expression(record.get(key)?, &format!("`{key}`"), findings) };
    let (allowance, stitch, ease) = (length("allowance"), length("stitch"), length("ease"));
    let gather = if verb == Verb::Gather { None } else { length("gather") };
    let (up, gap) = (length("up"), length("gap"));
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
    for (key, only, what) in OF_ONE {
        if let Some(at) = record.key_at(key).filter(|_| verb != *only) {
            let finding = KEY_UNKNOWN.at(at, format!("`{}` takes no `{key}`", verb.word()));
            findings.push(finding.hint(format!("`{key}` stands below `{}`: {what}", only.word())));
        }
    }
    let by = record.get("by").map_or(By::default(), |node| by(node, verb, findings));
    let with = record.get("with").and_then(|node| together::read(node, verb, findings));
    let wrong_sides = with == Some(Together::WrongSides) || with.is_none() && together::in_words(&words);
    let ends_in = record.get("ends").is_some_and(|node| together::ends_in(node, findings));
    let as_one = verb == Verb::Baste && words.iter().any(|words| words.text.trim() == "as one");
    if verb == Verb::Lap && (by.lap.is_none() || touches.len() < 2) {
        findings.push(
            WORK_UNREADABLE
                .at(verb_key.span, "this `lap` does not say what is lapped, and how far")
                .hint("name the edges that lie over each other, and add a line below: `by: 3 cm`"),
        );
    }
    let note = record.text("note", findings);
    let work = Work {
        verb,
        verb_span: verb_key.span,
        touches,
        caught,
        words,
        allowance,
        stitch,
        leave,
        leave_at,
        leave_for,
        part,
        ease,
        gather,
        count,
        by_hand: by.hand,
        finish: by.finish,
        lap: by.lap,
        up,
        gap,
        as_one,
        with,
        wrong_sides,
        ends_in,
        around,
        note: Vec::new(),
        span: node.span,
    };
    Some((work, note))
}

/// Whether something is put into or over another thing, which joins what the fact touches.
fn around(record: &Fields<'_>, verb: &Text, touches: &mut Vec<Touch>, findings: &mut Findings) -> Option<Around> {
    let mut found = None;
    for (key, around) in Around::ALL {
        let Some(node) = record.get(key) else { continue };
        if found.is_some() {
            let finding = WORK_UNREADABLE.at(node.span, "one thing is not put into another and over it at once");
            findings.push(finding.hint("keep `into:` or `over:`, and begin a fact of its own for the other"));
            continue;
        }
        let (others, words) = self::touches(node, findings);
        for words in words {
            let finding = WORK_UNREADABLE.at(words.span, format!("`{}` is no piece", words.text));
            findings.push(finding.hint("name a piece of what it is put into or over; tell more under `note:`"));
        }
        // What is put and what it is put into are two sides, like edges in rows.
        touches.iter_mut().for_each(|touch| touch.row = Some(0));
        touches.extend(others.into_iter().map(|touch| Touch { row: Some(1), ..touch }));
        found = Some(*around);
    }
    if found.is_none() {
        findings.push(
            WORK_UNREADABLE
                .at(verb.span, "this `put` does not say where to")
                .hint("add `into:` or `over:` and a piece of the other: `- {put: lining_front, into: front}`"),
        );
    }
    found
}

/// Single words that tell how something is done and are never a name behind other names.
const PLAIN: &[&str] =
    &["open", "flat", "together", "apart", "lengthwise", "crosswise", "up", "down", "over", "under", "twice", "once"];

/// What a seam catches: names alone.
fn caught(node: &Node, verb: Verb, findings: &mut Findings) -> Vec<Touch> {
    if !verb.catches() {
        let finding = KEY_UNKNOWN.at(node.span, format!("`{}` catches nothing", verb.word()));
        findings
            .push(finding.hint(
                "a `catch` stands below stitches that stay, such as `sew`, `hem`, `bind` and `topstitch`; name this in a fact of its own",
            ));
    }
    let (touches, words) = touches(node, findings);
    for words in words {
        let finding = WORK_UNREADABLE.at(words.span, format!("`{}` is no piece, edge or notion", words.text));
        findings.push(
            finding
                .hint("name what the seam catches, such as `catch: [loop.left, loop.right]`; tell more under `note:`"),
        );
    }
    touches
}

/// Names first, then plain words: `[lining_front, away from the zip]`; names between brackets of their own
/// are a row.
fn touches(node: &Node, findings: &mut Findings) -> (Vec<Touch>, Vec<Text>) {
    let (mut names, mut words) = (Vec::new(), Vec::new());
    for (at, item) in fields::list(node).into_iter().enumerate() {
        if let (Value::List(_), Value::List(row)) = (&node.value, &item.value) {
            for item in row {
                touch(item, Some(at), &mut names, &mut words, findings);
            }
        } else {
            touch(item, None, &mut names, &mut words, findings);
        }
    }
    (names, words)
}

fn touch(item: &Node, row: Option<usize>, names: &mut Vec<Touch>, words: &mut Vec<Text>, findings: &mut Findings) {
    let Some(text) = fields::text(item, "what a work fact touches", findings) else { return };
    if PLAIN.contains(&text.text.as_str()) && row.is_none() && !names.is_empty() {
        words.push(text);
    } else if is_name(&text.text) {
        names.push(Touch { name: Name { text: text.text, span: text.span }, row });
    } else if text.text.contains(',') && text.text.split(',').all(|part| is_name(part.trim())) {
        // Names with commas and no brackets say the same.
        let mut at = 0;
        for part in text.text.split(',') {
            let start = at + (part.len() - part.trim_start().len());
            at += part.len() + 1;
            let part = part.trim();
            let span = text.at(start..start + part.len());
            names.push(Touch { name: Name { text: part.to_owned(), span }, row });
        }
    } else if text.text.contains(' ') && row.is_none() {
        words.push(text);
    } else {
        findings.push(
            WORK_UNREADABLE
                .at(text.span, format!("`{}` is neither a name nor words", text.text))
                .hint("write a piece, a copy or an edge such as `front.top`; plain words have a space between them"),
        );
    }
}

/// What stands behind `by:`: how it is sewn, how an edge is finished, or how far layers are lapped.
#[derive(Default)]
struct By {
    hand: bool,
    finish: Option<EdgeFinish>,
    lap: Option<Expression>,
}

fn by(node: &Node, verb: Verb, findings: &mut Findings) -> By {
    if verb == Verb::Lap {
        return By { lap: measures::expression(node, "`by`", findings), ..By::default() };
    }
    let Some(text) = fields::text(node, "`by`", findings) else { return By::default() };
    let word = text.text.as_str();
    let finish = EdgeFinish::ALL.iter().find(|(known, _)| *known == word).map(|(_, finish)| *finish);
    let (known, fault, hint) = match verb {
        Verb::Finish => (
            finish.is_some(),
            "is no way to finish an edge",
            "write `by: overlock`, `zigzag`, `pinking`, `binding` or `hand`",
        ),
        _ => (matches!(word, "hand" | "machine"), "is no way to sew", "write `by: hand` or `by: machine`"),
    };
    if !known {
        findings.push(VALUE_UNREADABLE.at(text.span, format!("`{word}` {fault}")).hint(hint));
    }
    By { hand: word == "hand", finish: finish.filter(|_| verb == Verb::Finish), lap: None }
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

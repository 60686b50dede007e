//! Darts, pleats, tucks and marks of a piece.

use super::fields::{self, Fields, yes};
use super::measures;
use super::places::{along, point};
use super::yaml::{Node, Value};
use crate::diag::{Findings, did_you_mean};
use crate::faults::{KEY_MISSING, VALUE_UNREADABLE};
use crate::geometry::{Fold, Laid};
use crate::model::{Dart, DartPlace, DartTip, Expression, Mark, MarkPlace, Name, NotchAt, Pleat, PointAt, Row};

/// The keys of a dart.
pub(super) const DART: &[&str] = &["edge", "at", "width", "point", "length", "from", "to", "laid"];

/// The keys of pleats or tucks.
pub(super) const PLEAT: &[&str] = &["edge", "at", "depth", "kind", "count", "apart", "length", "laid"];

/// The keys of a mark.
pub(super) const MARK: &[&str] = &["point", "edge", "at", "outline", "line", "count", "each", "along", "for"];

const POINT: &str = "[9 cm, 22 cm]";

/// Reads the darts of a piece.
pub(super) fn darts(node: &Node, findings: &mut Findings) -> Vec<Dart> {
    each(node, "darts", "a dart", DART, findings, |name, record, findings| {
        let inside = record.get("from").is_some() || record.get("to").is_some();
        let place = if inside {
            surplus(record, &["edge", "at", "point", "length"], "a dart with two points", findings);
            let from = needed_point(record, "from", findings);
            let to = needed_point(record, "to", findings);
            from.zip(to).map(|(from, to)| DartPlace::Inside { from, to })
        } else {
            let place = on_edge(record, "side", findings);
            let tip = tip(record, findings);
            place.zip(tip).map(|((edge, at), tip)| DartPlace::Edge { edge, at, tip })
        };
        let width = needed(record, "width", "2.5 cm", findings);
        let laid = laid(record, findings);
        let (place, width) = place.zip(width)?;
        Some(Dart { name, place, width, laid })
    })
}

/// The point of a dart at an edge: where it lies, or how far in.
fn tip(record: &Fields<'_>, findings: &mut Findings) -> Option<DartTip> {
    match record.get("length") {
        Some(node) => {
            surplus(record, &["point"], "a dart with a `length`", findings);
            measures::expression(node, "`length`", findings).map(DartTip::Straight)
        }
        None => match record.get("point") {
            Some(node) => point(node, findings).map(DartTip::Point),
            None => {
                findings.push(KEY_MISSING.at(record.first_line(), "this dart does not say where its point lies").hint(
                    format!("add `point: {POINT}`, across and down, or `length: 11 cm`, straight in from the edge"),
                ));
                None
            }
        },
    }
}

/// Reads the pleats and tucks of a piece.
pub(super) fn pleats(node: &Node, findings: &mut Findings) -> Vec<Pleat> {
    each(node, "pleats", "a pleat", PLEAT, findings, |name, record, findings| {
        let place = on_edge(record, "waist", findings);
        let depth = needed(record, "depth", "2 cm", findings);
        let fold = fold(record, findings);
        if matches!(fold, Fold::Box | Fold::Inverted) {
            surplus(record, &["laid"], "a pleat with a fold to either side", findings);
        }
        let mut figure =
            |key: &str| record.get(key).and_then(|node| measures::expression(node, &format!("`{key}`"), findings));
        let (count, apart, length) = (figure("count"), figure("apart"), figure("length"));
        let laid = laid(record, findings);
        let ((edge, at), depth) = place.zip(depth)?;
        Some(Pleat { name, edge, at, depth, fold, count, apart, length, laid })
    })
}

fn fold(record: &Fields<'_>, findings: &mut Findings) -> Fold {
    let known = [("knife", Fold::Knife), ("box", Fold::Box), ("inverted", Fold::Inverted), ("tuck", Fold::Tuck)];
    chosen(record, "kind", "a pleat is no", &known, findings).unwrap_or(Fold::Knife)
}

fn laid(record: &Fields<'_>, findings: &mut Findings) -> Option<Laid> {
    let known = [
        ("down", Laid::Down),
        ("up", Laid::Up),
        ("to centre", Laid::Centre),
        ("to side", Laid::Side),
        ("left", Laid::Left),
        ("right", Laid::Right),
    ];
    chosen(record, "laid", "nothing is laid", &known, findings)
}

/// One of several words; another is a finding.
fn chosen<T: Copy>(
    record: &Fields<'_>,
    key: &str,
    wrong: &str,
    known: &[(&str, T)],
    findings: &mut Findings,
) -> Option<T> {
    let text = record.text(key, findings)?;
    let spelt = text.text.trim().replace("center", "centre");
    let found = known.iter().find(|(word, _)| *word == spelt || word.strip_prefix("to ") == Some(&*spelt));
    if found.is_none() {
        let words: Vec<&str> = known.iter().map(|(word, _)| *word).collect();
        let all = words.iter().map(|word| format!("`{key}: {word}`")).collect::<Vec<_>>().join(", ");
        findings.push(VALUE_UNREADABLE.at(text.span, format!("{wrong} `{}`", text.text)).hint(did_you_mean(
            &spelt,
            words,
            &format!("write one of {all}"),
        )));
    }
    found.map(|(_, one)| *one)
}

/// Reads what is marked on a piece.
pub(super) fn marks(node: &Node, findings: &mut Findings) -> Vec<Mark> {
    each(node, "marks", "a mark", MARK, findings, |name, record, findings| {
        let place = if let Some(node) = record.get("line") {
            surplus(record, &["point", "edge", "at", "outline"], "a mark with a `line`", findings);
            line(node, record, findings)
        } else {
            surplus(record, &["count", "each", "along"], "a mark without a `line`", findings);
            place(record, findings)
        };
        let only = record.get("for").map_or_else(Vec::new, |node| copies(node, findings));
        place.map(|place| Mark { name, place, only })
    })
}

/// The mark that says which edge of a piece is up: `up: top`. No author can name it.
pub(super) fn up(record: &Fields<'_>, findings: &mut Findings) -> Option<Mark> {
    let edge = fields::name(&record.text("up", findings)?, findings);
    Some(Mark { name: Name { text: "TOP".to_owned(), span: edge.span }, place: MarkPlace::Up(edge), only: Vec::new() })
}

/// The copies that have a mark: one, or several.
fn copies(node: &Node, findings: &mut Findings) -> Vec<Name> {
    let named = fields::list(node).into_iter().filter_map(|node| fields::text(node, "a copy", findings));
    named.collect::<Vec<_>>().iter().map(|text| fields::name(text, findings)).collect()
}

fn place(record: &Fields<'_>, findings: &mut Findings) -> Option<MarkPlace> {
    // Where another piece lies is told by `at`; a `point` beside it can only mean the same.
    if let (Some(node), Some(span), Some(_)) = (record.get("point"), record.key_span("point"), record.get("outline")) {
        let finding = VALUE_UNREADABLE.at(span, "a mark with an `outline` is placed by `at`, not by `point`");
        findings
            .push(finding.hint("write `at: [across, down]`: where the upper left corner of its stitching line lies"));
        let piece = record.text("outline", findings).map(|text| fields::name(&text, findings));
        return piece.zip(point(node, findings)).map(|(piece, at)| MarkPlace::Outline { piece, at });
    }
    if let Some(node) = record.get("point") {
        surplus(record, &["edge", "at", "outline"], "a mark with a `point`", findings);
        return point(node, findings).map(MarkPlace::Point);
    }
    if let Some(text) = record.text("outline", findings) {
        surplus(record, &["edge"], "a mark with an `outline`", findings);
        let piece = fields::name(&text, findings);
        return needed_point(record, "at", findings).map(|at| MarkPlace::Outline { piece, at });
    }
    if record.get("edge").is_some() || record.get("at").is_some() {
        return on_edge(record, "side", findings).map(|(edge, at)| MarkPlace::Edge { edge, at });
    }
    findings.push(
        KEY_MISSING.at(record.first_line(), "this mark does not say where it is").hint(
            "write `point: [x, y]`, `edge: side` with `at: 2 cm`, `outline: pocket` with `at: [x, y]`, or `line: [[x, y], [x, y]]`",
        ),
    );
    None
}

fn line(node: &Node, record: &Fields<'_>, findings: &mut Findings) -> Option<MarkPlace> {
    let Value::List(items) = &node.value else { return wrong_line(node, findings) };
    let [from, to] = items.as_slice() else { return wrong_line(node, findings) };
    let ends = point(from, findings).zip(point(to, findings));
    let mut figure =
        |key: &str| record.get(key).and_then(|node| measures::expression(node, &format!("`{key}`"), findings));
    let (count, each) = (figure("count"), figure("each"));
    if count.is_none() && record.get("count").is_none() {
        surplus(record, &["each", "along"], "a line without a `count`", findings);
    }
    let along = record.text("along", findings).is_some_and(|text| yes(&text, findings));
    let row = count.map(|count| Row { count, each, along });
    ends.map(|(from, to)| MarkPlace::Line { ends: [from, to], row })
}

fn wrong_line(node: &Node, findings: &mut Findings) -> Option<MarkPlace> {
    findings.push(
        VALUE_UNREADABLE
            .at(node.span, "a line has two points")
            .hint("write both in brackets: `line: [[2 cm, 3 cm], [2 cm, 30 cm]]`"),
    );
    None
}

/// The edge and the place on it.
fn on_edge(record: &Fields<'_>, example: &str, findings: &mut Findings) -> Option<(Name, NotchAt)> {
    let edge = record.need_text("edge", example, findings).map(|text| fields::name(&text, findings));
    let at = record.need_text("at", "6 cm", findings).and_then(|text| along(&text, findings));
    edge.zip(at)
}

fn needed(record: &Fields<'_>, key: &str, example: &str, findings: &mut Findings) -> Option<Expression> {
    let node = record.need(key, example, findings)?;
    measures::expression(node, &format!("`{key}`"), findings)
}

fn needed_point(record: &Fields<'_>, key: &str, findings: &mut Findings) -> Option<PointAt> {
    point(record.need(key, POINT, findings)?, findings)
}

/// Keys that say nothing beside others.
fn surplus(record: &Fields<'_>, keys: &[&str], what: &str, findings: &mut Findings) {
    for (key, span) in keys.iter().filter_map(|key| Some((key, record.key_span(key)?))) {
        findings.push(
            VALUE_UNREADABLE.at(span, format!("{what} has no `{key}`")).hint("take it out, or what stands beside it"),
        );
    }
}

/// Reads the entries of a record of the author's own names.
fn each<T>(
    node: &Node,
    whole: &str,
    one: &'static str,
    keys: &[&str],
    findings: &mut Findings,
    mut read: impl FnMut(Name, &Fields<'_>, &mut Findings) -> Option<T>,
) -> Vec<T> {
    let mut found = Vec::new();
    for (key, node) in fields::named(node, whole, findings) {
        let name = fields::name(key, findings);
        // Every key that may be asked for tells of its own absence.
        let Some(record) =
            Fields::open_needing(&["edge", "at", "width", "from", "to", "depth"], node, one, keys, findings)
        else {
            continue;
        };
        found.extend(read(name, &record, findings));
    }
    found
}

//! Places along an edge in work facts: where a seam begins and ends, and where a gap lies.

use super::expression::parse_expression;
use super::fields::{self, Fields};
use super::measures;
use super::yaml::{Node, Value};
use crate::diag::Findings;
use crate::faults::VALUE_UNREADABLE;
use crate::model::{Expression, Far, Name, Place, Text};

/// The keys of a gap.
pub(super) const GAP: &[&str] = &["length", "at", "for"];

/// A gap: its length alone, or `{length: …, at: …, for: …}`.
pub(super) fn leave(node: &Node, findings: &mut Findings) -> (Option<Expression>, Option<Place>, Option<Name>) {
    if !matches!(node.value, Value::Map(_)) {
        return (measures::expression(node, "`leave`", findings), None, None);
    }
    let Some(record) = Fields::open_needing(&["length"], node, "a gap", GAP, findings) else {
        return (None, None, None);
    };
    let length =
        record.need("length", "10 cm", findings).and_then(|node| measures::expression(node, "`length`", findings));
    let at = record.get("at").and_then(|node| place(node, findings));
    let fills = record.text("for", findings).map(|text| Name { text: text.text, span: text.span });
    (length, at, fills)
}

/// `centre`, `start`, `end`, `notch`, `notch 2`, `8 cm`, `1/3`, each with `from …` behind it if need be.
pub(super) fn place(node: &Node, findings: &mut Findings) -> Option<Place> {
    let text = fields::text(node, "a place on an edge", findings)?;
    let (far, from) = match text.text.split_once("from ") {
        Some((far, from)) => (far.trim(), Some(from.trim().trim_start_matches("the ").trim())),
        None => (text.text.trim(), None),
    };
    let part = |word: &str| {
        let at = text.text.rfind(word).unwrap_or(0);
        text.at(at..at + word.len())
    };
    let from = from.map(|from| Name { text: from.to_owned(), span: part(from) });
    let far = match far {
        "start" => Far::Here,
        "end" => Far::There,
        "centre" | "center" | "middle" => Far::Centre,
        "notch" => Far::Notch(1),
        _ => match far.strip_prefix("notch ").and_then(|number| number.trim().parse().ok()) {
            Some(number) => Far::Notch(number),
            None if far.is_empty() => {
                findings.push(
                    VALUE_UNREADABLE
                        .at(text.span, format!("`{}` does not say how far along the edge", text.text))
                        .hint("write `8 cm from left`, `centre`, `1/3`, `notch` or `end`"),
                );
                return None;
            }
            None => {
                let at = text.text.find(far).unwrap_or(0);
                let span = text.at(at..at + far.len());
                let source = Text { text: far.to_owned(), span, verbatim: text.verbatim };
                Far::Along(parse_expression(&source, findings)?)
            }
        },
    };
    Some(Place { far, from, text })
}

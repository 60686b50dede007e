//! Places on a piece: points of its drawing, and places along an edge.

use super::expression::parse_expression;
use super::measures;
use super::yaml::{Node, Value};
use crate::diag::Findings;
use crate::faults::VALUE_UNREADABLE;
use crate::model::{Expression, NotchAt, Text};

/// `start`, `end`, `centre`, `1/3`, `5 cm` or `5 cm from end`.
pub(super) fn along(text: &Text, findings: &mut Findings) -> Option<NotchAt> {
    let place = text.text.trim();
    if matches!(place, "centre" | "center" | "middle") {
        return Some(NotchAt::Centre);
    }
    if matches!(place, "start" | "end") {
        let nought = Text { text: "0 mm".to_owned(), ..text.clone() };
        let formula = parse_expression(&nought, findings)?;
        return Some(if place == "end" { NotchAt::FromEnd(formula) } else { NotchAt::FromStart(formula) });
    }
    let (formula, from_end) = match place.strip_suffix("from end").or(place.strip_suffix("from the end")) {
        Some(formula) => (formula.trim(), true),
        None => (place, false),
    };
    let at = text.text.rfind(formula).unwrap_or(0);
    let source = Text { text: formula.to_owned(), span: text.at(at..at + formula.len()), verbatim: text.verbatim };
    let formula = parse_expression(&source, findings)?;
    Some(if from_end { NotchAt::FromEnd(formula) } else { NotchAt::FromStart(formula) })
}

/// `[4 cm, 12 cm]`: how far across, how far down.
pub(super) fn point(node: &Node, findings: &mut Findings) -> Option<(Expression, Expression)> {
    match &node.value {
        Value::List(items) if items.len() == 2 => {
            let across = measures::expression(&items[0], "a point", findings);
            let down = measures::expression(&items[1], "a point", findings);
            across.zip(down)
        }
        _ => {
            findings.push(
                VALUE_UNREADABLE
                    .at(node.span, "a point has two lengths: how far across, how far down")
                    .hint("write both in brackets: `[4 cm, 12 cm]`"),
            );
            None
        }
    }
}

//! Values that may differ by size: one formula, a list in the order of the sizes, or a record.

use super::expression::parse_expression;
use super::fields;
use super::sizes;
use super::yaml::{Node, Value};
use crate::diag::Findings;
use crate::faults::{KEY_MISSING, OUT_OF_RANGE, SIZE_MISSING, SIZE_UNKNOWN, VALUE_UNREADABLE};
use crate::measure::{Dimension, Exact, read_measure};
use crate::model::{BySize, Expression, Size, Text};

/// No ruler shows less, in mm, and no setting can be meant so small.
const FINEST: Exact = Exact::of::<1, 100>();

/// No setting can be meant longer, in mm.
const LONGEST: Exact = Exact::from_integer(100_000);

/// Reads one value or one for each size; `what` names it in messages.
pub(super) fn by_size(node: &Node, what: &str, sizes: &[Size], findings: &mut Findings) -> Option<BySize> {
    match &node.value {
        Value::Scalar(text) => parse_expression(text, findings).map(|one| BySize::Same(Box::new(one))),
        Value::Empty => {
            findings.push(
                KEY_MISSING
                    .at(node.span, format!("{what} has no value"))
                    .hint("write a figure with its unit, such as `5 cm`, or a formula"),
            );
            None
        }
        Value::List(items) => {
            if items.len() != sizes.len() {
                let names: Vec<&str> = sizes.iter().map(|size| size.id.text.as_str()).collect();
                let check = if items.len() < sizes.len() { &SIZE_MISSING } else { &SIZE_UNKNOWN };
                findings.push(
                    check
                        .at(
                            node.span,
                            format!(
                                "{what} lists {}, but there {}",
                                counted(items.len(), "value"),
                                if sizes.len() == 1 {
                                    "is 1 size".to_owned()
                                } else {
                                    format!("are {} sizes", sizes.len())
                                }
                            ),
                        )
                        .hint(match items.len() > sizes.len() {
                            true => format!(
                                "give one value for each of: {}; a decimal is written with a point, `24.5 cm`",
                                names.join(", ")
                            ),
                            false => format!("give one value for each of: {}", names.join(", ")),
                        }),
                );
                // Which value belongs to which size is anybody's guess.
                return Some(BySize::Each(vec![None; sizes.len()]));
            }
            let mut each: Vec<Option<Expression>> =
                items.iter().take(sizes.len()).map(|item| expression(item, what, findings)).collect();
            each.resize_with(sizes.len(), || None);
            Some(BySize::Each(each))
        }
        Value::Map(entries) => {
            let mut each: Vec<Option<Expression>> = vec![None; sizes.len()];
            let mut covered = vec![false; sizes.len()];
            for (key, value) in entries {
                if let Some(index) = sizes::index(&key.text, key.span, sizes, findings) {
                    covered[index] = true;
                    each[index] = expression(value, what, findings);
                }
            }
            let missing: Vec<&str> = sizes
                .iter()
                .zip(&covered)
                .filter(|(_, covered)| !**covered)
                .map(|(size, _)| size.id.text.as_str())
                .collect();
            if !missing.is_empty() {
                findings.push(
                    SIZE_MISSING
                        .at(node.span, format!("{what} has no value for {}", missing.join(" and ")))
                        .hint(format!("add `{}: …`", missing[0])),
                );
            }
            Some(BySize::Each(each))
        }
    }
}

fn counted(count: usize, thing: &str) -> String {
    if count == 1 { format!("1 {thing}") } else { format!("{count} {thing}s") }
}

/// One formula; anything but a single value is a finding.
pub(super) fn expression(node: &Node, what: &str, findings: &mut Findings) -> Option<Expression> {
    let text: Text = fields::text(node, what, findings)?;
    parse_expression(&text, findings)
}

/// A length under a key of a plain record, in mm; a finding when it is no length above nothing.
pub(super) fn plain_length(node: &Node, key: &str, written: &str, into: &mut Exact, findings: &mut Findings) {
    let Value::Map(entries) = &node.value else { return };
    let span = entries.iter().find(|(name, _)| name.text == key).map_or(node.span, |(_, node)| node.span);
    match read_measure(written) {
        Ok(measure)
            if measure.first.quantity.dimension == Dimension::Length && measure.first.quantity.value.is_positive() =>
        {
            let value = measure.first.quantity.value;
            if (FINEST..=LONGEST).contains(&value) {
                *into = value;
                return;
            }
            findings.push(
                OUT_OF_RANGE
                    .at(span, format!("`{written}` cannot be meant as `{key}`"))
                    .hint("see whether the unit is right: write a length from 0.01 mm to 100 m"),
            );
        }
        _ => findings.push(
            VALUE_UNREADABLE
                .at(span, format!("`{key}` is a length above nothing, not `{written}`"))
                .hint("write a figure with its unit, such as `1 mm` or `1/8 in`"),
        ),
    }
}

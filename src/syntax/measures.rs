//! Values that may differ by size: one formula, a list in the order of the sizes, or a record.

use super::expression::parse_expression;
use super::fields;
use super::sizes;
use super::yaml::{Node, Value};
use crate::diag::Findings;
use crate::faults::{DUPLICATE_KEY, KEY_MISSING, OUT_OF_RANGE, SIZE_MISSING, SIZE_UNKNOWN, VALUE_UNREADABLE};
use crate::measure::{Dimension, Exact, read_measure};
use crate::model::{BySize, Expression, Size, Text, by_view as views, is_for};

/// No ruler shows less, in mm, and no setting can be meant so small.
const FINEST: Exact = Exact::of::<1, 100>();

/// No setting can be meant longer, in mm.
const LONGEST: Exact = Exact::from_integer(100_000);

/// Reads one value or one for each size; `what` names it in messages.
pub(super) fn by_size(node: &Node, what: &str, sizes: &[Size], findings: &mut Findings) -> Option<BySize> {
    by_size_for(node, what, None, sizes, findings)
}

/// The same for something that only some sizes have: the others need no value.
pub(super) fn by_size_for(
    node: &Node,
    what: &str,
    only: Option<&Vec<usize>>,
    sizes: &[Size],
    findings: &mut Findings,
) -> Option<BySize> {
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
            let mut each = vec![None; sizes.len()];
            let all: Vec<usize> = (0..sizes.len()).collect();
            // What some sizes have may be listed for those alone.
            let places = only.filter(|only| only.len() == items.len()).unwrap_or(&all);
            in_order(node, what, places, sizes, &mut each, findings);
            Some(BySize::Each(each))
        }
        Value::Map(_) => {
            let (each, covered, _) = named(node, what, sizes, findings);
            let whole = |at: &usize| is_for(only, *at);
            told_missing(node, what, (0..sizes.len()).filter(whole).filter(|at| !covered[*at]), sizes, findings);
            Some(BySize::Each(each))
        }
    }
}

/// Reads one value or one for each size, which other views may do without; with the sizes that have it, `None`
/// for all.
pub(super) fn by_view(
    node: &Node,
    what: &str,
    sizes: &[Size],
    findings: &mut Findings,
) -> Option<(BySize, Option<Vec<usize>>)> {
    let Value::Map(_) = &node.value else { return Some((by_size(node, what, sizes, findings)?, None)) };
    let (each, covered, whole) = named(node, what, sizes, findings);
    let own = views(sizes).into_iter().filter(|own| own.iter().any(|at| covered[*at]));
    let mut needed: Vec<usize> = own.flatten().collect();
    if needed.is_empty() {
        needed = (0..sizes.len()).collect();
    }
    needed.sort_unstable();
    told_missing(node, what, needed.iter().copied().filter(|at| !covered[*at]), sizes, findings);
    // A size that a name is no word for may be any of the others.
    Some((BySize::Each(each), Some(needed).filter(|needed| whole && needed.len() < sizes.len())))
}

/// The values of a record that names sizes and views, which sizes it covers, and whether it has no name but those.
fn named(
    node: &Node,
    what: &str,
    sizes: &[Size],
    findings: &mut Findings,
) -> (Vec<Option<Expression>>, Vec<bool>, bool) {
    let (mut each, mut covered, mut whole) = (vec![None; sizes.len()], vec![false; sizes.len()], true);
    let Value::Map(entries) = &node.value else { return (each, covered, whole) };
    for (key, value) in entries {
        let Some(places) = sizes::named(&key.text, key.span, sizes, findings) else {
            whole = false;
            continue;
        };
        if let Some(twice) = places.iter().find(|at| covered[**at]) {
            let message = format!("`{}` gives {} a second value", key.text, sizes[*twice].id.text);
            let hint = "name each size once, by itself or by its view";
            findings.push(DUPLICATE_KEY.at(key.span, message).hint(hint));
        }
        places.iter().for_each(|at| covered[*at] = true);
        match &value.value {
            Value::List(_) if places.len() > 1 => in_order(value, what, &places, sizes, &mut each, findings),
            _ => {
                let read = expression(value, what, findings);
                places.iter().for_each(|at| each[*at].clone_from(&read));
            }
        }
    }
    (each, covered, whole)
}

/// The values of a list, one for each of some sizes in their order.
fn in_order(
    node: &Node,
    what: &str,
    places: &[usize],
    sizes: &[Size],
    each: &mut [Option<Expression>],
    findings: &mut Findings,
) {
    let Value::List(items) = &node.value else { return };
    if items.len() == places.len() {
        for (at, item) in places.iter().zip(items) {
            each[*at] = expression(item, what, findings);
        }
        return;
    }
    // Which value belongs to which size is anybody's guess.
    let names: Vec<&str> = places.iter().map(|at| sizes[*at].id.text.as_str()).collect();
    let check = if items.len() < places.len() { &SIZE_MISSING } else { &SIZE_UNKNOWN };
    let there = match places.len() {
        1 => "is 1 size".to_owned(),
        count => format!("are {count} sizes"),
    };
    let point = if items.len() > places.len() { "; a decimal is written with a point, `24.5 cm`" } else { "" };
    let fits = views(sizes).into_iter().find(|own| own.len() == items.len());
    let view = fits.filter(|_| places.len() == sizes.len()).and_then(|own| sizes[own[0]].view.as_ref());
    let or = view.map_or(String::new(), |view| format!("; for one view alone: `{{{}: […]}}`", view.id.text));
    findings.push(
        check
            .at(node.span, format!("{what} lists {}, but there {there}", counted(items.len(), "value")))
            .hint(format!("give one value for each of: {}{or}{point}", names.join(", "))),
    );
}

/// The finding for sizes that a record leaves out.
fn told_missing(
    node: &Node,
    what: &str,
    missing: impl Iterator<Item = usize>,
    sizes: &[Size],
    findings: &mut Findings,
) {
    let missing: Vec<&str> = missing.map(|at| sizes[at].id.text.as_str()).collect();
    if let Some(first) = missing.first() {
        findings.push(
            SIZE_MISSING
                .at(node.span, format!("{what} has no value for {}", missing.join(" and ")))
                .hint(format!("add `{first}: …`")),
        );
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

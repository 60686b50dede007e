//! The two figures of what is bought, or of a temperature or weight, are not the same thing.
//!
//! ## Why it matters
//! A maker buys by one of the two figures. If they differ, half of all makers come home with too little, or with ten times
//! too much.
//!
//! ## Wrong
//! ```yaml
//! fabrics:
//!   outer: {name: Cotton, widths: [110 cm (44 in)], amount: 50 cm (5 yd)}
//! ```
//!
//! ## Right
//! ```yaml
//! fabrics:
//!   outer: {name: Cotton, widths: [110 cm (44 in)], amount: 50 cm (5/8 yd)}
//! ```
//!
//! ## Limits
//! Looks at what fabrics and notions state, also inside a formula such as `stock(…)`, and at temperatures and weights among
//! the measurements. What shops sell is named by round figures, so that 30 cm (12 in) or 3 cm (1 1/4 in) is no fault: two
//! lengths may differ by 6 %, or by 2 mm; cloth by the yard by an eighth of a yard; weights by 15 %; temperatures by 6 °C
//! (common practice, no source). Lengths among the measurements are looked at by `both-systems-disagree`.

use std::ops::Range;

use super::judge::{Judge, Subject};
use crate::diag::{Check, Finding, Findings, Group, Home};
use crate::measure::{Dimension, Exact, Expr, ExprKind, Measure, System, Unit, convert, up_to};
use crate::measure::{NumberStyle, nearest_fraction, show};
use crate::model::{BySize, Expression, Facts};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("pair-differs", Group::Facts, include_str!("pair_differs.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at every pair that is stated.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let facts = &subject.draft.facts;
    let both = facts.show.second.is_some();
    for formula in bought(facts) {
        let pairs = pairs(&formula.formula.root);
        findings.extend(pairs.iter().filter_map(|pair| fault(formula, pair).filter(|_| both)));
    }
    for formula in facts.measurements.iter().flat_map(|measurement| measurement.value.all()) {
        let pairs = pairs(&formula.formula.root);
        let other = |(measure, _): &&(&Measure, Range<usize>)| measure.first.quantity.dimension != Dimension::Length;
        findings.extend(pairs.iter().filter(other).filter_map(|pair| fault(formula, pair).filter(|_| both)));
    }
}

/// Every formula that says how much of something is bought, and how large it is.
fn bought(facts: &Facts) -> impl Iterator<Item = &Expression> {
    let widths = facts.fabrics.iter().flat_map(|fabric| &fabric.widths);
    let amounts = facts.fabrics.iter().filter_map(|fabric| fabric.amount.as_ref()).flat_map(BySize::all);
    let notions = facts.notions.iter().flat_map(|notion| notion.figures.values()).flat_map(BySize::all);
    widths.chain(amounts).chain(notions)
}

/// The figures of a formula that are stated in both systems, each with its place.
fn pairs(root: &Expr) -> Vec<(&Measure, Range<usize>)> {
    let mut found = Vec::new();
    let mut waiting = vec![root];
    while let Some(expr) = waiting.pop() {
        match &expr.kind {
            ExprKind::Literal(measure) if measure.other.is_some() => found.push((measure, expr.range.clone())),
            ExprKind::Literal(_) | ExprKind::Name(_) => {}
            ExprKind::Negate(inner) => waiting.push(inner),
            ExprKind::Binary { left, right, .. } | ExprKind::Compare { left, right, .. } => {
                waiting.extend([&**left, &**right]);
            }
            ExprKind::Call { args: parts, .. } | ExprKind::List(parts) => waiting.extend(parts),
        }
    }
    found
}

fn fault(formula: &Expression, (measure, range): &(&Measure, Range<usize>)) -> Option<Finding> {
    let (first, other) = (measure.first, measure.other?);
    if first.quantity.dimension != other.quantity.dimension {
        return None;
    }
    let apart = first.quantity.value.distance(other.quantity.value)?;
    let yards = [first, other].iter().any(|stated| stated.unit == Unit::Yd);
    let share = |share: Exact| first.quantity.value.abs().checked_mul(share);
    let allowed = match first.quantity.dimension {
        Dimension::Length if yards => share(Exact::of::<6, 100>())?.max(Exact::of::<9144, 80>()),
        Dimension::Length => share(Exact::of::<6, 100>())?.max(Exact::from_integer(2)),
        Dimension::Temperature => Exact::from_integer(6),
        Dimension::Mass => share(Exact::of::<15, 100>())?,
        _ => return None,
    };
    if apart <= allowed {
        return None;
    }
    let told = format!("{first} and {other} are not the same");
    let finding = CHECK.at(formula.source.at(range.clone()), told.replace('\u{a0}', " "));
    let near = near(measure).map_or_else(String::new, |near| format!("{first} is about {near}: "));
    Some(finding.hint(format!("{near}state the pair that is meant").replace('\u{a0}', " ")))
}

/// What the first figure comes to in the unit of the other, as a shop would say it.
fn near(measure: &Measure) -> Option<String> {
    let (first, other) = (measure.first, measure.other?);
    let number = convert(first.quantity, other.unit)?;
    let inches = other.unit == Unit::In;
    if inches {
        return nearest_fraction(first.quantity, Exact::of::<1, 8>()).map(|near| near.to_string());
    }
    let imperial = other.unit.system() == Some(System::Imperial) && other.unit != Unit::Fahrenheit;
    let (step, style) = match imperial {
        true => (Exact::of::<1, 8>(), NumberStyle::Fraction),
        false => (Exact::of::<1, 2>(), NumberStyle::Decimal),
    };
    Some(show(up_to(number, step)?, other.unit, style).to_string())
}

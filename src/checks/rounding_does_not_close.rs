//! A formula no longer holds when a maker works with the rounded figures of one system alone.
//!
//! ## Why it matters
//! Whoever adds up the printed inches of the parts must arrive at the printed inches of the whole,
//! or the last piece does not fit. Each figure may be rounded rightly and their sum still be wrong.
//!
//! ## Wrong
//! ```yaml
//! measurements:
//!   strip: 9 mm
//!   row: strip * 12
//! finished:
//!   Row: row
//! ```
//! …9 mm are shown as ⅜ in, and twelve times that is 4½ in, but the row is shown as 4¼ in.
//!
//! ## Right
//! ```yaml
//! measurements:
//!   strip: 9.5 mm (3/8 in)
//!   row: strip * 12
//! finished:
//!   Row: row
//! ```
//!
//! ## Limits
//! Looks at measurements that are formulas and come to a length, in every size and each system,
//! against the `tolerance` under `show:` (1/8 in unless you say otherwise). Formulas with `stock`,
//! `round`, `up` or `down` are passed over: they jump on purpose.

use super::both_systems_disagree::disagreement;
use super::judge::Judge;
use crate::diag::{Check, Findings, Group, Home};
use crate::measure::{
    Dimension, Exact, Expr, ExprKind, Formula, Lookup, Measure, Names, Outcome, Quantity, System, evaluate,
};
use crate::resolve::{Edition, Worked, in_system, rounded_in};

/// The check.
pub(super) static CHECK: Judge = Judge::edition(
    &Check::error("rounding-does-not-close", Group::Facts, include_str!("rounding_does_not_close.rs"))
        .waivable_in(Home::Facts),
    run,
);

/// Holds each formula against the printed figures of its names, in each system.
pub(super) fn run(edition: &Edition<'_>, findings: &mut Findings) {
    let show = &edition.draft.facts.show;
    let systems = [Some(show.first), show.second];
    for measurement in &edition.draft.facts.measurements {
        let Some(expression) = measurement.value.get(edition.size()) else { continue };
        let Some(worked) = edition.values.get(&measurement.name.text) else { continue };
        let one_figure = expression.formula.as_measure().is_some();
        if one_figure || worked.quantity.dimension != Dimension::Length || jumps(&expression.formula.root) {
            continue;
        }
        if leans_on_a_false_pair(edition, &expression.formula, 0) {
            continue;
        }
        for system in systems.into_iter().flatten() {
            let names = Rounded { edition, system };
            let Ok(Outcome::Quantity(sum)) = evaluate(&expression.formula, &names) else { continue };
            let shown = in_system(&worked, system, show);
            let apart = shown.quantity.value - sum.value;
            if apart <= show.tolerance && -apart <= show.tolerance {
                continue;
            }
            let other = in_system(&Worked { quantity: sum, stated: None }, system, show);
            let name = &measurement.name.text;
            findings.push(
                CHECK.at(
                    expression.span(),
                    format!("`{name}` does not close in {} figures", system.name()),
                )
                .hint(format!(
                    "state the measurements it is made of in both systems so that the figures add up in each; or state `{name}` itself, a pair for each size; or allow more: `show: {{tolerance: 4 mm}}`"
                ))
                .in_size(edition.size(), format!("it is shown as {shown}, but its parts as shown come to {other}").replace('\u{a0}', " ")),
            );
        }
    }
}

/// Whether a formula is made, near or far, of a measurement whose two figures disagree: then that is
/// the fault, and the sum only follows.
fn leans_on_a_false_pair(edition: &Edition<'_>, formula: &Formula, depth: usize) -> bool {
    formula.names().iter().any(|(name, _)| {
        let false_pair =
            edition.values.get(name).is_some_and(|worked| disagreement(&worked, &edition.draft.facts.show).is_some());
        let behind = || edition.values.expression(name).filter(|_| depth < 20);
        false_pair || behind().is_some_and(|inner| leans_on_a_false_pair(edition, &inner.formula, depth + 1))
    })
}

/// Rounding and stocked lengths jump by design: they cannot be expected to close.
fn jumps(expression: &Expr) -> bool {
    match &expression.kind {
        ExprKind::Call { function, args } => {
            matches!(function.as_str(), "stock" | "round" | "up" | "down") || args.iter().any(jumps)
        }
        ExprKind::Negate(inner) => jumps(inner),
        ExprKind::Binary { left, right, .. } | ExprKind::Compare { left, right, .. } => jumps(left) || jumps(right),
        ExprKind::List(items) => items.iter().any(jumps),
        ExprKind::Literal(_) | ExprKind::Name(_) => false,
    }
}

/// The world of a maker who knows one system only.
struct Rounded<'a> {
    edition: &'a Edition<'a>,
    system: System,
}

impl Names for Rounded<'_> {
    fn value(&self, name: &str) -> Lookup {
        match self.edition.values.get(name) {
            Some(worked) => Lookup::Found(rounded_in(&worked, self.system, &self.edition.draft.facts.show)),
            None => Lookup::Broken,
        }
    }

    fn figure(&self, measure: &Measure) -> Quantity {
        let worked = Worked { quantity: measure.first.quantity, stated: Some(*measure) };
        match measure.first.quantity.dimension {
            Dimension::Length if measure.first.quantity.value != Exact::from_integer(0) => {
                rounded_in(&worked, self.system, &self.edition.draft.facts.show)
            }
            _ => measure.first.quantity,
        }
    }
}

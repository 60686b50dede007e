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
//!   Strip: strip
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
//!   Strip: strip
//!   Row: row
//! ```
//!
//! ## Limits
//! Looks at measurements that are formulas and come to a length, in every size and each system,
//! against the `tolerance` under `show:` (1/8 in unless you say otherwise), where the whole and every
//! length that it is made of are printed: in words, tables, work or diagrams. Lengths that only the drafting
//! uses are nobody's to add up. Formulas with `stock`, `round`, `up` or `down` are passed over: they jump on
//! purpose.

use std::collections::BTreeMap;

use super::apart::Told;
use super::both_systems_disagree::disagreement;
use super::judge::{Judge, Subject};
use super::printed::is_shown;
use crate::diag::{Check, Finding, Findings, Group, Home};
use crate::faults::NUMBER_TOO_LARGE;
use crate::measure::{
    Dimension, Expr, ExprKind, Formula, Lookup, Measure, Names, Outcome, ProblemKind, Quantity, System, evaluate,
};
use crate::model::Expression;
use crate::resolve::{Edition, Uses, Worked, in_system, rounded_in};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("rounding-does-not-close", Group::Facts, include_str!("rounding_does_not_close.rs"))
        .waivable_in(Home::Facts),
    run,
);

/// Holds each formula against the printed figures of its names, in each size and each system.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    for edition in subject.editions {
        let drawn = subject.figures.uses.get(&edition.size());
        let printed: Vec<&Uses> = std::iter::once(&edition.uses).chain(drawn).collect();
        one_size(edition, &printed, findings);
    }
}

fn one_size(edition: &Edition<'_>, printed: &[&Uses], findings: &mut Findings) {
    let show = &edition.draft.facts.show;
    let mut pairs = Pairs { edition, known: BTreeMap::new() };
    for measurement in &edition.draft.facts.measurements {
        let Some(expression) = measurement.value.get(edition.size()) else { continue };
        let Some(worked) = edition.values.get(&measurement.name.text) else { continue };
        let one_figure = expression.formula.as_measure().is_some();
        if one_figure || worked.quantity.dimension != Dimension::Length || jumps(&expression.formula.root) {
            continue;
        }
        let name = &measurement.name.text;
        if !is_shown(edition, printed, name) || !parts_are_shown(edition, printed, &expression.formula) {
            continue;
        }
        if pairs.any_false(&expression.formula) {
            continue;
        }
        for system in [Some(show.first), show.second].into_iter().flatten() {
            let found = finding(edition, name, expression, &worked, system);
            findings.extend(found);
        }
    }
}

/// Whether every length in a formula is one that the maker sees.
fn parts_are_shown(edition: &Edition<'_>, printed: &[&Uses], formula: &Formula) -> bool {
    formula.names().into_iter().all(|(name, _)| {
        let value = edition.values.get(name);
        let length = value.is_some_and(|worked| worked.quantity.dimension == Dimension::Length);
        !length || is_shown(edition, printed, name)
    })
}

/// The finding on one formula in one system; `None` when it closes.
fn finding(
    edition: &Edition<'_>,
    name: &str,
    expression: &Expression,
    worked: &Worked,
    system: System,
) -> Option<Finding> {
    let show = &edition.draft.facts.show;
    let too_large = || {
        NUMBER_TOO_LARGE
            .at(
                expression.span(),
                format!("`{name}` is too large, or too finely divided, to be added up in {} figures", system.name()),
            )
            .hint("use smaller numbers, or round a part of the formula: round(x, 1 mm)")
            .in_size(edition.size(), "")
    };
    let sum = match evaluate(&expression.formula, &Rounded { edition, system }) {
        Ok(Outcome::Quantity(sum)) => sum,
        Err(problems) if problems.iter().any(|problem| problem.kind == ProblemKind::Overflow) => {
            return Some(too_large());
        }
        Ok(_) | Err(_) => return None,
    };
    let shown = in_system(worked, system, show);
    let Some(apart) = shown.quantity.value.distance(sum.value) else { return Some(too_large()) };
    if apart <= show.tolerance {
        return None;
    }
    let other = in_system(&Worked { quantity: sum, stated: None }, system, show);
    let told = Told::from(shown.to_string(), other.to_string(), [shown.quantity, sum], system);
    let words = format!("it is shown as {}, but its parts as shown come to {}{}", told.one, told.other, told.apart);
    let finding = CHECK.at(expression.span(), format!("`{name}` does not close in {} figures", system.name())).hint(
        format!(
            "state the measurements it is made of in both systems so that the figures add up in each; or state `{name}` itself, a pair for each size; or allow more: `show: {{tolerance: 4 mm}}`"
        ),
    );
    Some(finding.in_size(edition.size(), words))
}

/// Which names are made, near or far, of a measurement whose two figures disagree: then that is the
/// fault, and a sum only follows. Formulas share their parts, so each name is looked through once.
struct Pairs<'a> {
    edition: &'a Edition<'a>,
    known: BTreeMap<String, bool>,
}

impl Pairs<'_> {
    fn any_false(&mut self, formula: &Formula) -> bool {
        formula.names().into_iter().any(|(name, _)| self.is_false(name))
    }

    fn is_false(&mut self, name: &str) -> bool {
        if let Some(known) = self.known.get(name) {
            return *known;
        }
        // A ring of formulas is told elsewhere; here it only has to end.
        self.known.insert(name.to_owned(), false);
        let (values, show) = (&self.edition.values, &self.edition.draft.facts.show);
        let own = values.get(name).is_some_and(|worked| disagreement(&worked, show).is_some());
        let found = own || values.expression(name).is_some_and(|behind| self.any_false(&behind.formula));
        self.known.insert(name.to_owned(), found);
        found
    }
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
            Dimension::Length if !measure.first.quantity.value.is_zero() => {
                rounded_in(&worked, self.system, &self.edition.draft.facts.show)
            }
            _ => measure.first.quantity,
        }
    }
}

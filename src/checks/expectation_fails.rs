//! Something that must hold does not.
//!
//! ## Why it matters
//! You know what must hold, that the zip is longer than the opening, say, and wrote it under
//! `expect:`. In some size it does not, and that size cannot be sewn as the words say.
//!
//! ## Wrong
//! ```yaml
//! expect:
//!   - that: width > 18 cm
//!     because: a pencil must fit in
//! ```
//!
//! ## Right
//! ```yaml
//! expect:
//!   - that: width >= 15 cm
//!     because: a pencil must fit in
//! ```
//!
//! ## Limits
//! Held against the exact figures, before any rounding. The finding says for each size what the two
//! sides come to.

use super::judge::Judge;
use crate::diag::{Check, Findings, Group, Home};
use crate::measure::{Expr, ExprKind, Formula, Outcome, evaluate};
use crate::resolve::{Edition, Worked};

/// The check.
pub(super) static CHECK: Judge = Judge::edition(
    &Check::error("expectation-fails", Group::Facts, include_str!("expectation_fails.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at every expectation in one size.
pub(super) fn run(edition: &Edition<'_>, findings: &mut Findings) {
    for (expectation, holds) in &edition.expectations {
        if *holds != Some(false) {
            continue;
        }
        let because = expectation.because.as_ref().map_or("", |because| because.text.as_str());
        let text = expectation.that.formula.text.trim();
        let hint = if because.is_empty() {
            "change a measurement so that it holds, or mend the expectation".to_owned()
        } else {
            format!("it must hold because {because}; change a measurement so that it does")
        };
        findings.push(
            CHECK
                .at(expectation.that.span(), format!("`{text}` does not hold"))
                .hint(hint)
                .in_size(edition.size(), sides(edition, &expectation.that.formula)),
        );
    }
}

/// What the two sides come to.
fn sides(edition: &Edition<'_>, formula: &Formula) -> String {
    let ExprKind::Compare { left, right, .. } = &formula.root.kind else { return String::new() };
    let side = |expression: &Expr| -> Option<String> {
        let part = Formula { text: formula.text.clone(), root: expression.clone() };
        match evaluate(&part, edition.values) {
            Ok(Outcome::Quantity(quantity)) => {
                Some(edition.figures(&Worked { quantity, stated: None }).first.to_string().replace('\u{a0}', " "))
            }
            _ => None,
        }
    };
    match (side(left), side(right)) {
        (Some(left), Some(right)) => format!("{left} against {right}"),
        _ => String::new(),
    }
}

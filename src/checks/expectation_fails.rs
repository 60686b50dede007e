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

use super::apart::Told;
use super::judge::Judge;
use crate::diag::{Check, Findings, Group, Home};
use crate::measure::{Expr, ExprKind, Formula, Outcome, evaluate};
use crate::resolve::Edition;

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
    let side = |expression: &Expr| {
        let part = Formula { text: formula.text.clone(), root: expression.clone() };
        match evaluate(&part, &edition.values) {
            Ok(Outcome::Quantity(quantity)) => Some(quantity),
            _ => None,
        }
    };
    let (Some(left), Some(right)) = (side(left), side(right)) else { return String::new() };
    let told = Told::of(edition, left, right);
    if left == right {
        return format!("both come to {}", told.one);
    }
    format!("{} against {}{}", told.one, told.other, told.apart)
}

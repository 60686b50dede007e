//! An expectation can never fail, or says again what another one says.
//!
//! ## Why it matters
//! An expectation is a guard. One that holds whatever anybody writes guards nothing, and everybody believes that the
//! matter is looked after.
//!
//! ## Wrong
//! ```yaml
//! expect:
//!   - that: width >= width
//!     because: the zip must be as long as the opening
//! ```
//!
//! ## Right
//! ```yaml
//! expect:
//!   - that: width >= height
//!     because: the zip stands on the long side
//! ```
//!
//! ## Limits
//! Speaks up where both sides are the same formula, where two figures are compared, and where two expectations of the
//! same sizes are one, written either way round, or one of two fixed bounds lies beyond the other. A name whose value is
//! another name counts as that one. What follows only from the present formulas, such as `cut_width > width`, is a guard
//! worth having.

use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group, Home};
use crate::measure::{Comparison, Exact, Expr, ExprKind, Operator};
use crate::model::{Expectation, is_for};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("expectation-idle", Group::Facts, include_str!("expectation_idle.rs")).waivable_in(Home::Facts),
    run,
);

/// A comparison as one way round of it: the smaller side first.
struct Guard<'a> {
    expectation: &'a Expectation,
    small: String,
    great: String,
    /// Whether both sides may be equal, and whether they must be.
    may: bool,
    must: bool,
    fixed: [Option<Exact>; 2],
    names: bool,
}

/// Looks at every expectation, and at every two.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let facts = &subject.draft.facts;
    let guards: Vec<Guard<'_>> = facts.expect.iter().filter_map(|one| guard(one, subject)).collect();
    for (at, guard) in guards.iter().enumerate() {
        if fails(guard.expectation, subject) {
            continue;
        }
        let span = guard.expectation.that.span();
        let alike = guard.small == guard.great && guard.may && guard.names;
        let figures = guard.fixed.iter().all(Option::is_some) && !guard.must;
        if alike || figures {
            let why = if alike { "both sides are the same" } else { "it holds two figures and names nothing" };
            findings.push(
                CHECK
                    .at(span, format!("this expectation can never fail: {why}"))
                    .hint("name what has to hold in it, such as `zip.length >= opening`, or take it out"),
            );
            continue;
        }
        let others = guards.iter().enumerate().filter(|(other, _)| *other != at);
        let by = others.into_iter().find(|(other, one)| {
            covers(one, guard, facts.sizes.len()) && (*other < at || !covers(guard, one, facts.sizes.len()))
        });
        if let Some((_, by)) = by {
            findings.push(
                CHECK
                    .at(span, "this expectation can never fail where another one holds")
                    .hint("take it out, or mend the figure that is wrong")
                    .note(by.expectation.that.span(), "the other one"),
            );
        }
    }
}

/// Whether it fails in some size, which is told by a check of its own.
fn fails(expectation: &Expectation, subject: &Subject<'_>) -> bool {
    let own = subject.editions.iter().flat_map(|edition| &edition.expectations);
    own.into_iter().any(|(one, holds)| std::ptr::eq(*one, expectation) && *holds != Some(true))
}

/// Whether one guard, where it holds, leaves nothing to another.
fn covers(one: &Guard<'_>, other: &Guard<'_>, sizes: usize) -> bool {
    let everywhere = (0..sizes).filter(|size| is_for(other.expectation.sizes.as_ref(), *size));
    if !everywhere.into_iter().all(|size| is_for(one.expectation.sizes.as_ref(), size)) || one.must != other.must {
        return false;
    }
    if one.small == other.small && one.great == other.great {
        return other.may || !one.may;
    }
    // `x <= 3 cm` leaves nothing to `x <= 4 cm`, nor `x >= 4 cm` to `x >= 3 cm`.
    let beyond = |near: Option<Exact>, far: Option<Exact>| near.zip(far).is_some_and(|(near, far)| near < far);
    let bounds = one.small == other.small && beyond(one.fixed[1], other.fixed[1])
        || one.great == other.great && beyond(other.fixed[0], one.fixed[0]);
    bounds && !one.must
}

fn guard<'a>(expectation: &'a Expectation, subject: &Subject<'a>) -> Option<Guard<'a>> {
    let size = (0..subject.editions.len()).find(|size| is_for(expectation.sizes.as_ref(), *size))?;
    let edition = &subject.editions[size];
    let ExprKind::Compare { op, left, right } = &expectation.that.formula.root.kind else { return None };
    let (mut small, mut great) = (left, right);
    if matches!(op, Comparison::AtLeast | Comparison::Greater) {
        (small, great) = (right, left);
    }
    let mut sides = [plain(small, edition, 0), plain(great, edition, 0)];
    let must = *op == Comparison::Equal;
    if must {
        sides.sort();
    }
    let [first, second] = sides;
    Some(Guard {
        expectation,
        small: first,
        great: second,
        may: !matches!(op, Comparison::Less | Comparison::Greater),
        must,
        fixed: [fixed(small), fixed(great)],
        names: !expectation.that.formula.names().is_empty(),
    })
}

fn fixed(expr: &Expr) -> Option<Exact> {
    match &expr.kind {
        ExprKind::Literal(measure) => Some(measure.first.quantity.value),
        _ => None,
    }
}

/// A formula in one way of writing: names led to what they stand for, sums and products in one order.
fn plain(expr: &Expr, edition: &Edition<'_>, deep: usize) -> String {
    let below = |expr: &Expr| plain(expr, edition, deep + 1);
    let all = |parts: &[Expr]| parts.iter().map(below).collect::<Vec<_>>().join(",");
    match &expr.kind {
        ExprKind::Literal(measure) => {
            let quantity = measure.first.quantity;
            format!("{:?}{}/{}", quantity.dimension, quantity.value.numer(), quantity.value.denom())
        }
        ExprKind::Name(name) => match edition.values.expression(name).map(|formula| &formula.formula.root) {
            Some(root) if matches!(root.kind, ExprKind::Name(_)) && deep < 40 => below(root),
            _ => name.clone(),
        },
        ExprKind::Negate(inner) => format!("-({})", below(inner)),
        ExprKind::Binary { op, left, right } => {
            let mut sides = [below(left), below(right)];
            if matches!(op, Operator::Add | Operator::Multiply) {
                sides.sort();
            }
            format!("({} {op:?} {})", sides[0], sides[1])
        }
        ExprKind::Compare { op, left, right } => format!("({} {op:?} {})", below(left), below(right)),
        ExprKind::Call { function, args } => format!("{function}({})", all(args)),
        ExprKind::List(parts) => format!("[{}]", all(parts)),
    }
}

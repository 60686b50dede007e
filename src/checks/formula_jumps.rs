//! A formula, or an edge drawn by formulas, leaves the family in one size, though nothing that it is made of does.
//!
//! ## Why it matters
//! A rule that takes over in one size alone gives it an armhole or a side that no other has. Every figure that is stated looks
//! right, and the piece is cut wrong.
//!
//! ## Wrong
//! ```yaml
//! sizes: {a: A, b: B, c: C, d: D}
//! measurements:
//!   width: [10 cm (4 in), 12.5 cm (5 in), 15 cm (6 in), 17.5 cm (7 in)]
//!   height: "max(width / 2 + 5 cm (2 in), width * 3 - 35 cm (14 in))"
//! fabrics:
//!   outer: {name: Cotton, widths: [110 cm]}
//! ```
//!
//! ## Right
//! ```yaml
//! sizes: {a: A, b: B, c: C, d: D}
//! measurements:
//!   width: [10 cm (4 in), 12.5 cm (5 in), 15 cm (6 in), 17.5 cm (7 in)]
//!   height: width / 2 + 5 cm (2 in)
//! fabrics:
//!   outer: {name: Cotton, widths: [110 cm]}
//! ```
//!
//! ## Limits
//! Looks at lengths with one formula for all sizes and at the edges of outlines that formulas draw, over four sizes or more;
//! children's and adults' sizes by themselves. Told is a step more than twice as long as its other steps, which are equal to
//! a quarter, while no stated row takes such a step there. A formula that rounds, or follows the lengths of shops, is passed
//! over, and so is what only follows from a formula that is told. Common practice, no source.

use std::collections::BTreeSet;

use super::judge::{Judge, Subject};
use super::rows::{graded, rows};
use super::words::length;
use crate::diag::{Check, Finding, Findings, Group, Home};
use crate::measure::{Dimension, Expr, ExprKind, to_f64};
use crate::model::{BySize, Expression, Outline};
use crate::resolve::PieceId;
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("formula-jumps", Group::Facts, include_str!("formula_jumps.rs")).waivable_in(Home::Facts),
    run,
);

/// Functions that step by themselves.
const STEPPING: [&str; 4] = ["round", "up", "down", "stock"];
/// What is a matter of rounding, in mm.
const LEAST: f64 = 5.0;
/// How many times the usual step one is far.
const FAR: f64 = 2.2;
/// How many times its usual step a stated row steps that explains a long one.
const EXPLAINS: f64 = 1.6;

/// Looks along every formula and every edge, over sizes that are graded from one another.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    for sizes in graded(&subject.draft.facts.sizes).into_iter().filter(|sizes| sizes.len() > 3) {
        let stated: Vec<Vec<f64>> = rows(subject).iter().filter_map(|row| row.over(&sizes)).collect();
        let explained = |at: usize| stated.iter().any(|row| share(&steps(row), at) > EXPLAINS);
        let mut told: BTreeSet<&str> = BTreeSet::new();
        for measurement in &subject.draft.facts.measurements {
            let BySize::Same(formula) = &measurement.value else { continue };
            let name = measurement.name.text.as_str();
            let follows = leans(subject, formula).iter().any(|own| told.contains(own) && *own != name);
            let values = sizes.iter().map(|size| {
                let worked = subject.editions[*size].values.quiet(formula)?;
                (worked.quantity.dimension == Dimension::Length).then(|| to_f64(worked.quantity.value))
            });
            let Some(values) = values.collect::<Option<Vec<f64>>>() else { continue };
            let Some(at) = jump(&values).filter(|at| !explained(*at) && !follows && !rounds(subject, formula)) else {
                continue;
            };
            told.insert(name);
            findings.push(finding(subject, &sizes, &values, at, (&format!("`{name}`"), formula.span())));
        }
        if told.is_empty() {
            edges(subject, &sizes, &explained, findings);
        }
    }
}

/// The edges of outlines that formulas draw.
fn edges(subject: &Subject<'_>, sizes: &[usize], explained: &dyn Fn(usize) -> bool, findings: &mut Findings) {
    for (id, piece) in PieceId::each(&subject.draft.facts.pieces) {
        let Some(Outline::Path(segments)) = &piece.outline else { continue };
        for segment in segments {
            let edge = |size: &usize| {
                let shape = subject.editions[*size].values.shape(id)?;
                shape.edges().iter().find(|edge| edge.name == segment.name.text).map(|edge| edge.length)
            };
            let Some(values) = sizes.iter().map(edge).collect::<Option<Vec<f64>>>() else { continue };
            let rounded = segment.to.iter().flat_map(|(across, down)| [across, down]).any(|one| rounds(subject, one));
            if let Some(at) = jump(&values).filter(|at| !explained(*at) && !rounded) {
                let name = format!("the edge `{}.{}`", piece.id.text, segment.name.text);
                findings.push(finding(subject, sizes, &values, at, (&name, segment.name.span)));
                // What one corner moves, its neighbours follow.
                break;
            }
        }
    }
}

fn finding(subject: &Subject<'_>, sizes: &[usize], values: &[f64], at: usize, (name, place): (&str, Span)) -> Finding {
    let id = |size: usize| &subject.draft.facts.sizes[size].id.text;
    let one = |(size, value): (&usize, &f64)| format!("{} {}", id(*size), length(&subject.editions[*size], *value));
    let side_by_side: Vec<String> = sizes.iter().zip(values).map(one).collect();
    let size = sizes[at + 1];
    CHECK
        .at(place, format!("{name} leaves the family in {}, though nothing that is stated does", id(size)))
        .label(side_by_side.join(", "))
        .hint("see whether another rule takes over there; if it is meant, waive it and say why")
        .in_size(size, "")
}

/// The step that is far longer than all others, which are as good as equal.
fn jump(values: &[f64]) -> Option<usize> {
    let steps = steps(values);
    (0..steps.len()).find(|at| {
        let rest: Vec<f64> = steps.iter().enumerate().filter(|(step, _)| step != at).map(|(_, step)| *step).collect();
        let (least, most) =
            rest.iter().fold((f64::MAX, f64::MIN), |(least, most), step| (least.min(*step), most.max(*step)));
        let even = most.abs().max(least.abs()) > 0.0 && most - least <= 0.25 * most.abs().max(least.abs());
        even && share(&steps, *at) > FAR && (steps[*at] - most).abs() >= LEAST
    })
}

/// How many times the others' mean a step is; a step the other way counts as far.
fn share(steps: &[f64], at: usize) -> f64 {
    let others = steps.iter().enumerate().filter(|(step, _)| *step != at).map(|(_, step)| *step);
    let mean = others.sum::<f64>() / (steps.len() - 1).max(1) as f64;
    if mean == 0.0 { if steps[at] == 0.0 { 0.0 } else { f64::MAX } } else { (steps[at] / mean).abs() }
}

fn steps(values: &[f64]) -> Vec<f64> {
    values.windows(2).map(|two| two[1] - two[0]).collect()
}

/// Every measurement that a formula is made of, itself or by others.
fn leans<'a>(subject: &'a Subject<'_>, formula: &'a Expression) -> BTreeSet<&'a str> {
    let mut found: BTreeSet<&str> = BTreeSet::new();
    let mut waiting: Vec<&Expression> = vec![formula];
    while let Some(next) = waiting.pop() {
        for (name, _) in next.formula.names() {
            let own = subject.draft.facts.measurements.iter().find(|one| one.name.text == name);
            let Some(own) = own.filter(|own| found.insert(&own.name.text)) else { continue };
            waiting.extend(own.value.all());
        }
    }
    found
}

/// Whether a formula, or one that it is made of, steps by itself.
fn rounds(subject: &Subject<'_>, formula: &Expression) -> bool {
    let facts = &subject.draft.facts;
    let named = leans(subject, formula);
    let made_of = facts.measurements.iter().filter(|one| named.contains(one.name.text.as_str()));
    let all = made_of.flat_map(|one| one.value.all()).chain([formula]);
    all.into_iter().any(|formula| steps_by_itself(&formula.formula.root))
}

fn steps_by_itself(expr: &Expr) -> bool {
    match &expr.kind {
        ExprKind::Literal(_) | ExprKind::Name(_) => false,
        ExprKind::Negate(inner) => steps_by_itself(inner),
        ExprKind::Binary { left, right, .. } | ExprKind::Compare { left, right, .. } => {
            steps_by_itself(left) || steps_by_itself(right)
        }
        ExprKind::Call { function, args } => STEPPING.contains(&function.as_str()) || args.iter().any(steps_by_itself),
        ExprKind::List(parts) => parts.iter().any(steps_by_itself),
    }
}

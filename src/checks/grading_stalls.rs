//! A measurement is the same in two sizes while everything beside it grows.
//!
//! ## Why it matters
//! A value that was copied and never changed gives one size the width of its neighbour. Each piece by itself looks right,
//! and only the maker of that size finds out that the thing does not fit.
//!
//! ## Wrong
//! ```yaml
//! sizes: {small: Small, medium: Medium, large: Large}
//! measurements:
//!   seam: 1 cm (3/8 in)
//!   width: [15 cm (5 7/8 in), 18 cm (7 1/8 in), 18 cm (7 1/8 in)]
//!   height: [12 cm (4 3/4 in), 13 cm (5 1/8 in), 14 cm (5 1/2 in)]
//! body:
//!   Hand: [8 cm (3 1/8 in), 9 cm (3 1/2 in), 10 cm (4 in)]
//!   Wrist: [15 cm (5 7/8 in), 16 cm (6 1/4 in), 17 cm (6 3/4 in)]
//! fabrics:
//!   outer: {name: Cotton, widths: [110 cm]}
//! ```
//!
//! ## Right
//! ```yaml
//! sizes: {small: Small, medium: Medium, large: Large}
//! measurements:
//!   seam: 1 cm (3/8 in)
//!   width: [15 cm (5 7/8 in), 18 cm (7 1/8 in), 21 cm (8 1/4 in)]
//!   height: [12 cm (4 3/4 in), 13 cm (5 1/8 in), 14 cm (5 1/2 in)]
//! body:
//!   Hand: [8 cm (3 1/8 in), 9 cm (3 1/2 in), 10 cm (4 in)]
//!   Wrist: [15 cm (5 7/8 in), 16 cm (6 1/4 in), 17 cm (6 3/4 in)]
//! fabrics:
//!   outer: {name: Cotton, widths: [110 cm]}
//! ```
//!
//! ## Limits
//! Looks at lengths that state a value for each of three sizes or more, children's and adults' by themselves. Speaks up
//! where a row stands still once and its own steps are equal elsewhere, or all other rows grow there: three or more of them,
//! or fewer where this row grows like them at the other sizes, or by two of its steps beside. A row that stands still more
//! than once is made so. Counts are looked at only where what is expected of them (`expect:`) does not hold. Common practice, no source.

use super::grading::{Odd, grows, odd};
use super::judge::{Judge, Subject};
use super::rows::{Row, graded, rows};
use crate::diag::{Check, Findings, Group, Home};
use crate::measure::Dimension;
use crate::model::{BySize, by_view};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("grading-stalls", Group::Facts, include_str!("grading_stalls.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks along every row.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    each_odd(subject, &mut |row, sizes, odd| {
        let Odd::Stalls(at) = odd else { return };
        let ids = [at - 1, at].map(|at| subject.draft.facts.sizes[sizes[at]].id.text.as_str());
        findings.push(
            CHECK
                .at(
                    row.at(sizes[at]),
                    format!("{} is the same in {} and {}, where the others grow", row.name, ids[0], ids[1]),
                )
                .label(row.side_by_side(subject, sizes))
                .hint("see whether a value was copied; if it is meant, waive it and say why")
                .in_size(sizes[at], ""),
        );
    });
    counts(subject, findings);
}

/// Counts that stand still where all lengths grow, and for which an expectation that names them does not hold.
fn counts(subject: &Subject<'_>, findings: &mut Findings) {
    let rows = rows(subject);
    for measurement in &subject.draft.facts.measurements {
        let BySize::Each(_) = &measurement.value else { continue };
        let name = measurement.name.text.as_str();
        for two in graded(&subject.draft.facts.sizes).iter().flat_map(|sizes| sizes.windows(2)) {
            let [before, here] = [two[0], two[1]];
            let value = |size: usize| {
                let worked = subject.editions[size].values.quiet(measurement.value.get(size)?)?;
                (worked.quantity.dimension == Dimension::Count).then_some(worked.quantity.value)
            };
            let lengths: Vec<Vec<f64>> =
                rows.iter().filter(|row| !row.bought).filter_map(|row| row.over(&[before, here])).collect();
            let grow = !lengths.is_empty() && lengths.iter().all(|both| both[1] > both[0]);
            let fails = subject.editions[here].expectations.iter().any(|(expected, holds)| {
                *holds == Some(false) && expected.that.formula.names().iter().any(|(own, _)| *own == name)
            });
            if value(before).is_none() || value(before) != value(here) || !grow || !fails {
                continue;
            }
            let ids = [before, here].map(|size| subject.draft.facts.sizes[size].id.text.as_str());
            let place = measurement.value.get(here).map_or(measurement.name.span, |formula| formula.span());
            findings.push(
                CHECK
                    .at(place, format!("`{name}` is the same in {} and {}, where the others grow", ids[0], ids[1]))
                    .hint("see whether a value was copied: what is expected of it does not hold here")
                    .in_size(here, ""),
            );
        }
    }
}

/// Calls `see` with every row that is odd, the sizes that are graded from one another, and what is odd.
pub(super) fn each_odd(subject: &Subject<'_>, see: &mut dyn FnMut(&Row, &[usize], Odd)) {
    let rows = rows(subject);
    let sizes = &subject.draft.facts.sizes;
    let groups = graded(sizes);
    // Children's and adults' sizes follow each other: what stands still among the last two shows over all of them.
    let whole = by_view(sizes).into_iter().filter(|view| view.len() > 2 && !groups.contains(view));
    for (sizes, mixed) in groups.iter().cloned().map(|group| (group, false)).chain(whole.map(|view| (view, true))) {
        for (at, row) in rows.iter().enumerate() {
            // A measurement that is bought by and grows with the sizes tells of them as well.
            let tells = |row: &Row| !row.bought || (row.named && row.over(&sizes).is_some_and(|all| grows(&all)));
            let others = rows.iter().enumerate().filter(|(other, row)| *other != at && tells(row));
            let others: Vec<Vec<f64>> = others.filter_map(|(_, other)| other.over(&sizes)).collect();
            let Some(odd) = odd(row, &sizes, &others) else { continue };
            let within = |at: usize| {
                let own = groups.iter().find(|group| group.contains(&sizes[at - 1]));
                own.is_some_and(|group| group.len() == 2 && group.contains(&sizes[at]))
            };
            if !mixed || matches!(odd, Odd::Stalls(at) if within(at)) {
                see(row, &sizes, odd);
            }
        }
    }
}

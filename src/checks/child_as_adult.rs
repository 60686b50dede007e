//! A child's size has the measurement of an adult's, where everything else is smaller.
//!
//! ## Why it matters
//! A value that was copied across from the adults gives a child a strap or a neck far too long, which is more than a bad
//! fit: it can catch and strangle.
//!
//! ## Wrong
//! ```yaml
//! sizes: {little: {name: Little, wearer: child}, large: {name: Large, wearer: adult}}
//! measurements:
//!   seam: 1 cm (3/8 in)
//!   width: [15 cm (5 7/8 in), 20 cm (7 7/8 in)]
//!   height: [15 cm (5 7/8 in), 15 cm (5 7/8 in)]
//! body:
//!   Hand: [6 cm (2 3/8 in), 9 cm (3 1/2 in)]
//!   Wrist: [12 cm (4 3/4 in), 17 cm (6 3/4 in)]
//! fabrics:
//!   outer: {name: Cotton, widths: [110 cm]}
//! ```
//!
//! ## Right
//! ```yaml
//! sizes: {little: {name: Little, wearer: child}, large: {name: Large, wearer: adult}}
//! measurements:
//!   seam: 1 cm (3/8 in)
//!   width: [15 cm (5 7/8 in), 20 cm (7 7/8 in)]
//!   height: [12 cm (4 3/4 in), 15 cm (5 7/8 in)]
//! body:
//!   Hand: [6 cm (2 3/8 in), 9 cm (3 1/2 in)]
//!   Wrist: [12 cm (4 3/4 in), 17 cm (6 3/4 in)]
//! fabrics:
//!   outer: {name: Cotton, widths: [110 cm]}
//! ```
//!
//! ## Limits
//! Looks at lengths that state a value for each size, in a booklet (or a view) with sizes for children and for adults.
//! Speaks up where a child's value is that of an adult's size, or greater, and three other rows or more are all smaller
//! there. A value that is the same for all is not looked at. Common practice, no source.

use super::judge::{Judge, Subject};
use super::rows::{Row, rows};
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{Wearer, by_view};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("child-as-adult", Group::Facts, include_str!("child_as_adult.rs")).waivable_in(Home::Facts),
    run,
);

/// Holds every child's size against every adult's of its view.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let sizes = &subject.draft.facts.sizes;
    let rows: Vec<Row> = rows(subject).into_iter().filter(|row| !row.bought).collect();
    for view in by_view(sizes) {
        let (children, adults): (Vec<usize>, Vec<usize>) =
            view.iter().copied().partition(|size| sizes[*size].wearer == Wearer::Child);
        for child in &children {
            for (at, row) in rows.iter().enumerate() {
                let as_large = |adult: &&usize| row.over(&[*child, **adult]).is_some_and(|two| two[0] >= two[1]);
                let others = |adult: usize| {
                    let others = rows.iter().enumerate().filter(|(other, _)| *other != at);
                    let both: Vec<Vec<f64>> = others.filter_map(|(_, other)| other.over(&[*child, adult])).collect();
                    both.len() >= 3 && both.iter().all(|two| two[0] < two[1])
                };
                let adult = adults.iter().find(as_large).copied().filter(|adult| others(*adult));
                if let Some(adult) = adult.filter(|_| !is_flat(row, &view)) {
                    findings.push(
                        CHECK
                            .at(
                                row.at(*child),
                                format!(
                                    "{} is as large in {}, which is for a child, as in {}",
                                    row.name, sizes[*child].id.text, sizes[adult].id.text
                                ),
                            )
                            .label(row.side_by_side(subject, &view))
                            .hint("see whether the value was copied; if it is meant, waive it and say why")
                            .in_size(*child, ""),
                    );
                }
            }
        }
    }
}

/// Whether a row is the same in all sizes, of which there are more than two.
fn is_flat(row: &Row, view: &[usize]) -> bool {
    let all = row.over(view).unwrap_or_default();
    all.len() > 2 && all.iter().all(|value| (value - all[0]).abs() < f64::EPSILON)
}

//! A measurement leaves the family: from one size to the next it takes a step far from all others.
//!
//! ## Why it matters
//! Sizes are graded by steps that hardly change. A step three times as long is most often a slip of one digit, and the
//! size that it belongs to is cut wrong in all its pieces.
//!
//! ## Wrong
//! ```yaml
//! sizes: {a: A, b: B, c: C, d: D}
//! measurements:
//!   seam: 1 cm (3/8 in)
//!   width: [12 cm (4 3/4 in), 14 cm (5 1/2 in), 16 cm (6 1/4 in), 23 cm (9 in)]
//!   height: 12 cm (4 3/4 in)
//! fabrics:
//!   outer: {name: Cotton, widths: [110 cm]}
//! ```
//!
//! ## Right
//! ```yaml
//! sizes: {a: A, b: B, c: C, d: D}
//! measurements:
//!   seam: 1 cm (3/8 in)
//!   width: [12 cm (4 3/4 in), 14 cm (5 1/2 in), 16 cm (6 1/4 in), 18 cm (7 1/8 in)]
//!   height: 12 cm (4 3/4 in)
//! fabrics:
//!   outer: {name: Cotton, widths: [110 cm]}
//! ```
//!
//! ## Limits
//! Looks at lengths that state a value for each of three sizes or more, and at edges drawn for each size; children's and
//! adults' sizes by themselves. A step is far where the row's other steps, two at the least, are equal to a quarter, and it
//! is more than twice or less than a quarter of them, unless other rows take such a step there; a value between two others
//! where it lies by nearly half a step from their middle; in a row of three where three other rows share their growth
//! out alike and it does not, or where all others take even steps and one of its own is two and a half times the other. A
//! value that falls where all others grow is told too, also of what is bought. What differs by less than 5 mm is rounding. Common practice, no source.

use super::grading::Odd;
use super::grading_stalls::each_odd;
use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group, Home};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("grading-jumps", Group::Facts, include_str!("grading_jumps.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks along every row.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    each_odd(subject, &mut |row, sizes, odd| {
        let Odd::Jumps(at) = odd else { return };
        let id = &subject.draft.facts.sizes[sizes[at]].id.text;
        findings.push(
            CHECK
                .at(row.at(sizes[at]), format!("{} leaves the family in {id}", row.name))
                .label(row.side_by_side(subject, sizes))
                .hint("see whether a digit slipped; if it is meant, waive it and say why")
                .in_size(sizes[at], ""),
        );
    });
}

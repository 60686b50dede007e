//! A finished measurement says what it measures, and the sewing does not tell how large that is.
//!
//! ## Why it matters
//! `sewn:` asks for the stated size to be held against the sewing. Where that cannot be reckoned the size
//! is printed as it is stated, and nobody has looked at it.
//!
//! ## Wrong
//! ```yaml
//! finished:
//!   Depth: {value: 5 cm, sewn: front.depth}
//! ```
//!
//! ## Right
//! ```yaml
//! finished:
//!   Depth: 5 cm
//! ```
//!
//! ## Limits
//! Reckoned are rectangles, also cut on the fold, and rectangles with the corners taken out at the bottom:
//! from the edges that are sewn, hemmed, folded or declared raw, and their allowances. A piece with another
//! outline, a gathered edge, or a depth without a boxed corner is told here. Silent where an edge that is
//! left raw is told by itself.

use super::judge::Judge;
use crate::construct::{Fault, History, Unreckoned};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::warning("sewn-not-reckoned", Group::Work, include_str!("sewn_not_reckoned.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::SewnNotReckoned { row, said, why } = fault else { continue };
        let Some(why) = words(why) else { continue };
        let name = &edition.draft.facts.finished[*row].name.text;
        findings.push(
            CHECK
                .at(*said, format!("“{name}” cannot be held against the sewing: {why}"))
                .hint("measure a sewn sample, and take `sewn:` out or waive this")
                .in_size(edition.size(), ""),
        );
    }
}

/// `None` for what follows from a fault that is told by itself.
fn words(why: &Unreckoned) -> Option<String> {
    Some(match why {
        Unreckoned::NotCut => "no such piece is cut".to_owned(),
        Unreckoned::Shaped => "the piece is no plain rectangle".to_owned(),
        Unreckoned::CornersOut => {
            "of corners taken out, only those at the bottom of a whole piece are reckoned".to_owned()
        }
        Unreckoned::NotBoxed => "no corner of the piece is taken out and boxed, so it has no depth".to_owned(),
        Unreckoned::CrookedCorner => "the two sides of the boxed corner differ in length".to_owned(),
        Unreckoned::Open(edge) => format!("`{edge}` is neither sewn, finished nor folded"),
        Unreckoned::NoAllowance(edge) => format!("nothing says how much of `{edge}` is sewn or turned in"),
        Unreckoned::FoldedSmall(copy) => format!("`{copy}` is folded, and nothing tells how far"),
        Unreckoned::Gathered(edge) => format!("`{edge}` is gathered"),
        Unreckoned::Follows => return None,
    })
}

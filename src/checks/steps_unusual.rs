//! A step or the tolerance under `show:` is one that no ruler has, or that would hide every slip.
//!
//! ## Why it matters
//! All converted figures are rounded to these steps, and all pairs are held against this tolerance. With a step of
//! 1/10 in no maker can lay out what is printed; with a tolerance of 3 cm no two figures ever disagree.
//!
//! ## Wrong
//! ```yaml
//! show: {tolerance: 3 cm}
//! ```
//!
//! ## Right
//! ```yaml
//! show: {tolerance: 3 mm}
//! ```
//!
//! ## Limits
//! Usual are a `metric_step` up to 5 mm, an `imperial_step` of 1/2 in, 1/4 in and so on down to 1/64 in, since
//! rulers halve, and a `tolerance` up to 6.5 mm (common practice, no source).

use super::judge::{Judge, Subject};
use crate::diag::{Check, Finding, Findings, Group, Home};
use crate::measure::Exact;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("steps-unusual", Group::Facts, include_str!("steps_unusual.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at what is stated under `show:`.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let show = &subject.draft.facts.show;
    let places = show.places;
    let metric = show.metric_step <= Exact::from_integer(5);
    let tolerance = show.tolerance <= Exact::of::<13, 2>();
    let all = [
        (places.metric_step, metric, "`metric_step` is no step of a ruler", "write a step such as `1 mm` or `5 mm`"),
        (
            places.imperial_step,
            halves(show.imperial_step),
            "`imperial_step` is no step of a ruler, which halves its inches",
            "write `1/8 in` or `1/16 in`",
        ),
        (
            places.tolerance,
            tolerance,
            "with this `tolerance` figures are held to be alike that no maker takes for the same",
            "write a length such as `1/8 in` or `3 mm`",
        ),
    ];
    let wrong = all.into_iter().filter(|(_, usual, ..)| !usual);
    findings.extend(
        wrong.filter_map(|(place, _, fact, act)| -> Option<Finding> { Some(CHECK.at(place?, fact).hint(act)) }),
    );
}

/// Whether a length is the half of an inch, or a half of a half and so on down to 1/64 in.
fn halves(step: Exact) -> bool {
    (1..=6_u32).any(|times| Exact::of::<127, 5>().checked_div(Exact::from_integer(1 << times)) == Some(step))
}

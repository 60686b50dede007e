//! The finished thing is smaller than the body that it goes over.
//!
//! ## Why it matters
//! Woven cloth does not stretch: a waistband that is smaller than the waist cannot be closed. Where two
//! figures changed places, or an allowance was taken off twice, this is what is seen first.
//!
//! ## Wrong
//! ```yaml
//! body:
//!   Waist: [66 cm (26 in), 70 cm (27 1/2 in)]
//! finished:
//!   Waist of the skirt: {value: [64 cm (25 1/4 in), 68 cm (26 3/4 in)], over: Waist}
//! ```
//!
//! ## Right
//! ```yaml
//! body:
//!   Waist: [66 cm (26 in), 70 cm (27 1/2 in)]
//! finished:
//!   Waist of the skirt: {value: [68 cm (26 3/4 in), 72 cm (28 3/8 in)], over: Waist}
//! ```
//!
//! ## Limits
//! Looks at finished measurements that say what they go `over:`. Knitted cloth and elastic stretch: where
//! the thing is meant to be smaller than the body, waive it at `finished` and say so.

use super::judge::Judge;
use crate::diag::{Check, Findings, Group, Home};
use crate::measure::Quantity;
use crate::resolve::{Edition, Worked};

/// The check.
pub(super) static CHECK: Judge = Judge::edition(
    &Check::warning("ease-negative", Group::Facts, include_str!("ease_negative.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at every finished measurement that goes over the body.
pub(super) fn run(edition: &Edition<'_>, findings: &mut Findings) {
    for row in &edition.finished {
        let Some(ease) = row.ease.as_ref().filter(|ease| ease.quantity.value.is_negative()) else { continue };
        let less = Quantity { value: ease.quantity.value.abs(), ..ease.quantity };
        let less = edition.figures(&Worked { quantity: less, stated: None }).first.to_string().replace('\u{a0}', " ");
        findings.push(
            CHECK
                .at(ease.span, format!("“{}” is smaller than the body’s “{}”", row.name, ease.over))
                .hint("make it larger than the body; if the cloth stretches, waive it and say so")
                .in_size(edition.size(), format!("by {less}")),
        );
    }
}

//! A finished measurement is not what the sewing gives.
//!
//! ## Why it matters
//! The size on the first pages is what people choose by. If the sewing gives another, the thing
//! does not fit what it was made for.
//!
//! ## Wrong
//! ```yaml
//! finished:
//!   Width: {value: width + 1 cm, sewn: front.width}
//! ```
//!
//! ## Right
//! ```yaml
//! finished:
//!   Width: {value: width, sewn: front.width}
//! ```
//!
//! ## Limits
//! Looks at finished measurements that say what they measure: `sewn:` with a copy and `width`,
//! `height` or `depth`. Reckoned from rectangles, with or without corners taken out at the bottom,
//! from the allowances at which they are sewn and hemmed, to a millimetre. A binding takes nothing off; of a strip that is
//! sewn on and narrow enough to be laid round the edge, both sizes count as right until a later fact binds with it. What cannot be reckoned
//! is told as `sewn-not-reckoned`.

use super::apart::Told;
use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("finished-size-differs", Group::Work, include_str!("finished_size_differs.rs"))
        .waivable_in(Home::Facts),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::SewnDiffers { row, stated, sewn } = fault else { continue };
        let row = &edition.draft.facts.finished[*row];
        let span = row.value.get(edition.size()).map_or(row.name.span, |value| value.span());
        let told = Told::lengths(edition, *stated, *sewn);
        findings.push(
            CHECK
                .at(span, format!("“{}” is not what the sewing gives", row.name.text))
                .hint("mend the measurement, the piece or the allowance: they must come to the same")
                .in_size(edition.size(), format!("stated as {}, sewn to {}{}", told.one, told.other, told.apart)),
        );
    }
}

//! A seam states more ease than its edges differ by.
//!
//! ## Why it matters
//! The ease is printed with the step. A maker who is told to ease in three centimetres where there are two looks for
//! the third, and doubts her cutting.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [28 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm, ease: 3 cm}
//! ```
//!
//! Make the strap.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [28 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm, ease: 2 cm}
//! ```
//!
//! Make the strap.
//! ````
//!
//! ## Limits
//! Two millimetres less are in order (common practice, no source). Silent for a part of a seam, for what is gathered
//! and for what lies folded. Less ease than the edges need is told with their lengths.

use super::apart::Told;
use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::warning("ease-too-large", Group::Work, include_str!("ease_too_large.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::EaseTooLarge { edges, stated, apart, ease, sewn } = fault else { continue };
        let told = Told::lengths(edition, *stated, *apart);
        let message = format!("the ease is {}, and `{}` and `{}` differ by {}", told.one, edges.0, edges.1, told.other);
        let hint = match apart {
            apart if *apart < 1.0 => "take `ease:` out, or mend the piece that is wrong".to_owned(),
            _ => {
                format!("write `ease: {}`, by size where the sizes differ, or mend the piece that is wrong", told.other)
            }
        };
        let finding = CHECK.at(*ease, message).hint(hint).note(sewn.heading, "in this step");
        findings.push(finding.in_size(edition.size(), ""));
    }
}

//! A zip is shorter than the opening that it fills, or than the edge that it is sewn to.
//!
//! ## Why it matters
//! The maker buys the zip by its length. One that is too short leaves a hole at its end, or makes the opening too
//! small to step into.
//!
//! ## Wrong
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   zip: {kind: zip, name: Zip, length: 15 cm (5 7/8 in), count: 1}
//! pieces:
//!   strap: {outline: {rectangle: [40 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [40 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm, leave: {length: 20 cm (7 7/8 in), at: 3 cm from left, for: zip}}
//! - {sew: [zip.tape_a, strap.top], allowance: seam, stitch: 2.5 mm}
//! - {sew: [zip.tape_b, tab.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Sew the zip in.
//! ````
//!
//! ## Right
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   zip: {kind: zip, name: Zip, length: 20 cm (7 7/8 in), count: 1}
//! pieces:
//!   strap: {outline: {rectangle: [40 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [40 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm, leave: {length: 20 cm (7 7/8 in), at: 3 cm from left, for: zip}}
//! - {sew: [zip.tape_a, strap.top], allowance: seam, stitch: 2.5 mm}
//! - {sew: [zip.tape_b, tab.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Sew the zip in.
//! ````
//!
//! ## Limits
//! Holds the `length` of a zip against the `leave` of an opening `for:` it, the allowance at one end and a centimetre
//! more allowed, and against the part of an edge that its tape is sewn to, three centimetres more allowed for both
//! ends of the tape (common practice, no source). An edge that another seam holds as well, and a zip whose ends are
//! sewn to something, are not held against the tape. A zip may always be longer: it can be shortened.

use super::apart::Told;
use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::warning("zip-too-short", Group::Work, include_str!("zip_too_short.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::ZipTooShort { notion, long, wanted, edges, place } = fault else { continue };
        let notion = &edition.draft.facts.notions[*notion].id;
        let told = Told::lengths(edition, *wanted, *long);
        let (message, hint) = match edges {
            None => (
                format!("this opening is {} long, and `{}` only {}", told.one, notion.text, told.other),
                "ask for a longer zip, or leave a shorter opening",
            ),
            Some(edges) => (
                format!("`{}` is {} long, and is sewn to {} of `{edges}`", notion.text, told.other, told.one),
                "ask for a longer zip, or say which part of the edge it is sewn to with `from:` and `to:`",
            ),
        };
        let finding = CHECK.at(*place, message).hint(hint).note(notion.span, "this zip");
        findings.push(finding.in_size(edition.size(), ""));
    }
}

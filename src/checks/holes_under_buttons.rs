//! Buttonholes are made where the buttons are sewn on.
//!
//! ## Why it matters
//! The buttons lie over the holes of the other side. With both on one side nothing closes, and the cloth is cut.
//!
//! ## Wrong
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   buttons: {kind: button, name: Flat button, size: 18 mm (11/16 in), count: 3}
//! pieces:
//!   left: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   right: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Close the front {#front}
//!
//! ```work
//! - cut: [left, right]
//! - {buttonhole: right.top, count: 3}
//! - {button: [buttons, right.top], count: 3, by: hand}
//! - {hem: left.top, allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Make the holes, and sew the buttons on.
//! ````
//!
//! ## Right
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   buttons: {kind: button, name: Flat button, size: 18 mm (11/16 in), count: 3}
//! pieces:
//!   left: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   right: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Close the front {#front}
//!
//! ```work
//! - cut: [left, right]
//! - {hem: [left.top, right.top], allowance: seam, stitch: 2.5 mm}
//! - {buttonhole: right.top, count: 3}
//! - {button: [buttons, left.top], count: 3, by: hand}
//! ```
//!
//! Make the holes, and sew the buttons on.
//! ````
//!
//! ## Limits
//! Looks at rows of marks and at edges that both `buttonhole` and `button` or `fasten` name, in a size.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("holes-under-buttons", Group::Work, include_str!("holes_under_buttons.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::HolesUnderButtons { name, holed, buttoned } = fault else { continue };
        findings.push(
            CHECK
                .at(holed.verb, format!("holes are made at `{name}`, and the buttons are sewn on there too"))
                .hint("make the holes on the side that lies on top, and sew the buttons to the one below")
                .note(buttoned.verb, "the buttons")
                .in_size(edition.size(), ""),
        );
    }
}

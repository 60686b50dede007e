//! Something is stuffed before it can be, or turned after it is full.
//!
//! ## Why it matters
//! What is sewn, turned and left open at one place takes its stuffing; what is full can no longer be turned, and
//! what is shut takes none.
//!
//! ## Wrong
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   filling: {kind: filling, name: Toy stuffing, amount: 100 g}
//! pieces:
//!   body_front: {outline: {rectangle: [20 cm, 30 cm]}, allowance: seam, cut: {outer: 1}}
//!   body_back: {outline: {rectangle: [20 cm, 30 cm]}, allowance: seam, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the body {#body}
//!
//! ```work
//! - cut: [body_front, body_back]
//! - {sew: [body_front, body_back], allowance: seam, stitch: 2 mm, leave: 8 cm (3 1/8 in)}
//! - stuff: [filling, body_front]
//! - turn: [body_front, right side out]
//! - {close: body_front, by: hand}
//! ```
//!
//! Sew, stuff, turn and close.
//! ````
//!
//! ## Right
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   filling: {kind: filling, name: Toy stuffing, amount: 100 g}
//! pieces:
//!   body_front: {outline: {rectangle: [20 cm, 30 cm]}, allowance: seam, cut: {outer: 1}}
//!   body_back: {outline: {rectangle: [20 cm, 30 cm]}, allowance: seam, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the body {#body}
//!
//! ```work
//! - cut: [body_front, body_back]
//! - {sew: [body_front, body_back], allowance: seam, stitch: 2 mm, leave: 8 cm (3 1/8 in)}
//! - turn: [body_front, right side out]
//! - stuff: [filling, body_front]
//! - {close: body_front, by: hand}
//! ```
//!
//! Sew and leave a gap, turn, stuff and close.
//! ````
//!
//! ## Limits
//! What is never turned, as felt that is sewn wrong sides together, is not asked to be.

use super::judge::Judge;
use super::words::that_step;
use crate::construct::{Fault, History, Unfilled};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("stuffed-out-of-order", Group::Work, include_str!("stuffed_out_of_order.rs"))
        .waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::StuffedOutOfOrder { stuffed, why } = fault else { continue };
        let (message, hint, other) = match why {
            Unfilled::Unsewn => {
                ("nothing is sewn yet that could be stuffed", "sew the body first, with a gap (`leave:`)".into(), None)
            }
            Unfilled::Shut(Some(closed)) => (
                "nothing is open to stuff through",
                format!("move this before {}", that_step(closed, stuffed)),
                Some((closed, "closed here")),
            ),
            Unfilled::Shut(None) => {
                ("nothing is open to stuff through", "leave a gap in one of its seams: `leave: 8 cm`".into(), None)
            }
            Unfilled::TurnedLater(turned) => (
                "this is stuffed before it is turned",
                format!("move this after {}", that_step(turned, stuffed)),
                Some((turned, "turned here")),
            ),
        };
        let finding = CHECK.at(stuffed.verb, message).hint(hint);
        let finding = match other {
            Some((moment, what)) => finding.note(moment.verb, format!("{what}, in step {}", moment.step)),
            None => finding,
        };
        findings.push(finding.in_size(edition.size(), ""));
    }
}

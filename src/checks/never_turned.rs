//! What was sewn right sides together is closed, or caught by another seam, and was never turned.
//!
//! ## Why it matters
//! Its wrong side stays outside for good: the gap that was left for turning is sewn shut, or the part is held fast
//! between two layers.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   pad: {outline: {rectangle: [20 cm, 10 cm]}, allowance: seam, cut: {outer: [pad_front, pad_back]}}
//! ```
//! ````md
//! ## Make the pad {#pad}
//!
//! ```work
//! - cut: pad
//! - {sew: [pad_front, pad_back], allowance: seam, stitch: 2.5 mm, leave: 5 cm}
//! - {close: pad_front, by: hand}
//! ```
//!
//! Sew the pad, and sew the gap shut by hand.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   pad: {outline: {rectangle: [20 cm, 10 cm]}, allowance: seam, cut: {outer: [pad_front, pad_back]}}
//! ```
//! ````md
//! ## Make the pad {#pad}
//!
//! ```work
//! - cut: pad
//! - {sew: [pad_front, pad_back], allowance: seam, stitch: 2.5 mm, leave: 5 cm}
//! - turn: [pad_front, right side out]
//! - {close: pad_front, by: hand}
//! ```
//!
//! Sew the pad, turn it, and sew the gap shut by hand.
//! ````
//!
//! ## Limits
//! Looks at gaps in machine seams that a `close` shuts, and at parts that are caught by name or basted as one, when they
//! are sewn to one other piece all round but for the edge that is caught. Silent where something was passed into the
//! gap with `insert`, where the edges are declared `raw:`, and where the words of the seam say "wrong sides together".

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("never-turned", Group::Work, include_str!("never_turned.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::NeverTurned { edges, sewn, at } = fault else { continue };
        let (message, hint) = match edges.as_slice() {
            [part] => (
                format!("`{part}` is caught here, and its piece was not turned: it stays wrong side out"),
                "turn it before: `- turn: […, right side out]`; where it is sewn wrong sides together, say so in its seam".to_owned(),
            ),
            edges => {
                let first = edges.first().map_or("", |edge| edge.split('.').next().unwrap_or_default());
                (
                    "this gap is closed, and nothing was turned through it".to_owned(),
                    format!("turn it before: `- turn: [{first}, right side out]`; where it is sewn wrong sides together, say so in its seam"),
                )
            }
        };
        let finding = CHECK.at(at.verb, message).hint(hint);
        findings.push(finding.note(sewn.verb, "sewn here").in_size(edition.size(), ""));
    }
}

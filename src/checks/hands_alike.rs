//! Pieces of one hand are sewn right sides together.
//!
//! ## Why it matters
//! Laid right sides together, one of two pieces is turned over. Only a left and a right one then lie on each other: of two
//! left ones the curves run against each other, or the neck of one meets the armhole of the other.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   half:
//!     outline:
//!       path:
//!         - {start: [0 cm, 0 cm]}
//!         - {top: [20 cm, 0 cm]}
//!         - {curve: {to: [12 cm, 30 cm], curve: [[10 cm, 4 cm], [12 cm, 14 cm]]}}
//!         - {side: close}
//!     raw: all
//!     cut: {outer: [left_half, right_half]}
//! ```
//! ````md
//! ## Sew the halves {#halves}
//!
//! ```work
//! - cut: half
//! - {sew: [left_half.curve, right_half.curve], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Sew the halves.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   half:
//!     outline:
//!       path:
//!         - {start: [0 cm, 0 cm]}
//!         - {top: [20 cm, 0 cm]}
//!         - {curve: {to: [12 cm, 30 cm], curve: [[10 cm, 4 cm], [12 cm, 14 cm]]}}
//!         - {side: close}
//!     raw: all
//!     mirrored: yes
//!     cut: {outer: [left_half, right_half]}
//! ```
//! ````md
//! ## Sew the halves {#halves}
//!
//! ```work
//! - cut: half
//! - {sew: [left_half.curve, right_half.curve], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Sew the halves along their curves.
//! ````
//!
//! ## Limits
//! Looks at machine seams. Two copies of one piece are told by their edge, unless it is its own mirror image to within 1 mm
//! (common practice, no source); then by a second seam between them, or a hem or a row that takes one end of both. Two
//! pieces are told by the edges beside their seam: those called alike must meet; two rows by what they are joined to, or by
//! notches. Silent where a piece turned over is the same, but for a half of one cut on the fold; and where one lies folded.

use super::judge::Judge;
use crate::construct::{Alike, Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("hands-alike", Group::Work, include_str!("hands_alike.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::HandsAlike { edges: (one, other), why, sewn, .. } = fault else { continue };
        let (message, hint) = match why {
            Alike::Copies(piece) => {
                let piece = &edition.draft.facts.pieces[*piece];
                let hint = match piece.mirrored {
                    true => "of its copies every second one is turned over: change their order under `cut:`, so that these two are a left and a right one".to_owned(),
                    false => format!("add `mirrored: yes` to `{}`, so that every second copy is cut turned over", piece.id.text),
                };
                (
                    format!("`{one}` and `{other}` are of one hand, and do not lie on each other right sides together"),
                    hint,
                )
            }
            Alike::Ends { met: (own, their), instead } => {
                let hint = match instead {
                    Some((wrong, right)) => format!("`{right}` fits: write it instead of `{wrong}`"),
                    None => "name the copy, or the half, of the other hand; where a piece is to be cut turned over, `mirrored: yes` says so".to_owned(),
                };
                let message = format!(
                    "`{one}` and `{other}` are of one hand: right sides together, the end at `{own}` of the first meets the end at `{their}` of the second"
                );
                (message, hint)
            }
            Alike::Rows => (
                format!(
                    "`{one}` and `{other}` are rows of one hand: right sides together, they run the same way round their pieces, and the first edge of one meets the last of the other"
                ),
                "name the copies of the other hand in one row, or write it from its other end".to_owned(),
            ),
        };
        let finding = CHECK.at(sewn.verb, message).hint(hint).in_size(edition.size(), "");
        findings.push(match why {
            Alike::Copies(piece) => finding.note(edition.draft.facts.pieces[*piece].id.span, "the piece"),
            _ => finding,
        });
    }
}

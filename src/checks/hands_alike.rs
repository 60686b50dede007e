//! Two copies of one hand are sewn right sides together.
//!
//! ## Why it matters
//! Laid right sides together, one of two pieces is turned over. Only a left and a right one then lie on each
//! other: of two left ones the curves run against each other, and the maker has cut a sleeve too many.
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
//! Sew the halves along their curves.
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
//! Looks at two copies of one piece that `sew` joins along the same edge. Silent where the edge or the piece
//! is its own mirror image to within 1 mm (common practice, no source), as a straight edge is, and at layers
//! that are sewn any other way, such as by `topstitch`.

use super::judge::Judge;
use crate::construct::{Fault, History};
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
        let Fault::HandsAlike { edges: (one, other), piece, sewn } = fault else { continue };
        let piece = &edition.draft.facts.pieces[*piece];
        let hint = match piece.mirrored {
            true => "of its copies every second one is turned over: change their order under `cut:`, so that these two are a left and a right one".to_owned(),
            false => format!("add `mirrored: yes` to `{}`, so that every second copy is cut turned over", piece.id.text),
        };
        findings.push(
            CHECK
                .at(
                    sewn.verb,
                    format!("`{one}` and `{other}` are of one hand, and do not lie on each other right sides together"),
                )
                .hint(hint)
                .note(piece.id.span, "the piece")
                .in_size(edition.size(), ""),
        );
    }
}

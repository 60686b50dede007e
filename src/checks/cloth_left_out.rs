//! A piece is cut from a fabric, or from tape, that its own size does not have.
//!
//! ## Why it matters
//! The list of that size leaves the cloth out, and its table of pieces cuts from it all the same. The maker finds out with
//! the scissors in her hand.
//!
//! ## Wrong
//! ```yaml
//! fabrics:
//!   felt: {name: Felt, widths: [90 cm], for: large}
//! pieces:
//!   tab: {outline: {rectangle: [5 cm, 5 cm]}, raw: all, cut: {felt: 1}}
//! ```
//! ````md
//! ## Sew on the tab {#tab}
//!
//! ```work
//! - cut: tab
//! - attach: [tab, front]
//! ```
//!
//! Cut the tab and sew it on.
//! ````
//!
//! ## Right
//! ```yaml
//! fabrics:
//!   felt: {name: Felt, widths: [90 cm]}
//! pieces:
//!   tab: {outline: {rectangle: [5 cm, 5 cm]}, raw: all, cut: {felt: 1}}
//! ```
//! ````md
//! ## Sew on the tab {#tab}
//!
//! ```work
//! - cut: tab
//! - attach: [tab, front]
//! ```
//!
//! Cut the tab and sew it on.
//! ````

use super::judge::Judge;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{Name, is_for};
use crate::resolve::{CutFrom, Edition};
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge = Judge::edition(
    &Check::error("cloth-left-out", Group::Facts, include_str!("cloth_left_out.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at everything that one size cuts; each cloth once.
pub(super) fn run(edition: &Edition<'_>, findings: &mut Findings) {
    let facts = &edition.draft.facts;
    let mut told: Vec<&str> = Vec::new();
    for row in &edition.cuts {
        let (id, sizes, at): (&Name, Option<&Vec<usize>>, Option<Span>) = match row.from {
            CutFrom::Fabric(fabric) => {
                let fabric = &facts.fabrics[fabric];
                (&fabric.id, fabric.sizes.as_ref(), fabric.sizes_at)
            }
            CutFrom::Notion(notion) => {
                let notion = &facts.notions[notion];
                (&notion.id, notion.sizes.as_ref(), None)
            }
        };
        if is_for(sizes, edition.size()) || told.contains(&id.text.as_str()) {
            continue;
        }
        told.push(&id.text);
        let piece = &facts.pieces[row.piece].id;
        findings.push(
            CHECK
                .at(
                    at.unwrap_or(id.span),
                    format!("`{}` is left out in a size that cuts `{}` from it", id.text, piece.text),
                )
                .hint("give the size its cloth, or leave the piece out there too with `for:`")
                .note(piece.span, "the piece")
                .in_size(edition.size(), ""),
        );
    }
}

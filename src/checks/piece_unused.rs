//! A piece is cut, and nothing is done with it.
//!
//! ## Why it matters
//! Cloth is cut that nothing is made of; or a step forgets to say that it uses the piece, and then
//! nothing about that piece can be checked.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   tab:
//!     outline: {rectangle: [5 cm, 5 cm]}
//!     raw: all
//!     cut:
//!       outer: 1
//! ```
//! ````md
//! ## Cut the tab {#tab}
//!
//! ```work
//! - cut: tab
//! ```
//!
//! Cut the tab.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   tab:
//!     outline: {rectangle: [5 cm, 5 cm]}
//!     raw: all
//!     cut:
//!       outer: 1
//! ```
//! ````md
//! ## Cut the tab {#tab}
//!
//! ```work
//! - cut: tab
//! - fold: tab
//! ```
//!
//! Cut the tab and fold it in half.
//! ````
//!
//! ## Limits
//! Looks at work, not at words. Any work but `cut` counts, on the piece, on one of its copies or on
//! an edge of either. A piece that a size does not have is passed over in that size.

use super::judge::Judge;
use super::left_out::step_of_others;
use crate::diag::{Check, Finding, Findings, Group, Home};
use crate::model::{Verb, is_for};
use crate::resolve::{Edition, PieceId};

/// The check.
pub(super) static CHECK: Judge = Judge::edition(
    &Check::warning("piece-unused", Group::Work, include_str!("piece_unused.rs")).waivable_in(Home::Anywhere),
    run,
);

/// Looks at every piece of one size.
pub(super) fn run(edition: &Edition<'_>, findings: &mut Findings) {
    if !edition.draft.whole {
        return;
    }
    for (id, piece) in PieceId::each(&edition.draft.facts.pieces) {
        let used = edition
            .steps()
            .flat_map(|step| &step.works)
            .filter(|work| work.verb != Verb::Cut)
            .flat_map(|work| work.named())
            .any(|target| target.piece(&edition.cast) == Some(id));
        if !used && !edition.without.leaves(&piece.id) && is_for(piece.sizes.as_ref(), edition.size()) {
            let finding = CHECK
                .at(piece.id.span, format!("no step does anything with `{}`", piece.id.text))
                .hint("name it in the work of the step that uses it, or take the piece out");
            let own = |name: &str| {
                let copies = edition.cast.of_piece(id).map(|copy| &edition.cast[copy]);
                name == piece.id.text || copies.into_iter().any(|member| member.named && member.name == name)
            };
            let finding = match step_of_others(edition, &own) {
                // The piece says for whom it is, and so does the step: one of them is wrong.
                Some(step) if piece.sizes.is_some() => {
                    Finding { span: step, ..finding }.note(piece.id.span, "for this size too")
                }
                Some(step) => finding.note(step, "the step that uses it is for other sizes"),
                None => finding,
            };
            findings.push(finding.in_size(edition.size(), ""));
        }
    }
}

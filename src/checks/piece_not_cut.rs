//! A piece is drawn, and no step cuts it.
//!
//! ## Why it matters
//! The maker reaches the step that sews the piece on, and does not have it. If the cloth is put
//! away by then, or used up, that is a lost evening.
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
//! ## Fold the tab {#fold}
//!
//! ```work
//! - fold: tab
//! ```
//!
//! Fold the tab in half.
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
//! ## Fold the tab {#fold}
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
//! `- cut: all` cuts everything. One copy that is cut counts for all copies of a piece. Pieces that
//! are cut from no fabric, and pieces that a size does not have, are passed over.
//! It is told at the step whose words cut it, where there is one; a waiver counts there too.

use super::judge::Judge;
use super::passage::{Passage, Stands, Token, passages};
use super::spoken_names::Spoken;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{Piece, ReferenceKind, Verb, is_for};
use crate::resolve::{Edition, Meant, PieceId};
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge = Judge::edition(
    &Check::error("piece-not-cut", Group::Work, include_str!("piece_not_cut.rs")).waivable_in(Home::Anywhere),
    run,
);

/// Looks at every piece of one size that is cut from a fabric.
pub(super) fn run(edition: &Edition<'_>, findings: &mut Findings) {
    if !edition.draft.whole {
        return;
    }
    let cuts = || edition.steps().flat_map(|step| &step.works).filter(|work| work.verb == Verb::Cut);
    let named: Vec<&Meant> = cuts().flat_map(|work| &work.targets).map(|target| &target.meant).collect();
    if named.contains(&&Meant::All) {
        return;
    }
    for (id, piece) in PieceId::each(&edition.draft.facts.pieces) {
        let cut = named.iter().any(|meant| matches!(meant, Meant::Whole(owner) if owner.piece(&edition.cast) == id));
        let wanted = is_for(piece.sizes.as_ref(), edition.size()) && !edition.without.leaves(&piece.id);
        if !cut && piece.cut_in(edition.size()).next().is_some() && wanted {
            let told = told_to_cut(edition, piece);
            let finding = CHECK
                .at(told.unwrap_or(piece.id.span), format!("no step cuts `{}`", piece.id.text))
                .hint(format!("add it to the work of the step that cuts: `- cut: [{}]`", piece.id.text));
            let finding = if told.is_some() { finding.note(piece.id.span, "this piece") } else { finding };
            findings.push(finding.in_size(edition.size(), ""));
        }
    }
}

/// The `cut` of the step whose words cut the piece, by its name or by a reference.
fn told_to_cut(edition: &Edition<'_>, piece: &Piece) -> Option<Span> {
    let name = Spoken::of(&piece.name.text);
    let leads = |token: &Token<'_>| {
        token.leads.is_some_and(|leads| leads.kind == ReferenceKind::Piece && leads.target == piece.id.text)
    };
    let names = |sentence: &&[Token<'_>]| {
        !Passage::points_away(sentence) && (name.all_in(sentence) || sentence.iter().any(leads))
    };
    edition.steps().find_map(|step| {
        let cut = step.works.iter().find(|work| work.verb == Verb::Cut)?;
        let read = passages(step.step, Some(edition.size()));
        let mut body = read.iter().filter(|passage| passage.stands == Stands::Body && !passage.ticks);
        body.any(|passage| passage.sentences().iter().any(names)).then_some(cut.work.verb_span)
    })
}

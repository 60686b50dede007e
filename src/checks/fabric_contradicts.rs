//! The words cut a piece from a fabric from which the facts cut none.
//!
//! ## Why it matters
//! The amounts to buy follow the facts. A piece cut from the other cloth is missing here and wasted there.
//!
//! ## Wrong
//! ```yaml
//! fabrics:
//!   lining: {name: Lining cotton, widths: [110 cm], amount: 10 cm}
//! pieces:
//!   tab: {name: Tab, outline: {rectangle: [5 cm, 5 cm]}, raw: all, cut: {lining: [tab_one, tab_two]}}
//! ```
//! ````md
//! ## Make the tabs {#tabs}
//!
//! ```work
//! - cut: tab
//! - press: [tab_one, tab_two]
//! ```
//!
//! Cut each [](piece:tab) from the [](fabric:outer), and press it.
//! ````
//!
//! ## Right
//! ```yaml
//! fabrics:
//!   lining: {name: Lining cotton, widths: [110 cm], amount: 10 cm}
//! pieces:
//!   tab: {name: Tab, outline: {rectangle: [5 cm, 5 cm]}, raw: all, cut: {lining: [tab_one, tab_two]}}
//! ```
//! ````md
//! ## Make the tabs {#tabs}
//!
//! ```work
//! - cut: tab
//! - press: [tab_one, tab_two]
//! ```
//!
//! Cut each [](piece:tab) from the [](fabric:lining), and press it.
//! ````
//!
//! ## Limits
//! Only in sentences about cutting with one reference to a piece and one to a fabric behind it.

use super::judge::{Judge, Subject};
use super::passage::{Stands, Token, any_of};
use super::printed_words::each_step;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{Reference, ReferenceKind, Verb};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("fabric-contradicts", Group::Words, include_str!("fabric_contradicts.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let Some(verbs) = subject.vocabulary.verbs.get(Verb::Cut.word()) else { return };
    each_step(subject, &mut |edition, _, passages| {
        for passage in passages.iter().filter(|passage| passage.stands == Stands::Body) {
            for sentence in passage.sentences().into_iter().filter(|sentence| any_of(sentence, verbs)) {
                let [(piece, at)] = referred(sentence, ReferenceKind::Piece)[..] else { continue };
                let [(fabric, to)] = referred(sentence, ReferenceKind::Fabric)[..] else { continue };
                let from = fabrics(edition, &piece.target);
                if at < to && !from.is_empty() && !from.contains(&fabric.target) {
                    let right: Vec<String> = from.iter().map(|fabric| format!("`{fabric}`")).collect();
                    findings.push(
                        CHECK
                            .at(fabric.span, format!("the facts cut `{}` from {}", piece.target, right.join(" and ")))
                            .hint("name the fabric of the facts, or mend `cut:` of the piece")
                            .in_size(edition.size(), ""),
                    );
                }
            }
        }
    });
}

/// The references of a kind in a sentence, each once.
fn referred<'a>(sentence: &[Token<'a>], kind: ReferenceKind) -> Vec<(&'a Reference, usize)> {
    let mut found: Vec<(&Reference, usize)> = Vec::new();
    for (at, token) in sentence.iter().enumerate() {
        if let Some(reference) = token.leads.filter(|reference| reference.kind == kind)
            && found.last().is_none_or(|(last, _)| last.span != reference.span)
        {
            found.push((reference, at));
        }
    }
    found
}

/// The fabrics from which this size cuts a piece.
fn fabrics(edition: &Edition<'_>, piece: &str) -> Vec<String> {
    let facts = &edition.draft.facts;
    let rows = edition.cuts.iter().filter(|row| facts.pieces[row.piece].id.text == piece);
    rows.filter_map(|row| row.fabric()).map(|fabric| facts.fabrics[fabric].id.text.clone()).collect()
}

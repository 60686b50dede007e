//! The words say another number of notches than the edge of the piece has.
//!
//! ## Why it matters
//! One notch at the front and two at the back tell the sleeve which way round it goes. Told the other way, it is set in the
//! wrong way round.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   tab:
//!     outline: {rectangle: [8 cm, 8 cm]}
//!     allowance: {all: seam}
//!     raw: all
//!     notches: [left 1/3, left 2/3]
//!     cut: {outer: [tab_one, tab_two]}
//! ```
//! ````md
//! ## Make the tabs {#tabs}
//!
//! ```work
//! - cut: tab
//! - {sew: [tab_one.left, tab_two.left], allowance: seam, stitch: 2.5 mm}
//! - press: [tab_one, tab_two]
//! ```
//!
//! Lay the tabs on each other, with one notch at the tab, sew them and press them.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   tab:
//!     outline: {rectangle: [8 cm, 8 cm]}
//!     allowance: {all: seam}
//!     raw: all
//!     notches: [left 1/3, left 2/3]
//!     cut: {outer: [tab_one, tab_two]}
//! ```
//! ````md
//! ## Make the tabs {#tabs}
//!
//! ```work
//! - cut: tab
//! - {sew: [tab_one.left, tab_two.left], allowance: seam, stitch: 2.5 mm}
//! - press: [tab_one, tab_two]
//! ```
//!
//! Lay the tabs on each other, with two notches at the tab, sew them and press them.
//! ````
//!
//! ## Limits
//! Looks in sentences that speak of notches for a number before "at the" and a word of the name of a piece whose edges the
//! step sews, and compares it with the notches that the facts give those edges. Silent where they have none.

use std::collections::BTreeSet;

use super::judge::{Judge, Subject};
use super::passage::{Stands, Token, any_of, number, one_of, place, spoken};
use super::printed_words::each_step;
use super::spoken_names::called;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::Vocabulary;
use crate::resolve::{Edition, EditionStep, Touched};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("notches-miscounted", Group::Words, include_str!("notches_miscounted.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let vocabulary = subject.vocabulary;
    each_step(subject, &mut |edition, step, passages| {
        for sentence in passages
            .iter()
            .filter(|passage| passage.stands == Stands::Body)
            .flat_map(|passage| passage.sentences())
            .filter(|sentence| any_of(sentence, &vocabulary.notch))
        {
            for (at, end, count, noun) in told(sentence, vocabulary) {
                let notches = notches(edition, step, &noun);
                let Some(span) = place(&sentence[at..end]) else { continue };
                if notches.is_empty() || notches.contains(&count) {
                    continue;
                }
                let right: Vec<String> = notches.iter().map(u32::to_string).collect();
                let message =
                    format!("“{}”, but the facts give that edge {}", spoken(&sentence[at..end]), right.join(" or "));
                let hint = "mend the number, or the notches of the piece";
                findings.push(CHECK.at(span, message).hint(hint).in_size(edition.size(), ""));
            }
        }
    });
}

/// "One notch at the front", "two at the back": where it stands, the number, and the noun.
fn told(sentence: &[Token<'_>], vocabulary: &Vocabulary) -> Vec<(usize, usize, u32, String)> {
    let mut found = Vec::new();
    for at in 0..sentence.len() {
        let Some(count) = number(&sentence[at], vocabulary).filter(|_| sentence[at].brace.is_none()) else { continue };
        let behind = at + 1 + usize::from(one_of(sentence, at + 1, &vocabulary.notch).is_some());
        let Some(phrase) = one_of(sentence, behind, &vocabulary.at_the) else { continue };
        let noun = behind + super::passage::length(phrase);
        if let Some(token) = sentence.get(noun).filter(|token| !token.word.is_empty()) {
            found.push((at, noun + 1, count, token.word.clone()));
        }
    }
    found
}

/// How many notches the edges have that a step touches, of the pieces with such a name.
fn notches(edition: &Edition<'_>, step: &EditionStep<'_>, noun: &str) -> BTreeSet<u32> {
    let mut found = BTreeSet::new();
    for touched in step.works.iter().flat_map(|work| work.touched()) {
        let Touched::Edge(copy, edge) = touched else { continue };
        if !called(edition, copy).has(noun) {
            continue;
        }
        let name = edition.drawn_word(copy, edge);
        let own = &edition.draft.facts.pieces[edition.cast[copy].piece].notches;
        let count = own.iter().filter(|notch| notch.edge.text == name).count();
        found.extend(u32::try_from(count).ok().filter(|count| *count > 0));
    }
    found
}

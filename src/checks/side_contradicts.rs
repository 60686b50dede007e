//! The words name the left where the step works on the right, or the other way about.
//!
//! ## Why it matters
//! The maker follows the words. The facts say that the left front is sewn, so the seam line under the step says
//! the one and the sentence the other.
//!
//! ## Wrong
//! ````md
//! ## Make the tabs {#tabs}
//!
//! ```work
//! - cut: tab
//! - press: tab_left
//! ```
//!
//! Cut the tabs and press the right tab.
//!
//! ## Fold the other {#other}
//!
//! ```work
//! - fold: [tab_right, in half]
//! ```
//!
//! Fold the other one.
//! ````
//! ```yaml
//! pieces:
//!   tab: {name: Tab, outline: {rectangle: [5 cm, 5 cm]}, raw: all, cut: {outer: [tab_left, tab_right]}}
//! ```
//!
//! ## Right
//! ````md
//! ## Make the tabs {#tabs}
//!
//! ```work
//! - cut: tab
//! - press: tab_left
//! ```
//!
//! Cut the tabs and press the left tab.
//!
//! ## Fold the other {#other}
//!
//! ```work
//! - fold: [tab_right, in half]
//! ```
//!
//! Fold the other one.
//! ````
//! ```yaml
//! pieces:
//!   tab: {name: Tab, outline: {rectangle: [5 cm, 5 cm]}, raw: all, cut: {outer: [tab_left, tab_right]}}
//! ```
//!
//! ## Limits
//! Only where a size has a left and a right one of a name, the step's work beside cutting and marking touches one of them alone, and no sentence
//! of the step names that one. Sentences that point to another step are passed over.

use super::judge::{Judge, Subject};
use super::passage::{Passage, Stands, Token, place, spoken};
use super::printed_words::each_step;
use super::spoken_names::{Spoken, called};
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{Pair, Verb};
use crate::resolve::{Edition, EditionStep, Touched};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("side-contradicts", Group::Words, include_str!("side_contradicts.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let hands = &subject.vocabulary.left_right;
    each_step(subject, &mut |edition, step, passages| {
        let known = known(edition, step, hands);
        let said: Vec<Hand<'_>> = passages
            .iter()
            .filter(|passage| is_words(passage))
            .flat_map(|passage| {
                passage
                    .sentences()
                    .into_iter()
                    .filter(|sentence| !points_away(sentence))
                    .flat_map(|sentence| said(sentence, hands))
            })
            .collect();
        for hand in &said {
            let named = |other: usize| said.iter().any(|also| also.noun == hand.noun && also.side == other);
            let only_other =
                known.iter().any(|copy| copy.side != hand.side && copy.touched && copy.name.has(&hand.noun))
                    && known.iter().any(|copy| copy.side == hand.side && copy.name.has(&hand.noun))
                    && !known.iter().any(|copy| copy.side == hand.side && copy.touched && copy.name.has(&hand.noun));
            if only_other
                && !named(1 - hand.side)
                && let Some(span) = place(hand.tokens)
            {
                let words = spoken(hand.tokens);
                let true_one = hands[1 - hand.side].first().map_or("", String::as_str);
                findings.push(
                    CHECK
                        .at(span, format!("“{}”, but the step works on the {true_one} one", words))
                        .hint(format!("write “{true_one}”, or mend the names in the work"))
                        .in_size(edition.size(), ""),
                );
            }
        }
    });
}

fn is_words(passage: &Passage<'_>) -> bool {
    passage.stands != Stands::Alt
}

fn points_away(sentence: &[Token<'_>]) -> bool {
    sentence
        .iter()
        .any(|token| token.leads.is_some_and(|reference| reference.kind == crate::model::ReferenceKind::Step))
}

/// A side and a noun behind it: "left front".
struct Hand<'t> {
    side: usize,
    noun: String,
    tokens: &'t [Token<'t>],
}

fn said<'t>(sentence: &'t [Token<'t>], hands: &Pair) -> Vec<Hand<'t>> {
    let side = |word: &str| hands.iter().position(|words| words.iter().any(|own| own == word));
    let pairs = sentence.windows(2).filter_map(|tokens| {
        let side = side(&tokens[0].word)?;
        let noun = super::passage::stem(&tokens[1].word).to_owned();
        // "The left of both fronts", "right side up" and "the left-hand edge" name no piece.
        (tokens[1].gap == " " && !noun.is_empty()).then_some(Hand { side, noun, tokens })
    });
    pairs.collect()
}

/// A copy that is a left or a right one.
struct Known {
    side: usize,
    name: Spoken,
    touched: bool,
}

fn known(edition: &Edition<'_>, step: &EditionStep<'_>, hands: &Pair) -> Vec<Known> {
    let handles = |verb: Verb| !matches!(verb, Verb::Cut | Verb::Mark);
    let works = step.works.iter().filter(|work| handles(work.verb));
    let touched: Vec<_> = works
        .flat_map(|work| work.targets.iter().chain(&work.caught).flat_map(|target| &target.touched))
        .filter_map(Touched::copy)
        .collect();
    let copies = edition.cast.copies().filter_map(|(copy, _)| {
        let name = called(edition, copy);
        let of = |side: usize| hands[side].iter().any(|word| name.has(word));
        let side = match (of(0), of(1)) {
            (true, false) => 0,
            (false, true) => 1,
            _ => return None,
        };
        Some(Known { side, name, touched: touched.contains(&copy) })
    });
    copies.collect()
}

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
//! Where a size has a left and a right one of a name, the step's work beside cutting and marking touches one of them
//! alone, and no sentence of the step names that one; where all that the work touches is of one side, and the words name a
//! part of the other ("the left placket"), by a word that the booklet explains or one of `parts` in
//! `templates/vocabulary-en.json`; and where a sentence lays a thing on the one that the work does not lay it on. Headings
//! are not looked at, and sentences that point to another step are passed over.

use super::judge::{Judge, Subject};
use super::passage::{Passage, Stands, Token, any_of, place, spoken};
use super::printed_words::each_step;
use super::spoken_names::{Spoken, called};
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{Pair, Verb, Vocabulary};
use crate::resolve::{Edition, EditionStep, Touched};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("side-contradicts", Group::Words, include_str!("side_contradicts.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let hands = &subject.vocabulary.left_right;
    let parts = parts(subject);
    each_step(subject, &mut |edition, step, passages| {
        let known = known(edition, step, hands);
        let body = || passages.iter().filter(|passage| passage.stands == Stands::Body);
        let works_on = worked_side(edition, step, hands);
        let sentences: Vec<&[Token<'_>]> =
            body().flat_map(|passage| passage.sentences()).filter(|sentence| !Passage::points_away(sentence)).collect();
        let shown = passages.iter().filter(|passage| passage.stands == Stands::Alt);
        let shown: Vec<&[Token<'_>]> = shown.flat_map(|passage| passage.sentences()).collect();
        for (sentence, hand) in
            shown.iter().flat_map(|sentence| said(sentence, hands).into_iter().map(move |hand| (sentence, hand)))
        {
            let other = 1 - hand.side;
            let both = said(sentence, hands).iter().any(|also| also.side == other);
            let of_a_part = known.iter().all(|copy| !copy.name.has(&hand.noun)) && parts.contains(&hand.noun);
            let Some(span) = place(hand.tokens).filter(|_| of_a_part && !both && works_on == Some(other)) else {
                continue;
            };
            let (words, true_one) = (spoken(hand.tokens), hands[other].first().map_or("", String::as_str));
            let message = format!("the description says “{words}”, but the step works on the {true_one} one");
            findings.push(CHECK.at(span, message).hint(format!("write “{true_one}”")).in_size(edition.size(), ""));
        }
        let said: Vec<(Hand<'_>, &[Token<'_>])> = sentences
            .iter()
            .flat_map(|sentence| said(sentence, hands).into_iter().map(|hand| (hand, *sentence)))
            .collect();
        for (hand, sentence) in &said {
            let other = 1 - hand.side;
            let named = said.iter().any(|(also, _)| also.noun == hand.noun && also.side == other);
            // "The right placket on the left one"; "the right end" is of something else.
            let stands_in = |noun: &String| *noun == hand.noun || subject.vocabulary.stands_in.contains(noun);
            let beside = || {
                said.iter()
                    .any(|(also, there)| also.side == other && stands_in(&also.noun) && std::ptr::eq(*there, *sentence))
            };
            let of_noun = |side: usize| known.iter().filter(move |copy| copy.side == side && copy.name.has(&hand.noun));
            let only_other = of_noun(other).any(|copy| copy.touched)
                && of_noun(hand.side).next().is_some()
                && !of_noun(hand.side).any(|copy| copy.touched);
            let of_a_part = known.iter().all(|copy| !copy.name.has(&hand.noun))
                && parts.contains(&hand.noun)
                && works_on == Some(other)
                && !beside();
            let by_verb = !beside() && is_done_to_other(edition, step, sentence, hand, subject.vocabulary);
            let with_another = !beside() && is_elsewhere(edition, step, sentence, hand, hands);
            if ((only_other || of_a_part) && !named || with_another || by_verb)
                && let Some(span) = place(hand.tokens)
            {
                let words = spoken(hand.tokens);
                let true_one = hands[other].first().map_or("", String::as_str);
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

/// Words for a part of a thing: the terms that the booklet explains, and those of the trade.
fn parts(subject: &Subject<'_>) -> Vec<String> {
    let terms = subject.draft.facts.words.iter().map(|word| Spoken::of(&word.term.text).head().to_owned());
    terms.chain(subject.vocabulary.parts.iter().cloned()).collect()
}

/// The one side of all that the work of a step touches and that has a side; `None` where it has both or none.
fn worked_side(edition: &Edition<'_>, step: &EditionStep<'_>, hands: &Pair) -> Option<usize> {
    let mut sides: Vec<usize> = Vec::new();
    for touched in step.works.iter().filter(|work| work.verb != Verb::Cut).flat_map(|work| work.touched()) {
        let Some(copy) = touched.copy() else { continue };
        let edge = match touched {
            Touched::Edge(copy, edge) => Spoken::of(&edition.edge_word(copy, edge)),
            _ => Spoken::of(""),
        };
        let mut own = vec![side_of(&called(edition, copy), hands)];
        // A piece that is cut on the fold has both sides, told by its edges.
        own.push(side_of(&edge, hands).filter(|_| own[0].is_none()));
        sides.extend(own.into_iter().flatten());
    }
    let first = *sides.first()?;
    sides.iter().all(|side| *side == first).then_some(first)
}

/// "Lay the tag on the right flank", where the work lays the tag on the left one.
fn is_elsewhere(
    edition: &Edition<'_>,
    step: &EditionStep<'_>,
    sentence: &[Token<'_>],
    hand: &Hand<'_>,
    hands: &Pair,
) -> bool {
    let copies = edition.cast.copies().map(|(copy, _)| (copy, called(edition, copy)));
    let things = copies.filter(|(copy, name)| {
        let own = Spoken::of(&edition.copy_name(*copy));
        side_of(name, hands).is_none() && !name.has(&hand.noun) && own.all_in(sentence)
    });
    things.into_iter().any(|(thing, _)| {
        let with = step.works.iter().filter(|work| work.touched().any(|touched| touched.copy() == Some(thing)));
        let beside = with.flat_map(|work| work.touched()).filter_map(|touched| touched.copy());
        let sides: Vec<usize> = beside
            .map(|copy| called(edition, copy))
            .filter(|name| name.has(&hand.noun))
            .filter_map(|name| side_of(&name, hands))
            .collect();
        !sides.is_empty() && sides.iter().all(|side| *side != hand.side)
    })
}

/// "Buttonholes along the left band", where all such work of the step is on the right one.
fn is_done_to_other(
    edition: &Edition<'_>,
    step: &EditionStep<'_>,
    sentence: &[Token<'_>],
    hand: &Hand<'_>,
    vocabulary: &Vocabulary,
) -> bool {
    let told = |verb: &str| vocabulary.verbs.get(verb).is_some_and(|forms| any_of(sentence, forms));
    let works = step.works.iter().filter(|work| !matches!(work.verb, Verb::Cut | Verb::Mark) && told(work.verb.word()));
    let sides: Vec<usize> = works
        .flat_map(|work| work.touched())
        .filter_map(|touched| touched.copy())
        .map(|copy| called(edition, copy))
        .filter(|name| name.has(&hand.noun))
        .filter_map(|name| side_of(&name, &vocabulary.left_right))
        .collect();
    !sides.is_empty() && sides.iter().all(|side| *side != hand.side)
}

fn side_of(name: &Spoken, hands: &Pair) -> Option<usize> {
    let of = |side: usize| hands[side].iter().any(|word| name.has(word));
    match (of(0), of(1)) {
        (true, false) => Some(0),
        (false, true) => Some(1),
        _ => None,
    }
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
        let side = side_of(&name, hands)?;
        Some(Known { side, name, touched: touched.contains(&copy) })
    });
    copies.collect()
}

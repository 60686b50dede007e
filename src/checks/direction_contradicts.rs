//! The words say the opposite of what the work says: "press up" beside `press: [darts down]`.
//!
//! ## Why it matters
//! A dart pressed up where the bodice asks for down, an allowance pressed towards the zip where it should lie
//! away from it: the step is done, and wrong.
//!
//! ## Wrong
//! ````md
//! ## Press the pouch {#press-pouch}
//!
//! ```work
//! - press: [front, hem upwards]
//! ```
//!
//! Press the hem downwards.
//! ````
//!
//! ## Right
//! ````md
//! ## Press the pouch {#press-pouch}
//!
//! ```work
//! - press: [front, hem upwards]
//! ```
//!
//! Press the hem upwards.
//! ````
//!
//! ## Limits
//! Compares the plain words of a work fact with the sentences of the step that name its verb; the opposites and
//! the forms of the verbs stand in `templates/vocabulary-en.json`. Where a sentence of the step says what the
//! fact says, the others are taken to speak of something else.

use std::collections::BTreeMap;

use super::judge::{Judge, Subject};
use super::passage::{Passage, Stands, Token, any_of, length, of_text, one_of, place, spoken};
use super::printed_words::each_step;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::Vocabulary;
use crate::resolve::EditionStep;
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("direction-contradicts", Group::Words, include_str!("direction_contradicts.rs"))
        .waivable_in(Home::Words),
    run,
);

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    each_step(subject, &mut |edition, step, passages| {
        let mut found = Findings::default();
        look(step, passages, subject.vocabulary, &mut found);
        findings.extend(found.iter().cloned().map(|finding| finding.in_size(edition.size(), "")));
    });
}

fn look(step: &EditionStep<'_>, passages: &[Passage<'_>], vocabulary: &Vocabulary, findings: &mut Findings) {
    for (verb, forms) in &vocabulary.verbs {
        let works = step.works.iter().filter(|work| work.verb.word() == verb);
        let mut facts: BTreeMap<(usize, usize), (String, Span)> = BTreeMap::new();
        for work in works {
            for note in work.work.words.iter().map(of_text) {
                for pole in poles(&note.tokens, vocabulary) {
                    facts.entry((pole.pair, pole.side)).or_insert((spoken(pole.tokens), work.work.span));
                }
            }
        }
        if facts.is_empty() {
            continue;
        }
        let body = passages.iter().filter(|passage| passage.stands == Stands::Body);
        let sentences: Vec<&[Token<'_>]> =
            body.flat_map(|passage| passage.sentences()).filter(|sentence| any_of(sentence, forms)).collect();
        // What a description shows as done.
        let shown = passages.iter().filter(|passage| passage.stands == Stands::Alt);
        let done = vocabulary.done.get(verb).map_or(&[][..], Vec::as_slice);
        let shown: Vec<&[Token<'_>]> = shown.flat_map(|passage| done_to(passage, done)).collect();
        let each = facts.iter().flat_map(|fact| [(fact, &sentences), (fact, &shown)]);
        for (((pair, side), (fact, span)), sentences) in each {
            let told: Vec<Pole<'_>> = sentences.iter().flat_map(|sentence| poles(sentence, vocabulary)).collect();
            let says = |side: usize| told.iter().any(|pole| pole.pair == *pair && pole.side == side);
            if facts.contains_key(&(*pair, 1 - side)) || says(*side) {
                continue;
            }
            for pole in told.iter().filter(|pole| pole.pair == *pair) {
                let Some(at) = place(pole.tokens) else { continue };
                findings.push(
                    CHECK
                        .at(at, format!("“{}”, but the work of the step says “{fact}”", spoken(pole.tokens)))
                        .hint("mend the one or the other: the maker reads both")
                        .note(*span, "the work"),
                );
            }
        }
    }
}

/// What stands right behind the participles of a description: "pressed up".
fn done_to<'p>(passage: &'p Passage<'_>, done: &[String]) -> Vec<&'p [Token<'p>]> {
    let tokens = passage.tokens.as_slice();
    let at = (0..tokens.len()).filter(|at| one_of(tokens, *at, done).is_some());
    at.map(|at| &tokens[at..tokens.len().min(at + 4)]).collect()
}

/// One of two opposites, said.
pub(super) struct Pole<'t> {
    /// Which pair.
    pub pair: usize,
    /// Which of the two.
    pub side: usize,
    /// Where.
    pub tokens: &'t [Token<'t>],
}

/// The opposites that a sentence says, the longest phrase first: "right side up" says nothing of up.
pub(super) fn poles<'t>(tokens: &'t [Token<'t>], vocabulary: &Vocabulary) -> Vec<Pole<'t>> {
    let mut found = Vec::new();
    let mut at = 0;
    while at < tokens.len() {
        let all = vocabulary.opposites.iter().enumerate().flat_map(|(pair, sides)| {
            sides.iter().enumerate().filter_map(move |(side, words)| Some((pair, side, one_of(tokens, at, words)?)))
        });
        match all.max_by_key(|(_, _, phrase)| length(phrase)) {
            Some((pair, side, phrase)) => {
                found.push(Pole { pair, side, tokens: &tokens[at..at + length(phrase)] });
                at += length(phrase);
            }
            None => at += 1,
        }
    }
    found
}

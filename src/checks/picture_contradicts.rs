//! The description of a picture contradicts the words of its step.
//!
//! ## Why it matters
//! A maker who cannot see the picture has the description, and one who can looks at the picture first. "Glue side
//! up" there and "glue side down" in the words ruins an iron.
//!
//! ## Wrong
//! ````md
//! ## Press the pouch {#press-pouch}
//!
//! Lay the pouch with its zip face down, and press it.
//!
//! ![The pouch with its zip face up](figures/sew.svg)
//! ````
//!
//! ## Right
//! ````md
//! ## Press the pouch {#press-pouch}
//!
//! Lay the pouch with its zip face down, and press it.
//!
//! ![The pouch with its zip face down](figures/sew.svg)
//! ````
//!
//! ## Limits
//! Compares left and right, top and bottom, inner and outer before the same noun, and the sides that face each
//! other, up or out behind the same noun; the opposites stand in `templates/vocabulary-en.json`. Silent where the words say both.

use super::direction_contradicts::{Pole, poles};
use super::judge::{Judge, Subject};
use super::passage::{Passage, Stands, Token, place, stem};
use super::printed_words::each_step;
use super::spoken_names::{Spoken, called};
use crate::diag::{Check, Findings, Group, Home};
use crate::model::Vocabulary;
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("picture-contradicts", Group::Figures, include_str!("picture_contradicts.rs")).waivable_in(Home::Words),
    run,
);

/// A claim: which pair, which of the two, of what, and where.
struct Claim<'t> {
    pole: Pole<'t>,
    of: String,
    words: &'t [Token<'t>],
}

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    each_step(subject, &mut |edition, _, passages| {
        let names = names(edition);
        let claims = |alt: bool| -> Vec<Claim<'_>> {
            let of = passages.iter().filter(|passage| (passage.stands == Stands::Alt) == alt);
            of.flat_map(|passage| claims(passage, &names, subject.vocabulary)).collect()
        };
        let (told, shown) = (claims(false), claims(true));
        for claim in &shown {
            let same = |other: &Claim<'_>, side: usize| {
                other.pole.pair == claim.pole.pair && other.of == claim.of && other.pole.side == side
            };
            let against = told.iter().find(|other| same(other, 1 - claim.pole.side));
            let also = told.iter().chain(&shown).any(|other| same(other, claim.pole.side) && !std::ptr::eq(other, claim));
            let (Some(against), false) = (against, also) else { continue };
            let (Some(span), Some(words)) = (place(claim.words), place(against.words)) else { continue };
            findings.push(
                CHECK
                    .at(span, format!("the description says “{}”, and the words “{}”", said(claim.words), said(against.words)))
                    .hint("look at the picture, and mend the one that is wrong")
                    .note(words, "the words")
                    .in_size(edition.size(), ""),
            );
        }
    });
}

fn said(tokens: &[Token<'_>]) -> String {
    let words: Vec<&str> = tokens.iter().map(|token| token.raw.as_str()).filter(|word| !word.is_empty()).collect();
    words.join(" ")
}

/// The last words of all names: what a sentence may speak of.
fn names(edition: &Edition<'_>) -> Vec<Spoken> {
    let facts = &edition.draft.facts;
    let copies = edition.cast.copies().map(|(copy, _)| called(edition, copy));
    let pieces = facts.pieces.iter().map(|piece| Spoken::of(&piece.name.text));
    let fabrics = facts.fabrics.iter().map(|fabric| Spoken::of(&fabric.name.text));
    let notions = facts.notions.iter().map(|notion| Spoken::of(&notion.name.text));
    copies.chain(pieces).chain(fabrics).chain(notions).collect()
}

fn claims<'t>(passage: &'t Passage<'_>, names: &[Spoken], vocabulary: &Vocabulary) -> Vec<Claim<'t>> {
    let is_name = |word: &str| !word.is_empty() && names.iter().any(|name| name.head() == stem(word));
    let is_noun = |word: &str| is_name(word) || vocabulary.edge_words.iter().any(|edge| edge == word);
    let mut found = Vec::new();
    for sentence in passage.sentences() {
        for pole in poles(sentence, vocabulary) {
            let Some(at) = sentence.iter().position(|token| std::ptr::eq(token, &pole.tokens[0])) else { continue };
            let end = at + pole.tokens.len();
            if vocabulary.before_nouns.contains(&vocabulary.opposites[pole.pair]) {
                // "The left-hand edge" is the left one.
                let hand = sentence.get(end).is_some_and(|next| next.gap == "-");
                let end = end + usize::from(hand);
                let noun = sentence.get(end).filter(|next| next.gap == " " && !next.word.is_empty());
                if let Some(noun) = noun.filter(|noun| is_noun(&noun.word)) {
                    let of = stem(&noun.word).to_owned();
                    found.push(Claim { pole, of, words: &sentence[at..=end] });
                }
                continue;
            }
            // Of more than one word, it is said of what was named last: "the strip wrong side up".
            if pole.tokens.len() < 2 {
                continue;
            }
            let before = sentence[..at].iter().rposition(|token| is_name(&token.word));
            let of = before.map_or(String::new(), |noun| stem(&sentence[noun].word).to_owned());
            found.push(Claim { of, words: &sentence[before.unwrap_or(at)..end], pole });
        }
    }
    found
}

//! The words take cloth or a notion for given that is on no list.
//!
//! ## Why it matters
//! "Cut the facings out of the lining", where the booklet has no lining, or "the three buttons close it", where nobody has
//! bought any: the sentence is from another booklet, or the list lost a line.
//!
//! ## Wrong
//! ````md
//! ## Close the pouch {#close-pouch}
//!
//! The three buttons close it.
//! ````
//!
//! ## Right
//! ````md
//! ## Close the pouch {#close-pouch}
//!
//! Close it with your hand.
//! ````
//!
//! ## Limits
//! Looks in steps for the notions under `notion_words` behind "the", and for the cloth under `cloth_words` behind "out of
//! the" and "from the" in sentences that cut, where no fabric, notion, piece, tool or explained word of that size has such
//! a word in its name, or for notions in its note. Sentences that forbid or leave a choice are passed over. The words stand in
//! `templates/vocabulary-en.json`.

use super::judge::{Judge, Subject};
use super::passage::{Stands, Token, any_of, name_words, number, of_blocks, one_of, place, spoken, stem};
use super::printed_words::each_step;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{Block, Verb, Vocabulary, is_for};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("thing-not-listed", Group::Words, include_str!("thing_not_listed.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let vocabulary = subject.vocabulary;
    let known: Vec<(usize, Listed)> =
        subject.editions.iter().map(|edition| (edition.size(), listed(edition))).collect();
    each_step(subject, &mut |edition, _, passages| {
        let Some((_, known)) = known.iter().find(|(size, _)| *size == edition.size()) else { return };
        for passage in passages.iter().filter(|passage| passage.stands == Stands::Body) {
            for sentence in passage.sentences() {
                if any_of(sentence, &vocabulary.alternatives) || forbids(sentence, vocabulary) {
                    continue;
                }
                let Some(tokens) = notion(sentence, known, vocabulary).or_else(|| cloth(sentence, known, vocabulary))
                else {
                    continue;
                };
                let Some(span) = place(tokens) else { continue };
                findings.push(
                    CHECK
                        .at(span, format!("“{}”: no such thing is on the lists of this size", spoken(tokens)))
                        .hint("add it to the list, or name what is listed")
                        .in_size(edition.size(), ""),
                );
            }
        }
    });
}

/// Whether a sentence forbids something; "cut out of the lining" does not.
fn forbids(sentence: &[Token<'_>], vocabulary: &Vocabulary) -> bool {
    let cuts = vocabulary.verbs.get(Verb::Cut.word()).is_some_and(|forms| any_of(sentence, forms));
    let forbids = |at: usize| one_of(sentence, at, &vocabulary.forbids).is_some();
    let from_cloth = |at: usize| cuts && one_of(sentence, at, &vocabulary.out_of).is_some();
    (0..sentence.len()).any(|at| forbids(at) && !from_cloth(at))
}

/// All words of the names of what a size has, and of the notes beside them.
struct Listed {
    names: Vec<String>,
    notes: Vec<String>,
}

fn listed(edition: &Edition<'_>) -> Listed {
    let facts = &edition.draft.facts;
    let here = |sizes: &Option<Vec<usize>>| is_for(sizes.as_ref(), edition.size());
    let mut names: Vec<String> = Vec::new();
    let mut notes: Vec<&[Block]> = Vec::new();
    for one in facts.fabrics.iter().filter(|one| here(&one.sizes)) {
        names.extend([one.name.text.clone(), one.id.text.replace('_', " ")]);
        notes.push(&one.note);
    }
    for one in facts.notions.iter().filter(|one| here(&one.sizes)) {
        names.extend([one.name.text.clone(), one.id.text.replace('_', " ")]);
        notes.push(&one.note);
    }
    for one in facts.pieces.iter().filter(|one| here(&one.sizes)) {
        names.extend([one.name.text.clone(), one.id.text.replace('_', " ")]);
        notes.push(&one.note);
    }
    names.extend(edition.cast.copies().map(|(copy, _)| edition.copy_name(copy)));
    names.extend(edition.cast.copies().map(|(_, member)| member.name.replace('_', " ")));
    names.extend(facts.tools.iter().map(|tool| tool.name.text.clone()));
    names.extend(facts.words.iter().map(|word| word.term.text.clone()));
    let of_notes = notes.into_iter().flat_map(|note| of_blocks(note, Some(edition.size())));
    let of_notes = of_notes.flat_map(|passage| passage.tokens.into_iter().map(|token| stem(&token.word).to_owned()));
    Listed { names: names.iter().flat_map(|name| name_words(name)).collect(), notes: of_notes.collect() }
}

/// "The three buttons".
fn notion<'t>(sentence: &'t [Token<'t>], known: &Listed, vocabulary: &Vocabulary) -> Option<&'t [Token<'t>]> {
    (0..sentence.len()).find_map(|at| {
        vocabulary.the.contains(&sentence[at].word).then_some(())?;
        let counted = sentence.get(at + 1).is_some_and(|token| number(token, vocabulary).is_some());
        let noun = at + 1 + usize::from(counted);
        let token = sentence.get(noun).filter(|token| token.gap == " " && token.leads.is_none())?;
        let word = stem(&token.word).to_owned();
        (vocabulary.notion_words.contains(&word) && !known.names.contains(&word) && !known.notes.contains(&word))
            .then(|| &sentence[at..=noun])
    })
}

/// "Out of the lining", where something is cut.
fn cloth<'t>(sentence: &'t [Token<'t>], known: &Listed, vocabulary: &Vocabulary) -> Option<&'t [Token<'t>]> {
    let cuts = vocabulary.verbs.get(Verb::Cut.word()).is_some_and(|forms| any_of(sentence, forms));
    (0..sentence.len()).filter(|_| cuts).find_map(|at| {
        let phrase = one_of(sentence, at, &vocabulary.out_of)?;
        let from = at + super::passage::length(phrase);
        let near = from..sentence.len().min(from + 2);
        let noun =
            near.into_iter().find(|at| vocabulary.cloth_words.iter().any(|word| word == stem(&sentence[*at].word)))?;
        let word = stem(&sentence[noun].word).to_owned();
        let plain = sentence[noun].leads.is_none() && sentence[noun].gap == " ";
        (plain && !known.names.contains(&word)).then(|| &sentence[from..=noun])
    })
}

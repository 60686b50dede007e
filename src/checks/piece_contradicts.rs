//! The words have work done to a piece that the step does not touch, where it touches another of that name.
//!
//! ## Why it matters
//! "Fuse the interfacing to the under collar" beside work that fuses the upper one, or "lay a facing wrong side up" in the
//! step that hems the pockets: a sentence was copied, and the maker takes the wrong piece.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   tab: {name: Tab, outline: {rectangle: [5 cm, 5 cm]}, raw: all, cut: {outer: {upper: Upper tab, under: Under tab}}}
//! ```
//! ````md
//! ## Make the tabs {#tabs}
//!
//! ```work
//! - cut: tab
//! - press: under
//! ```
//!
//! Cut the tabs, and press one.
//!
//! ## Press the one {#press-one}
//!
//! ```work
//! - press: upper
//! ```
//!
//! Press the under tab.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   tab: {name: Tab, outline: {rectangle: [5 cm, 5 cm]}, raw: all, cut: {outer: {upper: Upper tab, under: Under tab}}}
//! ```
//! ````md
//! ## Make the tabs {#tabs}
//!
//! ```work
//! - cut: tab
//! - press: under
//! ```
//!
//! Cut the tabs, and press one.
//!
//! ## Press the one {#press-one}
//!
//! ```work
//! - press: upper
//! ```
//!
//! Press the upper tab.
//! ````
//!
//! ## Limits
//! Looks at sentences with a verb of the step's work, for the whole name of a copy that neither this work nor the work before
//! has to do with, where the work touches another one with the same last word and the step never names that; and right behind
//! "lay", "take" and the verbs of the work for the last word of such a name. Sentences that forbid, that leave a choice, or
//! that point to another step are passed over, and left and right have a check of their own. The words stand in
//! `templates/vocabulary-en.json`.

use std::collections::BTreeSet;

use super::judge::{Judge, Subject};
use super::passage::{Passage, Stands, Token, any_of, one_of, place, spoken, stem};
use super::picture_layers::{joined, near_words};
use super::printed_words::each_step;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::Vocabulary;
use crate::resolve::{CopyId, Edition, EditionStep};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("piece-contradicts", Group::Words, include_str!("piece_contradicts.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let vocabulary = subject.vocabulary;
    each_step(subject, &mut |edition, step, passages| {
        let near = joined(edition, step);
        if near.is_empty() || near.len() == edition.cast.len() {
            return;
        }
        let apart = Apart::of(edition, step, &near);
        for passage in passages.iter().filter(|passage| passage.stands == Stands::Body) {
            for sentence in passage.sentences().into_iter().filter(|sentence| is_plain(sentence, vocabulary)) {
                let found = apart
                    .whole(sentence, passages, step, vocabulary)
                    .or_else(|| apart.head(sentence, step, vocabulary));
                let Some((from, to)) = found else { continue };
                let Some(span) = place(&sentence[from..to]) else { continue };
                let message =
                    format!("“{}”, but the work of the step has nothing to do with it", spoken(&sentence[from..to]));
                findings.push(
                    CHECK
                        .at(span, message)
                        .hint("name the piece that the work touches, or mend the work")
                        .in_size(edition.size(), ""),
                );
            }
        }
    });
}

fn is_plain(sentence: &[Token<'_>], vocabulary: &Vocabulary) -> bool {
    let open = any_of(sentence, &vocabulary.alternatives) || any_of(sentence, &vocabulary.forbids);
    !open && !Passage::points_away(sentence)
}

/// What a step has nothing to do with.
struct Apart {
    /// The names of copies, in words.
    names: Vec<Vec<String>>,
    /// The names of the copies that the work touches.
    touched: Vec<Vec<String>>,
    /// The last words of the names, but for those that something near has in its name.
    heads: BTreeSet<String>,
}

impl Apart {
    fn of(edition: &Edition<'_>, step: &EditionStep<'_>, near: &BTreeSet<CopyId>) -> Apart {
        let words = |copy: CopyId| super::passage::name_words(&edition.copy_name(copy));
        let own: BTreeSet<CopyId> =
            step.works.iter().flat_map(|work| work.touched()).filter_map(|touched| touched.copy()).collect();
        let names: Vec<Vec<String>> =
            edition.cast.copies().map(|(copy, _)| copy).filter(|copy| !near.contains(copy)).map(words).collect();
        let known = near_words(edition, step, near);
        let heads = names.iter().filter_map(|name| name.last()).filter(|head| !known.contains(head)).cloned().collect();
        Apart { names, touched: own.into_iter().map(words).collect(), heads }
    }

    /// The whole name of a copy, where the work touches another one of its last word, which the step never names.
    fn whole(
        &self,
        sentence: &[Token<'_>],
        passages: &[Passage<'_>],
        step: &EditionStep<'_>,
        vocabulary: &Vocabulary,
    ) -> Option<(usize, usize)> {
        let verbs = step.works.iter().filter_map(|work| vocabulary.verbs.get(work.verb.word()));
        if !verbs.into_iter().any(|forms| any_of(sentence, forms)) {
            return None;
        }
        let hands =
            |name: &[String]| name.iter().any(|word| vocabulary.left_right.iter().any(|side| side.contains(word)));
        self.names.iter().filter(|name| name.len() > 1 && !hands(name)).find_map(|name| {
            let alike: Vec<&Vec<String>> =
                self.touched.iter().filter(|own| own.last() == name.last() && *own != name).collect();
            let body = || passages.iter().filter(|passage| passage.stands == Stands::Body);
            let named = |own: &[String]| {
                body().any(|passage| (0..passage.tokens.len()).any(|at| stands(&passage.tokens, at, own)))
            };
            let at = (0..sentence.len()).find(|at| stands(sentence, *at, name))?;
            let silent = alike.is_empty() || alike.iter().any(|own| own.len() < 2 || named(own));
            (!silent).then_some((at, at + name.len()))
        })
    }

    /// "Lay a facing": the last word of a name, right behind a verb and an article.
    fn head(&self, sentence: &[Token<'_>], step: &EditionStep<'_>, vocabulary: &Vocabulary) -> Option<(usize, usize)> {
        let verbs: Vec<&Vec<String>> = step
            .works
            .iter()
            .filter_map(|work| vocabulary.verbs.get(work.verb.word()))
            .chain([&vocabulary.lays])
            .collect();
        (0..sentence.len()).find_map(|at| {
            verbs.iter().find(|forms| one_of(sentence, at, forms).is_some())?;
            sentence.get(at + 1).filter(|token| vocabulary.articles.contains(&token.word))?;
            let noun = sentence.get(at + 2).filter(|token| token.gap == " " && token.leads.is_none())?;
            let next = sentence.get(at + 3);
            // "Sew the front seam" is a seam, "the front facing" a facing.
            let alone = next.is_none_or(|next| {
                next.gap.trim() != ""
                    || vocabulary.ends_a_name.contains(&next.word)
                    || is_laid(sentence, at + 3, vocabulary)
            });
            (alone && self.heads.contains(stem(&noun.word))).then_some((at + 1, at + 3))
        })
    }
}

/// "Right side up" and the like.
fn is_laid(sentence: &[Token<'_>], at: usize, vocabulary: &Vocabulary) -> bool {
    vocabulary
        .opposites
        .iter()
        .flatten()
        .any(|words| one_of(sentence, at, words).is_some_and(|phrase| phrase.contains(' ')))
}

/// Whether the words of a name stand at `at`, whatever their number.
fn stands(tokens: &[Token<'_>], at: usize, name: &[String]) -> bool {
    name.iter().enumerate().all(|(offset, word)| tokens.get(at + offset).is_some_and(|token| stem(&token.word) == word))
}

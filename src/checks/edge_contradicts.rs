//! The words fold, hem or sew another edge than the work does: the bottom for the top.
//!
//! ## Why it matters
//! "Fold the bottom edge over" where the work hems the top: the pocket is hemmed at the wrong end, and its opening stays
//! raw.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   tab: {name: Tab, outline: {rectangle: [9 cm, 9 cm]}, allowance: {all: seam}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make a tab {#tab}
//!
//! ```work
//! - cut: tab
//! - {hem: tab.top, allowance: seam, stitch: 2.5 mm}
//! - {topstitch: [tab, front], stitch: 3 mm}
//! ```
//!
//! Hem the bottom edge of the tab, and stitch it on.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   tab: {name: Tab, outline: {rectangle: [9 cm, 9 cm]}, allowance: {all: seam}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make a tab {#tab}
//!
//! ```work
//! - cut: tab
//! - {hem: tab.top, allowance: seam, stitch: 2.5 mm}
//! - {topstitch: [tab, front], stitch: 3 mm}
//! ```
//!
//! Hem the top edge of the tab, and stitch it on.
//! ````
//!
//! ## Limits
//! Looks for "the top edge", "the left-hand side" and the like right behind a verb of the step's work ("fold the bottom
//! edge"), behind a participle ("hemmed at the bottom", in descriptions too), and between "level with", "along" and the like
//! and the name of a piece ("level with the upper edge of the back"). Compares them with the names of the edges that such
//! work touches, where these are all at the other end. Silent where the sentence names the right one as well, or points to
//! another step. The words stand in `templates/vocabulary-en.json`.

use std::collections::BTreeSet;

use super::judge::{Judge, Subject};
use super::passage::{Passage, Stands, Token, length, one_of, place, spoken};
use super::printed_words::each_step;
use super::spoken_names::called;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{Verb, Vocabulary};
use crate::resolve::{Edition, EditionStep, EditionWork, Touched};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("edge-contradicts", Group::Words, include_str!("edge_contradicts.rs")).waivable_in(Home::Words),
    run,
);

/// One of two ends of a piece: which pair, and which of the two.
type End = (usize, usize);

/// An end that is said, with the words that say it.
struct Said<'t> {
    end: End,
    tokens: &'t [Token<'t>],
    from: usize,
    to: usize,
}

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let vocabulary = subject.vocabulary;
    each_step(subject, &mut |edition, step, passages| {
        for passage in passages.iter().filter(|passage| passage.stands != Stands::Title) {
            for sentence in passage.sentences() {
                if Passage::points_away(sentence) {
                    continue;
                }
                let all = said(sentence, vocabulary);
                for one in &all {
                    let other = (one.end.0, 1 - one.end.1);
                    let ends = worked(edition, step, sentence, one, vocabulary);
                    let both = all.iter().any(|also| also.end == other);
                    if both || ends.contains(&one.end) || !ends.contains(&other) {
                        continue;
                    }
                    let Some(span) = place(one.tokens) else { continue };
                    let true_one = vocabulary.ends[other.0][other.1].first().map_or("", String::as_str);
                    findings.push(
                        CHECK
                            .at(
                                span,
                                format!("“{}”, but this work of the step is at the {true_one}", spoken(one.tokens)),
                            )
                            .hint(format!("write “{true_one}”, or mend the edges in the work"))
                            .in_size(edition.size(), ""),
                    );
                }
            }
        }
    });
}

/// "The top edge", "the left-hand side", "at the bottom".
fn said<'t>(sentence: &'t [Token<'t>], vocabulary: &Vocabulary) -> Vec<Said<'t>> {
    let mut found = Vec::new();
    for at in 0..sentence.len() {
        let word = &sentence[at].word;
        let ends = vocabulary.ends.iter().enumerate();
        let mut ends = ends
            .flat_map(|(pair, sides)| (0..2).filter(|side| sides[*side].contains(word)).map(move |side| (pair, side)));
        let Some(end) = ends.next() else { continue };
        let hand = at + 1 + usize::from(sentence.get(at + 1).is_some_and(|next| next.gap == "-"));
        let is_edge = |token: &Token<'_>| token.gap == " " && vocabulary.edge_words.contains(&token.word);
        let named = (hand..sentence.len().min(hand + 2)).take_while(|at| is_edge(&sentence[*at])).last();
        let alone = || {
            let before = at.checked_sub(2).is_some_and(|from| one_of(sentence, from, &vocabulary.at_the).is_some());
            let closed = sentence.get(at + 1).is_none_or(|next| !next.gap.chars().all(char::is_whitespace));
            before && closed
        };
        match named {
            Some(last) => found.push(Said { end, tokens: &sentence[at..=last], from: at, to: last + 1 }),
            None if alone() => found.push(Said { end, tokens: &sentence[at..=at], from: at, to: at + 1 }),
            None => {}
        }
    }
    found
}

/// The ends that the work touches of which a sentence says one; none where it cannot be told.
fn worked(
    edition: &Edition<'_>,
    step: &EditionStep<'_>,
    sentence: &[Token<'_>],
    said: &Said<'_>,
    vocabulary: &Vocabulary,
) -> BTreeSet<End> {
    let before = (said.from.saturating_sub(4)..said.from).rev();
    let verb = before.clone().find_map(|at| {
        let of = |forms: &std::collections::BTreeMap<String, Vec<String>>| {
            forms.iter().find(|(_, forms)| one_of(sentence, at, forms).is_some()).map(|(verb, _)| verb.clone())
        };
        let plain = sentence[at + 1..said.from].iter().all(|token| vocabulary.before_an_edge.contains(&token.word));
        of(&vocabulary.verbs).or_else(|| of(&vocabulary.done)).filter(|_| plain)
    });
    if let Some(verb) = verb {
        let folds = |word: &str| vocabulary.folding.iter().any(|own| own == word);
        let exact = step.works.iter().any(|work| work.verb.word() == verb);
        let same = |work: &&EditionWork<'_>| {
            let word = work.verb.word();
            word == verb || !exact && folds(word) && folds(&verb)
        };
        return ends_of(edition, step.works.iter().filter(same), &|_| true, vocabulary);
    }
    let level = before.clone().find_map(|at| {
        let phrase = one_of(sentence, at, &vocabulary.level_with)?;
        let plain = sentence[at + length(phrase)..said.from]
            .iter()
            .all(|token| vocabulary.before_an_edge.contains(&token.word));
        plain.then_some(at)
    });
    let of_a_piece = level.and_then(|_| {
        let mut rest = sentence[said.to..].iter().take(3).skip_while(|token| vocabulary.of_the.contains(&token.word));
        rest.next().filter(|token| !token.word.is_empty())
    });
    let Some(noun) = of_a_piece else { return BTreeSet::new() };
    let joined = step.works.iter().filter(|work| work.verb != Verb::Mark);
    ends_of(
        edition,
        joined,
        &|touched| touched.copy().is_some_and(|copy| called(edition, copy).has(&noun.word)),
        vocabulary,
    )
}

/// The ends at which the edges lie that some work touches.
fn ends_of<'s>(
    edition: &Edition<'_>,
    works: impl Iterator<Item = &'s EditionWork<'s>>,
    counts: &dyn Fn(&Touched) -> bool,
    vocabulary: &Vocabulary,
) -> BTreeSet<End> {
    let mut ends = BTreeSet::new();
    for touched in works.flat_map(|work| work.touched()).filter(counts) {
        let Touched::Edge(copy, edge) = touched else { continue };
        let Some(edge) = edition.edge(copy, edge) else { continue };
        for word in edge.name.split('_') {
            for (pair, sides) in vocabulary.ends.iter().enumerate() {
                ends.extend((0..2).filter(|side| sides[*side].iter().any(|own| own == word)).map(|side| (pair, side)));
            }
        }
    }
    ends
}

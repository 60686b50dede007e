//! The words advise what hurts: to cut towards the hand, to sew over pins.
//!
//! ## Why it matters
//! One word turned round, and a caution sends the blade into the hand that holds the cloth.
//!
//! ## Wrong
//! ````md
//! ## Trim the threads {#threads}
//!
//! Cut towards yourself, thread by thread.
//! ````
//!
//! ## Right
//! ````md
//! ## Trim the threads {#threads}
//!
//! Cut away from yourself, thread by thread.
//! ````
//!
//! ## Limits
//! Looks for the words under `hazards` and the phrases under `dangers` in `templates/vocabulary-en.json`, in sentences
//! that neither forbid nor warn (common practice, no source): fingers before the needle or the blade, seams over pins
//! and metal, cuts towards the body, blades left open, irons left on; and for seams that are cut through and zips
//! that lie the wrong way up on a seam that is basted shut. What else may hurt is yours to see: no check says
//! that work is safe.

use super::judge::{Judge, Subject};
use super::passage::{Token, any_of, length, one_of, place, spoken};
use super::printed_words::each_passage;
use crate::diag::{Check, Findings, Group};
use crate::model::{Hazard, Vocabulary};

/// The check.
pub(super) static CHECK: Judge =
    Judge::booklet(&Check::error("danger-advised", Group::Words, include_str!("danger_advised.rs")).waivable(), run);

/// Looks at every printed passage.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let vocabulary = subject.vocabulary;
    each_passage(subject, &mut |passage| {
        for sentence in passage.sentences().into_iter().filter(|sentence| !any_of(sentence, &vocabulary.forbids)) {
            for (said, because) in advised(sentence, vocabulary) {
                if let Some(span) = place(said) {
                    let words = spoken(said).to_lowercase();
                    let message = match because {
                        "" => format!("“{words}” sends the maker into harm"),
                        because => format!("“{words}”: {because}"),
                    };
                    findings
                        .push(CHECK.at(span, message).hint("say what keeps the hands safe, or forbid it: “never …”"));
                }
            }
        }
    });
}

/// What a sentence advises that hurts, and what comes of it where that is said.
fn advised<'t>(sentence: &'t [Token<'t>], vocabulary: &'t Vocabulary) -> Vec<(&'t [Token<'t>], &'t str)> {
    let mut found: Vec<(usize, usize, &str)> = Vec::new();
    for at in 0..sentence.len() {
        let phrase = one_of(sentence, at, &vocabulary.dangers).map(|phrase| (at + length(phrase), ""));
        let chained = || {
            let all = vocabulary.hazards.iter();
            all.filter_map(|hazard| Some((chain(sentence, at, hazard)?, hazard.because.as_str()))).max()
        };
        let Some((end, because)) = phrase.or_else(chained) else { continue };
        // What began before, and ends at the same words, is told already.
        if found.last().is_none_or(|(_, last, _)| *last < end) {
            found.push((at, end, because));
        }
    }
    found.into_iter().map(|(from, to, because)| (&sentence[from..to], because)).collect()
}

/// Where a chain of phrases that begins at `at` ends.
fn chain(sentence: &[Token<'_>], at: usize, hazard: &Hazard) -> Option<usize> {
    let (first, rest) = hazard.chain.split_first()?;
    let mut end = first.iter().filter_map(|phrase| stands(sentence, at, phrase)).max()?;
    for group in rest {
        let near = end..sentence.len().min(end + hazard.reach + 1);
        end = near.into_iter().find_map(|at| group.iter().filter_map(|phrase| stands(sentence, at, phrase)).max())?;
    }
    Some(end)
}

/// The end of a phrase that begins at `at`; behind a full stop in the phrase nothing else is said.
fn stands(sentence: &[Token<'_>], at: usize, phrase: &str) -> Option<usize> {
    let last = phrase.strip_suffix(" .");
    let words = last.unwrap_or(phrase);
    let end = at + length(words);
    let closed = sentence.get(end).is_none_or(|next| !next.gap.chars().all(char::is_whitespace));
    (super::passage::says(sentence, at, words) && (last.is_none() || closed)).then_some(end)
}

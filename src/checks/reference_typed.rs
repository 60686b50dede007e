//! The number of a step, a page or a picture is typed by hand.
//!
//! ## Why it matters
//! A step more, or a size that leaves one out, and "step 9" is another step. A page has another number on
//! every paper.
//!
//! ## Wrong
//! ````md
//! ## Press the pouch {#press-pouch}
//!
//! Press the pouch as in step 2.
//! ````
//!
//! ## Right
//! ````md
//! ## Press the pouch {#press-pouch}
//!
//! Press the pouch once more, as in [](#turn).
//! ````
//!
//! ## Limits
//! Looks for the words under `numbered` in `templates/vocabulary-en.json` with a number behind them, in figures
//! or in words, and for "all nine steps" where no size has nine. "A figure of eight" is none,
//! nor is the name of a piece, such as "Part 1".

use super::judge::{Judge, Subject};
use super::passage::{Passage, number, place};
use super::printed_words::each_sentence;
use crate::diag::{Check, Findings, Group};
use crate::model::Vocabulary;

/// The check.
pub(super) static CHECK: Judge =
    Judge::booklet(&Check::error("reference-typed", Group::Words, include_str!("reference_typed.rs")).waivable(), run);

/// Looks at every printed passage.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    each_sentence(subject, &mut |passage| {
        look(passage, subject.vocabulary, findings);
        all_steps(passage, subject, findings);
    });
}

/// "All nine steps", where no size has nine.
fn all_steps(passage: &Passage<'_>, subject: &Subject<'_>, findings: &mut Findings) {
    let vocabulary = subject.vocabulary;
    let counts: Vec<usize> = subject.editions.iter().map(|edition| edition.steps().count()).collect();
    for three in passage.tokens.windows(3) {
        let [all, count, noun] = three else { continue };
        let says = vocabulary.counted_all.contains(&all.word) && vocabulary.steps.contains(&noun.word);
        let Some(count) = number(count, vocabulary).filter(|_| says && noun.gap == " ") else { continue };
        if !counts.iter().any(|steps| u32::try_from(*steps) == Ok(count))
            && let Some(span) = place(three)
        {
            let message = format!("there are {} steps, not {count}", counts.first().copied().unwrap_or(0));
            findings.push(CHECK.at(span, message).hint("leave the number out: “all steps”"));
        }
    }
}

fn look(passage: &Passage<'_>, vocabulary: &Vocabulary, findings: &mut Findings) {
    for (at, pair) in passage.tokens.windows(2).enumerate() {
        let [noun, figure] = pair else { continue };
        let named = vocabulary.numbered.contains(&noun.word) && noun.leads.is_none();
        let beside = matches!(figure.gap.as_str(), " " | "\u{a0}" | "-");
        if !named || !beside || number(figure, vocabulary).is_none() {
            continue;
        }
        // "step one foot back", "the part two fingers wide": a thing is counted.
        let counted = passage.tokens.get(at + 2).is_some_and(|next| {
            next.gap.chars().all(char::is_whitespace) && figure.word.parse::<u32>().is_err() && !next.word.is_empty()
        });
        if !counted && let Some(span) = place(pair) {
            let written = format!("{} {}", noun.raw, figure.raw);
            findings.push(
                CHECK
                    .at(span, format!("“{written}” is typed by hand, and will not follow what is added or left out"))
                    .hint("refer to it by its id: `[](#its-id)` prints the number of a step"),
            );
        }
    }
}

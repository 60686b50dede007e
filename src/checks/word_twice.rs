//! A word stands twice in a row.
//!
//! ## Why it matters
//! "Sew the the seam" is a slip of the hand. It makes the reader stumble, and doubt what stands beside it.
//!
//! ## Wrong
//! ````md
//! ## Press the pouch {#press-pouch}
//!
//! Press the the pouch, seam by seam.
//! ````
//!
//! ## Right
//! ````md
//! ## Press the pouch {#press-pouch}
//!
//! Press the pouch, seam by seam.
//! ````
//!
//! ## Limits
//! Words that may well stand twice, such as "that", are listed in `templates/vocabulary-en.json` under
//! `may_double`. Figures are passed over, and two words with a comma between them.

use super::judge::{Judge, Subject};
use super::passage::{Passage, place};
use super::printed_words::each_passage;
use crate::diag::{Check, Findings, Group};

/// The check.
pub(super) static CHECK: Judge =
    Judge::booklet(&Check::error("word-twice", Group::Words, include_str!("word_twice.rs")).waivable(), run);

/// Looks at every printed passage.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    // Without a vocabulary it is not known what may stand twice.
    if subject.vocabulary.may_double.is_empty() {
        return;
    }
    each_passage(subject, &mut |passage| look(passage, &subject.vocabulary.may_double, findings));
}

fn look(passage: &Passage<'_>, may: &[String], findings: &mut Findings) {
    for pair in passage.tokens.windows(2) {
        let [one, other] = pair else { continue };
        let word = one.word.as_str();
        let twice = !word.is_empty() && word == other.word && other.gap.chars().all(char::is_whitespace);
        if twice
            && word.chars().all(|letter| letter.is_alphabetic() || letter == '’')
            && !may.iter().any(|may| may == word)
            && let Some(span) = place(pair)
        {
            findings.push(CHECK.at(span, format!("“{word}” stands twice in a row")).hint("take one of the two out"));
        }
    }
}

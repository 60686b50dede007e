//! The words hold a mark of what is still to be written.
//!
//! ## Why it matters
//! "TBC" and "see page ??" are notes to oneself. In a booklet that was paid for they are read by hundreds.
//!
//! ## Wrong
//! ````md
//! ## Press the pouch {#press-pouch}
//!
//! Press the pouch. TBC: how hot.
//! ````
//!
//! ## Right
//! ````md
//! ## Press the pouch {#press-pouch}
//!
//! Press the pouch at the heat that its maker names.
//! ````
//!
//! ## Limits
//! The marks are listed in `templates/vocabulary-en.json` under `unfinished`; those in capitals are looked for
//! in capitals. A page cannot be named, since its number is not known before the booklet is set: a reference to
//! a step can.

use super::judge::{Judge, Subject};
use super::passage::{Passage, Token, length, place};
use super::printed_words::each_passage;
use crate::diag::{Check, Findings, Group};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("unfinished-words", Group::Words, include_str!("unfinished_words.rs")).waivable(),
    run,
);

/// Looks at every printed passage.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    each_passage(subject, &mut |passage| look(passage, &subject.vocabulary.unfinished, findings));
}

fn look(passage: &Passage<'_>, marks: &[String], findings: &mut Findings) {
    let tokens = &passage.tokens;
    for mark in marks {
        let is_words = mark.chars().all(|letter| letter.is_alphanumeric() || letter == ' ');
        for at in 0..tokens.len() {
            let hit = if is_words {
                stands(tokens, at, mark).then(|| place(&tokens[at..at + length(mark)])).flatten()
            } else {
                let after = tokens.get(at + 1).map_or(&passage.tail, |next| &next.gap);
                let before = at == 0 && tokens[0].gap.contains(mark.as_str());
                (before || after.contains(mark.as_str())).then_some(tokens[at].span)
            };
            if let Some(span) = hit {
                let hint = match mark.contains("page") {
                    true => "refer to the step: `[](#its-id)`, which prints its number",
                    false => "write what is missing, or take the mark out",
                };
                findings.push(CHECK.at(span, format!("“{mark}” is a note to oneself")).hint(hint));
            }
        }
    }
}

/// Capitals are looked for as capitals, other words in any case.
fn stands(tokens: &[Token<'_>], at: usize, mark: &str) -> bool {
    let capitals = mark.chars().all(|letter| !letter.is_lowercase());
    let mut words = mark.split(' ').enumerate();
    words.all(|(offset, word)| {
        tokens.get(at + offset).is_some_and(|token| {
            let same = if capitals { token.raw == word } else { token.word == word };
            same && (offset == 0 || token.gap.chars().all(char::is_whitespace))
        })
    })
}

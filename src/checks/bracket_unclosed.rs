//! A bracket or a quotation is opened and never closed, or closed and never opened.
//!
//! ## Why it matters
//! The reader looks for the end of the aside, or half a link such as `[zip](notion:zip` is printed as it stands.
//!
//! ## Wrong
//! ````md
//! ## Press the pouch {#press-pouch}
//!
//! Press the pouch (with a cloth between, and go on.
//! ````
//!
//! ## Right
//! ````md
//! ## Press the pouch {#press-pouch}
//!
//! Press the pouch (with a cloth between), and go on.
//! ````
//!
//! ## Limits
//! Looks at `( )`, `[ ]` and `“ ”` inside one paragraph. "a)" and "1)" at the start of a word are no brackets.

use super::judge::{Judge, Subject};
use super::passage::Passage;
use super::printed_words::each_passage;
use crate::diag::{Check, Findings, Group};
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("bracket-unclosed", Group::Words, include_str!("bracket_unclosed.rs")).waivable(),
    run,
);

const PAIRS: &[(char, char)] = &[('(', ')'), ('[', ']'), ('“', '”')];

/// Looks at every printed passage.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    each_passage(subject, &mut |passage| look(passage, findings));
}

fn look(passage: &Passage<'_>, findings: &mut Findings) {
    let mut open: Vec<(char, Span)> = Vec::new();
    let mut stray: Vec<(char, Span)> = Vec::new();
    let gaps = passage.tokens.iter().map(|token| (token.gap.as_str(), token.span));
    let tail = passage.tokens.last().map(|token| (passage.tail.as_str(), token.span));
    let mut before: Option<&str> = None;
    for ((gap, beside), word) in gaps.chain(tail).zip(passage.tokens.iter().map(Some).chain([None])) {
        for (at, letter) in gap.chars().enumerate() {
            if let Some((_, _)) = PAIRS.iter().find(|(opens, _)| *opens == letter) {
                open.push((letter, beside));
            } else if let Some((opens, _)) = PAIRS.iter().find(|(_, closes)| *closes == letter) {
                match open.iter().rposition(|(other, _)| other == opens) {
                    Some(at) => {
                        open.remove(at);
                    }
                    // "a)" counts; so does an inch sign behind a figure.
                    None if at == 0 && before.is_some_and(is_label) => {}
                    None => stray.push((letter, beside)),
                }
            }
        }
        before = word.map(|token| token.word.as_str());
    }
    for (letter, span) in open {
        findings.push(
            CHECK.at(span, format!("`{letter}` is opened here and never closed")).hint("close it, or take it out"),
        );
    }
    for (letter, span) in stray {
        findings.push(
            CHECK.at(span, format!("`{letter}` closes here what was never opened")).hint("open it, or take it out"),
        );
    }
}

fn is_label(word: &str) -> bool {
    word.chars().count() <= 2 || word.ends_with(|letter: char| letter.is_ascii_digit())
}

//! A figure in one system stands beside another measurement in the other system.
//!
//! ## Why it matters
//! `{width | first} ({height | second})` reads as one length in two systems, and is two lengths.
//!
//! ## Wrong
//! ````md
//! ## Look at it {#look}
//!
//! The pouch is {width | first} wide, which is {height | second}.
//! ````
//!
//! ## Right
//! ````md
//! ## Look at it {#look}
//!
//! The pouch is {width | first} wide, which is {width | second}.
//! ````
//!
//! ## Limits
//! Looks at one sentence or one diagram at a time, and is silent where each measurement stands there in both systems
//! or all of them in one.

use super::judge::{Judge, Subject};
use super::printed_words::each_passage;
use crate::diag::{Check, Findings, Group};
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge =
    Judge::booklet(&Check::error("systems-mixed", Group::Words, include_str!("systems_mixed.rs")).waivable(), run);

/// How far two labels may be from each other in the file to be a pair, in bytes.
const TOGETHER: usize = 120;

/// A figure in one system alone: `first` or `second`, the formula, its place.
type Figure<'a> = (&'a str, &'a str, Span);

/// Looks at every sentence and every diagram.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    each_passage(subject, &mut |passage| {
        for sentence in passage.sentences() {
            let figures = sentence.iter().filter_map(|token| {
                let (formula, filter) = token.brace?;
                Some((filter?.name.as_str(), formula.source.text.trim(), token.span))
            });
            look(&figures.collect::<Vec<_>>(), findings);
        }
    });
    for drawing in &subject.figures.systems {
        for (at, (system, formula, span)) in drawing.iter().enumerate() {
            let alike = |other: &&(String, String, Span)| other.1 == *formula;
            let twice =
                at.checked_sub(1).is_some_and(|before| alike(&&drawing[before]) && drawing[before].0 == *system);
            let near = || span.range().start.saturating_sub(drawing[at - 1].2.range().end) < TOGETHER;
            let one_system = drawing.iter().filter(alike).all(|other| other.0 == *system);
            if twice && one_system && near() {
                let other = if system == "first" { "second" } else { "first" };
                findings.push(
                    CHECK
                        .at(*span, format!("`{formula}` stands here twice in one system, and nowhere in the other"))
                        .hint(format!("write `{{{formula} | {other}}}` in one of the two places")),
                );
            }
        }
        let figures = drawing.iter().map(|(system, formula, span)| (system.as_str(), formula.as_str(), *span));
        look(&figures.collect::<Vec<_>>(), findings);
    }
}

fn look(figures: &[Figure<'_>], findings: &mut Findings) {
    let says = |system: &str, formula: &str| figures.iter().any(|(of, other, _)| *of == system && *other == formula);
    for (_, formula, span) in figures.iter().filter(|(system, ..)| *system == "second") {
        if says("first", formula) {
            continue;
        }
        // One that lacks its second figure: most likely the one that was meant.
        let lone = figures.iter().filter(|(system, other, _)| *system == "first" && !says("second", other));
        let distance = |other: &&Figure<'_>| other.2.range().start.abs_diff(span.range().start);
        if let Some((_, other, _)) = lone.min_by_key(distance) {
            findings.push(
                CHECK
                    .at(*span, format!("`{formula}` stands here beside `{other}` in the other system"))
                    .hint(format!("write `{{{other} | second}}`, or `{{{other}}}` alone, which prints both")),
            );
        }
    }
}

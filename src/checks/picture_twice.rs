//! One picture, or one description, stands in two steps.
//!
//! ## Why it matters
//! Copied with the step before it and never changed, it shows work that is not done here.
//!
//! ## Wrong
//! ````md
//! ## Press the pouch {#press-pouch}
//!
//! Press the pouch.
//!
//! ![Two pieces, right sides together, sewn on three sides](figures/sew.svg)
//! ````
//!
//! ## Right
//! ````md
//! ## Press the pouch {#press-pouch}
//!
//! Press the pouch, as it lay in [](#sew).
//! ````
//!
//! ## Limits
//! Compares the path as it is written and the words of the description; pictures that the compiler draws are
//! compared by their descriptions alone, and a shared part that stands in two places is read once.

use std::collections::BTreeMap;

use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group, Home};
use crate::figure::DRAW;
use crate::model::{Figure, Inline, PrintedText};
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("picture-twice", Group::Figures, include_str!("picture_twice.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the pictures of all steps.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let mut paths: BTreeMap<String, (Span, Span)> = BTreeMap::new();
    let mut words: BTreeMap<String, (Span, Span)> = BTreeMap::new();
    for (_, step) in subject.draft.steps() {
        let mut figures: Vec<&Figure> = Vec::new();
        step.body.iter().for_each(|block| block.each_figure(&mut |figure| figures.push(figure)));
        for figure in figures {
            let path = figure.path.text.as_str();
            let drawn = path.starts_with(DRAW);
            let before = if drawn { None } else { first(&mut paths, path.to_owned(), figure, step.span) };
            let told = said(&figure.alt);
            let same = if told.is_empty() { None } else { first(&mut words, told, figure, step.span) };
            let (message, other) = match (before, same) {
                (Some(other), _) => (format!("`{path}` stands in another step already"), other),
                (None, Some(other)) => ("these very words describe the picture of another step".to_owned(), other),
                (None, None) => continue,
            };
            findings.push(
                CHECK
                    .at(figure.span, message)
                    .hint("show and describe what is done here; where nothing new is seen, refer to the other step")
                    .note(other, "the other, here"),
            );
        }
    }
}

/// Where it stood first, in another step.
fn first(seen: &mut BTreeMap<String, (Span, Span)>, what: String, figure: &Figure, step: Span) -> Option<Span> {
    let (span, in_step) = *seen.entry(what).or_insert((figure.span, step));
    (in_step != step).then_some(span)
}

fn said(alt: &[Inline]) -> String {
    let mut words = String::new();
    Inline::each_text(alt, &mut |printed| match printed {
        PrintedText::Words(text) | PrintedText::Set(text) => words.push_str(&text.text),
    });
    words.trim().to_owned()
}

//! The booklet is in another language, and the words of the house are still English.
//!
//! ## Why it matters
//! Titles such as “What you need”, the usual cautions and the names of the verbs come from the house. Half of the page
//! would be in one language and half in the other, and a reader aloud would speak both as one.
//!
//! ## Wrong
//! ```yaml
//! language: de
//! ```
//!
//! ## Right
//! ```yaml
//! language: en-GB
//! ```
//!
//! ## Limits
//! Silent once the booklet's folder has a `templates/labels-en.json` of its own, which takes the place of the house's
//! words. Whether its words are of the language that is stated cannot be known.

use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group, Home};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("house-words-english", Group::Facts, include_str!("house_words_english.rs"))
        .waivable_in(Home::Facts),
    run,
);

/// Looks at the language and at whether the booklet brought words of its own.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let language = &subject.draft.facts.language;
    if is_english(&language.text) || !subject.labels.is_empty() {
        return;
    }
    findings.push(
        CHECK
            .at(language.span, format!("the booklet is in `{}`, and the words of the house are English", language.text))
            .hint("put the words in your language into `templates/labels-en.json` of the booklet's folder; for an English booklet write `language: en-GB`"),
    );
}

/// Whether a tag is one of English, or none that is known.
pub(super) fn is_english(tag: &str) -> bool {
    let language = tag.split(['-', '_']).next().unwrap_or("").to_lowercase();
    !(2..=3).contains(&language.len()) || ["en", "eng", "gb", "us"].contains(&language.as_str())
}

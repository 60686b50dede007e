//! A size is named for a child and is not for a child, or the other way round.
//!
//! ## Why it matters
//! A size with `wearer: child` carries the caution on cords, small parts and fabrics that burn, and is held to stricter
//! checks. A child's size that passes for an adult's goes out without any of it.
//!
//! ## Wrong
//! ```yaml
//! sizes:
//!   small: {name: 3–4 years, wearer: adult}
//!   large: {name: Large, wearer: adult}
//! ```
//!
//! ## Right
//! ```yaml
//! sizes:
//!   small: {name: 3–4 years, wearer: child}
//!   large: {name: Large, wearer: adult}
//! ```
//!
//! ## Limits
//! Goes by the names of sizes, on the page and in the files: words such as child, baby or toddler, ages in months, and in
//! years below 16; woman, man and adult for the others. They stand in `templates/needs-en.json`. English booklets alone.

use super::house_words_english::is_english;
use super::judge::{Judge, Subject};
use super::needed::{is_of_child, says};
use crate::diag::{Check, Findings, Group, Home};
use crate::model::Wearer;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("wearer-contradicted", Group::Facts, include_str!("wearer_contradicted.rs")).waivable_in(Home::Facts),
    run,
);

/// Holds the name of every size against its wearer.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let facts = &subject.draft.facts;
    if !is_english(&facts.language.text) {
        return;
    }
    let harm = &subject.needs.harm;
    for size in &facts.sizes {
        let names = [size.name.clone(), size.id.text.replace('_', " ")];
        let child = names.iter().any(|name| is_of_child(name, harm));
        let adult = names.iter().any(|name| says(name, &harm.adult));
        let (named, other) = match (child, adult, size.wearer) {
            (true, false, Wearer::Adult) => ("a child", "child"),
            (false, true, Wearer::Child) => ("an adult", "adult"),
            _ => continue,
        };
        let says = match size.wearer_at {
            None => "does not say so",
            Some(_) if other == "child" => "says that an adult wears it",
            Some(_) => "says that a child wears it",
        };
        findings.push(
            CHECK
                .at(
                    size.wearer_at.unwrap_or(size.name_at),
                    format!("the size “{}” is named for {named}, and {says}", size.name),
                )
                .hint(format!("write `{}: {{name: {}, wearer: {other}}}`", size.id.text, size.name)),
        );
    }
}

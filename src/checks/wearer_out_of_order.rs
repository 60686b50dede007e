//! A size for an adult stands among those for children, though it is no larger than they are.
//!
//! ## Why it matters
//! One word decides whether a size carries the cautions for children. Where the smallest of three toys is said to be for an
//! adult and the larger two for a child, the word slipped, and that size goes out without them.
//!
//! ## Wrong
//! ```yaml
//! sizes:
//!   small: {name: Small, wearer: adult}
//!   large: {name: Large, wearer: child}
//! ```
//!
//! ## Right
//! ```yaml
//! sizes:
//!   small: {name: Small, wearer: child}
//!   large: {name: Large, wearer: child}
//! ```
//!
//! ## Limits
//! Looks at the sizes of one view in the order in which they stand: one for an adult before one for a child, with no
//! measurement that is larger there; and one for an adult among two or more for children, where the thing is filled, or the
//! title or the summary calls it a toy. Common practice, no source.

use super::house_words_english::is_english;
use super::judge::{Judge, Subject};
use super::needed::{is_of_child, says};
use super::rows::rows;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{Verb, Wearer, by_view};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("wearer-out-of-order", Group::Facts, include_str!("wearer_out_of_order.rs")).waivable_in(Home::Facts),
    run,
);

/// Holds every size for an adult against those for children.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let sizes = &subject.draft.facts.sizes;
    let rows = rows(subject);
    let toy = is_toy(subject);
    for view in by_view(sizes) {
        let (children, adults): (Vec<usize>, Vec<usize>) =
            view.iter().copied().partition(|size| sizes[*size].wearer == Wearer::Child);
        for adult in adults.iter().copied() {
            let larger = |child: usize| {
                let both = rows.iter().filter_map(|row| row.over(&[adult, child]));
                both.into_iter().any(|two| two[0] > two[1])
            };
            let behind = children.iter().copied().find(|child| *child > adult && !larger(*child));
            // One among many of a toy.
            let lone = toy && children.len() > 1 && children.len() + 1 == view.len();
            let Some(child) = behind.or(children.first().copied().filter(|_| lone)) else { continue };
            let (own, other) = (&sizes[adult], &sizes[child]);
            // What the names tell has a check of its own.
            let harm = &subject.needs.harm;
            if [own, other].into_iter().any(|size| is_of_child(&size.name, harm) || says(&size.name, &harm.adult)) {
                continue;
            }
            let why = match behind {
                Some(_) => format!("“{}”, which is for a child, comes after it and is no smaller", other.name),
                None => format!("“{}” of the same toy, or thing that is filled, is for a child", other.name),
            };
            let place = own.wearer_at.unwrap_or(own.name_at);
            findings.push(
                CHECK
                    .at(place, format!("the size “{}” is not for a child, and {why}", own.name))
                    .hint(format!(
                        "write `{}: {{name: {}, wearer: child}}`, or mend the other size",
                        own.id.text, own.name
                    ))
                    .note(other.wearer_at.unwrap_or(other.name_at), "the size for a child"),
            );
        }
    }
}

/// Whether the thing is called a toy, or is filled.
pub(super) fn is_toy(subject: &Subject<'_>) -> bool {
    let facts = &subject.draft.facts;
    let called = || {
        let texts = [Some(&facts.title), facts.summary.as_ref()];
        texts.into_iter().flatten().any(|text| says(&text.text, &subject.needs.harm.toy))
    };
    let filled = || subject.draft.steps().flat_map(|(_, step)| &step.works).any(|work| work.verb == Verb::Stuff);
    filled() || (is_english(&facts.language.text) && called())
}

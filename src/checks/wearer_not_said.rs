//! A toy, a thing for a child or something that is filled does not say who will have it in hand.
//!
//! ## Why it matters
//! A soft toy and a doorstop are sewn by the same steps. Only the author knows whether a child will chew it, and only with
//! `wearer: child` does the booklet carry the caution and are cords and small parts looked at.
//!
//! ## Wrong
//! ```yaml
//! title: Tide Whale, a soft toy
//! sizes:
//!   small: Small
//!   large: Large
//! ```
//!
//! ## Right
//! ```yaml
//! title: Tide Whale, a soft toy
//! sizes:
//!   small: {name: Small, wearer: child}
//!   large: {name: Large, wearer: child}
//! ```
//!
//! ## Limits
//! Goes by the title and the summary (toy, doll, baby and the like, from `templates/needs-en.json`) and by the verb `stuff`.
//! Silent for sizes that say `wearer: child` or `wearer: adult`. English booklets alone.

use super::house_words_english::is_english;
use super::judge::{Judge, Subject};
use super::needed::{is_of_child, says};
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{Facts, Verb};
use crate::source::Span;
use crate::syntax::Harm;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("wearer-not-said", Group::Facts, include_str!("wearer_not_said.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at every size that does not say who it is for.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let facts = &subject.draft.facts;
    if !is_english(&facts.language.text) {
        return;
    }
    let title = titled(facts, &subject.needs.harm);
    for edition in subject.editions {
        let size = edition.size_facts();
        let stuffed = edition.steps().flat_map(|step| &step.works).find(|work| work.verb == Verb::Stuff);
        let stuffed = stuffed.map(|work| (work.work.verb_span, "it is filled"));
        let Some((place, why)) = title.or(stuffed).filter(|_| size.wearer_at.is_none()) else { continue };
        // The name tells already, which has a check of its own.
        if is_of_child(&size.name, &subject.needs.harm) {
            continue;
        }
        findings.push(
            CHECK
                .at(size.name_at, format!("the size “{}” does not say who it is for, and {why}", size.name))
                .hint(format!("write `{}: {{name: {}, wearer: child}}`, or `wearer: adult`", size.id.text, size.name))
                .note(place, "seen here"),
        );
    }
}

/// Where the title or the summary speaks of a toy or of a child, and of which.
fn titled(facts: &Facts, harm: &Harm) -> Option<(Span, &'static str)> {
    let texts = [Some(&facts.title), facts.summary.as_ref()];
    texts.into_iter().flatten().find_map(|text| {
        if says(&text.text, &harm.toy) {
            return Some((text.span, "the booklet speaks of a toy"));
        }
        is_of_child(&text.text, harm).then_some((text.span, "the booklet speaks of a child"))
    })
}

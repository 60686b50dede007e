//! Steps sew, and no thread is on the list of what to buy.
//!
//! ## Why it matters
//! The maker buys what the list names, and stands before the machine without thread, or with one that is too weak.
//!
//! ## Wrong
//! ```yaml
//! notions: {zip: {kind: zip, name: Closed-end zip, length: 20 cm (8 in), count: 1}}
//! ```
//! ````md
//! ## Sew in the zip {#zip}
//!
//! ```work
//! - attach: [zip, front]
//!   by: hand
//! ```
//!
//! Sew in the zip by hand.
//! ````
//!
//! ## Right
//! ```yaml
//! notions:
//!   zip: {kind: zip, name: Closed-end zip, length: 20 cm (8 in), count: 1}
//!   thread: {kind: thread, name: All-purpose thread}
//! ```
//! ````md
//! ## Sew in the zip {#zip}
//!
//! ```work
//! - attach: [zip, front]
//!   by: hand
//! ```
//!
//! Sew in the zip by hand.
//! ````
//!
//! ## Limits
//! A notion of the kind `thread` counts, and any notion or tool whose name says thread, floss or the like. Silent where
//! the booklet lists neither notions nor tools. English booklets alone.

use super::house_words_english::is_english;
use super::judge::{Judge, Subject};
use super::needed::List;
use crate::diag::{Check, Findings, Group};
use crate::model::{Kind, is_for};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge =
    Judge::booklet(&Check::warning("thread-missing", Group::Work, include_str!("thread_missing.rs")).waivable(), run);

/// Looks at the list of every size that sews.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let facts = &subject.draft.facts;
    let listed = !facts.notions.is_empty() || !facts.tools.is_empty();
    if !listed || !is_english(&facts.language.text) {
        return;
    }
    for edition in subject.editions {
        let sewn = edition.steps().flat_map(|step| &step.works).find(|work| work.verb.stitches());
        let Some(sewn) = sewn.filter(|_| !has_thread(edition, subject)) else { continue };
        let thread = facts.notions.iter().find(|notion| notion.kind == Kind::Thread);
        let place = thread.map(|notion| notion.id.span).or(facts.lists_at[0]).unwrap_or(sewn.work.verb_span);
        let hint = match thread {
            Some(thread) => {
                format!("`{}` is for other sizes: take its `for:` out, or add one for these", thread.id.text)
            }
            None => "add it to `notions:`: `thread: {kind: thread, name: All-purpose thread}`".to_owned(),
        };
        findings.push(
            CHECK
                .at(place, "the steps sew, and no thread is among the notions")
                .hint(hint)
                .note(sewn.work.verb_span, "sewn here")
                .in_size(edition.size(), ""),
        );
    }
}

fn has_thread(edition: &Edition<'_>, subject: &Subject<'_>) -> bool {
    let facts = &subject.draft.facts;
    let own = || facts.notions.iter().filter(|notion| is_for(notion.sizes.as_ref(), edition.size()));
    if own().any(|notion| notion.kind == Kind::Thread) {
        return true;
    }
    // Where the other sizes have a reel, floss is for something else.
    if facts.notions.iter().any(|notion| notion.kind == Kind::Thread) {
        return false;
    }
    let names =
        own().map(|notion| notion.name.text.as_str()).chain(facts.tools.iter().map(|tool| tool.name.text.as_str()));
    let list = List::of(names, subject.needs);
    subject.needs.tools.get("thread").is_some_and(|need| list.names(need))
}

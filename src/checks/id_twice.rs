//! Two steps or parts have one id, so that a reference to it is uncertain.
//!
//! ## Why it matters
//! “Go back to step 7” and “go back to step 9” cannot both be meant by one reference. Which of the
//! two is printed would be chance.
//!
//! ## Wrong
//! ````md
//! ## Press the seams {#press}
//!
//! Press the seams open.
//!
//! ## Press the pouch {#press}
//!
//! Press the whole pouch.
//! ````
//!
//! ## Right
//! ````md
//! ## Press the seams {#press-seams}
//!
//! Press the seams open.
//!
//! ## Press the pouch {#press-pouch}
//!
//! Press the whole pouch.
//! ````
//!
//! ## Limits
//! Looks at parts and steps through the whole booklet, whichever sizes they are for. A shared part
//! that is listed twice may keep its ids: its own references lead to the steps of the same use, those
//! from elsewhere to the first.

use super::judge::Judge;
use std::collections::BTreeMap;

use super::judge::Subject;
use crate::diag::{Check, Findings, Group};
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge =
    Judge::booklet(&Check::error("id-twice", Group::Words, include_str!("id_twice.rs")), run);

/// Looks at the ids of all parts and steps.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let mut seen: BTreeMap<&str, Span> = BTreeMap::new();
    let parts = &subject.draft.parts;
    let ids = parts.iter().flat_map(|part| part.id.iter().chain(part.steps.iter().filter_map(|step| step.id.as_ref())));
    for id in ids {
        match seen.get(id.text.as_str()) {
            // The same words, read again for a second use of their part.
            Some(first) if *first == id.span => {}
            Some(first) => findings.push(
                CHECK
                    .at(id.span, format!("the id `{}` is given twice", id.text))
                    .hint("give this one another: references must lead to one place")
                    .note(*first, "the first one"),
            ),
            None => {
                seen.insert(&id.text, id.span);
            }
        }
    }
}

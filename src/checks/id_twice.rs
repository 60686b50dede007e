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
//! Looks at parts and steps through the whole booklet; two that no size has both of may share an id. A shared part
//! that is listed twice may keep its ids: its own references lead to the steps of the same use, those
//! from elsewhere to the first.

use super::judge::Judge;
use std::collections::{BTreeMap, BTreeSet};

use super::judge::Subject;
use crate::diag::{Check, Findings, Group};
use crate::model::{Name, Part, Step, is_for};
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge =
    Judge::booklet(&Check::error("id-twice", Group::Words, include_str!("id_twice.rs")), run);

/// Looks at the ids of all parts and steps.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let mut seen: BTreeMap<&str, Vec<(Span, Vec<usize>)>> = BTreeMap::new();
    let mut told: BTreeSet<Span> = BTreeSet::new();
    for (id, sizes) in ids(subject) {
        let known = seen.entry(id.text.as_str()).or_default();
        // The same words, read again for a second use of their part, are one place.
        let other = |(span, of): &&(Span, Vec<usize>)| *span != id.span && sizes.iter().any(|size| of.contains(size));
        if let Some((first, _)) = known.iter().find(other)
            && told.insert(id.span)
        {
            findings.push(
                CHECK
                    .at(id.span, format!("the id `{}` is given twice", id.text))
                    .hint("give this one another: references must lead to one place")
                    .note(*first, "the first one"),
            );
        }
        known.push((id.span, sizes));
    }
}

/// Every id of a part or a step, with the sizes that have it.
fn ids<'a>(subject: &Subject<'a>) -> Vec<(&'a Name, Vec<usize>)> {
    let draft = subject.draft;
    let all = 0..draft.facts.sizes.len();
    let sizes = |part: &Part, step: Option<&Step>| -> Vec<usize> {
        let has = |size: &usize| {
            is_for(part.sizes.as_ref(), *size) && step.is_none_or(|step| is_for(step.sizes.as_ref(), *size))
        };
        all.clone().filter(has).collect()
    };
    let mut found = Vec::new();
    for part in &draft.parts {
        found.extend(part.id.as_ref().map(|id| (id, sizes(part, None))));
        found.extend(part.steps.iter().filter_map(|step| Some((step.id.as_ref()?, sizes(part, Some(step))))));
    }
    found
}

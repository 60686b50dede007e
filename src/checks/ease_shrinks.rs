//! The ease over the body grows smaller from one size to the next.
//!
//! ## Why it matters
//! Ease stays the same or grows with the size. Where it shrinks, the finished measurements grow more slowly
//! than the bodies, and the larger sizes sit tight without anybody having meant it.
//!
//! ## Wrong
//! ```yaml
//! body:
//!   Bust: [84 cm (33 in), 88 cm (34 5/8 in)]
//! finished:
//!   Chest: {value: [92 cm (36 1/4 in), 94 cm (37 in)], over: Bust}
//! ```
//!
//! ## Right
//! ```yaml
//! body:
//!   Bust: [84 cm (33 in), 88 cm (34 5/8 in)]
//! finished:
//!   Chest: {value: [92 cm (36 1/4 in), 96 cm (37 3/4 in)], over: Bust}
//! ```
//!
//! ## Limits
//! Looks at finished measurements that say what they go `over:`, in the order of `sizes`. What is smaller
//! than the body stretches, and is left to `ease-negative`. A difference within the tolerance of `show:` is
//! nothing. That ease does not shrink is common practice, no source.

use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group, Home};
use crate::model::by_view;
use crate::resolve::{Ease, Edition};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("ease-shrinks", Group::Facts, include_str!("ease_shrinks.rs")).waivable_in(Home::Facts),
    run,
);

/// Holds the ease of each size against that of the size before it.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let views = by_view(&subject.draft.facts.sizes);
    for (at, facts) in subject.draft.facts.finished.iter().enumerate() {
        for (before, here) in views.iter().flat_map(|own| own.iter().zip(&own[1..])) {
            let (before, here) = (&subject.editions[*before], &subject.editions[*here]);
            let (Some(less), Some(ease)) = (ease(before, at), ease(here, at)) else { continue };
            let falls = ease.quantity.value.checked_add(subject.draft.facts.show.tolerance);
            let falls = falls.is_some_and(|most| most < less.quantity.value);
            if !falls || ease.quantity.value.is_negative() {
                continue;
            }
            let text = |ease: &Ease| ease.shown.first.to_string().replace('\u{a0}', " ");
            let sizes = [here, before].map(|edition| edition.size_facts().id.text.as_str());
            findings.push(
                CHECK
                    .at(
                        ease.span,
                        format!(
                            "“{}” has {} of ease over “{}” in {}, less than the {} of {}",
                            facts.name.text,
                            text(ease),
                            ease.over,
                            sizes[0],
                            text(less),
                            sizes[1]
                        ),
                    )
                    .hint("see whether a figure is wrong; if it is meant, waive it and say why")
                    .in_size(here.size(), ""),
            );
        }
    }
}

fn ease<'a>(edition: &'a Edition<'_>, row: usize) -> Option<&'a Ease> {
    edition.finished.iter().find(|one| one.row == row)?.ease.as_ref()
}

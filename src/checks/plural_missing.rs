//! A notion is counted in the words, several of it in some size, and it has no name for several.
//!
//! ## Why it matters
//! "Sew on three sew-on snap": the count follows the size, and the name behind it does not.
//!
//! ## Wrong
//! ```yaml
//! notions:
//!   snaps: {kind: fastener, name: Sew-on snap, size: 10 mm (3/8 in), count: 3}
//! ```
//! ````md
//! ## Sew on the snaps {#snaps}
//!
//! ```work
//! - {fasten: [snaps, front.top, back.top], count: snaps.count}
//! ```
//!
//! Sew on {snaps.count | words} [](notion:snaps). Small parts: keep them from small children.
//! ````
//!
//! ## Right
//! ```yaml
//! notions:
//!   snaps: {kind: fastener, name: Sew-on snap, plural: Sew-on snaps, size: 10 mm (3/8 in), count: 3}
//! ```
//! ````md
//! ## Sew on the snaps {#snaps}
//!
//! ```work
//! - {fasten: [snaps, front.top, back.top], count: snaps.count}
//! ```
//!
//! Sew on {snaps.count | words} [](notion:snaps). Small parts: keep them from small children.
//! ````
//!
//! ## Limits
//! Looks for a count right before a reference to a notion without words of its own. A name that ends in "s" is taken for
//! that of several.

use super::judge::{Judge, Subject};
use super::passage::{Stands, Token};
use super::printed_words::each_step;
use crate::diag::{Check, Findings, Group, Home};
use crate::measure::{Dimension, Exact};
use crate::model::ReferenceKind;
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("plural-missing", Group::Words, include_str!("plural_missing.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    each_step(subject, &mut |edition, _, passages| {
        for pair in passages
            .iter()
            .filter(|passage| passage.stands == Stands::Body)
            .flat_map(|passage| passage.tokens.windows(2))
        {
            let [count, name] = pair else { continue };
            let leads = name.leads.filter(|leads| leads.kind == ReferenceKind::Notion && leads.content.is_empty());
            let (Some(leads), true, " ") = (leads, is_several(edition, count), name.gap.as_str()) else { continue };
            let notion = subject.draft.facts.notions.iter().find(|notion| notion.id.text == leads.target);
            let Some(notion) = notion.filter(|one| one.plural.is_none() && !one.name.text.ends_with('s')) else {
                continue;
            };
            findings.push(
                CHECK
                    .at(name.span, format!("several are counted here, and “{}” is the name of one", notion.name.text))
                    .hint(format!("give `{}` a `plural:`, which is printed behind such a count", notion.id.text))
                    .note(notion.name.span, "the name")
                    .in_size(edition.size(), ""),
            );
        }
    });
}

/// Whether a figure prints a count other than one.
fn is_several(edition: &Edition<'_>, token: &Token<'_>) -> bool {
    let quantity = token.brace.and_then(|(formula, _)| edition.values.quiet(formula)).map(|worked| worked.quantity);
    quantity.is_some_and(|quantity| quantity.dimension == Dimension::Count && quantity.value != Exact::ONE)
}

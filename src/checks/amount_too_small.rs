//! The stated amount of a fabric is less than the pieces need.
//!
//! ## Why it matters
//! Whoever buys what the booklet says runs out before the last piece is cut, and the shop may have no
//! more of that cloth.
//!
//! ## Wrong
//! ```yaml
//! fabrics:
//!   outer: {name: Cotton, widths: [110 cm], amount: [20 cm, 10 cm]}
//! ```
//!
//! ## Right
//! ```yaml
//! fabrics:
//!   outer: {name: Cotton, widths: [110 cm], amount: [20 cm, 25 cm]}
//! ```
//!
//! ## Limits
//! Held against the cutting layout of each width, with the shrinkage and without anything to spare.
//! The layout is a good one, not the best there is: where you have laid the pieces on less cloth
//! yourself, waive it. Silent for a fabric with no `widths:`.

use super::Subject;
use super::judge::Judge;
use super::words::length;
use crate::cloth::ClothLayout;
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("amount-too-small", Group::Print, include_str!("amount_too_small.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at every fabric whose amount the author states, in each width that it is sold in.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let facts = &subject.draft.facts;
    for (edition, laid) in subject.editions.iter().zip(subject.cloth) {
        for layout in laid.iter().filter_map(|one| one.as_ref().ok()) {
            let fabric = &facts.fabrics[layout.bolt.fabric];
            let value = fabric.amount.as_ref().and_then(|amount| amount.get(edition.size()));
            let Some(value) = value.filter(|_| layout.exceeds_stated()) else { continue };
            let Some(width) = width(edition, layout) else { continue };
            let width = edition.figures(&width).first;
            findings.push(
                CHECK
                    .at(value.span(), format!("this is less of `{}` than the pieces need", fabric.id.text))
                    .hint("state more, or leave `amount:` out to have it reckoned from the cutting layout")
                    .in_size(
                        edition.size(),
                        format!("on cloth {width} wide they take {}", length(edition, layout.unwashed()))
                            .replace('\u{a0}', " "),
                    ),
            );
        }
    }
}

fn width(edition: &Edition<'_>, layout: &ClothLayout) -> Option<crate::resolve::Worked> {
    let fabric = &edition.draft.facts.fabrics[layout.bolt.fabric];
    edition.values.quiet(fabric.widths.get(layout.bolt.width_at)?)
}

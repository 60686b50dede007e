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

use super::apart::Told;
use super::judge::Judge;
use super::judge::Subject;
use crate::diag::{Check, Finding, Findings, Group, Home};
use crate::faults::NUMBER_TOO_LARGE;
use crate::measure::to_f64;
use crate::model::Fabric;

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
            if layout.buy.is_none() && layout.bolt.stated.is_none() {
                findings.push(unheld(fabric, edition.size()));
            }
            let value = fabric.amount.as_ref().and_then(|amount| amount.get(edition.size()));
            let Some(value) = value.filter(|_| layout.exceeds_stated()) else { continue };
            let Some(width) = edition.cloth_width(layout.bolt.fabric, layout.bolt.width_at) else { continue };
            let width = width.first;
            let stated = layout.bolt.stated.map_or(0.0, to_f64);
            let told = Told::lengths(edition, layout.unwashed(), stated);
            let stated = if told.apart.is_empty() { String::new() } else { format!(", and {} are stated", told.other) };
            findings.push(
                CHECK
                    .at(value.span(), format!("this is less of `{}` than the pieces need", fabric.id.text))
                    .hint("state more, or leave `amount:` out to have it reckoned from the cutting layout")
                    .in_size(
                        edition.size(),
                        format!("on cloth {width} wide they take {}{stated}", told.one).replace('\u{a0}', " "),
                    ),
            );
        }
    }
}

/// What the wash takes and what is bought to spare leave no length that could be told.
fn unheld(fabric: &Fabric, size: usize) -> Finding {
    let span = fabric.shrinkage.as_ref().map_or(fabric.id.span, |shrinkage| shrinkage.span());
    NUMBER_TOO_LARGE
        .at(span, format!("the length of `{}` to buy is too large to be told", fabric.id.text))
        .hint("see whether `shrinkage` is meant, such as `3 %`, and `spare` under `sheets:`, such as `5 cm`")
        .in_size(size, "")
}

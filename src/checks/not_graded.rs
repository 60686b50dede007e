//! A measurement is smaller in one size than in the size before it.
//!
//! ## Why it matters
//! Sizes nearly always grow from one to the next. Where one shrinks, two values have probably
//! changed places, and both sizes are wrong.
//!
//! ## Wrong
//! ```yaml
//! measurements:
//!   height: [15 cm (5 7/8 in), 12 cm (4 3/4 in)]
//! ```
//!
//! ## Right
//! ```yaml
//! measurements:
//!   height: [12 cm (4 3/4 in), 15 cm (5 7/8 in)]
//! ```
//!
//! ## Limits
//! Looks at measurements and rows of the body table that state a value for each size, in the order of `sizes`. Equal values
//! are in order; formulas are not looked at, since what they are made of is. That sizes are listed
//! from small to large is common practice, no source.

use super::judge::{Judge, Subject};
use super::words::length_of;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{BySize, by_view};
use crate::resolve::{Edition, Worked};
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("not-graded", Group::Facts, include_str!("not_graded.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at every measurement and every row of the body that states a value for each size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    for measurement in &subject.draft.facts.measurements {
        let name = &measurement.name.text;
        let values = subject.editions.iter().map(|edition| edition.values.get(name));
        one(subject, &format!("`{name}`"), &measurement.value, measurement.name.span, values.collect(), findings);
    }
    for (at, row) in subject.draft.facts.body.iter().enumerate() {
        let here = |edition: &Edition<'_>| edition.body.iter().find(|one| one.row == at).map(|one| one.worked);
        let values = subject.editions.iter().map(here);
        one(subject, &format!("“{}”", row.name.text), &row.value, row.name.span, values.collect(), findings);
    }
}

/// The values of all sizes of one view, where there are more than the two that are told of.
fn side_by_side(values: &[Option<Worked>], views: &[Vec<usize>], of: usize, subject: &Subject<'_>) -> String {
    let own = views.iter().find(|own| own.contains(&of)).map_or(&[][..], Vec::as_slice);
    let told = |size: &usize| {
        let worked = values[*size]?;
        Some(format!("{} {}", subject.draft.facts.sizes[*size].id.text, length_of(&subject.editions[*size], worked)))
    };
    match own.len() {
        0..=2 => String::new(),
        _ => own.iter().filter_map(told).collect::<Vec<_>>().join(", "),
    }
}

fn one(
    subject: &Subject<'_>,
    name: &str,
    value: &BySize,
    place: Span,
    values: Vec<Option<Worked>>,
    findings: &mut Findings,
) {
    if !matches!(value, BySize::Each(_)) {
        return;
    }
    let sizes = &subject.draft.facts.sizes;
    let views = by_view(sizes);
    for (previous, at) in views.iter().flat_map(|own| own.iter().zip(&own[1..])).map(|(one, two)| (*one, *two)) {
        let (Some(before), Some(here)) = (values[previous], values[at]) else { continue };
        if here.quantity.dimension != before.quantity.dimension || here.quantity.value >= before.quantity.value {
            continue;
        }
        let edition = &subject.editions[at];
        let text = |worked| edition.figures(&worked).first.to_string().replace('\u{a0}', " ");
        findings.push(
            CHECK
                .at(
                    value.get(at).map_or(place, |value| value.span()),
                    format!(
                        "{name} is {} in {}, smaller than the {} of {}",
                        text(here),
                        sizes[at].id.text,
                        text(before),
                        sizes[previous].id.text
                    ),
                )
                .label(side_by_side(&values, &views, previous, subject))
                .hint("see whether two values changed places; if it is meant, waive it and say why")
                .in_size(at, ""),
        );
    }
}

//! From one size to the next the figures of one system rise and those of the other fall.
//!
//! ## Why it matters
//! A maker who works by the second figures cuts the larger size smaller than the one before. Each pair by itself may be near
//! enough to pass; the order shows that two of them changed places.
//!
//! ## Wrong
//! ```yaml
//! measurements:
//!   height: [12 cm (4 3/4 in), 12.2 cm (4 5/8 in)]
//! ```
//!
//! ## Right
//! ```yaml
//! measurements:
//!   height: [12 cm (4 3/4 in), 12.2 cm (4 13/16 in)]
//! ```
//!
//! ## Limits
//! Looks at measurements, at the body's and the finished ones, and at what is stated of notions, where each size has a pair
//! of its own, in the order of `sizes`. Equal second figures are rounding.

use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group, Home};
use crate::measure::Measure;
use crate::model::{BySize, by_view};
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("second-figures-fall", Group::Facts, include_str!("second_figures_fall.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks along every row of pairs.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let facts = &subject.draft.facts;
    if facts.show.second.is_none() {
        return;
    }
    let measurements = facts.measurements.iter().map(|one| (format!("`{}`", one.name.text), &one.value));
    let body = facts.body.iter().map(|row| (format!("“{}”", row.name.text), &row.value));
    let finished = facts.finished.iter().map(|row| (format!("“{}”", row.name.text), &row.value));
    let notions = facts.notions.iter().flat_map(|notion| {
        notion.figures.iter().map(|(figure, value)| (format!("`{}.{}`", notion.id.text, figure.word()), value))
    });
    for (name, value) in measurements.chain(body).chain(finished).chain(notions) {
        for own in by_view(&facts.sizes) {
            let pairs: Vec<(usize, &Measure, Span)> = own.iter().filter_map(|size| pair(value, *size)).collect();
            for ((before, one, place), (here, two, span)) in pairs.iter().zip(pairs.iter().skip(1)) {
                let (Some(less), Some(other)) = (one.other, two.other) else { continue };
                let alike =
                    less.unit.system() == other.unit.system() && less.quantity.dimension == other.quantity.dimension;
                let first = one.first.quantity.value.cmp(&two.first.quantity.value);
                let second = less.quantity.value.cmp(&other.quantity.value);
                if !alike || first.is_eq() || second.is_eq() || first == second {
                    continue;
                }
                let ids = [before, here].map(|size| facts.sizes[*size].id.text.as_str());
                let (rises, falls) = if first.is_lt() { ("rises", "falls") } else { ("falls", "rises") };
                findings.push(
                    CHECK
                        .at(
                            *span,
                            format!(
                                "from {} to {} {name} {rises} from {} to {}, and {falls} from {less} to {other}",
                                ids[0], ids[1], one.first, two.first
                            )
                            .replace('\u{a0}', " "),
                        )
                        .hint("see whether two figures changed places, and state the pairs that are meant")
                        .note(*place, "the size before"),
                );
            }
        }
    }
}

/// What one size states, where that is a pair of its own.
fn pair(value: &BySize, size: usize) -> Option<(usize, &Measure, Span)> {
    let BySize::Each(_) = value else { return None };
    let formula = value.get(size)?;
    let measure = formula.formula.as_measure().filter(|measure| measure.other.is_some())?;
    Some((size, measure, formula.span()))
}

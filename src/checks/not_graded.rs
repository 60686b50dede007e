//! A measurement is smaller in one size than in the size before it.

use super::Subject;
use crate::diag::{Finding, Findings};
use crate::model::BySize;

/// Looks at every measurement that states a value for each size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let sizes = &subject.draft.facts.sizes;
    for measurement in &subject.draft.facts.measurements {
        if !matches!(measurement.value, BySize::Each(_)) {
            continue;
        }
        let name = &measurement.name.text;
        let values: Vec<_> = subject.editions.iter().map(|edition| edition.sheet.get(name)).collect();
        for at in 1..values.len() {
            let (Some(before), Some(here)) = (values[at - 1], values[at]) else { continue };
            if here.quantity.dimension != before.quantity.dimension || here.quantity.value >= before.quantity.value {
                continue;
            }
            let span = measurement.value.get(at).map_or(measurement.name.span, |value| value.span());
            let edition = &subject.editions[at];
            let text = |worked| edition.figures(&worked).first.to_string().replace('\u{a0}', " ");
            findings.push(
                Finding::warning(
                    "not-graded",
                    span,
                    format!(
                        "`{name}` is {} in {}, smaller than the {} of {}",
                        text(here),
                        sizes[at].id.text,
                        text(before),
                        sizes[at - 1].id.text
                    ),
                )
                .hint("see whether two values changed places; if it is meant, waive it and say why")
                .in_size(at, ""),
            );
        }
    }
}

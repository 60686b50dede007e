//! Two figures shown for one measurement do not say the same length.
//!
//! ## Why it matters
//! A maker works in centimetres or in inches from the first cut to the last stitch. If the two
//! figures for one length differ, half of all makers sew something else, and pieces cut by two
//! people for one bag do not meet.
//!
//! ## Wrong
//! ```yaml
//! measurements:
//!   seam: 1 cm (1/2 in)
//! ```
//!
//! ## Right
//! ```yaml
//! measurements:
//!   seam: 1 cm (3/8 in)
//! ```
//!
//! ## Limits
//! Two figures may stand apart by the `tolerance` under `show:` (1/8 in unless you say otherwise),
//! but by no more than an eighth of the length, since on a narrow seam a millimetre is much. Cloth
//! sold by the metre or the yard may differ by an eighth of a yard. Looks at lengths that are printed: measurements
//! that words, tables, work or diagrams show, lengths in work, and formulas in the words. A measurement that only the drafting
//! uses is nobody's to compare. Silent when the booklet shows one system only (`second: none`), and for stitch lengths,
//! which are printed as stitches to the inch. Where you state one figure, the other is the tool's own: it is rounded to
//! the step under `show:`, or finer where that is too coarse (`5 mm` is 3/16 in). The limits are common practice, no source.

use super::judge::{Judge, Subject};
use super::printed::is_shown;
use crate::diag::{Check, Findings, Group};
use crate::measure::{Dimension, Exact, Stated, System, nearest_fraction, ratio};
use crate::model::Show;
use crate::resolve::{Edition, PrintedValue, Uses, Worked, allowed_apart, in_system};
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("both-systems-disagree", Group::Facts, include_str!("both_systems_disagree.rs")).waivable(),
    run,
);

/// Looks at every measurement and at every value that a formula of its own prints.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    for edition in subject.editions {
        let drawn = subject.figures.uses.get(&edition.size());
        let uses: Vec<&Uses> = std::iter::once(&edition.uses).chain(drawn).collect();
        one_size(edition, &uses, findings);
    }
}

fn one_size(edition: &Edition<'_>, uses: &[&Uses], findings: &mut Findings) {
    let show = &edition.draft.facts.show;
    if show.second.is_none() {
        return;
    }
    let mut look = |span: Span, worked: Worked, name: Option<&str>| {
        if let Some(fault) = disagreement(&worked, show) {
            let subject = name.map_or_else(|| "this length".to_owned(), |name| format!("`{name}`"));
            let what = if fault.stated { "is stated as" } else { "is shown as" };
            findings.push(
                CHECK
                    .at(
                        span,
                        format!(
                            "{subject} {what} {} and {}, which are not the same length",
                            fault.metric, fault.imperial
                        ),
                    )
                    .hint(fault.hint)
                    .in_size(edition.size(), ""),
            );
        }
    };
    for measurement in &edition.draft.facts.measurements {
        let name = &measurement.name.text;
        if let Some(worked) = edition.values.get(name).filter(|_| is_shown(edition, uses, name)) {
            let span = measurement.value.get(edition.size()).map_or(measurement.name.span, |value| value.span());
            look(span, worked, Some(name));
        }
    }
    let printed: Vec<&PrintedValue> = uses.iter().flat_map(|uses| &uses.printed).collect();
    for one in printed {
        look(one.span, one.worked, None);
    }
}

pub(super) struct Fault {
    metric: String,
    imperial: String,
    stated: bool,
    hint: String,
}

/// The two figures, when they stand further apart than the tolerance, or than an eighth of the
/// length: on a narrow seam a millimetre is much.
pub(super) fn disagreement(worked: &Worked, show: &Show) -> Option<Fault> {
    if worked.quantity.dimension != Dimension::Length {
        return None;
    }
    let metric = in_system(worked, System::Metric, show);
    let imperial = in_system(worked, System::Imperial, show);
    // Figures too large to be held against each other are told where they are worked out.
    let apart = metric.quantity.value.distance(imperial.quantity.value)?;
    // Cloth bought by the metre or the yard is rounded up to what shops sell: an eighth of a yard.
    let by_the_yard = metric.unit == "m" || imperial.unit == "yd";
    let allowed = if by_the_yard { Exact::of::<9144, 80>() } else { allowed_apart(worked.quantity, show)? };
    if apart <= allowed {
        return None;
    }
    let stated = worked.stated.is_some_and(|measure| measure.other.is_some());
    // The coarsest fraction that is near enough: makers' rulers end at sixteenths.
    let near =
        |inches: &Stated| inches.quantity.value.distance(worked.quantity.value).is_some_and(|apart| apart <= allowed);
    let fraction =
        [8, 16, 32, 64].into_iter().find_map(|parts| nearest_fraction(worked.quantity, ratio(1, parts)?).filter(near));
    let hint = match (stated, fraction) {
        (false, Some(inches)) => format!("state both systems: `{metric} ({inches})`"),
        (true, Some(inches)) => format!("{metric} is nearest to {inches}: state the pair that is meant"),
        _ => "state both systems, such as `5 mm (3/16 in)`".to_owned(),
    };
    Some(Fault {
        metric: metric.to_string(),
        imperial: imperial.to_string(),
        stated,
        hint: hint.replace('\u{a0}', " "),
    })
}

//! The body's measures and those of the finished thing, in one size, with the ease between them.

use super::scope::Scope;
use super::shown::{Shown, in_system};
use super::uses::Told;
use super::values::Values;
use super::worked::Worked;
use crate::diag::{Finding, did_you_mean};
use crate::faults::{UNIT_MISMATCH, UNKNOWN_NAME};
use crate::measure::{Dimension, Quantity, System};
use crate::model::{BySize, Draft, FinishedRow, Text, is_for};
use crate::source::Span;

/// A measure of the body, or of the finished thing.
#[derive(Debug, Clone)]
pub struct FitRow {
    /// Its place in the facts.
    pub row: usize,
    /// What is measured, in the author's words.
    pub name: String,
    /// How large it is.
    pub worked: Worked,
    /// How much larger than the body it is; `None` where it does not say what it goes over.
    pub ease: Option<Ease>,
}

/// How much larger than the body a finished measure is.
#[derive(Debug, Clone)]
pub struct Ease {
    /// What it goes over, as the body measurements call it.
    pub over: String,
    /// The formula of the finished measure.
    pub span: Span,
    /// How much; below nothing where the thing is smaller than the body.
    pub quantity: Quantity,
    /// The same as printed: in each system the difference of the two figures that are printed in it.
    pub shown: Shown,
}

/// The measures of the body, and the finished measurements.
pub(super) fn rows(draft: &Draft, values: &Values<'_>, told: &mut Told) -> (Vec<FitRow>, Vec<FitRow>) {
    let mut work_out = |row: usize, name: &Text, value: &BySize| {
        value.get(values.size()).iter().for_each(|value| told.uses.print(value, true, &Scope::plain(values)));
        let worked = values.by_size(value, &mut told.findings)?;
        Some(FitRow { row, name: name.text.clone(), worked, ease: None })
    };
    let (body, finished) = (draft.facts.body.iter().enumerate(), draft.facts.finished.iter().enumerate());
    let body: Vec<FitRow> = body.filter_map(|(at, row)| work_out(at, &row.name, &row.value)).collect();
    let here = |(_, row): &(usize, &FinishedRow)| is_for(row.sizes.as_ref(), values.size());
    let mut finished: Vec<FitRow> =
        finished.filter(here).filter_map(|(at, row)| work_out(at, &row.name, &row.value)).collect();
    for row in &mut finished {
        let facts = &draft.facts.finished[row.row];
        let (Some(over), Some(formula)) = (&facts.over, facts.value.get(values.size())) else { continue };
        match ease(draft, &body, over, &row.worked) {
            Ok(found) => {
                row.ease = found.map(|(quantity, shown)| Ease {
                    over: over.text.clone(),
                    span: formula.span(),
                    quantity,
                    shown,
                });
            }
            Err(finding) => told.findings.push(finding.in_size(values.size(), "")),
        }
    }
    (body, finished)
}

/// The difference of a finished measure and the one of the body; `None` where that has a fault of its own.
fn ease(
    draft: &Draft,
    body: &[FitRow],
    over: &Text,
    worked: &Worked,
) -> Result<Option<(Quantity, Shown)>, Box<Finding>> {
    let names: Vec<&str> = draft.facts.body.iter().map(|row| row.name.text.as_str()).collect();
    if !names.contains(&over.text.as_str()) {
        let otherwise = match names.as_slice() {
            [] => format!("add a table `body:` with the row `{}`", over.text),
            names => format!("its rows are: {}", names.join(", ")),
        };
        let finding = UNKNOWN_NAME.at(over.span, format!("no body measurement is called `{}`", over.text));
        return Err(Box::new(finding.hint(did_you_mean(&over.text, names, &otherwise)).everywhere()));
    }
    let Some(row) = body.iter().find(|row| row.name == over.text) else { return Ok(None) };
    let lengths = [&row.worked, worked].map(|worked| worked.quantity.dimension);
    if let Some(other) = lengths.into_iter().find(|dimension| *dimension != Dimension::Length) {
        let finding =
            UNIT_MISMATCH.at(over.span, format!("ease lies between two lengths, and one of these is {}", other.name()));
        return Err(Box::new(finding.hint("leave `over:` out, or give both a unit of length")));
    }
    Ok(difference(worked, &row.worked, draft))
}

/// `None` when it could not be held, which is told where the figures are worked out.
fn difference(one: &Worked, other: &Worked, draft: &Draft) -> Option<(Quantity, Shown)> {
    let show = &draft.facts.show;
    let less = |one: Quantity, other: Quantity| {
        Some(Quantity { value: one.value.checked_sub(other.value)?, dimension: Dimension::Length })
    };
    let printed = |system: System| {
        let figures = [one, other].map(|worked| in_system(worked, system, show).quantity);
        Some(in_system(&Worked { quantity: less(figures[0], figures[1])?, stated: None }, system, show))
    };
    let exact = less(one.quantity, other.quantity)?;
    let second = match show.second {
        Some(system) => Some(printed(system)?),
        None => None,
    };
    Some((exact, Shown { exact, first: printed(show.first)?, second }))
}

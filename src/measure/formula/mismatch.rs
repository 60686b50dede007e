//! The wording for quantities that do not go together: one place, so that sums, comparisons and
//! functions all point at the same characters and give the same advice.

use std::ops::Range;

use super::tree::{Expr, ExprKind};
use crate::measure::exact::Exact;
use crate::measure::problem::{Problem, ProblemKind};
use crate::measure::quantity::Measure;
use crate::measure::unit::{Dimension, Unit};

/// The advice wherever a temperature is reckoned with: twice 20 °C is not twice as warm.
pub(super) const TEMPERATURE_HINT: &str =
    "a temperature is stated or compared, never reckoned with; state the one that is meant";

/// A part of a formula and what it turned out to be.
#[derive(Clone, Copy)]
pub(super) struct Side<'a> {
    pub expr: &'a Expr,
    pub dimension: Dimension,
}

impl<'a> Side<'a> {
    pub(super) fn is_temperature(self) -> bool {
        self.dimension == Dimension::Temperature
    }

    /// The figure, when the part is a plain number written out, with or without a minus.
    fn plain_number(self) -> Option<&'a Measure> {
        let mut expr = self.expr;
        while let ExprKind::Negate(inner) = &expr.kind {
            expr = inner;
        }
        match &expr.kind {
            ExprKind::Literal(measure) if self.dimension == Dimension::Count => Some(measure),
            _ => None,
        }
    }

    /// The unit written in the part, when it is a figure.
    fn unit(self) -> Option<Unit> {
        match &self.expr.kind {
            ExprKind::Literal(measure) => Some(measure.first.unit),
            _ => None,
        }
    }
}

/// The problem for two parts of different sorts that must be of one. It points at a plain number
/// that lacks its unit, or else at `whole`.
pub(super) fn unlike(text: &str, message: String, whole: Range<usize>, left: Side<'_>, right: Side<'_>) -> Problem {
    let (range, hint) = if let Some((bare, other, figure)) = bare_number(left, right) {
        let range = bare.expr.range.clone();
        let written = &text[range.clone()];
        let hint = if figure.first.unit == Unit::Percent {
            format!("a percentage is a share of something: {written} * (the whole)")
        } else {
            let unit = other.unit().unwrap_or(other.dimension.usual_unit());
            let mut hint = format!("give the {written} a unit: {written} {}", unit.symbol());
            if let Some(mixed) = hyphened_fraction(text, left, right) {
                hint.push_str(&format!("; for a whole number and a fraction, write {mixed}"));
            }
            hint
        };
        (range, hint)
    } else {
        let hint = "only like goes with like: a length with a length, a number with a number";
        (whole, hint.to_owned())
    };
    problem(range, message, hint, left, right)
}

/// The problem for a sign that gives nothing measurable between these two parts.
pub(super) fn unmeasured(message: String, whole: Range<usize>, left: Side<'_>, right: Side<'_>) -> Problem {
    let hint = if left.is_temperature() || right.is_temperature() {
        TEMPERATURE_HINT
    } else {
        "multiply or divide by a plain number; two lengths multiplied give an area, and an area \
         divided by a length gives a length"
    };
    problem(whole, message, hint.to_owned(), left, right)
}

fn problem(range: Range<usize>, message: String, hint: String, left: Side<'_>, right: Side<'_>) -> Problem {
    Problem::new(ProblemKind::Mismatch, range, message, hint)
        .with_related(left.expr.range.clone(), left.dimension.name())
        .with_related(right.expr.range.clone(), right.dimension.name())
}

fn bare_number<'a>(left: Side<'a>, right: Side<'a>) -> Option<(Side<'a>, Side<'a>, &'a Measure)> {
    if left.dimension == right.dimension {
        return None;
    }
    let of = |side: Side<'a>, other| side.plain_number().map(|figure| (side, other, figure));
    of(right, left).or_else(|| of(left, right))
}

/// `1 1/2 in`, where the author wrote `1-1/2 in`.
fn hyphened_fraction(text: &str, left: Side<'_>, right: Side<'_>) -> Option<String> {
    let (ExprKind::Literal(whole), ExprKind::Literal(part)) = (&left.expr.kind, &right.expr.kind) else {
        return None;
    };
    let between = text.get(left.expr.range.end..right.expr.range.start)?;
    let fits = whole.first.number.is_integer() && !part.first.number.is_integer() && part.first.number < Exact::ONE;
    (fits && between.trim() == "-").then(|| {
        let (whole, part) = (&text[left.expr.range.clone()], &text[right.expr.range.clone()]);
        format!("{whole} {part}")
    })
}

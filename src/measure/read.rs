//! Reading figures as authors write them: `5 mm`, `.5 in`, `1 1/2"`, `¾ in`, `150 °C`, and both
//! systems together, `1 cm (3/8 in)`. Formulas use the same reader, so a figure means one thing
//! everywhere.

use std::ops::Range;

use super::number::{Slash, number_at};
use super::problem::{Problem, ProblemKind};
use super::quantity::{Measure, Stated};
use super::scan::{Found, skip_spaces, unit_at, vulgar_fraction};
use super::unit::{Dimension, Unit, unit_meant};

/// Characters that a figure or a formula may hold.
const LONGEST_TEXT: usize = 2000;

/// Reads a bare figure, or one in both systems. A minus in front covers both figures; only
/// temperatures carry a minus each.
pub fn read_measure(text: &str) -> Result<Measure, Problem> {
    check_length(text)?;
    let start = skip_spaces(text, 0);
    let (minus, at) = minus(text, start);
    if !starts_figure(text, at) {
        let (range, message) = match text[start..].trim_end().len() {
            0 => (0..text.len(), "no figure is written here"),
            length => (start..start + length, "this is not a figure"),
        };
        return Err(Problem::unreadable(range, message, "write a number and its unit, such as 5 cm, 1 1/2 in or 45°"));
    }
    let (measure, end) = measure_at(text, at, Slash::Fraction)?;
    let rest = skip_spaces(text, end);
    if rest < text.len() {
        return Err(Problem::unreadable(
            rest..text.trim_end().len(),
            "more follows the figure",
            "write one figure here, such as 5 cm or 1 1/2 in, or both systems: 1 cm (3/8 in)",
        ));
    }
    if !minus {
        return Ok(measure);
    }
    measure.negated().ok_or_else(|| Problem::overflow(start..end))
}

pub(super) fn check_length(text: &str) -> Result<(), Problem> {
    let length = text.chars().count();
    if length <= LONGEST_TEXT {
        return Ok(());
    }
    Err(Problem::new(
        ProblemKind::OutOfRange,
        0..text.len(),
        format!("this is {length} characters long; at most {LONGEST_TEXT} are read"),
        "give parts of it names of their own",
    ))
}

/// Whether a figure begins at `at`.
pub(super) fn starts_figure(text: &str, at: usize) -> bool {
    let mut rest = text[at..].chars();
    match rest.next() {
        Some('.') => rest.next().is_some_and(|next| next.is_ascii_digit()),
        Some(first) => first.is_ascii_digit() || first == '\u{215f}' || vulgar_fraction(first).is_some(),
        None => false,
    }
}

/// Reads a figure and, if a bracket follows it, the figure of the other system; gives the place
/// where they end.
pub(super) fn measure_at(text: &str, start: usize, slash: Slash) -> Result<(Measure, usize), Problem> {
    let (first, end) = figure_at(text, start, slash)?;
    let open = skip_spaces(text, end);
    if !text[open..].starts_with('(') {
        return Ok((Measure { first, other: None }, end));
    }
    let inner = skip_spaces(text, open + 1);
    let (minus, at) = minus(text, inner);
    let written = &text[start..end];
    let no_figure = || {
        Problem::unreadable(
            open..open + 1,
            "a bracket straight after a figure",
            format!(
                "to multiply, write {written} * (…); to state both systems, write for instance \
                 1 cm (3/8 in)"
            ),
        )
    };
    if !starts_figure(text, at) {
        return Err(no_figure());
    }
    let (mut other, other_end) = figure_at(text, at, Slash::Fraction)?;
    let close = skip_spaces(text, other_end);
    if !text[close..].starts_with(')') {
        return Err(no_figure());
    }
    check_systems(&first, start..end, &other, inner..other_end)?;
    if minus {
        if other.quantity.dimension != Dimension::Temperature {
            return Err(Problem::unreadable(
                inner..other_end,
                "a minus inside the bracket",
                "write one minus, in front of the first figure; it covers both",
            ));
        }
        other = Stated::new(-other.number, other.unit).ok_or_else(|| Problem::overflow(inner..other_end))?;
    }
    let other = Some(other);
    Ok((Measure { first, other }, close + 1))
}

/// The two figures must say one thing in the two systems. Whether they agree is for the checks.
fn check_systems(
    first: &Stated,
    first_range: Range<usize>,
    other: &Stated,
    other_range: Range<usize>,
) -> Result<(), Problem> {
    let (left, right) = (first.quantity.dimension, other.quantity.dimension);
    let (message, hint) = match (first.unit.system(), other.unit.system()) {
        _ if left != right => (
            format!("{} stated beside {}", right.name(), left.name()),
            "state one thing in both systems, as in 1 cm (3/8 in)".to_owned(),
        ),
        (Some(one), Some(two)) if one != two => return Ok(()),
        (Some(one), Some(_)) => (
            format!("both figures are {}", one.name()),
            "keep one of them, or state the second in the other system: 1 cm (3/8 in)".to_owned(),
        ),
        _ => (format!("{} is the same in both systems", left.name()), "keep one of the two figures".to_owned()),
    };
    Err(Problem::new(ProblemKind::Mismatch, other_range, message, hint).with_related(first_range, left.name()))
}

/// A minus sign and the spaces after it.
fn minus(text: &str, at: usize) -> (bool, usize) {
    match text[at..].chars().next() {
        Some(sign @ ('-' | '\u{2212}')) => (true, skip_spaces(text, at + sign.len_utf8())),
        _ => (false, at),
    }
}

fn figure_at(text: &str, start: usize, slash: Slash) -> Result<(Stated, usize), Problem> {
    let (number, number_end) = number_at(text, start, slash)?;
    let (unit, end) = match unit_at(text, skip_spaces(text, number_end)) {
        Found::Unit(unit, end) => (unit, end),
        Found::Nothing => (Unit::Count, number_end),
        Found::Word(range) => return Err(not_a_unit(text, start..number_end, range)),
    };
    match Stated::new(number, unit) {
        Some(stated) => Ok((stated, end)),
        None => Err(Problem::overflow(start..end)),
    }
}

fn not_a_unit(text: &str, number: Range<usize>, word: Range<usize>) -> Problem {
    let (number, spelt) = (&text[number], &text[word.clone()]);
    let hint = match unit_meant(spelt) {
        Some(unit) => format!("write {number} {}", unit.symbol()),
        None => format!(
            "use mm, cm, m, in, ft, yd, °, °C, °F, s, min, h, g, kg, oz or %; to multiply by a \
             name, write {number} * {spelt}"
        ),
    };
    Problem::unreadable(word, format!("“{spelt}” is not a unit"), hint)
}

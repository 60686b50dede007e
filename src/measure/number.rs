//! Reading the number of a figure: whole numbers, decimals, and the fractions that inches are
//! written in.

use std::ops::Range;

use super::exact::{Exact, ratio};
use super::problem::{Problem, ProblemKind};
use super::scan::{Found, skip_spaces, unit_at, vulgar_fraction};
use super::show::{NumberStyle, show};
use super::unit::Unit;

/// Digits that a number may hold.
const MOST_DIGITS: usize = 18;

/// How a whole number, a slash and a whole number are taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Slash {
    /// Always as a fraction: a figure that stands alone.
    Fraction,
    /// As a fraction when a unit follows; a division otherwise.
    FractionWithUnit,
    /// As a fraction when a unit follows and no space stands round the slash.
    TightFractionWithUnit,
}

pub(super) fn number_at(text: &str, start: usize, slash: Slash) -> Result<(Exact, usize), Problem> {
    if let Some(found) = fraction_sign_at(text, start)? {
        return Ok(found);
    }
    let whole_end = digits_end(text, start);
    let mut after = text[whole_end..].chars();
    match (after.next(), after.next()) {
        (Some('.'), _) => return decimal(text, start, whole_end),
        (Some(','), Some(next)) if next.is_ascii_digit() => {
            return Err(decimal_comma(text, start, whole_end));
        }
        _ => {}
    }
    let whole = integer(text, start..whole_end)?;
    if let Some(bottom) = fraction_bar(text, whole_end, slash) {
        let end = bottom.end;
        let value = fraction(text, start..whole_end, bottom)?;
        return Ok((value, end));
    }
    let at = skip_spaces(text, whole_end);
    let part = match fraction_sign_at(text, at)? {
        Some(part) => Some(part),
        None if at > whole_end => tight_fraction_at(text, at)?,
        None => None,
    };
    match part {
        None => Ok((Exact::from_integer(whole), whole_end)),
        Some((part, end)) => {
            let value = Exact::from_integer(whole).checked_add(part).ok_or_else(|| Problem::overflow(start..end))?;
            if part >= Exact::ONE {
                return Err(Problem::unreadable(
                    at..end,
                    "the fraction after a whole number is not less than one",
                    format!("check it; taken together they come to {}", plain(value)),
                ));
            }
            Ok((value, end))
        }
    }
}

fn plain(value: Exact) -> String {
    show(value, Unit::Count, NumberStyle::Fraction).number
}

/// The digits below the bar, when the whole number that ends at `at` is the top of a fraction.
fn fraction_bar(text: &str, at: usize, slash: Slash) -> Option<Range<usize>> {
    if text[at..].starts_with('\u{2044}') {
        return denominator(text, at + '\u{2044}'.len_utf8());
    }
    let bar = skip_spaces(text, at);
    if !text[bar..].starts_with('/') {
        return None;
    }
    let below = skip_spaces(text, bar + 1);
    if slash == Slash::TightFractionWithUnit && (bar > at || below > bar + 1) {
        return None;
    }
    let bottom = denominator(text, below)?;
    let with_unit = matches!(unit_at(text, skip_spaces(text, bottom.end)), Found::Unit(..));
    (slash == Slash::Fraction || with_unit).then_some(bottom)
}

/// A fraction such as `3/8` with no spaces, after a whole number and a space.
fn tight_fraction_at(text: &str, at: usize) -> Result<Option<(Exact, usize)>, Problem> {
    let top_end = digits_end(text, at);
    let bar = text[top_end..].chars().next().unwrap_or(' ');
    if top_end == at || !matches!(bar, '/' | '\u{2044}') {
        return Ok(None);
    }
    let Some(bottom) = denominator(text, top_end + bar.len_utf8()) else {
        return Ok(None);
    };
    let end = bottom.end;
    Ok(Some((fraction(text, at..top_end, bottom)?, end)))
}

/// Whole digits that no decimal point or second bar follows.
fn denominator(text: &str, at: usize) -> Option<Range<usize>> {
    let end = digits_end(text, at);
    let ends = !text[end..].starts_with(['.', '\u{2044}']);
    (end > at && ends).then_some(at..end)
}

fn fraction(text: &str, top: Range<usize>, bottom: Range<usize>) -> Result<Exact, Problem> {
    let (numer, denom) = (integer(text, top.clone())?, integer(text, bottom.clone())?);
    ratio(numer.into(), denom.into()).ok_or_else(|| nothing_below(top.start..bottom.end))
}

fn nothing_below(range: Range<usize>) -> Problem {
    Problem::new(
        ProblemKind::DivisionByZero,
        range,
        "a fraction with 0 below the bar",
        "write the number of parts below the bar, as in 3/8",
    )
}

/// A fraction that is one character, or begun by one: `¾`, `⅟` and digits.
fn fraction_sign_at(text: &str, at: usize) -> Result<Option<(Exact, usize)>, Problem> {
    let Some(first) = text[at..].chars().next() else {
        return Ok(None);
    };
    let end = at + first.len_utf8();
    if let Some(value) = vulgar_fraction(first) {
        return Ok(Some((value, end)));
    }
    if first != '\u{215f}' {
        return Ok(None);
    }
    let below_end = digits_end(text, end);
    if below_end == end {
        return Err(Problem::unreadable(
            at..end,
            "no number stands below the bar",
            "write the fraction in full, as in 1/8",
        ));
    }
    match ratio(1, integer(text, end..below_end)?.into()) {
        Some(value) => Ok(Some((value, below_end))),
        None => Err(nothing_below(at..below_end)),
    }
}

fn digits_end(text: &str, at: usize) -> usize {
    let rest = &text[at..];
    at + rest.find(|c: char| !c.is_ascii_digit()).unwrap_or(rest.len())
}

fn integer(text: &str, range: Range<usize>) -> Result<i64, Problem> {
    let digits = &text[range.clone()];
    let read = digits.parse().ok().filter(|_| digits.len() <= MOST_DIGITS);
    read.ok_or_else(|| too_many_digits(range))
}

fn too_many_digits(range: Range<usize>) -> Problem {
    Problem::new(
        ProblemKind::OutOfRange,
        range,
        format!("a number of more than {MOST_DIGITS} digits"),
        "write it with fewer digits",
    )
}

fn decimal(text: &str, start: usize, point: usize) -> Result<(Exact, usize), Problem> {
    let end = digits_end(text, point + 1);
    if end == point + 1 {
        return Err(Problem::unreadable(
            point..end,
            "no digit follows the decimal point",
            "write the digits after the point, or leave the point out",
        ));
    }
    if text[end..].starts_with('.') {
        return Err(Problem::unreadable(
            start..digits_end(text, end + 1),
            "a number with two decimal points",
            "keep one point; groups of digits are written without any",
        ));
    }
    if text[end..].starts_with(',') && text[end + 1..].starts_with(|c: char| c.is_ascii_digit()) {
        return Err(decimal_comma(text, start, end));
    }
    let digits = [&text[start..point], &text[point + 1..end]].concat();
    let numer = digits.parse().ok().filter(|_| digits.len() <= MOST_DIGITS);
    let places = u32::try_from(end - point - 1).unwrap_or(u32::MAX);
    let value = numer.zip(10i128.checked_pow(places)).and_then(|(numer, denom)| ratio(numer, denom));
    match value {
        Some(value) => Ok((value, end)),
        None => Err(too_many_digits(start..end)),
    }
}

fn decimal_comma(text: &str, start: usize, comma: usize) -> Problem {
    let end = digits_end(text, comma + 1);
    let (whole, places) = (&text[start..comma], &text[comma + 1..end]);
    let unit = match unit_at(text, skip_spaces(text, end)) {
        Found::Unit(unit, _) => format!(" {}", unit.symbol()),
        _ => String::new(),
    };
    let hint = if whole.contains('.') {
        format!("between two numbers, put a space after the comma: {whole}, {places}{unit}")
    } else {
        format!(
            "write {whole}.{places}{unit}; for thousands, {whole}{places}{unit}; between two \
             numbers, put a space after the comma"
        )
    };
    Problem::unreadable(start..end, "a comma inside a number", hint)
}

//! Numbers as a drawing holds them: plain decimals in attributes, set fractions in text.

use crate::measure::{Exact, round_to, to_f64};
use crate::resolve::{Shown, ShownFigure};

/// A number for an attribute: at most four decimal places, a thousandth of a hair on paper.
pub(super) fn decimal(number: Exact) -> String {
    let rounded = to_f64(round_to(number, Exact::of::<1, 10_000>()).unwrap_or(number));
    let written = format!("{rounded:.4}");
    let written = written.trim_end_matches('0').trim_end_matches('.');
    if written == "-0" { "0".into() } else { written.to_owned() }
}

/// A value for text: `20 cm (7⅞ in)`.
pub(crate) fn spoken(figures: &Shown) -> String {
    match &figures.second {
        Some(second) => format!("{} ({})", one(&figures.first), one(second)),
        None => one(&figures.first),
    }
}

/// One figure for text: `7⅞ in`.
pub(crate) fn one(figure: &ShownFigure) -> String {
    let number = fraction(&figure.number);
    match figure.unit.as_str() {
        "" => number,
        "°" => format!("{number}°"),
        unit => format!("{number}\u{a0}{unit}"),
    }
}

/// `7 7/8` with the fraction as one sign, or in raised and lowered figures where there is no such sign.
fn fraction(number: &str) -> String {
    let (whole, part) = match number.rsplit_once('\u{a0}') {
        Some((whole, part)) => (whole, part),
        None => ("", number),
    };
    let Some((over, under)) = part.split_once('/') else { return number.to_owned() };
    let sign = match part {
        "1/2" => "½",
        "1/4" => "¼",
        "3/4" => "¾",
        "1/8" => "⅛",
        "3/8" => "⅜",
        "5/8" => "⅝",
        "7/8" => "⅞",
        "1/3" => "⅓",
        "2/3" => "⅔",
        _ => "",
    };
    if !sign.is_empty() {
        return format!("{whole}{sign}");
    }
    let place = |digits: &str, signs: [char; 10]| -> String {
        digits.chars().filter_map(|digit| digit.to_digit(10)).map(|digit| signs[digit as usize]).collect()
    };
    let over = place(over, ['⁰', '¹', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹']);
    let under = place(under, ['₀', '₁', '₂', '₃', '₄', '₅', '₆', '₇', '₈', '₉']);
    format!("{whole}{over}⁄{under}")
}

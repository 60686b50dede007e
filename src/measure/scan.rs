//! The small things that figures and formulas are read from: spaces, units and fractions that are one
//! character.

use std::ops::Range;

use super::exact::Exact;
use super::unit::Unit;

pub(super) fn skip_spaces(text: &str, at: usize) -> usize {
    text.len() - text[at..].trim_start().len()
}

/// What stands where a unit may stand.
pub(super) enum Found {
    Unit(Unit, usize),
    Word(Range<usize>),
    Nothing,
}

/// Looks for a unit; `at` is past the spaces.
pub(super) fn unit_at(text: &str, at: usize) -> Found {
    let rest = &text[at..];
    let first = rest.chars().next().unwrap_or(' ');
    let length = match first {
        '"' | '″' | '%' => first.len_utf8(),
        '°' => first.len_utf8() + word_length(&rest[first.len_utf8()..]),
        '℃' | '℉' => first.len_utf8(),
        _ if first.is_alphabetic() => word_length(rest),
        _ => return Found::Nothing,
    };
    match Unit::parse(&rest[..length]) {
        Some(unit) => Found::Unit(unit, at + length),
        None => Found::Word(at..at + length),
    }
}

fn word_length(text: &str) -> usize {
    let inside = |c: char| c.is_alphabetic() || c.is_ascii_digit() || matches!(c, '_' | '.' | '²');
    text.find(|c| !inside(c)).unwrap_or(text.len())
}

/// The fraction that one character stands for.
pub(super) fn vulgar_fraction(sign: char) -> Option<Exact> {
    let value = match sign {
        '¼' => Exact::of::<1, 4>(),
        '½' => Exact::of::<1, 2>(),
        '¾' => Exact::of::<3, 4>(),
        '⅐' => Exact::of::<1, 7>(),
        '⅑' => Exact::of::<1, 9>(),
        '⅒' => Exact::of::<1, 10>(),
        '⅓' => Exact::of::<1, 3>(),
        '⅔' => Exact::of::<2, 3>(),
        '⅕' => Exact::of::<1, 5>(),
        '⅖' => Exact::of::<2, 5>(),
        '⅗' => Exact::of::<3, 5>(),
        '⅘' => Exact::of::<4, 5>(),
        '⅙' => Exact::of::<1, 6>(),
        '⅚' => Exact::of::<5, 6>(),
        '⅛' => Exact::of::<1, 8>(),
        '⅜' => Exact::of::<3, 8>(),
        '⅝' => Exact::of::<5, 8>(),
        '⅞' => Exact::of::<7, 8>(),
        _ => return None,
    };
    Some(value)
}

//! A measurement is typed by hand in the words, where it will not follow the sizes.
//!
//! ## Why it matters
//! A figure typed into a sentence stays as it is when the size or the seam changes, and it has no
//! twin for makers who work in the other system.
//!
//! ## Wrong
//! ````md
//! ## Trim the corners {#trim}
//!
//! Trim the corners to 5 mm.
//! ````
//!
//! ## Right
//! ```yaml
//! measurements:
//!   trim: 5 mm (3/16 in)
//! ```
//! ````md
//! ## Trim the corners {#trim}
//!
//! Trim the corners to {trim}.
//! ````
//!
//! ## Limits
//! Looks for a number with a unit of length behind it: mm, cm, m, in, inch, ft, yd, ″. Numbers written
//! in words (“two inches”) are not seen, nor are temperatures, angles, shares, weights, times and
//! stitch counts, which no size changes. `in` counts as a word in “3 in a row” and the like. Looks at titles and names, at all
//! words of steps and facts, and at the words in diagrams; words for those who cannot see a diagram
//! are looked at too. The names of sizes, code and addresses are passed over.

use super::judge::{Judge, Subject};
use super::written::{Sort, each_text};
use crate::diag::{Check, Findings, Group};
use crate::measure::read_measure;
use crate::model::Text;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("loose-measurement", Group::Words, include_str!("loose_measurement.rs")).waivable(),
    run,
);

/// Units that people type, longest first.
const UNITS: &[&str] = &[
    "millimetres",
    "millimetre",
    "millimeters",
    "millimeter",
    "centimetres",
    "centimetre",
    "centimeters",
    "centimeter",
    "metres",
    "metre",
    "meters",
    "meter",
    "inches",
    "inch",
    "yards",
    "yard",
    "feet",
    "foot",
    "mm",
    "cm",
    "yd",
    "ft",
    "in",
    "m",
    "″",
    "\"",
];
/// Words after `in` that show it to be a word of its own: "3 in a row".
const NO_INCHES: &[&str] = &[
    "a", "all", "an", "any", "between", "both", "case", "cold", "cool", "each", "front", "half", "hot", "its", "line",
    "lukewarm", "one", "order", "pairs", "place", "row", "rows", "soapy", "the", "this", "that", "these", "those",
    "total", "turn", "warm", "water", "your", "which",
];

/// Looks at every printed text that is about the thing that is made. The name of a size stands for that
/// size alone, so a figure in it is right.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    each_text(subject, &mut |text, sort| match sort {
        Sort::Prose | Sort::Plain => look(text, sort, findings),
        Sort::SizeName | Sort::Set => {}
    });
}

fn look(text: &Text, sort: Sort, findings: &mut Findings) {
    for range in find(&text.text) {
        let written = &text.text[range.clone()];
        let hint = match read_measure(written) {
            _ if sort == Sort::Plain => {
                "leave the figure out here, where braces are no figures, and state it as a measurement or in prose"
                    .to_owned()
            }
            Ok(_) => format!(
                "name a measurement, such as `{{seam}}`, or put it in braces to have it shown in both systems: `{{{written}}}`"
            ),
            Err(_) => {
                "name a measurement, such as `{seam}`, or write the figure with its unit's sign in braces".to_owned()
            }
        };
        findings.push(
            CHECK
                .at(text.at(range.clone()), format!("`{written}` is typed by hand, so it will not follow the sizes"))
                .hint(hint),
        );
    }
}

/// The byte ranges of figures with a unit.
fn find(text: &str) -> Vec<std::ops::Range<usize>> {
    let mut found = Vec::new();
    let mut at = 0;
    while let Some(start) = text[at..].find(is_digit).map(|digit| at + digit) {
        let word_before =
            text[..start].chars().next_back().is_some_and(|letter| letter.is_alphanumeric() || letter == '_');
        let number = number_end(text, start);
        at = number.max(start + 1);
        while !text.is_char_boundary(at) {
            at += 1;
        }
        if word_before {
            continue;
        }
        let gap = text[number..]
            .chars()
            .take_while(|letter| matches!(letter, ' ' | '\u{a0}' | '\u{202f}' | '-'))
            .take(1)
            .map(char::len_utf8)
            .sum::<usize>();
        let rest = &text[number + gap..];
        let Some(unit) = UNITS.iter().find(|unit| rest.starts_with(**unit)) else { continue };
        let after = &rest[unit.len()..];
        if unit.chars().all(char::is_alphabetic)
            && after.starts_with(|letter: char| letter.is_alphanumeric() || letter == '_')
        {
            continue;
        }
        if *unit == "in" && gap > 0 && NO_INCHES.contains(&first_word(after)) {
            continue;
        }
        found.push(start..number + gap + unit.len());
        at = number + gap + unit.len();
    }
    found
}

fn is_digit(letter: char) -> bool {
    letter.is_ascii_digit() || "¼½¾⅛⅜⅝⅞⅓⅔".contains(letter)
}

/// The end of `1`, `0.5`, `1,5`, `1/2`, `1 3/8`, `1½`.
fn number_end(text: &str, start: usize) -> usize {
    let digits = |from: usize| from + text[from..].find(|letter| !is_digit(letter)).unwrap_or(text.len() - from);
    let mut end = digits(start);
    loop {
        let mut letters = text[end..].chars();
        match letters.next() {
            Some('.' | ',' | '/' | '⁄') if letters.next().is_some_and(is_digit) => {
                let mark = text[end..].chars().next().map_or(1, char::len_utf8);
                end = digits(end + mark);
            }
            Some(' ' | '\u{a0}') => {
                let gap = text[end..].chars().next().map_or(1, char::len_utf8);
                let next = digits(end + gap);
                let fraction = next > end + gap && text[next..].starts_with('/');
                if !fraction {
                    return end;
                }
                end = next;
            }
            _ => return end,
        }
    }
}

fn first_word(text: &str) -> &str {
    let text = text.trim_start();
    text.split(|letter: char| !letter.is_alphanumeric()).next().unwrap_or("")
}

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
//! Looks for a number with a unit of length or of an angle behind it: mm, cm, m, in, inch, ft, yd, ″, ”, ° or two short
//! strokes, and for numbers and shares in words (“two inches”, “half a centimetre”, “an inch”, “45 degrees”), as
//! `templates/vocabulary-en.json` has them. Temperatures, shares, weights, times and
//! stitch counts, which no size changes, are passed over. `in` counts as a word in “3 in a row”, “1 in 3” and the like. Looks at titles and names, at all
//! words of steps and facts, and at the words in diagrams; words for those who cannot see a diagram
//! are looked at too. The names of sizes, code and addresses are passed over.

use super::judge::{Judge, Subject};
use super::passage::{Passage, Token, number, one_of, place, spoken};
use super::printed_words::each_passage;
use super::written::{Sort, each_text};
use crate::diag::{Check, Findings, Group};
use crate::measure::read_measure;
use crate::model::{Text, Vocabulary};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("loose-measurement", Group::Words, include_str!("loose_measurement.rs")).waivable(),
    run,
);

/// What is told of an angle.
const OF_ANGLE: &str = "is typed by hand, so it follows no measurement";
const ANGLE_HINT: &str = "name a measurement, or put the figure in braces, such as `{45 deg}`";

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
    "°",
    "”",
    "''",
    "’’",
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
    each_passage(subject, &mut |passage| in_words(passage, subject.vocabulary, findings));
}

/// Numbers written out: "two inches", "a quarter of an inch", "half a centimetre", "an inch".
fn in_words(passage: &Passage<'_>, vocabulary: &Vocabulary, findings: &mut Findings) {
    let tokens = &passage.tokens;
    for unit in 0..tokens.len() {
        let is_unit = one_of(tokens, unit, &vocabulary.lengths).is_some() && tokens[unit].leads.is_none();
        let is_angle = one_of(tokens, unit, &vocabulary.angles).is_some() && tokens[unit].leads.is_none();
        let from = match (is_unit, is_angle) {
            (true, _) => amount(tokens, unit, vocabulary),
            (_, true) => angle(tokens, unit, vocabulary),
            _ => None,
        };
        let Some(from) = from else { continue };
        if let Some(span) = place(&tokens[from..=unit]) {
            let words = spoken(&tokens[from..=unit]);
            findings.push(match is_unit {
                true => CHECK
                    .at(span, format!("“{}” is typed by hand, so it will not follow the sizes", words))
                    .hint("name a measurement, such as `{seam}`, or write the figure with its unit's sign in braces"),
                false => CHECK.at(span, format!("“{words}” {OF_ANGLE}")).hint(ANGLE_HINT),
            });
        }
    }
}

/// Where the number before a degree begins, in words or in figures; "to a degree" says none.
fn angle(tokens: &[Token<'_>], unit: usize, vocabulary: &Vocabulary) -> Option<usize> {
    let before = unit.checked_sub(1).filter(|_| matches!(tokens[unit].gap.as_str(), " " | "-" | "\u{a0}"))?;
    let counts = number(&tokens[before], vocabulary).is_some_and(|count| count > 1);
    let whole = before
        .checked_sub(1)
        .filter(|whole| tokens[before].gap == "-" && number(&tokens[*whole], vocabulary).is_some());
    counts.then_some(whole.unwrap_or(before))
}

/// Where the number before a unit begins; `None` where no number is said, or one in figures, which is seen already.
fn amount(tokens: &[Token<'_>], unit: usize, vocabulary: &Vocabulary) -> Option<usize> {
    let joined = |at: usize| tokens[at].gap.chars().all(|letter| letter.is_whitespace() || letter == '-');
    let mut from = unit;
    let mut says = false;
    while from > 0 && joined(from) {
        let word = tokens[from - 1].word.as_str();
        let counts = vocabulary.numbers.contains_key(word) || vocabulary.fractions.iter().any(|share| share == word);
        let small = vocabulary.small_words.iter().any(|small| small == word);
        let one = vocabulary.one.iter().any(|one| one == word);
        if !counts && !small && !one {
            break;
        }
        // "Of an inch" and "and a metre" say no number by themselves.
        says |= counts || (one && from == unit);
        from -= 1;
    }
    while from < unit && vocabulary.small_words.iter().any(|small| *small == tokens[from].word) {
        from += 1;
    }
    says.then_some(from)
}

fn look(text: &Text, sort: Sort, findings: &mut Findings) {
    for range in find(&text.text) {
        let written = &text.text[range.clone()];
        if written.ends_with('°') && sort != Sort::Plain {
            findings.push(CHECK.at(text.at(range.clone()), format!("`{written}` {OF_ANGLE}")).hint(ANGLE_HINT));
            continue;
        }
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
        // A temperature is no angle.
        if *unit == "°" && after.starts_with(['C', 'F']) {
            continue;
        }
        if unit.chars().all(char::is_alphabetic)
            && after.starts_with(|letter: char| letter.is_alphanumeric() || letter == '_')
        {
            continue;
        }
        let next = first_word(after);
        let share = next.starts_with(|letter: char| letter.is_ascii_digit());
        if *unit == "in" && gap > 0 && (share || NO_INCHES.contains(&next)) {
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

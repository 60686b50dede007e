//! Writing figures out: decimals for metric makers, fractions for those who work in inches, and
//! small counts in words.

use std::fmt;

use super::exact::Exact;
use super::unit::Unit;

const NO_BREAK_SPACE: char = '\u{a0}';
const MINUS: char = '\u{2212}';

/// How a number is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum NumberStyle {
    /// At most three decimal places, half away from 0, trailing zeros cut.
    Decimal,
    /// A whole number and a fraction in lowest terms: `1 3/8`. Always exact.
    Fraction,
}

/// A number written out, and its unit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ShownNumber {
    /// The number; a whole number and its fraction are joined by a no-break space.
    pub number: String,
    /// The unit's symbol; empty for a plain count.
    pub unit: &'static str,
    /// Whether the number says all: false when decimal places were cut off.
    pub exact: bool,
}

impl fmt::Display for ShownNumber {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.number)?;
        match self.unit {
            "" => Ok(()),
            "°" => f.write_str("°"),
            unit => write!(f, "{NO_BREAK_SPACE}{unit}"),
        }
    }
}

/// Writes a number of some unit.
pub fn show(number: Exact, unit: Unit, style: NumberStyle) -> ShownNumber {
    let (digits, exact) = match style {
        NumberStyle::Decimal => decimal(number),
        NumberStyle::Fraction => (fraction(number), true),
    };
    // What rounds to nothing carries no sign.
    let minus = number.is_negative() && digits != "0";
    ShownNumber { number: if minus { format!("{MINUS}{digits}") } else { digits }, unit: unit.symbol(), exact }
}

fn decimal(number: Exact) -> (String, bool) {
    let numer = number.numer().unsigned_abs();
    let denom = number.denom().unsigned_abs();
    let whole = numer / denom;
    // Twice a thousand times the parts must fit. A fraction that has to be narrowed for it differs
    // by less than 2^-115, far below what three places show.
    let excess = 12u32.saturating_sub(denom.leading_zeros());
    let (rest, parts) = ((numer % denom) >> excess, denom >> excess);
    let thousandths = rest * 1000;
    let exact = excess == 0 && thousandths % parts == 0;
    let rounded = (2 * thousandths + parts) / (2 * parts);
    let (whole, rounded) = (whole + rounded / 1000, rounded % 1000);
    if rounded == 0 {
        return (whole.to_string(), exact);
    }
    let places = format!("{rounded:03}");
    (format!("{whole}.{}", places.trim_end_matches('0')), exact)
}

fn fraction(number: Exact) -> String {
    let numer = number.numer().unsigned_abs();
    let denom = number.denom().unsigned_abs();
    match (numer / denom, numer % denom) {
        (whole, 0) => whole.to_string(),
        (0, rest) => format!("{rest}/{denom}"),
        (whole, rest) => format!("{whole}{NO_BREAK_SPACE}{rest}/{denom}"),
    }
}

const UNDER_TWENTY: [&str; 20] = [
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
];

const TENS: [&str; 10] = ["", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

/// A whole number from 0 to 999 in English words: "twenty-one", "one hundred and five". `None` for
/// every other number.
pub fn in_words(number: Exact) -> Option<String> {
    if !number.is_integer() {
        return None;
    }
    let number = usize::try_from(number.numer()).ok()?;
    let (hundreds, rest) = (number / 100, number % 100);
    let rest_in_words = match (rest / 10, rest % 10) {
        (0 | 1, _) => UNDER_TWENTY[rest].to_owned(),
        (tens, 0) => TENS[tens].to_owned(),
        (tens, ones) => format!("{}-{}", TENS[tens], UNDER_TWENTY[ones]),
    };
    match (hundreds, rest) {
        (0, _) => Some(rest_in_words),
        (1..=9, 0) => Some(format!("{} hundred", UNDER_TWENTY[hundreds])),
        (1..=9, _) => Some(format!("{} hundred and {rest_in_words}", UNDER_TWENTY[hundreds])),
        _ => None,
    }
}

//! Figures written out.

use notchbook::measure::NumberStyle::{Decimal, Fraction};
use notchbook::measure::{Unit, in_words, show};

use crate::exact;

#[test]
fn decimals_have_at_most_three_places() {
    for ((numer, denom), text, whole_truth) in [
        ((5, 1), "5\u{a0}mm", true),
        ((1, 2), "0.5\u{a0}mm", true),
        ((1, 8), "0.125\u{a0}mm", true),
        ((5, 4), "1.25\u{a0}mm", true),
        ((1001, 1000), "1.001\u{a0}mm", true),
        ((1, 16), "0.063\u{a0}mm", false),
        ((-1, 16), "\u{2212}0.063\u{a0}mm", false),
        ((1, 3), "0.333\u{a0}mm", false),
        ((2, 3), "0.667\u{a0}mm", false),
        ((9_999_999, 10_000_000), "1\u{a0}mm", false),
        ((19_996, 10_000), "2\u{a0}mm", false),
        ((199_995, 100_000), "2\u{a0}mm", false),
        ((-1, 10_000), "0\u{a0}mm", false),
        ((1, 2000), "0.001\u{a0}mm", false),
        ((-7, 2), "\u{2212}3.5\u{a0}mm", true),
        ((0, 1), "0\u{a0}mm", true),
        ((100, 1), "100\u{a0}mm", true),
    ] {
        let shown = show(exact(numer, denom), Unit::Mm, Decimal);
        assert_eq!(shown.to_string(), text);
        assert_eq!(shown.exact, whole_truth, "{text}");
    }
    let finest = show(exact(i128::MAX - 1, i128::MAX), Unit::Mm, Decimal);
    assert_eq!((finest.number.as_str(), finest.exact), ("1", false));
    let largest = show(exact(i128::MAX, 1), Unit::Mm, Decimal);
    assert_eq!(largest.number, i128::MAX.to_string());
}

#[test]
fn fractions_are_in_lowest_terms() {
    for ((numer, denom), text) in [
        ((11, 8), "1\u{a0}3/8\u{a0}in"),
        ((22, 16), "1\u{a0}3/8\u{a0}in"),
        ((6, 8), "3/4\u{a0}in"),
        ((-11, 8), "\u{2212}1\u{a0}3/8\u{a0}in"),
        ((-1, 16), "\u{2212}1/16\u{a0}in"),
        ((4, 2), "2\u{a0}in"),
        ((0, 3), "0\u{a0}in"),
    ] {
        let shown = show(exact(numer, denom), Unit::In, Fraction);
        assert_eq!(shown.to_string(), text);
        assert!(shown.exact);
    }
}

#[test]
fn units_follow_as_they_are_printed() {
    let text = |unit| show(exact(3, 1), unit, Decimal).to_string();
    assert_eq!(text(Unit::Celsius), "3\u{a0}°C");
    assert_eq!(text(Unit::Deg), "3°");
    assert_eq!(text(Unit::Percent), "3\u{a0}%");
    assert_eq!(text(Unit::Count), "3");
    assert_eq!(text(Unit::In2), "3\u{a0}in²");
    assert_eq!(text(Unit::Minute), "3\u{a0}min");
}

#[test]
fn small_counts_have_words() {
    for (number, words) in [
        (0, "zero"),
        (1, "one"),
        (12, "twelve"),
        (19, "nineteen"),
        (20, "twenty"),
        (21, "twenty-one"),
        (99, "ninety-nine"),
        (100, "one hundred"),
        (105, "one hundred and five"),
        (342, "three hundred and forty-two"),
        (610, "six hundred and ten"),
        (999, "nine hundred and ninety-nine"),
    ] {
        assert_eq!(in_words(exact(number, 1)).as_deref(), Some(words));
    }
    for none in [
        exact(1000, 1),
        exact(-1, 1),
        exact(1, 2),
        exact(i128::MAX, 1),
    ] {
        assert_eq!(in_words(none), None);
    }
    let mut all: Vec<_> = (0..=999).filter_map(|n| in_words(exact(n, 1))).collect();
    all.sort();
    all.dedup();
    assert_eq!(all.len(), 1000);
}

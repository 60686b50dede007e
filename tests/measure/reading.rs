//! Every written form of a figure.

use notchbook::measure::{Dimension, Formula, System, Unit, read_measure};

use crate::{exact, quantity};

#[test]
fn every_written_form_is_read() {
    let forms: &[(&str, (i128, i128), Unit)] = &[
        ("5 mm", (5, 1), Unit::Mm),
        ("5mm", (5, 1), Unit::Mm),
        ("  5 mm  ", (5, 1), Unit::Mm),
        ("5\u{a0}mm", (5, 1), Unit::Mm),
        ("5\u{202f}mm", (5, 1), Unit::Mm),
        ("5\u{2009}mm", (5, 1), Unit::Mm),
        ("0.5 cm", (1, 2), Unit::Cm),
        (".5 in", (1, 2), Unit::In),
        ("007 cm", (7, 1), Unit::Cm),
        ("1 1/2 in", (3, 2), Unit::In),
        ("1\u{a0}1/2\u{a0}in", (3, 2), Unit::In),
        ("1 1/2\"", (3, 2), Unit::In),
        ("1 1/2″", (3, 2), Unit::In),
        ("1⅜\"", (11, 8), Unit::In),
        ("1 ⅜ in", (11, 8), Unit::In),
        ("¾ in", (3, 4), Unit::In),
        ("3/8 in", (3, 8), Unit::In),
        ("3 / 8 in", (3, 8), Unit::In),
        ("3\u{2044}8 in", (3, 8), Unit::In),
        ("1 3\u{2044}8 in", (11, 8), Unit::In),
        ("\u{215f}12 ft", (1, 12), Unit::Ft),
        ("11/8 in", (11, 8), Unit::In),
        ("2 yd", (2, 1), Unit::Yd),
        ("2 1/4 yd", (9, 4), Unit::Yd),
        ("6 ft", (6, 1), Unit::Ft),
        ("100 m", (100, 1), Unit::M),
        ("1.25 m", (5, 4), Unit::M),
        ("12 mm2", (12, 1), Unit::Mm2),
        ("12 cm²", (12, 1), Unit::Cm2),
        ("1.5 m2", (3, 2), Unit::M2),
        ("4 in²", (4, 1), Unit::In2),
        ("1/9 yd2", (1, 9), Unit::Yd2),
        ("45 deg", (45, 1), Unit::Deg),
        ("45°", (45, 1), Unit::Deg),
        ("45 °", (45, 1), Unit::Deg),
        ("150 °C", (150, 1), Unit::Celsius),
        ("300°F", (300, 1), Unit::Fahrenheit),
        ("-18 °C", (-18, 1), Unit::Celsius),
        ("\u{2212}18\u{a0}°C", (-18, 1), Unit::Celsius),
        ("- 2 mm", (-2, 1), Unit::Mm),
        ("30 s", (30, 1), Unit::Second),
        ("10 min", (10, 1), Unit::Minute),
        ("1 1/2 h", (3, 2), Unit::Hour),
        ("250 g", (250, 1), Unit::Gram),
        ("1.2 kg", (6, 5), Unit::Kilogram),
        ("3½ oz", (7, 2), Unit::Ounce),
        ("3 %", (3, 1), Unit::Percent),
        ("3%", (3, 1), Unit::Percent),
        ("2", (2, 1), Unit::Count),
        ("1/2", (1, 2), Unit::Count),
        ("1 1/2", (3, 2), Unit::Count),
        ("2½", (5, 2), Unit::Count),
        (
            "999999999999999999",
            (999_999_999_999_999_999, 1),
            Unit::Count,
        ),
    ];
    for (text, (numer, denom), unit) in forms {
        let measure = read_measure(text).unwrap_or_else(|problem| panic!("{text}: {problem:?}"));
        assert_eq!(measure.first.number, exact(*numer, *denom), "{text}");
        assert_eq!(measure.first.unit, *unit, "{text}");
        assert_eq!(measure.first.quantity.dimension, unit.dimension(), "{text}");
        assert_eq!(measure.other, None, "{text}");
    }
}

#[test]
fn every_vulgar_fraction_is_read() {
    // Names and values: The Unicode Standard, code chart "Number Forms" (U+2150) and "Latin-1
    // Supplement" (U+00BC to U+00BE).
    let signs = [
        ('¼', 1, 4),
        ('½', 1, 2),
        ('¾', 3, 4),
        ('⅐', 1, 7),
        ('⅑', 1, 9),
        ('⅒', 1, 10),
        ('⅓', 1, 3),
        ('⅔', 2, 3),
        ('⅕', 1, 5),
        ('⅖', 2, 5),
        ('⅗', 3, 5),
        ('⅘', 4, 5),
        ('⅙', 1, 6),
        ('⅚', 5, 6),
        ('⅛', 1, 8),
        ('⅜', 3, 8),
        ('⅝', 5, 8),
        ('⅞', 7, 8),
    ];
    for (sign, numer, denom) in signs {
        assert_eq!(
            quantity(&format!("{sign} in")).value,
            exact(127 * numer, 5 * denom)
        );
        let with_whole = exact(2 * denom + numer, denom);
        assert_eq!(quantity(&format!("2{sign}")).value, with_whole);
        assert_eq!(quantity(&format!("2 {sign}")).value, with_whole);
    }
}

#[test]
fn both_systems_are_read_in_either_order() {
    let measure = read_measure("1 cm (3/8 in)").expect("both systems");
    assert_eq!(measure.first.unit, Unit::Cm);
    let other = measure.other.expect("the figure in inches");
    assert_eq!((other.number, other.unit), (exact(3, 8), Unit::In));
    assert_eq!(measure.in_system(System::Imperial), Some(&other));
    assert_eq!(measure.in_system(System::Metric), Some(&measure.first));

    let turned = read_measure("⅜\"(1cm)").expect("inches first");
    assert_eq!(turned.first, other);
    assert_eq!(turned.other, Some(measure.first));

    let negative = read_measure("-1 cm (3/8 in)").expect("a minus covers both");
    assert_eq!(negative.first.number, exact(-1, 1));
    assert_eq!(negative.other.map(|other| other.number), Some(exact(-3, 8)));
}

#[test]
fn each_temperature_carries_its_own_minus() {
    let measure = read_measure("-5 °C (23 °F)").expect("both systems");
    assert_eq!(measure.first.number, exact(-5, 1));
    assert_eq!(measure.other.map(|other| other.number), Some(exact(23, 1)));
    assert_eq!(
        measure.other.map(|other| other.quantity),
        Some(measure.first.quantity)
    );
    let below = read_measure("-20 °C (-4 °F)").expect("both below 0");
    assert_eq!(
        below.other.map(|other| other.quantity),
        Some(below.first.quantity)
    );
}

#[test]
fn what_is_shown_is_read_again() {
    for text in [
        "5\u{a0}mm",
        "1\u{a0}3/8\u{a0}in",
        "\u{2212}1\u{a0}3/8\u{a0}in",
        "45°",
        "3\u{a0}%",
        "7",
        "1\u{a0}cm (3/8\u{a0}in)",
        "\u{2212}1\u{a0}cm (3/8\u{a0}in)",
        "\u{2212}20\u{a0}°C (\u{2212}4\u{a0}°F)",
        "1/3\u{a0}m",
    ] {
        let measure = read_measure(text).unwrap_or_else(|problem| panic!("{text}: {problem:?}"));
        assert_eq!(measure.to_string(), text);
    }
}

#[test]
fn units_know_their_sort_system_and_symbol() {
    for unit in Unit::ALL {
        if unit == Unit::Count {
            assert_eq!(unit.symbol(), "");
        } else {
            assert_eq!(Unit::parse(unit.symbol()), Some(unit));
        }
    }
    assert_eq!(Unit::parse(""), None);
    assert_eq!(Unit::parse("CM"), None);
    assert_eq!(Unit::Yd2.dimension(), Dimension::Area);
    assert_eq!(Unit::Fahrenheit.system(), Some(System::Imperial));
    assert_eq!(Unit::Minute.system(), None);
    assert_eq!(Unit::Percent.dimension(), Dimension::Count);
}

#[test]
fn the_names_of_sorts_and_systems_are_plain_words() {
    let names: Vec<_> = Unit::ALL
        .iter()
        .map(|unit| unit.dimension().name())
        .collect();
    for expected in [
        "a length",
        "an area",
        "an angle",
        "a temperature",
        "a time",
        "a weight",
        "a plain number",
    ] {
        assert!(names.contains(&expected), "{expected}");
    }
    assert_eq!(System::Metric.name(), "metric");
}

#[test]
fn a_formula_that_is_one_figure_says_so() {
    let figure = |text: &str| {
        let formula = Formula::parse(text).unwrap_or_else(|p| panic!("{text}: {p:?}"));
        formula.as_measure().copied()
    };
    assert_eq!(figure("1 cm (3/8 in)"), read_measure("1 cm (3/8 in)").ok());
    assert_eq!(figure("1 1/2\""), read_measure("1 1/2 in").ok());
    assert_eq!(figure("-18 °C"), read_measure("-18 °C").ok());
    assert_eq!(figure("-2 cm"), None);
    assert_eq!(figure("1 cm + 1 cm"), None);
    assert_eq!(figure("seam"), None);
}

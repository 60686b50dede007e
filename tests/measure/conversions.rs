//! Exact conversions, each against a published definition or a second reckoner.

use notchbook::measure::{
    Unit, convert, down_to, nearest_fraction, round_to, square_root, to_f64, up_to,
};

use crate::{exact, quantity};

#[test]
fn units_have_their_defined_sizes() {
    // International yard and pound agreement, 1959: 1 yd = 0.9144 m, 1 lb = 0.453 592 37 kg exactly;
    // NIST SP 811, appendix B, and NIST Handbook 44, appendix C, print the values that follow.
    for (figure, same) in [
        ("1 in", "25.4 mm"),
        ("1 in", "2.54 cm"),
        ("1 ft", "30.48 cm"),
        ("1 ft", "12 in"),
        ("1 yd", "0.9144 m"),
        ("1 yd", "36 in"),
        ("1 in2", "6.4516 cm2"),
        ("1 in2", "645.16 mm²"),
        ("1 yd²", "0.83612736 m²"),
        ("1 m2", "10000 cm2"),
        ("1 oz", "28.349523125 g"),
        ("16 oz", "0.45359237 kg"),
        ("1 h", "60 min"),
        ("1 min", "60 s"),
        ("3 %", "0.03"),
        ("1 m", "1000 mm"),
    ] {
        assert_eq!(quantity(figure), quantity(same), "{figure} = {same}");
    }
}

#[test]
fn temperatures_meet_at_the_fixed_points() {
    // t/°C = (t/°F − 32) / 1.8: NIST SP 811, appendix B. The two scales cross at −40.
    for (celsius, fahrenheit) in [
        ("0 °C", "32 °F"),
        ("100 °C", "212 °F"),
        ("-40 °C", "-40 °F"),
        ("37 °C", "98.6 °F"),
        ("150 °C", "302 °F"),
        ("-17 7/9 °C", "0 °F"),
    ] {
        assert_eq!(quantity(celsius), quantity(fahrenheit), "{celsius}");
    }
    assert_eq!(
        convert(quantity("200 °C"), Unit::Fahrenheit),
        Some(exact(392, 1))
    );
}

#[test]
fn every_sixty_fourth_of_an_inch_has_its_decimal() {
    // The decimal equivalents as tables of fractions print them: 1/64 in = 0.015625 in, and
    // 0.015625 = 15625 / 1,000,000, so that each further 64th adds 15625 millionths.
    for sixty_fourths in 1..=64i128 {
        let millionths = 15_625 * sixty_fourths;
        let decimal = format!(
            "{}.{:06} in",
            millionths / 1_000_000,
            millionths % 1_000_000
        );
        let fraction = format!("{sixty_fourths}/64 in");
        assert_eq!(quantity(&fraction), quantity(&decimal), "{fraction}");
        // The same in millimetres: 25.4 / 64 = 0.396875, as the metric column prints it.
        let parts = 396_875 * sixty_fourths;
        let metric = format!("{}.{:06} mm", parts / 1_000_000, parts % 1_000_000);
        assert_eq!(quantity(&fraction), quantity(&metric), "{fraction}");
    }
    assert_eq!(quantity("0.984375 in"), quantity("63/64 in"));
    assert_eq!(quantity("0.375 in"), quantity("9.525 mm"));
}

#[test]
fn a_second_reckoner_gives_the_same() {
    // units/conversions.csv is made by units/make.py with an independent library.
    let mut rows = 0;
    for row in include_str!("../units/conversions.csv").lines().skip(1) {
        let [number, from, to, numer, denom] = row.split(',').collect::<Vec<_>>()[..] else {
            panic!("five columns in {row}");
        };
        let read = |part: &str| part.parse::<i128>().unwrap_or_else(|_| panic!("{row}"));
        let unit = Unit::parse(to).unwrap_or_else(|| panic!("{row}"));
        assert_eq!(
            convert(quantity(&format!("{number} {from}")), unit),
            Some(exact(read(numer), read(denom))),
            "{row}"
        );
        rows += 1;
    }
    assert!(rows > 450, "{rows} rows");
}

#[test]
fn other_sorts_do_not_convert() {
    assert_eq!(convert(quantity("5 cm"), Unit::Cm2), None);
    assert_eq!(convert(quantity("5"), Unit::Cm), None);
    assert_eq!(convert(quantity("0.5"), Unit::Percent), Some(exact(50, 1)));
}

#[test]
fn rounding_goes_to_the_step() {
    let eighth = exact(1, 8);
    for (value, nearest, up, down) in [
        (exact(5, 16), exact(3, 8), exact(3, 8), exact(1, 4)),
        (exact(-5, 16), exact(-3, 8), exact(-1, 4), exact(-3, 8)),
        (exact(3, 8), exact(3, 8), exact(3, 8), exact(3, 8)),
        (exact(-3, 8), exact(-3, 8), exact(-3, 8), exact(-3, 8)),
        (exact(31, 100), exact(1, 4), exact(3, 8), exact(1, 4)),
        (exact(-31, 100), exact(-1, 4), exact(-1, 4), exact(-3, 8)),
        (exact(32, 100), exact(3, 8), exact(3, 8), exact(1, 4)),
        (exact(0, 1), exact(0, 1), exact(0, 1), exact(0, 1)),
    ] {
        assert_eq!(round_to(value, eighth), Some(nearest), "{value:?}");
        assert_eq!(round_to(value, -eighth), Some(nearest), "{value:?}");
        assert_eq!(up_to(value, eighth), Some(up), "{value:?}");
        assert_eq!(down_to(value, eighth), Some(down), "{value:?}");
        assert_eq!(round_to(value, exact(0, 1)), None);
    }
    let huge = exact(i128::MAX, 1);
    assert_eq!(round_to(huge, exact(1, 3)), None);
}

#[test]
fn the_nearest_fraction_of_an_inch_is_found() {
    let nearest = |figure: &str, step| {
        nearest_fraction(quantity(figure), step).map(|stated| stated.to_string())
    };
    assert_eq!(
        nearest("5 mm", exact(1, 16)),
        Some("3/16\u{a0}in".to_owned())
    );
    assert_eq!(nearest("1 cm", exact(1, 8)), Some("3/8\u{a0}in".to_owned()));
    assert_eq!(
        nearest("2.54 cm", exact(1, 8)),
        Some("1\u{a0}in".to_owned())
    );
    assert_eq!(
        nearest("35 cm", exact(1, 8)),
        Some("13\u{a0}3/4\u{a0}in".to_owned())
    );
    assert_eq!(nearest("5 g", exact(1, 8)), None);
    assert_eq!(nearest("5 mm", exact(0, 1)), None);
}

#[test]
fn roots_are_exact_or_close() {
    assert_eq!(square_root(exact(9, 16)), Some(exact(3, 4)));
    assert_eq!(square_root(exact(0, 1)), Some(exact(0, 1)));
    assert_eq!(square_root(exact(-1, 1)), None);
    // A root that is not exact is cut off at the thirtieth binary place, just under 1e-9.
    let limit = exact(1, 1 << 30);
    assert!(limit < exact(1, 1_000_000_000));
    for value in [
        exact(2, 1),
        exact(1, 3),
        exact(1, 1_000_003),
        exact(3, 1 << 60),
        exact(123_456_789_123, 7),
        exact(451_612, 25),
    ] {
        let root = square_root(value).unwrap_or_else(|| panic!("a root of {value:?}"));
        let square =
            |root: notchbook::measure::Exact| root.checked_mul(root).expect("a small root");
        assert!(square(root) <= value, "{value:?}");
        let above = root.checked_add(limit).expect("a small root");
        assert!(square(above) > value, "{value:?}");
    }
    // Too large to take a root of to nine places: refused, not guessed.
    assert_eq!(square_root(exact(i128::MAX, 1)), None);
}

#[test]
fn drawing_gets_the_nearest_float() {
    assert_eq!(to_f64(exact(1, 4)), 0.25);
    assert_eq!(to_f64(quantity("1 in").value), 25.4);
    assert_eq!(to_f64(quantity("-1/3 cm").value), -10.0 / 3.0);
}

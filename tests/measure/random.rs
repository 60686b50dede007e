//! Properties over random figures and formulas.

use notchbook::measure::{
    Exact, Formula, Lookup, Names, NumberStyle, Outcome, Quantity, Stated, Unit, convert, down_to,
    evaluate, read_measure, round_to, show, up_to,
};
use proptest::prelude::{Just, Strategy, any, prop_assert, prop_assert_eq, prop_oneof, proptest};
use proptest::sample::select;
use proptest::test_runner::Config;

use crate::{exact, quantity};

fn a_number() -> impl Strategy<Value = Exact> {
    let bottoms = vec![1, 2, 3, 4, 5, 7, 8, 10, 16, 32, 64, 100, 127, 1000, 99_991];
    (-1_000_000i128..1_000_000, select(bottoms)).prop_map(|(top, bottom)| exact(top, bottom))
}

fn a_unit() -> impl Strategy<Value = Unit> {
    select(Unit::ALL.to_vec())
}

/// A formula that gives a length, in the names a, b and c.
fn a_length() -> impl Strategy<Value = String> {
    let leaf = select(vec!["a", "b", "c"]).prop_map(str::to_owned);
    leaf.prop_recursive(6, 40, 3, |inner| {
        let pair = (inner.clone(), inner.clone());
        let three = (inner.clone(), inner.clone(), inner.clone());
        prop_oneof![
            pair.clone().prop_map(|(x, y)| format!("{x} + {y}")),
            pair.clone().prop_map(|(x, y)| format!("{x} - ({y})")),
            pair.clone().prop_map(|(x, y)| format!("max({x}, {y})")),
            (1..9u8, inner.clone()).prop_map(|(n, x)| format!("{n} * ({x})")),
            (inner.clone(), 1..9u8).prop_map(|(x, n)| format!("({x}) / {n}")),
            (inner.clone(), 1..9u8).prop_map(|(x, n)| format!("({x}) * {n} %")),
            inner.prop_map(|x| format!("abs(-({x}))")),
            three.prop_map(|(x, y, z)| format!("min({x}, {y}, {z})")),
        ]
    })
}

/// Three lengths, all multiplied by one number.
struct Scaled([i128; 3], Exact);

impl Names for Scaled {
    fn value(&self, name: &str) -> Lookup {
        let index = match name {
            "a" => 0,
            "b" => 1,
            _ => 2,
        };
        let value = exact(self.0[index], 10).checked_mul(self.1);
        match value.and_then(|value| Quantity::of(value, Unit::Mm)) {
            Some(quantity) => Lookup::Found(quantity),
            None => Lookup::Unknown,
        }
    }
}

proptest! {
    #![proptest_config(Config { failure_persistence: None, ..Config::with_cases(2000) })]

    #[test]
    fn what_is_shown_reads_as_the_same_value(number in a_number(), unit in a_unit()) {
        let stated = Stated::new(number, unit).expect("small numbers are held");
        let text = stated.to_string();
        let read = read_measure(&text);
        prop_assert_eq!(read.map(|measure| measure.first), Ok(stated), "{}", text);
    }

    #[test]
    fn fractions_read_as_the_same_value(number in a_number(), unit in a_unit()) {
        let shown = show(number, unit, NumberStyle::Fraction);
        prop_assert_eq!(
            read_measure(&shown.to_string()).map(|measure| measure.first.number),
            Ok(number)
        );
    }

    #[test]
    fn decimals_are_within_half_a_thousandth(number in a_number()) {
        let shown = show(number, Unit::Cm, NumberStyle::Decimal);
        let read = read_measure(&shown.to_string()).map(|measure| measure.first.number);
        let read = read.expect("a decimal");
        let off = read.distance(number).expect("small numbers are held");
        prop_assert!(off <= exact(1, 2000));
        prop_assert_eq!(shown.exact, off == exact(0, 1));
    }

    #[test]
    fn conversions_go_and_come_back(number in a_number(), from in a_unit(), to in a_unit()) {
        let quantity = Quantity::of(number, from).expect("small numbers are held");
        match convert(quantity, to) {
            Some(there) => prop_assert_eq!(Quantity::of(there, to), Some(quantity)),
            None => prop_assert!(from.dimension() != to.dimension()),
        }
    }

    #[test]
    fn rounding_lands_on_a_step_close_by(number in a_number(), parts in 1..64i128) {
        let step = exact(3, parts);
        let rounded = [round_to, up_to, down_to].map(|round| round(number, step));
        let [near, up, down] = rounded.map(|held| held.expect("small numbers are held"));
        for rounded in [near, up, down] {
            prop_assert!(rounded.checked_div(step).is_some_and(Exact::is_integer));
        }
        prop_assert!(down <= number && number <= up);
        prop_assert!(up.checked_sub(down) == Some(step) || up == down);
        prop_assert!(number.distance(near) <= number.distance(up));
        prop_assert!(number.distance(near) <= number.distance(down));
        prop_assert_eq!(round_to(-number, step), Some(-near));
    }

    #[test]
    fn lengths_scale_linearly(
        text in a_length(),
        lengths in [-5000..5000i128, -5000..5000, -5000..5000],
        scale in 1..20i128,
        parts in 1..20i128,
    ) {
        let formula = Formula::parse(&text);
        let formula = formula.unwrap_or_else(|problems| panic!("{text}: {problems:?}"));
        let by = exact(scale, parts);
        let worth = |names: Scaled| match evaluate(&formula, &names) {
            Ok(Outcome::Quantity(quantity)) => quantity,
            other => panic!("{text}: {other:?}"),
        };
        let plain = worth(Scaled(lengths, exact(1, 1)));
        let scaled = worth(Scaled(lengths, by));
        prop_assert_eq!(plain.dimension, quantity("1 mm").dimension);
        prop_assert_eq!(plain.value.checked_mul(by), Some(scaled.value));
    }

    #[test]
    fn no_text_does_harm(text in prop_oneof![
        any::<String>(),
        "[-0-9a-c .,/()+*\\[\\]<>=%°½⅜⅟⁄×−inmcC²\"_]{0,40}",
        Just(String::new()),
    ]) {
        if let Err(problem) = read_measure(&text) {
            prop_assert!(text.get(problem.range).is_some(), "{}", text);
        }
        let problems = match Formula::parse(&text) {
            Ok(formula) => evaluate(&formula, &Scaled([1, 2, 3], exact(1, 1))).err(),
            Err(problems) => {
                prop_assert!(!problems.is_empty());
                Some(problems)
            }
        };
        for problem in problems.into_iter().flatten() {
            prop_assert!(text.get(problem.range.clone()).is_some(), "{}", text);
            prop_assert!(!problem.message.is_empty() && !problem.hint.is_empty());
            for (range, _) in problem.related {
                prop_assert!(text.get(range).is_some(), "{}", text);
            }
        }
    }
}

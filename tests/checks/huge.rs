//! Figures as large and as finely divided as any that can be written: nothing panics, and what is shown
//! is true or is a finding.

use notchbook::measure::{Dimension, Exact, Quantity, System, ratio, to_f64};
use notchbook::model::{Show, ShowPlaces};
use notchbook::resolve::{Shown, Worked, in_system, stitch_figures};
use proptest::prelude::{Strategy, any, prop_assert, prop_assert_eq, prop_oneof, proptest};
use proptest::sample::select;
use proptest::test_runner::Config;

use crate::support::booklet::run;
use crate::support::chapter::Block;

fn a_huge_number() -> impl Strategy<Value = Exact> {
    let limits = vec![
        0,
        1,
        -1,
        3,
        254,
        i128::MAX,
        -i128::MAX,
        i128::MAX / 25,
        1 << 100,
    ];
    let part = prop_oneof![
        any::<i128>(),
        any::<i64>().prop_map(i128::from),
        select(limits)
    ];
    (part.clone(), part).prop_filter_map("a ratio", |(numer, denom)| ratio(numer, denom))
}

fn a_dimension() -> impl Strategy<Value = Dimension> {
    select(vec![
        Dimension::Length,
        Dimension::Area,
        Dimension::Angle,
        Dimension::Temperature,
        Dimension::Time,
        Dimension::Mass,
        Dimension::Count,
    ])
}

/// A figure with as many digits as are read.
fn a_figure() -> impl Strategy<Value = String> {
    let number = prop_oneof![
        (1..1_000_000_000_000_000_000u64).prop_map(|whole| whole.to_string()),
        (
            1..1_000_000_000_000_000_000u64,
            1..1_000_000_000_000_000_000u64
        )
            .prop_map(|(top, bottom)| format!("{top}/{bottom}")),
        (1..400u64, 1..1_000_000_000_000_000u64)
            .prop_map(|(whole, part)| format!("{whole}.{part:015}")),
        (1..40u64).prop_map(|whole| whole.to_string()),
    ];
    (number, select(vec!["mm", "cm", "m", "in", "yd"]))
        .prop_map(|(number, unit)| format!("{number} {unit}"))
}

/// A formula of such figures.
fn a_formula() -> impl Strategy<Value = String> {
    let sign = select(vec!["+", "-", "*", "/"]);
    prop_oneof![
        a_figure(),
        (a_figure(), a_figure()).prop_map(|(one, other)| format!("{one} ({other})")),
        (a_figure(), sign.clone(), 1..1_000_000_000_000_000_000u64)
            .prop_map(|(one, sign, by)| format!("({one}) {sign} {by}")),
        (a_figure(), select(vec!["+", "-"]), a_figure())
            .prop_map(|(one, sign, by)| format!("({one}) {sign} ({by})")),
        (a_figure(), a_figure(), a_figure()).prop_map(|(a, b, c)| format!("({a}) * ({b}) / ({c})")),
    ]
}

proptest! {
    #![proptest_config(Config { failure_persistence: None, ..Config::with_cases(3000) })]

    #[test]
    fn what_is_shown_is_the_value_to_its_step(
        value in a_huge_number(),
        dimension in a_dimension(),
        step in a_huge_number(),
    ) {
        let quantity = Quantity { value, dimension };
        let worked = Worked { quantity, stated: None };
        let step = step.abs().max(Exact::of::<1, 1000>());
        let show = Show {
            first: System::Metric,
            second: Some(System::Imperial),
            metric_step: step,
            imperial_step: step,
            tolerance: Exact::ONE,
            places: ShowPlaces::default(),
        };
        let shown = Shown::of(&worked, &show);
        stitch_figures(&worked, &show);
        for figure in shown.second.iter().chain([&shown.first]) {
            prop_assert_eq!(figure.quantity.dimension, dimension);
        }
        for system in [System::Metric, System::Imperial] {
            let figure = in_system(&worked, system, &show);
            if dimension == Dimension::Length {
                let apart = (to_f64(figure.quantity.value) - to_f64(value)).abs();
                prop_assert!(
                    apart <= to_f64(step) / 2.0 * (1.0 + 1e-9) + to_f64(value).abs() * 1e-9,
                    "{value:?} by {step:?} is shown as {figure}"
                );
            }
        }
    }
}

proptest! {
    #![proptest_config(Config { failure_persistence: None, ..Config::with_cases(60) })]

    #[test]
    fn no_figure_of_a_booklet_does_harm(
        a in a_formula(),
        b in a_formula(),
        c in a_formula(),
        scale in (1..1_000_000_000u64, 1..1_000_000_000u64),
    ) {
        let facts = format!(
            "measurements:\n  a: {a}\n  b: {b}\n  c: {c}\n  sum: a + b\n  sums: sum + c + a\nfinished:\n  Sum: sums\n"
        );
        let words = "## Look {#look}\n\nIt is {a}, {b | in}, {c | yd} and {sum * 3}.\n\n![A mark](figures/mark.svg)\n";
        let drawing = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 76.123457 44\" width=\"76.000001mm\" data-scale=\"{}:{}\">\n<rect class=\"lining\" x=\"0\" y=\"0\" width=\"{{a}}\" height=\"{{sum}}\"/>\n</svg>\n",
            scale.0, scale.1
        );
        let outcome = run(&[
            &Block::new("+booklet.yaml", &facts),
            &Block::new("+make.md", words),
            &Block::new("figures/mark.svg", &drawing),
        ]);
        for found in &outcome.found {
            prop_assert!(!found.message.is_empty() && found.line > 0, "{}", found.message);
        }
    }
}

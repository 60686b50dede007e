//! What formulas come to.

use notchbook::measure::{
    Dimension, FUNCTIONS, Formula, Lookup, Measure, Names, Outcome, Quantity, System, evaluate,
    explain,
};

use crate::{BAG, exact, mm, quantity, run, worth};

#[test]
fn formulas_come_to_their_values() {
    for (formula, figure) in [
        ("width", "20 cm"),
        ("width + depth + 2 * seam", "32 cm"),
        ("width - depth / 2", "15 cm"),
        ("width - depth - seam", "9 cm"),
        ("(width + depth) / 2", "15 cm"),
        ("2 * (width + seam) - -seam", "43 cm"),
        ("-(width)", "-20 cm"),
        ("width × 2 ÷ 4 − seam", "9 cm"),
        ("width * 103 %", "20.6 cm"),
        ("width * 3 % + width", "20.6 cm"),
        ("width / depth", "2"),
        ("width * depth", "200 cm2"),
        ("width * depth / seam", "200 cm"),
        ("body.area / lining_front.top", "30 cm"),
        ("body.area / (1 cm * 1 cm)", "900"),
        ("1 / 8", "0.125"),
        ("1/8 in", "3.175 mm"),
        ("1 / 8 in", "3.175 mm"),
        ("seam + 1/8 in", "13.175 mm"),
        ("2 * 3/8 in", "3/4 in"),
        ("2 * 1 1/2 in", "3 in"),
        ("1 1/2 * depth", "15 cm"),
        ("depth/2", "5 cm"),
        ("depth / 2", "5 cm"),
        ("12 / 4 / 3", "1"),
        ("24 / 3 * 2", "16"),
        ("1 - 2 - 3", "-4"),
        ("2 + 3 * 4", "14"),
        ("width / (3/8 in)", "20 380/381"),
        ("5 ft + 6 in", "66 in"),
        ("1 cm (3/8 in) + 1 cm", "2 cm"),
        ("turn + 45°", "90 deg"),
        ("rest + 1 h", "70 min"),
        ("rest / 5 min", "2"),
        ("250 g + 1 kg", "1.25 kg"),
        ("iron", "150 °C"),
        ("-10 °C", "14 °F"),
        ("min(width, depth, 3 in)", "3 in"),
        ("max(width)", "20 cm"),
        ("max(1, count, 2)", "3"),
        ("min(iron, 300 °F)", "300 °F"),
        ("abs(depth - width)", "10 cm"),
        ("round(13.2 cm, 5 mm)", "13 cm"),
        ("round(2.5 mm, 5 mm)", "5 mm"),
        ("round(-2.5 mm, 5 mm)", "-5 mm"),
        ("up(1.01 in, 1/8 in)", "1 1/8 in"),
        ("down(1.2 in, 1/8 in)", "1 1/8 in"),
        ("down(-1.2 in, 1/8 in)", "-1 1/4 in"),
        ("up(count / 2, 1)", "2"),
        ("stock(width + 2 cm, [30 cm, 25 cm, 22 cm, 20 cm])", "22 cm"),
        ("stock(width, [width])", "20 cm"),
        ("stock(1/2 in, [1 cm, 13 mm])", "13 mm"),
        ("sqrt(body.area)", "30 cm"),
        ("sqrt(9/16)", "0.75"),
        ("sqrt(2 * 2 * count * count)", "6"),
        ("  max ( width ,\n depth ) ", "20 cm"),
    ] {
        assert_eq!(worth(formula), quantity(figure), "{formula}");
    }
}

#[test]
fn comparisons_hold_or_not() {
    for (formula, holds) in [
        ("width > depth", true),
        ("width < depth", false),
        ("width >= 2 * depth", true),
        ("width <= 2 * depth", true),
        ("width ≥ 2 * depth", true),
        ("width ≤ depth", false),
        ("1 in = 25.4 mm", true),
        ("1 in = 2.5 cm", false),
        ("seam + depth < width", true),
        ("iron <= 302 °F", true),
        ("count = 3", true),
        ("(width > depth)", true),
    ] {
        assert_eq!(run(formula), Ok(Outcome::Truth(holds)), "{formula}");
    }
}

#[test]
fn spaced_divisions_stay_in_their_row() {
    // 20 cm * 3 / 8 in: the row of signs goes on, so this is a plain number.
    assert_eq!(
        worth("width * 3 / 8 in"),
        Quantity::count(exact(600 * 5, 8 * 127))
    );
    assert_eq!(worth("width * 3/8 in").dimension, Dimension::Area);
}

#[test]
fn names_are_given_with_their_characters() {
    let text = "lining_front.top + 2 * max(seam, -(depth)) > stock(w, [seam])";
    let formula = Formula::parse(text).expect("a formula");
    let names = formula.names();
    let words: Vec<&str> = names.iter().map(|(name, _)| *name).collect();
    assert_eq!(
        words,
        ["lining_front.top", "seam", "depth", "w", "seam"],
        "in the order of the text"
    );
    for (name, range) in names {
        assert_eq!(&text[range], name);
    }
}

#[test]
fn names_of_other_languages_are_read() {
    let formula = Formula::parse("höhe + breite_2").expect("letters of any script");
    assert_eq!(formula.names().len(), 2);
}

#[test]
fn each_step_is_explained_once() {
    let text = "stock(width + 2 * seam, [20 cm, 25 cm]) + seam + unknown";
    let steps = explain(&Formula::parse(text).expect("a formula"), &BAG);
    let expected = [
        ("width", mm(200, 1)),
        ("seam", mm(10, 1)),
        ("stock(width + 2 * seam, [20 cm, 25 cm])", mm(250, 1)),
    ];
    let expected: Vec<_> = expected
        .map(|(text, worth)| (text.to_owned(), worth))
        .into();
    assert_eq!(steps, expected);
}

/// Works in inches: of two figures it takes the imperial one.
struct Inches;

impl Names for Inches {
    fn value(&self, _: &str) -> Lookup {
        Lookup::Unknown
    }

    fn figure(&self, measure: &Measure) -> Quantity {
        let stated = measure.in_system(System::Imperial);
        stated.unwrap_or(&measure.first).quantity
    }
}

#[test]
fn a_caller_may_take_the_other_figure() {
    let formula = Formula::parse("2 * 1 cm (3/8 in)").expect("a formula");
    assert_eq!(
        evaluate(&formula, &Inches),
        Ok(Outcome::Quantity(quantity("3/4 in")))
    );
}

#[test]
fn every_function_is_in_the_table_and_works() {
    let examples = [
        ("min", "min(1, 2)", "1"),
        ("max", "max(1, 2)", "2"),
        ("abs", "abs(-1)", "1"),
        ("round", "round(1.2, 1)", "1"),
        ("up", "up(1.2, 1)", "2"),
        ("down", "down(1.8, 1)", "1"),
        ("stock", "stock(1, [2, 3])", "2"),
        ("sqrt", "sqrt(4)", "2"),
        // The sums of the trade, by hand (common practice, no source). 81 cm² is a square of 9 cm.
        ("boxed_corner", "boxed_corner(12 cm)", "6 cm"),
        ("boxed_depth", "boxed_depth(6 cm)", "12 cm"),
        ("boxed_side", "boxed_side(30 cm, 12 cm, 1 cm)", "44 cm"),
        ("bias_length", "bias_length(9 cm, 3 cm)", "27 cm"),
        ("bias_square", "bias_square(27 cm, 3 cm)", "9 cm"),
        ("bias_joins", "bias_joins(25 cm, 7 cm)", "3"),
        // Three strips of 50 cm with two seams of 1 cm give 3 × 50 - 2 × 2 = 146 cm.
        ("joined_strips", "joined_strips(146 cm, 50 cm, 1 cm)", "3"),
        ("gathered", "gathered(40 cm, 3/2)", "60 cm"),
        // 355/113 is pi to a millionth (from memory): this waist is that of a radius of 10 cm.
        (
            "circle_radius",
            "round(circle_radius(20 cm * 355 / 113, 1), 1 mm)",
            "10 cm",
        ),
        (
            "circle_hem",
            "round(circle_hem(20 cm * 355 / 113, 1, 10 cm), 1 mm)",
            "1257 mm",
        ),
        ("binding_single", "binding_single(12 mm)", "48 mm"),
        ("binding_double", "binding_double(10 mm)", "60 mm"),
        ("lining_within", "lining_within(30 cm, 4 mm)", "296 mm"),
        ("zip_tape", "zip_tape(25 cm, 2 cm)", "21 cm"),
        ("dart_width", "dart_width(98 cm, 74 cm, 8)", "3 cm"),
        // The triangle of 3, 4 and 5.
        ("dart_leg", "dart_leg(6 cm, 4 cm)", "5 cm"),
        ("pleated", "pleated(30 cm, 4, 2 cm)", "46 cm"),
        ("pleat_depth", "pleat_depth(46 cm, 30 cm, 4)", "2 cm"),
        (
            "arc_length",
            "round(arc_length(10 cm, 180°), 1 mm)",
            "314 mm",
        ),
        (
            "facing_edge",
            "round(facing_edge(44 cm, 6 cm, 360°), 1 mm)",
            "817 mm",
        ),
        ("bias_round", "bias_round(40 cm, 5 %, 1 cm)", "40 cm"),
        (
            "elastic_length",
            "elastic_length(70 cm, 10 %, 2 cm)",
            "65 cm",
        ),
        ("casing_depth", "casing_depth(2 cm, 4 mm, 6 mm)", "3 cm"),
        (
            "buttonhole_length",
            "buttonhole_length(18 mm, 3 mm)",
            "21 mm",
        ),
        ("button_gap", "button_gap(32 cm, 5)", "8 cm"),
    ];
    let names: Vec<&str> = FUNCTIONS.iter().map(|function| function.name).collect();
    assert_eq!(names, examples.map(|(name, _, _)| name));
    for (_, formula, figure) in examples {
        assert_eq!(worth(formula), quantity(figure), "{formula}");
    }
    for function in FUNCTIONS {
        let opening = format!("{}(", function.name);
        assert!(function.signature.starts_with(&opening));
        assert!(!function.meaning.is_empty() && !function.meaning.contains('\n'));
    }
}

#[test]
fn the_ratio_of_the_circle_has_a_name() {
    // Its first nine figures (from memory).
    assert_eq!(worth("round(pi, 1/1000000000)"), quantity("3.141592654"));
    assert_eq!(worth("round(2 * pi * 10 cm, 1 mm)"), quantity("628 mm"));
}

#[test]
fn long_sums_and_deep_brackets_need_little_stack() {
    let sum = vec!["1"; 1000].join("+");
    assert_eq!(worth(&sum), quantity("1000"));
    assert_eq!(
        Formula::parse(&sum),
        Formula::parse(&sum),
        "a long tree compares"
    );
    let deep = format!("{}1{}", "(".repeat(64), ")".repeat(64));
    assert_eq!(worth(&deep), quantity("1"));
    let calls = format!("{}1{}", "abs(".repeat(64), ")".repeat(64));
    assert_eq!(worth(&calls), quantity("1"));
    let row = format!("{}-2 cm", "1 * (".repeat(60)) + &")".repeat(60);
    assert_eq!(worth(&row), quantity("-2 cm"));
}

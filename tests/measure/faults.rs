//! Each sort of problem, at its very characters, with the fact and the act.

use notchbook::measure::ProblemKind::{
    DivisionByZero, Mismatch, NoStock, OutOfRange, Overflow, UnknownFunction, UnknownName,
    Unreadable, WrongArguments,
};
use notchbook::measure::{Dimension, Fault, Problem, ProblemKind, read_measure};

use crate::{quantity, run};

/// The only problem of a formula.
fn problem(formula: &str) -> Problem {
    let mut problems = match run(formula) {
        Err(problems) => problems,
        Ok(outcome) => panic!("{formula} gave {outcome:?}"),
    };
    assert_eq!(problems.len(), 1, "{formula}: {problems:?}");
    problems.remove(0)
}

/// Formula, sort, characters at fault, a part of the message, a part of the hint.
type Case = (
    &'static str,
    ProblemKind,
    &'static str,
    &'static str,
    &'static str,
);

fn check(cases: Vec<Case>) {
    for (formula, kind, at, message, hint) in cases {
        let problem = problem(formula);
        assert_eq!(problem.kind, kind, "{formula}: {problem:?}");
        assert_eq!(
            &formula[problem.range.clone()],
            at,
            "{formula}: {problem:?}"
        );
        assert!(problem.message.contains(message), "{formula}: {problem:?}");
        assert!(problem.hint.contains(hint), "{formula}: {problem:?}");
        for (range, label) in &problem.related {
            assert!(formula.get(range.clone()).is_some() && !label.is_empty());
        }
    }
}

#[test]
#[rustfmt::skip]
fn quantities_that_do_not_go_together() {
    check(vec![
        ("width + 3", Mismatch, "3", "a length plus a plain number", "give the 3 a unit: 3 cm"),
        ("3 + width", Mismatch, "3", "a plain number plus a length", "3 cm"),
        ("width - (3)", Mismatch, "3", "a length minus a plain number", "3 cm"),
        ("width + -3", Mismatch, "-3", "a length plus a plain number", "-3 cm"),
        ("2 in + 3", Mismatch, "3", "a length plus a plain number", "3 in"),
        ("1-1/2 in", Mismatch, "1", "a plain number minus a length", "write 1 1/2 in"),
        ("width + 3 %", Mismatch, "3 %", "a length plus a plain number", "3 % * (the whole)"),
        ("width + count", Mismatch, "width + count", "a length plus a plain number", "only like"),
        ("2 * (width + body.area)", Mismatch, "width + body.area", "a length plus an area", "only like"),
        ("(width) + (turn)", Mismatch, "(width) + (turn)", "a length plus an angle", "only like"),
        ("width > 0", Mismatch, "0", "a length compared with a plain number", "0 cm"),
        ("width = body.area", Mismatch, "width = body.area", "a length compared with an area", "only like"),
        ("body.area * width", Mismatch, "body.area * width", "an area times a length", "two lengths"),
        ("2 / width", Mismatch, "2 / width", "a plain number divided by a length", "plain number"),
        ("turn * turn", Mismatch, "turn * turn", "an angle times an angle", "plain number"),
        ("iron + 5 °C", Mismatch, "iron + 5 °C", "a temperature plus a temperature", "never reckoned"),
        ("iron * 2", Mismatch, "iron * 2", "a temperature times a plain number", "never reckoned"),
        ("iron + 2", Mismatch, "iron + 2", "a temperature plus a plain number", "never reckoned"),
        ("iron / iron", Mismatch, "iron / iron", "a temperature divided by", "never reckoned"),
        ("-iron", Mismatch, "-iron", "a minus in front of a temperature", "never reckoned"),
        ("iron < 200", Mismatch, "200", "a temperature compared with a plain number", "200 °C"),
        ("abs(iron)", Mismatch, "iron", "abs of a temperature", "never reckoned"),
        ("round(iron, 5 °C)", Mismatch, "iron", "round of a temperature", "never reckoned"),
        ("min(width, 3)", Mismatch, "3", "min of a length and a plain number", "3 cm"),
        ("max(3, width, depth)", Mismatch, "3", "max of a plain number and a length", "3 cm"),
        ("min(width, depth, turn)", Mismatch, "turn", "min of a length and an angle", "only like"),
        ("round(width, 5)", Mismatch, "5", "a length rounded to a step that is a plain number", "5 cm"),
        ("up(width, turn)", Mismatch, "turn", "a length rounded to a step that is an angle", "only like"),
        ("stock(width, [20 cm, 25])", Mismatch, "25", "a length sought in a list that holds a plain number", "25 cm"),
        ("sqrt(width)", Mismatch, "width", "the square root of a length", "root of an area"),
        ("(width > 1 cm) + 1", Mismatch, "width > 1 cm", "a comparison stands", "one value"),
        ("1 cm (10 mm)", Mismatch, "10 mm", "both figures are metric", "other system"),
        ("1 cm (3 oz)", Mismatch, "3 oz", "a weight stated beside a length", "1 cm (3/8 in)"),
        ("45° (45 deg)", Mismatch, "45 deg", "an angle is the same in both systems", "keep one"),
    ]);
}

#[test]
fn both_sides_of_a_mismatch_are_labelled() {
    let formula = "width + 3";
    let labels: Vec<_> = problem(formula)
        .related
        .into_iter()
        .map(|(range, label)| (formula[range].to_owned(), label))
        .collect();
    let expected = [("width", "a length"), ("3", "a plain number")];
    assert_eq!(
        labels,
        expected.map(|(text, label)| (text.to_owned(), label.to_owned()))
    );
}

#[test]
#[rustfmt::skip]
fn names_and_functions_that_do_not_exist() {
    check(vec![
        ("2 * widht", UnknownName("widht".into()), "widht", "nothing is called “widht”", "spelling"),
        ("(body.top)", UnknownName("body.top".into()), "body.top", "nothing is called", "define body.top"),
        ("width + cm", UnknownName("cm".into()), "cm", "nothing is called “cm”", "1 cm"),
        ("wdth(2 cm)", UnknownFunction("wdth".into()), "wdth", "no function “wdth”", "min, max, abs"),
        ("width (2 + 3)", UnknownFunction("width".into()), "width", "no function", "width * (…)"),
        ("round(width)", WrongArguments, "round(width)", "given 1 value and takes 2", "round(x, step)"),
        ("1 + abs(1, 2)", WrongArguments, "abs(1, 2)", "given 2 values and takes 1", "abs(x)"),
        ("min()", WrongArguments, "min()", "given 0 values and takes 1 or more", "min(x, y, …)"),
        ("abs([1, 2])", WrongArguments, "[1, 2]", "given a list", "abs(x)"),
        ("max(width > depth)", WrongArguments, "width > depth", "given a comparison", "max(x, y, …)"),
        ("stock(width, depth)", WrongArguments, "depth", "one value where a list is wanted", "stock(x, [a, b, …])"),
        ("stock(width, [])", WrongArguments, "[]", "the list is empty", "stock("),
    ]);
}

#[test]
#[rustfmt::skip]
fn values_outside_their_limits() {
    check(vec![
        ("width / 0", DivisionByZero, "0", "a division by 0", "other than 0"),
        ("width / (seam - 1 cm)", DivisionByZero, "seam - 1 cm", "a division by 0", "comes to 0"),
        ("1 + width / nothing", DivisionByZero, "nothing", "a division by 0", "check nothing"),
        ("3/0 in", DivisionByZero, "3/0", "0 below the bar", "3/8"),
        ("1 1/0 in", DivisionByZero, "1/0", "0 below the bar", "3/8"),
        ("\u{215f}0 in", DivisionByZero, "\u{215f}0", "0 below the bar", "3/8"),
        ("round(width, 0 cm)", OutOfRange, "0 cm", "the step is 0", "above 0"),
        ("up(width, -1 cm)", OutOfRange, "-1 cm", "the step is below 0", "above 0"),
        ("sqrt(0 - 4)", OutOfRange, "0 - 4", "the square root of \u{2212}4", "check the formula"),
        ("1234567890123456789 mm", OutOfRange, "1234567890123456789", "18 digits", "fewer"),
        ("0.1234567890123456789 mm", OutOfRange, "0.1234567890123456789", "18 digits", "fewer"),
        ("1/1234567890123456789 in", OutOfRange, "1234567890123456789", "18 digits", "fewer"),
        ("stock(45 cm, [20 cm, 40 cm, 30 cm])", NoStock, "45 cm", "45\u{a0}cm is needed, and the longest in the list is 40\u{a0}cm", "add a length"),
        ("stock(width + 1 in, [5 in, 7 1/2 in])", NoStock, "width + 1 in", "longest in the list is 7\u{a0}1/2\u{a0}in", "add a length"),
        ("999999999999999999 yd * 999999999999999999 yd", Overflow, "999999999999999999 yd * 999999999999999999 yd", "too large", "smaller"),
        ("sqrt(999999999999999999 * 999999999999999999 + 1)", Overflow, "sqrt(999999999999999999 * 999999999999999999 + 1)", "too large", "smaller"),
        ("100000000000000000 1/999999999999999998 yd", Overflow, "100000000000000000 1/999999999999999998 yd", "too large", "smaller"),
    ]);
    let related = problem("stock(45 cm, [20 cm, 40 cm, 30 cm])").related;
    assert_eq!(related, [(21..26, "the longest in the list".to_owned())]);
}

#[test]
#[rustfmt::skip]
fn text_that_cannot_be_read() {
    check(vec![
        ("1,5 cm", Unreadable, "1,5", "a comma inside a number", "write 1.5 cm"),
        ("2.5,3", Unreadable, "2.5,3", "a comma inside a number", "2.5, 3"),
        ("1.2.3 cm", Unreadable, "1.2.3", "two decimal points", "one point"),
        ("5. cm", Unreadable, ".", "no digit follows", "digits after the point"),
        ("5 inches + 1 in", Unreadable, "inches", "“inches” is not a unit", "write 5 in"),
        ("5 CM", Unreadable, "CM", "“CM” is not a unit", "write 5 cm"),
        ("3 width", Unreadable, "width", "“width” is not a unit", "write 3 * width"),
        ("20 ℃", Unreadable, "℃", "is not a unit", "write 20 °C"),
        ("1 5/4 in", Unreadable, "5/4", "not less than one", "2\u{a0}1/4"),
        ("⅟ in", Unreadable, "⅟", "below the bar", "1/8"),
        ("5 ft 6 in", Unreadable, "6 in", "side by side", "5 ft + 6 in"),
        ("2 (width + seam)", Unreadable, "(", "a bracket straight after a figure", "2 * (…)"),
        ("1 cm (-3/8 in)", Unreadable, "-3/8 in", "a minus inside the bracket", "covers both"),
        ("width/3/8 in", Unreadable, "/3/8 in", "two ways", "(3/8 in)"),
        ("zip-length + 2 cm", Unreadable, "zip-length", "a hyphen", "write zip_length"),
        ("zip\u{2011}length", Unreadable, "zip\u{2011}length", "a hyphen", "zip - length"),
        ("body..top", Unreadable, "body..top", "a point with no name", "body.top"),
        ("body. + 1 cm", Unreadable, "body.", "a point with no name", "body.top"),
        ("width +", Unreadable, "+", "nothing follows", "after it"),
        ("width + * 2", Unreadable, "*", "a value is missing", "figure or a name"),
        ("(width + seam", Unreadable, "(", "never closed", "put the )"),
        ("stock(width, [20 cm", Unreadable, "[", "never closed", "put the ]"),
        ("width + seam)", Unreadable, ")", "does not match", "take it out"),
        ("min(width, seam]", Unreadable, "]", "does not match", "take it out"),
        ("width, seam", Unreadable, ",", "separates nothing", "commas"),
        ("width seam", Unreadable, "seam", "side by side", "put a sign"),
        ("1 cm < width < 3 cm", Unreadable, "<", "a second comparison", "two formulas"),
        ("width == seam", Unreadable, "==", "not a sign", "write ="),
        ("width => seam", Unreadable, "=>", "not a sign", "write >="),
        ("width != seam", Unreadable, "!=", "not a sign", "compare with"),
        ("depth ** 2", Unreadable, "**", "not a sign", "depth * depth"),
        ("depth^2", Unreadable, "^", "no meaning", "depth * depth"),
        ("depth²", Unreadable, "²", "no meaning", "depth * depth"),
        ("width – seam", Unreadable, "–", "no meaning", "for a minus, write -"),
        ("3/8” + seam", Unreadable, "”", "no meaning", "3/8 in"),
        ("2' + seam", Unreadable, "'", "no meaning", "2 ft"),
        ("[1 cm, 2 cm]", Unreadable, "[", "a list stands", "stock(x"),
        ("stock(width, [[1 cm]])", Unreadable, "[", "a list stands", "stock(x"),
        ("", Unreadable, "", "nothing is written", "write a figure"),
        ("   ", Unreadable, "   ", "nothing is written", "write a figure"),
        ("min(width,)", Unreadable, ")", "a value is missing", "figure or a name"),
        ("🧵 + 1 cm", Unreadable, "🧵", "no meaning", "figures, names"),
    ]);
    let second = problem("1 cm < width < 3 cm");
    assert_eq!((second.range, second.related[0].0.clone()), (13..14, 5..6));
}

#[test]
fn a_hyphen_beside_a_number_or_a_call_is_a_minus() {
    assert!(run("width-2 cm").is_ok());
    assert!(run("5 cm-seam").is_ok());
    assert!(run("width-min(depth, seam)").is_ok());
    assert!(run("width - depth").is_ok());
    assert!(run("width -depth").is_ok());
}

#[test]
fn independent_faults_are_all_given() {
    let problems = run("widht + (seam + 3) * dpeth / 0").expect_err("three faults");
    let kinds: Vec<_> = problems.into_iter().map(|problem| problem.kind).collect();
    let unknown = |name: &str| UnknownName(name.to_owned());
    assert_eq!(kinds, [unknown("widht"), Mismatch, unknown("dpeth")]);

    let problems = run("zip-length + foo(1) + abs(1, 2)").expect_err("three faults");
    let kinds: Vec<_> = problems.into_iter().map(|problem| problem.kind).collect();
    assert_eq!(
        kinds,
        [Unreadable, UnknownFunction("foo".into()), WrongArguments]
    );
}

#[test]
fn a_broken_name_stops_without_a_problem_of_its_own() {
    assert_eq!(run("broken * 2 + width"), Err(Vec::new()));
    assert_eq!(run("min(width, broken) > 3"), Err(Vec::new()));
    let problems = run("broken + widht").expect_err("the other name is unknown");
    assert_eq!(problems.len(), 1);
}

#[test]
fn bad_input_of_any_size_is_answered() {
    let long = "1+".repeat(1000) + "1";
    let too_long = problem(&long);
    assert_eq!((too_long.kind, too_long.range), (OutOfRange, 0..2001));
    assert_eq!(read_measure(&long).map_err(|p| p.kind), Err(OutOfRange));
    for opening in ["(", "-", "abs(", "stock([", "1*("] {
        let deep = opening.repeat(1900 / opening.len());
        let problems = run(&deep).expect_err("too deep");
        let last = problems.last().expect("a problem");
        assert!(
            matches!(last.kind, OutOfRange | Unreadable),
            "{opening}: {last:?}"
        );
    }
    let sixty_five = format!("{}1{}", "(".repeat(65), ")".repeat(65));
    let deep = problem(&sixty_five);
    assert_eq!((deep.kind, deep.range), (OutOfRange, 64..65));
}

#[test]
#[rustfmt::skip]
fn figures_that_stand_alone_have_their_faults_too() {
    let cases = [
        ("", Unreadable, "", "no figure is written"),
        (" \u{a0}", Unreadable, " \u{a0}", "no figure is written"),
        (" wide ", Unreadable, "wide", "not a figure"),
        ("1,5 cm", Unreadable, "1,5", "a comma"),
        ("5 cm wide ", Unreadable, "wide", "more follows"),
        ("1-1/2 in", Unreadable, "-1/2 in", "more follows"),
        ("5 cm (2 in", Unreadable, "(", "a bracket straight after"),
        ("5 furlong", Unreadable, "furlong", "not a unit"),
        ("1 cm (10 mm)", Mismatch, "10 mm", "both figures are metric"),
        ("5 (5 cm)", Mismatch, "5 cm", "a length stated beside a plain number"),
        ("3/0 in", DivisionByZero, "3/0", "0 below the bar"),
    ];
    for (text, kind, at, message) in cases {
        let problem = read_measure(text).expect_err(text);
        assert_eq!(problem.kind, kind, "{problem:?}");
        assert_eq!(&text[problem.range.clone()], at, "{problem:?}");
        assert!(problem.message.contains(message), "{problem:?}");
        assert!(!problem.hint.is_empty());
    }
}

#[test]
fn quantities_report_their_faults() {
    let (length, count) = (quantity("1 cm"), quantity("2"));
    let fault = length.checked_add(count).expect_err("a mismatch");
    assert_eq!(fault.to_string(), "a length plus a plain number");
    assert_eq!(
        length.checked_div(quantity("0")),
        Err(Fault::DivisionByZero)
    );
    let huge = quantity("999999999999999 m");
    let area = huge.checked_mul(huge).expect("an area that is held");
    assert_eq!(area.dimension, Dimension::Area);
    assert_eq!(area.checked_mul(quantity("1000")), Err(Fault::Overflow));
}

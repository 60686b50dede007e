//! The formulas of the trade.

use notchbook::geometry::{Drawn, Spec};
use notchbook::measure::shapers::{
    SHAPERS, arc_length, bias_joins, bias_length, bias_round, bias_square, binding_double,
    binding_single, boxed_corner, boxed_depth, boxed_side, button_gap, buttonhole_length,
    casing_depth, circle_hem, circle_radius, dart_leg, dart_width, elastic_length, facing_edge,
    gathered, joined_strips, lining_within, pi, pleat_depth, pleated, zip_tape,
};
use notchbook::measure::to_f64;

use super::{all, arc, built, close, exact, line, mm, start};

#[test]
fn the_ratio_of_the_circle() {
    close(to_f64(pi()), std::f64::consts::PI, 1e-15);
}

#[test]
fn a_waistline_is_as_long_as_the_waist() {
    // A half circle of the radius found, sewn without allowance, measures the waist again.
    let radius = circle_radius(mm(720), exact(1, 2)).expect("a radius");
    close(to_f64(radius), 720.0 / std::f64::consts::PI, 1e-9);
    let mut waistline = arc("waist", None, 1, true, false);
    if let notchbook::geometry::RunKind::Arc { radius: drawn, .. } = &mut waistline.kind {
        *drawn = radius;
    }
    waistline.to = Some([radius, mm(0)]);
    let mut first = start(0, 0);
    first.to = Some([-radius, mm(0)]);
    let spec = Spec::Path(vec![first, waistline, line("chord", None)]);
    let shape = built(&spec, Drawn::Cutting, &all(mm(0)));
    close(super::edge(&shape, "waist").length, 720.0, 1e-3);
    let hem = circle_hem(mm(720), exact(1, 2), mm(600)).expect("a hem");
    close(to_f64(hem), 720.0 + std::f64::consts::PI * 600.0, 1e-9);
    assert_eq!(circle_radius(mm(0), mm(1)), None);
    assert_eq!(circle_radius(mm(700), mm(0)), None);
}

#[test]
fn bias_strips() {
    assert_eq!(bias_length(mm(500), mm(40)), Some(mm(6250)));
    assert_eq!(bias_square(mm(6250), mm(40)), Some(mm(500)));
    assert_eq!(bias_length(mm(30), mm(40)), None);
    assert_eq!(bias_joins(mm(2500), mm(700)), Some(mm(3)));
    assert_eq!(bias_joins(mm(2800), mm(700)), Some(mm(3)));
    assert_eq!(bias_joins(mm(700), mm(700)), Some(mm(0)));
}

#[test]
fn strips_that_are_joined_lose_their_allowances() {
    // Three strips of 500 with two seams of 10 give 3 x 500 - 2 x 20 = 1460.
    assert_eq!(joined_strips(mm(1460), mm(500), mm(10)), Some(mm(3)));
    assert_eq!(joined_strips(mm(1461), mm(500), mm(10)), Some(mm(4)));
    assert_eq!(joined_strips(mm(15), mm(500), mm(10)), Some(mm(1)));
    assert_eq!(joined_strips(mm(1000), mm(20), mm(10)), None);
}

#[test]
fn sums_of_the_trade() {
    assert_eq!(boxed_corner(mm(120)), Some(mm(60)));
    assert_eq!(boxed_depth(mm(60)), Some(mm(120)));
    assert_eq!(boxed_side(mm(300), mm(120), mm(10)), Some(mm(440)));
    assert_eq!(gathered(mm(400), exact(3, 2)), Some(mm(600)));
    assert_eq!(gathered(mm(400), exact(9, 10)), None);
    assert_eq!(binding_single(mm(12)), Some(mm(48)));
    assert_eq!(binding_double(mm(10)), Some(mm(60)));
    assert_eq!(lining_within(mm(300), mm(4)), Some(mm(296)));
    assert_eq!(lining_within(mm(3), mm(4)), None);
    assert_eq!(zip_tape(mm(250), mm(20)), Some(mm(210)));
    assert_eq!(zip_tape(mm(40), mm(20)), None);
}

#[test]
fn a_dart_and_its_leg() {
    // Three, four and five: half of 60 across and 40 down give a leg of 50.
    assert_eq!(dart_leg(mm(60), mm(40)), Some(mm(50)));
    // A dart drawn as a triangle measures the same along its leg.
    let leg = to_f64(dart_leg(mm(25), mm(90)).expect("a leg"));
    close(leg, 12.5_f64.hypot(90.0), 1e-9);
    assert_eq!(dart_leg(mm(0), mm(40)), None);
    assert_eq!(dart_width(mm(980), mm(740), mm(8)), Some(mm(30)));
    assert_eq!(dart_width(mm(740), mm(980), mm(8)), None);
    assert_eq!(dart_width(mm(980), mm(740), mm(0)), None);
}

#[test]
fn pleats_take_twice_their_depth() {
    assert_eq!(pleated(mm(300), mm(4), mm(20)), Some(mm(460)));
    assert_eq!(pleat_depth(mm(460), mm(300), mm(4)), Some(mm(20)));
    assert_eq!(pleat_depth(mm(300), mm(300), mm(4)), None);
}

#[test]
fn a_facing_is_longer_outside() {
    // Round a whole circle of radius 70 the outer edge is the circle of radius 70 + 60.
    let neck = arc_length(mm(70), mm(360)).expect("an arc");
    close(to_f64(neck), 140.0 * std::f64::consts::PI, 1e-9);
    let outer = facing_edge(neck, mm(60), mm(360)).expect("an edge");
    close(to_f64(outer), 260.0 * std::f64::consts::PI, 1e-9);
    // A straight edge does not turn, and its facing is as long.
    assert_eq!(facing_edge(mm(200), mm(60), mm(0)), Some(mm(200)));
    // Half a round and its outer edge, both drawn and measured.
    let half = |radius: i128| {
        let curve = arc("round", Some((radius, 0)), radius, true, false);
        let spec = Spec::Path(vec![start(-radius, 0), curve, line("chord", None)]);
        super::edge(&built(&spec, Drawn::Cutting, &all(mm(0))), "round").length
    };
    let neck = arc_length(mm(70), mm(180)).expect("an arc");
    close(half(70), to_f64(neck), 1e-3);
    let outer = facing_edge(neck, mm(60), mm(180)).expect("an edge");
    close(half(130), to_f64(outer), 1e-3);
}

#[test]
fn elastic_casings_and_buttons() {
    assert_eq!(elastic_length(mm(700), exact(1, 10), mm(20)), Some(mm(650)));
    assert_eq!(elastic_length(mm(700), mm(1), mm(20)), None);
    assert_eq!(elastic_length(mm(700), mm(-1), mm(20)), None);
    assert_eq!(bias_round(mm(400), exact(1, 20), mm(10)), Some(mm(400)));
    assert_eq!(casing_depth(mm(20), mm(4), mm(6)), Some(mm(30)));
    assert_eq!(buttonhole_length(mm(18), mm(3)), Some(mm(21)));
    assert_eq!(button_gap(mm(320), mm(5)), Some(mm(80)));
    assert_eq!(button_gap(mm(320), mm(1)), None);
}

#[test]
fn the_table_works_every_formula_out() {
    // Values at which every formula makes sense; the third is never needed alone. A share is under 1.
    let value = |at: usize, name: &str| match name {
        "shorter" => exact(1, 10),
        _ => [mm(600), mm(50), mm(5)][at],
    };
    for shaper in SHAPERS {
        let words: Vec<&str> = shaper
            .arguments
            .iter()
            .map(|argument| argument.name)
            .collect();
        assert_eq!(
            shaper.signature,
            format!("{}({})", shaper.name, words.join(", "))
        );
        let values: Vec<_> = words
            .iter()
            .enumerate()
            .map(|(at, name)| value(at, name))
            .collect();
        assert!(shaper.work_out(&values).is_some(), "{}", shaper.name);
        assert_eq!(shaper.work_out(&[]), None);
        for words in [shaper.meaning, shaper.formula, shaper.source] {
            assert!(!words.is_empty() && !words.ends_with('.'), "{words}");
        }
        let same = SHAPERS.iter().filter(|other| other.name == shaper.name);
        assert_eq!(same.count(), 1, "{}", shaper.name);
    }
    let table = |name: &str| {
        SHAPERS
            .iter()
            .find(|shaper| shaper.name == name)
            .expect("in the table")
    };
    assert_eq!(
        table("boxed_side").work_out(&[mm(300), mm(120), mm(10)]),
        Some(mm(440))
    );
    assert_eq!(
        table("bias_square").work_out(&[mm(6250), mm(40)]),
        Some(mm(500))
    );
}

#[test]
fn figures_too_large_are_refused() {
    for shaper in SHAPERS {
        let values = vec![mm(i128::MAX / 2); shaper.arity()];
        // No panic is the point; where an answer comes, it is not below 0.
        assert!(
            shaper.work_out(&values).is_none_or(|value| value >= mm(0)),
            "{}",
            shaper.name
        );
    }
}

//! Outlines whose lengths, areas and allowances are known from elementary geometry.

use std::f64::consts::PI;

use notchbook::geometry::{Allowances, Drawn, Spec};

use super::{
    all, arc, built, close, corner, cubic, decimal, edge, exact, line, mm, plain, polygon,
    rectangle, start,
};

#[test]
fn a_rectangle_has_four_edges() {
    let shape = plain(&rectangle(300, 200));
    let names: Vec<&str> = shape
        .edges()
        .iter()
        .map(|edge| edge.name.as_str())
        .collect();
    assert_eq!(names, ["top", "right", "bottom", "left"]);
    let lengths: Vec<_> = shape.edges().iter().map(|edge| edge.exact).collect();
    assert_eq!(lengths, [300, 200, 300, 200].map(|length| Some(mm(length))));
    assert_eq!(shape.exact_area(), Some(mm(60_000)));
    assert_eq!(shape.exact_box(), Some((mm(300), mm(200))));
    close(shape.area(), 60_000.0, 1e-6);
}

#[test]
fn corners_taken_out_shorten_their_neighbours() {
    let spec = Spec::Rectangle {
        width: mm(400),
        height: mm(350),
        corners_out: vec![corner(false, 50, 60)],
    };
    let shape = plain(&spec);
    let found: Vec<(&str, _)> = shape
        .edges()
        .iter()
        .map(|edge| (edge.name.as_str(), edge.exact))
        .collect();
    let wanted = [
        ("top", 400),
        ("right", 290),
        ("bottom_right_corner", 110),
        ("bottom", 300),
        ("bottom_left_corner", 110),
        ("left", 290),
    ];
    assert_eq!(found, wanted.map(|(name, length)| (name, Some(mm(length)))));
    assert_eq!(shape.exact_area(), Some(mm(400 * 350 - 2 * 50 * 60)));
    assert_eq!(shape.exact_box(), Some((mm(400), mm(350))));
}

#[test]
fn corners_may_be_taken_out_all_round() {
    let spec = Spec::Rectangle {
        width: mm(400),
        height: mm(350),
        corners_out: vec![corner(true, 30, 20), corner(false, 50, 60)],
    };
    let shape = plain(&spec);
    let lengths = [
        ("top", 340),
        ("left", 270),
        ("right", 270),
        ("bottom", 300),
        ("top_left_corner", 50),
        ("top_right_corner", 50),
    ];
    for (name, length) in lengths {
        assert_eq!(edge(&shape, name).exact, Some(mm(length)), "{name}");
    }
    assert_eq!(
        shape.exact_area(),
        Some(mm(400 * 350 - 2 * 50 * 60 - 2 * 30 * 20))
    );
    assert_eq!(shape.edges().len(), 8);
}

#[test]
fn a_boxed_panel_keeps_its_corner_on_the_stitching_line() {
    let spec = Spec::Rectangle {
        width: mm(420),
        height: mm(370),
        corners_out: vec![corner(false, 50, 50)],
    };
    let shape = built(&spec, Drawn::Cutting, &all(mm(10)));
    // The cut moves inwards as a whole, so both of its runs stay as long as they were.
    assert_eq!(edge(&shape, "bottom_left_corner").exact_seam, Some(mm(100)));
    assert_eq!(edge(&shape, "top").exact_seam, Some(mm(400)));
    assert_eq!(edge(&shape, "bottom").exact_seam, Some(mm(300)));
    assert_eq!(edge(&shape, "left").exact_seam, Some(mm(300)));
    close(edge(&shape, "left").seam_length, 300.0, 1e-9);
    // 400 x 350 with two corners of 50 x 50 out.
    close(shape.stitching().area(), 135_000.0, 1e-6);
}

#[test]
fn each_edge_has_its_own_allowance() {
    let allowances = Allowances {
        all: mm(10),
        by_edge: vec![("top".to_owned(), mm(30)), ("left".to_owned(), mm(0))],
        fold: None,
    };
    let outwards = built(&rectangle(300, 200), Drawn::Stitching, &allowances);
    assert_eq!(outwards.exact_box(), Some((mm(310), mm(240))));
    assert_eq!(outwards.exact_area(), Some(mm(310 * 240)));
    assert_eq!(edge(&outwards, "top").exact_cut, Some(mm(310)));
    assert_eq!(edge(&outwards, "right").exact_cut, Some(mm(240)));
    assert_eq!(edge(&outwards, "right").exact_seam, Some(mm(200)));
    let inwards = built(&rectangle(300, 200), Drawn::Cutting, &allowances);
    assert_eq!(edge(&inwards, "top").exact_seam, Some(mm(290)));
    assert_eq!(edge(&inwards, "right").exact_seam, Some(mm(160)));
    assert_eq!(edge(&inwards, "right").exact_cut, Some(mm(200)));
    assert_eq!(inwards.exact_area(), Some(mm(60_000)));
}

#[test]
fn an_edge_that_goes_on_with_another_allowance_steps() {
    let spec = Spec::Path(vec![
        start(0, 0),
        line("shoulder", Some((200, 0))),
        line("upper", Some((200, 100))),
        line("lower", Some((200, 300))),
        line("hem", Some((0, 300))),
        line("centre", None),
    ]);
    let allowances = Allowances {
        all: mm(10),
        by_edge: vec![("lower".to_owned(), mm(25))],
        fold: None,
    };
    let shape = built(&spec, Drawn::Stitching, &allowances);
    // 220 x 320, and 15 more over the length of the lower side and its hem.
    close(shape.area(), 220.0 * 320.0 + 15.0 * 210.0, 1e-6);
    close(edge(&shape, "upper").cut_length, 110.0, 1e-9);
    close(edge(&shape, "lower").cut_length, 210.0, 1e-9);
}

#[test]
fn a_slanting_edge_with_whole_sides_is_exact() {
    let shape = plain(&polygon(&[(0, 0), (30, 40), (0, 40)]));
    assert_eq!(edge(&shape, "a").exact, Some(mm(50)));
    assert_eq!(shape.exact_area(), Some(mm(600)));
    let irrational = plain(&polygon(&[(0, 0), (40, 40), (0, 40)]));
    assert_eq!(edge(&irrational, "a").exact, None);
    close(edge(&irrational, "a").length, 40.0 * 2.0_f64.sqrt(), 1e-9);
}

#[test]
fn two_half_circles_make_a_circle() {
    for left in [false, true] {
        let spec = Spec::Path(vec![
            start(-100, 0),
            arc("upper", Some((100, 0)), 100, left, false),
            arc("lower", None, 100, left, false),
        ]);
        let shape = built(&spec, Drawn::Stitching, &all(mm(15)));
        close(edge(&shape, "upper").length, PI * 100.0, 1e-3);
        close(shape.stitching().area(), PI * 100.0 * 100.0, 0.05);
        close(shape.cutting().area(), PI * 115.0 * 115.0, 0.05);
        close(edge(&shape, "lower").cut_length, PI * 115.0, 1e-3);
        let within = built(&spec, Drawn::Cutting, &all(mm(15)));
        close(edge(&within, "lower").seam_length, PI * 85.0, 1e-3);
        close(within.box_size().1, 200.0, 1e-3);
    }
}

#[test]
fn arcs_turn_the_way_that_is_said() {
    let quarter = |left, large| {
        let spec = Spec::Path(vec![
            start(0, 0),
            arc("arc", Some((100, 100)), 100, left, large),
            line("back", None),
        ]);
        plain(&spec)
    };
    let (short, long) = (PI * 50.0, PI * 150.0);
    for left in [false, true] {
        close(edge(&quarter(left, false), "arc").length, short, 1e-3);
        close(edge(&quarter(left, true), "arc").length, long, 1e-3);
    }
    // From the top left to the bottom right, turning right, the way leads along the top.
    let (x, y) = (
        quarter(false, false).box_size(),
        quarter(true, false).box_size(),
    );
    close(x.0 + y.0, 200.0, 1e-3);
    let place = |left| {
        quarter(left, false)
            .point_at("arc", notchbook::geometry::Along::Centre)
            .expect("the middle")
    };
    close(place(false).at[0], 100.0 / 2.0_f64.sqrt(), 1e-3);
    close(place(false).at[1], 100.0 - 100.0 / 2.0_f64.sqrt(), 1e-3);
    close(place(true).at[1], 100.0 / 2.0_f64.sqrt(), 1e-3);
}

/// The usual cubic for a quarter of an ellipse, whose area is off by less than 3 parts in 10 000
/// (the constant 4/3 x (root of 2 - 1) is the textbook one).
#[test]
fn a_cubic_quadrant_of_an_ellipse() {
    let (across, down) = (120.0, 80.0);
    let share = 4.0 / 3.0 * (2.0_f64.sqrt() - 1.0);
    let data = format!(
        "M0 -{down} C{} -{down} {across} -{} {across} 0 L0 0 Z",
        across * share,
        down * share
    );
    let shape = plain(&Spec::Drawing(vec![(String::new(), data)]));
    // The area under a cubic is a polynomial of its control points, so it is known exactly.
    let area = across * down * (0.5 + 0.6 * share - 0.15 * share * share);
    close(shape.area(), area, 1e-6);
    close(shape.area(), PI * across * down / 4.0, across * down * 3e-4);
    close(shape.box_size().0, across, 1e-9);
}

#[test]
fn a_straight_cubic_is_as_long_as_its_line() {
    let spec = Spec::Path(vec![
        start(0, 0),
        cubic("waist", [(30, 0), (60, 0)], Some((90, 0))),
        line("side", Some((90, 90))),
        line("back", None),
    ]);
    let shape = built(&spec, Drawn::Stitching, &all(mm(6)));
    close(edge(&shape, "waist").length, 90.0, 1e-6);
    let same = built(
        &polygon(&[(0, 0), (90, 0), (90, 90)]),
        Drawn::Stitching,
        &all(mm(6)),
    );
    close(shape.area(), same.area(), 1e-6);
}

#[test]
fn sharp_tips_are_squared_off_at_four_allowances() {
    // A tip of 2 atan(1/10): its mitre would stand out by 10 allowances and a little.
    let shape = built(
        &polygon(&[(0, 0), (200, 20), (0, 40)]),
        Drawn::Stitching,
        &all(mm(5)),
    );
    let bounds = shape.cutting().bounds();
    close(bounds.x1, 200.0 + 4.0 * 5.0, 1e-9);
    // The blunt ends reach as far out as the slanting line is high there, on both sides alike.
    close(bounds.y0 + bounds.y1, 40.0, 1e-9);
}

#[test]
fn a_hollow_narrower_than_its_allowances_closes_up() {
    // A notch 4 wide and 6 deep in the top, one edge with it: 5 outwards fills it.
    let data = "M0 0 H98 V6 H102 V0 H200 V100 H0 Z";
    let spec = Spec::Drawing(vec![(String::new(), data.to_owned())]);
    let shape = built(&spec, Drawn::Stitching, &all(mm(5)));
    close(shape.area(), 210.0 * 110.0, 0.01);
    close(shape.cutting().length(), 640.0, 0.01);
}

#[test]
fn decimals_stay_exact() {
    let spec = Spec::Rectangle {
        width: decimal("12.7"),
        height: exact(1, 3),
        corners_out: Vec::new(),
    };
    assert_eq!(plain(&spec).exact_area(), Some(exact(127, 30)));
}

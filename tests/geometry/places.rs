//! Places along edges: notches, and which way is inwards.

use notchbook::geometry::{Along, Drawn, EdgePoint, Run, RunKind, Shape, Spec};

use super::{
    all, arc, built, close, corner, edge, exact, line, mm, plain, polygon, rectangle, start,
};

#[track_caller]
fn place(shape: &Shape, edge: &str, along: Along) -> EdgePoint {
    shape
        .point_at(edge, along)
        .unwrap_or_else(|| panic!("{along:?} is on {edge}"))
}

#[track_caller]
fn at(found: [f64; 2], wanted: [f64; 2]) {
    close(found[0], wanted[0], 1e-6);
    close(found[1], wanted[1], 1e-6);
}

#[test]
fn a_rectangle_counts_from_the_left_and_from_the_top() {
    let shape = built(&rectangle(300, 200), Drawn::Cutting, &all(mm(10)));
    let found = [
        ("top", [40.0, 0.0], [0.0, 1.0]),
        ("right", [300.0, 40.0], [-1.0, 0.0]),
        ("bottom", [40.0, 200.0], [0.0, -1.0]),
        ("left", [0.0, 40.0], [1.0, 0.0]),
    ];
    for (edge, wanted, inward) in found {
        let place = place(&shape, edge, Along::FromStart(mm(40)));
        at(place.at, wanted);
        at(place.inward, inward);
        at(place.cutting, wanted);
        at(
            place.stitching,
            [wanted[0] + 10.0 * inward[0], wanted[1] + 10.0 * inward[1]],
        );
        close(place.distance, 40.0, 1e-9);
    }
    at(
        place(&shape, "bottom", Along::FromEnd(mm(40))).at,
        [260.0, 200.0],
    );
    at(
        place(&shape, "left", Along::Fraction(exact(1, 4))).at,
        [0.0, 50.0],
    );
    at(place(&shape, "top", Along::Centre).at, [150.0, 0.0]);
}

#[test]
fn corners_taken_out_count_from_their_upper_end() {
    let spec = Spec::Rectangle {
        width: mm(400),
        height: mm(300),
        corners_out: vec![corner(true, 30, 20), corner(false, 50, 60)],
    };
    let shape = plain(&spec);
    let upper = [
        ("top_left_corner", [30.0, 5.0]),
        ("top_right_corner", [370.0, 5.0]),
        ("bottom_left_corner", [5.0, 240.0]),
        ("bottom_right_corner", [395.0, 240.0]),
    ];
    for (edge, wanted) in upper {
        at(place(&shape, edge, Along::FromStart(mm(5))).at, wanted);
    }
}

#[test]
fn a_path_counts_as_written() {
    // The same triangle, written both ways round.
    let clockwise = plain(&polygon(&[(0, 0), (100, 0), (100, 100)]));
    let against = plain(&polygon(&[(0, 0), (100, 100), (100, 0)]));
    at(
        place(&clockwise, "a", Along::FromStart(mm(10))).at,
        [10.0, 0.0],
    );
    at(
        place(&against, "c", Along::FromStart(mm(10))).at,
        [90.0, 0.0],
    );
    at(
        place(&against, "c", Along::FromStart(mm(10))).inward,
        [0.0, 1.0],
    );
    at(place(&against, "b", Along::FromEnd(mm(0))).at, [100.0, 0.0]);
    let outwards = built(
        &polygon(&[(0, 0), (100, 100), (100, 0)]),
        Drawn::Stitching,
        &all(mm(7)),
    );
    at(place(&outwards, "c", Along::Centre).cutting, [50.0, -7.0]);
}

#[test]
fn an_edge_may_have_several_runs_and_pass_the_start() {
    let spec = Spec::Path(vec![
        start(50, 0),
        line("top", Some((100, 0))),
        line("side", Some((100, 80))),
        line("hem", Some((0, 80))),
        line("back", Some((0, 0))),
        line("top", None),
    ]);
    let shape = plain(&spec);
    let names: Vec<&str> = shape
        .edges()
        .iter()
        .map(|edge| edge.name.as_str())
        .collect();
    assert_eq!(names, ["top", "side", "hem", "back"]);
    assert_eq!(super::edge(&shape, "top").exact, Some(mm(100)));
    at(
        place(&shape, "top", Along::FromStart(mm(10))).at,
        [10.0, 0.0],
    );
    at(
        place(&shape, "top", Along::FromStart(mm(60))).at,
        [60.0, 0.0],
    );
}

#[test]
fn halfway_along_an_arc() {
    let spec = Spec::Path(vec![
        start(-50, 0),
        arc("crown", Some((50, 0)), 50, false, false),
        line("base", None),
    ]);
    let shape = built(&spec, Drawn::Stitching, &all(mm(10)));
    let top = place(&shape, "crown", Along::Centre);
    close(top.at[0], 0.0, 1e-3);
    close(top.at[1], -50.0, 1e-3);
    close(top.inward[1], 1.0, 1e-6);
    close(top.cutting[1], -60.0, 1e-3);
    let third = place(&shape, "crown", Along::Fraction(exact(1, 3)));
    close(third.at[0], -25.0, 1e-3);
}

#[test]
fn nothing_lies_off_the_edge() {
    let shape = plain(&rectangle(300, 200));
    for along in [
        Along::FromStart(mm(301)),
        Along::FromEnd(mm(301)),
        Along::FromStart(mm(-1)),
        Along::Fraction(exact(11, 10)),
        Along::Fraction(exact(-1, 10)),
    ] {
        assert_eq!(shape.point_at("top", along), None, "{along:?}");
    }
    assert_eq!(shape.point_at("hem", Along::Centre), None);
    at(
        place(&shape, "top", Along::FromStart(mm(300))).at,
        [300.0, 0.0],
    );
}

/// A half with an armhole, which is curved more at its lower end, in mm.
fn half(wide: i128) -> Shape {
    let armhole = Run {
        name: "armhole".to_owned(),
        to: Some([mm(wide), mm(90)]),
        kind: RunKind::Cubic([[mm(95), mm(60)], [mm(105), mm(90)]]),
    };
    let spec = Spec::Path(vec![
        start(0, 0),
        line("top", Some((100, 0))),
        armhole,
        line("side", Some((wide, 140))),
        line("bottom", Some((0, 140))),
        line("centre", None),
    ]);
    built(&spec, Drawn::Cutting, &all(mm(10)))
}

#[test]
fn an_edge_that_is_curved_more_at_one_end_is_not_symmetric() {
    for wide in [130, 140, 150] {
        let shape = half(wide);
        assert!(!edge(&shape, "armhole").is_symmetric(), "{wide}");
        assert!(edge(&shape, "centre").is_symmetric(), "{wide}");
        assert!(!shape.is_symmetric(), "{wide}");
    }
}

#[test]
fn pieces_that_are_their_own_mirror_image() {
    let kite = polygon(&[(0, 0), (60, 20), (150, 150), (20, 60)]);
    let parallelogram = polygon(&[(0, 0), (100, 0), (140, 60), (40, 60)]);
    for spec in [rectangle(100, 40), rectangle(80, 80), kite] {
        assert!(plain(&spec).is_symmetric(), "{spec:?}");
    }
    // Turned by half a turn it is the same; turned over it is not.
    assert!(!plain(&parallelogram).is_symmetric());
    let bent = Spec::Path(vec![
        start(0, 0),
        arc("bow", Some((100, 0)), 70, false, false),
        line("side", Some((100, 50))),
        line("end", Some((0, 80))),
        line("back", None),
    ]);
    assert!(edge(&plain(&bent), "bow").is_symmetric());
    assert!(!plain(&bent).is_symmetric());
}

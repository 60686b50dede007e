//! Every fault, at its edge, with words for it.

use notchbook::geometry::{Allowances, Drawn, RunKind, ShapeFault, Spec};

use super::{
    all, arc, built, close, corner, exact, faults_of, line, mm, polygon, rectangle, start,
};

/// The one fault of an outline without allowances. Its words name the edge, say something and do
/// not end like a sentence.
#[track_caller]
fn fault(spec: &Spec) -> ShapeFault {
    only(faults_of(spec, Drawn::Cutting, &all(mm(0))))
}

#[track_caller]
fn only(faults: Vec<ShapeFault>) -> ShapeFault {
    let [fault] = faults.as_slice() else {
        panic!("one fault was wanted: {faults:?}");
    };
    for words in [fault.message(), fault.hint()] {
        assert!(words.len() > 8 && !words.ends_with('.'), "{words}");
    }
    if let Some(edge) = fault.edge() {
        assert!(
            fault.message().contains(edge),
            "{} does not name {edge}",
            fault.message()
        );
    }
    fault.clone()
}

fn path(runs: Vec<notchbook::geometry::Run>) -> Spec {
    Spec::Path(runs)
}

fn drawing(entries: &[(&str, &str)]) -> Spec {
    let entry = |(name, data): &(&str, &str)| ((*name).to_owned(), (*data).to_owned());
    Spec::Drawing(entries.iter().map(entry).collect())
}

#[test]
fn an_open_outline() {
    let spec = path(vec![
        start(0, 0),
        line("top", Some((50, 0))),
        line("side", Some((50, 40))),
    ]);
    let ShapeFault::NotClosed { gap } = fault(&spec) else {
        panic!("an open outline");
    };
    close(gap, 50.0_f64.hypot(40.0), 1e-9);
    let open = drawing(&[("", "M0 0 L50 0 L50 40")]);
    assert!(matches!(fault(&open), ShapeFault::NotClosed { .. }));
    assert!(matches!(fault(&drawing(&[])), ShapeFault::NotClosed { .. }));
}

#[test]
fn a_path_without_its_one_start() {
    let runs = [
        vec![],
        vec![start(0, 0)],
        vec![line("top", Some((50, 0))), line("back", None)],
        vec![
            start(0, 0),
            line("top", Some((50, 0))),
            start(3, 3),
            line("back", None),
        ],
        vec![
            start(0, 0),
            line("top", None),
            line("back", Some((50, 0))),
            line("more", None),
        ],
    ];
    for runs in runs {
        assert_eq!(fault(&path(runs)), ShapeFault::StartMisplaced);
    }
}

#[test]
fn edges_that_cross() {
    let spec = polygon(&[(0, 0), (100, 0), (0, 100), (100, 100)]);
    let ShapeFault::SelfCrossing { first, second, at } = fault(&spec) else {
        panic!("a crossing");
    };
    assert_eq!((first.as_str(), second.as_str()), ("b", "d"));
    close(at[0], 50.0, 1e-9);
    close(at[1], 50.0, 1e-9);
}

#[test]
fn an_edge_that_doubles_back() {
    let spec = polygon(&[(0, 0), (100, 0), (100, 80), (100, 40), (0, 40)]);
    assert!(matches!(fault(&spec), ShapeFault::SelfCrossing { .. }));
}

#[test]
fn a_curve_that_loops() {
    let spec = drawing(&[("", "M0 0 C200 100 -100 100 100 0 L100 -50 L0 -50 Z")]);
    let ShapeFault::SelfCrossing { first, second, .. } = fault(&spec) else {
        panic!("a loop");
    };
    assert_eq!(first, second);
}

#[test]
fn allowances_that_leave_nothing() {
    let narrow = rectangle(300, 18);
    let faults = faults_of(&narrow, Drawn::Cutting, &all(mm(10)));
    assert!(matches!(
        only(faults),
        ShapeFault::AllowanceEatsPiece { .. }
    ));
    // Exactly nothing is left of it.
    let even = faults_of(&narrow, Drawn::Cutting, &all(mm(9)));
    assert!(matches!(only(even), ShapeFault::AllowanceEatsPiece { .. }));
    let thin = built(&narrow, Drawn::Cutting, &all(exact(89, 10)));
    close(thin.stitching().area(), 282.2 * 0.2, 1e-6);
}

#[test]
fn an_edge_that_vanishes_is_named() {
    // The short edge between two slanting ones is gone 10 mm further in.
    let spec = polygon(&[(0, 0), (96, 96), (104, 96), (200, 0)]);
    let faults = faults_of(&spec, Drawn::Cutting, &all(mm(15)));
    assert_eq!(
        only(faults),
        ShapeFault::AllowanceEatsPiece {
            edge: "b".to_owned()
        }
    );
    // Outwards it is the floor of a notch that vanishes, with both of its walls.
    let notch = polygon(&[
        (0, 0),
        (98, 0),
        (98, 6),
        (102, 6),
        (102, 0),
        (200, 0),
        (200, 100),
        (0, 100),
    ]);
    let gone: Vec<_> = faults_of(&notch, Drawn::Stitching, &all(mm(5)));
    let edges: Vec<_> = gone.iter().filter_map(ShapeFault::edge).collect();
    assert_eq!(edges, ["b", "c", "d"]);
}

#[test]
fn allowances_that_meet() {
    // An hourglass 12 wide at its waist falls in two.
    let hourglass = polygon(&[
        (0, 0),
        (200, 0),
        (106, 100),
        (200, 200),
        (0, 200),
        (94, 100),
    ]);
    let faults = faults_of(&hourglass, Drawn::Cutting, &all(mm(8)));
    assert!(matches!(only(faults), ShapeFault::AllowancesMeet { .. }));
    // A ring with a gap of 10 closes up round its hole.
    let ring = polygon(&[
        (0, 0),
        (300, 0),
        (300, 145),
        (250, 145),
        (250, 50),
        (50, 50),
        (50, 250),
        (250, 250),
        (250, 155),
        (300, 155),
        (300, 300),
        (0, 300),
    ]);
    let ShapeFault::AllowancesMeet { first, second } =
        only(faults_of(&ring, Drawn::Stitching, &all(mm(8))))
    else {
        panic!("allowances that meet");
    };
    assert_ne!(first, second);
    built(&ring, Drawn::Stitching, &all(mm(4)));
}

#[test]
fn allowances_below_0_and_unknown_edges() {
    let spec = rectangle(300, 200);
    let faults = faults_of(&spec, Drawn::Cutting, &all(mm(-1)));
    assert_eq!(only(faults), ShapeFault::AllowanceBelowZero { edge: None });
    let named = |name: &str, width| Allowances {
        all: mm(10),
        by_edge: vec![(name.to_owned(), mm(width))],
        fold: None,
    };
    let faults = faults_of(&spec, Drawn::Cutting, &named("top", -3));
    assert_eq!(only(faults).edge(), Some("top"));
    let ShapeFault::NoSuchEdge { name, known } =
        only(faults_of(&spec, Drawn::Cutting, &named("hem", 3)))
    else {
        panic!("an unknown edge");
    };
    assert_eq!(name, "hem");
    assert_eq!(known, ["top", "right", "bottom", "left"]);
    let fold = Allowances {
        fold: Some("middle".to_owned()),
        ..all(mm(10))
    };
    assert_eq!(
        only(faults_of(&spec, Drawn::Cutting, &fold)).edge(),
        Some("middle")
    );
}

#[test]
fn one_name_for_two_stretches() {
    let spec = path(vec![
        start(0, 0),
        line("top", Some((100, 0))),
        line("side", Some((100, 50))),
        line("top", Some((0, 50))),
        line("back", None),
    ]);
    assert_eq!(
        fault(&spec),
        ShapeFault::NameTwice {
            edge: "top".to_owned()
        }
    );
}

#[test]
fn edges_without_length() {
    let still = path(vec![
        start(0, 0),
        line("top", Some((50, 0))),
        line("dart", Some((50, 0))),
        line("side", Some((50, 40))),
        line("back", None),
    ]);
    assert_eq!(fault(&still), ShapeFault::Degenerate("dart".to_owned()));
    let flat = fault(&rectangle(0, 40));
    assert_eq!(flat, ShapeFault::Degenerate("top".to_owned()));
    assert_eq!(
        fault(&rectangle(40, -1)),
        ShapeFault::Degenerate("left".to_owned())
    );
    assert_eq!(
        fault(&drawing(&[("hem", "M3 3")])),
        ShapeFault::Degenerate("hem".to_owned())
    );
}

#[test]
fn corners_larger_than_the_rectangle() {
    let spec = |width, height| Spec::Rectangle {
        width: mm(100),
        height: mm(80),
        corners_out: vec![corner(false, width, height)],
    };
    assert_eq!(
        fault(&spec(50, 20)),
        ShapeFault::CornerTooLarge {
            edge: "bottom".to_owned()
        }
    );
    assert_eq!(
        fault(&spec(20, 80)),
        ShapeFault::CornerTooLarge {
            edge: "left".to_owned()
        }
    );
    assert_eq!(
        fault(&spec(0, 20)),
        ShapeFault::Degenerate("bottom_left_corner".to_owned())
    );
    built(&spec(49, 79), Drawn::Cutting, &all(mm(0)));
}

#[test]
fn an_arc_that_cannot_reach() {
    let spec = path(vec![
        start(0, 0),
        arc("hem", Some((100, 0)), 49, false, false),
        line("back", None),
    ]);
    let found = fault(&spec);
    let ShapeFault::ArcTooShort { edge, needed } = &found else {
        panic!("a short arc");
    };
    assert_eq!(edge, "hem");
    close(*needed, 50.0, 1e-9);
    assert!(found.hint().contains("50 mm"), "{}", found.hint());
    let none = path(vec![
        start(0, 0),
        arc("hem", Some((100, 0)), 0, false, false),
        line("back", None),
    ]);
    assert_eq!(fault(&none), ShapeFault::Degenerate("hem".to_owned()));
}

#[test]
fn path_data_that_cannot_be_read() {
    for data in [
        "M0 0 L10 oops",
        "M0 0 L9 9 M5 5 L8 8",
        "M0 0 L9 0 L9 9 Z L5 5",
        "10 10",
        "",
    ] {
        let found = faults_of(&drawing(&[("hem", data)]), Drawn::Cutting, &all(mm(0)));
        assert_eq!(found[0].edge(), Some("hem"), "{data}: {found:?}");
    }
    let ShapeFault::UnreadablePath { index, .. } =
        fault(&drawing(&[("top", "M0 0 L50 0"), ("hem", "M50 0 Q1")]))
    else {
        panic!("path data that cannot be read");
    };
    assert_eq!(index, 1);
}

#[test]
fn drawn_pieces_that_do_not_join() {
    let pieces = |x: &str| {
        let side = format!("M{x} 0 V40");
        drawing(&[
            ("top", "M0 0 H50"),
            ("side", &side),
            ("back", "M50 40 L0 0"),
        ])
    };
    built(&pieces("50.04"), Drawn::Cutting, &all(mm(0)));
    let ShapeFault::NotJoined { index, edge, gap } =
        faults_of(&pieces("50.2"), Drawn::Cutting, &all(mm(0)))[0].clone()
    else {
        panic!("pieces that do not join");
    };
    assert_eq!((index, edge.as_str()), (1, "side"));
    close(gap, 0.2, 1e-9);
    let turned = drawing(&[
        ("top", "M0 0 H50"),
        ("side", "M50 40 V0"),
        ("back", "M50 40 L0 0"),
    ]);
    assert!(matches!(
        faults_of(&turned, Drawn::Cutting, &all(mm(0)))[0],
        ShapeFault::NotJoined { index: 1, .. }
    ));
}

#[test]
fn figures_beyond_fifty_metres() {
    assert_eq!(
        fault(&rectangle(2_000_000, 10)),
        ShapeFault::TooFar {
            edge: "top".to_owned()
        }
    );
    let far = path(vec![
        start(0, 0),
        line("top", Some((50, 0))),
        line("side", Some((50, i128::MAX))),
        line("back", None),
    ]);
    assert!(
        matches!(&faults_of(&far, Drawn::Cutting, &all(mm(0)))[0], ShapeFault::TooFar { edge } if edge == "side")
    );
    let mut wild = line("side", Some((50, 40)));
    wild.kind = RunKind::Cubic([[mm(i128::MIN + 1), mm(0)], [mm(0), mm(0)]]);
    let spec = path(vec![
        start(0, 0),
        line("top", Some((50, 0))),
        wild,
        line("back", None),
    ]);
    assert_eq!(fault(&spec).edge(), Some("side"));
    let vast = Allowances {
        by_edge: vec![("top".to_owned(), mm(i128::MAX))],
        ..all(mm(1))
    };
    assert_eq!(
        only(faults_of(&rectangle(30, 20), Drawn::Stitching, &vast)).edge(),
        Some("top")
    );
}

//! Pieces cut on the fold.

use notchbook::geometry::{Allowances, Along, Drawn, Shape, ShapeFault, Spec};
use proptest::prelude::{ProptestConfig, prop_assert, prop_assert_eq, proptest};

use super::{all, arc, built, close, edge, faults_of, line, mm, plain, polygon, rectangle, start};

fn on_fold(fold: &str, all: i128) -> Allowances {
    Allowances {
        all: mm(all),
        by_edge: Vec::new(),
        fold: Some(fold.to_owned()),
    }
}

#[test]
fn the_fold_has_no_allowance() {
    let shape = built(&rectangle(100, 200), Drawn::Stitching, &on_fold("left", 10));
    assert_eq!(shape.exact_box(), Some((mm(110), mm(220))));
    assert_eq!(shape.exact_area(), Some(mm(2 * 110 * 220)));
    let (cutting, stitching) = shape.unfolded();
    assert_eq!(cutting.box_size(), (220.0, 220.0));
    assert_eq!(stitching.box_size(), (200.0, 200.0));
    close(cutting.area(), shape.area(), 1e-6);
    close(stitching.area(), 40_000.0, 1e-6);
    // The half remains what the edges are measured on.
    assert_eq!(edge(&shape, "top").exact_seam, Some(mm(100)));
    assert_eq!(edge(&shape, "left").exact_cut, Some(mm(220)));
}

#[test]
fn a_slanting_fold_mirrors_over_its_own_line() {
    let shape = built(
        &polygon(&[(0, 0), (100, 0), (100, 100)]),
        Drawn::Cutting,
        &on_fold("c", 0),
    );
    let (cutting, _) = shape.unfolded();
    // Half of a square over its diagonal.
    close(cutting.area(), 10_000.0, 1e-6);
    let (width, height) = cutting.box_size();
    close(width, 100.0, 1e-9);
    close(height, 100.0, 1e-9);
}

#[test]
fn unfolding_a_half_circle_gives_the_circle() {
    let spec = Spec::Path(vec![
        start(0, -80),
        arc("rim", Some((0, 80)), 80, false, false),
        line("middle", None),
    ]);
    let shape = built(&spec, Drawn::Stitching, &on_fold("middle", 12));
    let (cutting, stitching) = shape.unfolded();
    close(stitching.area(), std::f64::consts::PI * 6400.0, 0.05);
    close(cutting.area(), shape.area(), 1e-6);
    close(cutting.length(), 2.0 * edge(&shape, "rim").cut_length, 1e-6);
}

#[test]
fn without_a_fold_both_are_one() {
    let shape: Shape = plain(&rectangle(100, 200));
    assert_eq!(
        shape.unfolded(),
        (shape.cutting().clone(), shape.stitching().clone())
    );
}

fn one(faults: Vec<ShapeFault>) -> ShapeFault {
    assert_eq!(faults.len(), 1, "{faults:?}");
    faults[0].clone()
}

#[test]
fn folds_that_bend_or_are_crossed() {
    let fold = |name: &str| Allowances {
        fold: Some(name.to_owned()),
        ..all(mm(10))
    };
    let bent = Spec::Path(vec![
        start(0, 0),
        arc("middle", Some((0, 100)), 200, false, false),
        line("hem", Some((-80, 100))),
        line("back", None),
    ]);
    let ShapeFault::FoldNotStraight { edge, by } =
        one(faults_of(&bent, Drawn::Cutting, &fold("middle")))
    else {
        panic!("a bent fold");
    };
    assert_eq!(edge, "middle");
    close(by, 200.0 - (200.0_f64 * 200.0 - 50.0 * 50.0).sqrt(), 1e-3);
    let over = polygon(&[(0, 0), (100, 0), (100, 200), (-20, 200), (0, 100)]);
    let ShapeFault::FoldCrossed { edge, by } = one(faults_of(&over, Drawn::Cutting, &fold("e")))
    else {
        panic!("a fold that is crossed");
    };
    assert_eq!(edge, "e");
    assert!(by > 5.0, "{by}");
}

/// The edges of a shape with their lengths on both lines, by name.
fn lengths(shape: &Shape) -> Vec<(String, [f64; 2])> {
    let edges = shape.edges().iter().filter(|edge| !edge.on_fold);
    let mut all: Vec<(String, [f64; 2])> = edges
        .map(|edge| (edge.name.clone(), [edge.cut_length, edge.seam_length]))
        .collect();
    all.sort_by(|one, other| one.0.cmp(&other.0));
    all
}

/// The runs of a path: the name of each, and where it ends.
type Runs = Vec<(&'static str, [i128; 2])>;

/// A bodice from the middle to its right, in mm, and the same drawn whole.
fn bodice(neck: i128, shoulder: (i128, i128), side: i128, length: i128) -> (Runs, Runs) {
    let (across, drop) = shoulder;
    let half = vec![
        ("neck", [neck, 0]),
        ("shoulder", [neck + across, drop]),
        ("side", [side, length]),
        ("hem", [0, length]),
        ("centre", [0, 0]),
    ];
    let whole = vec![
        ("neck", [neck, 0]),
        ("right_shoulder", [neck + across, drop]),
        ("right_side", [side, length]),
        ("hem", [-side, length]),
        ("left_side", [-neck - across, drop]),
        ("left_shoulder", [-neck, 0]),
    ];
    (half, whole)
}

fn drawn(from: [i128; 2], runs: &[(&str, [i128; 2])]) -> Spec {
    let lines = runs
        .iter()
        .map(|(name, to)| line(name, Some((to[0], to[1]))));
    Spec::Path(
        std::iter::once(start(from[0], from[1]))
            .chain(lines)
            .collect(),
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    /// A piece cut on the fold has, opened, the edges and lengths of the same piece drawn whole, on both
    /// lines, whichever of them is drawn.
    #[test]
    fn a_folded_piece_behaves_as_its_opened_twin(
        neck in 40_i128..120,
        across in 60_i128..160,
        drop in 20_i128..60,
        side in 150_i128..300,
        length in 300_i128..600,
        allowance in 5_i128..20,
        stitching in proptest::bool::ANY,
    ) {
        let drawn_line = if stitching { Drawn::Stitching } else { Drawn::Cutting };
        let (half, whole) = bodice(neck, (across, drop), side, length);
        let folded = built(&drawn([0, 0], &half), drawn_line, &on_fold("centre", allowance));
        let twin = built(&drawn([-neck, 0], &whole), drawn_line, &all(mm(allowance)));
        let (ours, theirs) = (lengths(folded.whole()), lengths(&twin));
        prop_assert_eq!(ours.len(), theirs.len());
        for (one, other) in ours.iter().zip(&theirs) {
            prop_assert_eq!(&one.0, &other.0);
            for line in [0, 1] {
                prop_assert!((one.1[line] - other.1[line]).abs() < 1e-6, "{one:?} {other:?}");
            }
        }
        prop_assert!((folded.whole().area() - twin.area()).abs() < 1e-3);
        let neckline = folded.whole().edge("neck").and_then(|edge| edge.exact_cut);
        if !stitching {
            prop_assert_eq!(neckline, Some(mm(2 * neck)));
        }
    }

    /// A notch stands in both halves, as far from the fold in the one as in the other.
    #[test]
    fn notches_stand_in_both_halves(neck in 40_i128..120, at in 1_i128..39) {
        let (half, _) = bodice(neck, (80, 30), 200, 400);
        let folded = built(&drawn([0, 0], &half), Drawn::Cutting, &on_fold("centre", 10));
        let places = |edge: &str| -> Vec<(String, f64)> {
            let points = folded.points_of_whole(edge, Along::FromStart(mm(at)));
            points.into_iter().map(|(edge, point)| (edge.name.clone(), point.at[0])).collect()
        };
        let mut neckline = places("neck");
        neckline.sort_by(|one, other| one.1.total_cmp(&other.1));
        prop_assert_eq!(neckline.len(), 2);
        prop_assert!((neckline[0].1 + at as f64).abs() < 1e-6 && (neckline[1].1 - at as f64).abs() < 1e-6);
        let mut shoulder = places("shoulder");
        shoulder.sort_by(|one, other| one.0.cmp(&other.0));
        prop_assert_eq!(&shoulder[0].0, "left_shoulder");
        prop_assert_eq!(&shoulder[1].0, "right_shoulder");
        prop_assert!((shoulder[0].1 + shoulder[1].1).abs() < 1e-6);
    }
}

#[test]
fn a_notch_on_the_fold_is_one() {
    let (half, _) = bodice(60, (80, 30), 200, 400);
    let folded = built(
        &drawn([0, 0], &half),
        Drawn::Cutting,
        &on_fold("centre", 10),
    );
    assert_eq!(
        folded
            .points_of_whole("neck", Along::FromStart(mm(0)))
            .len(),
        1
    );
    assert_eq!(
        folded.points_of_whole("hem", Along::FromEnd(mm(0))).len(),
        1
    );
}

#[test]
fn a_rectangle_opened_has_its_four_sides() {
    let shape = built(&rectangle(100, 50), Drawn::Cutting, &on_fold("left", 10));
    let names: Vec<&str> = shape
        .whole()
        .edges()
        .iter()
        .map(|edge| edge.name.as_str())
        .collect();
    assert_eq!(names, ["top", "right", "bottom", "left"]);
    assert_eq!(edge(shape.whole(), "left").drawn, "right");
    assert_eq!(edge(shape.whole(), "top").exact, Some(mm(200)));
}

#[test]
fn the_centre_of_an_edge_that_meets_the_fold_lies_at_the_fold() {
    for (fold, corner) in [("left", 0.0), ("right", 100.0)] {
        let shape = built(&rectangle(100, 200), Drawn::Cutting, &on_fold(fold, 10));
        let place = shape
            .place_at("top", Along::Centre)
            .expect("a place on the edge");
        assert_eq!(place.at, [corner, 0.0]);
        let whole = shape.points_of_whole("top", Along::Centre);
        assert_eq!(whole.len(), 1, "one notch in the middle of the whole");
        close(whole[0].1.distance, 100.0, 1e-9);
        close(whole[0].0.length, 200.0, 1e-9);
        // An edge off the fold has its own centre, in either half.
        let off = if fold == "left" { "right" } else { "left" };
        close(
            shape
                .place_at(off, Along::Centre)
                .expect("a place")
                .distance,
            100.0,
            1e-9,
        );
        assert_eq!(shape.points_of_whole(off, Along::Centre).len(), 2);
        // Shares are counted on the half that is drawn.
        let half = shape.points_of_whole(
            "top",
            Along::Fraction(notchbook::measure::Exact::of::<1, 2>()),
        );
        assert_eq!(half.len(), 2);
    }
    // The rim of a circle goes from the fold to the fold: it has no end there that would be its middle.
    let spec = Spec::Path(vec![
        start(0, -80),
        arc("rim", Some((0, 80)), 80, false, false),
        line("middle", None),
    ]);
    let circle = built(&spec, Drawn::Stitching, &on_fold("middle", 12));
    assert!(!circle.meets_fold_once("rim"));
}

//! Pieces cut on the fold.

use notchbook::geometry::{Allowances, Drawn, Shape, ShapeFault, Spec};

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

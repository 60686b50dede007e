//! Darts, pleats and tucks: what is left of an edge once they are closed, and what their mouths are cut like.

use kurbo::{Affine, BezPath, ParamCurve, ParamCurveNearest, PathSeg, Point, Shape as _};
use notchbook::geometry::{
    Along, Dart, DartSpec, Drawn, Fold, Laid, PleatSpec, Shape, Shaped, ShapingFault, Tip,
};
use notchbook::measure::{Exact, to_f64};
use proptest::prelude::{
    Just, ProptestConfig, Strategy, prop_assert, prop_assert_eq, prop_oneof, proptest,
};

use super::{all, built, close, cubic, edge, exact, line, mm, rectangle, start};

fn dart(name: &str, at: Along, width: Exact, tip: Tip, laid: Option<Laid>) -> DartSpec {
    DartSpec::Edge {
        edge: name.to_owned(),
        at,
        width,
        tip,
        laid,
    }
}

fn only(made: &Shaped) -> &Dart {
    assert!(made.darts.is_empty(), "{:?}", made.darts);
    made.shape.darts()[0].as_ref().expect("a dart")
}

/// A skirt panel, 200 to 400 mm wide, whose waist bends.
fn panel(width: i128, drop: i128, bend: i128) -> notchbook::geometry::Spec {
    notchbook::geometry::Spec::Path(vec![
        start(0, drop),
        cubic(
            "waist",
            [(width / 3, drop + bend), (2 * width / 3, bend)],
            Some((width, 0)),
        ),
        line("side", Some((width + 20, 500))),
        line("hem", Some((0, 500))),
        line("centre", None),
    ])
}

/// The stretches of an edge on one line, with those across the mouth apart: before it, across, behind it.
fn parts(path: &BezPath, dart: &Dart, ends: [Point; 2]) -> [Vec<PathSeg>; 3] {
    let mut found: [Vec<PathSeg>; 3] = Default::default();
    let mut at = 0;
    for seg in path.segments() {
        for end in ends {
            if (seg.start() - end).hypot() < 1e-6 && at < 2 {
                at += 1;
            }
        }
        found[at].push(seg);
    }
    assert_eq!(
        at, 2,
        "{dart:?} does not begin where the line has its mouth"
    );
    found
}

fn length(segs: &[PathSeg]) -> f64 {
    let path: BezPath = BezPath::from_path_segments(segs.iter().copied());
    path.perimeter(1e-7)
}

fn distance(point: Point, segs: &[PathSeg]) -> f64 {
    segs.iter()
        .map(|seg| seg.nearest(point, 1e-9).distance_sq.sqrt())
        .fold(f64::INFINITY, f64::min)
}

/// Sews a dart as hands do: one leg on the other, the cloth between folded in half and laid to its side.
fn closes(shape: &Shape, dart: &Dart, name: &str) -> Result<(), String> {
    let point = dart.points[0];
    let edge = edge(shape, name);
    let legs = dart.mouth.map(|end| (end - point).hypot());
    if (legs[0] - legs[1]).abs() > 1e-6 {
        return Err(format!("legs of {legs:?}"));
    }
    let [before, _, behind] = parts(&edge.seam, dart, in_order(&edge.seam, dart.mouth));
    let sewn = length(&before) + length(&behind);
    if (sewn - edge.seam_length).abs() > 1e-3 {
        return Err(format!("{sewn} is sewn, not {}", edge.seam_length));
    }
    let cuts = in_order(&edge.cut, [dart.legs[0].p0, dart.legs[1].p0]);
    let [before, mouth, behind] = parts(&edge.cut, dart, cuts);
    // The side on which it lies.
    let first = dart.towards.dot(cuts[1] - cuts[0]) < 0.0;
    let (leg, side) = if first {
        (cuts[0], before)
    } else {
        (cuts[1], behind)
    };
    let over_leg = Affine::reflect(point, leg - point);
    let over_middle = Affine::reflect(point, dart.fold.p0 - point);
    let middle = (dart.fold.p0 - point).normalize();
    for seg in &mouth {
        for tenth in 0..=10 {
            let on = seg.eval(f64::from(tenth) / 10.0);
            let aside = middle.cross(on - point) * middle.cross(leg - point) < 0.0;
            let folded = if aside { over_middle * on } else { on };
            let lies = over_leg * folded;
            // A step along the other leg joins the two where they differ.
            let ray = (cuts[0] - point).cross(on - point).abs() < 1e-6
                || (cuts[1] - point).cross(on - point).abs() < 1e-6;
            if distance(lies, &side) > 0.03 && !ray {
                return Err(format!(
                    "{on:?} lies {} from the edge when folded",
                    distance(lies, &side)
                ));
            }
        }
    }
    Ok(())
}

/// The ends in the order in which the edge is walked.
fn in_order(path: &BezPath, ends: [Point; 2]) -> [Point; 2] {
    let first = path
        .segments()
        .find(|seg| ends.iter().any(|end| (seg.start() - *end).hypot() < 1e-6));
    let swap = first.is_some_and(|seg| (seg.start() - ends[1]).hypot() < 1e-6);
    if swap { [ends[1], ends[0]] } else { ends }
}

fn drawn() -> impl Strategy<Value = Drawn> {
    prop_oneof![Just(Drawn::Cutting), Just(Drawn::Stitching)]
}

fn laid() -> impl Strategy<Value = Option<Laid>> {
    prop_oneof![
        Just(None),
        Just(Some(Laid::Centre)),
        Just(Some(Laid::Side)),
        Just(Some(Laid::Left)),
        Just(Some(Laid::Right)),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 192, ..ProptestConfig::default() })]

    #[test]
    fn a_straight_edge_with_its_dart_closed_is_as_long_as_one_without(
        width in 240_i128..400,
        share in 35_i128..65,
        takes in 8_i128..45,
        deep in 60_i128..140,
        (drawn, laid) in (drawn(), laid()),
        allowance in 0_i128..16,
    ) {
        let plain = built(&rectangle(width, 500), drawn, &all(mm(allowance)));
        let whole = edge(&plain, "top").exact_seam.expect("an exact seam");
        let length = edge(&plain, "top").exact.expect("an exact length");
        let spec = dart("top", Along::Fraction(exact(share, 100)), mm(takes), Tip::Straight(mm(deep)), laid);
        let made = plain.shaped(&[spec], &[]);
        let dart = only(&made);
        let top = edge(&made.shape, "top");
        prop_assert_eq!(top.exact_seam, whole.checked_sub(mm(takes)));
        prop_assert_eq!(top.exact_closed, length.checked_sub(mm(takes)));
        prop_assert_eq!(top.exact, Some(length));
        prop_assert!((dart.mouth[0].distance(dart.mouth[1]) - takes as f64).abs() < 1e-9);
        closes(&made.shape, dart, "top").map_err(proptest::test_runner::TestCaseError::fail)?;
    }

    #[test]
    fn a_dart_in_a_bent_edge_closes_and_its_mouth_lies_on_the_edge(
        (width, drop, bend) in (260_i128..400, -30_i128..30, -20_i128..20),
        share in 40_i128..60,
        takes in 8_i128..40,
        (aside, deep) in (-30_i128..30, 70_i128..140),
        (drawn, laid) in (drawn(), laid()),
        allowance in 0_i128..16,
    ) {
        let plain = built(&panel(width, drop, bend), drawn, &all(mm(allowance)));
        let middle = plain.point_at("waist", Along::Fraction(exact(share, 100))).expect("on the edge");
        let tip = [middle.stitching[0] + aside as f64, middle.stitching[1] + deep as f64];
        let tip = tip.map(|at| exact((at * 100.0).round() as i128, 100));
        let before = edge(&plain, "waist").seam_length;
        let spec = dart("waist", Along::Fraction(exact(share, 100)), mm(takes), Tip::Point(tip), laid);
        let made = plain.shaped(&[spec], &[]);
        let dart = only(&made);
        closes(&made.shape, dart, "waist").map_err(proptest::test_runner::TestCaseError::fail)?;
        // Truing a leg changes the rest of the edge by less than it lengthens the leg.
        let after = edge(&made.shape, "waist").seam_length;
        prop_assert!((before - takes as f64 - after).abs() < takes as f64 * 0.5, "{} {}", before, after);
        // The mouth neither tears the piece nor turns it round.
        prop_assert!(made.shape.cutting().area() > 0.0);
    }

    #[test]
    fn pleats_take_twice_their_depth_each(
        width in 300_i128..500,
        depth in 3_i128..12,
        count in 1_u32..5,
        fold in prop_oneof![Just(Fold::Knife), Just(Fold::Tuck), Just(Fold::Box), Just(Fold::Inverted)],
        drawn in drawn(),
    ) {
        let plain = built(&rectangle(width, 500), drawn, &all(mm(10)));
        let bare = edge(&plain, "top").clone();
        let spec = PleatSpec {
            edge: "top".to_owned(),
            at: Along::Centre,
            depth: mm(depth),
            fold,
            count,
            apart: None,
            length: Some(mm(100)),
            laid: None,
        };
        let made = plain.shaped(&[], &[spec]);
        let folds = if matches!(fold, Fold::Box | Fold::Inverted) { 2 } else { 1 };
        if i128::from(count) * depth * match fold { Fold::Box => 6, Fold::Inverted => 4, _ => 2 } > width {
            prop_assert_eq!(&made.pleats[0].1, &ShapingFault::OffEdge { edge: "top".to_owned() });
            return Ok(());
        }
        prop_assert!(made.pleats.is_empty(), "{:?}", made.pleats);
        let takes = mm(2 * depth * i128::from(count) * folds);
        let top = edge(&made.shape, "top");
        for (with, without) in [(top.exact_seam, bare.exact_seam), (top.exact_cut, bare.exact_cut), (top.exact_closed, bare.exact)] {
            prop_assert_eq!(with, without.and_then(|length| length.checked_sub(takes)));
        }
        let pleat = made.shape.pleats()[0].as_ref().expect("a pleat");
        prop_assert_eq!(pleat.folds.len() as i128, i128::from(count) * folds);
        for [from, to] in &pleat.folds {
            prop_assert!((from.p0.distance(to.p0) - 2.0 * depth as f64).abs() < 1e-6);
            prop_assert!((from.p1.distance(to.p1) - 2.0 * depth as f64).abs() < 1e-6);
        }
    }
}

#[test]
fn two_darts_and_a_pleat_share_an_edge_and_none_lies_over_another() {
    let shape = built(&rectangle(400, 500), Drawn::Cutting, &all(mm(10)));
    let one = |at| {
        dart(
            "top",
            Along::FromStart(mm(at)),
            mm(20),
            Tip::Straight(mm(90)),
            None,
        )
    };
    let pleat = |at| PleatSpec {
        edge: "top".to_owned(),
        at: Along::FromStart(mm(at)),
        depth: mm(15),
        fold: Fold::Knife,
        count: 1,
        apart: None,
        length: None,
        laid: None,
    };
    let made = shape.clone().shaped(&[one(100), one(300)], &[pleat(200)]);
    assert!(made.darts.is_empty() && made.pleats.is_empty());
    assert_eq!(edge(&made.shape, "top").exact_closed, Some(mm(400 - 70)));
    assert_eq!(edge(&made.shape, "top").exact_seam, Some(mm(380 - 70)));
    close(edge(&made.shape, "top").seam_length, 310.0, 1e-9);
    let crowded = shape.shaped(&[one(100), one(115)], &[pleat(310)]);
    assert_eq!(
        crowded.darts,
        [(
            1,
            ShapingFault::OverAnother {
                edge: "top".to_owned()
            }
        )]
    );
    // The one that has no place takes nothing.
    assert_eq!(edge(&crowded.shape, "top").exact_closed, Some(mm(350)));
}

/// The mouth of a dart straight in from a straight edge, by plane geometry: with a width w and a length l the
/// legs stand off the middle by the angle a = atan(w / 2l). The edge lies h from the point, straight across the
/// middle; mirrored over a leg it lies as far, turned by 2a, and meets the middle at h / cos 2a.
#[test]
fn the_mouth_of_a_straight_dart_has_the_height_of_its_closed_form() {
    let shape = built(&rectangle(400, 500), Drawn::Stitching, &all(mm(10)));
    let spec = dart("top", Along::Centre, mm(30), Tip::Straight(mm(100)), None);
    let made = shape.shaped(&[spec], &[]);
    let dart = only(&made);
    let angle = 15.0_f64.atan2(100.0);
    let across = 110.0;
    close(dart.points[0].x, 200.0, 1e-9);
    close(dart.points[0].y, 100.0, 1e-9);
    for (leg, side) in dart.legs.iter().zip([-1.0, 1.0]) {
        close(leg.p0.x, 200.0 + side * across * angle.tan(), 1e-6);
        close(leg.p0.y, -10.0, 1e-9);
    }
    let top = made.shape.cutting().bounds().y0;
    close(dart.fold.p0.y, top, 1e-6);
    close(100.0 - top, across / (2.0 * angle).cos(), 1e-6);
}

#[test]
fn what_does_not_lie_on_the_piece_is_told() {
    let shape = built(&rectangle(300, 400), Drawn::Cutting, &all(mm(10)));
    let name = || "top".to_owned();
    let at = |at| Along::FromStart(mm(at));
    let tip = |x, y| Tip::Point([mm(x), mm(y)]);
    for (spec, fault) in [
        (
            dart("top", at(15), mm(30), Tip::Straight(mm(90)), None),
            ShapingFault::OffEdge { edge: name() },
        ),
        (
            dart("top", at(900), mm(30), Tip::Straight(mm(90)), None),
            ShapingFault::OffEdge { edge: name() },
        ),
        (
            dart("top", at(150), mm(0), Tip::Straight(mm(90)), None),
            ShapingFault::NotAboveZero { what: "width" },
        ),
        (
            dart("top", at(150), mm(30), Tip::Straight(mm(900)), None),
            ShapingFault::OffPiece,
        ),
        (
            dart("top", at(150), mm(30), tip(-20, 90), None),
            ShapingFault::OffPiece,
        ),
        (
            dart("top", at(60), mm(30), tip(250, 40), None),
            ShapingFault::AlongEdge { edge: name() },
        ),
        (
            dart(
                "top",
                at(150),
                mm(30),
                Tip::Straight(mm(90)),
                Some(Laid::Down),
            ),
            ShapingFault::CannotLie,
        ),
        (
            DartSpec::Inside {
                from: [mm(150), mm(50)],
                to: [mm(150), mm(450)],
                width: mm(20),
                laid: None,
            },
            ShapingFault::OffPiece,
        ),
    ] {
        let made = shape.clone().shaped(std::slice::from_ref(&spec), &[]);
        assert_eq!(made.darts, [(0, fault)], "{spec:?}");
        assert_eq!(made.shape.darts(), [None]);
    }
    let unknown = dart("waist", at(15), mm(30), Tip::Straight(mm(90)), None);
    let made = shape.shaped(&[unknown], &[]);
    assert!(matches!(made.darts[0].1, ShapingFault::NoSuchEdge { .. }));
}

#[test]
fn a_dart_with_two_points_changes_no_edge() {
    let shape = built(&rectangle(300, 400), Drawn::Cutting, &all(mm(10)));
    let before: Vec<f64> = shape.edges().iter().map(|edge| edge.seam_length).collect();
    let spec = DartSpec::Inside {
        from: [mm(150), mm(60)],
        to: [mm(150), mm(260)],
        width: exact(25, 1),
        laid: None,
    };
    let made = shape.shaped(&[spec], &[]);
    let dart = only(&made);
    assert_eq!(dart.legs.len(), 4);
    close(dart.mouth[0].distance(dart.mouth[1]), 25.0, 1e-9);
    close(dart.mouth[0].y, 160.0, 1e-9);
    let after: Vec<f64> = made
        .shape
        .edges()
        .iter()
        .map(|edge| edge.seam_length)
        .collect();
    assert_eq!(before, after);
    assert_eq!(to_f64(mm(300)), made.shape.box_size().0);
}

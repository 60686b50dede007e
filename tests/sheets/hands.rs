//! Hands on the cloth: what is turned over, what lies on the bias, and what each cut gives. Nothing of
//! the laying's own code judges it: pieces are told from their mirror images by the lengths and the
//! turns of their edges.

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::float::single::SingleFloatOverlay;
use kurbo::{BezPath, Point, Shape as _};
use notchbook::cloth::{ClothLayout, LaidPiece, Layers};
use notchbook::pipeline::Workshop;
use notchbook::resolve::PieceId;
use proptest::prelude::{Just, ProptestConfig, Strategy, prop, prop_oneof, proptest};

use crate::bench::written;
use crate::cloth::{corners, room};

/// Nearer than this is the same, in mm.
const SAME: f64 = 0.02;

/// A booklet of one size that cuts one piece, `flag`, from `outer`.
fn booklet(fabric: &str, piece: &str, more: &str) -> String {
    format!(
        "title: Pennant\nedition: 1.0.0\nsizes: {{one: One size}}\n\
         fabrics:\n  outer: {{name: Velvet, {fabric}}}\npieces:\n  flag:\n    \
         allowance: {{all: 0 mm}}\n    raw: [all]\n{piece}{more}parts: [make.md]\n"
    )
}

const MAKE: &str = "# Make it\n\n## Cut it {#cut}\n\n```work\n- cut: all\n```\n\nCut it all.\n";

fn compiled<R>(facts: &str, then: impl FnOnce(&Workshop, &ClothLayout) -> R) -> R {
    written(&[("booklet.yaml", facts), ("make.md", MAKE)], |compiled| {
        let told: Vec<String> = compiled
            .report
            .findings
            .iter()
            .map(|finding| format!("{}: {}", finding.code(), finding.message))
            .collect();
        let layout = compiled.cloth.first().and_then(|size| size.first());
        then(
            compiled,
            layout.unwrap_or_else(|| panic!("no layout: {told:?}")),
        )
    })
}

/// A piece without any symmetry, 310 by 420 mm.
const LOPSIDED: &str = "    outline:\n      path:\n        - start: [0 mm, 0 mm]\n        \
    - top: [310 mm, 0 mm]\n        - side: [180 mm, 420 mm]\n        - foot: [60 mm, 260 mm]\n        \
    - back: close\n";

/// The edges of an outline as walked clockwise: how long each is, and how it turns into the next.
fn walked(path: &BezPath) -> Vec<(f64, f64)> {
    let mut points = corners(path);
    points.dedup_by(|next, kept| next.distance(*kept) < 1e-6);
    if points.len() > 1 && points[0].distance(points[points.len() - 1]) < 1e-6 {
        points.pop();
    }
    let count = points.len();
    let twice: f64 = (0..count)
        .map(|at| {
            points[at]
                .to_vec2()
                .cross(points[(at + 1) % count].to_vec2())
        })
        .sum();
    if twice < 0.0 {
        points.reverse();
    }
    (0..count)
        .map(|at| {
            let edge = |at: usize| points[(at + 1) % count] - points[at % count];
            let (one, two) = (edge(at), edge(at + 1));
            (one.hypot(), one.cross(two).atan2(one.dot(two)))
        })
        .collect()
}

/// Whether one outline can be turned and moved onto the other without turning it over.
fn same_hand(one: &BezPath, two: &BezPath) -> bool {
    alike(one, two, (SAME, 1e-3))
}

/// The same within a length in mm and an angle in radians.
fn alike(one: &BezPath, two: &BezPath, (length, angle): (f64, f64)) -> bool {
    let (one, two) = (walked(one), walked(two));
    one.len() == two.len()
        && (0..one.len()).any(|shift| {
            (0..one.len()).all(|at| {
                let (a, b) = (one[at], two[(at + shift) % two.len()]);
                (a.0 - b.0).abs() < length && (a.1 - b.1).abs() < angle
            })
        })
}

/// The outline turned over.
fn over(path: &BezPath) -> BezPath {
    kurbo::Affine::scale_non_uniform(-1.0, 1.0) * path.clone()
}

fn drawn(compiled: &Workshop, piece: usize) -> BezPath {
    let edition = &compiled.editions()[0];
    let mut pieces = PieceId::each(&edition.draft.facts.pieces);
    let (id, _) = pieces.nth(piece).expect("a piece");
    let shape = edition.values.shape(id).expect("a shape");
    shape.cutting().path.clone()
}

#[test]
fn every_second_copy_of_a_mirrored_piece_is_turned_over_on_flat_cloth() {
    for (count, as_drawn, turned) in [(1, 1, 0), (2, 1, 1), (3, 2, 1), (4, 2, 2)] {
        let piece = format!(
            "{LOPSIDED}    mirrored: yes\n    grain: vertical\n    cut: {{outer: {count}}}\n"
        );
        compiled(
            &booklet("widths: [140 cm]", &piece, ""),
            |compiled, layout| {
                let drawn = drawn(compiled, 0);
                assert!(!same_hand(&drawn, &over(&drawn)), "the test could not fail");
                let right = layout
                    .pieces
                    .iter()
                    .filter(|one| same_hand(&one.outline, &drawn));
                let left = layout
                    .pieces
                    .iter()
                    .filter(|one| same_hand(&one.outline, &over(&drawn)));
                assert_eq!(
                    (right.count(), left.count()),
                    (as_drawn, turned),
                    "cut {count}"
                );
            },
        );
    }
}

/// The directions of the edges of an outline, in degrees from the cloth's length, from 0 to 180.
fn directions(path: &BezPath) -> Vec<f64> {
    let points = corners(path);
    points
        .iter()
        .zip(points.iter().skip(1))
        .filter(|(from, to)| from.distance(**to) > 1.0)
        .map(|(from, to): (&Point, &Point)| {
            let along = *to - *from;
            along.x.atan2(along.y).to_degrees().rem_euclid(180.0)
        })
        .collect()
}

#[test]
fn a_piece_on_the_bias_lies_at_45_degrees_to_the_selvedge() {
    for nap in ["no", "yes"] {
        let piece =
            "    outline: {rectangle: [30 cm, 5 cm]}\n    grain: bias\n    cut: {outer: 3}\n";
        compiled(
            &booklet(&format!("widths: [140 cm], nap: {nap}"), piece, ""),
            |_, layout| {
                assert_eq!(layout.pieces.len(), 3);
                for one in &layout.pieces {
                    for angle in directions(&one.outline) {
                        let off = (angle.rem_euclid(90.0) - 45.0).abs();
                        assert!(off < 1e-6, "an edge lies at {angle}° to the selvedge");
                    }
                }
            },
        );
    }
}

/// A panel cut on the fold, so that its cloth is folded.
const PANEL: &str = "  panel:\n    outline: {rectangle: [40 cm, 30 cm]}\n    fold: left\n    \
    allowance: {all: 0 mm}\n    raw: [all]\n    grain: vertical\n    cut: {outer: 1}\n";

/// The pieces of a kind, laid: how many through one layer, how many through both.
fn layers(layout: &ClothLayout, piece: usize) -> (usize, usize) {
    let count = |layers: Layers| {
        let of = |one: &&LaidPiece| one.piece.at() == piece && one.layers == layers;
        layout.pieces.iter().filter(of).count()
    };
    (count(Layers::One), count(Layers::Both))
}

/// How many come out as drawn, and how many turned over. On folded cloth the upper layer lies wrong
/// side up.
fn hands(layout: &ClothLayout, piece: usize, drawn: &BezPath) -> (usize, usize) {
    let (mut right, mut left) = (0, 0);
    for one in layout.pieces.iter().filter(|one| one.piece.at() == piece) {
        let as_drawn = same_hand(&one.outline, drawn);
        assert!(
            as_drawn || same_hand(&one.outline, &over(drawn)),
            "it is neither"
        );
        match one.layers {
            Layers::One if as_drawn => right += 1,
            Layers::One => left += 1,
            Layers::Both => (right, left) = (right + 1, left + 1),
            Layers::Fold => panic!("a piece without a fold lies at the fold"),
        }
    }
    (right, left)
}

#[test]
fn on_folded_cloth_no_copy_comes_out_as_the_wrong_hand() {
    for (count, mirrored, wanted, laid) in [
        (1, "no", (1, 0), (1, 0)),
        (2, "no", (2, 0), (2, 0)),
        (3, "no", (3, 0), (3, 0)),
        (2, "yes", (1, 1), (0, 1)),
        (3, "yes", (2, 1), (1, 1)),
        (4, "yes", (2, 2), (0, 2)),
    ] {
        let piece = format!(
            "{LOPSIDED}    mirrored: {mirrored}\n    grain: vertical\n    cut: {{outer: {count}}}\n"
        );
        compiled(
            &booklet("widths: [140 cm]", &piece, PANEL),
            |compiled, layout| {
                assert!(layout.bolt.folded);
                assert_eq!(
                    hands(layout, 0, &drawn(compiled, 0)),
                    wanted,
                    "cut {count}, mirrored: {mirrored}"
                );
                assert_eq!(layers(layout, 0), laid, "cut {count}, mirrored: {mirrored}");
            },
        );
    }
}

#[test]
fn copies_without_a_hand_are_cut_in_pairs_and_the_odd_one_on_a_single_layer() {
    // A rectangle, and a trapezium that is the same turned over.
    let trapezium = "    outline:\n      path:\n        - start: [50 mm, 0 mm]\n        - top: [150 mm, 0 mm]\n        \
        - right: [200 mm, 300 mm]\n        - foot: [0 mm, 300 mm]\n        - left: close\n";
    for outline in ["    outline: {rectangle: [20 cm, 30 cm]}\n", trapezium] {
        for (count, laid) in [(1, (1, 0)), (2, (0, 1)), (5, (1, 2))] {
            let piece = format!("{outline}    grain: vertical\n    cut: {{outer: {count}}}\n");
            compiled(&booklet("widths: [140 cm]", &piece, PANEL), |_, layout| {
                assert_eq!(layers(layout, 0), laid, "cut {count}");
            });
        }
    }
}

/// 0.5 mm is what an outline may leave its mirror image by.
#[test]
fn half_a_millimetre_makes_no_hand_and_a_whole_one_does() {
    for (off, laid) in [("0.4 mm", (0, 1)), ("1 mm", (2, 0))] {
        let piece = format!(
            "    outline:\n      path:\n        - start: [0 mm, 0 mm]\n        - top: [200 mm, {off}]\n        \
             - right: [200 mm, 300 mm]\n        - foot: [0 mm, 300 mm]\n        - left: close\n    \
             grain: vertical\n    cut: {{outer: 2}}\n"
        );
        compiled(&booklet("widths: [140 cm]", &piece, PANEL), |_, layout| {
            assert_eq!(layers(layout, 0), laid, "{off}");
        });
    }
}

/// The half is 20 cm wide at a fold that runs down; its grain runs at 45° or across, so the whole piece of
/// 40 by 30 cm is laid. At 45° that is 70 cm by the square root of a half, 49.5 cm, each way.
#[test]
fn a_piece_whose_fold_leaves_the_grain_is_laid_whole() {
    for (grain, size) in [("bias", (494.97, 494.97)), ("horizontal", (300.0, 400.0))] {
        let piece = format!(
            "    outline: {{rectangle: [20 cm, 30 cm]}}\n    fold: right\n    grain: {grain}\n    cut: {{outer: 1}}\n"
        );
        compiled(
            &booklet("widths: [140 cm], nap: yes", &piece, ""),
            |_, layout| {
                assert!(!layout.bolt.folded && layout.pieces[0].opened);
                let bounds = layout.pieces[0].outline.bounding_box();
                let off = (bounds.width() - size.0)
                    .abs()
                    .max((bounds.height() - size.1).abs());
                assert!(off < 0.01, "{grain}: {bounds}");
            },
        );
    }
    // Across the grain on one, along it on the other.
    let level = "    outline: {rectangle: [20 cm, 30 cm]}\n    fold: top\n    grain: horizontal\n    cut: {outer: 1}\n";
    compiled(&booklet("widths: [140 cm]", level, ""), |_, layout| {
        assert!(layout.bolt.folded && !layout.pieces[0].opened);
        let bounds = layout.pieces[0].outline.bounding_box();
        assert!((bounds.width() - 300.0).abs() < 0.01 && bounds.x0.abs() < 0.01);
    });
}

/// Half of cloth 100 cm wide has room for 49 cm; opened out it has room for 98 cm.
#[test]
fn what_is_too_wide_for_half_of_the_cloth_is_laid_where_it_is_opened_out() {
    for (count, mirrored, wanted) in [(1, "no", (1, 0)), (2, "yes", (1, 1))] {
        let piece = format!(
            "    outline:\n      path:\n        - start: [0 mm, 0 mm]\n        - top: [700 mm, 0 mm]\n        \
             - side: [550 mm, 200 mm]\n        - back: close\n    mirrored: {mirrored}\n    \
             grain: vertical\n    cut: {{outer: {count}}}\n"
        );
        compiled(
            &booklet("widths: [100 cm]", &piece, PANEL),
            |compiled, layout| {
                let from = layout.opened_from.expect("cloth that is opened out");
                for one in layout.pieces.iter().filter(|one| one.piece.at() == 0) {
                    assert!(one.outline.bounding_box().y0 >= from);
                }
                assert_eq!(hands(layout, 0, &drawn(compiled, 0)), wanted);
            },
        );
    }
}

#[test]
fn the_layout_says_what_is_cut_on_a_single_layer_or_turned_over() {
    use notchbook::typeset::Paper;
    let piece = format!(
        "    name: Flag\n{LOPSIDED}    mirrored: yes\n    grain: vertical\n    cut: {{outer: 3}}\n"
    );
    let say = |more: &str| {
        compiled(&booklet("widths: [140 cm]", &piece, more), |compiled, _| {
            let book = compiled.book(&compiled.editions()[0], Paper::A4.of_sheets());
            let sheaf = compiled.sheaf(&book, Paper::A4);
            let row = sheaf.data["cuts"][0]["rows"][0].clone();
            let drawing =
                String::from_utf8(sheaf.files["/layouts/outer-1.svg"].clone()).expect("a drawing");
            (sheaf.data["layouts"][0].clone(), row, drawing)
        })
    };
    let (layout, row, drawing) = say(PANEL);
    assert_eq!(layout["single_layer"], serde_json::json!(["Flag"]));
    assert_eq!(layout["turned_over"], serde_json::json!([]));
    assert_eq!(row["single_layer"], 1);
    assert_eq!(drawing.matches("layer<").count(), 1);
    let (layout, row, drawing) = say("");
    assert_eq!(layout["single_layer"], serde_json::json!([]));
    assert_eq!(layout["turned_over"], serde_json::json!(["Flag"]));
    assert_eq!(row["single_layer"], 0);
    assert_eq!(drawing.matches("over<").count(), 1);
}

/// The area that two outlines share, in mm², by a library that the laying does not judge overlaps with.
fn shared(one: &BezPath, two: &BezPath) -> f64 {
    let points = |path: &BezPath| -> Vec<[f64; 2]> {
        let mut points: Vec<[f64; 2]> = corners(path)
            .iter()
            .map(|point| [point.x, point.y])
            .collect();
        points.dedup();
        points
    };
    let area = |part: &Vec<[f64; 2]>| {
        let twice: f64 = part
            .iter()
            .zip(part.iter().cycle().skip(1))
            .map(|(a, b)| a[0] * b[1] - b[0] * a[1])
            .sum();
        twice / 2.0
    };
    let parts = points(one).overlay(&points(two), OverlayRule::Intersect, FillRule::NonZero);
    parts.iter().flatten().map(area).sum::<f64>().abs()
}

/// A piece of 3 to 7 corners round a middle, in whole mm.
fn piece() -> impl Strategy<Value = (String, u32, bool)> {
    let reaches = prop::collection::vec(40u32..160, 3..8);
    let grain = prop_oneof![Just("vertical"), Just("horizontal"), Just("bias"), Just("")];
    (reaches, grain, 1u32..5, prop::bool::ANY).prop_map(|(reaches, grain, count, mirrored)| {
        let all = reaches.len() as f64;
        let corner = |(at, reach): (usize, &u32)| {
            let angle = at as f64 / all * std::f64::consts::TAU;
            let along = |part: f64| (200.0 + f64::from(*reach) * part).round();
            format!("[{} mm, {} mm]", along(angle.cos()), along(angle.sin()))
        };
        let corners: Vec<String> = reaches.iter().enumerate().map(corner).collect();
        let edges: Vec<String> = corners[1..]
            .iter()
            .zip('a'..)
            .map(|(to, name)| format!("        - edge_{name}: {to}\n"))
            .collect();
        let grain = if grain.is_empty() {
            String::new()
        } else {
            format!("    grain: {grain}\n")
        };
        let facts = format!(
            "    outline:\n      path:\n        - start: {}\n{}        - last: close\n{grain}    \
             mirrored: {}\n    cut: {{outer: {count}}}\n",
            corners[0],
            edges.concat(),
            if mirrored { "yes" } else { "no" },
        );
        (facts, count, mirrored)
    })
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(24) })]

    #[test]
    fn every_hand_is_laid_on_the_cloth_and_over_nothing_else(
        (facts, count, mirrored) in piece(),
        on_fold in prop::bool::ANY,
        nap in prop::bool::ANY,
        width in 70u32..150,
    ) {
        let fabric = format!("widths: [{width} cm], nap: {}", if nap { "yes" } else { "no" });
        let panel = PANEL.replace("40 cm", "30 cm");
        let more = if on_fold { panel.as_str() } else { "" };
        compiled(&booklet(&fabric, &facts, more), |compiled, layout| {
            let drawn = drawn(compiled, 0);
            let turned = if mirrored { count / 2 } else { 0 };
            let (right, left) = hands(layout, 0, &drawn);
            // What differs from its mirror image by less than a hand notices has no left and right.
            if alike(&drawn, &over(&drawn), (2.5, 0.05)) {
                assert_eq!(right + left, count as usize);
            } else {
                assert_eq!((right, left), ((count - turned) as usize, turned as usize));
            }
            for (at, one) in layout.pieces.iter().enumerate() {
                let (own, room) = (one.outline.bounding_box(), room(layout, one));
                assert_eq!(own.union(room), room, "a piece lies off the cloth");
                for other in &layout.pieces[at + 1..] {
                    let over = shared(&one.outline, &other.outline);
                    assert!(over < 0.01, "two pieces share {over} mm²");
                }
            }
        });
    }
}

//! Straps, pockets and rings: where they lie as far as facts tell it, and what is torn off where they do not.

use kurbo::{Rect, Shape as _};
use notchbook::pipeline::Workshop;

use crate::made::seen;
use crate::{Drawing, measure, same};

const FACTS: &str = "title: Things
edition: 1.0.0
sizes: {s: Small, l: Large}
measurements:
  band_length: [40 cm, 60 cm]
fabrics:
  outer: {name: Cotton, widths: [140 cm], amount: [2 m, 2 m]}
notions:
  thread: {kind: thread, name: Sewing thread}
  tape: {kind: tape, name: Cotton tape, width: 2 cm, cut: {tie: {length: 60 cm, raw: [start, end]}, loop: {length: 20 cm}}}
pieces:
  band: {outline: {rectangle: [band_length, 12 cm]}, allowance: 1 cm, raw: all, cut: {outer: 1}}
  panel:
    outline: {rectangle: [50 cm, 60 cm]}
    allowance: 1 cm
    raw: all
    marks: {loop_place: {edge: left, at: 20 cm}}
    cut: {outer: [front, back]}
  pocket:
    outline: {rectangle: [20 cm, 16 cm]}
    allowance: 1 cm
    raw: all
    cut: {outer: 1}
  wide: {outline: {rectangle: [50 cm, 16 cm]}, allowance: 1 cm, raw: all, cut: {outer: 1}}
  sleeve:
    outline:
      path:
        - start: [0 cm, 20 cm]
        - cap: {to: [36 cm, 20 cm], curve: [[14 cm, -8 cm], [22 cm, -8 cm]]}
        - side: [32 cm, 55 cm]
        - hem: [4 cm, 55 cm]
        - under: close
    allowance: 1.5 cm
    raw: all
    cut: {outer: 1}
parts: [make.md]
";

/// The last of some steps drawn from its work.
fn step(before: &str, work: &str, then: impl FnMut(&Workshop, usize, &Drawing)) {
    seen(FACTS, before, work, then);
}

#[test]
fn the_cap_of_a_sleeve_is_stitched_on_its_whole_length() {
    let work = "- {easestitch: sleeve.cap, allowance: 1 cm, stitch: 4 mm}";
    step("", work, |compiled, size, drawing| {
        let edition = &compiled.editions()[size];
        let mut shapes = edition
            .cast
            .copies()
            .filter_map(|(_, member)| edition.values.shape(member.piece));
        let cap = shapes.find_map(|shape| {
            shape
                .edge("cap")
                .map(|cap| (cap.seam_length, cap.cut_length))
        });
        let (seam, cut) = cap.expect("the cap");
        let rows: f64 = drawing
            .all("stitch")
            .iter()
            .map(|row| row.perimeter(0.01))
            .sum();
        let long = rows * drawing.scale;
        // The row lies between the two lines of the cap, and runs on through the allowances beside it.
        assert!(
            seam - 1.0 < long && long < cut + 2.0 * 15.0,
            "{long} mm of a cap of {seam} to {cut} mm"
        );
    });
}

#[test]
fn a_band_whose_ends_are_sewn_to_each_other_is_a_ring() {
    let sew = "- {sew: [band.left, band.right], allowance: 1 cm, stitch: 2.5 mm}";
    for (before, work, class) in [
        ("", sew, "wrong-side"),
        (sew, "- press: [band, the allowances open]", "right-side"),
        (
            sew,
            "- {topstitch: band.top, allowance: 5 mm, stitch: 3 mm}",
            "right-side",
        ),
    ] {
        step(before, work, |compiled, size, drawing| {
            let round = measure(compiled, size, "band_length") - 20.0;
            let wall = drawing.last(class);
            // A ring is as wide as its round over pi: a flat strip would be three times that.
            same(
                "its width",
                wall.width() * drawing.scale,
                round / std::f64::consts::PI,
            );
        });
    }
}

/// The tape on a drawing; the lower of its two layers stands out behind it.
fn tape(drawing: &Drawing) -> Rect {
    let classes = ["binding", "webbing", "hook-loop"];
    let drawn = classes
        .iter()
        .filter_map(|class| drawing.paths.get(*class))
        .flatten();
    drawn.last().expect("a tape").bounding_box()
}

/// The words of a drawing in one.
fn said(drawing: &Drawing) -> String {
    drawing.words.join(" ")
}

#[test]
fn a_loop_lies_at_its_edge_and_the_fold_points_inwards() {
    let fold = "- fold: [loop, end to end]";
    let baste = "- {baste: [loop, front.left], allowance: 5 mm, stitch: 4 mm}";
    step(fold, baste, |_, _, drawing| {
        let (panel, row) = (drawing.first("right-side"), drawing.first("stitch"));
        let at = (row.center().x - panel.x0) * drawing.scale;
        same("the row from the edge", at, 5.0);
        let tape = tape(drawing);
        same(
            "the ends are level with the edge",
            (tape.x0 - panel.x0) * drawing.scale,
            0.0,
        );
        same("half of the tape", tape.width() * drawing.scale, 100.0);
        assert!(
            said(drawing).contains("the words say where"),
            "{}",
            said(drawing)
        );
    });
    // At a mark the whole panel is drawn, and the loop lies there.
    let marked = "- {baste: [loop, front.loop_place], allowance: 5 mm, stitch: 4 mm}";
    step(fold, marked, |_, _, drawing| {
        let panel = drawing.first("right-side");
        same("the panel", panel.height() * drawing.scale, 600.0);
        let tape = tape(drawing);
        let from = [tape.center().y - panel.y0, panel.y1 - tape.center().y];
        let from = from.map(|far| far * drawing.scale);
        assert!(from.iter().any(|far| (far - 200.0).abs() < 0.5), "{from:?}");
        assert!(!said(drawing).contains("the words say where"));
    });
}

#[test]
fn a_pocket_is_torn_round_where_nothing_says_its_place_and_level_where_its_edges_are_held() {
    let three = "- {topstitch: [pocket.left, pocket.bottom, pocket.right, front], allowance: 3 mm, stitch: 3 mm}";
    step("", three, |_, _, drawing| {
        let [front, pocket] = drawing.all("right-side") else {
            panic!("a panel and a pocket")
        };
        let (front, pocket) = (front.bounding_box(), pocket.bounding_box());
        same("the pocket", pocket.width() * drawing.scale, 200.0);
        assert!(
            front.width() * drawing.scale < 480.0,
            "the panel is torn off"
        );
        assert!(
            said(drawing).contains("the words say where"),
            "{}",
            said(drawing)
        );
        let rows: usize = drawing
            .all("stitch")
            .iter()
            .map(|row| row.segments().count())
            .sum();
        assert_eq!(rows, 3);
    });
    let held = "- {baste: [wide.left, front.left], allowance: 3 mm, stitch: 4 mm}\n- {baste: [wide.bottom, front.bottom], allowance: 3 mm, stitch: 4 mm}";
    let rows = "- {topstitch: [wide, front, at each quarter of the width], stitch: 3 mm}";
    step(held, rows, |_, _, drawing| {
        let [front, wide] = drawing.all("right-side") else {
            panic!("a panel and a pocket")
        };
        let (front, wide) = (front.bounding_box(), wide.bounding_box());
        same("level at the base", front.y1, wide.y1);
        same("the whole width", front.width() * drawing.scale, 500.0);
        let mut at: Vec<f64> = drawing
            .all("stitch")
            .iter()
            .map(|row| row.bounding_box().center().x)
            .collect();
        at.sort_by(f64::total_cmp);
        assert_eq!(at.len(), 3);
        for (row, share) in at.into_iter().zip([0.25, 0.5, 0.75]) {
            same(
                "a row at its quarter",
                (row - wide.x0) * drawing.scale,
                500.0 * share,
            );
        }
    });
}

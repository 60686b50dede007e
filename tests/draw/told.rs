//! What a maker must be able to tell from a drawing alone: which side of a pocket is up and where it lies, that layers are one,
//! that a ring is round, that the pile of all layers runs one way, that every corner is cut.

use kurbo::{Rect, Shape as _};

use crate::made::seen;
use crate::{Drawing, same};

const FACTS: &str = "title: Things
edition: 1.0.0
sizes: {s: Small, l: Large}
measurements:
  wide: [30 cm, 40 cm]
fabrics:
  outer: {name: Cotton, widths: [140 cm], amount: [2 m, 2 m]}
  lining: {name: Lining, widths: [140 cm], amount: [2 m, 2 m]}
  plush: {name: Fur fabric, widths: [140 cm], amount: [1 m, 1 m], nap: yes}
notions:
  thread: {kind: thread, name: Sewing thread}
  tape: {kind: tape, name: Cotton tape, width: 2 cm, cut: {tie: {length: 80 cm, raw: [start, end]}}}
  binding: {kind: tape, name: Binding, width: 4 cm, cut: {strip: {length: 60 cm, count: [first_strip, second_strip], raw: all}}}
pieces:
  panel: {outline: {rectangle: [wide, 36 cm]}, allowance: 1 cm, raw: all, cut: {outer: [front, back], lining: [inside]}}
  pocket: {outline: {rectangle: [wide, 14 cm]}, allowance: 1 cm, raw: all, marks: {row: {line: [[10 cm, 0 cm], [10 cm, 14 cm]]}}, cut: {outer: 1}}
  band: {outline: {rectangle: [\"31.416 cm + 2 cm\", 8 cm]}, allowance: 1 cm, raw: all, cut: {outer: 1}}
  lid:
    outline: {path: [{start: [0 cm, 5 cm]}, {far: {to: [10 cm, 5 cm], arc: 5 cm, turn: right}}, {near: {to: [0 cm, 5 cm], arc: 5 cm, turn: right}}]}
    drawn: stitching
    allowance: 1 cm
    raw: all
    cut: {outer: 1}
  flank: {outline: {rectangle: [20 cm, 24 cm]}, allowance: 1 cm, raw: all, grain: vertical, cut: {plush: [left_flank, right_flank]}}
parts: [make.md]
";

fn bounds<'p>(paths: impl IntoIterator<Item = &'p kurbo::BezPath>) -> Rect {
    let boxes = paths.into_iter().map(kurbo::BezPath::bounding_box);
    boxes.reduce(|one, other| one.union(other)).expect("a path")
}

/// All words of a drawing, a label a line.
fn said(drawing: &Drawing) -> String {
    drawing.words.join("\n")
}

#[test]
fn layers_that_are_basted_as_one_show_both_and_the_row_all_round() {
    let work = "- {baste: [front, inside, as one], allowance: 5 mm, stitch: 4 mm}";
    seen(FACTS, "", work, |_, _, drawing| {
        let (row, top) = (bounds(drawing.all("stitch")), bounds(drawing.all("lining")));
        same("beside the edge", (row.x0 - top.x0) * drawing.scale, 5.0);
        same("and below", (row.y0 - top.y0) * drawing.scale, 5.0);
        // Under the corner that is turned back, the wrong side of the one below.
        assert_eq!(drawing.all("wrong-side").len(), 1);
        assert_eq!(drawing.all("lining-wrong").len(), 1);
    });
}

#[test]
fn layers_as_one_and_a_tie_at_their_edge_are_one_step() {
    let work = "- {baste: [front, inside, as one], allowance: 5 mm, stitch: 4 mm}\n- fold: [tie, end to end]\n- {baste: [tie, front.right], allowance: 5 mm, stitch: 4 mm}";
    seen(FACTS, "", work, |_, _, drawing| {
        let numbers: Vec<&String> = drawing
            .words
            .iter()
            .filter(|word| word.parse::<u32>().is_ok())
            .collect();
        assert_eq!(numbers, ["1", "2"]);
        // Folded once: half as long, and its lower layer stands out by less than a millimetre on paper.
        let tie = bounds(drawing.all("webbing"));
        same(
            "as wide as the tape",
            tie.width().min(tie.height()) * drawing.scale,
            20.0,
        );
        assert!(tie.width().max(tie.height()) * drawing.scale < 400.0 + drawing.scale);
    });
}

#[test]
fn a_pocket_that_was_stitched_on_lies_right_side_up_and_level_with_its_edges() {
    let before = "- {topstitch: [pocket.row, front], stitch: 3 mm}";
    let work = "- {baste: [pocket.left, front.left], allowance: 5 mm, stitch: 4 mm}\n- {baste: [pocket.bottom, front.bottom], allowance: 5 mm, stitch: 4 mm}\n- {baste: [pocket.right, front.right], allowance: 5 mm, stitch: 4 mm}";
    seen(FACTS, before, work, |_, _, drawing| {
        assert!(drawing.any("wrong-side").is_empty(), "{}", said(drawing));
        // One drawing of the pocket on its panel shows the three rows.
        assert_eq!(drawing.all("right-side").len(), 2);
        let (rows, panel) = (bounds(drawing.all("stitch")), drawing.first("right-side"));
        same("the lower row", (panel.y1 - rows.y1) * drawing.scale, 0.0);
        same(
            "as deep as the pocket",
            rows.height() * drawing.scale,
            140.0,
        );
    });
}

#[test]
fn edges_to_which_the_same_is_done_are_shown_on_one_drawing() {
    let work = "- {bind: [front.left, first_strip], allowance: 1 cm, stitch: 2.5 mm}\n- {bind: [front.right, second_strip], allowance: 1 cm, stitch: 2.5 mm}";
    seen(FACTS, "", work, |_, _, drawing| {
        assert_eq!(drawing.all("right-side").len(), 1);
        let whole = drawing.first("right-side");
        let bound = bounds(drawing.all("binding"));
        same("from edge to edge", bound.width(), whole.width());
    });
}

#[test]
fn a_lid_is_sewn_to_a_band_that_is_a_ring() {
    let ring = "- {sew: [band.left, band.right], allowance: 1 cm, stitch: 2.5 mm}";
    let work = "- {sew: [[lid.far, lid.near], band.top], allowance: 1 cm, stitch: 2.5 mm}";
    seen(FACTS, ring, work, |_, _, drawing| {
        // The wall of the ring is as wide as its round over π, as the lid is on its seam line.
        let wall = drawing
            .all("wrong-side")
            .iter()
            .map(kurbo::BezPath::bounding_box)
            .max_by(|one, other| one.height().total_cmp(&other.height()))
            .expect("walls");
        let round = drawing
            .all("stitch")
            .iter()
            .map(|row| row.bounding_box().width() * drawing.scale)
            .filter(|wide| (wide - 100.0).abs() < 1.0);
        assert_eq!(round.count(), 2, "a row on the lid, and one on the ring");
        assert!(
            drawing
                .words
                .iter()
                .any(|word| word.contains("wrong side out")),
            "{wall:?}: {}",
            said(drawing)
        );
    });
}

#[test]
fn the_pile_of_layers_on_each_other_is_shown_on_each() {
    let work = "- {sew: [left_flank.right, right_flank.right], allowance: 1 cm, stitch: 2.5 mm}";
    crate::made::step(FACTS, "", work, |compiled| {
        let svg = &crate::drawn(compiled, 0, "it").svg;
        assert_eq!(svg.matches("href=\"#nap\"").count(), 2, "{svg}");
    });
}

#[test]
fn all_four_corners_are_cut() {
    let round = "- {sew: [front.top, back.top], allowance: 1 cm, stitch: 2.5 mm}\n- {sew: [front.right, back.right], allowance: 1 cm, stitch: 2.5 mm}\n- {sew: [front.bottom, back.bottom], allowance: 1 cm, stitch: 2.5 mm, leave: 8 cm}\n- {sew: [front.left, back.left], allowance: 1 cm, stitch: 2.5 mm}";
    seen(
        FACTS,
        round,
        "- trim: [front, the corners]",
        |_, _, drawing| {
            assert_eq!(drawing.all("cut-line").len(), 4);
        },
    );
}

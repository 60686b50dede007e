//! A gap lies at one place on its edge, in the drawing of the seam that leaves it and in that of the work that closes it.

use kurbo::Shape as _;

use crate::Drawing;
use crate::made::seen;

const FACTS: &str = "title: Things
edition: 1.0.0
sizes: {s: Small, l: Large}
measurements:
  wide: [30 cm, 40 cm]
fabrics:
  outer: {name: Cotton, widths: [140 cm], amount: [2 m, 2 m]}
notions:
  thread: {kind: thread, name: Sewing thread}
pieces:
  panel: {outline: {rectangle: [wide, 36 cm]}, allowance: 1 cm, cut: {outer: [front, back]}}
parts: [make.md]
";

const SEWN: &str = "- {sew: [front.bottom, back.bottom], allowance: 1 cm, stitch: 2.5 mm, leave: {length: 6 cm, at: 4 cm from left}}";

/// How far, in cm of cloth, the middle of what is looked for lies from the left end of the cloth.
fn from_left(drawing: &Drawing, middle: f64) -> f64 {
    let cloth = drawing.paths["right-side"][0].bounding_box();
    (middle - cloth.x0) * drawing.scale / 10.0
}

/// Both in cm of cloth; the layers of a seam are drawn a little beside each other.
fn near(what: &str, drawn: f64, meant: f64) {
    assert!(
        (drawn - meant).abs() < 0.7,
        "{what}: {drawn:.2} cm is drawn, {meant:.2} cm is meant"
    );
}

/// The middle of the only row of a step.
fn closed(work: &str, mut then: impl FnMut(usize, f64)) {
    seen(FACTS, SEWN, work, |_, size, drawing| {
        let rows = &drawing.paths["stitch"];
        assert_eq!(rows.len(), 1, "{work}");
        let row = rows[0].bounding_box();
        near("its length", row.width() * drawing.scale / 10.0, 6.0);
        then(size, from_left(drawing, row.center().x));
    });
}

#[test]
fn a_gap_stays_where_its_seam_leaves_it() {
    // 4 cm, and half of the gap.
    seen(FACTS, "", SEWN, |_, _, drawing| {
        let mut rows: Vec<_> = drawing.paths["stitch"]
            .iter()
            .map(kurbo::Shape::bounding_box)
            .collect();
        rows.sort_by(|one, other| one.x0.total_cmp(&other.x0));
        assert_eq!(rows.len(), 2);
        let middle = f64::midpoint(rows[0].x1, rows[1].x0);
        near("the gap", from_left(drawing, middle), 7.0);
    });
    closed("- {close: front.bottom, by: hand}", |_, middle| {
        near("front", middle, 7.0);
    });
    // The other piece is seen from its own right side, on which the same gap lies at the other end.
    closed("- {close: back.bottom, by: hand}", |size, middle| {
        let wide = if size == 0 { 30.0 } else { 40.0 };
        near("back", middle, wide - 7.0);
    });
}

//! A booklet's own words of the house reach its drawn steps: none is left in English.

use crate::crossed::{english, labels, texts};
use crate::drawn;
use crate::made::{refused, spoken};

const FACTS: &str = "title: POUCH
edition: 1.0.0
sizes: {s: S}
fabrics:
  outer: {name: COTTON, widths: [140 cm], amount: [2 m]}
  felt: {name: WADDING, look: wadding, widths: [90 cm], grain: no}
notions:
  zip: {kind: zip, name: ZIP, length: 40 cm, count: 1}
  thread: {kind: thread, name: THREAD}
  cord: {kind: elastic, name: CORD, width: 1 cm, amount: 1 m}
pieces:
  panel:
    name: PANEL
    outline: {rectangle: [40 cm, 30 cm]}
    allowance: 1 cm
    raw: all
    notches: [top centre]
    darts:
      xx: {edge: bottom, at: 12 cm, width: 2 cm, length: 8 cm, laid: to centre}
    cut: {outer: [x, xxx]}
  layer: {name: LAYER, outline: {rectangle: [40 cm, 30 cm]}, raw: all, cut: {felt: 1}}
  strap: {name: STRAP, outline: {rectangle: [30 cm, 4 cm]}, raw: all, cut: {outer: 1}}
  patch: {name: PATCH, outline: {rectangle: [12 cm, 10 cm]}, allowance: 1 cm, raw: all, cut: {outer: 1}}
parts: [make.md]
";

const SEWN: &str = "- {sew: [x.top, xxx.top], allowance: 1 cm, stitch: 2.5 mm}";

#[test]
fn drawn_steps_speak_the_language_of_the_booklet() {
    let cases: &[(&str, &str)] = &[
        ("", "- mark: x"),
        ("", "- fuse: [layer, x]"),
        ("", "- {quilt: [layer, x], gap: 3 cm, stitch: 3 mm}"),
        (
            "",
            "- {baste: [layer, x, as one], allowance: 5 mm, stitch: 4 mm}",
        ),
        (
            "",
            "- {sew: [x.left, xxx.left], allowance: 1 cm, leave: 6 cm, stitch: 2.5 mm}",
        ),
        (
            "",
            "- {sew: [x.top, xxx.top], allowance: 1 cm, leave: 6 cm, stitch: 2.5 mm}",
        ),
        (
            "",
            "- {sew: [x.top, zip.tape_a], allowance: 1 cm, stitch: 2.5 mm}",
        ),
        ("", "- {dart: x.xx, stitch: 2.5 mm}"),
        ("", "- finish: x.left\n  by: overlock"),
        (
            "",
            "- {staystitch: x.left, allowance: 5 mm, stitch: 2.5 mm}",
        ),
        ("", "- insert: [cord, x.right]"),
        (
            "",
            "- {topstitch: [patch.left, patch.right, patch.bottom, x], allowance: 2 mm, stitch: 3 mm}",
        ),
        (
            "",
            "- {baste: [strap, x.top], allowance: 5 mm, stitch: 4 mm}",
        ),
        (SEWN, "- {topstitch: x.top, allowance: 3 mm, stitch: 3 mm}"),
        (SEWN, "- press: x.top"),
    ];
    let own = labels();
    let mut seen = 0;
    let mut left = Vec::new();
    for (before, work) in cases {
        let more = [("templates/labels-en.json", own.as_str())];
        spoken(FACTS, before, work, &more, |compiled| {
            assert_eq!(refused(compiled), [""; 0], "{work}");
            let words = texts(&drawn(compiled, 0, "it").svg);
            seen += words.len();
            left.extend(words.iter().flat_map(|text| english(text)));
        });
    }
    assert!(seen > 30, "{seen} words");
    left.sort();
    left.dedup();
    // The edge of a rectangle has no other name.
    left.retain(|word| word != "top");
    assert_eq!(left, [""; 0], "left in English");
}

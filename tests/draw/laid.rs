//! What lies on or between the pieces of a step: layers smaller than their piece, tape, what was basted before.

use kurbo::Shape as _;
use notchbook::pipeline::Workshop;

use crate::bench::written;
use crate::{Drawing, drawn, same};

const BAG: &str = "title: Bag
edition: 1.0.0
sizes: {m: Medium}
fabrics:
  outer: {name: Canvas, widths: [140 cm], amount: [2 m]}
  wadding: {name: Fusible wadding, widths: [90 cm], grain: no}
notions:
  thread: {kind: thread, name: Sewing thread}
  webbing: {kind: tape, name: Webbing, width: 3 cm, cut: {handle: {length: 30 cm, raw: all}}}
pieces:
  body: {outline: {rectangle: [24 cm, 30 cm], corners_out: {bottom: [4 cm, 4 cm]}}, allowance: 1 cm, raw: top, cut: {outer: [front, back]}}
  stay: {outline: {rectangle: [20 cm, 26 cm], corners_out: {bottom: [4 cm, 4 cm]}}, cut: {wadding: [front_stay, back_stay]}}
  pocket: {outline: {rectangle: [24 cm, 10 cm]}, allowance: 1 cm, raw: [top, bottom], cut: {outer: 1}}
parts: [make.md]
";

/// One step drawn behind the cutting, the fusing, the basting of the pocket, and what is done before it.
fn step(before: &str, work: &str, then: impl Fn(&Workshop, &Drawing)) {
    let make = format!(
        "# Make it\n\n## Cut {{#cut}}\n\n```work\n- cut: all\n```\n\nCut.\n\n![All](draw:work)\n\n\
         ## Fuse {{#fuse}}\n\n```work\n- fuse: [front, front_stay]\n- fuse: [back, back_stay]\n\
         - {{baste: [pocket.left, back.left], stitch: 4 mm}}\n- {{baste: [pocket.right, back.right], stitch: 4 mm}}\n\
         {before}```\n\nFuse.\n\n\
         ## Do it {{#it}}\n\n```work\n{work}\n```\n\nDo it.\n\n![What is done](draw:work)\n"
    );
    written(&[("booklet.yaml", BAG), ("make.md", &make)], |compiled| {
        then(compiled, &Drawing::read(drawn(compiled, 0, "it")));
    });
}

const SIDES: &str = "- {sew: [front.left, back.left], allowance: 1 cm, stitch: 2.5 mm}\n\
    - {sew: [front.right, back.right], allowance: 1 cm, stitch: 2.5 mm}";

#[test]
fn a_layer_that_is_smaller_leaves_the_edges_of_its_piece_bare() {
    step("", SIDES, |_, drawing| {
        let (bare, layer) = (drawing.first("wrong-side"), drawing.first("wadding"));
        same("the width of the back", bare.width() * drawing.scale, 240.0);
        same(
            "the width of its layer",
            layer.width() * drawing.scale,
            200.0,
        );
        same(
            "the border at the left",
            (layer.x0 - bare.x0) * drawing.scale,
            20.0,
        );
        same(
            "the border at the right",
            (bare.x1 - layer.x1) * drawing.scale,
            20.0,
        );
    });
}

#[test]
fn what_was_basted_on_is_told_and_not_drawn_across_the_seam() {
    step("", SIDES, |_, drawing| {
        // The front below, and nothing else with its right side up.
        assert_eq!(drawing.all("right-side").len(), 1);
        let said = drawing.words.join(" ");
        assert!(
            said.contains("pocket between the layers, as basted"),
            "{said}"
        );
    });
}

#[test]
fn a_boxed_corner_shows_the_border_of_its_layer() {
    let seams = "- {sew: [front.left, back.left], allowance: 1 cm, stitch: 2.5 mm}\n\
        - {sew: [front.bottom, back.bottom], allowance: 1 cm, stitch: 2.5 mm}\n";
    let work = "- {box: [front.bottom_left_corner, back.bottom_left_corner], allowance: 1 cm, stitch: 2.5 mm}";
    step(seams, work, |_, drawing| {
        let (bare, layer) = (drawing.all("wrong-side"), drawing.all("wadding"));
        assert_eq!((bare.len(), layer.len()), (2, 2));
        for (bare, layer) in bare.iter().zip(layer) {
            let (bare, layer) = (bare.bounding_box(), layer.bounding_box());
            assert!(bare.union(layer).area() - bare.area() < 0.5);
            assert!(layer.area() < bare.area() * 0.95);
        }
    });
}

#[test]
fn lengths_of_webbing_are_drawn_as_tape() {
    step("", SIDES, |compiled, _| {
        let cut = Drawing::read(drawn(compiled, 0, "cut"));
        let handle = cut.first("webbing");
        same("the handle", handle.width() * cut.scale, 300.0);
        same("its width", handle.height() * cut.scale, 30.0);
    });
}

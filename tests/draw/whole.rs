//! Things that are no longer flat as they were cut, in the proportions that the facts give them.

use kurbo::{BezPath, PathEl, Point};
use notchbook::pipeline::Workshop;

use crate::counts::redrawn_where;
use crate::{Drawing, drawn, measure, same};

fn each_size_of(booklet: &str, see: impl Fn(&Workshop, usize)) {
    let mut seen = 0;
    let wanted = |name: &str| name == booklet;
    redrawn_where(wanted, |_, compiled| {
        (0..compiled.sizes.len()).for_each(|size| see(compiled, size));
        seen += 1;
    });
    assert_eq!(seen, 1, "{booklet}");
}

fn points(path: &BezPath) -> Vec<Point> {
    let ends = path.elements().iter().filter_map(PathEl::end_point);
    ends.collect()
}

/// How wide a shape is at its top or at its foot.
fn width_at(path: &BezPath, top: bool) -> f64 {
    let all = points(path);
    let level = all.iter().map(|point| if top { point.y } else { -point.y });
    let level = level.fold(f64::MAX, f64::min).abs();
    let there = all
        .iter()
        .filter(|point| (point.y.abs() - level).abs() < 0.01);
    let across: Vec<f64> = there.map(|point| point.x).collect();
    across.iter().copied().fold(f64::MIN, f64::max)
        - across.iter().copied().fold(f64::MAX, f64::min)
}

#[test]
fn a_boxed_bag_has_the_width_of_its_base_and_of_its_top() {
    each_size_of("harbour-lunch-bag", |compiled, size| {
        let (wide, depth) = (
            measure(compiled, size, "cut_width") - 2.0 * measure(compiled, size, "seam"),
            measure(compiled, size, "depth"),
        );
        for step in ["turn-out", "shape-bag"] {
            let bag = Drawing::read(drawn(compiled, size, step));
            let front = bag.all("right-side").last().expect("a front");
            same("its base", width_at(front, false) * bag.scale, wide - depth);
            same("its top", width_at(front, true) * bag.scale, wide);
        }
    });
}

#[test]
fn a_strip_folded_into_four_has_a_quarter_of_its_width() {
    each_size_of("harbour-lunch-bag", |compiled, size| {
        let strip = Drawing::read(drawn(compiled, size, "topstitch-loop"));
        let band = strip.first("right-side");
        // The loop is folded end to end in the same step, after it is stitched.
        let (long, wide) = (
            measure(compiled, size, "strip_length"),
            measure(compiled, size, "strip_width"),
        );
        same("its width", band.height() * strip.scale, wide / 4.0);
        same("its length", band.width() * strip.scale, long);
    });
}

#[test]
fn gathered_edges_are_as_long_as_what_they_are_sewn_to() {
    each_size_of("millpond-pinafore", |compiled, size| {
        let skirt = Drawing::read(drawn(compiled, size, "hem"));
        let [front, back] = skirt.all("wrong-side") else {
            panic!("a front and a back")
        };
        let length = |name| measure(compiled, size, name);
        // One share for all that is gathered to the waist; it is measured on the stitching line.
        let waist = length("front_waist") + 2.0 * length("back_waist");
        let flat = 4.0 * length("skirt_half") + 2.0 * length("overlap");
        let ends = length("deep_placket") + length("seam");
        for (piece, cut) in [
            (front, 2.0 * length("skirt_half") + 2.0 * length("seam")),
            (back, length("skirt_half") + length("overlap") + ends),
        ] {
            let drawn = width_at(piece, true) * skirt.scale;
            same("the gathered edge", drawn, cut * waist / flat);
        }
    });
}

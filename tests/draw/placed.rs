//! Pieces that are stitched onto their marks, hems that bend, and gaps that are closed once a thing is turned.

use kurbo::{ParamCurve as _, Rect, Shape as _};
use notchbook::pipeline::Workshop;

use crate::made::{refused, step};
use crate::{Drawing, drawn, same};

const FACTS: &str = "title: Bag
edition: 1.0.0
sizes: {s: Small, l: Large}
measurements:
  seam: 1 cm (3/8 in)
  wide: [30 cm, 36 cm]
fabrics:
  outer: {name: Cotton, widths: [140 cm], amount: [2 m, 2 m]}
notions:
  thread: {kind: thread, name: Sewing thread}
pieces:
  panel:
    outline: {rectangle: [wide, 40 cm]}
    allowance: seam
    raw: all
    marks:
      pocket_place: {outline: pocket, at: [8 cm, 12 cm], for: back}
      loop_place: {edge: left, at: 5 cm}
      row: {line: [[10 cm, 5 cm], [10 cm, 30 cm]]}
      strap_place: {point: [8 cm, 6 cm]}
      other_place: {point: [20 cm, 6 cm]}
    cut: {outer: [front, back]}
  pocket:
    outline: {rectangle: [14 cm, 16 cm]}
    drawn: stitching
    allowance: {all: seam, top: 3 cm}
    cut: {outer: 1}
  strap: {outline: {rectangle: [30 cm, 3 cm]}, raw: all, cut: {outer: 1}}
  skirt:
    outline:
      path:
        - start: [0 cm, 0 cm]
        - waist: [30 cm, 0 cm]
        - side: [40 cm, 50 cm]
        - hem: {to: [0 cm, 55 cm], curve: [[30 cm, 55 cm], [15 cm, 56 cm]]}
        - centre: close
    allowance: {all: seam, hem: 2 cm}
    raw: all
    cut: {outer: 1}
parts: [make.md]
";

/// The last of some steps drawn from its work.
fn step_drawn(before: &str, work: &str, then: impl FnOnce(&Workshop)) {
    step(FACTS, before, work, |compiled| {
        assert_eq!(refused(compiled), [""; 0], "{work}");
        then(compiled);
    });
}

/// A box of cloth from the upper left corner of another, in mm.
fn within(scale: f64, outer: Rect, inner: Rect) -> [f64; 4] {
    [
        (inner.x0 - outer.x0) * scale,
        (inner.y0 - outer.y0) * scale,
        inner.width() * scale,
        inner.height() * scale,
    ]
}

#[test]
fn a_pocket_lies_on_its_mark_and_is_stitched_on_the_edges_that_are_named() {
    let hem = "- {hem: pocket.top, allowance: 3 cm, stitch: 2.5 mm}";
    let three = "- {topstitch: [pocket.left, pocket.bottom, pocket.right, back.pocket_place], allowance: 3 mm, stitch: 3 mm}";
    let whole = "- {topstitch: [pocket, back.pocket_place], allowance: 3 mm, stitch: 3 mm}";
    let round =
        "- {edgestitch: [pocket, back.pocket_place, all round], allowance: 3 mm, stitch: 3 mm}";
    for (work, sides) in [(three, 3), (whole, 3), (round, 4)] {
        step_drawn(hem, work, |compiled| {
            for size in 0..2 {
                let figure = Drawing::read(drawn(compiled, size, "it"));
                let cloth = figure.all("right-side");
                assert_eq!(cloth.len(), 2, "the back and the pocket: {work}");
                let (back, pocket) = (cloth[0].bounding_box(), cloth[1].bounding_box());
                let wide = if size == 0 { 300.0 } else { 360.0 };
                same("the back", back.width() * figure.scale, wide);
                for (drawn, meant) in within(figure.scale, back, pocket)
                    .into_iter()
                    .zip([80.0, 120.0, 140.0, 160.0])
                {
                    same("the pocket on its mark", drawn, meant);
                }
                let rows = figure.all("stitch");
                let row = rows
                    .iter()
                    .map(kurbo::BezPath::bounding_box)
                    .reduce(|one, two| one.union(two));
                let row = within(figure.scale, pocket, row.expect("a row"));
                let top = if sides == 3 { 0.0 } else { 3.0 };
                for (drawn, meant) in row.into_iter().zip([3.0, top, 134.0, 160.0 - 3.0 - top]) {
                    same("the row on the pocket", drawn, meant);
                }
                let runs: usize = rows.iter().map(|row| row.segments().count()).sum();
                assert_eq!(runs, sides, "{work}");
            }
        });
    }
}

#[test]
fn a_mark_for_one_copy_is_not_drawn_on_the_other() {
    step_drawn(
        "- press: [front, flat]",
        "- mark: [front, back]",
        |compiled| {
            let words = Drawing::read(drawn(compiled, 0, "it")).words.join(" ");
            assert_eq!(words.matches("pocket place").count(), 1, "{words}");
            assert_eq!(words.matches("loop place").count(), 2, "{words}");
        },
    );
}

#[test]
fn a_hem_that_bends_is_drawn_turned_along_its_stitching_line() {
    step_drawn(
        "- press: [front, flat]",
        "- {hem: skirt.hem, allowance: 2 cm, stitch: 2.5 mm}",
        |compiled| {
            let figure = Drawing::read(drawn(compiled, 0, "it"));
            let shape = compiled.editions()[0].values.shape(
                compiled.editions()[0]
                    .cast
                    .copies()
                    .last()
                    .expect("the skirt")
                    .1
                    .piece,
            );
            let shape = shape.expect("its shape");
            let hem = shape.edge("hem").expect("its hem");
            let piece = &figure.all("wrong-side")[0];
            // The lowest point of what is seen is that of the stitching line, not of the cut.
            let (top, low) = (piece.bounding_box().y0, piece.bounding_box().y1);
            let cut = shape.cutting().bounds().y0;
            let seam = hem.seam.segments().map(|run| {
                (0..=20)
                    .map(|at| run.eval(f64::from(at) / 20.0).y)
                    .fold(0.0, f64::max)
            });
            let seam = seam.fold(0.0, f64::max);
            assert!(
                ((low - top) * figure.scale - (seam - cut)).abs() < 1.5,
                "{} against {}",
                (low - top) * figure.scale,
                seam - cut
            );
            let band = figure.all("right-side")[0].area().abs() * figure.scale * figure.scale;
            let meant = hem.seam_length * 20.0;
            assert!(
                (band - meant).abs() < meant * 0.12,
                "the band is {band} mm², not {meant}"
            );
            assert!(!figure.all("stitch").is_empty());
        },
    );
}

#[test]
fn a_gap_is_closed_once_the_thing_is_turned_out() {
    let before = "- {sew: [front.left, back.left], allowance: seam, stitch: 2.5 mm}\n- {sew: [front.top, back.top], allowance: seam, stitch: 2.5 mm}\n- {sew: [front.right, back.right], allowance: seam, stitch: 2.5 mm}\n- {sew: [front.bottom, back.bottom], allowance: seam, stitch: 2.5 mm, leave: 10 cm}\n- turn: [front, right side out]";
    for work in [
        "- {close: front.bottom, by: hand}",
        "- {close: front, by: hand}",
    ] {
        step_drawn(before, work, |compiled| {
            let figure = Drawing::read(drawn(compiled, 0, "it"));
            same(
                "the front, its allowances inside",
                figure.first("right-side").width() * figure.scale,
                280.0,
            );
            same(
                "the gap",
                figure.last("stitch").width() * figure.scale,
                100.0,
            );
        });
    }
}

/// What is said of a step that cannot be drawn.
fn step_refused(work: &str) -> Vec<String> {
    let mut said = Vec::new();
    step(FACTS, "", work, |compiled| {
        said.extend(refused(compiled).into_iter().map(str::to_owned));
    });
    said
}

#[test]
fn a_row_is_stitched_along_its_marked_line() {
    step_drawn("", "- {topstitch: front.row, stitch: 3 mm}", |compiled| {
        for size in 0..2 {
            let figure = Drawing::read(drawn(compiled, size, "it"));
            let panel = figure.all("right-side")[0].bounding_box();
            let rows = figure.all("stitch");
            assert_eq!(rows.len(), 1, "one row and no other");
            let row = within(figure.scale, panel, rows[0].bounding_box());
            for (drawn, meant) in row.into_iter().zip([100.0, 50.0, 0.0, 250.0]) {
                same("the row on its line", drawn, meant);
            }
        }
    });
}

#[test]
fn a_strap_is_boxed_on_at_its_marks() {
    let work = "- {boxstitch: [strap.left, front.strap_place], stitch: 3 mm}\n- {boxstitch: [strap.right, front.other_place], stitch: 3 mm}";
    step_drawn("", work, |compiled| {
        let figure = Drawing::read(drawn(compiled, 0, "it"));
        let cloth = figure.all("right-side");
        assert_eq!(cloth.len(), 3, "the front and two ends of the strap");
        let panel = cloth[0].bounding_box();
        for (end, across) in cloth[1..].iter().zip([80.0, 200.0]) {
            let end = within(figure.scale, panel, end.bounding_box());
            for (drawn, meant) in end.into_iter().zip([across - 15.0, 45.0, 30.0, 30.0]) {
                same("the end on its mark", drawn, meant);
            }
        }
    });
}

#[test]
fn stitches_of_which_nothing_tells_where_they_run_are_not_drawn() {
    for (work, told) in [
        (
            "- {topstitch: [pocket, front], stitch: 3 mm}",
            "pocket lies on front",
        ),
        (
            "- {topstitch: [front, down the middle], stitch: 3 mm}",
            "along which line of front",
        ),
        (
            "- {topstitch: front.strap_place, stitch: 3 mm}",
            "along which line of front",
        ),
    ] {
        let refused = step_refused(work);
        assert!(
            refused.len() == 1 && refused[0].contains(told),
            "{work}: {refused:?}"
        );
    }
    assert!(step_refused("- {edgestitch: [pocket, all round], stitch: 3 mm}").is_empty());
}

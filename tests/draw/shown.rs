//! What holds for every drawn step of every demo, in its smallest and in its largest size.

use kurbo::{BezPath, ParamCurve as _, ParamCurveNearest as _, Point, Rect, Shape as _};
use notchbook::figure::{BoundFigure, fonts};
use notchbook::pipeline::Workshop;

use crate::{Drawing, counts, drawn, measure, same, words};

/// Everything that is drawn as cloth or lies on it.
const CLOTH: &[&str] = &[
    "right-side",
    "wrong-side",
    "lining",
    "lining-wrong",
    "wadding",
    "interfacing",
    "binding",
    "zip",
    "felt",
    "foam",
    "fur",
    "leather",
    "webbing",
    "elastic",
    "hook-loop",
];

/// How far a row may lie beyond the edge of its cloth, in mm on paper: half the width of its line, and what the allowance
/// of a piece beneath stands out beyond the one on it.
const LINE: f64 = 0.9;

/// Looks at every drawn step of every demo in its first and its last size.
fn each_drawn(mut see: impl FnMut(&str, &Workshop, usize, &str, &BoundFigure, &usvg::Options<'_>)) {
    let mut seen = 0;
    counts::each_redrawn(|name, compiled| {
        let (database, _) = fonts(&compiled.house);
        let options = usvg::Options {
            fontdb: database,
            ..usvg::Options::default()
        };
        let last = compiled.sizes.len() - 1;
        for size in if last == 0 { vec![0] } else { vec![0, last] } {
            for (_, figure) in compiled.figures.of_size(size) {
                if let Some(step) = figure.path.strip_prefix("draw:work/") {
                    seen += 1;
                    see(name, compiled, size, step, figure, &options);
                }
            }
        }
    });
    assert!(seen > 150, "only {seen} drawings were looked at");
}

/// The points of a path, close together.
fn along(path: &BezPath) -> Vec<Point> {
    let points = path.segments().flat_map(|run| {
        (0..=8)
            .map(move |at| run.eval(f64::from(at) / 8.0))
            .collect::<Vec<_>>()
    });
    points.collect()
}

fn is_on(cloth: &[&BezPath], point: Point) -> bool {
    cloth.iter().any(|shape| {
        shape.contains(point)
            || shape
                .segments()
                .any(|side| side.nearest(point, 0.01).distance_sq < LINE * LINE)
    })
}

/// Rows of stitches that run off the cloth.
fn off_cloth(drawing: &Drawing) -> Vec<String> {
    let cloth = CLOTH.iter().filter_map(|class| drawing.paths.get(*class));
    let cloth: Vec<&BezPath> = cloth.flatten().collect();
    let first_off = |class: &&str| {
        let rows = drawing.paths.get(*class).into_iter().flatten();
        let far = rows.flat_map(along).find(|point| !is_on(&cloth, *point));
        far.map(|point| format!("{class} runs off at {point:?}"))
    };
    ["stitch", "stitched"]
        .iter()
        .filter_map(first_off)
        .collect()
}

/// Whether a step is shown with a needle, and does nothing by hand.
fn is_sewn_by_machine(compiled: &Workshop, size: usize, step: &str, figure: &BoundFigure) -> bool {
    let edition = &compiled.editions()[size];
    let mut steps = edition.steps();
    let own = steps.find(|own| own.step.id.as_ref().is_some_and(|id| id.text == step));
    let by_hand = own.is_some_and(|own| own.works.iter().any(|work| work.work.by_hand));
    figure.symbols.contains(&"needle") && !by_hand
}

/// Words that stand apart from all that is drawn. Below everything stands what is said of the whole; anything else
/// touches a shape or its leader, or stands by one at the height of a line.
fn stray(drawing: &Drawing, figure: &BoundFigure, options: &usvg::Options<'_>) -> Vec<String> {
    let tree = usvg::Tree::from_str(&figure.svg, options).expect("a drawing");
    let mut boxes = Vec::new();
    words(tree.root(), &mut boxes);
    // The words are told in pixels, the shapes in mm.
    let to_mm = figure.width / f64::from(tree.size().width());
    let boxes = boxes.iter().map(|own| {
        Rect::new(
            own.x0 * to_mm,
            own.y0 * to_mm,
            own.x1 * to_mm,
            own.y1 * to_mm,
        )
    });
    let boxes: Vec<Rect> = boxes.collect();
    let all = drawing.paths.values().flatten();
    let shapes: Vec<Rect> = all.map(|path| path.bounding_box()).collect();
    let low = shapes.iter().map(|shape| shape.y1).fold(f64::MIN, f64::max);
    let near = |own: &Rect| {
        shapes
            .iter()
            .any(|shape| shape.inflate(6.0, 4.5).overlaps(*own))
    };
    let apart = boxes.iter().filter(|own| own.y0 < low && !near(own));
    apart
        .map(|own| format!("words stand apart at {own:?}"))
        .collect()
}

#[test]
fn stitches_keep_to_their_cloth_needles_to_the_hand_and_words_to_what_they_name() {
    let mut wrong = Vec::new();
    let mut needles = 0;
    each_drawn(|name, compiled, size, step, figure, options| {
        let drawing = Drawing::read(figure);
        let mut found = off_cloth(&drawing);
        // Under each of several frames stand words of its own.
        if !drawing.words.iter().any(|words| words == "2") {
            found.extend(stray(&drawing, figure, options));
        }
        needles += usize::from(figure.symbols.contains(&"needle"));
        if is_sewn_by_machine(compiled, size, step, figure) {
            found.push("a needle, and nothing is by hand".into());
        }
        let own = found.into_iter();
        wrong.extend(own.map(|fault| format!("{name} {} {step}: {fault}", compiled.sizes[size])));
    });
    assert!(needles > 3, "only {needles} needles");
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// How many lines of a class slant at 45 degrees.
fn slanting(drawing: &Drawing, class: &str) -> usize {
    let rows = drawing.paths.get(class).into_iter().flatten();
    let is_slanting = |path: &&BezPath| {
        let room = path.bounding_box();
        path.segments().count() == 1
            && room.width() > 1.0
            && (room.width() - room.height()).abs() < 0.05
    };
    rows.filter(is_slanting).count()
}

#[test]
fn quilting_is_seen_in_every_step_after_it_was_sewn() {
    let mut seen = 0;
    counts::redrawn_where(
        |name| name == "harbour-lunch-bag",
        |_, compiled| {
            for size in [0, compiled.sizes.len() - 1] {
                let gap = measure(compiled, size, "quilt_gap");
                let quilt = Drawing::read(drawn(compiled, size, "quilt-panels"));
                assert!(slanting(&quilt, "stitch") > 3, "the panels are quilted");
                let marked = Drawing::read(drawn(compiled, size, "mark-quilting"));
                assert!(slanting(&marked, "mark") > 3, "the panels are marked");
                for drawing in [&quilt, &marked] {
                    let class = if drawing.paths.contains_key("mark") {
                        "mark"
                    } else {
                        "stitch"
                    };
                    let mut across: Vec<f64> = drawing
                        .all(class)
                        .iter()
                        .map(|row| {
                            let [from, ..] = along(row)[..] else {
                                panic!("a row")
                            };
                            (from.x + from.y) * std::f64::consts::FRAC_1_SQRT_2
                        })
                        .collect();
                    across.sort_by(f64::total_cmp);
                    let apart = (across[1] - across[0]) * drawing.scale;
                    same("from one line to the next", apart, gap);
                }
                for step in [
                    "cut-body",
                    "baste-edges",
                    "mark-notches",
                    "zip-front",
                    "topstitch-front",
                    "zip-back",
                    "topstitch-back",
                    "baste-loop",
                    "side-seams",
                    "base-outer",
                    "box-outer",
                    "turn-out",
                    "shape-bag",
                ] {
                    let drawing = Drawing::read(drawn(compiled, size, step));
                    assert!(
                        slanting(&drawing, "stitched") > 1,
                        "{step} leaves out the quilting"
                    );
                    seen += 1;
                }
            }
        },
    );
    assert_eq!(seen, 26);
}

#[test]
fn quilting_runs_as_its_words_say() {
    counts::redrawn_where(
        |name| name == "lantern-cushion",
        |_, compiled| {
            let front = Drawing::read(drawn(compiled, 0, "quilt"));
            for rib in front.all("stitch") {
                let room = rib.bounding_box();
                assert!(
                    room.height() < 0.05 && room.width() > 20.0,
                    "a rib is level: {room:?}"
                );
            }
        },
    );
}

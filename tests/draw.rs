//! Steps that the compiler draws, looked at from outside: the lines lie where the facts say, the
//! pieces have their true proportions, and every word stands by itself inside the frame.

#[path = "outside/bench.rs"]
mod bench;
#[path = "draw/counts.rs"]
mod counts;
#[path = "support/crossed.rs"]
mod crossed;
#[path = "draw/gaps.rs"]
mod gaps;
#[path = "draw/laid.rs"]
mod laid;
#[path = "draw/lens.rs"]
mod lens;
#[path = "draw/looks.rs"]
mod looks;
#[path = "draw/lying.rs"]
mod lying;
#[path = "draw/made.rs"]
mod made;
#[path = "draw/placed.rs"]
mod placed;
#[path = "draw/said.rs"]
mod said;
#[path = "draw/shown.rs"]
mod shown;
#[path = "draw/taken.rs"]
mod taken;
#[path = "draw/thing.rs"]
mod thing;
#[path = "draw/told.rs"]
mod told;
#[path = "draw/whole.rs"]
mod whole;

use std::collections::BTreeMap;
use std::sync::Arc;

use bench::{demo, root, written};
use kurbo::{BezPath, Rect, Shape as _};
use notchbook::figure::{BoundFigure, fonts};
use notchbook::pipeline::Workshop;

const BOOKLET: &str = "harbour-lunch-bag";
/// The steps of the demo that are drawn, each with the classes and symbols that it must show.
const STEPS: &[(&str, &[&str], &[&str])] = &[
    (
        "cut-lining",
        &["lining", "cut-line", "dimension"],
        &["grain"],
    ),
    (
        "cut-small",
        &["right-side", "lining", "interfacing", "dimension"],
        &[],
    ),
    (
        "fuse-wadding",
        &["right-side", "wrong-side", "wadding"],
        &["iron"],
    ),
    ("fuse-loop", &["wrong-side", "interfacing"], &["iron"]),
    ("sew-tabs", &["lining", "wrong-side", "zip", "stitch"], &[]),
    ("baste-edges", &["right-side", "stitch"], &[]),
    (
        "zip-front",
        &[
            "right-side",
            "lining",
            "lining-wrong",
            "zip",
            "stitch",
            "notch",
        ],
        &[],
    ),
    (
        "topstitch-front",
        &["right-side", "lining-wrong", "zip", "stitch"],
        &["zip-slider"],
    ),
    (
        "topstitch-back",
        &["right-side", "lining-wrong", "zip", "stitch", "stitched"],
        &["zip-slider"],
    ),
    (
        "base-outer",
        &["right-side", "wadding", "stitch", "stitched", "notch"],
        &[],
    ),
    (
        "base-lining",
        &["lining", "lining-wrong", "stitch", "stitched", "dimension"],
        &[],
    ),
    (
        "box-outer",
        &["wadding", "stitch", "stitched", "arrow", "dimension"],
        &[],
    ),
];

/// A drawn step, read again.
struct Drawing {
    /// Millimetres of cloth for one on paper.
    scale: f64,
    /// Paths and lines by class, in the order of the drawing.
    paths: BTreeMap<String, Vec<BezPath>>,
    words: Vec<String>,
}

impl Drawing {
    fn read(figure: &BoundFigure) -> Drawing {
        let document = roxmltree::Document::parse(&figure.svg).expect("well-formed");
        let scale = document
            .root_element()
            .attribute("data-scale")
            .expect("its scale");
        let scale = scale
            .strip_prefix("1:")
            .and_then(|scale| scale.parse().ok())
            .expect("a scale of 1 to so many");
        let mut drawing = Drawing {
            scale,
            paths: BTreeMap::new(),
            words: Vec::new(),
        };
        // The house's patterns and symbols are no part of what was drawn.
        for node in document
            .root_element()
            .children()
            .filter(|node| node.is_element())
        {
            if let Some((class, data)) = node.attribute("class").zip(node.attribute("d")) {
                let path = BezPath::from_svg(data).expect("path data");
                drawing
                    .paths
                    .entry(class.to_owned())
                    .or_default()
                    .push(path);
            }
            if node.has_tag_name(("http://www.w3.org/2000/svg", "text")) {
                let lines = node.descendants().filter(|one| one.is_text());
                let lines: Vec<&str> = lines.filter_map(|one| one.text()).collect();
                drawing.words.push(lines.join(" "));
            }
        }
        drawing
    }

    fn all(&self, class: &str) -> &[BezPath] {
        let found = self.any(class);
        assert!(!found.is_empty(), "nothing of class {class}");
        found
    }

    /// The same, where there may be none.
    fn any(&self, class: &str) -> &[BezPath] {
        self.paths.get(class).map_or(&[], Vec::as_slice)
    }

    fn first(&self, class: &str) -> Rect {
        self.all(class)[0].bounding_box()
    }

    fn last(&self, class: &str) -> Rect {
        self.all(class).last().expect("one of it").bounding_box()
    }
}

fn drawn<'a>(compiled: &'a Workshop, size: usize, step: &str) -> &'a BoundFigure {
    let path = format!("draw:work/{step}");
    let mut found = compiled.figures.of_size(size).map(|(_, figure)| figure);
    found
        .find(|figure| figure.path == path)
        .unwrap_or_else(|| panic!("{step} is not drawn"))
}

fn each_size(see: impl Fn(&Workshop, usize)) {
    demo(BOOKLET, |compiled| {
        (0..compiled.sizes.len()).for_each(|size| see(compiled, size))
    });
}

/// Two lengths of cloth agree to a tenth of a millimetre.
#[track_caller]
fn same(what: &str, drawn: f64, meant: f64) {
    assert!(
        (drawn - meant).abs() <= 0.1,
        "{what}: {drawn:.3} mm is drawn, {meant:.3} mm is meant"
    );
}

/// A measurement of the booklet, in mm.
fn measure(compiled: &Workshop, size: usize, name: &str) -> f64 {
    let worked = compiled.editions()[size]
        .values
        .get(name)
        .expect("a measurement");
    notchbook::measure::to_f64(worked.quantity.value)
}

#[test]
fn drawn_steps_show_what_they_are_about() {
    each_size(|compiled, size| {
        for (step, classes, symbols) in STEPS {
            let figure = drawn(compiled, size, step);
            for class in *classes {
                assert!(
                    figure.classes.contains(class),
                    "{step}: no {class} in {:?}",
                    figure.classes
                );
            }
            for symbol in *symbols {
                assert!(
                    figure.symbols.contains(symbol),
                    "{step}: no {symbol} in {:?}",
                    figure.symbols
                );
            }
            assert!(
                (figure.width - 76.0).abs() < 0.1,
                "{step} is {} mm wide",
                figure.width
            );
            assert!(
                (35.9..=62.1).contains(&figure.height),
                "{step} is {} mm high",
                figure.height
            );
        }
    });
}

#[test]
fn seams_lie_at_their_allowance() {
    each_size(|compiled, size| {
        let zip = Drawing::read(drawn(compiled, size, "zip-front"));
        let far = (zip.first("stitch").y0 - zip.first("right-side").y0) * zip.scale;
        same("zip-front", far, measure(compiled, size, "zip_seam"));
        let base = Drawing::read(drawn(compiled, size, "base-outer"));
        let far = (base.first("right-side").y1 - base.first("stitch").y1) * base.scale;
        same("base-outer", far, measure(compiled, size, "seam"));
        let tabs = Drawing::read(drawn(compiled, size, "sew-tabs"));
        let far = (tabs.first("stitch").x0 - tabs.first("lining").x0) * tabs.scale;
        same("sew-tabs", far, measure(compiled, size, "seam"));
    });
}

#[test]
fn seams_run_from_edge_to_edge() {
    each_size(|compiled, size| {
        let zip = Drawing::read(drawn(compiled, size, "zip-front"));
        let (seam, cloth) = (zip.first("stitch"), zip.first("right-side"));
        same("its start", (seam.x0 - cloth.x0) * zip.scale, 0.0);
        same("its end", (seam.x1 - cloth.x1) * zip.scale, 0.0);
        let base = Drawing::read(drawn(compiled, size, "base-outer"));
        let corner = measure(compiled, size, "corner");
        let wide = measure(compiled, size, "cut_width") - 2.0 * corner;
        same("the base", base.first("stitch").width() * base.scale, wide);
    });
}

#[test]
fn stitching_beside_an_edge_keeps_its_distance() {
    each_size(|compiled, size| {
        let meant = measure(compiled, size, "edge_stitch");
        let front = Drawing::read(drawn(compiled, size, "topstitch-front"));
        // The front is drawn last, over the zip and its tabs.
        let far = (front.first("stitch").y0 - front.last("right-side").y0) * front.scale;
        same("topstitch-front", far, meant);
        let round = Drawing::read(drawn(compiled, size, "baste-edges"));
        let (line, cloth) = (round.first("stitch"), round.first("right-side"));
        for far in [
            line.x0 - cloth.x0,
            line.y0 - cloth.y0,
            cloth.x1 - line.x1,
            cloth.y1 - line.y1,
        ] {
            same("baste-edges", far * round.scale, meant);
        }
    });
}

#[test]
fn a_gap_is_as_long_as_it_is_left() {
    each_size(|compiled, size| {
        let base = Drawing::read(drawn(compiled, size, "base-lining"));
        let stretches = base.all("stitch");
        assert_eq!(stretches.len(), 2, "a seam at each side of the gap");
        let (one, other) = (stretches[0].bounding_box(), stretches[1].bounding_box());
        let gap = one.x0.max(other.x0) - one.x1.min(other.x1);
        same("the gap", gap * base.scale, measure(compiled, size, "gap"));
        assert!(
            base.words
                .iter()
                .any(|words| words.starts_with("leave ") && words.ends_with(" open")),
            "{:?}",
            base.words
        );
    });
}

#[test]
fn pieces_keep_their_proportions() {
    each_size(|compiled, size| {
        let (wide, high) = (
            measure(compiled, size, "cut_width"),
            measure(compiled, size, "cut_height"),
        );
        for (step, class) in [
            ("cut-lining", "lining"),
            ("baste-edges", "right-side"),
            ("zip-front", "right-side"),
        ] {
            let drawing = Drawing::read(drawn(compiled, size, step));
            let piece = drawing.first(class);
            same(step, piece.width() * drawing.scale, wide);
            same(step, piece.height() * drawing.scale, high);
        }
        let small = Drawing::read(drawn(compiled, size, "cut-small"));
        let strip = small.first("interfacing");
        same(
            "the strip",
            strip.width() * small.scale,
            measure(compiled, size, "strip_length"),
        );
        same(
            "the strip",
            strip.height() * small.scale,
            measure(compiled, size, "strip_width"),
        );
        let tab = small.last("lining");
        same(
            "a tab",
            tab.width() * small.scale,
            measure(compiled, size, "tab_length"),
        );
        same(
            "a tab",
            tab.height() * small.scale,
            measure(compiled, size, "tab_width"),
        );
    });
}

#[test]
fn a_boxed_corner_is_as_long_as_the_bag_is_deep() {
    each_size(|compiled, size| {
        let corner = Drawing::read(drawn(compiled, size, "box-outer"));
        same(
            "the corner",
            corner.first("stitch").width() * corner.scale,
            measure(compiled, size, "depth"),
        );
    });
}

/// What is wrong with the words of a drawing: those that leave its frame, and those that lie over others, over stitches, cuts or
/// arrows.
fn crowded(figure: &BoundFigure, database: &Arc<usvg::fontdb::Database>) -> Vec<String> {
    let options = usvg::Options {
        fontdb: database.clone(),
        ..usvg::Options::default()
    };
    let tree = usvg::Tree::from_str(&figure.svg, &options).expect("a drawing");
    let mut boxes = Vec::new();
    words(tree.root(), &mut boxes);
    let frame = Rect::new(
        0.0,
        0.0,
        f64::from(tree.size().width()),
        f64::from(tree.size().height()),
    );
    let mut wrong = Vec::new();
    let drawing = Drawing::read(figure);
    let lines = ["stitch", "cut-line", "arrow"].map(|class| drawing.any(class));
    for (at, one) in boxes.iter().enumerate() {
        // Boxes are in pixels, and reach higher than most letters.
        let letters = one.inset(-0.2 * one.height().min(one.width()));
        let to_mm = figure.width / f64::from(tree.size().width());
        let letters = kurbo::Affine::scale(to_mm).transform_rect_bbox(letters);
        if lines
            .iter()
            .flat_map(|all| all.iter())
            .any(|line| crosses(line, letters))
        {
            wrong.push(format!("{}: a line strikes {one:?}", figure.path));
        }
        if !frame.contains_rect(*one) {
            wrong.push(format!("{}: {one:?} leaves {frame:?}", figure.path));
        }
        for other in &boxes[at + 1..] {
            // Boxes reach from the highest letter of the type to the lowest: lines may share a little.
            let shared = one.intersect(*other);
            if shared.width() > 0.5 && shared.height() > 0.3 * one.height() {
                wrong.push(format!("{}: {one:?} lies over {other:?}", figure.path));
            }
        }
    }
    wrong
}

#[test]
fn words_stand_apart_and_inside_the_frame() {
    each_size(|compiled, size| {
        let (database, _) = fonts(&compiled.house);
        for (step, ..) in STEPS {
            let figure = drawn(compiled, size, step);
            assert!(figure.svg.contains("<text"), "{step} has no words");
            assert_eq!(crowded(figure, &database), [""; 0], "size {size}");
        }
    });
}

#[test]
fn words_stand_apart_on_every_step_of_every_demo() {
    let mut seen = 0;
    let mut wrong = Vec::new();
    counts::each_redrawn(|name, compiled| {
        let (database, _) = fonts(&compiled.house);
        for (size, of) in compiled.sizes.iter().enumerate() {
            let figures = compiled.figures.of_size(size).map(|(_, figure)| figure);
            for figure in figures.filter(|figure| figure.path.starts_with("draw:")) {
                seen += 1;
                let found = crowded(figure, &database).into_iter();
                wrong.extend(found.map(|fault| format!("{name}, {of}: {fault}")));
            }
        }
    });
    assert!(seen > 250, "only {seen} drawings were looked at");
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// Whether a line comes into a box.
fn crosses(line: &BezPath, room: Rect) -> bool {
    let mut inside = false;
    for segment in line.segments() {
        let count = 40;
        inside |= (0..=count).any(|at| {
            let point = kurbo::ParamCurve::eval(&segment, f64::from(at) / f64::from(count));
            room.contains(point)
        });
    }
    inside
}

fn words(group: &usvg::Group, boxes: &mut Vec<Rect>) {
    for node in group.children() {
        match node {
            usvg::Node::Group(inner) => words(inner, boxes),
            usvg::Node::Text(text) => {
                let bounds = text.abs_bounding_box();
                let side = f64::from;
                boxes.push(Rect::new(
                    side(bounds.left()),
                    side(bounds.top()),
                    side(bounds.right()),
                    side(bounds.bottom()),
                ));
            }
            _ => {}
        }
    }
}

#[test]
fn the_same_booklet_gives_the_same_drawings() {
    let all = || {
        demo(BOOKLET, |compiled| {
            let sizes = 0..compiled.sizes.len();
            let figures = sizes.flat_map(|size| STEPS.iter().map(move |(step, ..)| (size, step)));
            figures
                .map(|(size, step)| drawn(compiled, size, step).svg.clone())
                .collect::<Vec<_>>()
        })
    };
    assert_eq!(all(), all());
}

/// The demo booklet with the hand-drawn diagram of one step given up for a drawn one.
fn redrawn<R>(part: &str, file: &str, then: impl FnOnce(&Workshop) -> R) -> R {
    let home = root().join("booklets").join(BOOKLET);
    let mut files = Vec::new();
    for folder in ["", "figures"] {
        for entry in std::fs::read_dir(home.join(folder)).expect("the demo booklet") {
            let path = entry.expect("an entry").path();
            if path.is_file() {
                let name = path
                    .strip_prefix(&home)
                    .expect("inside")
                    .to_string_lossy()
                    .into_owned();
                files.push((name, std::fs::read_to_string(&path).expect("a text")));
            }
        }
    }
    let mention = format!("](figures/{file})");
    let text = files
        .iter_mut()
        .find(|(name, _)| name == part)
        .map(|(_, text)| text)
        .expect("the part");
    assert!(text.contains(&mention), "{part} does not mention {file}");
    *text = text.replace(&mention, "](draw:work)");
    let files: Vec<(&str, &str)> = files
        .iter()
        .map(|(name, text)| (name.as_str(), text.as_str()))
        .collect();
    written(&files, then)
}

#[test]
fn what_was_sewn_before_is_opened_out_at_its_seam() {
    redrawn("sides-and-base.md", "side-seams.svg", |compiled| {
        for size in 0..compiled.sizes.len() {
            let sides = Drawing::read(drawn(compiled, size, "side-seams"));
            let (outer, lining) = (sides.last("wadding"), sides.last("lining-wrong"));
            same("the joint", (outer.y0 - lining.y1) * sides.scale, 0.0);
            same("the sides", (outer.x0 - lining.x0) * sides.scale, 0.0);
            let seam = measure(compiled, size, "seam");
            let seams: Vec<Rect> = sides
                .all("stitch")
                .iter()
                .map(BezPath::bounding_box)
                .collect();
            assert_eq!(
                seams.len(),
                4,
                "both sides of the outer bag and of its lining"
            );
            for line in seams {
                let near = (line.x0 - outer.x0).min(outer.x1 - line.x1);
                same("a side seam", near * sides.scale, seam);
            }
        }
    });
}

const SHAPED: &str = "title: Skirt
edition: 1.0.0
sizes: {m: Medium}
measurements:
  seam: 1.5 cm (5/8 in)
fabrics:
  outer: {name: Cotton, widths: [140 cm], amount: [2 m]}
notions:
  thread: {kind: thread, name: Sewing thread}
  buttons: {kind: button, name: Flat button, size: 20 mm (3/4 in), count: 5}
  elastic: {kind: elastic, name: Soft elastic, width: 2 cm (3/4 in), length: 20 cm (7 7/8 in)}
pieces:
  back:
    outline: {rectangle: [28 cm, 55 cm]}
    drawn: stitching
    allowance: {all: seam, bottom: 4 cm}
    raw: all
    darts:
      first: {edge: top, at: 9 cm, width: 2.5 cm, length: 12 cm, laid: to centre}
      second: {edge: top, at: 17 cm, width: 2.5 cm, length: 10 cm, laid: to centre}
    marks:
      buttons: {line: [[2 cm, 15 cm], [2 cm, 50 cm]], count: 5, each: 22 mm}
      slit: {line: [[20 cm, 57 cm], [20 cm, 45 cm]]}
    cut: {outer: [left_back, right_back]}
  strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
  patch: {outline: {rectangle: [8 cm, 8 cm]}, raw: all, cut: {outer: 1}}
parts: [make.md]
";

/// One step behind the cutting and the sewing of darts, drawn from its work.
fn step_drawn(work: &str, then: impl FnOnce(&Workshop)) {
    let darts = "- {dart: [left_back, right_back], stitch: 2.5 mm}";
    made::step(SHAPED, darts, work, then);
}

#[test]
fn a_dart_that_was_sewn_is_drawn_closed() {
    step_drawn(
        "- {hem: left_back.bottom, allowance: 4 cm, stitch: 2.5 mm}",
        |compiled| {
            let hem = Drawing::read(drawn(compiled, 0, "it"));
            let piece = &hem.all("wrong-side")[0];
            let points: Vec<kurbo::Point> = piece
                .segments()
                .map(|segment| kurbo::ParamCurve::start(&segment))
                .collect();
            let bounds = piece.bounding_box();
            let wide = |from: f64, to: f64| {
                let row = points
                    .iter()
                    .filter(|point| point.y >= from && point.y <= to)
                    .map(|point| point.x);
                let (least, most) = row.fold((f64::MAX, f64::MIN), |(least, most), x| {
                    (least.min(x), most.max(x))
                });
                (most - least) * hem.scale
            };
            // The allowances at both sides come on top; both darts take 25 mm out of the seam, and a little more where
            // their legs run on through the allowance.
            let top = wide(bounds.y0 - 0.1, bounds.y0 + 0.3);
            let open = 280.0 + 30.0;
            let taken = 25.0 * (1.0 + 15.0 / 120.0) + 25.0 * (1.0 + 15.0 / 100.0);
            assert!((top - (open - taken)).abs() < 1.0, "{top} mm at the top");
            assert!(
                (wide(bounds.y1 - 0.3, bounds.y1 + 0.1) - open).abs() < 0.5,
                "the hem is as it was"
            );
            assert_eq!(hem.all("stitched").len(), 2, "both darts");
        },
    );
}

#[test]
fn every_verb_of_stitches_and_trimmings_is_drawn_from_its_facts() {
    let cases: &[(&str, &str)] = &[
        ("- finish: left_back.left\n  by: overlock", "stitch"),
        (
            "- {edgestitch: left_back.left, allowance: 2 mm, stitch: 2.5 mm}",
            "stitch",
        ),
        (
            "- {understitch: left_back.left, allowance: 2 mm, stitch: 2.5 mm}",
            "stitch",
        ),
        (
            "- {boxstitch: [strap.left, left_back], stitch: 2.5 mm}",
            "stitch",
        ),
        ("- {applique: [patch, left_back], stitch: 1 mm}", "stitch"),
        (
            "- lap: [left_back.top, right_back.top]\n  by: 3 cm",
            "dimension",
        ),
        ("- grade: left_back.left", "cut-line"),
        ("- slash: left_back.slit", "cut-line"),
        ("- buttonhole: left_back.buttons", "cut-line"),
        (
            "- {button: [buttons, left_back.buttons], by: hand}",
            "stitch",
        ),
        ("- insert: [elastic, left_back.bottom]", "elastic"),
    ];
    for (work, class) in cases {
        step_drawn(work, |compiled| {
            assert_eq!(made::refused(compiled), [""; 0], "{work}");
            let figure = drawn(compiled, 0, "it");
            assert!(
                figure.svg.contains(&format!("class=\"{class}\"")),
                "{work}: {}",
                figure.svg
            );
        });
    }
}

#[test]
fn what_cannot_be_drawn_names_what_is_missing() {
    step_drawn("- {buttonhole: left_back.left, count: 5}", |compiled| {
        let mut told = compiled.report.findings.iter();
        let told = told
            .find(|finding| finding.code() == "figure-not-drawable")
            .expect("a finding");
        assert!(told.message.contains("left back"), "{}", told.message);
        assert!(told.hint.contains("marks:"), "{:?}", told.hint);
    });
}

//! What is too small on paper stands magnified beside the drawing, and works that are not alike stand in frames.

use kurbo::{BezPath, PathEl, Rect, Shape as _};
use notchbook::pipeline::Workshop;

use crate::counts::redrawn_where;
use crate::{Drawing, drawn, measure, same};

fn each_size_of(booklet: &str, see: impl Fn(&Workshop, usize)) {
    let mut seen = 0;
    redrawn_where(
        |name| name == booklet,
        |_, compiled| {
            for size in 0..compiled.sizes.len() {
                see(compiled, size);
                seen += 1;
            }
        },
    );
    assert!(seen > 0, "{booklet}");
}

/// What a lens holds: the paths of its group, by class.
fn magnified(compiled: &Workshop, size: usize, step: &str) -> Vec<(String, BezPath)> {
    let figure = drawn(compiled, size, step);
    let document = roxmltree::Document::parse(&figure.svg).expect("well-formed");
    let groups = document
        .root_element()
        .children()
        .filter(|node| node.has_tag_name("g"));
    let paths = groups.flat_map(|group| group.children().collect::<Vec<_>>());
    let paths = paths.filter_map(|node| node.attribute("class").zip(node.attribute("d")));
    paths
        .map(|(class, data)| {
            let path = BezPath::from_svg(data).expect("path data");
            (class.to_owned(), path)
        })
        .collect()
}

fn of<'p>(paths: &'p [(String, BezPath)], class: &str) -> Vec<&'p BezPath> {
    let found = paths.iter().filter(|(own, _)| own == class);
    found.map(|(_, path)| path).collect()
}

fn round(path: &BezPath) -> Rect {
    path.bounding_box()
}

#[test]
fn a_lens_shows_the_distance_that_is_too_small_on_paper() {
    each_size_of("orchard-apron", |compiled, size| {
        let whole = Drawing::read(drawn(compiled, size, "strap-stitch"));
        let inside = magnified(compiled, size, "strap-stitch");
        let [ring] = whole.all("lens") else {
            panic!("one ring on the whole")
        };
        let rims = of(&inside, "lens");
        let [rim] = rims[..] else {
            panic!("one lens beside it")
        };
        let more = round(rim).width() / round(ring).width();
        assert!(more > 1.0, "it is no larger");
        assert!(!of(&inside, "stitch").is_empty(), "no stitching in it");
        // The stretch that it measures is the distance of the fact, on cloth.
        let stretches = of(&inside, "dimension");
        let ends: Vec<_> = stretches[0]
            .elements()
            .iter()
            .filter_map(PathEl::end_point)
            .collect();
        let far = ends[0].distance(ends[1]);
        assert!(far >= 4.0, "{far:.1} mm on paper is too small still");
        let meant = measure(compiled, size, "edge_gap");
        same("the distance", far / more * whole.scale, meant);
        for (class, path) in &inside {
            let out = round(path).union(round(rim)).width() - round(rim).width();
            assert!(out < 0.1, "{class} stands {out:.2} mm out of the lens");
        }
    });
}

#[test]
fn nothing_is_magnified_where_the_step_is_about_no_small_distance() {
    each_size_of("orchard-apron", |compiled, size| {
        for step in ["cut", "pocket-press", "finish"] {
            let whole = Drawing::read(drawn(compiled, size, step));
            assert!(!whole.paths.contains_key("lens"), "{step}");
        }
    });
}

#[test]
fn works_that_are_not_alike_stand_in_numbered_frames() {
    let steps: [(&str, &str, &[&str]); 3] = [
        ("loamfield-mole", "paws", &["stitch", "cut-line"]),
        ("loamfield-mole", "clip", &["cut-line"]),
        ("millpond-pinafore", "pocket-hem", &["stitch", "arrow"]),
    ];
    for (booklet, step, classes) in steps {
        each_size_of(booklet, |compiled, size| {
            let drawing = Drawing::read(drawn(compiled, size, step));
            for number in ["1", "2"] {
                let found = drawing.words.iter().filter(|words| *words == number);
                assert_eq!(found.count(), 1, "{step}: frame {number}");
            }
            for class in classes {
                assert!(!drawing.all(class).is_empty(), "{step}: {class}");
            }
        });
    }
}

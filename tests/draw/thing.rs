//! The finished thing: its measurements stand where the drawing is just as long, and it is that thing.

use notchbook::book::{Book, Shared, merge};
use notchbook::pipeline::Workshop;
use notchbook::sheets::SheetPaper;

use crate::{demo, written};

/// A drawing of a thing, read again.
struct Seen {
    scale: f64,
    svg: String,
}

impl Seen {
    fn of(book: &Book) -> Seen {
        let [thing] = &book.things[..] else {
            panic!("one thing, not {}", book.things.len())
        };
        let svg = book.drawings[&thing.drawing].svg.clone();
        let document = roxmltree::Document::parse(&svg).expect("well-formed");
        let scale = document
            .root_element()
            .attribute("data-scale")
            .and_then(|scale| scale.strip_prefix("1:"))
            .and_then(|scale| scale.parse().ok())
            .expect("a scale");
        Seen { scale, svg }
    }

    /// What was drawn of a class, without the definitions of the house.
    fn count(&self, class: &str) -> usize {
        let document = roxmltree::Document::parse(&self.svg).expect("well-formed");
        let drawn = document.root_element().children();
        drawn
            .filter(|node| node.attribute("class") == Some(class))
            .count()
    }

    fn words(&self) -> Vec<String> {
        let document = roxmltree::Document::parse(&self.svg).expect("well-formed");
        let words = document
            .descendants()
            .filter(|node| node.has_tag_name("text"));
        words
            .map(|node| {
                let all = node
                    .descendants()
                    .filter(|inner| inner.is_text())
                    .filter_map(|inner| inner.text());
                let whole: String = all.collect::<Vec<_>>().concat();
                whole.replace('\u{a0}', " ").trim().to_owned()
            })
            .collect()
    }

    /// How long the measuring lines are, level and upright, in mm of cloth.
    fn measured(&self) -> Vec<f64> {
        let document = roxmltree::Document::parse(&self.svg).expect("well-formed");
        let lines = document
            .root_element()
            .children()
            .filter(|node| node.attribute("class") == Some("dimension"));
        lines
            .map(|node| {
                let at = |name: &str| -> f64 {
                    node.attribute(name)
                        .and_then(|value| value.parse().ok())
                        .expect("a place")
                };
                let (across, down) = (at("x2") - at("x1"), at("y2") - at("y1"));
                across.hypot(down) * self.scale
            })
            .collect()
    }
}

fn book(compiled: &Workshop, size: &str) -> Book {
    let at = compiled
        .sizes
        .iter()
        .position(|known| known == size)
        .expect("the size");
    compiled.book(&compiled.editions()[at], SheetPaper::A4)
}

fn has(lengths: &[f64], wanted: f64) -> bool {
    lengths.iter().any(|length| (length - wanted).abs() < 2.5)
}

#[test]
fn a_bag_shows_its_zip_its_loop_and_its_three_measures() {
    demo("harbour-lunch-bag", |compiled| {
        let seen = Seen::of(&book(compiled, "medium"));
        let words = seen.words();
        for figure in ["25 cm (9⅞ in)", "12 cm (4¾ in)", "22 cm (8⅝ in)"] {
            assert!(
                words.iter().any(|word| word == figure),
                "{figure}: {words:?}"
            );
        }
        let lengths = seen.measured();
        assert!(has(&lengths, 250.0) && has(&lengths, 220.0), "{lengths:?}");
        assert!(seen.count("zip") > 0, "its zip");
    });
}

#[test]
fn an_apron_is_as_wide_and_as_long_as_it_is_finished() {
    demo("orchard-apron", |compiled| {
        for (size, wide, long) in [
            ("child_small", 440.0, 480.0),
            ("adult_medium", 760.0, 820.0),
        ] {
            let lengths = Seen::of(&book(compiled, size)).measured();
            assert!(
                has(&lengths, wide) && has(&lengths, long),
                "{size}: {lengths:?}"
            );
        }
    });
}

#[test]
fn a_dress_is_seen_from_the_front_and_from_the_back_with_all_its_buttons() {
    demo("millpond-pinafore", |compiled| {
        let seen = Seen::of(&book(compiled, "size_c"));
        let words = seen.words();
        for side in ["front", "back"] {
            assert!(words.iter().any(|word| word == side), "{side}: {words:?}");
        }
        // Five in the bodice and six in the skirt.
        assert_eq!(seen.count("nb-body"), 11);
        // Length of the skirt.
        assert!(has(&seen.measured(), 640.0));
    });
}

#[test]
fn the_ribs_of_a_cushion_are_as_many_as_its_words_say() {
    demo("lantern-cushion", |compiled| {
        let seen = Seen::of(&book(compiled, "medium"));
        let level = 400.0;
        assert!(has(&seen.measured(), level), "{:?}", seen.measured());
        assert!(seen.count("stitched") >= 7);
    });
}

#[test]
fn a_toy_stands_in_outline_as_long_as_it_is() {
    demo("loamfield-mole", |compiled| {
        let lengths = Seen::of(&book(compiled, "middle")).measured();
        assert!(has(&lengths, 240.0), "{lengths:?}");
    });
}

#[test]
fn a_pattern_for_several_things_shows_each_without_figures_of_one_size() {
    demo("mosslatch-knitting-set", |compiled| {
        let books: Vec<Book> = compiled
            .editions()
            .iter()
            .map(|edition| compiled.book(edition, SheetPaper::A4))
            .collect();
        let shared = Shared {
            map: None,
            over: &|_| None,
        };
        let all = merge(&books, shared).expect("a book of all");
        assert_eq!(all.things.len(), 2);
        for thing in &all.things {
            let svg = &all.drawings[&thing.drawing].svg;
            assert!(!svg.contains("class=\"dimension\""), "{}", thing.drawing);
        }
    });
}

const FACTS: &str = "\
title: Tide Pouch
edition: 1.0.0
sizes: {small: Small, large: Large}
measurements:
  width: [20 cm (7 7/8 in), 30 cm (11 7/8 in)]
fabrics:
  outer: {name: Canvas, widths: [112 cm]}
pieces:
  body:
    name: Body
    outline: {rectangle: [width, 10 cm]}
    allowance: 1 cm
    cut: {outer: [front, back]}
parts: [make.md]
";
const CUT: &str = "# Make\n\n## Cut {#cut}\n\n```work\n- cut: all\n```\n\nCut.\n";

#[test]
fn what_is_only_cut_is_no_thing_yet() {
    written(&[("booklet.yaml", FACTS), ("make.md", CUT)], |compiled| {
        assert!(book(compiled, "small").things.is_empty());
    });
    let sewn = format!(
        "{CUT}\n## Sew {{#sew}}\n\n```work\n- {{sew: [front.bottom, back.bottom], allowance: 1 cm}}\n```\n\nSew.\n"
    );
    written(&[("booklet.yaml", FACTS), ("make.md", &sewn)], |compiled| {
        let seen = Seen::of(&book(compiled, "small"));
        assert!(seen.words().contains(&"back".to_owned()), "both sides");
    });
}

#[test]
fn a_cover_with_formulas_follows_its_size() {
    let facts =
        format!("{FACTS}style: {{cover: cover.svg, cover_alt: The pouch, with its width}}\n");
    let drawing = |words: &str| {
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 76 44\" width=\"76mm\"><text class=\"label\" x=\"20\" y=\"20\">{words}</text></svg>"
        )
    };
    let files = |words: &str, then: &dyn Fn(&Workshop)| {
        let cover = drawing(words);
        written(
            &[
                ("booklet.yaml", &facts),
                ("make.md", CUT),
                ("cover.svg", &cover),
            ],
            |compiled| then(compiled),
        );
    };
    files("{width}", &|compiled| {
        for (size, figure) in [("small", "20"), ("large", "30")] {
            let book = book(compiled, size);
            assert!(book.cover.is_none());
            let svg = &book.drawings[&book.cover_drawn[0].drawing].svg;
            assert!(svg.contains(&format!(">{figure}\u{a0}cm")), "{size}: {svg}");
        }
    });
    files("as it is", &|compiled| {
        let book = book(compiled, "small");
        assert!(book.cover.is_some() && book.cover_drawn.is_empty());
    });
}

#[test]
fn pieces_stand_in_the_order_in_which_they_are_sewn_under_the_numbers_of_their_facts() {
    demo("loamfield-mole", |compiled| {
        let book = book(compiled, "middle");
        let drawn = book.pieces.pieces.iter();
        let told: Vec<(&str, usize)> = drawn
            .map(|piece| (piece.id.as_str(), piece.number))
            .collect();
        assert_eq!(
            told,
            [
                ("flank", 1),
                ("paw", 3),
                ("tail", 4),
                ("tag", 5),
                ("gusset", 2)
            ]
        );
    });
}

const BUCKET: &str = "\
title: Quayside Bucket
edition: 1.0.0
sizes: {small: Small, large: Large}
measurements:
  across: [18 cm (7 1/8 in), 24 cm (9 1/2 in)]
  high: [24 cm (9 1/2 in), 30 cm (11 7/8 in)]
  seam: 1 cm (3/8 in)
fabrics:
  outer: {name: Canvas, widths: [112 cm]}
notions:
  webbing: {kind: tape, name: Webbing, width: 3 cm, cut: {front_handle: {length: 40 cm}, back_handle: {length: 40 cm}}}
finished:
  Width of the base: across
  Height: high
pieces:
  wall:
    name: Wall
    outline: {rectangle: [WIDE, high]}
    drawn: stitching
    allowance: {all: seam, top: 2 * seam}
    cut: {outer: [front, back]}
  base:
    name: Base
    outline:
      path:
        - start: [0 cm, across / 2]
        - upper: {to: [across, across / 2], arc: across / 2, turn: right}
        - lower: {to: [0 cm, across / 2], arc: across / 2, turn: right}
    drawn: stitching
    allowance: seam
    cut: {outer: 1}
parts: [make.md]
";
const BUCKET_WORK: &str = "\
# Make

## Cut {#cut}

```work
- cut: all
```

Cut.

## Sew {#sew}

```work
- {sew: [front.left, back.right], allowance: seam, stitch: 2.5 mm}
- {sew: [front.right, back.left], allowance: seam, stitch: 2.5 mm}
- {sew: [front.bottom, back.bottom, base.upper, base.lower], allowance: seam, stitch: 2.5 mm}
- {hem: [front.top, back.top], allowance: 2 * seam, stitch: 2.5 mm}
- {attach: [front_handle.start, front_handle.end, front.top], stitch: 2.5 mm}
- {attach: [back_handle.start, back_handle.end, back.top], stitch: 2.5 mm}
```

Sew.
";

#[test]
fn a_bag_with_a_round_base_stands_on_it() {
    let facts = BUCKET.replace("WIDE", "pi * across / 2");
    written(
        &[("booklet.yaml", &facts), ("make.md", BUCKET_WORK)],
        |compiled| {
            for (size, across, high) in [("small", 180.0, 240.0), ("large", 240.0, 300.0)] {
                let seen = Seen::of(&book(compiled, size));
                let lengths = seen.measured();
                assert!(has(&lengths, across) && has(&lengths, high), "{lengths:?}");
                // It is seen once, its rim before its inside.
                assert!(!seen.words().contains(&"back".to_owned()));
                assert!(seen.count("wrong-side") == 1 && seen.count("webbing") == 2);
            }
        },
    );
}

/// A wall that does not reach round the base stands on none: it is drawn flat.
#[test]
fn a_wall_too_short_for_its_base_is_not_stood_on_it() {
    let facts = BUCKET.replace("WIDE", "across");
    written(
        &[("booklet.yaml", &facts), ("make.md", BUCKET_WORK)],
        |compiled| {
            let seen = Seen::of(&book(compiled, "small"));
            assert!(seen.words().contains(&"back".to_owned()));
        },
    );
}

const SKIRT: &str = "\
title: Sluice Skirt
edition: 1.0.0
sizes: {one: One size}
measurements: {seam: 15 mm}
fabrics:
  outer: {name: Linen, widths: [140 cm]}
pieces:
  skirt:
    name: Skirt
    outline: {rectangle: [40 cm, 50 cm]}
    drawn: stitching
    allowance: seam
    darts:
      one: {edge: top, at: 12 cm, width: 3 cm, length: 10 cm, laid: to centre}
      two: {edge: top, at: 12 cm from end, width: 3 cm, length: 10 cm, laid: to centre}
    cut: {outer: [front, back]}
  band:
    name: Band
    outline: {rectangle: [68 cm, 4 cm]}
    drawn: stitching
    allowance: seam
    cut: {outer: [waistband]}
parts: [make.md]
";
const SKIRT_WORK: &str = "\
# Make

## Cut {#cut}

```work
- cut: all
```

Cut.

## Sew {#sew}

```work
- {dart: [front, back], stitch: 2.5 mm}
- {sew: [front.left, back.right], allowance: seam, stitch: 2.5 mm}
- {sew: [front.right, back.left], allowance: seam, stitch: 2.5 mm}
- {sew: [front.top, back.top, waistband.bottom], allowance: seam, stitch: 2.5 mm}
```

Sew.
";

/// Where a dart is closed at a seam, the edge of the cloth lies at the stitching line and no lip of the dart above it: the
/// highest places of a piece are as high as its corners.
#[test]
fn no_dart_stands_out_above_a_waistband() {
    written(
        &[("booklet.yaml", SKIRT), ("make.md", SKIRT_WORK)],
        |compiled| {
            let seen = Seen::of(&book(compiled, "one"));
            let document = roxmltree::Document::parse(&seen.svg).expect("well-formed");
            let drawn = document.root_element().children();
            let cloth: Vec<kurbo::BezPath> = drawn
                .filter(|node| node.attribute("class") == Some("right-side"))
                .filter_map(|node| kurbo::BezPath::from_svg(node.attribute("d")?).ok())
                .collect();
            let high =
                |path: &kurbo::BezPath| kurbo::Shape::bounding_box(path).height() * seen.scale;
            let skirts: Vec<f64> = cloth
                .iter()
                .map(high)
                .filter(|high| *high > 200.0)
                .collect();
            assert!(!skirts.is_empty(), "the skirt");
            // The 50 cm of the sides and the allowance of the raw lower edge; lips of darts would rise by another.
            assert!(skirts.iter().all(|high| *high < 522.0), "{skirts:?}");
        },
    );
}

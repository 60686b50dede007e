//! What each material looks like: its class follows from the facts, it is told from every other in grey, and the key
//! of the booklet has it with its word.

use notchbook::figure::{CLASSES, fonts, to_png};
use notchbook::pipeline::Workshop;
use notchbook::typeset::Paper;

use crate::bench::written;
use crate::drawn;

const BAG: &str = "title: Bag
edition: 1.0.0
sizes: {m: {name: Medium, wearer: adult}}
fabrics:
  grey_felt: {name: Wool felt, widths: [90 cm]}
  soft: {name: Sew-in foam, widths: [90 cm]}
  long: {name: Faux fur, widths: [140 cm], nap: yes}
  coated: {name: Soft vinyl, widths: [140 cm]}
  furnishing: {name: Furnishing cotton, widths: [140 cm]}
  told: {name: Two-sided coating, widths: [140 cm], look: felt}
notions:
  thread: {kind: thread, name: Sewing thread}
  strap: {kind: tape, name: Cotton webbing, width: 3 cm, cut: {handle: {length: 30 cm, raw: all}}}
  edging: {kind: tape, name: Bias binding, width: 2 cm, cut: {border: {length: 40 cm, raw: all}}}
  stretch: {kind: elastic, name: Flat elastic, width: 2 cm, cut: {band: {length: 20 cm, raw: all}}}
  closing: {kind: tape, name: Hook-and-loop tape, width: 2 cm, cut: {tab: {length: 10 cm, raw: all}}}
pieces:
  side: {outline: {rectangle: [24 cm, 20 cm]}, raw: all, grain: vertical, cut: {grey_felt: 1}}
  pad: {outline: {rectangle: [24 cm, 20 cm]}, raw: all, grain: vertical, cut: {soft: 1}}
  collar: {outline: {rectangle: [24 cm, 20 cm]}, raw: all, grain: horizontal, cut: {long: 1}}
  base: {outline: {rectangle: [24 cm, 20 cm]}, raw: all, grain: vertical, cut: {coated: 1}}
  flap: {outline: {rectangle: [24 cm, 20 cm]}, raw: all, grain: vertical, cut: {furnishing: 1}}
  lid: {outline: {rectangle: [24 cm, 20 cm]}, raw: all, grain: vertical, cut: {told: 1}}
parts: [make.md]
";

/// One step for each piece.
fn with_steps(then: impl Fn(&Workshop)) {
    let mut make = "# Make it\n".to_owned();
    for piece in [
        "side", "pad", "collar", "base", "flap", "lid", "handle", "border", "band", "tab",
    ] {
        make += &format!(
            "\n## Cut the {piece} {{#cut-{piece}}}\n\n```work\n- cut: {piece}\n```\n\nCut it.\n\n\
             ![The {piece}](draw:work)\n"
        );
    }
    written(&[("booklet.yaml", BAG), ("make.md", &make)], |compiled| {
        then(compiled);
    });
}

#[test]
fn materials_are_drawn_as_the_facts_name_them() {
    with_steps(|compiled| {
        for (piece, class) in [
            ("side", "felt"),
            ("pad", "foam"),
            ("collar", "fur"),
            ("base", "leather"),
            // A word that only holds the name of a material is not one.
            ("flap", "right-side"),
            ("lid", "felt"),
            ("handle", "webbing"),
            ("border", "binding"),
            ("band", "elastic"),
            ("tab", "hook-loop"),
        ] {
            let figure = drawn(compiled, 0, &format!("cut-{piece}"));
            assert!(
                figure.classes.contains(&class),
                "{piece}: no {class} in {:?}",
                figure.classes
            );
        }
        // The pile runs along the grain: across this piece.
        let collar = drawn(compiled, 0, "cut-collar");
        assert!(collar.symbols.contains(&"nap"), "{:?}", collar.symbols);
        let text = collar.drawn.as_deref().expect("the drawing");
        assert!(
            text.contains("#nap") && text.contains("rotate(-90 "),
            "{text}"
        );
        assert!(!drawn(compiled, 0, "cut-side").symbols.contains(&"nap"));
    });
}

#[test]
fn the_key_names_every_material_that_is_drawn() {
    with_steps(|compiled| {
        let book = compiled.book(&compiled.editions()[0], Paper::A4.of_sheets());
        let sheaf = compiled.sheaf(&book, Paper::A4);
        let labels = &sheaf.data["labels"];
        let key = sheaf.data["key"].as_array().expect("a key");
        let told: Vec<&str> = key
            .iter()
            .map(|entry| {
                let class = entry["class"].as_str().expect("a class");
                labels[format!("key_{class}")].as_str().expect("its word")
            })
            .collect();
        for word in [
            "Felt",
            "Foam",
            "Fur or pile, right side",
            "Leather or vinyl, right side",
            "Binding",
            "Webbing or tape",
            "Elastic",
            "Hook and loop",
            "The pile runs this way",
        ] {
            assert!(told.contains(&word), "no “{word}” in {told:?}");
        }
    });
}

/// What an eye has of a patch in grey: how dark it is, how much of it is ink, and which way its lines run.
fn looked_at(svg: &str, compiled: &Workshop) -> [f64; 7] {
    let (database, _) = fonts(&compiled.house);
    let png = to_png(svg, &database, 8.0).expect("a picture");
    let picture = image::load_from_memory(&png).expect("a picture").to_luma8();
    // Clear of the rim of the swatch.
    let (wide, high) = (picture.width() - 16, picture.height() - 30);
    let at = |x: u32, y: u32| f64::from(picture.get_pixel(x, y)[0]);
    let mut sums = [0.0; 7];
    let mut count = 0.0;
    for y in 16..high {
        for x in 16..wide {
            let here = at(x, y);
            let steps = [(3, 0), (0, 3), (2, 2)].map(|(dx, dy)| (at(x + dx, y + dy) - here).abs());
            let back = (at(x - 2, y + 2) - here).abs();
            let seen = [here, f64::from(u8::from(here < 150.0)) * 128.0];
            let seen = seen
                .into_iter()
                .chain(steps)
                .chain([back, (at(x + 8, y) - here).abs()]);
            seen.zip(&mut sums).for_each(|(one, sum)| *sum += one);
            count += 1.0;
        }
    }
    sums.map(|sum| sum / count)
}

#[test]
fn every_material_is_told_from_every_other_in_grey() {
    with_steps(|compiled| {
        let all = [
            "right-side",
            "wrong-side",
            "lining",
            "lining-wrong",
            "wadding",
            "interfacing",
            "felt",
            "foam",
            "fur",
            "leather",
            "binding",
            "webbing",
            "elastic",
            "hook-loop",
        ];
        assert!(
            all.iter()
                .all(|name| CLASSES.iter().any(|class| class.name == *name))
        );
        let seen: Vec<[f64; 7]> = all
            .iter()
            .map(|name| looked_at(&compiled.figures.samples[name], compiled))
            .collect();
        let mut wrong = Vec::new();
        for (at, one) in seen.iter().enumerate() {
            for (other_at, other) in seen.iter().enumerate().skip(at + 1) {
                let far = one.iter().zip(other).map(|(one, two)| (one - two).powi(2));
                let far = far.sum::<f64>().sqrt();
                if far < 8.0 {
                    wrong.push(format!(
                        "{} and {} look alike: {far:.1}",
                        all[at], all[other_at]
                    ));
                }
            }
        }
        assert!(wrong.is_empty(), "{}\n{seen:#?}", wrong.join("\n"));
    });
}

/// How much the dots of a part of a picture change along "/" and along "\\".
fn leaning(picture: &image::GrayImage, across: std::ops::Range<u32>) -> (f64, f64) {
    let at = |x: u32, y: u32| f64::from(picture.get_pixel(x, y)[0]);
    let (mut rising, mut falling) = (0.0, 0.0);
    for y in picture.height() / 4..picture.height() * 3 / 4 {
        for x in across.clone() {
            rising += (at(x + 2, y - 2) - at(x, y)).abs();
            falling += (at(x + 2, y + 2) - at(x, y)).abs();
        }
    }
    (rising, falling)
}

#[test]
fn a_pattern_stays_upright_on_a_piece_that_is_turned_or_mirrored() {
    let square = r#"<rect class="wrong-side" x="2" y="2" width="16" height="16""#;
    let drawing = format!(
        r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 20" width="60mm">{square}/><g transform="translate(40 0)">{square} transform="scale(-1 1)"/></g><g transform="translate(60 0) rotate(90)">{square}/></g></svg>"#
    );
    let make = "# Make it\n\n## Cut {#cut}\n\n```work\n- cut: all\n```\n\nCut.\n\n![Three squares](figures/squares.svg)\n";
    let files = [
        ("booklet.yaml", BAG),
        ("make.md", make),
        ("figures/squares.svg", drawing.as_str()),
    ];
    written(&files, |compiled| {
        let figures: Vec<_> = compiled.figures.of_size(0).collect();
        let (_, figure) = figures
            .iter()
            .find(|(_, figure)| figure.path.ends_with("squares.svg"))
            .expect("the drawing");
        let (database, _) = fonts(&compiled.house);
        let png = to_png(&figure.svg, &database, 8.0).expect("a picture");
        let picture = image::load_from_memory(&png).expect("a picture").to_luma8();
        let third = picture.width() / 3;
        for at in 0..3 {
            let (rising, falling) =
                leaning(&picture, at * third + third / 4..at * third + third * 3 / 4);
            assert!(
                rising * 1.3 < falling,
                "square {at}: {rising} along /, {falling} along \\"
            );
        }
    });
}

//! What stands in the booklet of a size stands on the page when that size is chosen.

use std::collections::BTreeSet;

use serde_json::Value;

use super::tags::{Bit, attribute, bits, seen, words};
use super::{bench, leaves, page};

/// Every figure in the data of a booklet: its number and its unit's key.
fn figures(data: &Value, found: &mut BTreeSet<String>) {
    match data {
        Value::Array(items) => items.iter().for_each(|item| figures(item, found)),
        Value::Object(fields) => {
            let text = |key: &str| fields.get(key).and_then(Value::as_str);
            if let (Some(number), Some(unit)) = (text("number"), text("unit"))
                && ["mm", "cm", "m", "in", "yd"].contains(&unit)
            {
                found.insert(signs(&format!("{number} {unit}")));
            }
            // The words of the house are in the data too, and are no figures of the booklet.
            let own = fields.iter().filter(|(key, _)| *key != "labels");
            own.for_each(|(_, value)| figures(value, found));
        }
        _ => {}
    }
}

/// `10 1/2 in` with its fraction as one sign, and all spaces plain.
fn signs(figure: &str) -> String {
    let mut out = figure
        .replace(['\u{a0}', '\u{202f}'], " ")
        .replace('⁄', "/");
    let signs = [
        ("1/2", "½"),
        ("1/4", "¼"),
        ("3/4", "¾"),
        ("1/8", "⅛"),
        ("3/8", "⅜"),
        ("5/8", "⅝"),
        ("7/8", "⅞"),
        ("1/3", "⅓"),
        ("2/3", "⅔"),
    ];
    for (plain, sign) in signs {
        // `11/2` holds no half.
        let mut at = 0;
        while let Some(found) = out[at..].find(plain).map(|found| found + at) {
            let part = |letter: Option<char>| letter.is_some_and(|letter| letter.is_ascii_digit());
            let after = out[found + plain.len()..].chars().next();
            if part(out[..found].chars().next_back()) || part(after) {
                at = found + plain.len();
            } else {
                out.replace_range(found..found + plain.len(), sign);
                at = found + sign.len();
            }
        }
    }
    out
}

/// The headings of the sections that are seen.
fn sections(bits: &[Bit]) -> Vec<String> {
    let id = |bit: &Bit| match bit {
        Bit::Open(name, attributes) if name == "section" => {
            attribute(attributes, "id").map(str::to_owned)
        }
        _ => None,
    };
    bits.iter().filter_map(id).collect()
}

#[test]
fn every_step_and_every_figure_of_a_size_is_on_the_page() {
    let mut compared = 0;
    let mut wrong = Vec::new();
    bench::demos(|name, workshop| {
        let leaves = leaves(workshop);
        let all = bits(&page(name, workshop).expect("a page"));
        for leaf in &leaves {
            let own = seen(&all, &leaf.key);
            let shown = sections(&own);
            let told = words(&own);
            for part in leaf.sheaf.data["parts"].as_array().expect("parts") {
                let steps = part["steps"].as_array().expect("steps");
                let step = |step: &Value| format!("step-{}", step["id"].as_str().expect("an id"));
                let ids = steps.iter().map(step);
                wrong.extend(
                    ids.filter(|id| shown.iter().filter(|one| *one == id).count() != 1)
                        .map(|id| format!("{name}, {}: {id} stands there not once", leaf.key)),
                );
            }
            let mut figures_of = BTreeSet::new();
            figures(&leaf.sheaf.data, &mut figures_of);
            let told = signs(&told);
            for figure in &figures_of {
                // `33 × 26.6 cm` leaves the first unit to the second.
                let (number, _) = figure.rsplit_once(' ').expect("a number and a unit");
                if !told.contains(figure.as_str()) && !told.contains(&format!("{number} ×")) {
                    wrong.push(format!("{name}, {}: {figure} is not shown", leaf.key));
                }
                compared += 1;
            }
        }
    });
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(compared > 1000, "only {compared} figures compared");
}

#[test]
fn a_step_that_a_size_does_without_is_not_shown_there() {
    let step = "\n## Divide it {#divide for=large}\n\n```work\n- {topstitch: [front.left], stitch: 3 mm}\n```\n\nSew down.\n";
    let path = bench::root().join("tests/checks/_base/make.md");
    let base = std::fs::read_to_string(path).expect("the base's steps");
    let own = super::pouch(&[("make.md", &format!("{base}{step}"))], |workshop| {
        let all = bits(&page("pouch", workshop).expect("a page"));
        ["small", "large", "all-sizes"].map(|size| sections(&seen(&all, size)))
    });
    let has = own.map(|shown| shown.iter().any(|id| id == "step-divide"));
    assert_eq!(has, [false, true, true]);
}

#[test]
fn the_bag_is_small_and_the_same_to_the_byte() {
    bench::demo("harbour-lunch-bag", |workshop| {
        let first = page("harbour-lunch-bag", workshop).expect("a page");
        assert!(first.len() < 2_000_000, "{} bytes", first.len());
        let again = page("harbour-lunch-bag", workshop).expect("a page");
        assert!(first == again, "the page differs from one time to the next");
    });
}

/// What stands in the section of an id.
fn inside<'a>(bits: &'a [Bit], id: &str) -> &'a [Bit] {
    let opens = |bit: &Bit| matches!(bit, Bit::Open(name, own) if name == "section" && attribute(own, "id") == Some(id));
    let from = bits.iter().position(opens).expect("the section");
    let closes = |bit: &Bit| matches!(bit, Bit::Close(name) if name == "section");
    let to = bits[from..].iter().position(closes).expect("its end");
    &bits[from..from + to]
}

#[test]
fn a_question_opens_below_its_step_and_a_general_one_stands_at_the_end() {
    let facts = super::facts(&[(
        "parts: [make.md]",
        "parts: [make.md]\nhelp: help.md\ncontact: help@pebble-lane.example",
    )]);
    let help = "## Why does it wave? {#sew}\n\nSew with {allowance}, {small: slowly | large: more slowly}.\n\n\
                ## May I wash it?\n\nYes, at {30 °C}.\n\n\
                ## Is the large one for two? {for=large}\n\nFor one.\n";
    let files = [("booklet.yaml", facts.as_str()), ("help.md", help)];
    super::pouch(&files, |workshop| {
        let all = bits(&page("pouch", workshop).expect("a page"));
        let answer = |size: &str| {
            let own = seen(&all, size);
            let step = inside(&own, "step-sew");
            let opens = |bit: &Bit| matches!(bit, Bit::Open(name, _) if name == "details");
            let from = step.iter().position(opens).expect("an answer to open");
            let closes = |bit: &Bit| matches!(bit, Bit::Close(name) if name == "details");
            let to = step.iter().position(closes).expect("its end");
            words(&step[from..to])
        };
        assert!(
            answer("small").contains("Why does it wave?"),
            "{}",
            answer("small")
        );
        assert!(answer("small").contains("slowly") && !answer("small").contains("more"));
        assert!(answer("large").contains("more slowly") && answer("large").contains("1 cm"));
        let end = |size: &str| words(inside(&seen(&all, size), "help"));
        let small = end("small");
        assert!(
            small.contains("May I wash it?") && small.contains("30"),
            "{small}"
        );
        // The way to the step, and not its answer again.
        assert!(
            small.contains("See step 2") && !small.contains("slowly"),
            "{small}"
        );
        assert!(small.contains("help@pebble-lane.example"), "{small}");
        assert!(!small.contains("for two") && end("large").contains("for two"));
    });
}

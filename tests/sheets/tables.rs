//! What to buy and what to cut, as the templates are given it: one width in the list and in the layout,
//! and the size that the scissors cut.

use notchbook::typeset::Paper;
use serde_json::Value;

use crate::bench::{demos, written};

/// The templates' data of the first size.
fn data(facts: &str, then: impl FnOnce(&Value)) {
    const MAKE: &str = "# Make it\n\n## Cut it {#cut}\n\n```work\n- cut: all\n```\n\nCut it all.\n";
    written(&[("booklet.yaml", facts), ("make.md", MAKE)], |compiled| {
        let book = compiled.book(&compiled.editions()[0], Paper::A4.of_sheets());
        then(&compiled.sheaf(&book, Paper::A4).data);
    });
}

/// `43 1/2 in` of a shown value's figure.
fn figure(value: &Value, system: &str) -> String {
    let part = |key: &str| value[system][key].as_str().unwrap_or("–").to_owned();
    format!("{} {}", part("number"), part("unit")).replace('\u{a0}', " ")
}

fn both(value: &Value) -> String {
    format!("{}, {}", figure(value, "first"), figure(value, "second"))
}

/// The widths of the list of what to buy, and those above the layouts.
fn widths(data: &Value) -> (Vec<String>, Vec<String>) {
    let of = |value: &Value| value.as_array().cloned().unwrap_or_default();
    let listed = of(&data["fabrics"])
        .iter()
        .flat_map(|fabric| of(&fabric["widths"]))
        .map(|width| both(&width["width"]))
        .collect();
    let laid = of(&data["layouts"])
        .iter()
        .map(|layout| both(&layout["width"]))
        .collect();
    (listed, laid)
}

/// 110 cm are 43.3 in, and 140 cm 55.1 in: to the nearest half inch 43 1/2 and 55.
#[test]
fn a_width_of_cloth_is_one_figure_in_the_list_and_in_the_layout() {
    let facts = "title: Flag\nedition: 1.0.0\nsizes: {one: One size}\n\
         fabrics: {outer: {name: Cotton, widths: [110 cm, 140 cm, 90 cm (36 in)]}}\n\
         pieces:\n  flag:\n    outline: {rectangle: [30 cm, 40 cm]}\n    allowance: {all: 0 mm}\n    \
         raw: [all]\n    cut: {outer: 1}\nparts: [make.md]\n";
    data(facts, |data| {
        let (listed, laid) = widths(data);
        assert_eq!(
            listed,
            ["110 cm, 43 1/2 in", "140 cm, 55 in", "90 cm, 36 in"]
        );
        assert_eq!(laid, listed);
    });
    demos(|name, compiled| {
        for edition in compiled.editions() {
            let (listed, laid) = widths(
                &compiled
                    .sheaf(&compiled.book(edition, Paper::A4.of_sheets()), Paper::A4)
                    .data,
            );
            assert!(!laid.is_empty());
            for width in laid {
                assert!(
                    listed.contains(&width),
                    "{name}: {width} is not among {listed:?}"
                );
            }
        }
    });
}

/// The row of a piece that is cut from one fabric.
fn row(piece: &str, then: impl FnOnce(&Value)) {
    let facts = format!(
        "title: Flag\nedition: 1.0.0\nsizes: {{one: One size}}\n\
         fabrics: {{outer: {{name: Cotton, widths: [150 cm]}}}}\npieces:\n  flag:\n{piece}    \
         cut: {{outer: 1}}\nparts: [make.md]\n"
    );
    data(&facts, |data| then(&data["cuts"][0]["rows"][0]));
}

/// What the table of pieces gives as width and height of a piece.
fn cut_size(piece: &str) -> [String; 2] {
    let mut found = [String::new(), String::new()];
    row(piece, |row| {
        found = [0, 1].map(|side| both(&row["dimensions"][0][side]))
    });
    found
}

#[test]
fn what_to_cut_gives_the_size_of_the_cutting_line() {
    // 20 and 30 cm on the stitching line, and 1 cm all round: 22 cm are 8.66 in, 32 cm 12.6 in.
    let drawn = "    outline: {rectangle: [20 cm (7 7/8 in), 30 cm]}\n    allowance: {all: 1 cm}\n    drawn: stitching\n";
    assert_eq!(cut_size(drawn), ["22 cm, 8 5/8 in", "32 cm, 12 5/8 in"]);
    // Larger at the top and at the left alone.
    let uneven = "    outline: {rectangle: [20 cm, 30 cm]}\n    drawn: stitching\n    \
        allowance: {all: 0 mm, top: 4 cm, left: 25 mm}\n    raw: [all]\n";
    assert_eq!(cut_size(uneven), ["22.5 cm, 8 7/8 in", "34 cm, 13 3/8 in"]);
    // Cut 2 cm larger all round before it is quilted: 24 by 34 cm.
    let larger = "    outline: {rectangle: [20 cm, 30 cm]}\n    allowance: {all: 1 cm}\n    cut_larger: 2 cm\n";
    assert_eq!(cut_size(larger), ["24 cm, 9 1/2 in", "34 cm, 13 3/8 in"]);
}

#[test]
fn what_is_stated_for_a_rectangle_stands_as_stated() {
    // 20 cm would come out as 7 7/8 in, too, but 21 cm not as 8 3/8 in.
    let cutting = "    outline: {rectangle: [20 cm (7 7/8 in), 21 cm (8 3/8 in)]}\n    allowance: {all: 1 cm}\n";
    assert_eq!(cut_size(cutting), ["20 cm, 7 7/8 in", "21 cm, 8 3/8 in"]);
    // Nothing is added to it, so the stitching line is the cutting line.
    let bare = "    outline: {rectangle: [20 cm (7 7/8 in), 21 cm (8 3/8 in)]}\n    allowance: {all: 0 mm}\n    \
        raw: [all]\n    drawn: stitching\n";
    assert_eq!(cut_size(bare), ["20 cm, 7 7/8 in", "21 cm, 8 3/8 in"]);
}

/// The box of a quarter circle of 20 cm is 20 by 20 cm; a triangle's is that of its corners.
#[test]
fn a_piece_that_is_no_rectangle_gives_its_width_and_height_overall() {
    let quarter = "    outline:\n      path:\n        - start: [0 mm, 0 mm]\n        - top: [20 cm, 0 mm]\n        \
        - bow: {to: [0 mm, 20 cm], arc: 20 cm, turn: right}\n        - side: close\n    allowance: {all: 0 mm}\n    raw: [all]\n";
    assert_eq!(cut_size(quarter), ["20 cm, 7 7/8 in", "20 cm, 7 7/8 in"]);
    let triangle = "    outline:\n      path:\n        - start: [0 mm, 0 mm]\n        - top: [31 cm, 0 mm]\n        \
        - slope: [10 cm, 20 cm]\n        - side: close\n    allowance: {all: 0 mm}\n    raw: [all]\n";
    assert_eq!(cut_size(triangle), ["31 cm, 12 1/4 in", "20 cm, 7 7/8 in"]);
    row(triangle, |row| assert_eq!(row["fold"], Value::Bool(false)));
}

#[test]
fn a_piece_on_the_fold_gives_the_size_of_its_half_and_says_so() {
    let half = "    outline: {rectangle: [15 cm, 40 cm]}\n    fold: left\n    allowance: {all: 0 mm}\n    raw: [all]\n";
    assert_eq!(cut_size(half), ["15 cm, 5 7/8 in", "40 cm, 15 3/4 in"]);
    row(half, |row| assert_eq!(row["fold"], Value::Bool(true)));
    // With an allowance of 1 cm beside the fold, above and below: 16 by 42 cm.
    let stitched = "    outline: {rectangle: [15 cm, 40 cm]}\n    fold: left\n    allowance: {all: 1 cm}\n    drawn: stitching\n";
    assert_eq!(cut_size(stitched), ["16 cm, 6 1/4 in", "42 cm, 16 1/2 in"]);
}

//! One pattern for several things: the booklet of all tells them apart, and each has a booklet of its own.

use notchbook::book::Book;
use notchbook::pipeline::Workshop;
use notchbook::sheets::SheetPaper;
use notchbook::typeset::{Paper, Press};

use crate::bench::written;
use crate::caddies::{CADDIES, FIGURE};

/// The booklet checked, and the books of some of its sizes as one.
fn merged<R>(sizes: &[usize], then: impl FnOnce(&Workshop, &Book) -> R) -> R {
    edited(&[], sizes, then)
}

/// The same with some words of its files put in the place of others.
fn edited<R>(
    edits: &[(&str, &str)],
    sizes: &[usize],
    then: impl FnOnce(&Workshop, &Book) -> R,
) -> R {
    let mut texts: Vec<(&str, String)> = CADDIES
        .iter()
        .chain([&FIGURE])
        .map(|(name, text)| (*name, (*text).to_owned()))
        .collect();
    for (from, to) in edits {
        let holds = texts.iter_mut().find(|(_, text)| text.contains(from));
        let (_, text) = holds.unwrap_or_else(|| panic!("no file says {from:?}"));
        *text = text.replace(from, to);
    }
    let files: Vec<(&str, &str)> = texts
        .iter()
        .map(|(name, text)| (*name, text.as_str()))
        .collect();
    written(&files, |compiled| {
        let told: Vec<&str> = compiled
            .report
            .findings
            .iter()
            .map(|finding| finding.message.as_str())
            .collect();
        assert!(told.is_empty(), "{told:?}");
        let books: Vec<Book> = sizes
            .iter()
            .map(|size| compiled.book(&compiled.editions()[*size], SheetPaper::A4))
            .collect();
        let book = match books.as_slice() {
            [only] => only.clone(),
            books => compiled.book_of_all(books, SheetPaper::A4).expect("a book"),
        };
        let sheaf = compiled.sheaf(&book, Paper::A4);
        if let Err(faults) = Press::new(&compiled.house).print(&sheaf) {
            panic!("{faults:?}");
        }
        then(compiled, &book)
    })
}

#[test]
fn each_thing_has_tables_of_its_own() {
    merged(&[0, 1, 2], |compiled, book| {
        let data = compiled.sheaf(book, Paper::A4).data;
        assert_eq!(
            data["tables"],
            serde_json::json!([
                {"at": 0, "name": "Flat sleeve", "columns": [0, 1]},
                {"at": 1, "name": "Deep caddy", "columns": [2]},
            ])
        );
        let depth = &book.finished[1].measure;
        assert_eq!(depth.name, "Depth of the base");
        let has: Vec<bool> = depth.values.iter().map(Option::is_some).collect();
        assert_eq!(has, [false, false, true]);
        let felt = book
            .fabrics
            .iter()
            .find(|fabric| fabric.id == "felt")
            .expect("felt");
        assert_eq!(felt.needed(), [false, false, true]);
    });
}

#[test]
fn parts_are_told_with_the_things_that_have_them() {
    merged(&[0, 1, 2], |compiled, book| {
        let data = compiled.sheaf(book, Paper::A4).data;
        let parts = data["parts"].as_array().expect("parts");
        let tables: Vec<&serde_json::Value> = parts.iter().map(|part| &part["tables"]).collect();
        assert_eq!(
            tables,
            [
                &serde_json::json!([0, 1]),
                &serde_json::json!([0, 1]),
                &serde_json::json!([1])
            ]
        );
        assert_eq!(parts[2]["sizes"], serde_json::json!(["Deep caddy"]));
        // What the part says, its steps need not say again.
        assert_eq!(parts[2]["steps"][0]["sizes"], serde_json::json!([]));
    });
}

#[test]
fn what_things_cut_in_other_numbers_stands_in_rows_of_its_own() {
    merged(&[0, 1, 2], |_, book| {
        let canvas = book
            .cuts
            .iter()
            .find(|list| list.id == "outer")
            .expect("canvas");
        let tags: Vec<(u32, Vec<bool>)> = canvas
            .rows
            .iter()
            .filter(|row| row.id == "tag")
            .map(|row| {
                (
                    row.count,
                    row.dimensions.iter().map(Option::is_some).collect(),
                )
            })
            .collect();
        assert_eq!(
            tags,
            [(1, vec![true, true, false]), (2, vec![false, false, true])]
        );
    });
}

#[test]
fn a_piece_has_one_number_in_every_booklet() {
    let numbers = |sizes: &[usize]| {
        merged(sizes, |_, book| {
            let pieces = book.pieces.pieces.iter();
            pieces
                .map(|piece| (piece.id.clone(), piece.number))
                .collect::<Vec<_>>()
        })
    };
    let all = numbers(&[0, 1, 2]);
    assert_eq!(all.len(), 4);
    for sizes in [&[0][..], &[0, 1], &[2]] {
        for own in numbers(sizes) {
            assert!(all.contains(&own), "{own:?} is not in {all:?}");
        }
    }
}

#[test]
fn diagrams_of_two_things_are_not_laid_over_one_another() {
    merged(&[0, 1, 2], |_, book| {
        let step = &book.parts[1].steps[0];
        let views: Vec<&[usize]> = step
            .figure
            .as_ref()
            .expect("a diagram")
            .views
            .iter()
            .map(|view| view.sizes.as_slice())
            .collect();
        assert_eq!(views, [&[0, 1][..], &[2]]);
    });
}

#[test]
fn the_map_says_which_sheets_each_thing_needs() {
    merged(&[0, 1, 2], |_, book| {
        let map = book.map.as_ref().expect("a map");
        let names: Vec<&str> = map.lists.iter().map(|list| list.name.as_str()).collect();
        assert_eq!(names, ["Flat sleeve", "Deep caddy"]);
        for sheet in &map.sheets {
            assert!(
                map.lists.iter().any(|list| list.sheets.contains(sheet)),
                "nobody prints {sheet}"
            );
        }
        assert!(
            map.lists
                .iter()
                .all(|list| list.sheets.len() < map.sheets.len())
        );
    });
}

#[test]
fn the_booklet_of_one_thing_knows_no_other() {
    merged(&[0, 1], |compiled, book| {
        let data = compiled.sheaf(book, Paper::A4).data;
        assert_eq!(data["view"]["name"], "Flat sleeve");
        assert_eq!(
            data["tables"],
            serde_json::json!([{"at": 0, "name": null, "columns": [0, 1]}])
        );
        let text = data.to_string();
        assert!(!text.contains("Depth of the base") && !text.contains("Caddy body"));
        assert!(book.map.as_ref().expect("a map").lists.is_empty());
    });
}

#[test]
fn a_piece_cut_with_a_ruler_is_told_in_the_table() {
    merged(&[2], |_, book| {
        let felt = book
            .cuts
            .iter()
            .find(|list| list.id == "felt")
            .expect("felt");
        let row = &felt.rows[0];
        assert!(row.by_ruler);
        assert_eq!(row.snips, ["top"]);
        let (width, height) = row.dimensions[0].as_ref().expect("its size");
        let told = [width, height].map(|side| {
            let second = side.second.as_ref().expect("both systems");
            (
                side.first.number.clone(),
                second.number.replace('\u{a0}', " "),
            )
        });
        assert_eq!(
            told,
            [("40".into(), "15 3/4".into()), ("28".into(), "11".into())]
        );
    });
}

#[test]
fn a_branch_of_one_thing_is_told_once_with_the_figures_of_its_sizes() {
    let edits = [(
        "Cut {sleeve: one tag | caddy: two tags}.",
        "Cut {sleeve: one tag for {width}, from end to end. | caddy: two tags.}",
    )];
    edited(&edits, &[0, 1, 2], |compiled, book| {
        let data = compiled.sheaf(book, Paper::A4).data;
        let said = &data["parts"][0]["steps"][0]["body"][0]["content"];
        let branches = said[1]["branches"].as_array().expect("a choice by thing");
        let names: Vec<&serde_json::Value> =
            branches.iter().map(|branch| &branch["sizes"]).collect();
        assert_eq!(
            names,
            [
                &serde_json::json!(["Flat sleeve"]),
                &serde_json::json!(["Deep caddy"])
            ]
        );
        let figure = &branches[0]["content"][1]["value"]["first"];
        assert_eq!(
            figure,
            &serde_json::json!({"number": "12 (15)", "unit": "cm"})
        );
    });
}

#[test]
fn a_table_of_one_thing_says_what_is_said_of_it_alone() {
    let edits = [(
        "outer: {name: Canvas, ",
        "outer: {name: Canvas, note: \"{sleeve: Thin, {height} long. | caddy: Firm.}\", ",
    )];
    edited(&edits, &[0, 1, 2], |compiled, book| {
        let data = compiled.sheaf(book, Paper::A4).data;
        let notes = data["fabrics"][0]["notes"].as_array().expect("notes");
        let [sleeve, caddy] = notes.as_slice() else {
            panic!("{} notes for two tables", notes.len());
        };
        let (sleeve, caddy) = (sleeve.to_string(), caddy.to_string());
        assert!(
            sleeve.contains("Thin") && sleeve.contains("14 (20)"),
            "{sleeve}"
        );
        assert!(
            !sleeve.contains("Firm") && !sleeve.contains("by_size"),
            "{sleeve}"
        );
        assert!(caddy.contains("Firm") && !caddy.contains("Thin"), "{caddy}");
    });
}

#[test]
fn a_chapter_of_one_thing_names_its_sizes_alone() {
    let edits = [(
        "{file: base.md, for: caddy}",
        "{file: base.md, for: caddy}\n  - {file: close.md, for: sleeve}",
    )];
    let close = "# Close it\n\n## Close it {#close}\n\nClose it {short: with one stitch | tall: with two stitches}.\n";
    let mut files: Vec<(&str, String)> = CADDIES
        .iter()
        .chain([&FIGURE])
        .map(|(name, text)| {
            let edit = |text: String, (from, to): &(&str, &str)| text.replace(from, to);
            (*name, edits.iter().fold((*text).to_owned(), edit))
        })
        .collect();
    files.push(("close.md", close.to_owned()));
    let files: Vec<(&str, &str)> = files
        .iter()
        .map(|(name, text)| (*name, text.as_str()))
        .collect();
    written(&files, |compiled| {
        let (_, all) = crate::shelf::books(compiled);
        let data = compiled.sheaf(&all, Paper::A4).data;
        let step = &data["parts"][3]["steps"][0]["body"][0]["content"][1];
        assert_eq!(step["branches"][0]["sizes"], serde_json::json!(["Short"]));
        assert_eq!(step["branches"][1]["sizes"], serde_json::json!(["Tall"]));
    });
}

#[test]
fn a_booklet_explains_the_words_that_it_uses_and_those_that_none_does() {
    let edits = [
        (
            "words:\n",
            "words:\n  base seam: The seam at the bottom.\n  slipstitch: Small stitches by hand.\n  tag: A small flat piece, no slipstitch in it.\n  selvedge: The edge of the cloth.\n",
        ),
        ("Hem the tops", "Hem the {sleeve: tops | caddy: rims}"),
        (
            "  tag: A small",
            "  rim: The edge at the top.\n  tag: A small",
        ),
    ];
    let terms = |sizes: &[usize]| {
        edited(&edits, sizes, |_, book| {
            let terms: Vec<String> = book.words.iter().map(|word| word.term.clone()).collect();
            terms.join(", ")
        })
    };
    // The base belongs to the caddy, and so do rims; nobody speaks of a selvedge.
    assert_eq!(
        terms(&[0]),
        "slipstitch, tag, selvedge, right sides together"
    );
    assert_eq!(
        terms(&[2]),
        "base seam, slipstitch, rim, tag, selvedge, right sides together"
    );
    assert_eq!(
        terms(&[0, 1, 2]),
        "base seam, slipstitch, rim, tag, selvedge, right sides together"
    );
}

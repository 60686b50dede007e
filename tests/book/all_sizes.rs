//! Books of all sizes, laid over one another: what the sizes do not share is told with its size, and
//! nothing is mixed, moved or left out.

use notchbook::book::{Block, Book, Inline, Picture, Step, Value};
use notchbook::resolve::slug;
use notchbook::sheets::SheetPaper;
use notchbook::typeset::{Paper, Press};

use crate::bench::written;

const FACTS: &str = "\
title: Tide Pouch
designer: Saltmarsh Sewing Room
edition: 1.0.0
sizes: {small: Small, medium: Medium, large: Large}
measurements:
  seam: 1 cm (3/8 in)
  width: [15 cm (5 7/8 in), 20 cm (7 7/8 in), 25 cm (9 7/8 in)]
  strap: [30 cm (11 3/4 in), 40 cm (15 3/4 in), 50 cm (19 3/4 in)]
fabrics:
  outer: {name: Cotton, widths: [110 cm, 140 cm]}
pieces:
  band: {name: Band, for: [large], outline: {rectangle: [10 cm, 10 cm]}, raw: [all], cut: {outer: 1}}
  side: {name: Side, outline: {rectangle: [width, width]}, raw: [all], cut: {outer: 2}}
";

/// The books of every size and the one of all, which must also be set without a fault.
fn books(parts: &str, files: &[(&str, &str)]) -> (Vec<Book>, Book) {
    let facts = format!("{FACTS}parts: {parts}\n");
    let mut all = vec![("booklet.yaml", facts.as_str())];
    all.extend(files);
    written(&all, |compiled| {
        let books: Vec<Book> = compiled
            .editions()
            .iter()
            .map(|edition| compiled.book(edition, SheetPaper::A4))
            .collect();
        let merged = compiled
            .book_of_all(&books, SheetPaper::A4)
            .expect("a book of all sizes");
        let sheaf = compiled.sheaf(&merged, Paper::A4);
        if let Err(faults) = Press::new(&compiled.house).print(&sheaf) {
            panic!("{faults:?}");
        }
        (books, merged)
    })
}

fn steps(book: &Book) -> Vec<&Step> {
    book.parts.iter().flat_map(|part| &part.steps).collect()
}

/// Words with every size's figures, for comparing: `[Small, Medium: short; Large: long]`.
fn words(book: &Book, content: &[Inline]) -> String {
    let names = |sizes: &[usize]| {
        let names: Vec<&str> = sizes
            .iter()
            .map(|size| book.sizes[*size].name.as_str())
            .collect();
        names.join(", ")
    };
    content
        .iter()
        .map(|inline| match inline {
            Inline::Text { text } | Inline::Code { text } => text.clone(),
            Inline::Value {
                value: Value::Same(amount),
            } => amount.first.number.clone(),
            Inline::Value {
                value: Value::Each(each),
            } => {
                let numbers: Vec<&str> = each
                    .iter()
                    .map(|one| one.amount.first.number.as_str())
                    .collect();
                numbers.join("|")
            }
            Inline::BySize { branches } => {
                let told: Vec<String> = branches
                    .iter()
                    .map(|branch| {
                        format!("{}: {}", names(&branch.sizes), words(book, &branch.content))
                    })
                    .collect();
                format!("[{}]", told.join("; "))
            }
            Inline::Strong { content }
            | Inline::Emphasis { content }
            | Inline::Choice { content, .. } => words(book, content),
            _ => "?".to_owned(),
        })
        .collect()
}

fn body(book: &Book, step: &Step) -> String {
    step.body
        .iter()
        .map(|block| match block {
            Block::Paragraph { content } => words(book, content),
            other => format!("{other:?}"),
        })
        .collect::<Vec<_>>()
        .join(" / ")
}

#[test]
fn a_heading_becomes_a_name() {
    assert_eq!(
        slug("Sew the first side: 2 seams!", "step"),
        "sew-the-first-side-2-seams"
    );
    assert_eq!(slug("  –  ", "step"), "step");
}

#[test]
fn steps_without_ids_meet_by_their_headings_and_never_by_their_numbers() {
    let (_, all) = books(
        "[make.md]",
        &[(
            "make.md",
            "# Make\n\n## Fold { for=small}\n\nFold it.\n\n## Press { for=large}\n\nPress it.\n\n## Turn\n\nTurn {width}.\n",
        )],
    );
    let told: Vec<(String, String, Vec<usize>)> = steps(&all)
        .iter()
        .map(|step| {
            (
                words(&all, &step.title),
                body(&all, step),
                step.sizes.clone(),
            )
        })
        .collect();
    assert_eq!(
        told,
        [
            ("Fold".into(), "Fold it.".into(), vec![0]),
            ("Press".into(), "Press it.".into(), vec![2]),
            ("Turn".into(), "Turn 15|20|25.".into(), vec![0, 1, 2]),
        ]
    );
    assert_eq!(
        steps(&all)
            .iter()
            .map(|step| step.number)
            .collect::<Vec<_>>(),
        [1, 2, 3]
    );
}

#[test]
fn a_shared_part_that_is_used_twice_keeps_the_figures_of_each_use() {
    let shared = "# Close {what}\n\n## Close it\n\nClose {gap}.\n";
    let (one, all) = books(
        "[{file: close.md, with: {gap: width, what: the front}}, {file: close.md, with: {gap: strap, what: the back}}]",
        &[("close.md", shared)],
    );
    let bodies: Vec<String> = steps(&all).iter().map(|step| body(&all, step)).collect();
    assert_eq!(bodies, ["Close 15|20|25.", "Close 30|40|50."]);
    let titles: Vec<String> = all
        .parts
        .iter()
        .map(|part| words(&all, &part.title))
        .collect();
    assert_eq!(titles, ["Close the front", "Close the back"]);
    let ids: Vec<&str> = steps(&one[0]).iter().map(|step| step.id.as_str()).collect();
    assert_eq!(ids.len(), 2);
    assert_ne!(ids[0], ids[1], "two steps of one id");
}

#[test]
fn parts_and_steps_stand_as_the_facts_list_them_though_the_first_size_lacks_some() {
    let part = |name: &str, sizes: &str| {
        format!("# {name} {{#{name}{sizes}}}\n\n## Do {name} {{#do-{name}}}\n\nDo it.\n")
    };
    let files = [
        ("a.md", part("a", "")),
        ("b.md", part("b", " for=large")),
        ("c.md", part("c", " for=medium,large")),
        ("d.md", part("d", " for=small")),
    ];
    let files: Vec<(&str, &str)> = files
        .iter()
        .map(|(name, text)| (*name, text.as_str()))
        .collect();
    for order in [
        ["a", "b", "c", "d"],
        ["d", "c", "b", "a"],
        ["b", "d", "a", "c"],
    ] {
        let listed = format!("[{}]", order.map(|name| format!("{name}.md")).join(", "));
        let (_, all) = books(&listed, &files);
        let ids: Vec<&str> = all.parts.iter().map(|part| part.id.as_str()).collect();
        assert_eq!(ids, order, "parts: {listed}");
    }
}

#[test]
fn a_choice_in_a_heading_says_whose_words_are_whose() {
    let (_, all) = books(
        "[make.md]",
        &[(
            "make.md",
            "# Make\n\n## Sew the {small: short | else: long} side\n\nSew.\n",
        )],
    );
    let title = words(&all, &steps(&all)[0].title);
    assert_eq!(title, "Sew the [Small: short; Medium, Large: long] side");
}

#[test]
fn a_size_that_says_nothing_in_a_choice_is_left_out_of_it() {
    let (_, all) = books(
        "[make.md]",
        &[(
            "make.md",
            "# Make\n\n## Sew\n\nSew it{large:, and the band too | else:}.\n",
        )],
    );
    assert_eq!(
        body(&all, steps(&all)[0]),
        "Sew it[Large: , and the band too]."
    );
}

#[test]
fn every_width_of_a_fabric_has_its_amount_in_every_size() {
    let (one, all) = books("[make.md]", &[("make.md", "# Make\n\n## Sew\n\nSew.\n")]);
    let fabric = &all.fabrics[0];
    assert_eq!(fabric.widths.len(), 2);
    for (at, width) in fabric.widths.iter().enumerate() {
        assert_eq!(width.amounts.len(), 3);
        for (size, amount) in width.amounts.iter().enumerate() {
            assert!(amount.is_some(), "no amount of width {at} in size {size}");
            assert_eq!(*amount, one[size].fabrics[0].widths[at].amounts[0]);
        }
    }
    let laid: Vec<usize> = all.layouts.iter().map(|layout| layout.size).collect();
    assert_eq!(
        laid,
        [0, 0, 1, 1, 2, 2],
        "every size's layouts stand in the book of all"
    );
    assert!(all.map.is_some(), "the map of the nested sheets is missing");
}

#[test]
fn pieces_of_a_later_size_are_listed_in_their_order_and_numbered_as_pieces() {
    let text = "# Make\n\n## One\n\nOne.\n\n## Two\n\nTwo.\n\n## Three\n\nThree.\n";
    let (_, all) = books("[make.md]", &[("make.md", text)]);
    let pieces: Vec<(usize, &str)> = all
        .pieces
        .pieces
        .iter()
        .map(|piece| (piece.number, piece.id.as_str()))
        .collect();
    assert_eq!(pieces, [(1, "band"), (2, "side")]);
    let rows: Vec<(&str, Vec<bool>)> = all.cuts[0]
        .rows
        .iter()
        .map(|row| {
            (
                row.id.as_str(),
                row.dimensions.iter().map(Option::is_some).collect(),
            )
        })
        .collect();
    assert_eq!(
        rows,
        [
            ("band", vec![false, false, true]),
            ("side", vec![true, true, true])
        ]
    );
}

/// A diagram whose label is empty in a size, whose symbol only a later size uses, or whose lines break
/// elsewhere stays in the book.
#[test]
fn no_diagram_is_dropped_for_its_words() {
    let svg = |inside: &str| {
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 76 40\" width=\"76mm\">{inside}</svg>"
        )
    };
    let empty = svg(
        "<text class=\"label\" x=\"2\" y=\"9\">{small: pocket | else:}</text><text class=\"label\" x=\"2\" y=\"20\">{width}</text>",
    );
    let small = svg("<rect class=\"lining\" x=\"2\" y=\"2\" width=\"40\" height=\"20\"/>");
    let large = svg(
        "<rect class=\"binding\" x=\"2\" y=\"2\" width=\"40\" height=\"20\"/><use href=\"#iron\" x=\"5\" y=\"5\" width=\"10\" height=\"10\"/>",
    );
    let text = "# Make\n\n## Sew {#sew}\n\nSew.\n\n![What is sewn](empty.svg)\n\n## Press {#press for=large}\n\nPress.\n\n![What is pressed](large.svg)\n\n## Lay {#lay}\n\nLay.\n\n![How it lies](lay-{size}.svg)\n";
    let (_, all) = books(
        "[make.md]",
        &[
            ("make.md", text),
            ("empty.svg", &empty),
            ("large.svg", &large),
            ("lay-small.svg", &small),
            ("lay-medium.svg", &small),
            ("lay-large.svg", &large),
        ],
    );
    let views: Vec<Vec<Vec<usize>>> = steps(&all)
        .iter()
        .map(|step| {
            step.figure
                .iter()
                .flat_map(|picture| &picture.views)
                .map(|view| view.sizes.clone())
                .collect()
        })
        .collect();
    assert_eq!(views[0], [[0, 1, 2]], "one drawing for all sizes");
    assert_eq!(views[1], [[2]]);
    assert_eq!(
        views[2],
        [vec![0, 1], vec![2]],
        "each size has the drawing that was made for it"
    );
    let label =
        &all.drawings[&steps(&all)[0].figure.as_ref().expect("a diagram").views[0].drawing].svg;
    assert!(label.contains("15 (20, 25)"), "{label}");
    let classes: Vec<&str> = all.key.iter().map(|entry| entry.class.as_str()).collect();
    for class in ["lining", "binding", "iron"] {
        assert!(
            classes.contains(&class),
            "the key lacks {class}: {classes:?}"
        );
    }
}

/// The picture of the first step of a booklet with one diagram.
fn only_picture(inside: &str) -> (Picture, Vec<String>) {
    let svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 100 40\" width=\"100mm\">{inside}</svg>"
    );
    let text = "# Make\n\n## Sew {#sew}\n\nSew.\n\n![What is sewn](one.svg)\n";
    let (_, all) = books("[make.md]", &[("make.md", text), ("one.svg", &svg)]);
    let picture = steps(&all)[0].figure.clone().expect("a diagram");
    let drawn = picture
        .views
        .iter()
        .map(|view| all.drawings[&view.drawing].svg.clone())
        .collect();
    (picture, drawn)
}

#[test]
fn figures_in_a_label_keep_every_size_and_both_systems() {
    let (picture, drawn) = only_picture(
        "<text class=\"label\" x=\"2\" y=\"9\">cut <tspan font-weight=\"bold\">{width}</tspan> wide</text>",
    );
    assert_eq!(drawn.len(), 1);
    for figure in ["15", "20", "25", "5⅞", "7⅞", "9⅞", "cut", "wide"] {
        let told = drawn[0].contains(figure)
            || picture
                .notes
                .iter()
                .any(|note| note.each.iter().any(|(_, words)| words.contains(figure)));
        assert!(told, "{figure} is lost: {drawn:?} {:?}", picture.notes);
    }
}

#[test]
fn words_of_labels_that_differ_by_more_than_figures_are_told_below_the_diagram() {
    let (picture, drawn) = only_picture(
        "<text class=\"label\" x=\"2\" y=\"9\">{small: no pocket | else: pocket inside}</text>",
    );
    assert_eq!(drawn.len(), 1);
    assert!(drawn[0].contains(">a</text>"), "{}", drawn[0]);
    let told = picture
        .notes
        .iter()
        .map(|note| (note.letter, note.each.clone()));
    let told: Vec<_> = told.collect();
    let expected = vec![
        (vec![0], "no pocket".to_owned()),
        (vec![1, 2], "pocket inside".to_owned()),
    ];
    assert_eq!(told, [('a', expected)]);
}

#[test]
fn a_diagram_that_shows_another_thing_in_a_size_stands_once_for_each() {
    let (picture, _) = only_picture(
        "<rect class=\"lining\" x=\"2\" y=\"2\" width=\"40\" height=\"20\"/><path class=\"stitch\" display=\"{small: none | else: inline}\" d=\"M 2 9 H 40\"/>",
    );
    let sizes: Vec<Vec<usize>> = picture
        .views
        .iter()
        .map(|view| view.sizes.clone())
        .collect();
    assert_eq!(sizes, [vec![0], vec![1, 2]]);
}

#[test]
fn a_part_for_some_sizes_says_so_itself() {
    let (_, all) = books(
        "[make.md, more.md]",
        &[
            ("make.md", "# Make\n\n## Sew {#sew}\n\nSew.\n"),
            (
                "more.md",
                "# More {#more for=medium,large}\n\n## Line {#line for=large}\n\nLine.\n\n## Turn {#turn}\n\nTurn.\n",
            ),
        ],
    );
    assert_eq!(all.parts[0].sizes, [0, 1, 2]);
    assert_eq!(all.parts[1].sizes, [1, 2]);
    let of_steps: Vec<Vec<usize>> = all.parts[1]
        .steps
        .iter()
        .map(|step| step.sizes.clone())
        .collect();
    assert_eq!(of_steps, [vec![2], vec![1, 2]]);
}

#[test]
fn a_shared_part_that_is_used_twice_refers_to_its_own_steps() {
    let shared = "# Close {#close}\n\n## Sew {#sew}\n\nSew {gap}.\n\n## Press {#press}\n\nPress [](#sew), then see [](#close).\n";
    let (one, all) = books(
        "[{file: close.md, with: {gap: width}}, {file: close.md, with: {gap: strap}}]",
        &[("close.md", shared)],
    );
    for book in one.iter().chain([&all]) {
        let steps = steps(book);
        let told = |at: usize| match &steps[at].body[0] {
            Block::Paragraph { content } => content
                .iter()
                .filter_map(|inline| match inline {
                    Inline::Reference(reference) => Some(reference.id.clone()),
                    _ => None,
                })
                .collect::<Vec<_>>(),
            other => panic!("{other:?}"),
        };
        assert_eq!(told(1), [steps[0].id.clone(), book.parts[0].id.clone()]);
        assert_eq!(told(3), [steps[2].id.clone(), book.parts[1].id.clone()]);
    }
}

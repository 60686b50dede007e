//! Errata tell buyers what is cut, sewn or bought otherwise, in the right sizes, and nothing else.

use notchbook::book::Plain;
use notchbook::errata::{Errata, Matter, buyers_sheet, compare, next_edition, record_line};
use notchbook::manifest::{Manifest, read, write};

use super::{bench, edited, issued};

/// What has changed from the pouch to the pouch with some edits.
fn errata(edits: &[(&str, &str)]) -> (Errata, String) {
    let (old, new) = (edited(&[]), edited(edits));
    let errata = compare(&old, &new);
    let plain = Plain {
        book: &new.all,
        house: &new.words,
    };
    let sheet = buyers_sheet(&errata, &plain).text();
    (errata, sheet)
}

/// What is told, with the sizes that it is told of and what it means to whoever has cut.
fn told(errata: &Errata) -> Vec<(&str, Vec<usize>, Matter)> {
    let changes = errata.changes.iter();
    changes
        .map(|change| (change.what.as_str(), change.sizes.clone(), change.matter))
        .collect()
}

#[test]
fn nothing_has_changed_where_nothing_has() {
    let (errata, sheet) = errata(&[]);
    assert!(!errata.tells() && !errata.otherwise);
    assert_eq!(next_edition(&errata), None);
    assert!(
        sheet.contains("Nothing is cut, sewn or bought otherwise"),
        "{sheet}"
    );
}

#[test]
fn the_length_of_a_zip_is_told_in_its_size() {
    let (errata, sheet) = errata(&[("length: [25 cm, 30 cm]", "length: [25 cm, 35 cm]")]);
    assert_eq!(
        told(&errata),
        [("Closed-end zip, length", vec![1], Matter::Buy)]
    );
    let wanted = "Closed-end zip, length: 30 cm (11 3/4 in) before, now 35 cm (13 3/4 in).";
    assert!(sheet.contains(wanted), "{sheet}");
    assert!(errata.reprints.is_empty(), "{sheet}");
    assert_eq!(next_edition(&errata).as_deref(), Some("1.1.0"));
}

#[test]
fn the_allowance_of_one_step_is_told_in_its_size() {
    let (errata, sheet) = errata(&[
        (
            "side_seam: [1.5 cm (5/8 in), 1.5 cm (5/8 in)]",
            "side_seam: [1.5 cm (5/8 in), 1.2 cm (1/2 in)]",
        ),
        ("width + 2 * side_seam", "width + 3 cm"),
    ]);
    let own: Vec<_> = told(&errata);
    assert!(own.iter().all(|(_, sizes, _)| *sizes == [1]), "{own:?}");
    let step = |side: &str| format!("Step 2, “Sew the sides”, Sew front {side}");
    for side in ["left", "right"] {
        let any = own.iter().any(|(what, ..)| what.starts_with(&step(side)));
        assert!(any || sheet.contains("Step 2, “Sew the sides”"), "{sheet}");
    }
    assert!(
        sheet.contains("1.5 cm (5/8 in) before, now 1.2 cm (1/2 in)."),
        "{sheet}"
    );
    // Nothing that is cut has changed.
    assert!(
        own.iter().all(|(.., matter)| *matter != Matter::Cut),
        "{own:?}"
    );
    // The dashed line of the large side lies otherwise; nests show no seam.
    let sets: Vec<&str> = errata.reprints.iter().map(|set| set.of.as_str()).collect();
    assert_eq!(sets, ["Large"], "{sheet}");
}

#[test]
fn a_word_is_not_told() {
    let (errata, sheet) = errata(&[
        ("carefully", "with care"),
        ("A small pouch.", "A little pouch."),
    ]);
    assert!(!errata.tells() && errata.otherwise, "{sheet}");
    assert_eq!(next_edition(&errata).as_deref(), Some("1.0.1"));
}

#[test]
fn a_curve_that_moved_asks_for_its_sheets_again() {
    let (errata, sheet) = errata(&[("[6 cm, 12 cm]]", "[6.5 cm, 12 cm]]")]);
    assert_eq!(
        told(&errata),
        [("Piece “Pocket”, outline at side", vec![0, 1], Matter::Cut)]
    );
    assert!(sheet.contains("print sheets"), "{sheet}");
    // Every set that shows the pocket, and only the sheets with its curve.
    assert_eq!(errata.reprints.len(), 3, "{sheet}");
    let old = edited(&[]);
    for (set, of) in errata.reprints.iter().zip(["small", "large", "nested"]) {
        let pages = &old
            .sheets
            .iter()
            .find(|set| set.of == of)
            .expect("the set")
            .pages;
        let holds = |name: &String| {
            let page = pages.iter().find(|page| page.name == *name);
            page.is_some_and(|page| page.shows.iter().any(|shown| shown.piece == "pocket"))
        };
        assert!(
            !set.again.is_empty() && set.again.iter().all(holds),
            "{set:?}"
        );
        assert!(set.away.is_empty());
    }
    assert!(sheet.contains("cut again what is too small"), "{sheet}");
}

#[test]
fn what_comes_and_goes_is_told() {
    let (errata, sheet) = errata(&[
        (
            "tools: [Sewing machine, Iron,",
            "tools: [Sewing machine, Iron, Awl,",
        ),
        (
            "  zip: {kind: zip, name: Closed-end zip, length: [25 cm, 30 cm], count: 1}\n",
            "",
        ),
        ("    cut: {outer: 1}", "    cut: {outer: 2}"),
        (
            "## Sew the sides",
            "## Press the pieces {#press}\n\n```work\n- press: [front, back]\n```\n\nPress them.\n\n## Sew the sides",
        ),
    ]);
    for line in [
        "Awl: new.",
        "Closed-end zip: no longer there.",
        "Piece “Pocket” of Cotton, how many: 1 before, now 2.",
        "Step 2, “Press the pieces”: new.",
        "Step 3, “Sew the sides”: from here on the steps bear other numbers.",
    ] {
        assert!(sheet.contains(line), "{line}: {sheet}");
    }
    assert!(
        errata.changes.iter().all(|change| change.sizes == [0, 1]),
        "{sheet}"
    );
}

#[test]
fn a_size_that_comes_is_told_and_the_others_are_not() {
    let (old, new) = (
        edited(&[]),
        edited(&[
            (
                "{small: Small, large: Large}",
                "{small: Small, middle: Middle, large: Large}",
            ),
            (
                "side_seam: [1.5 cm (5/8 in),",
                "side_seam: [1.5 cm (5/8 in), 1.5 cm (5/8 in),",
            ),
            (
                "width: [15 cm (5 7/8 in),",
                "width: [15 cm (5 7/8 in), 18 cm (7 1/8 in),",
            ),
            (
                "height: [12 cm (4 3/4 in),",
                "height: [12 cm (4 3/4 in), 14 cm (5 1/2 in),",
            ),
            ("length: [25 cm,", "length: [25 cm, 25 cm,"),
        ]),
    );
    let errata = compare(&old, &new);
    assert_eq!(told(&errata), [("Size Middle", vec![1], Matter::Read)]);
    let sets: Vec<&str> = errata.reprints.iter().map(|set| set.of.as_str()).collect();
    assert_eq!(sets, ["Middle", "all sizes nested"]);
}

/// The same edition, written and read, is the same; and every demo against itself tells nothing.
#[test]
fn no_demo_differs_from_itself() {
    bench::demos(|name, workshop| {
        let manifest = issued(workshop);
        let back = read(&write(&manifest).expect("JSON")).expect("a manifest");
        let errata = compare(&back, &manifest);
        assert!(!errata.tells() && !errata.otherwise, "{name}: {errata:?}");
    });
}

/// The line for the record is an entry that checks clean where it is put.
#[test]
fn the_line_for_the_record_can_be_put_into_the_facts() {
    let new = edited(&[
        ("[6 cm, 12 cm]]", "[6.5 cm, 12 cm]]"),
        ("length: [25 cm, 30 cm]", "length: [25 cm, 35 cm]"),
    ]);
    let errata = compare(&edited(&[]), &new);
    let plain = Plain {
        book: &new.all,
        house: &new.words,
    };
    let line = record_line(&errata, "1.1.0", &plain);
    let facts = super::FACTS
        .replace("edition: 1.0.0\nlanguage", "edition: 1.1.0\nlanguage")
        .replace("editions:\n", &format!("editions:\n{line}\n"));
    let before = |text: &str| -> Vec<String> {
        bench::written(
            &[("booklet.yaml", text), ("make.md", super::STEPS)],
            |workshop| {
                let found = workshop.report.findings.iter();
                found
                    .map(|finding| format!("{}: {}", finding.code(), finding.message))
                    .collect()
            },
        )
    };
    assert_eq!(before(&facts), before(super::FACTS), "{line}");
}

/// An answer is told where a figure in it is another, and not where its words are; nor is a question that comes.
#[test]
fn an_answer_is_told_where_its_figures_change() {
    let with = |answer: &str| {
        let facts = super::FACTS.replace("parts: [make.md]", "parts: [make.md]\nhelp: help.md");
        let help = format!("## Why does it wave? {{#sew}}\n\n{answer}\n");
        let files = [
            ("booklet.yaml", facts.as_str()),
            ("make.md", super::STEPS),
            ("help.md", &help),
        ];
        bench::written(&files, issued)
    };
    let old = with("It was stretched. Sew {3 cm} at a time.");
    let told_of = |new: &Manifest| compare(&old, new);
    let words = told_of(&with("The cloth was stretched. Sew {3 cm} at a time."));
    assert!(!words.tells() && words.otherwise, "{words:?}");
    let figure = told_of(&with("It was stretched. Sew {4 cm} at a time."));
    assert_eq!(
        told(&figure),
        [("Answer to “Why does it wave?”", vec![0, 1], Matter::Read)]
    );
    let comes = compare(&edited(&[]), &old);
    assert!(!comes.tells() && comes.otherwise, "{comes:?}");
}

/// Sizes that are told the same are named once, whatever it means to whoever has cut, and so they are in the record.
#[test]
fn sizes_are_named_once() {
    let edits = [
        ("width: [15 cm (5 7/8 in)", "width: [16 cm (6 1/4 in)"),
        ("length: [25 cm, 30 cm]", "length: [30 cm, 30 cm]"),
        ("seam: 1 cm (3/8 in)", "seam: 1.2 cm (1/2 in)"),
    ];
    let (errata, sheet) = errata(&edits);
    let new = edited(&edits);
    let plain = Plain {
        book: &new.all,
        house: &new.words,
    };
    let line = record_line(&errata, "1.1.0", &plain);
    assert!(line.contains("\"Changed: Piece “Side” of Cotton"), "{line}");
    assert_eq!(line.matches("Small: ").count(), 1, "{line}");
    assert!(line.contains(" Small: Closed-end zip, length"), "{line}");
    let named = sheet.lines().filter(|line| *line == "Small:").count();
    assert_eq!(named, 1, "{sheet}");
}

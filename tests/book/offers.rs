//! What is left to the maker stands beside the lists and not in them, in one size and in all.

use notchbook::book::{Book, CutList};
use notchbook::typeset::{Paper, Press};

use crate::bench::written;

const FACTS: &str = "\
title: Peg Bag
edition: 1.0.0
sizes: {small: Small, large: Large}
measurements:
  width: [20 cm (7 7/8 in), 30 cm (11 3/4 in)]
fabrics:
  outer: {name: Canvas, widths: [112 cm (44 in)]}
  fusible: {name: Fusible wadding, widths: [45 cm], grain: no}
  sewn: {name: Sewn wadding, widths: [90 cm], grain: no}
notions:
  thread: {kind: thread, name: Thread}
  ring: {kind: fastener, name: Ring, size: 2 cm, count: 1}
  webbing: {kind: tape, name: Webbing, width: 3 cm, cut: {strap: {length: width, count: 1}, loop: {length: 8 cm, count: 1}}}
pieces:
  body: {name: Body, outline: {rectangle: [width, width]}, raw: all, cut: {outer: 1}}
  pull: {name: Pull, outline: {rectangle: [width, 40 cm]}, raw: all, grain: vertical, cut: {outer: 1}}
  pad: {name: Pad, outline: {rectangle: [width, width]}, raw: all, cut: {fusible: [pad_fused], sewn: [pad_sewn]}}
editions:
  - {edition: 1.0.0, changes: First edition.}
parts: [make.md]
";

const WORDS: &str = "\
# Make it

## Cut {#cut}

```work
- cut: all
```

Cut.

## Sew the strap on {#strap-on}

```work
- {topstitch: [strap, body], stitch: 3 mm}
```

Sew it on.

## Fuse the wadding {#fused or=wadding}

```work
- fuse: [body, pad_fused]
```

Fuse it.

## Stitch the wadding on {#stitched or=wadding}

```work
- {topstitch: [pad_sewn, body], stitch: 3 mm}
```

Stitch it.

## Make the pull {#pull optional}

```work
- {topstitch: [pull, body], stitch: 3 mm}
- {topstitch: [loop, pull], stitch: 3 mm}
- {attach: [ring, loop], by: hand}
```

Sew it on, if you like.
";

fn pieces(cuts: &[CutList]) -> Vec<&str> {
    let rows = cuts.iter().flat_map(|list| &list.rows);
    rows.map(|row| row.id.as_str()).collect()
}

/// What must hold of a book, with the numbers of its sizes.
fn holds(book: &Book) {
    assert_eq!(pieces(&book.cuts), ["body", "strap"]);
    let [fused, stitched, pull] = book.offers.as_slice() else {
        panic!("{:?}", book.offers);
    };
    assert_eq!(pieces(&fused.cuts), ["pad"]);
    assert_eq!(pieces(&stitched.cuts), ["pad"]);
    assert_eq!(pieces(&pull.cuts), ["pull", "loop"]);
    assert_eq!(fused.choice.as_deref(), Some("wadding"));
    assert_eq!(pull.choice, None);
    let names = |of: &[notchbook::book::FabricNeed]| -> Vec<String> {
        of.iter().map(|fabric| fabric.id.clone()).collect()
    };
    assert_eq!(names(&fused.fabrics), ["fusible"]);
    assert_eq!(names(&pull.fabrics), ["outer"]);
    let notions: Vec<&str> = pull.notions.iter().map(|one| one.id.as_str()).collect();
    assert_eq!(notions, ["ring", "webbing"]);
    assert!(book.notions.iter().all(|one| one.id != "ring"));
    for (at, amount) in pull.fabrics[0].widths[0].amounts.iter().enumerate() {
        let own = book.fabrics.iter().find(|fabric| fabric.id == "outer");
        let always = own.expect("outer").widths[0].amounts[at].clone();
        assert_ne!(always, *amount, "with the pull more is bought");
    }
}

#[test]
fn what_is_left_to_the_maker_is_told_beside_the_lists() {
    written(&[("booklet.yaml", FACTS), ("make.md", WORDS)], |compiled| {
        let findings = &compiled.report.findings;
        assert!(findings.is_empty(), "{findings:?}");
        let (books, all) = crate::shelf::books(compiled);
        for book in books.iter().chain([&all]) {
            holds(book);
            let sheaf = compiled.sheaf(book, Paper::A4);
            let keys: Vec<&serde_json::Value> = sheaf.data["parts"][0]["steps"]
                .as_array()
                .expect("steps")
                .iter()
                .map(|step| &step["stake"]["key"])
                .collect();
            let told = ["offer_either", "offer_or", "offer_optional"];
            assert_eq!(keys[2..], told);
            if let Err(faults) = Press::new(&compiled.house).print(&sheaf) {
                panic!("{faults:?}");
            }
        }
    });
}

#[test]
fn where_an_offer_adds_nothing_the_amount_stands_as_it_is() {
    let facts = FACTS
        .replace(
            "width: [20 cm (7 7/8 in), 30 cm (11 3/4 in)]",
            "width: [20 cm (7 7/8 in), 40 cm (15 3/4 in)]",
        )
        .replace("widths: [112 cm (44 in)]", "widths: [45 cm]")
        .replace("rectangle: [width, 40 cm]", "rectangle: [10 cm, 15 cm]");
    written(
        &[("booklet.yaml", &facts), ("make.md", WORDS)],
        |compiled| {
            let (books, all) = crate::shelf::books(compiled);
            assert!(
                books[0].offers[2].fabrics.is_empty(),
                "it lies beside the body"
            );
            let with = &all.offers[2].fabrics[0].widths[0].amounts;
            let always = all
                .fabrics
                .iter()
                .find(|fabric| fabric.id == "outer")
                .expect("outer");
            let always = &always.widths[0].amounts;
            assert!(with.iter().all(Option::is_some), "{with:?}");
            assert_eq!(with[0], always[0]);
            assert_ne!(with[1], always[1]);
        },
    );
}

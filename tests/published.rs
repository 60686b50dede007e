//! What is published: the manifest holds an edition whole, errata tell what buyers must know and nothing else, and the
//! folder for the shop is whole, the same every time, and never replaced.

#[path = "outside/bench.rs"]
mod bench;
#[path = "published/damaged.rs"]
mod damaged;
#[path = "published/errata.rs"]
mod errata;
#[path = "published/folder.rs"]
mod folder;
#[path = "published/manifest.rs"]
mod manifest;
#[path = "published/schema.rs"]
mod schema;
#[path = "out/shop.rs"]
#[allow(dead_code, reason = "other tests ask more of the shop")]
mod shop;

use notchbook::manifest::Manifest;
use notchbook::pipeline::Workshop;
use notchbook::sheets::SheetPaper;

/// The manifest of a booklet: sheets of each size and of all, on A4.
pub fn issued(workshop: &Workshop) -> Manifest {
    let sizes = workshop.sizes.iter().enumerate();
    let mut sets: Vec<(String, Vec<usize>)> =
        sizes.map(|(at, size)| (size.clone(), vec![at])).collect();
    sets.push(("nested".to_owned(), (0..workshop.sizes.len()).collect()));
    workshop
        .manifest(&sets, &[SheetPaper::A4])
        .expect("facts to work with")
}

/// The facts of a small pouch with a zip and a curved pocket.
pub const FACTS: &str = r#"
title: Ebb Pouch
designer: Pebble Lane Patterns
edition: 1.0.0
language: en-GB
summary: A small pouch.
sizes: {small: Small, large: Large}
measurements:
  seam: 1 cm (3/8 in)
  side_seam: [1.5 cm (5/8 in), 1.5 cm (5/8 in)]
  width: [15 cm (5 7/8 in), 21 cm (8 1/4 in)]
  height: [12 cm (4 3/4 in), 16 cm (6 1/4 in)]
fabrics:
  outer: {name: Cotton, widths: [110 cm]}
notions:
  thread: {kind: thread, name: Sewing thread}
  zip: {kind: zip, name: Closed-end zip, length: [25 cm, 30 cm], count: 1}
tools: [Sewing machine, Iron, Scissors, Pins, Hand needle]
pieces:
  side:
    name: Side
    outline: {rectangle: [width + 2 * side_seam, height + 2 * seam]}
    allowance: {all: seam, left: side_seam, right: side_seam}
    grain: vertical
    cut: {outer: [front, back]}
  pocket:
    name: Pocket
    outline:
      path:
        - start: [0 cm, 0 cm]
        - top: [10 cm, 0 cm]
        - side: {to: [0 cm, 12 cm], curve: [[10 cm, 7 cm], [6 cm, 12 cm]]}
        - centre: close
    raw: all
    grain: vertical
    cut: {outer: 1}
terms: For home sewing.
parts: [make.md]
editions:
  - {edition: 1.0.0, changes: First edition.}
"#;

/// Its steps.
pub const STEPS: &str = r#"# Make the pouch

## Cut the pieces {#cut}

```work
- cut: all
```

Cut everything.

## Sew the sides {#sew}

```work
- {sew: [front.left, back.left], allowance: side_seam, stitch: 2.5 mm}
- {sew: [front.right, back.right], allowance: side_seam, stitch: 2.5 mm}
- {sew: [front.bottom, back.bottom], allowance: seam, stitch: 2.5 mm}
```

Lay the pieces on each other carefully and sew them.
"#;

/// The manifest of the pouch after some edits, each of which must find its words.
pub fn edited(edits: &[(&str, &str)]) -> Manifest {
    let (mut facts, mut steps) = (FACTS.to_owned(), STEPS.to_owned());
    for (find, put) in edits {
        assert!(
            facts.contains(find) || steps.contains(find),
            "nothing to edit: {find}"
        );
        facts = facts.replace(find, put);
        steps = steps.replace(find, put);
    }
    bench::written(&[("booklet.yaml", &facts), ("make.md", &steps)], issued)
}

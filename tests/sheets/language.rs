//! A booklet's own words of the house reach its cutting layouts and its pattern sheets: none is left in English.

use notchbook::pipeline::Workshop;
use notchbook::sheets::{SheetPaper, draw_sheets, plan_all_sizes, plan_one_size};

use crate::bench::written;
use crate::crossed::{english, labels, texts};

const FACTS: &str = "title: POUCH
edition: 1.0.0
sizes: {s: S, m: M, l: L}
measurements:
  wide: [30 cm, 34 cm, 38 cm]
fabrics:
  outer: {name: XX, widths: [110 cm], nap: yes}
  back: {name: XX X, widths: [110 cm]}
notions:
  zip: {kind: zip, name: ZIP, length: 60 cm, count: 1}
  thread: {kind: thread, name: THREAD}
pieces:
  front: {name: FRONT, outline: {rectangle: [wide, 60 cm]}, fold: left, allowance: 1 cm, grain: vertical, cut: {outer: 1}}
  side: {name: SIDE, outline: {rectangle: [20 cm, 60 cm]}, allowance: 1 cm, grain: vertical, mirrored: yes, cut: {outer: [x, xx]}}
  tab: {name: TAB, outline: {path: [{start: [0 cm, 0 cm]}, {top: [9 cm, 0 cm]}, {slant: [4 cm, 14 cm]}, {close: close}]}, raw: all, grain: vertical, cut: {outer: 1, back: 3}}
  pad: {name: PAD, outline: {rectangle: [20 cm, 20 cm]}, cut_larger: 2 cm, allowance: 1 cm, grain: vertical, cut: {back: 1}}
parts: [make.md]
";

const MAKE: &str = "# MAKE

## CUT {#cut}

```work
- cut: all
- {sew: [x.left, zip.tape_a], allowance: 1 cm, stitch: 2.5 mm}
```

CUT ALL.
";

#[test]
fn layouts_and_sheets_speak_the_language_of_the_booklet() {
    let own = labels();
    let files = [
        ("booklet.yaml", FACTS),
        ("make.md", MAKE),
        ("templates/labels-en.json", &own),
    ];
    written(&files, |compiled: &Workshop| {
        let mut seen = Vec::new();
        for edition in compiled.editions() {
            let book = compiled.book(edition, SheetPaper::A4);
            assert!(book.layouts.len() > 1, "two fabrics are laid");
            for layout in &book.layouts {
                seen.extend(texts(&book.drawings[&layout.drawing].svg));
            }
        }
        let all: Vec<_> = compiled.editions().iter().collect();
        for paper in [SheetPaper::A4, SheetPaper::A0, SheetPaper::Projector] {
            let plans = [
                plan_one_size(all[0], paper),
                plan_all_sizes(compiled.editions(), paper),
            ];
            for plan in plans {
                let editions = if plan.sizes.len() == 1 {
                    &all[..1]
                } else {
                    &all[..]
                };
                let sheets = draw_sheets(&plan, editions, "POUCH", "1").expect("pages");
                for page in sheets.pages {
                    seen.extend(texts(&page.svg));
                    seen.extend(page.notes.into_iter().map(|note| note.text));
                    seen.push(page.alt);
                }
            }
        }
        assert!(seen.len() > 100, "{} words", seen.len());
        let mut left: Vec<String> = seen.iter().flat_map(|text| english(text)).collect();
        left.sort();
        left.dedup();
        assert!(left.is_empty(), "left in English: {left:?}");
    });
}

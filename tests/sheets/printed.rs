//! The PDFs of the sheets: the pages that the booklet's own map lists, and the same bytes each time.

use notchbook::sheets::{SheetPaper, draw_sheets, plan_one_size};
use notchbook::typeset::{Paper, Press};
use serde_json::json;

use crate::bench::{demo, demos};
use crate::reader::Read;

/// The sheets of one size as a PDF.
fn print(compiled: &notchbook::pipeline::Workshop, size: usize, paper: SheetPaper) -> Vec<u8> {
    let edition = &compiled.editions()[size];
    let facts = &edition.draft.facts;
    let plan = plan_one_size(edition, paper);
    let sheets = draw_sheets(&plan, &[edition], &facts.title.text, &facts.edition.text)
        .expect("pages that readers open");
    let about = json!({ "title": "Sheets", "designer": "", "language": "en-GB", "date_iso": null });
    match Press::new(&compiled.house).print_sheets(&sheets, &about) {
        Ok(printed) => printed.pdf,
        Err(faults) => panic!("{faults:?}"),
    }
}

/// The bookmarks of the sheets' PDF are the names of its pages, in order (ISO 32000-1, 12.3.3).
#[test]
fn the_map_in_the_booklet_lists_the_sheets_of_the_pdf() {
    let mut wrong = Vec::new();
    demos(|name, compiled| {
        for edition in compiled.editions() {
            for (paper, sheet) in [
                (Paper::A4, SheetPaper::A4),
                (Paper::Letter, SheetPaper::Letter),
            ] {
                let book = compiled.book(edition, sheet);
                let map = book.map.expect("a map of the sheets");
                let listed: Vec<&str> = map.sheets.iter().map(String::as_str).collect();
                let pdf = Read::of(&print(compiled, edition.size(), sheet));
                let bookmarks = pdf.bookmarks();
                let pages: Vec<&str> = bookmarks.iter().map(|(_, title)| title.as_str()).collect();
                let size = &edition.size_facts().name;
                if listed.is_empty() || listed != pages || pages.len() != pdf.pages().len() {
                    wrong.push(format!("{name}, {size}, {}: the map lists {listed:?}, the PDF has {pages:?} on {} pages", paper.name(), pdf.pages().len()));
                }
            }
        }
    });
    assert!(wrong.is_empty(), "\n{}\n", wrong.join("\n"));
}

#[test]
fn the_same_bytes_twice() {
    for paper in [SheetPaper::A4, SheetPaper::Roll] {
        let printed = || demo("orchard-apron", |compiled| print(compiled, 0, paper));
        assert!(printed() == printed(), "{paper:?}: two runs differ");
    }
}

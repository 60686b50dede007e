//! The page for a screen, which `build` makes beside the PDFs: every size, and all of them.

use super::press::{Content, Job};
use super::sets::ALL;
use crate::book::Book;
use crate::measure::System;
use crate::out::Origin;
use crate::pipeline::Workshop;
use crate::sheets::SheetPaper;
use crate::source::BookletFolder;
use crate::typeset::{Paper, PressFault};
use crate::web::{self, Leaf, Page};

/// The job of one page from the books of its sizes; `None` where there are none. It speaks of the pattern sheets of one
/// paper.
pub(super) fn job(booklet: &BookletFolder, workshop: &Workshop, books: &[Book], sheets: SheetPaper) -> Option<Job> {
    let word = |key: &str| workshop.labels.words.get(key).and_then(|word| word.as_str()).unwrap_or_default().to_owned();
    let leaf = |key: &str, name: String, group: Option<String>, book: &Book| {
        Leaf { key: key.to_owned(), name, group, sheaf: workshop.sheaf(book, Paper::Phone) }
    };
    let mut leaves = Vec::new();
    if books.len() > 1 {
        let all = workshop.book_of_all(books, sheets)?;
        leaves.push(leaf(ALL, word("all_sizes"), None, &all));
    }
    for book in books {
        let own = book.shown.first().and_then(|size| Some((*size, book.sizes.get(*size)?)));
        let Some((at, size)) = own else { continue };
        let view = book.views.iter().find(|view| view.sizes.contains(&at)).map(|view| view.name.clone());
        leaves.push(leaf(&size.id, size.name.clone(), view, book));
    }
    (!leaves.is_empty()).then(|| Job {
        path: format!("{}.html", booklet.name),
        origin: Origin { kind: "page".to_owned(), of: ALL.to_owned() },
        size: None,
        content: Content::Page(leaves),
    })
}

/// Prints a page.
pub(super) fn print(booklet: &str, workshop: &Workshop, leaves: &[Leaf]) -> Result<String, Vec<PressFault>> {
    let show = workshop.draft().map(|draft| &draft.facts.show);
    let systems: Vec<&'static str> =
        show.into_iter().flat_map(|show| [Some(show.first), show.second]).flatten().map(System::name).collect();
    let page = Page { booklet, leaves, systems: &systems };
    web::page(&page, &workshop.house, &workshop.labels.words).map_err(|fault| {
        let place = fault.place.map(|(template, bytes)| (format!("/{template}"), bytes));
        vec![PressFault { message: fault.message, hint: String::new(), place }]
    })
}

//! The page for a screen, which `build` makes beside the PDFs.

use super::press::{Content, Job};
use super::sets::ALL;
use crate::book::{self, Book};
use crate::out::Origin;
use crate::pipeline::Workshop;
use crate::sheets::SheetPaper;
use crate::source::BookletFolder;

/// The job of one page from the books of its sizes; `None` where there are none. It speaks of the pattern sheets of one
/// paper.
pub(super) fn job(booklet: &BookletFolder, workshop: &Workshop, books: &[Book], sheets: SheetPaper) -> Option<Job> {
    let leaves = workshop.leaves(books, sheets);
    (!leaves.is_empty()).then(|| Job {
        path: format!("{}.html", booklet.name),
        origin: Origin { kind: "page".to_owned(), of: ALL.to_owned() },
        size: None,
        content: Content::Page(leaves),
    })
}

/// The job of the list of chapters; `None` where there is no video.
pub(super) fn chapters(
    booklet: &BookletFolder,
    workshop: &Workshop,
    books: &[Book],
    sheets: SheetPaper,
) -> Option<Job> {
    if books.iter().all(|book| book.film.is_none()) {
        return None;
    }
    let words = match books {
        [only] => book::chapters(only),
        several => workshop.book_of_all(several, sheets).as_ref().and_then(book::chapters),
    };
    words.map(|words| Job {
        path: format!("{}-chapters.txt", booklet.name),
        origin: Origin { kind: "chapters".to_owned(), of: ALL.to_owned() },
        size: None,
        content: Content::Words(words),
    })
}

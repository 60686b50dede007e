//! The booklets of a pattern: one for each size, and the one for all.

use notchbook::book::Book;
use notchbook::pipeline::Workshop;
use notchbook::sheets::SheetPaper;

/// On A4: each size by itself, in the order of the sizes, and all in one.
pub fn books(compiled: &Workshop) -> (Vec<Book>, Book) {
    let books: Vec<Book> = compiled
        .editions()
        .iter()
        .map(|edition| compiled.book(edition, SheetPaper::A4))
        .collect();
    let all = compiled
        .book_of_all(&books, SheetPaper::A4)
        .expect("a book of all sizes");
    (books, all)
}

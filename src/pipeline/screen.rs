//! The page for a screen made from a finished workshop: every size, and all of them together.

use super::workshop::Workshop;
use crate::book::Book;
use crate::measure::System;
use crate::sheets::SheetPaper;
use crate::typeset::{Paper, PressFault};
use crate::web::{self, EVERY, Leaf, Page};

impl Workshop {
    /// What the page shows for each choice of sizes, from the books of single sizes: all together first, where there are
    /// several. It speaks of the pattern sheets of one paper.
    pub fn leaves(&self, books: &[Book], sheets: SheetPaper) -> Vec<Leaf> {
        let word = |key: &str| self.labels.words.get(key).and_then(|word| word.as_str()).unwrap_or_default().to_owned();
        let leaf = |key: &str, name: String, group: Option<String>, book: &Book| Leaf {
            key: key.to_owned(),
            name,
            group,
            sheaf: self.sheaf(book, Paper::Phone),
        };
        let all = if books.len() > 1 { self.book_of_all(books, sheets) } else { None };
        let mut leaves: Vec<Leaf> = all.iter().map(|all| leaf(EVERY, word("all_sizes"), None, all)).collect();
        for book in books {
            let own = book.shown.first().and_then(|size| Some((*size, book.sizes.get(*size)?)));
            let Some((at, size)) = own else { continue };
            let view = book.views.iter().find(|view| view.sizes.contains(&at)).map(|view| view.name.clone());
            leaves.push(leaf(&size.id, size.name.clone(), view, book));
        }
        leaves
    }

    /// The page of a booklet as one file of HTML.
    ///
    /// # Errors
    /// When a template, the house's or the booklet's own, cannot be used.
    pub fn screen(&self, booklet: &str, leaves: &[Leaf]) -> Result<String, PressFault> {
        let show = self.draft().map(|draft| &draft.facts.show);
        let systems: Vec<&'static str> =
            show.into_iter().flat_map(|show| [Some(show.first), show.second]).flatten().map(System::name).collect();
        let page = Page { booklet, leaves, systems: &systems };
        web::page(&page, &self.house, &self.labels.words).map_err(|fault| {
            let place = fault.place.map(|(template, bytes)| (format!("/{template}"), bytes));
            PressFault { message: fault.message, hint: String::new(), place }
        })
    }
}

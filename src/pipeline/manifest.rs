//! The manifest of a finished workshop.

use super::workshop::Workshop;
use crate::book::{Book, HouseWords};
use crate::manifest::{Issued, Manifest, gather};
use crate::sheets::{SheetPaper, plan_sizes};

/// A set of sizes, and what files call it.
pub type NamedSet = (String, Vec<usize>);

impl Workshop {
    /// The words that templates print, by their keys.
    pub fn house_words(&self) -> HouseWords {
        let words = self.labels.words.iter().filter_map(|(key, words)| Some((key.clone(), words.as_str()?.to_owned())));
        words.collect()
    }

    /// The book of each size and of all of them, with the map of one paper; `None` where there are no sizes.
    pub fn books(&self, paper: SheetPaper) -> Option<(Vec<Book>, Book)> {
        let books: Vec<Book> = self.editions().iter().map(|edition| self.book(edition, paper)).collect();
        let all = match books.as_slice() {
            [only] => only.clone(),
            books => self.book_of_all(books, paper)?,
        };
        Some((books, all))
    }

    /// Everything that an edition holds, with the pattern sheets of some sets on some papers; `None` where there are no
    /// facts to work with.
    pub fn manifest(&self, sets: &[NamedSet], papers: &[SheetPaper]) -> Option<Manifest> {
        let draft = self.draft()?;
        let (sizes, all) = self.books(papers.first().copied().unwrap_or(SheetPaper::A4))?;
        let mut sheets = Vec::new();
        for paper in papers {
            for (name, own) in sets {
                let editions: Vec<_> = self.editions().iter().filter(|one| own.contains(&one.size())).collect();
                let plan = plan_sizes(&editions, *paper);
                if !plan.pieces.is_empty() {
                    sheets.push((name.clone(), plan));
                }
            }
        }
        let mut words = self.house_words();
        // What an editor is shown is no part of an edition.
        words.retain(|key, _| !key.starts_with("proof_"));
        let issued = Issued { booklet: &draft.name, words, all, sizes, sheets };
        Some(gather(self.editions(), issued))
    }
}

//! Every file of a booklet that is printed: on each paper, for each size, view or all.

use std::collections::{BTreeMap, BTreeSet};

use super::press::{Content, Job};
use super::sets::{ALL, Set};
use super::{Refusal, page, sheets};
use crate::book::Book;
use crate::out::Origin;
use crate::pipeline::Workshop;
use crate::sheets::SheetPaper;
use crate::source::BookletFolder;
use crate::typeset::Paper;

/// The books of single sizes, gathered once for all that is made of them.
pub(super) struct Books {
    /// By the paper of the pattern sheets that they speak of.
    by_sheets: BTreeMap<SheetPaper, Vec<Book>>,
}

impl Books {
    /// Gathers the books of some sizes for some papers.
    pub fn gather(workshop: &Workshop, papers: &[Paper], sizes: &[usize]) -> Books {
        let sheets: BTreeSet<SheetPaper> = papers.iter().map(|paper| paper.of_sheets()).collect();
        let wanted = || workshop.editions().iter().filter(|edition| sizes.contains(&edition.size()));
        let on = |paper| (paper, wanted().map(|edition| workshop.book(edition, paper)).collect());
        Books { by_sheets: sheets.into_iter().map(on).collect() }
    }

    fn on(&self, paper: Paper) -> &[Book] {
        self.by_sheets.get(&paper.of_sheets()).map_or(&[], Vec::as_slice)
    }
}

/// The booklets of some sets on some papers.
pub(super) fn booklets(name: &str, workshop: &Workshop, papers: &[Paper], sets: &[Set], books: &Books) -> Vec<Job> {
    let mut jobs = Vec::new();
    for paper in papers {
        for set in sets {
            let own = set.books(books.on(*paper));
            let book = match own.as_slice() {
                [only] => Some(only.clone()),
                own => workshop.book_of_all(own, paper.of_sheets()),
            };
            let of = set.id.as_deref().unwrap_or(ALL);
            jobs.extend(book.map(|book| Job {
                path: format!("{name}-{of}-{}.pdf", paper.name()),
                origin: Origin { kind: format!("booklet {}", paper.name()), of: of.to_owned() },
                size: set.only(),
                content: Content::Booklet(Box::new(workshop.sheaf(&book, *paper))),
            }));
        }
    }
    jobs
}

/// The page for a screen, and the chapters of a video: they speak of the pattern sheets of the first paper.
pub(super) fn screen(booklet: &BookletFolder, workshop: &Workshop, papers: &[Paper], books: &Books) -> Vec<Job> {
    let Some(paper) = papers.first() else { return Vec::new() };
    let (books, sheets) = (books.on(*paper), paper.of_sheets());
    let page = page::job(booklet, workshop, books, sheets);
    page.into_iter().chain(page::chapters(booklet, workshop, books, sheets)).collect()
}

/// The pattern sheets of some sets, on the papers that belong with those of the booklets.
pub(super) fn pattern_sheets(
    booklet: &BookletFolder,
    workshop: &Workshop,
    papers: &[Paper],
    sets: &[Set],
) -> Result<Vec<Job>, Refusal> {
    let mut unheard = Vec::new();
    let mut jobs = Vec::new();
    let printed: BTreeSet<_> =
        papers.iter().filter(|paper| paper.is_printed()).map(|paper| paper.of_sheets()).collect();
    for paper in printed {
        for set in sets {
            jobs.extend(sheets::job(booklet, workshop, set, paper, &mut unheard)?);
        }
    }
    Ok(jobs)
}

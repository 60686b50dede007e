//! `build`: one booklet for each size and paper, and its pattern sheets; all of a booklet or none.

use std::collections::BTreeSet;
use std::path::Path;

use super::apart::Bounds;
use super::args::{BuildArgs, Form};
use super::press::{Content, Job, print_all};
use super::sets::{ALL, sets};
use super::{Outcome, Refusal, apart, choose, output, page, sheets};
use crate::book::Book;
use crate::out::Origin;
use crate::pipeline::{Reach, Workshop};
use crate::source::BookletFolder;
use crate::typeset::Paper;

pub(super) fn run(folder: Option<&Path>, args: &BuildArgs, bounds: Bounds) -> Result<Outcome, Refusal> {
    let choice = choose::booklets(folder, &args.booklets)?;
    choose::distinct(&choice.booklets)?;
    let mut papers: Vec<Paper> = args.paper.iter().map(|name| name.paper()).collect();
    papers.sort_unstable();
    papers.dedup();
    apart::each(&choice, bounds, |booklet| {
        let workshop = Workshop::open(&choice.folder, booklet, Reach::Checks);
        let outcome = one(booklet, workshop, &papers, args)?;
        // What Typst remembers of one booklet is of little use to the next.
        comemo::evict(0);
        Ok(outcome)
    })
}

fn one(
    booklet: &BookletFolder,
    mut workshop: Workshop,
    papers: &[Paper],
    args: &BuildArgs,
) -> Result<Outcome, Refusal> {
    let workshop = &mut workshop;
    output::report(&workshop.report, workshop, Form::People);
    if output::outcome(&workshop.report, &args.strictness) != Outcome::Clean {
        output::verdict(&booklet.name, workshop, &workshop.report);
        output::line(&format!("{}: nothing was built; what was built before is untouched", booklet.name));
        return Ok(Outcome::Findings);
    }
    let sizes = choose::sizes(workshop, &args.size, &booklet.name)?;
    workshop.lay_cloth_well();
    let workshop = &*workshop;
    let sets = sets(workshop, &sizes, args.size.is_empty(), args.only_sizes);
    let mut jobs = Vec::new();
    for paper in papers {
        let wanted = workshop.editions().iter().filter(|edition| sizes.contains(&edition.size()));
        let books: Vec<Book> = wanted.map(|edition| workshop.book(edition, paper.of_sheets())).collect();
        for set in &sets {
            let own = set.books(&books);
            let book = match own.as_slice() {
                [only] => Some(only.clone()),
                own => workshop.book_of_all(own, paper.of_sheets()),
            };
            let of = set.id.as_deref().unwrap_or(ALL);
            jobs.extend(book.map(|book| Job {
                path: format!("{}-{of}-{}.pdf", booklet.name, paper.name()),
                origin: Origin { kind: format!("booklet {}", paper.name()), of: of.to_owned() },
                size: set.only(),
                content: Content::Booklet(Box::new(workshop.sheaf(&book, *paper))),
            }));
        }
    }
    if !args.no_page
        && !args.only_sizes
        && args.size.is_empty()
        && let Some(paper) = papers.first()
    {
        let books: Vec<Book> =
            workshop.editions().iter().map(|edition| workshop.book(edition, paper.of_sheets())).collect();
        jobs.extend(page::job(booklet, workshop, &books, paper.of_sheets()));
        jobs.extend(page::chapters(booklet, workshop, &books, paper.of_sheets()));
    }
    if !args.no_sheets {
        let mut unheard = Vec::new();
        let printed: BTreeSet<_> =
            papers.iter().filter(|paper| paper.is_printed()).map(|paper| paper.of_sheets()).collect();
        for paper in printed {
            for set in &sets {
                jobs.extend(sheets::job(booklet, workshop, set, paper, &mut unheard)?);
            }
        }
    }
    print_all(&booklet.name, workshop, jobs, &args.out, &args.strictness)
}

//! `build`: one booklet for each size and paper, and its pattern sheets; all of a booklet or none.

use std::path::Path;

use super::args::{BuildArgs, Form};
use super::press::{Content, Job, print_all};
use super::{Outcome, Refusal, choose, output, sheets};
use crate::book::Book;
use crate::pipeline::{Reach, Workshop};
use crate::sheets::{plan_all_sizes, plan_one_size};
use crate::source::BookletFolder;
use crate::typeset::Paper;

pub(super) fn run(folder: Option<&Path>, args: &BuildArgs) -> Result<Outcome, Refusal> {
    let choice = choose::booklets(folder, &args.booklets)?;
    choose::distinct(&choice.booklets)?;
    let mut papers: Vec<Paper> = args.paper.iter().map(|name| name.paper()).collect();
    papers.sort_unstable();
    papers.dedup();
    let mut worst = Outcome::Clean;
    for booklet in &choice.booklets {
        let workshop = Workshop::open(&choice.folder, booklet, Reach::Checks);
        let outcome = one(booklet, workshop, &papers, args)?;
        worst = worst.max(outcome);
        // What Typst remembers of one booklet is of little use to the next.
        comemo::evict(0);
    }
    Ok(worst)
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
    let sizes = choose::sizes(&workshop.sizes, &args.size, &booklet.name)?;
    workshop.lay_cloth_well();
    let workshop = &*workshop;
    let mut jobs = Vec::new();
    for paper in papers {
        let wanted = workshop.editions().iter().filter(|edition| sizes.contains(&edition.size()));
        let books: Vec<Book> = wanted.map(|edition| workshop.book(edition, paper.of_sheets())).collect();
        let place =
            |name: &str| args.out.join(&booklet.name).join(format!("{}-{name}-{}.pdf", booklet.name, paper.name()));
        for book in &books {
            let size = book.shown.first().copied();
            jobs.push(Job {
                place: place(size.and_then(|size| workshop.sizes.get(size)).map_or("", String::as_str)),
                size,
                content: Content::Booklet(Box::new(workshop.sheaf(book, *paper))),
            });
        }
        let all = if args.only_sizes || !args.size.is_empty() || books.len() < 2 {
            None
        } else {
            workshop.book_of_all(&books, paper.of_sheets())
        };
        jobs.extend(all.map(|book| Job {
            place: place("all"),
            size: None,
            content: Content::Booklet(Box::new(workshop.sheaf(&book, *paper))),
        }));
    }
    if !args.no_sheets {
        let mut unheard = Vec::new();
        for paper in papers.iter().map(|paper| paper.of_sheets()) {
            for edition in workshop.editions().iter().filter(|edition| sizes.contains(&edition.size())) {
                let plan = plan_one_size(edition, paper);
                jobs.extend(sheets::job(booklet, workshop, &plan, &[edition], &args.out, &mut unheard)?);
            }
            if args.size.is_empty() && workshop.sizes.len() > 1 {
                let all: Vec<_> = workshop.editions().iter().collect();
                let plan = plan_all_sizes(workshop.editions(), paper);
                jobs.extend(sheets::job(booklet, workshop, &plan, &all, &args.out, &mut unheard)?);
            }
        }
    }
    print_all(&booklet.name, workshop, jobs, &args.strictness)
}

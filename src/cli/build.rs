//! `build`: one booklet for each size and paper, and its pattern sheets; all of a booklet or none.

use std::path::Path;

use super::args::{BuildArgs, Form};
use super::press::{Content, Job, print_all};
use super::{Outcome, Refusal, choose, output, sheets};
use crate::book::Book;
use crate::pipeline::{Compiled, compile};
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
        let outcome = compile(&choice.folder, booklet, |compiled| one(booklet, compiled, &papers, args))?;
        worst = worst.max(outcome);
        // What Typst remembers of one booklet is of little use to the next.
        comemo::evict(0);
    }
    Ok(worst)
}

fn one(
    booklet: &BookletFolder,
    mut compiled: Compiled<'_>,
    papers: &[Paper],
    args: &BuildArgs,
) -> Result<Outcome, Refusal> {
    let compiled = &mut compiled;
    output::report(&compiled.report, compiled, Form::People);
    if output::outcome(&compiled.report, &args.strictness) != Outcome::Clean {
        output::verdict(&booklet.name, compiled, &compiled.report);
        output::line(&format!("{}: nothing was built; what was built before is untouched", booklet.name));
        return Ok(Outcome::Findings);
    }
    let sizes = choose::sizes(&compiled.sizes, &args.size, &booklet.name)?;
    compiled.lay_cloth_well();
    let compiled = &*compiled;
    let mut jobs = Vec::new();
    for paper in papers {
        let wanted = compiled.editions.iter().filter(|edition| sizes.contains(&edition.size()));
        let books: Vec<Book> = wanted.map(|edition| compiled.book(edition, paper.of_sheets())).collect();
        let place =
            |name: &str| args.out.join(&booklet.name).join(format!("{}-{name}-{}.pdf", booklet.name, paper.name()));
        for book in &books {
            let size = book.shown.first().copied();
            jobs.push(Job {
                place: place(size.and_then(|size| compiled.sizes.get(size)).map_or("", String::as_str)),
                size,
                content: Content::Booklet(Box::new(compiled.sheaf(book, *paper))),
            });
        }
        let all = if args.only_sizes || !args.size.is_empty() || books.len() < 2 {
            None
        } else {
            compiled.book_of_all(&books, paper.of_sheets())
        };
        jobs.extend(all.map(|book| Job {
            place: place("all"),
            size: None,
            content: Content::Booklet(Box::new(compiled.sheaf(&book, *paper))),
        }));
    }
    if !args.no_sheets {
        let mut unheard = Vec::new();
        for paper in papers.iter().map(|paper| paper.of_sheets()) {
            for edition in compiled.editions.iter().filter(|edition| sizes.contains(&edition.size())) {
                let plan = plan_one_size(edition, paper);
                jobs.extend(sheets::job(booklet, compiled, &plan, &[edition], &args.out, &mut unheard)?);
            }
            if args.size.is_empty() && compiled.sizes.len() > 1 {
                let all: Vec<_> = compiled.editions.iter().collect();
                let plan = plan_all_sizes(compiled.editions, paper);
                jobs.extend(sheets::job(booklet, compiled, &plan, &all, &args.out, &mut unheard)?);
            }
        }
    }
    print_all(&booklet.name, compiled, jobs, &args.strictness)
}

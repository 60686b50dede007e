//! `build`: one booklet for each size and paper, and its pattern sheets; all of a booklet or none.

use std::path::Path;

use super::apart::Bounds;
use super::args::BuildArgs;
use super::jobs::Books;
use super::kept::Kept;
use super::opening::{Opening, Worked, each_once};
use super::press::print_all;
use super::remembered::Memory;
use super::sets::sets;
use super::{Outcome, Refusal, choose, jobs, output};
use crate::pipeline::Workshop;
use crate::source::BookletFolder;
use crate::typeset::Paper;

pub(super) fn run(folder: Option<&Path>, args: &BuildArgs, bounds: Bounds) -> Result<Outcome, Refusal> {
    let papers = each_once(args.paper.iter().map(|name| name.paper()));
    let (booklets, strictness) = (args.booklets.as_slice(), &args.strictness);
    let kept = &Kept::new(&args.cache, &args.out);
    let BuildArgs { size, only_sizes, no_sheets, no_page, out, .. } = args;
    let asked = (size, &papers, only_sizes, no_sheets, no_page, out, strictness.deny, output::is_watched());
    let memory = &Memory { kept, asked: format!("{asked:?}"), out };
    let opening =
        Opening { folder, booklets, strictness, bounds, done: "built", memory: Some(memory), share: args.share };
    opening.each(|booklet, workshop| one(booklet, workshop, &papers, kept, args))
}

fn one(
    booklet: &BookletFolder,
    workshop: &mut Workshop,
    papers: &[Paper],
    kept: &Kept,
    args: &BuildArgs,
) -> Result<Worked, Refusal> {
    let sizes = choose::sizes(workshop, &args.size, &booklet.name)?;
    workshop.lay_cloth_well();
    let workshop = &*workshop;
    let sets = sets(workshop, &sizes, args.size.is_empty(), args.only_sizes);
    let books = Books::gather(workshop, papers, &sizes);
    let mut jobs = jobs::booklets(&booklet.name, workshop, papers, &sets, &books);
    if !args.no_page && !args.only_sizes && args.size.is_empty() {
        jobs.extend(jobs::screen(booklet, workshop, papers, &books));
    }
    if !args.no_sheets {
        jobs.extend(jobs::pattern_sheets(booklet, workshop, papers, &sets)?);
    }
    print_all(&booklet.name, workshop, jobs, &args.out, kept, &args.strictness)
}

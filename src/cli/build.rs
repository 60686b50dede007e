//! `build`: one booklet for each size and paper, and its pattern sheets; all of a booklet or none.

use std::path::Path;

use super::apart::Bounds;
use super::args::{BuildArgs, Form};
use super::press::print_all;
use super::sets::sets;
use super::{Outcome, Refusal, apart, choose, jobs, output};
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
    let mut jobs = jobs::booklets(&booklet.name, workshop, papers, &sets);
    if !args.no_page && !args.only_sizes && args.size.is_empty() {
        jobs.extend(jobs::screen(booklet, workshop, papers));
    }
    if !args.no_sheets {
        jobs.extend(jobs::pattern_sheets(booklet, workshop, papers, &sets)?);
    }
    print_all(&booklet.name, workshop, jobs, &args.out, &args.cache, &args.strictness)
}

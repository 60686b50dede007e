//! `build`: one booklet for each size and paper, and its pattern sheets; all of a booklet or none.

use std::path::Path;

use super::args::{BuildArgs, Form};
use super::press::{Content, Job, print_all};
use super::{Outcome, Refusal, choose, output, sheets};
use crate::figure::Studio;
use crate::pipeline::{Compiled, compile};
use crate::sheets::{plan_all_sizes, plan_one_size};
use crate::source::BookletFolder;
use crate::typeset::{Paper, combine};

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
    for edition in compiled.editions.iter().filter(|edition| sizes.contains(&edition.size())) {
        for paper in papers {
            let size = &compiled.sizes[edition.size()];
            let name = format!("{}-{size}-{}.pdf", booklet.name, paper.name());
            jobs.push(Job {
                place: args.out.join(&booklet.name).join(name),
                size: Some(edition.size()),
                content: Content::Booklet(Box::new(compiled.sheaf(edition, *paper))),
            });
        }
    }
    if args.combined && compiled.sizes.len() > 1 {
        for paper in papers {
            jobs.extend(combined(booklet, compiled, *paper, &args.out));
        }
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

/// The booklet of all sizes.
fn combined(booklet: &BookletFolder, compiled: &Compiled<'_>, paper: Paper, out: &Path) -> Option<Job> {
    let sheaves: Vec<_> = compiled.editions.iter().map(|edition| compiled.sheaf(edition, paper)).collect();
    let sized: Vec<_> = compiled
        .editions
        .iter()
        .zip(&sheaves)
        .map(|(edition, sheaf)| (edition.size_facts().name.as_str(), sheaf))
        .collect();
    let accent = compiled.draft.map_or("", |draft| draft.facts.style.accent.text.as_str());
    let studio = Studio::new(&compiled.house, accent);
    let sheaf = combine(&sized, "All sizes", &|svg| studio.keeps_inside(svg))?;
    let name = format!("{}-combined-{}.pdf", booklet.name, paper.name());
    Some(Job { place: out.join(&booklet.name).join(name), size: None, content: Content::Booklet(Box::new(sheaf)) })
}

//! `build`: one PDF for each size and paper, all of a booklet or none.

use std::path::Path;

use indicatif::{ProgressBar, ProgressStyle};
use rayon::iter::{ParallelBridge, ParallelIterator};

use super::args::{BuildArgs, Form};
use super::{Outcome, Refusal, choose, output};
use crate::checks;
use crate::diag::Findings;
use crate::pipeline::{Compiled, compile};
use crate::source::BookletFolder;
use crate::typeset::{Paper, Press, PressFault, Printed, Sheaf};

pub(super) fn run(folder: Option<&Path>, args: &BuildArgs) -> Result<Outcome, Refusal> {
    let choice = choose::booklets(folder, &args.booklets)?;
    for (at, booklet) in choice.booklets.iter().enumerate() {
        if let Some(twin) = choice.booklets[..at].iter().find(|twin| twin.name == booklet.name) {
            return Err(Refusal::new(
                format!("two booklets are called `{}`: `{}` and `{}`", booklet.name, twin.path.display(), booklet.path.display()),
                "give one folder another name, or build them one at a time into different folders with --out",
            ));
        }
    }
    let mut papers: Vec<Paper> = args.paper.iter().map(|name| name.paper()).collect();
    papers.sort_unstable();
    papers.dedup();
    let mut worst = Outcome::Clean;
    for booklet in &choice.booklets {
        let outcome = compile(&choice.folder, booklet, |compiled| one(booklet, &compiled, &papers, args))?;
        worst = worst.max(outcome);
        // What Typst remembers of one booklet is of little use to the next.
        comemo::evict(0);
    }
    Ok(worst)
}

/// One file to make.
struct Job {
    size: usize,
    paper: Paper,
    sheaf: Sheaf,
}

fn one(booklet: &BookletFolder, compiled: &Compiled<'_>, papers: &[Paper], args: &BuildArgs) -> Result<Outcome, Refusal> {
    output::report(&compiled.report, compiled, Form::People);
    if output::outcome(&compiled.report, &args.strictness) != Outcome::Clean {
        output::verdict(&booklet.name, compiled, &compiled.report);
        output::line(&format!("{}: nothing was built; what was built before is untouched", booklet.name));
        return Ok(Outcome::Findings);
    }
    let sizes = choose::sizes(&compiled.sizes, &args.size, &booklet.name)?;
    let mut jobs = Vec::new();
    for edition in compiled.editions.iter().filter(|edition| sizes.contains(&edition.size())) {
        let sheaf = compiled.sheaf(edition);
        jobs.extend(papers.iter().map(|paper| Job { size: edition.size(), paper: *paper, sheaf: sheaf.clone() }));
    }
    let bar = progress(&booklet.name, jobs.len());
    let press = Press::new(&compiled.house);
    let mut printed: Vec<(Job, Result<Printed, Vec<PressFault>>)> = jobs
        .into_iter()
        .par_bridge()
        .map(|job| {
            let result = press.print(&job.sheaf, job.paper);
            bar.inc(1);
            (job, result)
        })
        .collect();
    bar.finish_and_clear();
    printed.sort_by_key(|(job, _)| (job.size, job.paper));
    if faults(compiled, &printed) {
        output::line(&format!("{}: nothing was built; what was built before is untouched", booklet.name));
        return Ok(Outcome::Findings);
    }
    let mut waiting = Vec::new();
    for (job, result) in &printed {
        let Ok(result) = result else { continue };
        let name = format!("{}-{}-{}.pdf", booklet.name, compiled.sizes[job.size], job.paper.name());
        let place = args.out.join(&booklet.name).join(name);
        waiting.push((output::prepare(&place, &result.pdf)?, result.pages));
    }
    for (file, pages) in waiting {
        let place = file.settle()?;
        output::line(&format!("{} ({pages} pages)", place.display()));
    }
    Ok(Outcome::Clean)
}

fn progress(name: &str, length: usize) -> ProgressBar {
    // indicatif draws nothing where standard error is no terminal.
    let bar = ProgressBar::new(length as u64);
    if let Ok(style) = ProgressStyle::with_template("{msg} {bar:30} {pos} of {len}") {
        bar.set_style(style);
    }
    bar.set_message(name.to_owned());
    bar
}

/// Shows what the typesetter could not do; whether there was any such thing.
fn faults(compiled: &Compiled<'_>, printed: &[(Job, Result<Printed, Vec<PressFault>>)]) -> bool {
    let mut findings = Findings::default();
    for (job, result) in printed {
        if let Err(faults) = result {
            findings.extend(
                faults.iter().filter_map(|fault| compiled.press_finding(fault, &job.sheaf.origins, job.size)),
            );
        }
    }
    let report = findings.report(&compiled.sources, compiled.sizes.len(), &[], &checks::waivable);
    output::report(&report, compiled, Form::People);
    !report.findings.is_empty()
}

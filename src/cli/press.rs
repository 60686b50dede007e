//! Documents printed side by side, and written all of them or none.

use std::collections::BTreeMap;
use std::path::Path;

use indicatif::{ProgressBar, ProgressStyle};
use rayon::iter::{ParallelBridge, ParallelIterator};

use super::args::{Form, Strictness};
use super::kept::Kept;
use super::opening::{self, Worked};
use super::{Outcome, Refusal, output, remembered, sets};
use crate::checks;
use crate::diag::{Findings, visible};
use crate::out::{self, NewFile, Origin};
use crate::pipeline::Workshop;
use crate::sheets::SheetSet;
use crate::source::sha256;
use crate::typeset::{Press, PressFault, Printed, Sheaf};
use crate::web::Leaf;

/// One file to make.
pub(super) struct Job {
    /// Where it goes, from the booklet's folder of files.
    pub path: String,
    /// What it belongs to.
    pub origin: Origin,
    /// The size that its faults belong to; `None` for all.
    pub size: Option<usize>,
    /// What it holds.
    pub content: Content,
}

/// What a file holds.
pub(super) enum Content {
    /// A booklet.
    Booklet(Box<Sheaf>),
    /// Pattern sheets, and what to call them.
    Sheets(SheetSet, serde_json::Value),
    /// A page for a screen, with its choices of sizes.
    Page(Vec<Leaf>),
    /// Words to paste elsewhere.
    Words(String),
}

/// A file as it was made.
pub(super) struct Made {
    /// What it holds.
    pub bytes: Vec<u8>,
    /// How many pages it has; `None` for one that has none.
    pub pages: Option<usize>,
    /// What the typesetter grumbles at.
    warnings: Vec<PressFault>,
}

impl Made {
    fn printed(printed: Printed) -> Made {
        Made { bytes: printed.pdf, pages: Some(printed.pages), warnings: printed.warnings }
    }

    fn screen(html: String) -> Made {
        Made { bytes: html.into_bytes(), pages: None, warnings: Vec::new() }
    }
}

/// A job by its place, and what came of it.
type Done = (usize, Job, Result<Made, Vec<PressFault>>);

/// Prints all jobs of one booklet side by side; writes them when every one could be set.
pub(super) fn print_all(
    name: &str,
    workshop: &Workshop,
    jobs: Vec<Job>,
    out: &Path,
    kept: &Kept,
    strictness: &Strictness,
) -> Result<Worked, Refusal> {
    let (outcome, printed) = print_jobs(name, workshop, jobs, kept, strictness);
    if outcome != Outcome::Clean {
        opening::nothing(name, "built");
        return Ok(outcome.into());
    }
    let grumbled = printed.iter().any(|(_, made)| !made.warnings.is_empty());
    let folder = out.join(name);
    let mut files = Vec::new();
    let mut lines = Vec::new();
    for (job, result) in printed {
        let told = match result.pages {
            None if matches!(job.content, Content::Words(_)) => "to paste below the video".to_owned(),
            None => "for a screen".to_owned(),
            Some(count) => pages(count),
        };
        lines.push(visible(&format!("{} ({told})", folder.join(&job.path).display())).into_owned());
        files.push(NewFile { path: job.path, bytes: result.bytes, origin: job.origin });
    }
    let gone = out::put(&folder, &files, &sets::known(workshop))?;
    output::again(&lines);
    output::gone(&folder, &gone);
    let files = files.iter().map(|file| (file.path.clone(), sha256(&file.bytes))).collect();
    Ok(Worked { outcome: Outcome::Clean, made: (!grumbled).then_some(remembered::Made { told: lines, files }) })
}

/// A count of pages in words.
pub(super) fn pages(count: usize) -> String {
    if count == 1 { "1 page".to_owned() } else { format!("{count} pages") }
}

/// Prints all jobs of one booklet side by side, and tells what is wrong; what was printed, in the order of the jobs, where
/// nothing stops.
pub(super) fn print_jobs(
    name: &str,
    workshop: &Workshop,
    jobs: Vec<Job>,
    kept: &Kept,
    strictness: &Strictness,
) -> (Outcome, Vec<(Job, Made)>) {
    let bar = progress(name, jobs.len());
    let press = Press::new(&workshop.house);
    let mut printed: Vec<Done> = jobs
        .into_iter()
        .enumerate()
        .par_bridge()
        .map(|(at, job)| {
            let result = match &job.content {
                Content::Booklet(sheaf) => {
                    let key = press.booklet_made_of(sheaf);
                    kept.or_made(&key, || press.print(sheaf)).map(Made::printed)
                }
                Content::Sheets(sheets, about) => {
                    let key = press.sheets_made_of(sheets, about);
                    kept.or_made(&key, || press.print_sheets(sheets, about)).map(Made::printed)
                }
                Content::Words(words) => {
                    Ok(Made { bytes: words.clone().into_bytes(), pages: None, warnings: Vec::new() })
                }
                Content::Page(leaves) => workshop.screen(name, leaves).map(Made::screen).map_err(|fault| vec![fault]),
            };
            bar.inc(1);
            (at, job, result)
        })
        .collect();
    bar.finish_and_clear();
    printed.sort_by_key(|(at, ..)| *at);
    let outcome = tell(workshop, &printed, strictness);
    if outcome != Outcome::Clean {
        return (outcome, Vec::new());
    }
    let whole = printed.into_iter().filter_map(|(_, job, result)| Some((job, result.ok()?)));
    (outcome, whole.collect())
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

/// Shows what the typesetter could not do, and what it warns of in files of the booklet's own.
fn tell(workshop: &Workshop, printed: &[Done], strictness: &Strictness) -> Outcome {
    let mut findings = Findings::default();
    let none = BTreeMap::new();
    for (_, job, result) in printed {
        let origins = match &job.content {
            Content::Booklet(sheaf) => &sheaf.origins,
            Content::Sheets(..) | Content::Page(_) | Content::Words(_) => &none,
        };
        match result {
            Err(faults) => {
                findings.extend(faults.iter().filter_map(|fault| workshop.press_finding(fault, origins, job.size)));
            }
            Ok(made) => {
                let warnings = made.warnings.iter();
                findings.extend(warnings.filter_map(|fault| workshop.press_warning(fault, origins)));
            }
        }
    }
    let report = findings.report(&workshop.sources, workshop.sizes.len(), &[], &checks::unused_waiver);
    output::report(&report, workshop, Form::People);
    output::outcome(&report, strictness)
}

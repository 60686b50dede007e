//! A booklet that brings templates or fonts of its own is worked on in a child process of this same program, with
//! limits on time and memory: templates are programs, and what is wrong in a font can stop whoever reads it.

use std::ffi::OsString;
use std::path::Path;
use std::process::{Command, ExitStatus};
use std::time::{Duration, Instant};

use super::args::Form;
use super::choose::Choice;
use super::{Outcome, Refusal, output};
use crate::diag::Findings;
use crate::faults::TYPESETTING_FAILED;
use crate::source::{BookletFolder, Folder, Sources, Span};

/// Names to the child the one booklet that it works on, by its path.
const APART: &str = "NOTCHBOOK_APART";
/// The most bytes of memory that a child may ask for: a large booklet in all its sizes on four papers takes two thirds.
#[cfg(unix)]
const MEMORY: u64 = 3_000_000_000;

/// How a child is run.
#[derive(Debug, Clone, Copy)]
pub(super) struct Bounds {
    /// How long it may take, in seconds.
    pub patience: u64,
    /// How what is found is shown.
    pub form: Form,
}

/// A booklet's path; an empty one would read as none at all.
fn of(booklet: &BookletFolder) -> &Path {
    if booklet.path.as_os_str().is_empty() { Path::new(".") } else { &booklet.path }
}

/// Works on each booklet of a choice, by itself or in a child process; the worst of what came of them.
pub(super) fn each(
    choice: &Choice,
    bounds: Bounds,
    mut work: impl FnMut(&BookletFolder) -> Result<Outcome, Refusal>,
) -> Result<Outcome, Refusal> {
    let mut worst = Outcome::Clean;
    for booklet in choice.booklets.iter().filter(|booklet| !is_of_another(booklet)) {
        let outcome = match run(&choice.folder, booklet, bounds)? {
            Some(outcome) => outcome,
            None => work(booklet)?,
        };
        // What Typst remembers of one booklet is of little use to the next.
        comemo::evict(0);
        worst = worst.max(outcome);
    }
    Ok(worst)
}

/// Whether this process is a child that works on another booklet.
fn is_of_another(booklet: &BookletFolder) -> bool {
    std::env::var_os(APART).is_some_and(|path| Path::new(&path) != of(booklet))
}

/// Works on a booklet in a child process, where it brings files of its own that ask for it; `None` where it does not.
fn run(folder: &Folder, booklet: &BookletFolder, bounds: Bounds) -> Result<Option<Outcome>, Refusal> {
    if std::env::var_os(APART).is_some() {
        return Ok(None);
    }
    let own = |kind: &str| Some(booklet.path.join(kind).join(folder.list(&booklet.path.join(kind)).first()?));
    let Some(first) = own("templates").or_else(|| own("fonts")) else { return Ok(None) };
    let program = std::env::current_exe().map_err(|error| {
        Refusal::new(format!("this program cannot find itself: {error}"), "run it by its full path")
    })?;
    let arguments: Vec<OsString> = std::env::args_os().skip(1).collect();
    let mut child = Command::new(program).args(arguments).env(APART, of(booklet)).spawn().map_err(|error| {
        Refusal::new(format!("this program cannot be started once more: {error}"), "see what the system runs out of")
    })?;
    let start = Instant::now();
    let status = loop {
        let ended = child.try_wait().map_err(|error| Refusal::new(error.to_string(), "try again"))?;
        match ended {
            Some(status) => break Some(status),
            None if start.elapsed() > Duration::from_secs(bounds.patience) => {
                // It may have ended by itself in this very moment, which is as well.
                let _ = child.kill();
                let _ = child.wait();
                break None;
            }
            None => std::thread::sleep(Duration::from_millis(5)),
        }
    };
    Ok(Some(match status.map(|status| (status.code(), status)) {
        Some((Some(0), _)) => Outcome::Clean,
        Some((Some(1), _)) => Outcome::Findings,
        Some((Some(2), _)) => Outcome::Unusable,
        other => {
            tell(&booklet.name, folder.show(&first), other.map(|(_, status)| status), bounds);
            Outcome::Findings
        }
    }))
}

/// Tells that a booklet with its own files could not be worked with.
fn tell(name: &str, first: String, status: Option<ExitStatus>, bounds: Bounds) {
    let patience = bounds.patience;
    let why = match status {
        None => format!("it took longer than {patience} s"),
        Some(_) => "it asked for too much memory, or a fault in a font or a template stopped the program".to_owned(),
    };
    let mut sources = Sources::default();
    let span = Span::new(sources.add(first, ""), 0..0);
    let mut findings = Findings::default();
    findings.push(
        TYPESETTING_FAILED
            .at(span, format!("`{name}` cannot be worked with its own templates and fonts: {why}"))
            .hint("take the folders `templates` and `fonts` away one after the other to see which it is; `--patience` lets it take longer"),
    );
    let report = findings.report(&sources, 0, &[], &|_| None);
    output::findings(&report, &sources, &[], bounds.form);
    if bounds.form == Form::People {
        output::line(&format!("{name}: nothing was built; what was built before is untouched"));
    }
}

/// Bounds this process, where it is a child that works on a stranger's files.
pub(super) fn bound(patience: u64) {
    if std::env::var_os(APART).is_none() {
        return;
    }
    #[cfg(unix)]
    {
        use rustix::process::{Resource, Rlimit, setrlimit};
        let at_most = |most: u64| Rlimit { current: Some(most), maximum: Some(most) };
        // Several processors may work at once; the clock is watched by the parent.
        let limits = [(Resource::As, MEMORY), (Resource::Cpu, patience.saturating_mul(16).max(1)), (Resource::Core, 0)];
        for (resource, most) in limits {
            // A system that has a lower limit already keeps it.
            let _ = setrlimit(resource, at_most(most));
        }
    }
    #[cfg(not(unix))]
    let _ = patience;
}

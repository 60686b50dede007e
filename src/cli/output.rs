//! What is printed, and files written whole: beside their place first, then renamed into it.

use std::collections::BTreeSet;
use std::io::{IsTerminal, Write};
use std::path::{Path, PathBuf};

use super::{Outcome, Refusal};
use crate::diag::{Report, Terminal, summary, to_json};
use crate::pipeline::Workshop;
use crate::source::Folder;

use super::args::{Deny, Form, Strictness};

/// Prints why a command was not carried out.
pub(super) fn refuse(refusal: &Refusal) {
    anstream::eprintln!("notchbook: {}\n  do: {}", refusal.fact, refusal.act);
}

/// Prints a line to standard output; a closed pipe is nobody's fault.
pub(super) fn line(text: &str) {
    let mut out = anstream::stdout();
    let _ = writeln!(out, "{text}");
}

/// Prints a report.
pub(super) fn report(report: &Report, workshop: &Workshop, form: Form) {
    match form {
        Form::Json => {
            for finding in &report.findings {
                line(&to_json(finding, &workshop.sources, &workshop.sizes));
            }
        }
        Form::People => {
            // anstream takes the colours out again where they cannot be shown.
            let terminal = Terminal::new(std::io::stdout().is_terminal());
            for finding in &report.findings {
                line(&terminal.show(finding, &workshop.sources, &workshop.sizes));
                line("");
            }
        }
    }
}

/// The last line about a booklet.
pub(super) fn verdict(name: &str, workshop: &Workshop, report: &Report) {
    let counts = summary(report);
    let sizes = match workshop.sizes.len() {
        1 => "1 size".to_owned(),
        count => format!("{count} sizes"),
    };
    line(&format!("{name} ({sizes}): {counts}"));
    for waived in &report.waived {
        let place = workshop.sources.place(waived.finding.span);
        let file = &workshop.sources.file(waived.finding.span.file).path;
        line(&format!("  waived at {file}:{}: {} ({})", place.line, waived.finding.code(), waived.reason));
    }
}

/// How much of what was not checked is told unasked.
const FEW: usize = 6;

/// What no check looked at, so that silence is not taken for proof.
pub(super) fn unchecked(workshop: &Workshop, all: bool) {
    let list = &workshop.unchecked;
    if list.is_empty() {
        return;
    }
    line("  not checked:");
    let told = if all { list.len() } else { list.len().min(FEW) };
    for one in &list[..told] {
        let place = workshop.sources.place(one.span);
        line(&format!("    {}:{}: {}", workshop.sources.file(one.span.file).path, place.line, one.what));
    }
    if told < list.len() {
        line(&format!("    and {} more: `notchbook check --unchecked` tells all", list.len() - told));
    }
}

/// Whether a report stops.
pub(super) fn outcome(report: &Report, strictness: &Strictness) -> Outcome {
    let strict = strictness.deny == Some(Deny::Warnings);
    if report.errors() > 0 || (strict && report.warnings() > 0) { Outcome::Findings } else { Outcome::Clean }
}

/// The list of what a run made in a folder, so that the next one takes out nothing else.
const MADE: &str = ".notchbook-made";

/// Takes out of a folder what an earlier run made and this one did not, and takes down what this one made.
pub(super) fn leave_only(folder: &Path, made: &BTreeSet<String>) -> Result<(), Refusal> {
    let Ok(opened) = Folder::open(folder) else { return Ok(()) };
    let earlier = opened.text(Path::new(MADE)).unwrap_or_default();
    // A name is that of a file in this very folder, whatever somebody wrote into the list.
    let here = |name: &&str| !name.is_empty() && !name.contains(['/', '\\']) && *name != "..";
    for name in earlier.lines().filter(here).filter(|name| !made.contains(*name)) {
        let path = folder.join(name);
        if path.is_file() {
            std::fs::remove_file(&path).map_err(|error| {
                Refusal::new(
                    format!("`{}` is of an earlier run and cannot be taken out: {error}", path.display()),
                    "close the file where it is open, or name another folder with --out",
                )
            })?;
        }
    }
    let list: String = made.iter().map(|name| format!("{name}\n")).collect();
    prepare(&folder.join(MADE), list.as_bytes())?.settle()?;
    Ok(())
}

/// A file that waits beside its place.
pub(super) struct Waiting {
    file: tempfile::NamedTempFile,
    place: PathBuf,
}

/// Writes bytes beside their place; nothing is replaced until [`Waiting::settle`].
pub(super) fn prepare(place: &Path, bytes: &[u8]) -> Result<Waiting, Refusal> {
    let refused = |error: std::io::Error| {
        Refusal::new(
            format!("`{}` cannot be written: {error}", place.display()),
            "name a folder that you may write to with --out",
        )
    };
    let folder = place.parent().unwrap_or(Path::new("."));
    std::fs::create_dir_all(folder).map_err(refused)?;
    let mut builder = tempfile::Builder::new();
    builder.prefix(".notchbook-");
    // Temporary files are for their owner alone; what is made to be handed on is not.
    #[cfg(unix)]
    builder.permissions(std::os::unix::fs::PermissionsExt::from_mode(0o644));
    let mut file = builder.tempfile_in(folder).map_err(refused)?;
    file.write_all(bytes).map_err(refused)?;
    Ok(Waiting { file, place: place.to_path_buf() })
}

impl Waiting {
    /// Renames the file into its place.
    pub fn settle(self) -> Result<PathBuf, Refusal> {
        self.file.persist(&self.place).map_err(|error| {
            Refusal::new(
                format!("`{}` cannot be written: {}", self.place.display(), error.error),
                "close the file where it is open, or name another folder with --out",
            )
        })?;
        Ok(self.place)
    }
}

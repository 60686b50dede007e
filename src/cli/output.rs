//! What is printed, so that every letter of it is seen.

use std::io::{IsTerminal, Write};
use std::path::Path;

use super::{Outcome, Refusal};
use crate::diag::{Findings, Report, Terminal, summary, to_json, visible};
use crate::limits::{HANDED_ON, SHOWN, thousands};
use crate::pipeline::Workshop;
use crate::source::Sources;

use super::args::{Deny, Form, Strictness};

/// Prints why a command was not carried out.
pub(super) fn refuse(refusal: &Refusal) {
    anstream::eprintln!("notchbook: {}\n  do: {}", visible(&refusal.fact), visible(&refusal.act));
}

/// Prints a line to standard output, every letter of it to be seen.
pub(super) fn line(text: &str) {
    paint(&visible(text));
}

/// Tells what a run took out of a folder: files of sizes that are gone.
pub(super) fn gone(folder: &Path, paths: &[String]) {
    paths.iter().for_each(|path| line(&format!("{} was of before, and is taken out", folder.join(path).display())));
}

/// Prints a line in which colours are meant. A closed pipe is nobody's fault; anything else that keeps standard output
/// from being written ends the run, since what is not told would be taken for nothing.
fn paint(text: &str) {
    if let Err(error) = writeln!(anstream::stdout(), "{text}")
        && error.kind() != std::io::ErrorKind::BrokenPipe
    {
        refuse(&Refusal::new(format!("standard output cannot be written: {error}"), "make room, or name another file"));
        std::process::exit(2);
    }
}

/// Prints a booklet's report.
pub(super) fn report(report: &Report, workshop: &Workshop, form: Form) {
    findings(report, &workshop.sources, &workshop.sizes, form);
}

/// Prints what was found behind the checks, where no waiver counts; gives its report.
pub(super) fn found_since(workshop: &Workshop, found: Findings) -> Report {
    let found = found.report(&workshop.sources, workshop.sizes.len(), &[], &|_| None);
    report(&found, workshop, Form::People);
    found
}

/// Tells again what an earlier run told.
pub(super) fn again(told: &[String]) {
    told.iter().for_each(|text| paint(text));
}

/// Prints findings, as many as anybody reads.
pub(super) fn findings(report: &Report, sources: &Sources, sizes: &[String], form: Form) {
    match form {
        Form::Json => {
            for finding in report.findings.iter().take(HANDED_ON.most) {
                paint(&to_json(finding, sources, sizes));
            }
            if report.findings.len() > HANDED_ON.most {
                let fact =
                    format!("{} findings more are not handed on", thousands(report.findings.len() - HANDED_ON.most));
                refuse(&Refusal::new(fact, HANDED_ON.act));
            }
        }
        Form::People => again(&to_people(report, sources, sizes)),
    }
}

/// Findings as people read them, as many as anybody reads, a paragraph each.
pub(super) fn to_people(report: &Report, sources: &Sources, sizes: &[String]) -> Vec<String> {
    // anstream takes the colours out again where they cannot be shown.
    let terminal = Terminal::new(is_watched());
    let shown = report.findings.iter().take(SHOWN.most);
    let mut told: Vec<String> = shown.map(|finding| terminal.show(finding, sources, sizes) + "\n").collect();
    if report.findings.len() > SHOWN.most {
        let more = thousands(report.findings.len() - SHOWN.most);
        told.push(visible(&format!("and {more} findings more, which are not shown: {}\n", SHOWN.act)).into_owned());
    }
    told
}

/// Whether somebody reads along.
pub(super) fn is_watched() -> bool {
    std::io::stdout().is_terminal()
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
        line(&format!("  waived at {file}:{}: {} ({})", place.line, waived.finding.code(), one_line(&waived.reason)));
    }
}

/// Words without ends of lines, so that none can pass for a line of ours.
fn one_line(words: &str) -> String {
    words.split_whitespace().collect::<Vec<_>>().join(" ")
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

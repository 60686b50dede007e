//! `proof`: what an editor works through and signs: a page and a PDF of one booklet, faults and all.

use std::collections::BTreeMap;
use std::path::Path;

use super::apart::Bounds;
use super::args::{Form, ProofArgs};
use super::press::pages;
use super::sets::{self, ALL, sets};
use super::{Outcome, Refusal, apart, choose, editions, output, publish};
use crate::diag::{Finding, Findings};
use crate::manifest::Manifest;
use crate::out::{self, NewFile, Origin};
use crate::pipeline::{Reach, Workshop};
use crate::publish::{not_of_this, unreadable};
use crate::sheets::SheetPaper;
use crate::source::{BookletFolder, Span};
use crate::typeset::{Press, PressFault};

pub(super) fn run(folder: Option<&Path>, args: &ProofArgs, bounds: Bounds) -> Result<Outcome, Refusal> {
    let choice = choose::booklets(folder, &args.booklets)?;
    choose::distinct(&choice.booklets)?;
    if args.since.is_some() && choice.booklets.len() > 1 {
        return Err(Refusal::new("an edition before is that of one booklet", "name the booklet beside `--since`"));
    }
    apart::each(&choice, bounds, |booklet| {
        let workshop = Workshop::open(&choice.folder, booklet, Reach::Checks);
        one(booklet, workshop, args)
    })
}

/// Makes both files of one booklet. What the checks found stands in them and keeps nothing from being made.
fn one(booklet: &BookletFolder, mut workshop: Workshop, args: &ProofArgs) -> Result<Outcome, Refusal> {
    let nothing = || output::line(&format!("{}: no proof was made; what was made before is untouched", booklet.name));
    workshop.lay_cloth_well();
    let since = match &args.since {
        Some(path) => match before(path, booklet, &mut workshop) {
            Ok(manifest) => Some(manifest),
            Err(finding) => {
                tell(&workshop, [*finding]);
                nothing();
                return Ok(Outcome::Findings);
            }
        },
        None => None,
    };
    let now = since.as_ref().and_then(|old| this_edition(&workshop, old));
    let Some(proof) = workshop.proof(since.as_ref().zip(now.as_ref())) else {
        output::report(&workshop.report, &workshop, Form::People);
        output::verdict(&booklet.name, &workshop, &workshop.report);
        nothing();
        return Ok(Outcome::Findings);
    };
    let press = Press::new(&workshop.house);
    let page = workshop.proof_page(&proof).map_err(|fault| vec![fault]);
    let made = page.and_then(|page| Ok((page, workshop.proof_pdf(&press, &proof, args.paper.paper())?)));
    let (page, printed) = match made {
        Ok(made) => made,
        Err(faults) => {
            tell(&workshop, faults.iter().filter_map(|fault| found(&workshop, fault)));
            nothing();
            return Ok(Outcome::Findings);
        }
    };
    let home = args.out.join(&booklet.name);
    let file = |ending: &str, kind: &str, bytes: Vec<u8>| NewFile {
        path: format!("{}-proof{ending}", booklet.name),
        bytes,
        origin: Origin { kind: kind.to_owned(), of: ALL.to_owned() },
    };
    let paper = format!("-{}.pdf", args.paper.paper().name());
    let files = [
        file(".html", "proof page", page.into_bytes()),
        file(&paper, &format!("proof {}", args.paper.paper().name()), printed.pdf),
    ];
    let gone = out::put(&home, &files, &sets::known(&workshop))?;
    output::verdict(&booklet.name, &workshop, &workshop.report);
    output::line(&format!("{} (for a screen)", home.join(&files[0].path).display()));
    output::line(&format!("{} ({})", home.join(&files[1].path).display(), pages(printed.pages)));
    output::gone(&home, &gone);
    Ok(Outcome::Clean)
}

/// The edition before.
fn before(path: &Path, booklet: &BookletFolder, workshop: &mut Workshop) -> Result<Manifest, Box<Finding>> {
    let shown = path.display().to_string();
    let at = Span::new(workshop.sources.add(shown.clone(), ""), 0..0);
    let manifest = editions::read(path).map_err(|fault| Box::new(unreadable(at, &shown, &fault)))?;
    match not_of_this(at, &shown, &booklet.name, &manifest) {
        Some(finding) => Err(Box::new(finding)),
        None => Ok(manifest),
    }
}

/// The booklet as it stands now, with pattern sheets on the papers of the edition before.
fn this_edition(workshop: &Workshop, old: &Manifest) -> Option<Manifest> {
    let all: Vec<usize> = (0..workshop.sizes.len()).collect();
    let named = |paper: &&SheetPaper| old.sheets.iter().any(|set| set.paper == paper.name());
    let papers: Vec<SheetPaper> = SheetPaper::ALL.iter().filter(named).copied().collect();
    workshop.manifest(&publish::named(&sets(workshop, &all, true, false)), &papers)
}

fn found(workshop: &Workshop, fault: &PressFault) -> Option<Finding> {
    workshop.press_finding(fault, &BTreeMap::new(), None)
}

fn tell(workshop: &Workshop, found: impl IntoIterator<Item = Finding>) {
    let mut findings = Findings::default();
    findings.extend(found);
    output::found_since(workshop, findings);
}

//! `errata`: what buyers of an older edition have to know of a newer one.

use std::collections::BTreeSet;
use std::path::Path;

use super::args::{ErrataArgs, Form};
use super::sets::sets;
use super::{Outcome, Refusal, choose, editions, output, publish};
use crate::book::Plain;
use crate::diag::Finding;
use crate::errata::{buyers_sheet, compare, next_edition, record_line};
use crate::manifest::Manifest;
use crate::out::{self, NewFile, Origin};
use crate::pipeline::{Reach, Workshop};
use crate::publish::{Earlier, edition_folder, not_of_this, not_raised, unreadable};
use crate::sheets::SheetPaper;
use crate::source::{House, Sources, Span};
use crate::typeset::Press;

/// An edition with the place at which its number is told.
struct Issue {
    manifest: Manifest,
    edition: Span,
}

pub(super) fn run(folder: Option<&Path>, args: &ErrataArgs) -> Result<Outcome, Refusal> {
    let mut sources = Sources::default();
    let old = match published(&args.old, &mut sources) {
        Ok(old) => old,
        Err(finding) => return Ok(refuse([*finding], &sources)),
    };
    // A booklet as it stands now has its number in its own file.
    let is_published = args.new.is_file() || args.new.join(editions::MANIFEST).is_file();
    if is_published {
        let new = match published(&args.new, &mut sources) {
            Ok(new) => new,
            Err(finding) => return Ok(refuse([*finding], &sources)),
        };
        return tell(args, &old.manifest, &new, &sources);
    }
    let wanted = args.new.to_string_lossy().into_owned();
    let choice = choose::booklets(folder, &[wanted])?;
    let [booklet] = choice.booklets.as_slice() else {
        return Err(Refusal::new(format!("`{}` is several booklets", args.new.display()), "name one of them"));
    };
    let mut workshop = Workshop::open(&choice.folder, booklet, Reach::Checks);
    if workshop.report.errors() > 0 {
        output::report(&workshop.report, &workshop, Form::People);
        output::verdict(&booklet.name, &workshop, &workshop.report);
        return Ok(Outcome::Findings);
    }
    workshop.lay_cloth_well();
    let all: Vec<usize> = (0..workshop.sizes.len()).collect();
    let sets = publish::named(&sets(&workshop, &all, true, false));
    let manifest = workshop.manifest(&sets, &papers(&old.manifest));
    let (Some(manifest), Some(draft)) = (manifest, workshop.draft()) else { return Ok(Outcome::Findings) };
    let new = Issue { manifest, edition: draft.facts.edition.span };
    tell(args, &old.manifest, &new, &workshop.sources)
}

fn refuse(findings: impl IntoIterator<Item = Finding>, sources: &Sources) -> Outcome {
    editions::tell(findings, sources);
    Outcome::Findings
}

/// Reads a published edition.
fn published(path: &Path, sources: &mut Sources) -> Result<Issue, Box<Finding>> {
    let shown = path.display().to_string();
    let edition = Span::new(sources.add(shown.clone(), ""), 0..0);
    match editions::read(path) {
        Ok(manifest) => Ok(Issue { manifest, edition }),
        Err(fault) => Err(Box::new(unreadable(edition, &shown, &fault))),
    }
}

/// The papers of an edition's pattern sheets.
fn papers(manifest: &Manifest) -> Vec<SheetPaper> {
    let named = |paper: &&SheetPaper| manifest.sheets.iter().any(|set| set.paper == paper.name());
    SheetPaper::ALL.iter().filter(named).copied().collect()
}

fn tell(args: &ErrataArgs, old: &Manifest, new: &Issue, sources: &Sources) -> Result<Outcome, Refusal> {
    let shown = args.new.display().to_string();
    if let Some(finding) = not_of_this(new.edition, &shown, &old.booklet, &new.manifest) {
        return Ok(refuse([finding], sources));
    }
    let manifest = &new.manifest;
    let plain = Plain { book: &manifest.all, house: &manifest.words };
    let errata = compare(old, manifest);
    let earlier = [Earlier { place: args.old.display().to_string(), manifest: old.clone() }];
    let risen = not_raised(new.edition, manifest, &earlier);
    let next = next_edition(&errata);
    let stands = risen.is_none() && !publish::is_same(old, manifest);
    let proposed = next.clone().filter(|_| !stands).unwrap_or_else(|| manifest.all.edition.clone());
    let mut sheet = errata.clone();
    sheet.editions.1.clone_from(&proposed);
    let leaf = buyers_sheet(&sheet, &plain);
    output::line(&leaf.text());
    if errata.tells() || errata.otherwise {
        output::line(&format!("next edition: {proposed}"));
        output::line(&record_line(&errata, &proposed, &plain));
    }
    if errata.tells() {
        let name = format!("{}-to-{}", edition_folder(&errata.editions.0), edition_folder(&proposed));
        let folder = args.out.join(&manifest.booklet).join(format!("changes-{name}"));
        let origin = Origin { kind: "errata".into(), of: name.clone() };
        let file = |ending: &str, bytes: Vec<u8>| NewFile {
            path: format!("{}-changes-{name}.{ending}", manifest.booklet),
            bytes,
            origin: origin.clone(),
        };
        // The house's own look: a manifest brings no templates.
        let printed = Press::new(&House::plain()).print_leaf(&leaf, &manifest.all).map_err(|faults| {
            let told: Vec<&str> = faults.iter().map(|fault| fault.message.as_str()).collect();
            Refusal::new(
                format!("the sheet cannot be set: {}", told.join("; ")),
                "take the manifest as it was published",
            )
        })?;
        let files =
            [file("pdf", printed.pdf), file("md", leaf.markdown().into_bytes()), file("txt", leaf.text().into_bytes())];
        out::put(&folder, &files, &BTreeSet::from([name]))?;
        output::line("");
        files.iter().for_each(|file| output::line(&folder.join(&file.path).display().to_string()));
    }
    Ok(match risen {
        Some(finding) => refuse([finding], sources),
        None => Outcome::Clean,
    })
}

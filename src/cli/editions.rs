//! Editions that were published before, read from their folders.

use std::path::Path;

use super::args::Form;
use super::output;
use crate::diag::{Finding, Findings};
use crate::limits;
use crate::manifest::{self, Manifest, ManifestFault};
use crate::publish::{Earlier, not_of_this, unreadable};
use crate::source::{Folder, ReadFault, Sources, Span};

/// What a manifest's file is called.
pub(super) const MANIFEST: &str = "manifest.json";

/// Reads a manifest, or that of a folder.
pub(super) fn read(path: &Path) -> Result<Manifest, ManifestFault> {
    let (folder, file) = match path.is_dir() {
        true => (path, Path::new(MANIFEST)),
        false => (
            path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new(".")),
            path.file_name().map_or(Path::new(MANIFEST), Path::new),
        ),
    };
    let text = Folder::open(folder).and_then(|folder| folder.long_text(file));
    manifest::read(&text.map_err(|fault| unread(&fault))?)
}

fn unread(fault: &ReadFault) -> ManifestFault {
    // What texts and pictures may have is no word on a manifest.
    let act = match fault {
        ReadFault::TooLarge(_) => limits::MANIFEST.act.to_owned(),
        _ => fault.hint(),
    };
    ManifestFault { fact: format!("it {}", fault.message()), act }
}

/// Every edition below a booklet's folder of published ones; what cannot be read is a finding.
pub(super) fn earlier(home: &Path, booklet: &str, sources: &mut Sources, findings: &mut Findings) -> Vec<Earlier> {
    let Ok(folder) = Folder::open(home) else { return Vec::new() };
    let mut found = Vec::new();
    for name in folder.folders() {
        let place = home.join(&name);
        if !place.join(MANIFEST).is_file() {
            continue;
        }
        let shown = place.join(MANIFEST).display().to_string();
        let mut at = || Span::new(sources.add(shown.clone(), ""), 0..0);
        match read(&place) {
            Ok(manifest) => match not_of_this(at(), &shown, booklet, &manifest) {
                Some(finding) => findings.push(finding),
                None => found.push(Earlier { place: place.display().to_string(), manifest }),
            },
            Err(fault) => findings.push(unreadable(at(), &shown, &fault)),
        }
    }
    found
}

/// Prints findings that stand in no booklet.
pub(super) fn tell(findings: impl IntoIterator<Item = Finding>, sources: &Sources) {
    let mut all = Findings::default();
    all.extend(findings);
    output::findings(&all.report(sources, 0, &[], &|_| None), sources, &[], Form::People);
}

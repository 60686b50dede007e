//! What a booklet brings beside its words: templates, fonts, logo and cover.

use std::collections::BTreeMap;
use std::path::Path;

use crate::book::Photo;
use crate::diag::Findings;
use crate::faults::FILE_UNREADABLE;
use crate::figure;
use crate::model::{Draft, Text};
use crate::source::{BookletFolder, Folder, House, Span};
use crate::syntax;

/// Templates and fonts; those of the booklet's own that cannot be used are findings.
pub(super) fn house(folder: &Folder, booklet: &BookletFolder, reading: &mut syntax::Reading) -> House {
    let (house, faults) = House::of(folder, booklet);
    for fault in faults {
        let span = Span::new(reading.sources.add(fault.path, ""), 0..0);
        reading.findings.push(FILE_UNREADABLE.at(span, fault.message).hint(fault.hint));
    }
    for path in figure::broken_fonts(&house) {
        let span = Span::new(reading.sources.add(path, ""), 0..0);
        let finding = FILE_UNREADABLE.at(span, format!("`{path}` holds no font that can be read"));
        reading.findings.push(finding.hint("save the font anew, or take the file out of the folder `fonts`"));
    }
    for asset in &house.templates {
        if let Some(path) = &asset.own {
            reading.sources.add(path.clone(), asset.text());
        }
    }
    house
}

/// Reads the logo and the cover picture.
pub(super) fn pictures(folder: &Folder, draft: &Draft, findings: &mut Findings) -> BTreeMap<String, Photo> {
    let style = &draft.facts.style;
    let mut found = BTreeMap::new();
    let wanted: [(&'static str, &Option<Text>); 2] = [("logo", &style.logo), ("cover", &style.cover)];
    for (name, path) in wanted {
        let Some(path) = path else { continue };
        let ending = Path::new(&path.text).extension().and_then(|ending| ending.to_str()).unwrap_or("");
        let ending = ending.to_ascii_lowercase();
        if !matches!(ending.as_str(), "svg" | "png" | "jpg" | "jpeg" | "gif" | "webp") {
            findings.push(
                FILE_UNREADABLE
                    .at(path.span, format!("`{}` is no picture that can be printed", path.text))
                    .hint("save it as SVG, PNG or JPEG"),
            );
            continue;
        }
        match folder.picture(&draft.folder.join(&path.text)) {
            Ok(bytes) => {
                found.insert(name.to_owned(), Photo { ending, bytes });
            }
            Err(fault) => findings
                .push(FILE_UNREADABLE.at(path.span, format!("`{}` {}", path.text, fault.message())).hint(fault.hint())),
        }
    }
    found
}

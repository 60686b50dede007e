//! What a booklet brings beside its words: templates, fonts, logo and cover.

use std::collections::BTreeMap;
use std::io::Cursor;
use std::path::Path;

use image::ImageFormat;

use crate::book::Photo;
use crate::diag::{Finding, Findings};
use crate::faults::FILE_UNREADABLE;
use crate::figure;
use crate::limits::{DOTS, thousands};
use crate::model::{Draft, Text};
use crate::source::{BookletFolder, Folder, House, Sources, Span};
use crate::syntax;

/// Templates and fonts; those of the booklet's own that cannot be used are findings.
pub(super) fn house(folder: &Folder, booklet: &BookletFolder, reading: &mut syntax::Reading) -> House {
    let (mut house, faults) = House::of(folder, booklet);
    for fault in faults {
        let span = Span::new(reading.sources.add(fault.path, ""), 0..0);
        reading.findings.push(FILE_UNREADABLE.at(span, fault.message).hint(fault.hint));
    }
    for (path, words) in figure::broken_fonts(&house) {
        // What is broken is not leaned on while the rest is looked at.
        house.fonts.retain(|font| font.own.as_ref() != Some(&path));
        let span = Span::new(reading.sources.add(path.clone(), ""), 0..0);
        let finding = FILE_UNREADABLE.at(span, format!("`{path}` {words}"));
        reading.findings.push(finding.hint("save the font anew, or take the file out of the folder `fonts`"));
    }
    for asset in &house.templates {
        if let Some(path) = &asset.own {
            reading.sources.add(path.clone(), asset.text());
        }
    }
    house
}

/// Reads the logo and the cover picture, and looks whether they can be printed; a cover that is a diagram is read with
/// the diagrams.
pub(super) fn pictures(
    folder: &Folder,
    draft: &Draft,
    house: &House,
    drawn_cover: bool,
    sources: &mut Sources,
    findings: &mut Findings,
) -> BTreeMap<String, Photo> {
    let style = &draft.facts.style;
    let mut found = BTreeMap::new();
    let wanted: [(&'static str, &Option<Text>); 2] = [("logo", &style.logo), ("cover", &style.cover)];
    for (name, path) in wanted {
        let Some(path) = path.as_ref().filter(|_| !(drawn_cover && name == "cover")) else { continue };
        let ending = Path::new(&path.text).extension().and_then(|ending| ending.to_str()).unwrap_or("");
        let ending = ending.to_ascii_lowercase();
        let file = draft.folder.join(&path.text);
        if !matches!(ending.as_str(), "svg" | "png" | "jpg" | "jpeg" | "gif" | "webp") {
            findings.push(unusable(path, "is no picture that can be printed"));
            continue;
        }
        let bytes = match folder.picture(&file) {
            Ok(bytes) => bytes,
            Err(fault) => {
                let message = format!("`{}` {}", path.text, fault.message());
                findings.push(FILE_UNREADABLE.at(path.span, message).hint(fault.hint()));
                continue;
            }
        };
        if ending == "svg" {
            match String::from_utf8(bytes.clone()) {
                Ok(text) => {
                    let file = sources.add(folder.show(&file), text.clone());
                    figure::look_at_drawing(&text, Span::new(file, 0..text.len()), house, findings);
                }
                Err(_) => findings.push(unusable(path, "is no text, as an SVG is")),
            }
        } else if let Err(words) = dots(&ending, &bytes) {
            findings.push(unusable(path, &words));
        }
        found.insert(name.to_owned(), Photo { ending, bytes });
    }
    found
}

fn unusable(path: &Text, words: &str) -> Finding {
    FILE_UNREADABLE.at(path.span, format!("`{}` {words}", path.text)).hint("save it again as SVG, PNG or JPEG")
}

/// Whether a picture of dots can be read to its end; else what is wrong, to follow its name.
fn dots(ending: &str, bytes: &[u8]) -> Result<(), String> {
    let format = ImageFormat::from_extension(ending).ok_or("is no picture that can be printed")?;
    let size = imagesize::blob_size(bytes).map_err(|_| format!("is no {ending} picture, whatever its name says"))?;
    if size.width.saturating_mul(size.height) > DOTS.most {
        return Err(format!("is {} by {} dots: {} are the most", size.width, size.height, thousands(DOTS.most)));
    }
    let reader = image::ImageReader::with_format(Cursor::new(bytes), format);
    reader.decode().map(|_| ()).map_err(|error| format!("cannot be read to its end: {error}"))
}

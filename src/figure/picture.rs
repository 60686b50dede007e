//! Diagrams as pictures, and the fonts that diagrams may use.

use std::collections::BTreeSet;
use std::sync::Arc;

use resvg::tiny_skia;
use usvg::fontdb;

use super::inspect::{self, Page};
use super::{bounds, markup, typeface};
use crate::diag::Findings;
use crate::faults::{FIGURE_NOT_DRAWABLE, OUTSIDE_LINK, SCRIPT_IN_FIGURE};
use crate::source::{House, Span};

/// Why a picture could not be made.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PictureFault {
    /// The drawing cannot be read.
    Unreadable(String),
    /// The picture would be too large.
    TooLarge,
}

/// The fonts of the house, ready for diagrams, and the names of their families.
pub fn fonts(house: &House) -> (Arc<fontdb::Database>, Vec<String>) {
    let mut database = fontdb::Database::new();
    for font in &house.fonts {
        database.load_font_data(font.bytes.to_vec());
    }
    let mut families: Vec<String> = Vec::new();
    for face in database.faces() {
        for (family, _) in &face.families {
            if !families.contains(family) {
                families.push(family.clone());
            }
        }
    }
    if let Some(first) = families.iter().find(|family| *family == "Noto Sans").or(families.first()) {
        database.set_sans_serif_family(first.clone());
        database.set_serif_family(first.clone());
        database.set_monospace_family(first.clone());
    }
    (Arc::new(database), families)
}

/// Every letter and sign that the fonts of a booklet hold.
pub fn letters(house: &House) -> BTreeSet<char> {
    let mut letters = BTreeSet::new();
    for font in &house.fonts {
        let Ok(face) = ttf_parser::Face::parse(&font.bytes, 0) else { continue };
        for table in face.tables().cmap.iter().flat_map(|cmap| cmap.subtables).filter(|table| table.is_unicode()) {
            table.codepoints(|code| letters.extend(char::from_u32(code)));
        }
    }
    letters
}

/// The paths of a booklet's own fonts that cannot be used, and what is wrong with each, to follow its name.
pub fn broken_fonts(house: &House) -> Vec<(String, String)> {
    let own = house.fonts.iter().filter_map(|font| Some((font.own.clone()?, typeface::fault(&font.bytes)?)));
    own.collect()
}

/// Looks at a drawing that is printed as it stands, a logo or a cover: whether it can be drawn at all, within the
/// limits, and reaches nothing outside. What is wrong is told in its own text, `whole`.
pub fn look_at_drawing(text: &str, whole: Span, house: &House, findings: &mut Findings) {
    let at = |range: std::ops::Range<usize>| {
        let start = whole.start as usize;
        Span::new(whole.file, start + range.start..start + range.end)
    };
    let mut refuse = |range, message: String, hint: &str| {
        findings.push(FIGURE_NOT_DRAWABLE.at(at(range), message).hint(hint));
    };
    let document = match markup::parse(text) {
        Ok(document) => document,
        Err(complaint) => {
            let range = complaint.at..(complaint.at + 1).min(text.len()).max(complaint.at);
            return refuse(
                range,
                format!("the drawing cannot be read here: {}", complaint.words),
                "save it again as plain SVG",
            );
        }
    };
    if let Some(refused) = bounds::refused(&document, text, true) {
        return refuse(refused.range, refused.message, &refused.hint);
    }
    let (database, families) = fonts(house);
    if let Err(error) = usvg::Tree::from_str(text, &options(&database)) {
        return refuse(
            0..0,
            format!("the drawing cannot be drawn: {error}"),
            "save it again as plain SVG with a width and a height",
        );
    }
    // Classes and typefaces are the drawing's own affair; what it may not hold or reach is not.
    let page = Page { text, place: &at, whole, bound: true };
    let mut found = Findings::default();
    inspect::inspect(&document, &page, &families, &mut found);
    let matters = [&SCRIPT_IN_FIGURE, &OUTSIDE_LINK, &FIGURE_NOT_DRAWABLE];
    findings.extend(found.into_iter().filter(|one| matters.iter().any(|check| std::ptr::eq(*check, one.check))));
}

/// How usvg is to read a diagram: only the bundled fonts, nothing from outside.
pub(super) fn options(database: &Arc<fontdb::Database>) -> usvg::Options<'static> {
    usvg::Options {
        fontdb: Arc::clone(database),
        font_family: "sans-serif".into(),
        image_href_resolver: usvg::ImageHrefResolver {
            resolve_string: Box::new(|_, _| None),
            ..usvg::ImageHrefResolver::default()
        },
        ..usvg::Options::default()
    }
}

/// A bound diagram as a PNG on white, `dots` to the millimetre.
pub fn to_png(svg: &str, database: &Arc<fontdb::Database>, dots: f32) -> Result<Vec<u8>, PictureFault> {
    let tree =
        usvg::Tree::from_str(svg, &options(database)).map_err(|error| PictureFault::Unreadable(error.to_string()))?;
    // usvg counts in pixels of 1/96 inch.
    let scale = dots * 25.4 / 96.0;
    let (width, height) = ((tree.size().width() * scale).ceil(), (tree.size().height() * scale).ceil());
    if width * height > 100_000_000.0 {
        return Err(PictureFault::TooLarge);
    }
    let mut pixels = tiny_skia::Pixmap::new(width as u32, height as u32).ok_or(PictureFault::TooLarge)?;
    pixels.fill(tiny_skia::Color::WHITE);
    resvg::render(&tree, tiny_skia::Transform::from_scale(scale, scale), &mut pixels.as_mut());
    pixels.encode_png().map_err(|error| PictureFault::Unreadable(error.to_string()))
}

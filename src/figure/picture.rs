//! Diagrams as pictures, and the fonts that diagrams may use.

use std::collections::BTreeSet;
use std::sync::Arc;

use resvg::tiny_skia;
use usvg::fontdb;

use crate::source::House;

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

/// The paths of a booklet's own fonts that are none.
pub fn broken_fonts(house: &House) -> Vec<&str> {
    let broken = house.fonts.iter().filter(|font| ttf_parser::Face::parse(&font.bytes, 0).is_err());
    broken.filter_map(|font| font.own.as_deref()).collect()
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

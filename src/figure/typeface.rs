//! Whether a font is whole: looked at table by table, before anything leans on it.

use ttf_parser::{Face, GlyphId, OutlineBuilder};

use crate::limits::GLYPHS;

/// The most lines and curves of all letters together.
const STROKES: usize = 5_000_000;
/// The most tables of a font; there are some 60 kinds.
const TABLES: u16 = 100;

/// What is wrong with a font, to follow its name; `None` for one that is whole.
pub(super) fn fault(bytes: &[u8]) -> Option<String> {
    if let Err(words) = tables(bytes) {
        return Some(words.to_owned());
    }
    let Ok(face) = Face::parse(bytes, 0) else { return Some("holds no font that can be read".into()) };
    let count = face.number_of_glyphs();
    if usize::from(count) > GLYPHS.most {
        return Some(format!("holds {count} letters: {} are the most", GLYPHS.most));
    }
    let mut strokes = Strokes(0);
    for glyph in 0..count {
        face.outline_glyph(GlyphId(glyph), &mut strokes);
        if strokes.0 > STROKES {
            return Some("draws its letters with more lines than can be printed".into());
        }
    }
    None
}

/// The directory of tables and their checksums (ISO/IEC 14496-22, 4.5): a byte that was changed on the way is found.
fn tables(bytes: &[u8]) -> Result<(), &'static str> {
    const NONE: &str = "holds no font that can be read";
    let version = word(bytes, 0).ok_or(NONE)?;
    // TrueType outlines by number or by name, or outlines of the Compact Font Format.
    if ![0x0001_0000, u32::from_be_bytes(*b"true"), u32::from_be_bytes(*b"OTTO")].contains(&version) {
        return Err(NONE);
    }
    let count = bytes.get(4..6).map(|two| u16::from_be_bytes([two[0], two[1]])).ok_or(NONE)?;
    if count == 0 || count > TABLES {
        return Err("says that it holds more tables than there are kinds of");
    }
    for record in 0..usize::from(count) {
        let at = 12 + 16 * record;
        let field = |field: usize| word(bytes, at + 4 * field).ok_or("ends in the midst of its list of tables");
        let (tag, sum, offset, length) = (field(0)?, field(1)?, field(2)? as usize, field(3)? as usize);
        let table = offset.checked_add(length).and_then(|end| bytes.get(offset..end)).ok_or("is cut short")?;
        let head = tag == u32::from_be_bytes(*b"head");
        if checksum(table, head) != sum {
            return Err("is damaged: a table of it is not as its checksum says");
        }
    }
    Ok(())
}

fn word(bytes: &[u8], at: usize) -> Option<u32> {
    let four = bytes.get(at..at.checked_add(4)?)?;
    Some(u32::from_be_bytes([four[0], four[1], four[2], four[3]]))
}

/// The sum of a table's words; in `head` the adjustment of the whole font counts as nothing.
fn checksum(table: &[u8], head: bool) -> u32 {
    table.chunks(4).enumerate().fold(0u32, |sum, (at, chunk)| {
        let mut four = [0; 4];
        four[..chunk.len()].copy_from_slice(chunk);
        let adjustment = head && at == 2;
        sum.wrapping_add(if adjustment { 0 } else { u32::from_be_bytes(four) })
    })
}

struct Strokes(usize);

impl OutlineBuilder for Strokes {
    fn move_to(&mut self, _: f32, _: f32) {
        self.0 += 1;
    }

    fn line_to(&mut self, _: f32, _: f32) {
        self.0 += 1;
    }

    fn quad_to(&mut self, _: f32, _: f32, _: f32, _: f32) {
        self.0 += 1;
    }

    fn curve_to(&mut self, _: f32, _: f32, _: f32, _: f32, _: f32, _: f32) {
        self.0 += 1;
    }

    fn close(&mut self) {}
}

//! Whether a font is whole: looked at table by table, before anything leans on it.

use std::collections::BTreeSet;

use ttf_parser::gpos::PositioningSubtable;
use ttf_parser::gsub::SubstitutionSubtable;
use ttf_parser::opentype_layout::{Coverage, Lookup};
use ttf_parser::{Face, GlyphId, OutlineBuilder, RawFace, Tag};

use crate::limits::GLYPHS;

/// The most lines and curves of all letters together.
const STROKES: usize = 5_000_000;
/// The most letters that the lists of a font name together: more than there are (Unicode Standard, 2.4).
const NAMED: u64 = 2_000_000;
/// The most tables of a font; there are some 60 kinds.
const TABLES: u16 = 100;

/// What is wrong with a font, to follow its name; `None` for one that is whole.
pub(super) fn fault(bytes: &[u8]) -> Option<String> {
    if let Err(words) = tables(bytes) {
        return Some(words.to_owned());
    }
    // Counted before anything reads the lists, which names each letter in them.
    if letters_named(bytes).is_none_or(|named| named > NAMED) {
        return Some("says that it holds more letters than there are".into());
    }
    let Ok(face) = Face::parse(bytes, 0) else { return Some("holds no font that can be read".into()) };
    if !names_fit(bytes) {
        return Some("is damaged: its names lie farther off than a font can say".into());
    }
    if runs_back(&face) {
        return Some("is damaged: a list of its letters ends before it begins".into());
    }
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

/// Whether all names of a font can be written into a smaller one: places and lengths are numbers of two bytes
/// (ISO/IEC 14496-22, 5.2.7), and so is their sum when each is written once.
fn names_fit(bytes: &[u8]) -> bool {
    let Ok(face) = RawFace::parse(bytes, 0) else { return true };
    let Some(names) = face.table(Tag::from_bytes(b"name")) else { return true };
    let record = |at: usize| Some((half(names, 6 + 12 * at + 10)?, half(names, 6 + 12 * at + 8)?));
    let count = half(names, 2).unwrap_or(0);
    let distinct: BTreeSet<(u16, u16)> = (0..usize::from(count)).map_while(record).collect();
    let all = distinct.iter().try_fold(0u16, |sum, (_, length)| sum.checked_add(*length));
    let heads = count.checked_mul(12).and_then(|records| records.checked_add(6));
    distinct.iter().all(|(offset, length)| offset.checked_add(*length).is_some()) && all.is_some() && heads.is_some()
}

/// Whether the letters that a rule of setting is for run from a higher number to a lower, on which whoever sets words
/// stops.
fn runs_back(face: &Face<'_>) -> bool {
    let back = |coverage: Coverage<'_>| match coverage {
        Coverage::Format2 { records } => records.into_iter().any(|range| range.start > range.end),
        Coverage::Format1 { .. } => false,
    };
    let (put, placed) = (face.tables().gsub, face.tables().gpos);
    let puts =
        |lookup: Lookup<'_>| lookup.subtables.into_iter::<SubstitutionSubtable<'_>>().any(|rule| back(rule.coverage()));
    let places =
        |lookup: Lookup<'_>| lookup.subtables.into_iter::<PositioningSubtable<'_>>().any(|rule| back(rule.coverage()));
    put.is_some_and(|table| table.lookups.into_iter().any(puts))
        || placed.is_some_and(|table| table.lookups.into_iter().any(places))
}

/// How many letters the lists of a font name, each counted as often as it stands there; `None` where they cannot be
/// counted. The formats are those of ISO/IEC 14496-22, 5.2.1.
fn letters_named(bytes: &[u8]) -> Option<u64> {
    let Ok(face) = RawFace::parse(bytes, 0) else { return Some(0) };
    let Some(map) = face.table(Tag::from_bytes(b"cmap")) else { return Some(0) };
    let lists = usize::from(half(map, 2)?);
    let mut named = 0;
    for list in 0..lists {
        let offset = word(map, 4 + 8 * list + 4)? as usize;
        named += in_list(map.get(offset..)?)?;
        if named > NAMED {
            break;
        }
    }
    Some(named)
}

fn in_list(list: &[u8]) -> Option<u64> {
    let span = |start: u32, end: u32| u64::from(end.saturating_sub(start)) + 1;
    Some(match half(list, 0)? {
        // Two letters for each byte before another: so many at the most for each of 256.
        2 => {
            let used = (0..256).filter_map(|at| half(list, 6 + 2 * at)).max()? / 8;
            let count = |at: u16| half(list, 518 + 8 * usize::from(at) + 2).map(u64::from);
            (0..=used).map(|at| count(at).unwrap_or(0)).max()?.saturating_mul(256)
        }
        4 => {
            let runs = usize::from(half(list, 6)? / 2);
            let run = |at: usize| {
                Some(span(u32::from(half(list, 16 + 2 * (runs + at))?), u32::from(half(list, 14 + 2 * at)?)))
            };
            (0..runs).map_while(run).sum()
        }
        8 | 12 | 13 => {
            let groups = if half(list, 0)? == 8 { 12 + 8192 } else { 12 };
            let count = word(list, groups)? as usize;
            let group = |at: usize| {
                let at = groups + 4 + 12 * at;
                Some(span(word(list, at)?, word(list, at + 4)?))
            };
            (0..count).map_while(group).sum()
        }
        // One number for each letter: no more than there are bytes.
        _ => list.len() as u64,
    })
}

fn half(bytes: &[u8], at: usize) -> Option<u16> {
    let two = bytes.get(at..at.checked_add(2)?)?;
    Some(u16::from_be_bytes([two[0], two[1]]))
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

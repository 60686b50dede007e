//! The house's own fonts with damages, as a booklet's own: whoever reads one must answer with a finding or take it.

use std::path::Path;

use fastrand::Rng;
use notchbook::pipeline::{Reach, Workshop};
use notchbook::sheets::SheetPaper;
use notchbook::source::{Folder, find_booklets};
use notchbook::typeset::{Paper, Press};

/// Numbers at the ends of what a field can hold.
const ENDS: [u16; 6] = [0, 1, 0x7fff, 0x8000, 0xfffe, 0xffff];

/// The fonts, and a booklet on the disk that brings one along.
pub struct Fonts {
    home: tempfile::TempDir,
    whole: Vec<(String, Vec<u8>)>,
}

impl Fonts {
    /// Copies a folder of one booklet, and reads the fonts of another folder.
    pub fn open(booklet: &Path, fonts: &Path) -> Fonts {
        let home = tempfile::tempdir().expect("a folder");
        let files = walkdir::WalkDir::new(booklet)
            .into_iter()
            .filter_map(Result::ok);
        for file in files.filter(|file| file.file_type().is_file()) {
            let place = home
                .path()
                .join("own")
                .join(file.path().strip_prefix(booklet).expect("below it"));
            std::fs::create_dir_all(place.parent().expect("a folder")).expect("a folder");
            std::fs::copy(file.path(), place).expect("a copy");
        }
        std::fs::create_dir_all(home.path().join("own/fonts")).expect("a folder");
        let mut whole: Vec<(String, Vec<u8>)> = std::fs::read_dir(fonts)
            .expect("the fonts")
            .filter_map(Result::ok)
            .filter(|file| file.path().extension().is_some_and(|kind| kind == "ttf"))
            .map(|file| {
                let name = file.file_name().to_string_lossy().into_owned();
                (name, std::fs::read(file.path()).expect("a font"))
            })
            .collect();
        whole.sort();
        Fonts { home, whole }
    }

    /// Damages a font, and takes the booklet as far as its first page set.
    pub fn run(&self, rng: &mut Rng) {
        let (name, font) = &self.whole[rng.usize(..self.whole.len())];
        let mut font = font.clone();
        for _ in 0..1 + rng.usize(..4) {
            damage(&mut font, rng);
        }
        // A damage on the way is told by its checksum; one that is meant keeps that right.
        if rng.u8(..8) > 0 {
            mend(&mut font);
        }
        let fonts = self.home.path().join("own/fonts");
        // What a run before left that was stopped is no part of this one.
        for (name, _) in &self.whole {
            let _ = std::fs::remove_file(fonts.join(name));
        }
        let place = fonts.join(name);
        std::fs::write(place, &font).expect("a file");
        let folder = Folder::open(self.home.path()).expect("a folder");
        let (booklets, _) = find_booklets(&folder);
        let workshop = Workshop::open(&folder, &booklets[0], Reach::Checks);
        if workshop.report.errors() == 0
            && let Some(edition) = workshop.editions().first()
        {
            let book = workshop.book(edition, SheetPaper::A4);
            let _ = Press::new(&workshop.house).print(&workshop.sheaf(&book, Paper::A4));
            comemo::evict(0);
        }
    }
}

/// One table of a font by its record: where it begins and how long it is.
fn table(font: &[u8], record: usize) -> Option<(usize, usize)> {
    let word = |at: usize| {
        let four = font.get(at..at + 4)?;
        Some(u32::from_be_bytes([four[0], four[1], four[2], four[3]]) as usize)
    };
    let at = 12 + 16 * record;
    let (offset, length) = (word(at + 8)?, word(at + 12)?);
    (offset.checked_add(length)? <= font.len()).then_some((offset, length))
}

fn count(font: &[u8]) -> usize {
    font.get(4..6)
        .map_or(0, |two| usize::from(u16::from_be_bytes([two[0], two[1]])))
        .min(200)
}

fn damage(font: &mut [u8], rng: &mut Rng) {
    // Somewhere in a table, near its beginning as often as not: there stand its counts and offsets.
    let record = rng.usize(..count(font).max(1));
    let (offset, length) = table(font, record).unwrap_or((0, font.len()));
    let near = if rng.bool() { length.min(64) } else { length };
    let at = offset + rng.usize(..near.max(1));
    let end = (at + 1 + rng.usize(..40)).min(font.len());
    match rng.u8(..8) {
        0 | 1 => {
            if let Some(byte) = font.get_mut(at) {
                *byte = rng.u8(..);
            }
        }
        2..=4 => {
            let value = ENDS[rng.usize(..ENDS.len())].to_be_bytes();
            if let Some(two) = font.get_mut(at..at + 2) {
                two.copy_from_slice(&value);
            }
        }
        5 => font
            .iter_mut()
            .take(end)
            .skip(at)
            .for_each(|byte| *byte = 0),
        6 => font
            .iter_mut()
            .take(end)
            .skip(at)
            .for_each(|byte| *byte = rng.u8(..)),
        // The list of tables itself: another place or length.
        _ => {
            let field = 12 + 16 * record + 8 + 4 * rng.usize(..2);
            if let Some(two) = font.get_mut(field + 2..field + 4) {
                two.copy_from_slice(&rng.u16(..).to_be_bytes());
            }
        }
    }
}

/// Writes the checksum of every table anew (ISO/IEC 14496-22, 4.5).
fn mend(font: &mut [u8]) {
    for record in 0..count(font) {
        let Some((offset, length)) = table(font, record) else {
            continue;
        };
        let at = 12 + 16 * record;
        let head = font.get(at..at + 4) == Some(b"head");
        let words = font[offset..offset + length].chunks(4).enumerate();
        let sum = words.fold(0u32, |sum, (index, chunk)| {
            let mut four = [0; 4];
            four[..chunk.len()].copy_from_slice(chunk);
            let counted = if head && index == 2 {
                0
            } else {
                u32::from_be_bytes(four)
            };
            sum.wrapping_add(counted)
        });
        font[at + 4..at + 8].copy_from_slice(&sum.to_be_bytes());
    }
}

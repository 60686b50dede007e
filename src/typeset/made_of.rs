//! What a document is made of, as a checksum: two with the same one are set alike, byte for byte.

use serde_json::Value;

use super::data::Sheaf;
use super::press::Press;
use crate::sheets::{NoteSort, SheetSet};

impl Press {
    /// The checksum of all that goes into a booklet: templates, fonts, data, drawings and the paper.
    pub fn booklet_made_of(&self, sheaf: &Sheaf) -> String {
        let mut sum = self.shop_sum().with("booklet").with(sheaf.paper.name()).with(sheaf.data.to_string());
        for (path, bytes) in &sheaf.files {
            sum = sum.with(path).with(bytes);
        }
        sum.finish()
    }

    /// The checksum of all that goes into pattern sheets.
    pub fn sheets_made_of(&self, sheets: &SheetSet, about: &Value) -> String {
        let (width, height) = sheets.size;
        let mut sum = self.shop_sum().with("sheets").with(about.to_string());
        sum = sum.with(width.to_le_bytes()).with(height.to_le_bytes());
        for page in &sheets.pages {
            sum = sum.with(&page.name).with(&page.alt).with(&page.svg).with((page.notes.len() as u64).to_le_bytes());
            for note in &page.notes {
                let (x, y) = note.at;
                sum = sum.with(x.to_le_bytes()).with(y.to_le_bytes()).with(note.size.to_le_bytes());
                sum = sum.with([sort(note.sort)]).with(&note.text);
            }
        }
        sum.finish()
    }
}

/// A sort of words as a byte.
fn sort(sort: NoteSort) -> u8 {
    match sort {
        NoteSort::Name => 0,
        NoteSort::Heading => 1,
        NoteSort::Prose => 2,
    }
}

//! The papers that booklets are printed on, or read on.

use serde_json::{Value as Json, json};

use crate::sheets::SheetPaper;

/// A paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Paper {
    /// 210 × 297 mm (ISO 216).
    A4,
    /// 8.5 × 11 in (ANSI/ASME Y14.1).
    Letter,
    /// A4, with words of 16 pt.
    A4LargePrint,
    /// Letter, with words of 16 pt.
    LetterLargePrint,
    /// A4 printed on both sides and folded in half: pages of 148.5 × 210 mm.
    A4Folded,
    /// Letter printed on both sides and folded in half: pages of 5.5 × 8.5 in.
    LetterFolded,
    /// The screen of a phone: one narrow column, nothing to print.
    Phone,
}

const A4: (f64, f64) = (210.0, 297.0);
const LETTER: (f64, f64) = (215.9, 279.4);
/// As wide as a hand's screen is high above its words: lines are read without moving the page (common practice, no source).
const PHONE: (f64, f64) = (90.0, 170.0);

impl Paper {
    /// Its name in commands and file names.
    pub fn name(self) -> &'static str {
        match self {
            Paper::A4 => "a4",
            Paper::Letter => "letter",
            Paper::A4LargePrint => "a4-large-print",
            Paper::LetterLargePrint => "letter-large-print",
            Paper::A4Folded => "a4-folded",
            Paper::LetterFolded => "letter-folded",
            Paper::Phone => "phone",
        }
    }

    /// The paper of the pattern sheets that a booklet on this one speaks of.
    pub fn of_sheets(self) -> SheetPaper {
        match self {
            Paper::A4 | Paper::A4LargePrint | Paper::A4Folded | Paper::Phone => SheetPaper::A4,
            Paper::Letter | Paper::LetterLargePrint | Paper::LetterFolded => SheetPaper::Letter,
        }
    }

    /// Whether it is printed on, so that pattern sheets belong with it.
    pub fn is_printed(self) -> bool {
        self != Paper::Phone
    }

    /// Width and height in millimetres of the sheet that is folded into two pages; `None` where a page is a sheet.
    pub fn folded_sheet(self) -> Option<(f64, f64)> {
        match self {
            Paper::A4Folded => Some((A4.1, A4.0)),
            Paper::LetterFolded => Some((LETTER.1, LETTER.0)),
            _ => None,
        }
    }

    /// Width and height of a page in millimetres.
    fn page(self) -> (f64, f64) {
        match self {
            Paper::A4 | Paper::A4LargePrint => A4,
            Paper::Letter | Paper::LetterLargePrint => LETTER,
            Paper::A4Folded => (A4.1 / 2.0, A4.0),
            Paper::LetterFolded => (LETTER.1 / 2.0, LETTER.0),
            Paper::Phone => PHONE,
        }
    }

    /// The page as the templates know it: its sort, and its measures in millimetres.
    pub fn described(self) -> Json {
        let sort = match self {
            Paper::A4 | Paper::Letter => "sheet",
            Paper::A4LargePrint | Paper::LetterLargePrint => "large",
            Paper::A4Folded | Paper::LetterFolded => "folded",
            Paper::Phone => "phone",
        };
        let (width, height) = self.page();
        json!({ "sort": sort, "width": width, "height": height })
    }
}

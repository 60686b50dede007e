//! The papers that booklets are printed on.

use crate::sheets::SheetPaper;

/// A paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Paper {
    /// 210 × 297 mm (ISO 216).
    A4,
    /// 8.5 × 11 in (ANSI/ASME Y14.1).
    Letter,
}

impl Paper {
    /// Its name in commands and file names.
    pub fn name(self) -> &'static str {
        match self {
            Paper::A4 => "a4",
            Paper::Letter => "letter",
        }
    }

    /// The same for pattern sheets.
    pub fn of_sheets(self) -> SheetPaper {
        match self {
            Paper::A4 => SheetPaper::A4,
            Paper::Letter => SheetPaper::Letter,
        }
    }

    /// Its name in Typst.
    pub(super) fn typst_name(self) -> &'static str {
        match self {
            Paper::A4 => "a4",
            Paper::Letter => "us-letter",
        }
    }
}

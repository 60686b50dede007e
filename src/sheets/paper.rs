//! What sheets are printed on.

use crate::measure::to_f64;
use crate::model::SheetSettings;

/// A paper, a roll, or a wall.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum SheetPaper {
    /// 210 × 297 mm (ISO 216).
    A4,
    /// 8.5 × 11 in (ANSI/ASME Y14.1).
    Letter,
    /// 841 × 1189 mm (ISO 216).
    A0,
    /// A roll of 914 mm (36 in), as long as it has to be.
    Roll,
    /// One unbroken page for a projector.
    Projector,
}

impl SheetPaper {
    /// All of them.
    pub const ALL: &'static [SheetPaper] =
        &[SheetPaper::A4, SheetPaper::Letter, SheetPaper::A0, SheetPaper::Roll, SheetPaper::Projector];

    /// Its name in commands and file names.
    pub fn name(self) -> &'static str {
        match self {
            SheetPaper::A4 => "a4",
            SheetPaper::Letter => "letter",
            SheetPaper::A0 => "a0",
            SheetPaper::Roll => "roll",
            SheetPaper::Projector => "projector",
        }
    }

    /// Width and height in mm; the height is `None` where the page is as long as it has to be.
    pub fn size(self) -> (f64, Option<f64>) {
        match self {
            SheetPaper::A4 => (210.0, Some(297.0)),
            SheetPaper::Letter => (215.9, Some(279.4)),
            SheetPaper::A0 => (841.0, Some(1189.0)),
            SheetPaper::Roll => (914.0, None),
            SheetPaper::Projector => (1200.0, None),
        }
    }

    /// What is left white at each edge, in mm; a projector has no edge to keep from.
    pub fn margin(self, settings: &SheetSettings) -> f64 {
        match self {
            SheetPaper::Projector => 5.0,
            _ => to_f64(settings.margin),
        }
    }

    /// The part of the plan that one sheet adds: what is printed less the overlap, which lies half at
    /// each edge. The height is `None` for an endless page.
    pub fn step(self, settings: &SheetSettings) -> (f64, Option<f64>) {
        let (width, height) = self.size();
        let margin = self.margin(settings);
        let overlap = if height.is_some() { to_f64(settings.overlap) } else { 0.0 };
        (width - 2.0 * margin - overlap, height.map(|height| height - 2.0 * margin - overlap))
    }
}

//! How large words are on sheets, and how broad lines: for paper, and for light thrown on a table.

use super::paper::SheetPaper;

/// Sizes of type, all in mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Face {
    /// On a piece with room, with less, and with the least.
    pub block: [f64; 3],
    /// Beside a piece too small to hold its words.
    pub beside: f64,
    /// Beside darts, pleats, marks, folds, and joints.
    pub small: f64,
    /// Beside the line of a size.
    pub line: f64,
    /// The words of the test gauge.
    pub gauge: f64,
    /// The line at the foot, and the band that it has to itself.
    pub foot: (f64, f64),
}

/// 10 pt where there is room, never less than 6 pt.
const PAPER: Face = Face { block: [3.5, 2.8, 2.1], beside: 2.5, small: 2.5, line: 2.5, gauge: 3.1, foot: (2.4, 4.6) };

/// Nothing below 10 mm: a beam blurs what is smaller, and it is read standing.
const BEAM: Face =
    Face { block: [12.0, 10.0, 10.0], beside: 10.0, small: 10.0, line: 10.0, gauge: 10.0, foot: (10.0, 14.0) };

/// The sizes of type of a paper.
pub(super) fn face(paper: SheetPaper) -> &'static Face {
    if is_beam(paper) { &BEAM } else { &PAPER }
}

/// Whether the page is never printed.
pub(super) fn is_beam(paper: SheetPaper) -> bool {
    paper == SheetPaper::Projector
}

/// How wide words are in Noto Sans, nearly: six tenths of their height a letter, a little more in bold.
pub(super) fn width(text: &str, size: f64) -> f64 {
    text.chars().count() as f64 * size * 0.56
}

/// The style sheet of a paper's drawings.
pub(super) fn style(paper: SheetPaper) -> String {
    format!("{COMMON}{}{WORDS}", if is_beam(paper) { BROAD } else { FINE })
}

const COMMON: &str = "\
path{fill:none;stroke:#000;stroke-linejoin:miter;stroke-linecap:butt}\
.nb-leader-dot{fill:#000;stroke:none}";

/// Hairlines, told apart by pattern; nothing is filled. Each sort has a breadth of its own.
const FINE: &str = "\
path{stroke-width:0.3}\
.nb-cut{stroke-width:0.35}\
.nb-sew{stroke-width:0.18;stroke-dasharray:2.4 1.6;stroke:#444}\
.nb-fold{stroke-width:0.3;stroke-dasharray:8 2 2 2}\
.nb-bracket{stroke-width:0.45}\
.nb-dart{stroke-width:0.28;stroke-dasharray:2.4 1.2}\
.nb-inner-fold{stroke-width:0.23;stroke-dasharray:6 1.5 1.5 1.5}\
.nb-onto{stroke-width:0.23}\
.nb-arrow,.nb-dot{stroke-width:0.4}\
.nb-placed{stroke-width:0.32;stroke-dasharray:4 2}\
.nb-hole{stroke-width:0.4}\
.nb-snip{stroke-width:0.5}\
.nb-grain{stroke-width:0.25}\
.nb-gauge{stroke-width:0.2}\
.nb-joint{stroke-width:0.15;stroke-dasharray:1 2;stroke:#555}\
.nb-joint-mark{stroke-width:0.25}\
.nb-leader{stroke-width:0.12}\
.nb-size-1{stroke-dasharray:7 2}\
.nb-size-2{stroke-dasharray:3 1.6}\
.nb-size-3{stroke-dasharray:9 1.8 1.8 1.8}\
.nb-size-4{stroke-dasharray:1.2 1.4}\
.nb-size-5{stroke-dasharray:9 1.6 1.2 1.6 1.2 1.6}\
.nb-size-6{stroke-dasharray:14 3}\
.nb-size-7{stroke-dasharray:4 1.4 0.8 1.4}\
.nb-shared{stroke-width:0.6;stroke-dasharray:none}\
.nb-key{stroke-width:0.38}\
.nb-key-shared{stroke-width:0.66}";

/// The same for a beam: 1 to 2 mm, which a projector above a table shows without a gap.
const BROAD: &str = "\
path{stroke-width:1.2}\
.nb-grid{stroke-width:1;stroke:#bbb}\
.nb-cut{stroke-width:1.6}\
.nb-sew{stroke-width:1;stroke-dasharray:8 6;stroke:#444}\
.nb-fold{stroke-width:1.4;stroke-dasharray:28 7 7 7}\
.nb-bracket{stroke-width:1.8}\
.nb-dart{stroke-width:1.2;stroke-dasharray:8 5}\
.nb-inner-fold{stroke-width:1;stroke-dasharray:20 5 5 5}\
.nb-placed{stroke-width:1.2;stroke-dasharray:14 7}\
.nb-snip{stroke-width:1.9}\
.nb-leader{stroke-width:1}\
.nb-size-1{stroke-dasharray:24 8}\
.nb-size-2{stroke-dasharray:10 6}\
.nb-size-3{stroke-dasharray:30 6 6 6}\
.nb-size-4{stroke-dasharray:4 5}\
.nb-size-5{stroke-dasharray:30 6 4 6 4 6}\
.nb-size-6{stroke-dasharray:48 10}\
.nb-size-7{stroke-dasharray:14 5 3 5}\
.nb-key{stroke-width:1.65}\
.nb-shared{stroke-width:2;stroke-dasharray:none}\
.nb-key-shared{stroke-width:1.95;stroke-dasharray:none}";

const WORDS: &str = "\
text{font-family:'Noto Sans';fill:#000;stroke:#fff;stroke-width:0.8;paint-order:stroke;stroke-linejoin:round}\
.nb-strong{font-weight:700}";

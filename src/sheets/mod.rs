//! True-scale pattern sheets and the map of their pages.
//!
//! All numbers are mm at true size. A sheet is a drawing of the whole plan seen through a window:
//! lines are cut at the window's edge, so that each tile holds what it shows and nothing else.

mod align;
mod arrange;
mod crowd;
mod drawing;
mod endless;
mod face;
mod frame;
mod gauge;
mod inside;
mod joints;
mod labels;
mod list;
mod map;
mod names;
mod paper;
mod plan;
mod planning;
mod sheet;
mod shown;
mod strokes;
mod window;
mod words;

pub use arrange::naive_count;
pub use drawing::{Note, NoteSort, Page, SheetSet, draw_sheets};
pub use map::{PageMap, page_map, sheet_lists};
pub use paper::SheetPaper;
pub use plan::{PlacedPiece, SheetPlan};
pub use planning::{plan_all_sizes, plan_one_size, plan_sizes, plan_with_all};
pub use shown::{ShownPiece, ShownSheet, lines_of, shown};

//! True-scale pattern sheets, the map of their pages, cutting layouts, and how much cloth to buy.
//!
//! All numbers are mm at true size. A sheet is a drawing of the whole plan seen through a window:
//! lines are cut at the window's edge, so that each tile holds what it shows and nothing else.

mod arrange;
mod cloth;
mod cloth_drawing;
mod drawing;
mod frame;
mod gauge;
mod labels;
mod map;
pub mod nest;
mod paper;
mod plan;
mod window;

pub use arrange::naive_count;
pub use cloth::{Bolt, ClothFault, ClothLayout, LaidPiece, bolts, lay_out};
pub use cloth_drawing::{cloth_scale, draw_cloth};
pub use drawing::{Page, SheetSet, draw_sheets};
pub use map::{PageMap, page_map};
pub use paper::SheetPaper;
pub use plan::{PlacedPiece, SheetPlan, plan_all_sizes, plan_one_size};

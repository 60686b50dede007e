//! The checks: one a file, each with the page that explains it; one table that the
//! manual and the tests walk.
//!
//! The first comment of a check's file *is* its page. Some faults are met while a booklet is read,
//! worked out or drawn; their checks stand in [`crate::faults`], and the table says so.

mod allowance_differs;
mod allowance_missing;
mod alt_missing;
mod amount_too_small;
mod apart;
mod both_systems_disagree;
mod boxed_before_sewn;
mod casing_not_open;
mod casing_too_narrow;
mod closed_zip_before_turning;
mod contrast_too_low;
mod curve_not_clipped;
mod cut_count_differs;
mod dart_left_open;
mod ease_negative;
mod ease_shrinks;
mod ease_too_large;
mod edge_left_raw;
mod edge_not_finished;
mod edge_unknown;
mod edition_not_recorded;
mod expectation_fails;
mod finished_size_differs;
mod fused_after_sewn;
mod gap_not_closed;
mod gap_not_left;
mod gap_too_long;
mod grain_off_piece;
mod handed_unused;
mod hands_alike;
mod heading_skips;
mod hole_too_soon;
mod holes_differ;
mod id_missing;
mod id_twice;
mod judge;
mod letter_not_in_font;
mod loose_measurement;
mod not_graded;
mod not_pressed;
mod notches_differ;
mod notion_count_differs;
mod notion_length_missing;
mod notion_unused;
mod piece_not_cut;
mod piece_too_wide;
mod piece_unused;
mod pinned_after_sewn;
mod place_off_edge;
mod prepared_too_late;
mod rounding_does_not_close;
mod seam_lengths_differ;
mod seam_not_sewn_yet;
mod sewn_not_reckoned;
mod slit_left_raw;
mod step_empty;
mod stitch_missing;
mod table;
mod topstitched_before_sewn;
mod unused_measurement;
mod used_before_cut;
mod waivers;
mod words;
mod written;
mod zip_too_short;

pub use contrast_too_low::{LEAST, contrast, luminance};
pub use judge::{Judge, Run, Subject};
pub use table::{CHECKS, by_code, run_all};
pub use waivers::unused_waiver;

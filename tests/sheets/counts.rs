//! How many sheets each set takes, held to a recorded table and to a plain grid, and what the joints
//! cut.
//!
//! `NOTCHBOOK_BLESS=1` records the counts anew.

use notchbook::measure::to_f64;

use crate::bench::recorded;
use crate::{TILED, each_set};

/// How far a piece that begins on a sheet keeps from its joints, in mm.
const INSET: f64 = 4.0;

#[test]
fn no_set_takes_more_sheets_than_a_plain_grid_or_than_recorded() {
    let mut rows = vec!["booklet,size,paper,sheets,plain grid".to_owned()];
    each_set(&TILED, |set| {
        let (sheets, plain) = (set.plan.tiles.len(), set.plan.naive);
        rows.push(format!("{},{sheets},{plain}", set.name));
        if sheets > plain {
            return vec![format!("{sheets} sheets, and a plain grid takes {plain}")];
        }
        Vec::new()
    });
    recorded("tests/sheets/counts.csv", &rows, "the sheets");
}

/// The sheets that lie under a piece, counted from its true outline at its place.
#[test]
fn no_small_piece_is_cut_by_a_joint() {
    let mut small = 0;
    each_set(&TILED, |set| {
        let step = set.plan.step;
        let mut wrong = Vec::new();
        for piece in &set.plan.pieces {
            let size = (piece.bounds.width(), piece.bounds.height());
            let fits = |(wide, high): (f64, f64)| {
                wide + 2.0 * INSET <= step.0 && high + 2.0 * INSET <= step.1
            };
            if !fits(size) && !fits((size.1, size.0)) {
                continue;
            }
            small += 1;
            let over = |from: f64, to: f64, step: f64| {
                ((to - 1e-6) / step).floor() - ((from + 1e-6) / step).floor()
            };
            let joints = over(piece.bounds.x0, piece.bounds.x1, step.0)
                + over(piece.bounds.y0, piece.bounds.y1, step.1);
            if joints > 0.0 {
                let name = &set.editions[0].draft.facts.pieces[piece.piece].name.text;
                wrong.push(format!(
                    "“{name}” would fit on one sheet, and {joints} joints cut it"
                ));
            }
        }
        wrong
    });
    assert!(small >= 20, "only {small} small pieces were looked at");
}

/// Joined, the sheets lie on a grid of one step: paper less two margins and the overlap.
#[test]
fn each_sheet_adds_its_paper_less_margins_and_overlap() {
    each_set(&TILED, |set| {
        let settings = set.editions[0].draft.facts.sheets;
        let less = 2.0 * to_f64(settings.margin) + to_f64(settings.overlap);
        // ISO 216; ANSI/ASME Y14.1.
        let (wide, high) = match set.plan.paper.name() {
            "a4" => (210.0, 297.0),
            "letter" => (8.5 * 25.4, 11.0 * 25.4),
            _ => (841.0, 1189.0),
        };
        let step = set.plan.step;
        if (step.0 - (wide - less)).abs() > 1e-9 || (step.1 - (high - less)).abs() > 1e-9 {
            return vec![format!("a step of {step:?}")];
        }
        Vec::new()
    });
}

//! Finished measurements on a drawing: each is set where the drawing has just that length, in both systems.

use kurbo::{Point, Rect, Vec2};

use super::page::Page;
use super::past::millimetres;
use crate::figure::numbers::spoken;
use crate::resolve::Edition;

/// How far a length on the drawing may lie from the stated one, in mm of cloth and as a share.
const NEAR: (f64, f64) = (2.0, 0.008);
/// How many measurements stand at one side at the most.
const ROWS: usize = 2;
/// From the drawing to the first line, and from one to the next, in mm.
const GAP: (f64, f64) = (3.2, 7.4);

/// A length on a drawing that may be a finished measurement.
pub(super) struct Length {
    pub from: Point,
    pub to: Point,
    /// Where its line is moved to: away from the drawing.
    pub away: Vec2,
    /// In mm of cloth.
    pub mm: f64,
}

/// Finished measurements that no drawing has shown yet.
pub(super) struct Rows(Vec<(f64, String)>);

impl Rows {
    pub fn of(edition: &Edition<'_>) -> Rows {
        let rows = edition.finished.iter();
        Rows(rows.filter_map(|row| Some((millimetres(row.worked)?, spoken(&edition.figures(&row.worked))))).collect())
    }

    pub fn none() -> Rows {
        Rows(Vec::new())
    }

    /// The words of the measurement that is so long.
    pub fn take(&mut self, mm: f64) -> Option<String> {
        let near = |row: &(f64, String)| (row.0 - mm).abs() <= NEAR.0.max(mm * NEAR.1);
        let at = self.0.iter().position(near)?;
        Some(self.0.remove(at).1)
    }

    /// Sets what of them the lengths are beside the drawing.
    pub fn set(&mut self, page: &mut Page<'_>, lengths: &[Length]) {
        let all = page.bounds();
        let mut at_side: Vec<(Vec2, usize)> = Vec::new();
        for length in lengths {
            let count = at_side.iter().find(|(away, _)| *away == length.away).map_or(0, |(_, count)| *count);
            if count >= ROWS || length.from.distance(length.to) < 4.0 {
                continue;
            }
            let Some(words) = self.take(length.mm) else { continue };
            let by = beyond(all, length, GAP.0 + GAP.1 * count as f64);
            page.dimension(length.from + by, length.to + by, &[words], length.away);
            match at_side.iter_mut().find(|(away, _)| *away == length.away) {
                Some((_, known)) => *known += 1,
                None => at_side.push((length.away, 1)),
            }
        }
    }
}

/// How far a length is moved to lie beyond the drawing.
fn beyond(all: Rect, length: &Length, gap: f64) -> Vec2 {
    let middle = length.from.midpoint(length.to);
    match length.away {
        away if away.y > 0.0 => Vec2::new(0.0, all.y1 + gap - middle.y),
        away if away.y < 0.0 => Vec2::new(0.0, all.y0 - gap - middle.y),
        away if away.x > 0.0 => Vec2::new(all.x1 + gap - middle.x, 0.0),
        _ => Vec2::new(all.x0 - gap - middle.x, 0.0),
    }
}

//! No layout is shorter than this: a search that comes down to it is done.

use super::cuts::Cuts;
use super::outline::area;
use super::pose::{Piece, Pose};

/// Lines along the cloth that pieces at the fold are held against.
const LINES: u32 = 32;

/// A length in mm, of the strip `width` mm wide, that no layout can be shorter than: what the pieces cover, the
/// longest of them, those that are too wide to lie beside each other, and those at the fold.
pub(super) fn least_length(pieces: &[Piece], width: f64, gap: f64) -> f64 {
    let whole = width + gap;
    let covered: f64 = pieces
        .iter()
        .filter_map(|piece| Some(piece.poses.first()?.outline.iter().map(|part| area(part)).sum::<f64>()))
        .sum();
    let longest = pieces.iter().map(|piece| least(&piece.poses, |pose| pose.height)).fold(0.0, f64::max);
    let cuts: Vec<Vec<Cuts>> =
        pieces.iter().map(|piece| piece.poses.iter().map(|pose| Cuts::new(&pose.outline, 0)).collect()).collect();
    // A piece wider than half of the strip lies across its middle wherever it lies.
    let middle = whole / 2.0;
    let across = |piece: &Piece, cuts: &[Cuts]| {
        let each = piece.poses.iter().zip(cuts);
        let through = each.map(|(pose, cuts)| {
            let from = pose.width + gap - middle;
            if from > 0.0 && from <= middle { cuts.least_inside(from.min(middle), middle) } else { 0.0 }
        });
        through.fold(f64::INFINITY, f64::min)
    };
    let wide: f64 =
        pieces.iter().zip(&cuts).map(|(piece, cuts)| across(piece, cuts)).filter(|one| one.is_finite()).sum();
    let at_fold = |at: f64| -> f64 {
        let there = pieces.iter().zip(&cuts).filter(|(piece, _)| piece.on_fold);
        there.filter_map(|(_, cuts)| Some(cuts.first()?.inside(at))).sum()
    };
    let folded = (0..LINES).map(|line| at_fold(whole * (f64::from(line) + 0.5) / f64::from(LINES))).fold(0.0, f64::max);
    let reaches = (covered / whole).max(wide).max(folded);
    longest.max(reaches - gap).max(0.0)
}

fn least(poses: &[Pose], of: impl Fn(&Pose) -> f64) -> f64 {
    poses.iter().map(of).fold(f64::INFINITY, f64::min)
}

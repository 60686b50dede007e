//! How a piece lies to its cloth before it has a place: its grain along the cloth, its fold at the fold.

use std::f64::consts::{FRAC_PI_2, FRAC_PI_4, PI};

use kurbo::{Affine, BezPath, PathEl, Point, Rect, Shape as _};

use crate::geometry::Shape;
use crate::measure::{Dimension, to_f64};
use crate::model::Piece;
use crate::nest::Turns;
use crate::resolve::{Edition, FabricId, PieceId};

/// A fold that leaves the grain by less than this runs along it, in radians: a millimetre in two metres.
const ALONG: f64 = 5e-4;

/// A piece as it lies to the cloth.
#[derive(Debug, Clone)]
pub(super) struct Lie {
    /// The outline to cut, its box's corner at 0, 0; the cloth runs along y. At a fold it is the half,
    /// the fold at its left edge.
    pub outline: BezPath,
    /// How it may be turned.
    pub turns: Turns,
    /// Whether it lies at the fold.
    pub at_fold: bool,
    /// Whether it is whole although half of it is drawn.
    pub opened: bool,
}

/// How a piece lies on a fabric (both by their places in the facts); `None` when its outline has a
/// fault.
pub(super) fn lie(edition: &Edition<'_>, piece: PieceId, fabric: FabricId) -> Option<Lie> {
    let facts = &edition.draft.facts;
    let (piece_facts, fabric) = (&facts.pieces[piece], &facts.fabrics[fabric]);
    let shape = edition.values.shape(piece)?;
    let grain = if fabric.grainless { None } else { grain_angle(piece_facts) };
    let larger = larger(edition, piece_facts);
    // The true bias lies at 45° to both threads, so such a piece may lie four ways (common practice, no
    // source).
    let free = grain.is_none_or(|angle| angle == FRAC_PI_4);
    let turns = match (fabric.nap, free) {
        (true, _) => Turns::Fixed,
        (false, false) => Turns::Half,
        (false, true) => Turns::Quarter,
    };
    let fold = fold_angle(piece_facts, shape);
    let at_fold = fold.filter(|fold| grain.is_none_or(|grain| runs_along(*fold, grain)));
    let whole = || if fold.is_some() { shape.unfolded().0.path } else { shape.cutting().path.clone() };
    let outline = match at_fold {
        Some(fold) => half_at_fold(piece_facts, shape, fold, larger),
        None => turned(&grown(whole(), larger), grain.unwrap_or(FRAC_PI_2)),
    };
    Some(Lie { outline: home(outline), turns, at_fold: at_fold.is_some(), opened: fold.is_some() && at_fold.is_none() })
}

/// Whether a piece with a fold lies at the fold of a fabric (both by their places in the facts); it does
/// not where its fold does not run along its grain, and is then laid whole.
pub fn lies_at_fold(edition: &Edition<'_>, piece: PieceId, fabric: FabricId) -> bool {
    lie(edition, piece, fabric).is_some_and(|lie| lie.at_fold)
}

/// The way of the grain, in radians from "across" to "down"; `None` where the author states none.
fn grain_angle(piece: &Piece) -> Option<f64> {
    match piece.grain.as_ref()?.text.as_str() {
        "horizontal" => Some(0.0),
        "bias" => Some(FRAC_PI_4),
        _ => Some(FRAC_PI_2),
    }
}

/// What is added all round before a piece is quilted, in mm.
fn larger(edition: &Edition<'_>, piece: &Piece) -> f64 {
    let worked = piece.cut_larger.as_ref().and_then(|value| edition.values.quiet(value));
    let length = worked.filter(|worked| worked.quantity.dimension == Dimension::Length);
    length.map_or(0.0, |length| to_f64(length.quantity.value).max(0.0))
}

/// What is quilted is cut as a rectangle, larger all round, and trimmed afterwards.
fn grown(outline: BezPath, larger: f64) -> BezPath {
    if larger > 0.0 { outline.bounding_box().inflate(larger, larger).to_path(0.01) } else { outline }
}

/// The way of the fold, in radians; `None` for a piece without one.
fn fold_angle(piece: &Piece, shape: &Shape) -> Option<f64> {
    let (from, to) = ends(&shape.edge(&piece.fold.as_ref()?.text)?.cut)?;
    Some((to - from).atan2())
}

fn ends(path: &BezPath) -> Option<(Point, Point)> {
    let mut points = path.elements().iter().filter_map(PathEl::end_point);
    let first = points.next()?;
    Some((first, points.next_back()?))
}

/// Whether two lines run the same way, there or back.
fn runs_along(one: f64, other: f64) -> bool {
    let between = (one - other).rem_euclid(PI);
    between.min(PI - between) < ALONG
}

/// An outline turned so that what runs at an angle runs along the cloth, by no more than a quarter.
fn turned(outline: &BezPath, angle: f64) -> BezPath {
    let by = (FRAC_PI_2 - angle + FRAC_PI_2 - 1e-9).rem_euclid(PI) - FRAC_PI_2 + 1e-9;
    if by.abs() < 1e-9 { outline.clone() } else { Affine::rotate(by) * outline.clone() }
}

/// The half of a piece with its fold at the left edge. A half that lies to the left of its fold is
/// mirrored, which gives the same whole piece and leaves its upper end up.
fn half_at_fold(piece: &Piece, shape: &Shape, fold: f64, larger: f64) -> BezPath {
    let mut outline = turned(&shape.cutting().path, fold);
    let line = piece.fold.as_ref().and_then(|fold| shape.edge(&fold.text)).map(|edge| turned(&edge.cut, fold));
    let at = line.map_or(0.0, |line| line.bounding_box().center().x);
    if outline.bounding_box().center().x < at {
        outline = Affine::scale_non_uniform(-1.0, 1.0) * outline;
    }
    if larger > 0.0 {
        // Nothing is added over the fold.
        let bounds = outline.bounding_box();
        outline = Rect::new(bounds.x0, bounds.y0 - larger, bounds.x1 + larger, bounds.y1 + larger).to_path(0.01);
    }
    outline
}

fn home(outline: BezPath) -> BezPath {
    let bounds = outline.bounding_box();
    Affine::translate((-bounds.x0, -bounds.y0)) * outline
}

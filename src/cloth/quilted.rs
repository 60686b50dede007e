//! Cloth that the maker quilts first, held against what is cut from it.

use super::bolt::{Bolt, value};
use super::cut_out::cut_outs;
use super::laying::{GAP, lay_within};
use super::layout::ClothLayout;
use crate::measure::{Dimension, Exact, to_f64};
use crate::model::{Outline, Verb, is_for};
use crate::resolve::{Edition, FabricId, PieceId, Touched};

/// What quilting takes of length and width where the author does not say (common practice, no source).
const DRAWN_IN: f64 = 0.03;

/// A quilted panel and what is cut from it, both in mm along it, or across where a piece is too wide.
#[derive(Debug, Clone, Copy)]
pub struct Quilted {
    /// The cloth that is made.
    pub fabric: FabricId,
    /// The piece that it is made of.
    pub piece: PieceId,
    /// Whether it is told across the panel.
    pub across: bool,
    /// What there is once it is quilted.
    pub room: f64,
    /// What the pieces take.
    pub needed: f64,
}

/// Every cloth of one size that is quilted first, where its panel is a rectangle.
pub fn quilted(edition: &Edition<'_>) -> Vec<Quilted> {
    let fabrics = FabricId::each(&edition.draft.facts.fabrics);
    let own = fabrics.filter(|(_, fabric)| is_for(fabric.sizes.as_ref(), edition.size()));
    own.filter_map(|(fabric, _)| panel(edition, fabric)).collect()
}

fn panel(edition: &Edition<'_>, fabric: FabricId) -> Option<Quilted> {
    let facts = &edition.draft.facts;
    let made = &facts.fabrics[fabric];
    let from = made.from.as_ref()?;
    let (piece, written) = PieceId::each(&facts.pieces).find(|(_, piece)| piece.id.text == from.text)?;
    if !matches!(written.outline, Some(Outline::Rectangle { .. })) || written.fold.is_some() {
        return None;
    }
    let row = edition.cuts.iter().find(|row| row.piece == piece)?;
    let (width, height) = row.dimensions.as_ref()?;
    let share = made.shrinkage.as_ref().and_then(|share| value(edition, share, Dimension::Count));
    let left = 1.0 - share.map_or(DRAWN_IN, to_f64);
    let turned = written.grain.as_ref().is_some_and(|grain| grain.text == "horizontal");
    let (width, height) = if turned { (height, width) } else { (width, height) };
    let (width, height) = (to_f64(width.exact.value) * left, to_f64(height.exact.value) * left);
    let (cuts, folded) = cut_outs(edition, fabric);
    if cuts.is_empty() {
        return None;
    }
    let none = Exact::from_integer(0);
    let bolt =
        Bolt { fabric, width_at: 0, width, selvedge: 0.0, folded, shrinkage: none, spare: none, stated: None, cuts };
    let told = |across: bool, room: f64, needed: f64| Quilted { fabric, piece, across, room, needed };
    let wide = if folded { bolt.folded_room() } else { bolt.flat_room() };
    let several = panels(edition, piece) > 1;
    let between = |layout: &ClothLayout| GAP * (layout.pieces.len().saturating_sub(1)) as f64;
    // Of several panels only the longest piece is asked for.
    let all_between = GAP * bolt.cuts.len().saturating_sub(1) as f64;
    let laid = lay_within(&bolt, if several { f64::MAX } else { height + all_between });
    match laid {
        Err(wider) => wider.iter().map(|one| one.needed).max_by(f64::total_cmp).map(|needed| told(true, wide, needed)),
        // Pieces may be cut apart along one line.
        Ok(layout) if !several => {
            let needed = layout.length - between(&layout);
            Some(told(false, height, needed))
        }
        Ok(layout) => {
            let tall = |path: &kurbo::BezPath| kurbo::Shape::bounding_box(path).height();
            layout
                .pieces
                .iter()
                .map(|one| tall(&one.outline))
                .max_by(f64::total_cmp)
                .map(|long| told(false, height, long))
        }
    }
}

/// How many panels are quilted of a piece: its copies that one fact names are the layers of one.
fn panels(edition: &Edition<'_>, piece: PieceId) -> usize {
    let works = edition.steps().flat_map(|step| &step.works).filter(|work| work.verb == Verb::Quilt);
    let of = |one: &Touched| one.copy().is_some_and(|copy| edition.cast[copy].piece == piece);
    works.filter(|work| work.touched().any(|one| of(&one))).count()
}

//! Pieces laid on cloth, and the length to buy.
//!
//! Cloth that holds a piece cut on the fold is folded in half along its length: such pieces lie at the
//! fold, and all others are cut twice at once, the second one turned over. Other cloth lies flat, and
//! every copy is laid by itself.

use kurbo::{Affine, BezPath, Shape as _};

use crate::measure::{Dimension, Exact, ratio, to_f64, up_to};
use crate::model::is_for;
use crate::nest::{Effort, Item, NestFault, Place, Strip, Turns, nest};
use crate::resolve::{Edition, FabricId, PieceId};

/// Cloth of one width, and what is cut from it in one size.
#[derive(Debug, Clone)]
pub struct Bolt {
    /// The fabric, by its place in the facts.
    pub fabric: FabricId,
    /// Which of its widths, by its place among them.
    pub width_at: usize,
    /// The cloth's whole width, in mm.
    pub width: f64,
    /// What is not used at each selvedge, in mm.
    pub selvedge: f64,
    /// Whether it is folded in half along its length.
    pub folded: bool,
    /// What the cloth loses in the wash, as a share of its length.
    pub shrinkage: Exact,
    /// What is bought beyond the pieces' length, in mm.
    pub spare: Exact,
    /// The amount that the author states, in mm; `None` where it is reckoned.
    pub stated: Option<Exact>,
    cuts: Vec<CutOut>,
}

/// One outline to lay.
#[derive(Debug, Clone)]
struct CutOut {
    piece: PieceId,
    outline: BezPath,
    item: Item,
}

/// A piece on the cloth.
#[derive(Debug, Clone)]
pub struct LaidPiece {
    /// The piece, by its place in the facts.
    pub piece: PieceId,
    /// Its outline at its place, in mm: x across the cloth from the fold or the selvedge, y along it.
    pub outline: BezPath,
}

/// Cloth with its pieces.
#[derive(Debug, Clone)]
pub struct ClothLayout {
    /// The cloth.
    pub bolt: Bolt,
    /// The length that the pieces take, in mm.
    pub length: f64,
    /// The length to buy in mm, to the next 0.1 m and to the next 1/8 yd.
    pub buy: (Exact, Exact),
    /// The pieces.
    pub pieces: Vec<LaidPiece>,
}

/// Pieces that are wider than their cloth.
#[derive(Debug, Clone)]
pub struct ClothFault {
    /// The cloth.
    pub bolt: Bolt,
    /// The pieces, by their places in the facts, each with the width that it needs in mm.
    pub pieces: Vec<(PieceId, f64)>,
}

impl ClothLayout {
    /// The pieces' length before the wash, in mm.
    pub fn unwashed(&self) -> f64 {
        let keeps = 1.0 - to_f64(self.bolt.shrinkage);
        if keeps > 0.0 { self.length / keeps } else { self.length }
    }

    /// Whether the pieces take more than the author states. The spare is the author's to leave out.
    pub fn exceeds_stated(&self) -> bool {
        self.bolt.stated.is_some_and(|stated| to_f64(stated) + 0.5 < self.unwashed())
    }
}

/// The least distance between two pieces on cloth, in mm: room for the scissors.
const GAP: f64 = 4.0;

/// The bolts of one size: each fabric that is bought, in each width that it is sold in.
pub fn bolts(edition: &Edition<'_>) -> Vec<Bolt> {
    let facts = &edition.draft.facts;
    let mut bolts = Vec::new();
    for (id, fabric) in FabricId::each(&facts.fabrics) {
        if !is_for(fabric.sizes.as_ref(), edition.size()) {
            continue;
        }
        let share = |value: &crate::model::Expression| edition.values.quiet(value).map(|worked| worked.quantity.value);
        let shrinkage = fabric.shrinkage.as_ref().and_then(share).unwrap_or_default();
        let stated = fabric.amount.as_ref().and_then(|amount| amount.get(edition.size())).and_then(share);
        let (pieces, folded) = cut_outs(edition, id);
        for (width_at, width) in fabric.widths.iter().enumerate() {
            let Some(width) = edition.values.quiet(width).filter(|one| one.quantity.dimension == Dimension::Length)
            else {
                continue;
            };
            if !pieces.is_empty() {
                bolts.push(Bolt {
                    fabric: id,
                    width_at,
                    width: to_f64(width.quantity.value),
                    selvedge: to_f64(facts.sheets.selvedge),
                    folded,
                    shrinkage,
                    spare: facts.sheets.spare,
                    stated,
                    cuts: pieces.clone(),
                });
            }
        }
    }
    bolts
}

fn cut_outs(edition: &Edition<'_>, fabric: FabricId) -> (Vec<CutOut>, bool) {
    let facts = &edition.draft.facts;
    let napped = facts.fabrics[fabric].nap;
    let rows: Vec<_> = edition.cuts.iter().filter(|row| row.fabric == fabric).collect();
    let folded = rows.iter().any(|row| facts.pieces[row.piece].fold.is_some());
    let mut found = Vec::new();
    for row in rows {
        let piece = &facts.pieces[row.piece];
        let Some(shape) = edition.values.shape(row.piece) else { continue };
        let on_fold = piece.fold.is_some();
        let mut outline = shape.cutting().path.clone();
        if let Some(fold) = piece.fold.as_ref().and_then(|fold| shape.edge(&fold.text)) {
            // The fold goes to the left edge.
            outline = fold_to_left(&outline, &fold.cut);
        }
        if piece.grain.as_ref().is_some_and(|grain| grain.text == "horizontal") && !on_fold {
            outline = Affine::rotate(std::f64::consts::FRAC_PI_2) * outline;
        }
        let more = piece.cut_larger.as_ref().and_then(|value| edition.values.quiet(value));
        if let Some(more) = more.filter(|more| more.quantity.dimension == Dimension::Length) {
            // What is quilted is cut as a rectangle, larger all round, and trimmed afterwards.
            let more = to_f64(more.quantity.value);
            outline = outline.bounding_box().inflate(more, more).to_path(0.01);
        }
        let bounds = outline.bounding_box();
        outline = Affine::translate((-bounds.x0, -bounds.y0)) * outline;
        let flat = crate::geometry::Outline { path: outline.clone() };
        let grainless = piece.grain.is_none() || facts.fabrics[fabric].grainless;
        let item = Item {
            outline: flat.flatten(0.2),
            turns: match (napped, grainless) {
                (true, _) => Turns::Fixed,
                (false, false) => Turns::Half,
                (false, true) => Turns::Quarter,
            },
            // On doubled cloth both hands are cut at once; a single piece may be cut face down where
            // its twin is cut face up.
            may_flip: folded && !on_fold && !napped,
            on_fold,
        };
        let layers = if folded && !on_fold { row.count.div_ceil(2) } else { row.count };
        for _ in 0..layers {
            found.push(CutOut { piece: row.piece, outline: outline.clone(), item: item.clone() });
        }
    }
    (found, folded)
}

/// Turns a half piece so that its fold is its left edge.
fn fold_to_left(outline: &BezPath, fold: &BezPath) -> BezPath {
    let (fold_box, bounds) = (fold.bounding_box(), outline.bounding_box());
    let upright = fold_box.height() >= fold_box.width();
    match upright {
        true if (fold_box.x0 - bounds.x0).abs() < 0.1 => outline.clone(),
        true => Affine::scale_non_uniform(-1.0, 1.0) * outline.clone(),
        false if (fold_box.y0 - bounds.y0).abs() < 0.1 => {
            Affine::rotate(-std::f64::consts::FRAC_PI_2) * outline.clone()
        }
        false => Affine::rotate(std::f64::consts::FRAC_PI_2) * outline.clone(),
    }
}

/// Lays the pieces of one bolt; `Err` with the pieces (by their places in the facts) that are wider
/// than the cloth, each with the width that it needs in mm.
pub fn lay_out(bolt: &Bolt, effort: Effort) -> Result<ClothLayout, Vec<(PieceId, f64)>> {
    let width = if bolt.folded { bolt.width / 2.0 - bolt.selvedge } else { bolt.width - 2.0 * bolt.selvedge };
    let items: Vec<Item> = bolt.cuts.iter().map(|cut| cut.item.clone()).collect();
    let layout = nest(&items, &Strip { width, gap: GAP }, effort).map_err(|faults| {
        faults
            .iter()
            .filter_map(|fault| match fault {
                NestFault::TooWide { item, width } => Some((bolt.cuts.get(*item)?.piece, *width)),
                NestFault::NoArea { item } => Some((bolt.cuts.get(*item)?.piece, 0.0)),
                NestFault::NoStrip => None,
            })
            .collect::<Vec<_>>()
    })?;
    let left = if bolt.folded { 0.0 } else { bolt.selvedge };
    let pieces = layout
        .places
        .iter()
        .filter_map(|place| {
            let cut = bolt.cuts.get(place.item)?;
            Some(LaidPiece { piece: cut.piece, outline: Affine::translate((left, 0.0)) * laid(&cut.outline, place) })
        })
        .collect();
    let buy = to_buy(bolt, layout.length);
    Ok(ClothLayout { bolt: bolt.clone(), length: layout.length, buy, pieces })
}

/// An outline mirrored and turned as its place says, its box's corner there.
fn laid(outline: &BezPath, place: &Place) -> BezPath {
    let mut path = outline.clone();
    if place.flipped {
        path = Affine::scale_non_uniform(-1.0, 1.0) * path;
    }
    path = Affine::rotate(f64::from(place.quarter_turns) * std::f64::consts::FRAC_PI_2) * path;
    let bounds = path.bounding_box();
    Affine::translate((place.x - bounds.x0, place.y - bounds.y0)) * path
}

/// The pieces' length and the spare, grown by what the wash takes, to the next length that shops cut:
/// 0.1 m, and 1/8 yd (1 yd = 914.4 mm).
fn to_buy(bolt: &Bolt, length: f64) -> (Exact, Exact) {
    let one = Exact::from_integer(1);
    // Up to the next tenth of a millimetre, so that nothing is lost on the way to an exact number.
    let needed = ratio((length * 10.0).ceil() as i128, 10).unwrap_or_default() + bolt.spare;
    let keeps =
        if bolt.shrinkage >= Exact::from_integer(0) && bolt.shrinkage < one { one - bolt.shrinkage } else { one };
    let needed = needed / keeps;
    (up_to(needed, Exact::from_integer(100)), up_to(needed, Exact::new(9144, 80)))
}

//! Laying the pieces of one bolt, as short as can be found.
//!
//! On folded cloth, pieces for a single layer lie among the others where one layer is cut alone, or
//! behind them on cloth that is opened out, whichever takes less.

use kurbo::{Affine, BezPath, Shape as _};

use super::amounts::to_buy;
use super::bolt::Bolt;
use super::cut_out::CutOut;
use super::layers::Layers;
use super::layout::{ClothLayout, LaidPiece, TooWide};
use crate::nest::{Effort, Item, NestFault, Place, Strip, nest_within};

/// The least distance between two pieces on cloth, in mm: room for the scissors.
pub(super) const GAP: f64 = 4.0;
/// A length that is not worth opening the cloth out for, in mm.
const WORTH: f64 = 1.0;

/// Pieces at their places, and how far they reach along the cloth.
struct Stretch {
    length: f64,
    opened_from: Option<f64>,
    pieces: Vec<LaidPiece>,
}

/// How long to look for a layout.
#[derive(Clone, Copy)]
struct Search {
    effort: Effort,
    /// A length that is short enough, in mm.
    enough: f64,
}

/// Lays the pieces of one bolt as short as can be found.
///
/// # Errors
/// The pieces that are wider than the cloth; then nothing is laid.
pub fn lay_out(bolt: &Bolt, effort: Effort) -> Result<ClothLayout, Vec<TooWide>> {
    lay(bolt, Search { effort, enough: 0.0 })
}

/// Lays the pieces of one bolt no longer than the author states, where that can be found; where nothing is
/// stated, as it comes.
///
/// # Errors
/// The pieces that are wider than the cloth; then nothing is laid.
pub fn lay_within_stated(bolt: &Bolt) -> Result<ClothLayout, Vec<TooWide>> {
    lay_within(bolt, bolt.stated_length().unwrap_or(f64::MAX))
}

/// Lays the pieces of one bolt no longer than `enough`, in mm, where that can be found. A first look decides
/// where it finds room; a longer one where it does not.
///
/// # Errors
/// The pieces that are wider than the cloth; then nothing is laid.
pub(super) fn lay_within(bolt: &Bolt, enough: f64) -> Result<ClothLayout, Vec<TooWide>> {
    match lay(bolt, Search { effort: Effort::Quick, enough }) {
        Ok(first) if first.length > enough => lay(bolt, Search { effort: Effort::Usual, enough }),
        first => first,
    }
}

fn lay(bolt: &Bolt, search: Search) -> Result<ClothLayout, Vec<TooWide>> {
    let cuts: Vec<&CutOut> = bolt.cuts.iter().collect();
    let stretch = match bolt.folded {
        true => folded(bolt, &cuts, search)?,
        false => strip(&cuts, bolt.flat_room(), bolt.selvedge, search)?,
    };
    let buy = to_buy(stretch.length, bolt.spare, bolt.shrinkage);
    let Stretch { length, opened_from, pieces } = stretch;
    Ok(ClothLayout { bolt: bolt.clone(), length, opened_from, buy, pieces })
}

/// Lays cuts on cloth that is folded, opened out behind the fold where that saves cloth or where a piece
/// needs it.
fn folded(bolt: &Bolt, cuts: &[&CutOut], search: Search) -> Result<Stretch, Vec<TooWide>> {
    let together = strip(cuts, bolt.folded_room(), 0.0, search);
    let wide = together.as_ref().err().map_or(&[][..], Vec::as_slice);
    let too_wide = |cut: &CutOut| wide.iter().any(|fault| (fault.piece, fault.layers) == (cut.piece, cut.layers));
    let single = |cut: &CutOut| cut.layers == Layers::One;
    let wide_pair = |cut: &CutOut| cut.layers == Layers::Both && too_wide(cut);
    // A pair too wide for half of the cloth is cut one by one.
    let split: Vec<CutOut> = cuts.iter().filter(|cut| wide_pair(cut)).flat_map(|cut| cut.singly()).collect();
    let behind: Vec<&CutOut> = cuts.iter().copied().filter(|cut| single(cut)).chain(&split).collect();
    let short_enough = together.as_ref().is_ok_and(|laid| laid.length <= search.enough);
    if behind.is_empty() || short_enough {
        return together;
    }
    let doubled: Vec<&CutOut> = cuts.iter().copied().filter(|cut| !single(cut) && !wide_pair(cut)).collect();
    let apart = apart(bolt, &doubled, &behind, search);
    match (together, apart) {
        (Ok(together), Ok(apart)) if apart.length + WORTH < together.length => Ok(apart),
        (Ok(together), _) => Ok(together),
        (Err(_), apart) => apart,
    }
}

/// Lays cuts on the fold, and others behind them on the cloth opened out.
fn apart(bolt: &Bolt, doubled: &[&CutOut], behind: &[&CutOut], search: Search) -> Result<Stretch, Vec<TooWide>> {
    let first = strip(doubled, bolt.folded_room(), 0.0, search);
    let second = strip(behind, bolt.flat_room(), bolt.selvedge - bolt.width / 2.0, search);
    let (mut first, second) = match (first, second) {
        (Ok(first), Ok(second)) => (first, second),
        (first, second) => {
            return Err(first.err().into_iter().chain(second.err()).flatten().collect());
        }
    };
    let from = first.length + GAP;
    first.pieces.extend(
        second
            .pieces
            .into_iter()
            .map(|piece| LaidPiece { outline: Affine::translate((0.0, from)) * piece.outline, ..piece }),
    );
    Ok(Stretch { length: from + second.length, opened_from: Some(from), pieces: first.pieces })
}

/// Lays cuts on cloth so wide, from `left` on, both in mm.
fn strip(cuts: &[&CutOut], width: f64, left: f64, search: Search) -> Result<Stretch, Vec<TooWide>> {
    let items: Vec<Item> = cuts.iter().map(|cut| cut.item.clone()).collect();
    let layout = nest_within(&items, &Strip { width, gap: GAP }, search.effort, search.enough)
        .map_err(|faults| too_wide(cuts, &faults))?;
    let pieces = layout.places.iter().filter_map(|place| {
        let cut = cuts.get(place.item)?;
        Some(LaidPiece {
            piece: cut.piece,
            outline: Affine::translate((left, 0.0)) * laid(&cut.outline, place),
            layers: cut.layers,
            turned_over: cut.turned_over != place.flipped && cut.layers != Layers::Fold,
            opened: cut.opened,
        })
    });
    Ok(Stretch { length: layout.length, opened_from: None, pieces: pieces.collect() })
}

/// Each piece that does not go on, once.
fn too_wide(cuts: &[&CutOut], faults: &[NestFault]) -> Vec<TooWide> {
    let mut found: Vec<TooWide> = Vec::new();
    for fault in faults {
        let (item, needed) = match fault {
            NestFault::TooWide { item, width } => (item, *width),
            // An outline that encloses nothing is no shape, and a bolt has a width: neither comes here.
            NestFault::NoArea { .. } | NestFault::NoStrip => continue,
        };
        let Some(cut) = cuts.get(*item) else { continue };
        let wide = TooWide { piece: cut.piece, needed, layers: cut.layers };
        if !found.contains(&wide) {
            found.push(wide);
        }
    }
    found
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

//! What is cut from one fabric, copy by copy: through how many layers, and which way up.
//!
//! A piece as drawn is its right hand, and `mirrored` turns every second copy over. Folded cloth lies
//! right sides together, so one cut through both layers gives a piece and its mirror image: good for two
//! copies that are no different turned over, and for a mirrored pair. Any other copy is cut on a single
//! layer, right side up, as flat cloth is.

use kurbo::BezPath;

use super::hand::{has_no_hand, turned_over};
use super::layers::Layers;
use super::lie::{Lie, lie};
use crate::geometry::Outline;
use crate::nest::Item;
use crate::resolve::{Edition, FabricId, PieceId};

/// One outline to lay.
#[derive(Debug, Clone)]
pub(super) struct CutOut {
    /// The piece, by its place in the facts.
    pub piece: PieceId,
    /// As it lies to the cloth, turned over where it is to be.
    pub outline: BezPath,
    /// The same for the search.
    pub item: Item,
    /// The layers that it is cut through.
    pub layers: Layers,
    /// Whether the pattern lies face down.
    pub turned_over: bool,
    /// Whether it is whole although half of it is drawn.
    pub opened: bool,
}

impl CutOut {
    fn new(piece: PieceId, lie: &Lie, layers: Layers, over: bool, napped: bool) -> CutOut {
        let outline = if over { turned_over(&lie.outline) } else { lie.outline.clone() };
        let item = Item {
            outline: Outline { path: outline.clone() }.flatten_to_its_bounds(0.2),
            turns: lie.turns,
            // Cut through both layers, it may lie face down: both hands come of it all the same.
            may_flip: layers == Layers::Both && !napped,
            on_fold: layers == Layers::Fold,
        };
        CutOut { piece, outline, item, layers, turned_over: over, opened: lie.opened }
    }

    /// The two copies that a cut through both layers gives, each on a single layer.
    pub fn singly(&self) -> [CutOut; 2] {
        let single = |outline: BezPath, turned_over: bool| CutOut {
            item: Item {
                outline: Outline { path: outline.clone() }.flatten_to_its_bounds(0.2),
                may_flip: false,
                ..self.item.clone()
            },
            outline,
            layers: Layers::One,
            turned_over,
            ..self.clone()
        };
        // A piece without a left and a right is not worth the words "turned over".
        let has_hand = !has_no_hand(&self.outline, self.item.turns);
        let other = if has_hand { turned_over(&self.outline) } else { self.outline.clone() };
        [single(self.outline.clone(), self.turned_over), single(other, self.turned_over != has_hand)]
    }
}

/// Everything that is cut from a fabric (by its place in the facts), and whether its cloth is folded.
pub(super) fn cut_outs(edition: &Edition<'_>, fabric: FabricId) -> (Vec<CutOut>, bool) {
    let rows = edition.cuts.iter().filter(|row| row.fabric() == Some(fabric));
    let lying: Vec<(PieceId, u32, Lie)> =
        rows.filter_map(|row| Some((row.piece, row.count, lie(edition, row.piece, fabric)?))).collect();
    let folded = lying.iter().any(|(_, _, lie)| lie.at_fold);
    let facts = &edition.draft.facts;
    let napped = facts.fabrics[fabric].nap;
    let mut found = Vec::new();
    for (piece, count, lie) in &lying {
        for (layers, over) in copies(lie, *count, facts.pieces[*piece].mirrored, folded) {
            found.push(CutOut::new(*piece, lie, layers, over, napped));
        }
    }
    (found, folded)
}

/// How so many copies of a piece are cut: the layers of each cut, and whether it is turned over.
fn copies(lie: &Lie, count: u32, mirrored: bool, folded: bool) -> Vec<(Layers, bool)> {
    let each = |layers: Layers, over: bool, count: u32| (0..count).map(move |_| (layers, over));
    if lie.at_fold {
        return each(Layers::Fold, false, count).collect();
    }
    let no_hand = has_no_hand(&lie.outline, lie.turns);
    let over = if mirrored && !no_hand { count / 2 } else { 0 };
    let pairs = match folded {
        true if no_hand => count / 2,
        true => over,
        false => 0,
    };
    let (turned, drawn) = match folded {
        true => (0, if no_hand { count % 2 } else { count - 2 * over }),
        false => (over, count - over),
    };
    each(Layers::Both, false, pairs)
        .chain(each(Layers::One, false, drawn))
        .chain(each(Layers::One, true, turned))
        .collect()
}

//! Layers of one piece, such as a facing and its interfacing: which of the copies that a name means has the edges.

use std::collections::BTreeSet;

use super::deed::{Deed, Side};
use super::player::Player;
use crate::model::Verb;
use crate::resolve::{CopyId, EditionWork, Meant, Owner, PieceId, Touched};

/// Takes down which copies are layers of others of their piece: those of another cloth, where every piece in the fact
/// is there in more than one cloth.
pub(super) fn lay(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    let cast = &player.edition.cast;
    let pieces: BTreeSet<PieceId> = deed.touched.iter().map(|copy| cast[*copy].piece).collect();
    let of = |piece: PieceId| deed.touched.iter().copied().filter(move |copy| cast[*copy].piece == piece);
    let mut layers = Vec::new();
    for piece in pieces {
        let first = of(piece).next().map(|copy| cast[copy].fabric);
        let others: Vec<CopyId> = of(piece).filter(|copy| Some(cast[*copy].fabric) != first).collect();
        if others.is_empty() {
            return;
        }
        layers.extend(others);
    }
    for copy in layers {
        player.state.copies[copy].is_layer = true;
    }
}

impl Player<'_> {
    /// The layers among the copies that a fact's names mean, each beside the copy that it lies on.
    pub fn layers_in(&self, work: &EditionWork<'_>) -> BTreeSet<CopyId> {
        if matches!(work.verb, Verb::Cut | Verb::Fuse | Verb::Quilt) {
            return BTreeSet::new();
        }
        let layer = |copy: &CopyId| self.state.copies[*copy].is_layer;
        let mut found = BTreeSet::new();
        for target in &work.targets {
            let copies: BTreeSet<CopyId> = target.touched.iter().filter_map(Touched::copy).collect();
            if !copies.iter().all(layer) {
                found.extend(copies.into_iter().filter(layer));
            }
        }
        found
    }

    /// The piece whose name means several copies in a seam that would fit with one of them.
    pub fn meant_once(&self, deed: &Deed<'_, '_>, fits: impl Fn(&Side, &Side) -> bool) -> Option<String> {
        let mut named = None;
        let mut extra: BTreeSet<CopyId> = BTreeSet::new();
        for target in &deed.work.targets {
            let Meant::Edge(edge) = &target.meant else { continue };
            let Owner::Piece(piece) = edge.owner else { continue };
            let copies: BTreeSet<CopyId> = target.touched.iter().filter_map(Touched::copy).collect();
            if copies.len() > 1 {
                named.get_or_insert(piece);
                extra.extend(copies.into_iter().skip(1));
            }
        }
        let left = |side: &Side| -> Side { side.iter().filter(|(copy, _)| !extra.contains(copy)).copied().collect() };
        let sides: Vec<Side> = deed.sides().iter().map(left).filter(|side| !side.is_empty()).collect();
        let (first, others) = sides.split_first()?;
        let all = !others.is_empty() && others.iter().all(|other| fits(first, other));
        named.filter(|_| all).map(|piece| self.edition.draft.facts.pieces[piece].id.text.clone())
    }
}

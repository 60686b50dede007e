//! Layers, such as a facing and its interfacing: which of the copies that a name means has the edges, and what lies on
//! what.

use std::collections::{BTreeMap, BTreeSet};

use super::deed::{Deed, Side};
use super::lengths::TOLERANCE;
use super::player::{Player, edges};
use super::state::Layers;
use crate::model::Verb;
use crate::resolve::{CopyId, EdgeId, EditionWork, FabricId, Meant, Owner, PieceId, Touched};

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

/// The stacks that a fact makes of what it names: copies of one piece and cloth lie each in a stack of its own where
/// there are as many of every other.
pub(super) fn stacks(player: &Player<'_>, deed: &Deed<'_, '_>) -> Vec<BTreeSet<CopyId>> {
    let cast = &player.edition.cast;
    let mut alike: BTreeMap<(PieceId, Option<FabricId>), Vec<CopyId>> = BTreeMap::new();
    for copy in &deed.touched {
        alike.entry((cast[*copy].piece, cast[*copy].fabric)).or_default().push(*copy);
    }
    let count = alike.values().map(Vec::len).max().unwrap_or(0);
    match alike.len() > 1 && alike.values().all(|copies| copies.len() == count) {
        true => (0..count).map(|at| alike.values().map(|copies| copies[at]).collect()).collect(),
        false => vec![deed.touched.iter().copied().collect()],
    }
}

/// Layers that are stitched together all over count as one where their edges are as long as each other's.
pub(super) fn stack(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    for stack in stacks(player, deed) {
        let Some(first) = stack.first().copied() else { continue };
        let alike = |copy: &CopyId| player.edges_alike(first, *copy);
        let copies: BTreeSet<CopyId> = stack.iter().copied().filter(alike).collect();
        if copies.len() > 1 {
            player.state.layers.push(Layers { copies, edges: BTreeSet::new() });
        }
    }
}

impl Player<'_> {
    /// Whether two copies have edges of the same names and lengths.
    fn edges_alike(&self, one: CopyId, other: CopyId) -> bool {
        let same = |edge: EdgeId| {
            let found = self.edge_called(other, &self.edition.edge_word(one, edge));
            found.is_some_and(|found| {
                (self.drawn_length(&[(one, edge)]) - self.drawn_length(&[(other, found)])).abs() <= TOLERANCE
            })
        };
        self.edition.edges_of(one).into_iter().all(same)
    }

    /// The edges of all layers that lie on an edge: as one with it, quilted or fused to it, and on these in turn.
    pub fn lying_on(&self, of: (CopyId, EdgeId)) -> BTreeSet<(CopyId, EdgeId)> {
        let mut found = BTreeSet::from([of]);
        let mut next = vec![of];
        while let Some((copy, edge)) = next.pop() {
            let word = self.edition.edge_word(copy, edge);
            let stuck = self.state.stuck.iter().filter(|stack| stack.contains(&copy)).flatten();
            let stuck = stuck.filter_map(|other| Some((*other, self.edge_called(*other, &word)?)));
            let others = edges(&self.fellows(&Touched::Edge(copy, edge)));
            next.extend(others.into_iter().chain(stuck).filter(|other| found.insert(*other)).collect::<Vec<_>>());
        }
        found
    }

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

//! Pieces that lie folded: in half or along a marked line, and what that leaves of their edges.

use std::collections::BTreeSet;

use super::deed::Deed;
use super::player::{Player, edges};
use super::state::{Folded, Layers};
use crate::geometry::{Crease, Kept};
use crate::resolve::{CopyId, EdgeId, Inside, MarkAt, Touched};

/// From which length against its width on a piece is folded lengthwise where nobody says how (common practice, no
/// source).
pub const LONG: f64 = 1.5;

/// How the words behind a folded piece say that it is folded.
enum Way {
    /// In half: lengthwise, crosswise, or as its shape has it.
    Half(Option<bool>),
    /// Smaller, and nothing tells how much.
    Small,
    /// In another way, which leaves its size as it is.
    Aside,
}

impl Way {
    fn told(words: &str) -> Way {
        let says = |all: &[&str]| all.iter().any(|word| words.contains(word));
        if says(&["open"]) {
            Way::Aside
        } else if says(&["four", "third", "three", "quarter", "middle", "centre", "center", "to the crease"]) {
            Way::Small
        } else if says(&["lengthwise", "long edges", "long sides"]) {
            Way::Half(Some(true))
        } else if says(&["crosswise", "widthwise", "short e", "short sides", "end to end", "ends together"]) {
            Way::Half(Some(false))
        } else if words.is_empty() || says(&["half", "double", "in two", "sides together", "side out"]) {
            Way::Half(None)
        } else {
            Way::Aside
        }
    }
}

/// Takes down how pieces are folded, whole or along lines marked on them.
pub(super) fn fold(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    let words: Vec<&str> = deed.work.work.words.iter().map(|words| words.text.as_str()).collect();
    let words = words.join(", ").to_lowercase();
    for target in &deed.all {
        match target {
            Touched::Copy(copy) => fold_whole(player, *copy, &Way::told(&words)),
            Touched::Inside(copy, Inside::Mark(at)) if !words.contains("open") => fold_along(player, *copy, *at),
            _ => {}
        }
    }
}

fn fold_whole(player: &mut Player<'_>, copy: CopyId, way: &Way) {
    let Some(shape) = player.edition.values.whole(player.edition.cast[copy].piece) else { return };
    let (wide, high) = shape.box_size();
    let long = wide.max(high) >= LONG * wide.min(high);
    let lengthwise = match way {
        Way::Half(told) => told.or(long.then_some(true)),
        Way::Small => None,
        Way::Aside => return,
    };
    let Some((lengthwise, crease)) = lengthwise.and_then(|way| Some((way, Crease::in_half(shape, way)?))) else {
        player.state.copies[copy].folded_small = true;
        return;
    };
    let pairs = pairs(player, copy, crease);
    let creases = &mut player.state.copies[copy].creases;
    // A strip that was folded lengthwise stays so; one that was sewn to a ring is laid flat another way.
    creases.retain(|earlier| earlier.lengthwise.is_none_or(|earlier| earlier && !lengthwise));
    creases.push(Folded { crease, lengthwise: Some(lengthwise), pairs });
}

fn fold_along(player: &mut Player<'_>, copy: CopyId, mark: usize) {
    let marks = player.edition.values.marks(player.edition.cast[copy].piece);
    let Some(Some(MarkAt::Line { ends, .. })) = marks.get(mark) else { return };
    let Some(crease) = Crease::through(*ends) else { return };
    let pairs = pairs(player, copy, crease);
    let creases = &mut player.state.copies[copy].creases;
    if creases.iter().all(|earlier| earlier.crease != crease) {
        creases.push(Folded { crease, lengthwise: None, pairs });
    }
}

fn pairs(player: &Player<'_>, copy: CopyId, crease: Crease) -> Vec<(EdgeId, EdgeId)> {
    let all = player.edition.edges_of(copy);
    let edge = |id: &EdgeId| player.edition.edge(copy, *id).filter(|edge| crease.is_beside(edge));
    let lays = |one: &EdgeId, other: &EdgeId| edge(one).zip(edge(other)).is_some_and(|(one, on)| crease.lays(one, on));
    let after = all.iter().enumerate().map(|(at, one)| (one, &all[at + 1..]));
    after.flat_map(|(one, rest)| rest.iter().filter(|other| lays(one, other)).map(|other| (*one, *other))).collect()
}

impl Player<'_> {
    /// Two edges of one copy that are held together, such as the long edges of a folded band, are one edge from here
    /// on.
    pub fn hold_to_itself(&mut self, deed: &Deed<'_, '_>) {
        let [one, other] = deed.work.targets.as_slice() else { return };
        let (one, other) = (edges(&one.touched), edges(&other.touched));
        for (copy, edge) in one {
            let mut there = other.iter().filter(|(with, against)| *with == copy && *against != edge);
            if let (Some(against), None) = (there.next(), there.next()) {
                let edges = BTreeSet::from([(copy, edge), *against]);
                self.state.layers.push(Layers { copies: BTreeSet::from([copy]), edges });
            }
        }
    }

    /// A folded copy is opened out again.
    pub fn unfold(&mut self, copy: CopyId) {
        let state = &mut self.state.copies[copy];
        state.creases.clear();
        (state.folded_up, state.folded_small) = (None, false);
    }

    /// What folds leave of an edge, as shares of its lines.
    pub fn kept(&self, copy: CopyId, edge: EdgeId) -> Kept {
        let Some(edge) = self.edition.edge(copy, edge) else { return Kept::WHOLE };
        let creases = self.state.copies[copy].creases.iter().map(|folded| folded.crease.keeps(edge));
        creases.fold(Kept::WHOLE, |kept, more| Kept { seam: kept.seam * more.seam, cut: kept.cut * more.cut })
    }

    /// Whether a fold crosses an edge.
    pub fn is_folded_across(&self, copy: CopyId, edge: EdgeId) -> bool {
        self.kept(copy, edge).seam < 1.0 - 1e-6
    }

    /// Whether a folded copy may as well count opened: where it was sewn to a ring, or where no edges lie on each
    /// other once it is folded.
    pub fn may_count_open(&self, copy: CopyId) -> bool {
        self.state.copies[copy].creases.iter().any(|folded| folded.pairs.is_empty() || self.state.is_ring(copy, folded))
    }
}

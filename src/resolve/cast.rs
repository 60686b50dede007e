//! Every copy of every piece that one size has.

use std::ops::Index;

use super::ids::{FabricId, PieceId, id};
use super::values::Values;
use super::without::Without;
use crate::model::{CutCopies, Draft, Facts, Piece, is_for};

/// One copy of a piece.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Member {
    /// Its name; for a copy that is only counted, the piece's.
    pub name: String,
    /// Its piece.
    pub piece: PieceId,
    /// The fabric that it is cut from; `None` when there is no such fabric.
    pub fabric: Option<FabricId>,
    /// Whether it is cut from the outline turned over.
    pub mirrored: bool,
    /// Whether it has a name of its own.
    pub named: bool,
    /// Whether this way through the booklet does without it.
    pub left: bool,
}

id!(CopyId, Member, "A copy of a piece in one size.");

/// The copies of one size, in the order of the facts.
#[derive(Debug, Clone, Default)]
pub struct Cast {
    members: Vec<Member>,
}

impl Cast {
    /// The copies that one size has.
    pub(super) fn of(draft: &Draft, values: &Values<'_>, without: &Without) -> Cast {
        let mut cast = Cast::default();
        for (id, piece) in PieceId::each(&draft.facts.pieces) {
            if is_for(piece.sizes.as_ref(), values.size()) {
                cast.add(id, piece, (&draft.facts, values), without);
            }
        }
        cast
    }

    fn add(&mut self, id: PieceId, piece: &Piece, (facts, values): (&Facts, &Values<'_>), without: &Without) {
        let first = self.members.len();
        for cut in piece.cut_in(values.size()) {
            let fabric = FabricId::each(&facts.fabrics).find(|(_, fabric)| fabric.id.text == cut.fabric.text);
            let fabric = fabric.map(|(id, _)| id);
            let (names, named): (Vec<String>, bool) = match &cut.copies {
                CutCopies::Named(names) => (names.iter().map(|name| name.text.clone()).collect(), true),
                CutCopies::Count(_) | CutCopies::Reckoned(_) => {
                    // A number that comes to none is told by itself: the piece is there.
                    let count = values.pieces_cut(&cut.copies).unwrap_or(1);
                    ((0..count).map(|_| piece.id.text.clone()).collect(), false)
                }
            };
            for name in names {
                let mirrored = piece.mirrored && (self.members.len() - first) % 2 == 1;
                let left = without.names.contains(&name);
                self.members.push(Member { name, piece: id, fabric, mirrored, named, left });
            }
        }
    }

    /// Every copy that is cut.
    pub fn copies(&self) -> impl DoubleEndedIterator<Item = (CopyId, &Member)> {
        CopyId::each(&self.members).filter(|(_, member)| !member.left)
    }

    /// The copies of one piece.
    pub fn of_piece(&self, piece: PieceId) -> impl DoubleEndedIterator<Item = CopyId> {
        self.copies().filter(move |(_, member)| member.piece == piece).map(|(id, _)| id)
    }

    /// The copy that has a name of its own; `None` when this size has none called so.
    pub fn named(&self, name: &str) -> Option<CopyId> {
        self.copies().find(|(_, member)| member.named && member.name == name).map(|(id, _)| id)
    }

    /// How many copies there are, with those that are left out.
    pub fn len(&self) -> usize {
        self.members.len()
    }

    /// Whether no copy is left out.
    pub fn has_all(&self) -> bool {
        self.members.iter().all(|member| !member.left)
    }

    /// Whether this size cuts nothing.
    pub fn is_empty(&self) -> bool {
        self.members.is_empty()
    }
}

impl Index<CopyId> for Cast {
    type Output = Member;

    fn index(&self, id: CopyId) -> &Member {
        &self.members[id]
    }
}

//! What names become once they are resolved: places in the lists that they come from, each of its own
//! type, so that a piece is never taken for a copy or a notion.

use std::ops::Index;

use crate::geometry::Edge;
use crate::model::{Fabric, Notion, Piece};

macro_rules! id {
    ($name:ident, $thing:ty, $doc:literal) => {
        #[doc = $doc]
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(usize);

        impl $name {
            /// Each thing of a list with its id: the only way to come by one.
            pub fn each(things: &[$thing]) -> impl DoubleEndedIterator<Item = ($name, &$thing)> {
                things.iter().enumerate().map(|(at, thing)| ($name(at), thing))
            }

            /// Its place in the list.
            pub fn at(self) -> usize {
                self.0
            }
        }

        impl Index<$name> for Vec<$thing> {
            type Output = $thing;

            fn index(&self, id: $name) -> &$thing {
                &self[id.0]
            }
        }
    };
}

pub(super) use id;

id!(PieceId, Piece, "A piece of the facts.");
id!(FabricId, Fabric, "A fabric of the facts.");
id!(NotionId, Notion, "A notion of the facts.");
id!(EdgeId, Edge, "An edge of a piece's outline in one size.");

/// An edge of a zip. A zip lies with its start at the left and its face up; `tape_a` is the tape below.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[allow(missing_docs, reason = "named as authors name them")]
pub enum ZipEdge {
    TapeA,
    TapeB,
    Start,
    End,
}

impl ZipEdge {
    /// All of them, as they are written.
    pub const ALL: &'static [(&'static str, ZipEdge)] =
        &[("tape_a", ZipEdge::TapeA), ("tape_b", ZipEdge::TapeB), ("start", ZipEdge::Start), ("end", ZipEdge::End)];

    /// The edge that is written so.
    pub fn parse(word: &str) -> Option<ZipEdge> {
        ZipEdge::ALL.iter().find(|(written, _)| *written == word).map(|(_, edge)| *edge)
    }

    /// How it is written.
    pub fn word(self) -> &'static str {
        match self {
            ZipEdge::TapeA => "tape_a",
            ZipEdge::TapeB => "tape_b",
            ZipEdge::Start => "start",
            ZipEdge::End => "end",
        }
    }

    /// Whether it is one of the two long tapes.
    pub fn is_tape(self) -> bool {
        matches!(self, ZipEdge::TapeA | ZipEdge::TapeB)
    }
}

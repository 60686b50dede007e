//! Who plays: every copy of every piece, and the notions with edges.

use crate::model::{CutCopies, Draft, Kind, Name, Piece, is_for};
use crate::resolve::{Catalogue, Edition, NameKind};

/// One copy of a piece.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Member {
    /// Its name; for a copy that is only counted, the piece's.
    pub name: String,
    /// Its piece, by its place in the facts.
    pub piece: usize,
    /// The fabric that it is cut from, by its place in the facts; `None` when there is no such fabric.
    pub fabric: Option<usize>,
    /// Whether it is cut from the outline turned over.
    pub mirrored: bool,
}

/// What a name in a work fact stands for.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum Target {
    /// A whole copy.
    Copy(usize),
    /// An edge of a copy.
    Edge(usize, String),
    /// A whole notion.
    Notion(usize),
    /// An edge of a notion.
    NotionEdge(usize, String),
    /// A name that stands for nothing that is sewn; reported elsewhere.
    Unknown,
}

/// The copies of one size.
#[derive(Debug, Clone, Default)]
pub struct Cast {
    /// All copies, in the order of the facts.
    pub members: Vec<Member>,
}

/// The edges of a zip: its two tapes and its two ends.
pub(super) const ZIP_EDGES: &[&str] = &["tape_a", "tape_b", "start", "end"];

impl Cast {
    /// The copies that one size has.
    pub fn of(edition: &Edition<'_>) -> Cast {
        let facts = &edition.draft.facts;
        let mut cast = Cast::default();
        for (at, piece) in facts.pieces.iter().enumerate() {
            if is_for(piece.sizes.as_ref(), edition.size()) {
                cast.add(at, piece, edition.draft);
            }
        }
        cast
    }

    fn add(&mut self, at: usize, piece: &Piece, draft: &Draft) {
        let first = self.members.len();
        for cut in &piece.cut {
            let fabric = draft.facts.fabrics.iter().position(|fabric| fabric.id.text == cut.fabric.text);
            let names: Vec<String> = match &cut.copies {
                CutCopies::Named(names) => names.iter().map(|name| name.text.clone()).collect(),
                CutCopies::Count(count) => (0..*count).map(|_| piece.id.text.clone()).collect(),
            };
            for name in names {
                let turned = piece.mirrored && (self.members.len() - first) % 2 == 1;
                self.members.push(Member { name, piece: at, fabric, mirrored: turned });
            }
        }
    }

    /// What a name in a work fact stands for: a piece means all its copies.
    pub fn targets(&self, name: &Name, catalogue: &Catalogue, draft: &Draft) -> Vec<Target> {
        let (owner, edge) = match name.text.split_once('.') {
            Some((owner, edge)) => (owner, Some(edge.to_owned())),
            None => (name.text.as_str(), None),
        };
        let of = |wanted: &dyn Fn(&Member) -> bool| -> Vec<Target> {
            let copies = self.members.iter().enumerate().filter(|(_, member)| wanted(member));
            copies
                .map(|(at, _)| match &edge {
                    None => Target::Copy(at),
                    Some(edge) => Target::Edge(at, edge.clone()),
                })
                .collect()
        };
        let found = match catalogue.get(owner) {
            Some(NameKind::Piece(piece)) => of(&|member| member.piece == piece),
            Some(NameKind::Copy(_)) => of(&|member| member.name == owner),
            Some(NameKind::Notion(at)) => vec![match edge {
                Some(edge) if draft.facts.notions[at].kind == Kind::Zip => Target::NotionEdge(at, edge),
                _ => Target::Notion(at),
            }],
            _ => Vec::new(),
        };
        if found.is_empty() { vec![Target::Unknown] } else { found }
    }
}

//! What a name in a work fact stands for: led there once, so that no later stage takes names apart.

use super::cast::{Cast, CopyId};
use super::ids::{EdgeId, FabricId, NotionId, PieceId, ZipEdge};
use super::names::{Catalogue, NameKind};
use super::spoken;
use super::values::Values;
use super::within::{self, Inside};
use crate::geometry::Edge;
use crate::measure::{Dimension, ExprKind, to_f64};
use crate::model::{Draft, Expression, Far, Kind, Name, Place, Touch, Verb};

/// A piece with all its copies, or one copy.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Owner {
    /// All copies of a piece.
    Piece(PieceId),
    /// One copy.
    Copy(CopyId),
}

/// An edge of a piece or of one of its copies.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct EdgeRef {
    /// Whose edge it is.
    pub owner: Owner,
    /// The edge; both of them where it stands in both halves of a piece cut on the fold, and no half is named.
    pub edges: Vec<EdgeId>,
}

/// What a name stands for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Meant {
    /// Everything that is cut.
    All,
    /// A piece or a copy as a whole.
    Whole(Owner),
    /// An edge.
    Edge(EdgeRef),
    /// Darts, pleats or a mark of a piece; never none.
    Inside(Owner, Vec<Inside>),
    /// A notion as a whole.
    Notion(NotionId),
    /// An edge of a zip.
    ZipEdge(NotionId, ZipEdge),
    /// A fabric.
    Fabric(FabricId),
    /// An edge that the piece does not have: what is written, and the edges that there are.
    NoSuchEdge {
        /// Whose edge it would be.
        owner: Owner,
        /// The word behind the dot.
        edge: String,
        /// The edges that the piece has.
        known: Vec<String>,
    },
    /// A dart, a pleat or a tuck that the piece does not have.
    NoSuchInside {
        /// Whose it would be.
        owner: Owner,
        /// "dart", "pleat" or "tuck".
        sort: &'static str,
        /// What is written behind the dot; empty where the whole piece is named.
        name: String,
        /// Those that the piece has.
        known: Vec<String>,
    },
    /// An edge that a zip does not have: the word behind the dot.
    NoSuchZipEdge(NotionId, String),
    /// An edge of a piece whose outline could not be worked out, which is a finding of its own.
    Unshaped(Owner),
    /// A piece, or a copy of one, of which this size cuts nothing.
    NoCopies(PieceId),
    /// A name that stands for nothing that is sewn, which is a finding of its own.
    Unknown,
}

/// One thing that work touches.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Touched {
    /// A whole copy.
    Copy(CopyId),
    /// An edge of a copy.
    Edge(CopyId, EdgeId),
    /// A dart, a pleat or a mark of a copy.
    Inside(CopyId, Inside),
    /// A whole notion.
    Notion(NotionId),
    /// An edge of a zip.
    ZipEdge(NotionId, ZipEdge),
    /// Something that is not known; it has been reported.
    Unknown,
}

impl Touched {
    /// The copy that it is, or is a part of; `None` for notions.
    pub fn copy(&self) -> Option<CopyId> {
        match self {
            Touched::Copy(copy) | Touched::Edge(copy, _) | Touched::Inside(copy, _) => Some(*copy),
            Touched::Notion(_) | Touched::ZipEdge(..) | Touched::Unknown => None,
        }
    }
}

/// A name in a work fact, led to what it stands for.
#[derive(Debug, Clone)]
pub struct Target {
    /// The name as written, and its place.
    pub name: Name,
    /// The row that it stands in, if it stands in one.
    pub row: Option<usize>,
    /// What it stands for.
    pub meant: Meant,
    /// The copies, edges and notions that this comes to; never empty.
    pub touched: Vec<Touched>,
    /// In words: "front top edge".
    pub spoken: String,
    /// Whose it is, in words: "front".
    pub owner: String,
    /// What of it, in words: "top edge"; empty for the whole.
    pub part: String,
}

impl Target {
    /// The piece that it belongs to; `None` for notions, fabrics, everything, and what is unknown.
    pub fn piece(&self, cast: &Cast) -> Option<PieceId> {
        match &self.meant {
            Meant::Whole(owner)
            | Meant::Edge(EdgeRef { owner, .. })
            | Meant::NoSuchEdge { owner, .. }
            | Meant::Inside(owner, _)
            | Meant::NoSuchInside { owner, .. }
            | Meant::Unshaped(owner) => Some(owner.piece(cast)),
            Meant::NoCopies(piece) => Some(*piece),
            _ => None,
        }
    }

    /// The notion that it belongs to.
    pub fn notion(&self) -> Option<NotionId> {
        match &self.meant {
            Meant::Notion(notion) | Meant::ZipEdge(notion, _) | Meant::NoSuchZipEdge(notion, _) => Some(*notion),
            _ => None,
        }
    }
}

impl Owner {
    /// The piece.
    pub fn piece(self, cast: &Cast) -> PieceId {
        match self {
            Owner::Piece(piece) => piece,
            Owner::Copy(copy) => cast[copy].piece,
        }
    }

    /// The copies.
    pub fn copies(self, cast: &Cast) -> Vec<CopyId> {
        match self {
            Owner::Piece(piece) => cast.of_piece(piece).collect(),
            Owner::Copy(copy) => vec![copy],
        }
    }
}

/// Leads names to what they stand for in one size.
pub(super) struct Resolver<'a> {
    pub draft: &'a Draft,
    pub catalogue: &'a Catalogue,
    pub values: &'a Values<'a>,
    pub cast: &'a Cast,
}

impl Resolver<'_> {
    pub fn target(&self, touch: &Touch, verb: Verb) -> Target {
        let name = &touch.name;
        let meant = self.meant(&name.text, verb);
        let touched = self.touched(&meant);
        let (owner, part) = self.speak(&name.text, &meant);
        let spoken = spoken::joined(&owner, &part);
        Target { name: name.clone(), row: touch.row, meant, touched, spoken, owner, part }
    }

    /// The edge that a place names without a figure, as in `from: waist`; a measurement of that name is meant where
    /// it is no longer than the edge that is counted on.
    pub fn beside<'p>(&self, place: &'p Place, targets: &[Target]) -> Option<&'p str> {
        let Far::Along(Expression { formula, .. }) = &place.far else { return None };
        let ExprKind::Name(name) = &formula.root.kind else { return None };
        let (owner, edge) = targets.iter().filter(|_| place.from.is_none()).find_map(|target| match &target.meant {
            Meant::Edge(edge) => Some((edge.owner, edge.edges.first()?)),
            _ => None,
        })?;
        let edges = self.values.whole(owner.piece(self.cast))?.edges();
        let own = &edges[edge.at()];
        let named = edges.iter().any(|other| (other.drawn == *name || other.name == *name) && other.name != own.name);
        let far = self.values.get(name).filter(|worked| worked.quantity.dimension == Dimension::Length);
        let lies_on = far.is_some_and(|worked| to_f64(worked.quantity.value) <= own.length);
        (named && !lies_on).then_some(name)
    }

    fn meant(&self, name: &str, verb: Verb) -> Meant {
        if name == "all" && verb == Verb::Cut {
            return Meant::All;
        }
        let (owner, edge) = name.split_once('.').map_or((name, None), |(owner, edge)| (owner, Some(edge)));
        match self.catalogue.get(owner) {
            Some(kind @ (NameKind::Piece(piece) | NameKind::Copy(piece))) => match self.owner(kind, owner) {
                Some(owner) => self.of_piece(owner, edge, verb),
                None => Meant::NoCopies(piece),
            },
            Some(NameKind::Notion(notion)) => self.of_notion(notion, edge),
            Some(NameKind::Fabric(fabric)) => Meant::Fabric(fabric),
            Some(NameKind::Measurement(_)) | None => Meant::Unknown,
        }
    }

    /// `None` when the size has no copy of it.
    fn owner(&self, kind: NameKind, name: &str) -> Option<Owner> {
        match kind {
            NameKind::Copy(_) => self.cast.named(name).map(Owner::Copy),
            _ => {
                let piece = kind.piece()?;
                self.cast.of_piece(piece).next().map(|_| Owner::Piece(piece))
            }
        }
    }

    fn of_piece(&self, owner: Owner, edge: Option<&str>, verb: Verb) -> Meant {
        let facts = &self.draft.facts.pieces[owner.piece(self.cast)];
        if let Some(sort) = within::sort(verb) {
            return match within::of_sort(facts, sort, edge) {
                Ok(all) => Meant::Inside(owner, all),
                Err(known) => Meant::NoSuchInside { owner, sort, name: edge.unwrap_or("").to_owned(), known },
            };
        }
        let here = |one: &Inside| owner.copies(self.cast).into_iter().any(|copy| self.is_on(copy, *one));
        let inside = edge.and_then(|word| within::named(facts, word)).filter(here);
        let inside = inside.map(|one| Meant::Inside(owner, vec![one]));
        // What is marked may bear the name of the edge that it opens at.
        if let (Verb::Mark | Verb::Slash, Some(inside)) = (verb, inside.clone()) {
            return inside;
        }
        let Some(word) = edge else { return Meant::Whole(owner) };
        let Some(shape) = self.values.whole(owner.piece(self.cast)) else { return Meant::Unshaped(owner) };
        let called = |is: &dyn Fn(&Edge) -> bool| -> Vec<EdgeId> {
            EdgeId::each(shape.edges()).filter(|(_, edge)| is(edge)).map(|(edge, _)| edge).collect()
        };
        // An edge as it was drawn is meant in both halves of a piece cut on the fold.
        let mut edges = called(&|edge| edge.drawn == word);
        if edges.is_empty() {
            edges = called(&|edge| edge.name == word);
        }
        match (edges.is_empty(), inside) {
            (false, _) => Meant::Edge(EdgeRef { owner, edges }),
            (true, Some(inside)) => inside,
            (true, None) => {
                let known = shape.edges().iter().map(|edge| edge.name.clone()).collect();
                Meant::NoSuchEdge { owner, edge: word.to_owned(), known }
            }
        }
    }

    /// Whether a copy has what lies inside its piece: a mark may be for some of the copies alone.
    fn is_on(&self, copy: CopyId, one: Inside) -> bool {
        let member = &self.cast[copy];
        let marks = &self.draft.facts.pieces[member.piece].marks;
        !matches!(one, Inside::Mark(at) if !marks[at].is_on(&member.name))
    }

    fn of_notion(&self, notion: NotionId, edge: Option<&str>) -> Meant {
        match edge {
            Some(word) if self.draft.facts.notions[notion].kind == Kind::Zip => match ZipEdge::parse(word) {
                Some(edge) => Meant::ZipEdge(notion, edge),
                None => Meant::NoSuchZipEdge(notion, word.to_owned()),
            },
            _ => Meant::Notion(notion),
        }
    }

    fn touched(&self, meant: &Meant) -> Vec<Touched> {
        match meant {
            Meant::All => self.cast.copies().map(|(copy, _)| Touched::Copy(copy)).collect(),
            Meant::Whole(owner) => owner.copies(self.cast).into_iter().map(Touched::Copy).collect(),
            Meant::Edge(EdgeRef { owner, edges }) => {
                let copies = owner.copies(self.cast).into_iter();
                copies.flat_map(|copy| edges.iter().map(move |edge| Touched::Edge(copy, *edge))).collect()
            }
            Meant::Inside(owner, all) => {
                let copies = owner.copies(self.cast).into_iter();
                let on = |copy: CopyId| all.iter().filter(move |one| self.is_on(copy, **one));
                copies.flat_map(|copy| on(copy).map(move |one| Touched::Inside(copy, *one))).collect()
            }
            Meant::Notion(notion) => vec![Touched::Notion(*notion)],
            Meant::ZipEdge(notion, edge) => vec![Touched::ZipEdge(*notion, *edge)],
            Meant::NoSuchEdge { owner, .. } | Meant::NoSuchInside { owner, .. } | Meant::Unshaped(owner) => {
                owner.copies(self.cast).iter().map(|_| Touched::Unknown).collect()
            }
            Meant::Fabric(_) | Meant::NoSuchZipEdge(..) | Meant::NoCopies(_) | Meant::Unknown => {
                vec![Touched::Unknown]
            }
        }
    }

    /// Whose a name is and what of it, in words.
    fn speak(&self, name: &str, meant: &Meant) -> (String, String) {
        if name == "all" {
            return ("all".into(), String::new());
        }
        if let Meant::Inside(of, all) = meant {
            let owner = spoken::owner(&self.draft.facts, self.catalogue, name.split('.').next().unwrap_or(name));
            return (owner, within::speak(&self.draft.facts.pieces[of.piece(self.cast)], all));
        }
        spoken::name(&self.draft.facts, self.catalogue, name)
    }
}

//! The state of the work between two steps.

use std::collections::{BTreeMap, BTreeSet};
use std::ops::{Index, IndexMut};

use super::fault::Moment;
use crate::geometry::Crease;
use crate::measure::Exact;
use crate::model::{Together, Verb};
use crate::resolve::{CopyId, EdgeId, Filler, Inside, NotionId, Touched, ZipEdge};

/// A copy between two steps.
#[derive(Debug, Clone, Default)]
pub(super) struct CopyState {
    pub cut: Option<Moment>,
    /// The first time that it was sewn, quilted or folded.
    pub worked: Option<Moment>,
    pub quilted: Option<Moment>,
    /// Whether it was fused or quilted to another copy of its piece, as the layer of it: a name that means both means
    /// the other's edges.
    pub is_layer: bool,
    /// Whether it was turned or understitched as a facing, or joined to one that was.
    pub faces: bool,
    /// Whether it was ever sewn, hemmed, bound or folded by itself.
    pub handled: bool,
    /// Whether any work but cutting names it.
    pub used: bool,
    pub turned: Option<Moment>,
    pub stuffed: Option<Moment>,
    /// When it was folded as a whole.
    pub folded_up: Option<Moment>,
    /// The lines along which it lies folded.
    pub creases: Vec<Folded>,
    /// Whether it lies folded in a way that leaves its size open.
    pub folded_small: bool,
}

/// A line along which a copy lies folded.
#[derive(Debug, Clone)]
pub(super) struct Folded {
    pub crease: Crease,
    /// Whether it runs along the longer side; `None` for a marked line.
    pub lengthwise: Option<bool>,
    /// Edges that lie on each other.
    pub pairs: Vec<(EdgeId, EdgeId)>,
}

/// An edge between two steps.
#[derive(Debug, Clone, Default)]
pub(super) struct EdgeState {
    /// The seam that it is in, by its place in [`State::seams`].
    pub seams: Vec<usize>,
    pub finished: Option<(Moment, &'static str)>,
    pub folded: Option<Moment>,
    /// The first topstitching.
    pub topstitched: Option<Moment>,
    /// Whether it was topstitched after it was folded.
    pub held: bool,
    pub gathered: bool,
    /// The shares of its length that a seam or a hem holds, from 0 to 1.
    pub covered: Vec<(f64, f64)>,
    /// When it was kept from fraying, whatever becomes of it.
    pub neat: Option<Moment>,
    /// The first buttonhole in it.
    pub holed: Option<Moment>,
}

/// How much of an edge may be left and still count as held, as a share of its length.
pub(super) const HARDLY: f64 = 0.003;

impl EdgeState {
    /// Whether seams and hems hold it from end to end.
    pub fn is_held_whole(&self) -> bool {
        let mut parts = self.covered.clone();
        parts.sort_by(|one, other| one.0.total_cmp(&other.0));
        let reached = parts.iter().fold(
            0.0,
            |reached: f64, (from, to)| {
                if *from <= reached + HARDLY { reached.max(*to) } else { reached }
            },
        );
        reached >= 1.0 - HARDLY
    }
}

/// A seam.
#[derive(Debug, Clone)]
pub(super) struct Seam {
    pub sewn: Moment,
    pub members: Vec<Touched>,
    /// Whether a gap was left, and when it was closed.
    pub gap: Option<Option<Moment>>,
    pub leave: Option<crate::source::Span>,
    /// What closes the gap; `None` for one to turn through.
    pub leave_for: Option<Filler>,
    pub pressed: bool,
    /// Whether its allowances were trimmed, graded or clipped, or stitched to one side.
    pub eased: bool,
    /// Whether its allowances are stitched to the facing.
    pub understitched: bool,
    /// When it was turned so that its allowances lie between layers.
    pub turned_in: Option<Moment>,
}

/// A gap left in a hem, to pass something through.
#[derive(Debug, Clone)]
pub(super) struct HemGap {
    pub edges: Vec<(CopyId, EdgeId)>,
    pub sewn: Moment,
    pub leave: crate::source::Span,
    pub closed: Option<Moment>,
}

/// Edges of several pieces that are basted to each other, until a lasting stitch holds them.
#[derive(Debug, Clone)]
pub(super) struct Basting {
    pub edges: Vec<(CopyId, EdgeId)>,
    pub basted: Moment,
    pub settled: bool,
}

/// Layers that are worked as one.
#[derive(Debug, Clone)]
pub(super) struct Layers {
    pub copies: BTreeSet<CopyId>,
    /// The edges along which they are one; empty where they are one as a whole.
    pub edges: BTreeSet<(CopyId, EdgeId)>,
}

/// Strips that are laid round edges.
#[derive(Debug, Clone)]
pub(super) struct Binding {
    pub strips: BTreeSet<CopyId>,
    /// How long what they bind is, in mm.
    pub needed: f64,
    /// The same if edges that are called alike lie on each other, in mm.
    pub laid: f64,
    /// What is turned in at its ends, in mm.
    pub turned: f64,
    /// Whether the edges run in a ring.
    pub round: bool,
    pub bound: Moment,
}

/// A tube that lies in another.
#[derive(Debug, Clone)]
pub(super) struct Nested {
    pub inner: BTreeSet<CopyId>,
    pub outer: BTreeSet<CopyId>,
    /// Which sides lie on each other; `None` where nothing tells, or a right one lies on a wrong one.
    pub lies: Option<Together>,
    pub put: Moment,
}

/// A tape of a zip that is sewn to edges, one or several in a row.
#[derive(Debug, Clone)]
pub(super) struct TapeSewn {
    pub zip: NotionId,
    pub side: Vec<(CopyId, EdgeId)>,
    /// How much of it is sewn, in mm.
    pub long: f64,
    /// Whether only a part of the side is sewn.
    pub in_part: bool,
    /// Where it says so.
    pub place: crate::source::Span,
}

/// A line along which a piece is cut open, or is to be.
#[derive(Debug, Clone, Default)]
pub(super) struct Slit {
    pub cut: Option<Moment>,
    /// The first binding, hem or finish, in time or not.
    pub bound: Option<Moment>,
    /// Whether its edges are kept from fraying.
    pub neat: bool,
}

/// What makes one fact another: the verb, what it is done to, how far from the edge, and the words of its author.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Done {
    pub verb: Verb,
    pub to: BTreeSet<Touched>,
    pub allowance: Option<Exact>,
    pub by_hand: bool,
    /// A seam sewn wrong sides together is sewn once more from the other side.
    pub wrong_sides: bool,
    pub words: Vec<String>,
    pub when: Moment,
}

/// What a bound edge is: nothing is taken off it.
pub(super) const BOUND: &str = "bound";

/// Everything between two steps.
#[derive(Debug, Clone, Default)]
pub(super) struct State {
    pub copies: Vec<CopyState>,
    pub edges: BTreeMap<(CopyId, EdgeId), EdgeState>,
    pub zip_edges: BTreeMap<(NotionId, ZipEdge), Vec<usize>>,
    pub seams: Vec<Seam>,
    /// By copy, and place among the marks of its piece.
    pub slits: BTreeMap<(CopyId, usize), Slit>,
    /// Darts, pleats and tucks that are sewn or laid.
    pub closed: BTreeMap<(CopyId, Inside), Moment>,
    /// Those that were told to be open still.
    pub left_open: BTreeSet<(CopyId, Inside)>,
    pub hem_gaps: Vec<HemGap>,
    pub basted: Vec<Basting>,
    /// Edges that seams caught, each with the allowance in mm that it lost there.
    pub caught: Vec<((CopyId, EdgeId), f64, Moment)>,
    /// Corners that are boxed by measuring: the two edges that meet in each, and how far up it is sewn, in mm.
    pub boxed: Vec<(CopyId, [EdgeId; 2], f64)>,
    /// Tubes that were put into others, in the order of the work.
    pub nested: Vec<Nested>,
    /// Zips that are open.
    pub open_zips: BTreeSet<NotionId>,
    /// What counts as one.
    pub layers: Vec<Layers>,
    /// Layers that are fused to each other.
    pub stuck: Vec<BTreeSet<CopyId>>,
    /// Strips that bind, and what they bind.
    pub bindings: Vec<Binding>,
    /// Edges whose layers lie over each other, and how far, in mm.
    pub laps: Vec<(Vec<(CopyId, EdgeId)>, f64)>,
}

impl Index<CopyId> for Vec<CopyState> {
    type Output = CopyState;

    fn index(&self, copy: CopyId) -> &CopyState {
        &self[copy.at()]
    }
}

impl IndexMut<CopyId> for Vec<CopyState> {
    fn index_mut(&mut self, copy: CopyId) -> &mut CopyState {
        &mut self[copy.at()]
    }
}

impl State {
    pub fn edge(&mut self, copy: CopyId, edge: EdgeId) -> &mut EdgeState {
        self.edges.entry((copy, edge)).or_default()
    }

    pub fn known_edge(&self, copy: CopyId, edge: EdgeId) -> Option<&EdgeState> {
        self.edges.get(&(copy, edge))
    }

    /// Whether an edge is held by a seam.
    pub fn is_sewn(&self, copy: CopyId, edge: EdgeId) -> bool {
        self.known_edge(copy, edge).is_some_and(|edge| !edge.seams.is_empty())
    }

    /// The edges of a folded copy that lie on one of its edges.
    pub fn laid_on(&self, copy: CopyId, edge: EdgeId) -> Vec<Touched> {
        let pairs = self.copies[copy].creases.iter().flat_map(|folded| &folded.pairs);
        let other = pairs.filter_map(|(one, other)| match edge {
            edge if edge == *one => Some(*other),
            edge if edge == *other => Some(*one),
            _ => None,
        });
        other.map(|other| Touched::Edge(copy, other)).collect()
    }

    /// Whether a folded copy was sewn to itself along edges that lie on each other.
    pub fn is_ring(&self, copy: CopyId, folded: &Folded) -> bool {
        self.seams.iter().any(|seam| {
            let own = seam.members.iter().all(|member| matches!(member, Touched::Edge(with, _) if *with == copy));
            let holds = |edge: EdgeId| seam.members.contains(&Touched::Edge(copy, edge));
            own && folded.pairs.iter().any(|(one, other)| holds(*one) && holds(*other))
        })
    }

    /// Whether an edge is sewn or finished from end to end; a fold is, once a stitch holds it.
    pub fn is_settled(&self, copy: CopyId, edge: EdgeId) -> bool {
        self.known_edge(copy, edge).is_some_and(|edge| {
            edge.is_held_whole()
                || edge.finished.is_some()
                || edge.neat.is_some()
                || (edge.folded.is_some() && edge.held)
        })
    }

    /// Whether an edge is sewn, finished or at least folded away.
    pub fn is_dealt_with(&self, copy: CopyId, edge: EdgeId) -> bool {
        self.is_settled(copy, edge) || self.known_edge(copy, edge).is_some_and(|edge| edge.folded.is_some())
    }

    /// The copies and notions that seams hold together with `start`.
    pub fn held_with(&self, start: &BTreeSet<CopyId>) -> (BTreeSet<CopyId>, BTreeSet<NotionId>) {
        let mut copies = start.clone();
        let mut notions = BTreeSet::new();
        loop {
            let before = (copies.len(), notions.len());
            for seam in &self.seams {
                let touches = seam.members.iter().any(|member| match member {
                    Touched::Copy(copy) | Touched::Edge(copy, _) | Touched::Inside(copy, _) => copies.contains(copy),
                    Touched::Notion(notion) | Touched::ZipEdge(notion, _) => notions.contains(notion),
                    Touched::Unknown => false,
                });
                if !touches {
                    continue;
                }
                for member in &seam.members {
                    match member {
                        Touched::Copy(copy) | Touched::Edge(copy, _) | Touched::Inside(copy, _) => {
                            copies.insert(*copy);
                        }
                        Touched::Notion(notion) | Touched::ZipEdge(notion, _) => {
                            notions.insert(*notion);
                        }
                        Touched::Unknown => {}
                    }
                }
            }
            if (copies.len(), notions.len()) == before {
                return (copies, notions);
            }
        }
    }
}

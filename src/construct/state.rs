//! The state of the work between two steps.

use std::collections::{BTreeMap, BTreeSet};

use super::cast::Target;
use super::fault::Moment;

/// A copy between two steps.
#[derive(Debug, Clone, Default)]
pub(super) struct CopyState {
    pub cut: Option<Moment>,
    /// The first time that it was sewn, quilted or folded.
    pub worked: Option<Moment>,
    pub quilted: Option<Moment>,
    /// Whether it was fused or quilted to another.
    pub layered: bool,
    /// Whether it was ever sewn, hemmed, bound or folded by itself.
    pub handled: bool,
    /// Whether it was topstitched as a whole.
    pub topstitched: bool,
    pub turned: Option<Moment>,
}

/// An edge between two steps.
#[derive(Debug, Clone, Default)]
pub(super) struct EdgeState {
    /// The seam that it is in, by its place in [`State::seams`].
    pub seams: Vec<usize>,
    pub finished: Option<(Moment, &'static str)>,
    pub folded: Option<Moment>,
    pub topstitched: Option<Moment>,
    pub gathered: bool,
}

/// A seam.
#[derive(Debug, Clone)]
pub(super) struct Seam {
    pub sewn: Moment,
    pub members: Vec<Target>,
    /// Whether a gap was left, and when it was closed.
    pub gap: Option<Option<Moment>>,
    pub leave: Option<crate::source::Span>,
    pub pressed: bool,
}

/// Everything between two steps.
#[derive(Debug, Clone, Default)]
pub(super) struct State {
    pub copies: Vec<CopyState>,
    pub edges: BTreeMap<(usize, String), EdgeState>,
    pub notion_edges: BTreeMap<(usize, String), Vec<usize>>,
    pub seams: Vec<Seam>,
    /// Zips that are open.
    pub open_zips: BTreeSet<usize>,
}

impl State {
    pub fn edge(&mut self, copy: usize, edge: &str) -> &mut EdgeState {
        self.edges.entry((copy, edge.to_owned())).or_default()
    }

    pub fn known_edge(&self, copy: usize, edge: &str) -> Option<&EdgeState> {
        self.edges.get(&(copy, edge.to_owned()))
    }

    /// Whether an edge is held by a seam.
    pub fn is_sewn(&self, copy: usize, edge: &str) -> bool {
        self.known_edge(copy, edge).is_some_and(|edge| !edge.seams.is_empty())
    }

    /// Whether an edge is sewn or finished; a fold is, once a stitch holds it.
    pub fn is_settled(&self, copy: usize, edge: &str) -> bool {
        let held = |edge: &EdgeState| edge.topstitched.is_some() || self.copies[copy].topstitched;
        self.known_edge(copy, edge).is_some_and(|edge| {
            !edge.seams.is_empty() || edge.finished.is_some() || (edge.folded.is_some() && held(edge))
        })
    }

    /// Whether an edge is sewn, finished or at least folded away.
    pub fn is_dealt_with(&self, copy: usize, edge: &str) -> bool {
        self.is_settled(copy, edge) || self.known_edge(copy, edge).is_some_and(|edge| edge.folded.is_some())
    }

    /// The copies and notions that seams hold together with `start`.
    pub fn held_with(&self, start: &BTreeSet<usize>) -> (BTreeSet<usize>, BTreeSet<usize>) {
        let mut copies = start.clone();
        let mut notions = BTreeSet::new();
        loop {
            let before = (copies.len(), notions.len());
            for seam in &self.seams {
                let touches = seam.members.iter().any(|member| match member {
                    Target::Copy(copy) | Target::Edge(copy, _) => copies.contains(copy),
                    Target::Notion(notion) | Target::NotionEdge(notion, _) => notions.contains(notion),
                    Target::Unknown => false,
                });
                if !touches {
                    continue;
                }
                for member in &seam.members {
                    match member {
                        Target::Copy(copy) | Target::Edge(copy, _) => {
                            copies.insert(*copy);
                        }
                        Target::Notion(notion) | Target::NotionEdge(notion, _) => {
                            notions.insert(*notion);
                        }
                        Target::Unknown => {}
                    }
                }
            }
            if (copies.len(), notions.len()) == before {
                return (copies, notions);
            }
        }
    }
}

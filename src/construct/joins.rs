//! Seams: what is joined to what, and at which allowance.

use super::deed::Deed;
use super::fault::{Fault, Moment};
use super::player::Player;
use super::state::Seam;
use super::wrapped;
use crate::measure::{Dimension, to_f64};
use crate::model::Verb;
use crate::resolve::{CopyId, EdgeId, EditionWork, Filler, NotionId, Touched};

impl Player<'_> {
    /// Puts a seam on record. A whole piece stands for all its edges that are still free.
    pub fn join(&mut self, deed: &Deed<'_, '_>) {
        let moment = deed.moment;
        let seam = self.state.seams.len();
        let mut members = Vec::new();
        for target in &deed.all {
            match target {
                Touched::Edge(copy, edge) => {
                    let share = self.shares(deed, *copy, *edge);
                    self.hold((*copy, *edge), seam, share, moment);
                    members.push(*target);
                }
                Touched::Copy(copy) => {
                    self.handle(*copy, moment);
                    for edge in self.edition.edges_of(*copy) {
                        let free = !self.state.copies[*copy].creases.is_empty() && !self.state.is_settled(*copy, edge);
                        if free || !self.state.is_dealt_with(*copy, edge) {
                            self.hold((*copy, edge), seam, (0.0, 1.0), moment);
                            members.push(Touched::Edge(*copy, edge));
                        }
                    }
                }
                Touched::ZipEdge(notion, edge) => {
                    self.state.zip_edges.entry((*notion, *edge)).or_default().push(seam);
                    members.push(*target);
                }
                Touched::Inside(..) | Touched::Notion(_) | Touched::Unknown => members.push(*target),
            }
        }
        self.fill_gaps(&deed.all, moment);
        self.state.seams.push(Seam {
            sewn: moment,
            members,
            gap: deed.work.leave.filter(|_| deed.work.leave_for != Some(Filler::Slit)).map(|_| None),
            leave: deed.work.work.leave.as_ref().map(|leave| leave.span()),
            leave_for: deed.work.leave_for,
            pressed: false,
            eased: false,
            understitched: false,
            turned_in: None,
        });
    }

    /// Takes down that a seam, by its place in the state, holds a share of an edge.
    pub fn hold(&mut self, of: (CopyId, EdgeId), seam: usize, share: (f64, f64), moment: Moment) {
        self.handle(of.0, moment);
        let state = self.state.edge(of.0, of.1);
        state.seams.push(seam);
        state.covered.push(share);
    }

    /// Openings that were left for a notion are closed by work on that notion.
    pub fn fill_gaps(&mut self, targets: &[Touched], moment: Moment) {
        let notions: Vec<NotionId> = targets
            .iter()
            .filter_map(|target| match target {
                Touched::Notion(notion) | Touched::ZipEdge(notion, _) => Some(*notion),
                _ => None,
            })
            .collect();
        for seam in &mut self.state.seams {
            let filled = matches!(seam.leave_for, Some(Filler::Notion(notion)) if notions.contains(&notion));
            if filled && seam.gap == Some(None) {
                seam.gap = Some(Some(moment));
            }
        }
    }

    pub fn check_allowance(&mut self, work: &EditionWork<'_>, edges: &[(CopyId, EdgeId)], moment: Moment) {
        let (Some(stated), Some(formula)) = (work.allowance, work.work.allowance.as_ref()) else { return };
        if stated.quantity.dimension != Dimension::Length {
            return;
        }
        let taken = to_f64(stated.quantity.value);
        for (copy, edge) in edges {
            let piece = self.edition.cast[*copy].piece;
            let Some(own) = self.edition.values.allowance(piece, &self.edition.drawn_word(*copy, *edge)) else {
                continue;
            };
            let own = to_f64(own);
            // What a strip encloses is cut without an allowance: the strip takes nothing off.
            if own == 0.0 && (work.verb == Verb::Bind || wrapped::by_any(self.edition, *copy, edges, taken)) {
                continue;
            }
            if (own - taken).abs() > 0.01 {
                let edge = self.edition.edge_name(*copy, *edge);
                let stated = formula.span();
                self.faults.push(Fault::AllowanceDiffers { edge, piece, own, taken, sewn: moment, stated });
                return;
            }
        }
    }

    /// Edges that were bound before this seam.
    pub fn check_bound(&mut self, edges: &[(CopyId, EdgeId)], moment: Moment) {
        for (copy, edge) in edges {
            let finished = self.state.known_edge(*copy, *edge).and_then(|known| known.finished);
            if let Some((bound, "bound")) = finished {
                let edge = self.edition.edge_name(*copy, *edge);
                self.faults.push(Fault::BoundTooSoon { edge, bound, sewn: moment });
                return;
            }
        }
    }

    /// Edges that were topstitched before this seam.
    pub fn check_topstitched(&mut self, edges: &[(CopyId, EdgeId)], moment: Moment) {
        for (copy, edge) in edges {
            let known = self.state.known_edge(*copy, *edge);
            let early = known
                .filter(|known| known.seams.is_empty() && known.folded.is_none())
                .and_then(|known| known.topstitched);
            if let Some(stitched) = early {
                let edge = self.edition.edge_name(*copy, *edge);
                self.faults.push(Fault::TopstitchedTooSoon { edge, stitched, sewn: moment });
            }
        }
    }
}

//! What lies between the layers of a seam and is held by its stitches: caught by name, or basted to an edge
//! beforehand.

use std::collections::BTreeSet;

use kurbo::{BezPath, Point};

use super::deed::Deed;
use super::fault::{Fault, Moment};
use super::lengths::millimetres;
use super::player::{Player, edges};
use super::state::Basting;
use crate::resolve::{CopyId, EdgeId, Edition, Touched};

/// How far an edge may leave a straight line and count as one, in mm.
const STRAIGHT: f64 = 0.5;

impl Player<'_> {
    /// Settles what the stitches of a fact catch: what it names, and what was basted to its edges.
    pub fn catch(&mut self, deed: &Deed<'_, '_>) {
        if !deed.work.verb.lasts() {
            return;
        }
        let mut caught = deed.caught.clone();
        // What was basted as one with another layer is a part by itself, like one that is named.
        let mut parts = deed.caught.clone();
        self.check_caught(deed);
        let mut held: BTreeSet<(CopyId, EdgeId)> = BTreeSet::new();
        let lying = |of: &(CopyId, EdgeId)| self.lying_on(*of);
        held.extend(self.stitched_over(deed, &caught).iter().flat_map(lying));
        // What hangs on what is caught is caught with it.
        while let Some(at) = self
            .state
            .basted
            .iter()
            .position(|basting| !basting.settled && basting.edges.iter().any(|edge| held.contains(edge)))
        {
            self.state.basted[at].settled = true;
            let others = self.state.basted[at].edges.iter().filter(|edge| !held.contains(edge)).copied();
            let others: Vec<(CopyId, EdgeId)> = others.collect();
            held.extend(others.iter().flat_map(|of| self.lying_on(*of)).collect::<Vec<_>>());
            if deed.work.verb.catches() {
                caught.extend(others.into_iter().map(|(copy, edge)| Touched::Edge(copy, edge)));
            }
        }
        let layered = caught.iter().filter(|part| !self.fellows(part).is_empty());
        parts.extend(layered.copied().collect::<Vec<_>>());
        self.check_turned(deed, &parts);
        self.hold_caught(deed, &caught);
    }

    /// The edges that a fact's stitches run over. A whole piece beside edges is what these are stitched to, and of
    /// rows of stitches on a whole piece nobody knows where they run; a seam of whole pieces runs all round.
    fn stitched_over(&self, deed: &Deed<'_, '_>, caught: &[Touched]) -> Vec<(CopyId, EdgeId)> {
        let mut held = edges(&deed.all);
        if held.is_empty() && deed.work.verb.joins_at_allowance() {
            held = self.edges_of(&deed.all);
        }
        held.extend(edges(caught));
        held
    }

    /// Takes down that a fact's stitches hold these; a seam holds them together with what it joins.
    fn hold_caught(&mut self, deed: &Deed<'_, '_>, caught: &[Touched]) {
        let seam = self.state.seams.iter().rposition(|seam| seam.sewn == deed.moment);
        for (copy, edge) in self.free_edges(caught) {
            if let Some(taken) = millimetres(deed.work.allowance) {
                self.state.caught.push(((copy, edge), taken, deed.moment));
            }
            match seam {
                Some(seam) => {
                    self.hold((copy, edge), seam, (0.0, 1.0), deed.moment);
                    self.state.seams[seam].members.push(Touched::Edge(copy, edge));
                }
                None => self.finish_edge((copy, edge), (0.0, 1.0), "caught", deed.moment),
            }
        }
    }

    /// The edges that are caught: those named, and of a whole copy those that nothing has settled yet.
    fn free_edges(&self, caught: &[Touched]) -> Vec<(CopyId, EdgeId)> {
        let whole: Vec<Touched> = caught.iter().filter(|one| matches!(one, Touched::Copy(_))).copied().collect();
        let open = |(copy, edge): &(CopyId, EdgeId)| !self.state.is_dealt_with(*copy, *edge);
        edges(caught).into_iter().chain(self.edges_of(&whole).into_iter().filter(open)).collect()
    }

    /// Takes down what is basted to what.
    pub fn baste(&mut self, deed: &Deed<'_, '_>) {
        let edges = edges(&deed.all);
        let one = edges.first().map(|(copy, _)| *copy);
        if edges.iter().any(|(copy, _)| Some(*copy) != one) {
            self.state.basted.push(Basting { edges, basted: deed.moment, settled: false });
        }
    }

    /// What was basted and is in no seam at the end.
    pub fn never_caught(&mut self) {
        let mut faults = Vec::new();
        for basting in self.state.basted.iter().filter(|basting| !basting.settled) {
            let seam = |(copy, edge): &(CopyId, EdgeId)| {
                let state = self.state.known_edge(*copy, *edge).filter(|state| state.is_held_whole())?;
                let sewn = state.seams.iter().map(|seam| self.state.seams[*seam].sewn).max()?;
                Some((self.edition.edge_name(*copy, *edge), sewn))
            };
            let early = basting.edges.iter().find_map(seam);
            faults.push(match early {
                Some((edge, earlier)) => Fault::PreparedTooLate { edge, done: basting.basted, earlier },
                None => {
                    let names = basting.edges.iter().map(|(copy, edge)| self.edition.edge_name(*copy, *edge));
                    Fault::NeverCaught { edges: names.collect(), basted: basting.basted }
                }
            });
        }
        self.faults.extend(faults);
    }

    /// Whether an edge was basted and never caught, which is told by itself.
    pub fn hangs_loose(&self, copy: CopyId, edge: EdgeId) -> bool {
        self.state.basted.iter().any(|basting| !basting.settled && basting.edges.contains(&(copy, edge)))
    }

    /// What was caught and is so short that nothing of it is left outside its seams, each copy once.
    pub fn caught_too_short(&mut self) {
        let mut told = BTreeSet::new();
        let mut faults = Vec::new();
        for ((copy, edge), taken, caught) in &self.state.caught {
            let Some(long) = depth(self.edition, *copy, *edge) else { continue };
            let other = |((own, end), ..): &&((CopyId, EdgeId), f64, Moment)| {
                own == copy && end != edge && !are_neighbours(self.edition, *copy, *edge, *end)
            };
            let taken = taken + self.state.caught.iter().filter(other).map(|(_, taken, _)| *taken).fold(0.0, f64::max);
            if long <= taken && told.insert(*copy) {
                let edge = self.edition.edge_name(*copy, *edge);
                faults.push(Fault::CaughtTooShort { edge, long, taken, caught: *caught });
            }
        }
        self.faults.extend(faults);
    }
}

/// How far a copy reaches from one of its edges, in mm; `None` where that edge is curved or unknown.
fn depth(edition: &Edition<'_>, copy: CopyId, edge: EdgeId) -> Option<f64> {
    let own = points(&edition.edge(copy, edge)?.cut);
    let [from, .., to] = own.as_slice() else { return None };
    let along = *to - *from;
    let away = |point: &Point| along.cross(*point - *from).abs() / along.hypot().max(1e-9);
    if along.hypot() < 1e-6 || own.iter().any(|point| away(point) > STRAIGHT) {
        return None;
    }
    let edges = edition.edges_of(copy);
    let all = edges.iter().filter_map(|edge| edition.edge(copy, *edge)).flat_map(|edge| points(&edge.cut));
    all.map(|point| away(&point)).max_by(f64::total_cmp)
}

fn points(path: &BezPath) -> Vec<Point> {
    let mut points = Vec::new();
    kurbo::flatten(path, 0.1, |element| points.extend(element.end_point()));
    points
}

/// Whether two edges of a copy meet in a corner.
fn are_neighbours(edition: &Edition<'_>, copy: CopyId, one: EdgeId, other: EdgeId) -> bool {
    let edges = edition.edges_of(copy);
    let place = |edge: EdgeId| edges.iter().position(|known| *known == edge);
    let (Some(one), Some(other)) = (place(one), place(other)) else { return true };
    let apart = one.abs_diff(other);
    apart == 1 || apart + 1 == edges.len()
}

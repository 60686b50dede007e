//! Left and right: whether pieces that are sewn right sides together lie on each other.

use super::fault::{Fault, Moment};
use super::player::{Player, edges};
use crate::geometry::Edge;
use crate::resolve::{CopyId, EdgeId, EditionWork};

impl Player<'_> {
    /// Laid right sides together, one of two copies is turned over: along an edge that does not look the same
    /// from both ends, a left one and a right one are needed.
    pub fn check_hands(&mut self, work: &EditionWork<'_>, moment: Moment) {
        // A name that means several copies is sewn to the other names, each copy by itself; alone, to itself.
        let named = work.targets.iter().enumerate();
        let edges: Vec<(usize, (CopyId, EdgeId))> =
            named.flat_map(|(at, target)| edges(&target.touched).into_iter().map(move |edge| (at, edge))).collect();
        for (at, (name, (copy, edge))) in edges.iter().enumerate() {
            let own = &self.edition.cast[*copy];
            let alike = edges[at + 1..].iter().find(|(other_name, (other, their))| {
                let member = &self.edition.cast[*other];
                (member.piece, member.mirrored, *their) == (own.piece, own.mirrored, *edge)
                    && other != copy
                    && (other_name != name || work.targets.len() == 1)
            });
            let alike = alike.map(|(_, edge)| edge);
            let (Some((other, their)), Some(shape)) = (alike, self.edition.values.shape(own.piece)) else { continue };
            if self.edition.edge(*copy, *edge).is_none_or(Edge::is_symmetric) || shape.is_symmetric() {
                continue;
            }
            let edges = (self.edition.edge_name(*copy, *edge), self.edition.edge_name(*other, *their));
            self.faults.push(Fault::HandsAlike { edges, piece: own.piece, sewn: moment });
            return;
        }
    }
}

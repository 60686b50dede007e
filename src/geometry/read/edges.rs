//! What all readers of outlines share: how near an arc is drawn, how far out a point may lie, and the
//! naming of edges.

use kurbo::Point;

use super::super::fault::ShapeFault;
use super::super::limits::FARTHEST;
use super::super::ring::{Named, Ring, Seg};

/// An arc is drawn with cubics that leave it by no more than this, in mm.
pub(super) const ARC_WITHIN: f64 = 1e-5;

/// Gives every stretch of neighbouring runs its edge. The last stretch and the first are one edge
/// when they bear one name, and the line then begins where that edge does.
pub(super) fn name_edges(named: Vec<(String, Seg)>) -> Result<Ring, Vec<ShapeFault>> {
    let mut edges: Vec<Named> = Vec::new();
    let mut segs: Vec<Seg> = Vec::new();
    let mut faults = Vec::new();
    let count = named.len();
    let first = named.first().map(|(name, _)| name.clone());
    let tail = named.iter().rev().take_while(|(name, _)| Some(name) == first.as_ref()).count();
    // The last runs belong to the first edge, unless they are all of one edge anyway.
    let wraps = tail < count;
    for (index, (name, mut seg)) in named.into_iter().enumerate() {
        let same = edges.last().is_some_and(|last| last.name == name);
        let edge = if same {
            edges.len() - 1
        } else if wraps && index + tail >= count {
            0
        } else {
            if edges.iter().any(|edge| edge.name == name) {
                faults.push(ShapeFault::NameTwice { edge: name.clone() });
            }
            edges.push(Named { name, against: false });
            edges.len() - 1
        };
        seg.edge = Some(edge);
        segs.push(seg);
    }
    if wraps {
        segs.rotate_right(tail);
    }
    if faults.is_empty() { Ok(Ring { edges, segs }) } else { Err(faults) }
}

/// Whether a point lies further out than any piece of cloth.
pub(super) fn too_far(point: Point) -> bool {
    let near = |value: f64| value.is_finite() && value.abs() <= FARTHEST;
    !(near(point.x) && near(point.y))
}

//! From what an author described to a closed line of runs: every kind of description ends in the
//! same clockwise ring, so that nothing later needs to know how it was written.

mod drawing;
mod edges;
mod path;
mod rectangle;
mod svg;

pub use svg::moved_path;

use kurbo::ParamCurve;

use self::edges::too_far;
use super::crossing;
use super::fault::ShapeFault;
use super::ring::{Ring, Seg, signed_area};
use super::spec::Spec;
use crate::limits::SEGMENTS;

/// Reads a description and makes sure that it is one simple closed line.
pub(super) fn read(spec: &Spec) -> Result<Ring, Vec<ShapeFault>> {
    let ring = match spec {
        Spec::Rectangle { width, height, corners_out } => rectangle::read(*width, *height, corners_out)?,
        Spec::Strip { length, width } => rectangle::strip(*length, *width)?,
        Spec::Path(runs) => path::read(runs)?,
        Spec::Drawing(entries) => drawing::read(entries)?,
    };
    within_limits(&ring)?;
    let ring = clockwise(halved(ring))?;
    uncrossed(&ring)?;
    Ok(ring)
}

/// Nothing is reckoned with a line that is endless, or goes round the world: handles of curves count as well as ends.
fn within_limits(ring: &Ring) -> Result<(), Vec<ShapeFault>> {
    let far = |seg: &&Seg| {
        let cubic = seg.curve.to_cubic();
        [cubic.p0, cubic.p1, cubic.p2, cubic.p3].into_iter().any(too_far)
    };
    if let Some(seg) = ring.segs.iter().find(far) {
        return Err(vec![ShapeFault::TooFar { edge: ring.name(seg.edge) }]);
    }
    match ring.segs.get(SEGMENTS.most) {
        Some(seg) => Err(vec![ShapeFault::TooManyLines { edge: ring.name(seg.edge) }]),
        None => Ok(()),
    }
}

fn uncrossed(ring: &Ring) -> Result<(), Vec<ShapeFault>> {
    match crossing::find(&ring.segs) {
        Some(found) => Err(vec![ShapeFault::SelfCrossing {
            first: ring.name(found.first),
            second: ring.name(found.second),
            at: [found.at.x, found.at.y],
        }]),
        None => Ok(()),
    }
}

/// A line of a single run, such as a drop, as two runs: everything that follows may then take it
/// that a run has a neighbour other than itself.
fn halved(mut ring: Ring) -> Ring {
    if let [only] = ring.segs.as_slice() {
        let half = |range| Seg { edge: only.edge, curve: only.curve.subsegment(range), ends: None };
        ring.segs = vec![half(0.0..0.5), half(0.5..1.0)];
    }
    ring
}

/// A line with an inside, its runs in clockwise order and each edge in one stretch.
fn clockwise(mut ring: Ring) -> Result<Ring, Vec<ShapeFault>> {
    let area = signed_area(&ring.segs);
    // A square of a hundredth of a millimetre: under it there is no piece of cloth.
    if area.abs() < 1e-4 {
        // A figure of eight may have no area either, and is told apart by its crossing.
        uncrossed(&ring)?;
        let edge = ring.segs.first().and_then(|seg| seg.edge);
        return Err(vec![ShapeFault::Degenerate(ring.name(edge))]);
    }
    if area < 0.0 {
        ring.segs = ring.segs.iter().rev().map(Seg::reversed).collect();
        for edge in &mut ring.edges {
            edge.against = !edge.against;
        }
    }
    Ok(ring)
}

//! The second line of a piece: every edge shifted by its own allowance, neighbours joined at the
//! corners.

mod curve;
mod joint;
mod meet;
mod trim;
mod untangle;

use kurbo::{Line, ParamCurve, PathSeg, Point};

use super::crossing;
use super::exact::offset_ends;
use super::fault::ShapeFault;
use super::ring::{Ring, Seg, point, signed_area};
use crate::measure::{Exact, to_f64};
use curve::shift;
use joint::{Stretch, ways};
use trim::{LEAST_SHARE, trimmed};

/// Shifts every edge by its distance in mm, below 0 inwards. The distances stand in the order of
/// [`Ring::edges`].
pub(super) fn offset(ring: &Ring, distances: &[Exact]) -> Result<Vec<Seg>, Vec<ShapeFault>> {
    if distances.iter().all(|distance| *distance == Exact::default()) {
        return Ok(ring.segs.clone());
    }
    let shifted = stretches(ring, distances);
    match tidy(ring, &shifted) {
        Some(mut segs) => {
            make_exact(ring, distances, &mut segs);
            Ok(segs)
        }
        None => untangle::untangle(ring, &joined(ring, shifted, joint::join_loosely)),
    }
}

fn stretches(ring: &Ring, distances: &[Exact]) -> Vec<Stretch> {
    let stretch = |seg: &Seg| {
        let distance = seg.edge.and_then(|edge| distances.get(edge)).map_or(0.0, |distance| to_f64(*distance));
        Stretch::new(seg.edge, distance, shift(&seg.curve, distance))
    };
    ring.segs.iter().map(stretch).collect()
}

/// The joined line, when that is all there is to do; `None` when it has loops.
fn tidy(ring: &Ring, shifted: &[Stretch]) -> Option<Vec<Seg>> {
    if shifted.iter().any(|stretch| stretch.backwards) {
        return None;
    }
    let mut met = true;
    let stretches = joined(ring, shifted.to_vec(), |first, second, corner, ways| {
        met &= joint::join(first, second, corner, ways);
    });
    if !met || stretches.iter().any(|stretch| stretch.to - stretch.from < LEAST_SHARE) {
        return None;
    }
    let segs = trimmed(&stretches);
    (signed_area(&segs) > 0.0 && crossing::find(&segs).is_none()).then_some(segs)
}

/// Joins every stretch to the next at the corner of the drawn line between them.
fn joined(
    ring: &Ring,
    mut stretches: Vec<Stretch>,
    mut join: impl FnMut(&mut Stretch, &mut Stretch, Point, [kurbo::Vec2; 2]),
) -> Vec<Stretch> {
    for index in 0..stretches.len() {
        let after = (index + 1) % stretches.len();
        let (before_seg, after_seg) = (&ring.segs[index], &ring.segs[after]);
        let ways = ways(&before_seg.curve, &after_seg.curve);
        // A line of a single run is its own neighbour: it is made two before it comes here.
        if let Ok([first, second]) = stretches.get_disjoint_mut([index, after]) {
            join(first, second, after_seg.curve.start(), ways);
        }
    }
    stretches
}

/// Puts exact ends in the place of reckoned ones, where every run lies along an axis.
fn make_exact(ring: &Ring, distances: &[Exact], segs: &mut [Seg]) {
    let Some(ends) = offset_ends(&ring.segs, distances).filter(|ends| ends.len() == segs.len()) else {
        return;
    };
    for (seg, ends) in segs.iter_mut().zip(ends) {
        seg.curve = PathSeg::Line(Line::new(point(ends[0]), point(ends[1])));
        seg.ends = Some(ends);
    }
}

//! Where the lines of pleats and tucks lie: straight in from the edge, at a right angle to it in the middle of
//! each.

use kurbo::{Line, Point, Vec2};

use super::super::dart::{Fold, Pleat, PleatSpec};
use super::super::edge::EdgePoint;
use super::super::shape::Shape;
use super::super::spec::Along;
use super::fault::ShapingFault;
use super::placing::edge_of;
use super::{ray, way};
use crate::measure::{Exact, to_f64};

/// A pleat with the stretches of its edge that it takes up, in mm along the drawn line.
pub(super) struct Laying {
    pub pleat: Pleat,
    pub takes_up: Vec<(f64, f64)>,
}

/// Finds the places of all folds of one entry.
pub(super) fn place(shape: &Shape, spec: &PleatSpec) -> Result<Laying, ShapingFault> {
    let edge = edge_of(shape, &spec.edge)?;
    if !spec.depth.is_positive() {
        return Err(ShapingFault::NotAboveZero { what: "depth" });
    }
    if spec.length.is_some_and(|length| !length.is_positive()) {
        return Err(ShapingFault::NotAboveZero { what: "length" });
    }
    if spec.apart.is_some_and(|apart| !apart.is_positive()) {
        return Err(ShapingFault::NotAboveZero { what: "distance" });
    }
    let depth = to_f64(spec.depth);
    let reach = reach(spec.fold) * depth;
    let apart = spec.apart.map_or(2.0 * reach, to_f64);
    let mut laying =
        Laying { pleat: Pleat { edge, fold: spec.fold, folds: Vec::new(), takes: takes(spec) }, takes_up: Vec::new() };
    let off = || ShapingFault::OffEdge { edge: spec.edge.clone() };
    let first = shape.point_at(&spec.edge, spec.at).ok_or_else(off)?.distance;
    let begin = match spec.at {
        Along::Centre => first - apart * f64::from(spec.count.saturating_sub(1)) / 2.0,
        _ => first,
    };
    for one in 0..spec.count {
        let middle = begin + apart * f64::from(one);
        if middle - reach < -1e-6 || middle + reach > shape.edges[edge].length + 1e-6 {
            return Err(off());
        }
        let at = shape.point_on(edge, middle).ok_or_else(off)?;
        laying.takes_up.push((middle - reach, middle + reach));
        laying.pleat.folds.extend(folds(shape, spec, &at)?);
    }
    Ok(laying)
}

/// How far one reaches to either side of its middle, in depths.
fn reach(fold: Fold) -> f64 {
    match fold {
        Fold::Knife | Fold::Tuck => 1.0,
        Fold::Inverted => 2.0,
        Fold::Box => 3.0,
    }
}

/// What all of them take out of the edge; nothing that cannot be held.
fn takes(spec: &PleatSpec) -> Exact {
    let folds = if matches!(spec.fold, Fold::Box | Fold::Inverted) { 2 } else { 1 };
    let depths = Exact::from_integer(2 * folds * i64::from(spec.count));
    spec.depth.checked_mul(depths).unwrap_or_default()
}

fn folds(shape: &Shape, spec: &PleatSpec, at: &EdgePoint) -> Result<Vec<[Line; 2]>, ShapingFault> {
    let depth = to_f64(spec.depth);
    let inward = Vec2::new(at.inward[0], at.inward[1]);
    let across = Vec2::new(inward.y, -inward.x);
    let line = |aside: f64| line(shape, spec, at, across * (aside * depth)).ok_or(ShapingFault::OffPiece);
    let pair = |from: f64, to: f64| Ok([line(from)?, line(to)?]);
    match spec.fold {
        Fold::Knife | Fold::Tuck => {
            let place = Point::new(at.stitching[0], at.stitching[1]);
            let way = way::towards(shape, place, across, spec.laid)?.dot(across);
            Ok(vec![pair(-way, way)?])
        }
        Fold::Box => Ok(vec![pair(-1.0, -3.0)?, pair(1.0, 3.0)?]),
        Fold::Inverted => Ok(vec![pair(-2.0, 0.0)?, pair(2.0, 0.0)?]),
    }
}

/// A line into the piece from its cutting line, beside the middle; `None` where there is no cloth.
fn line(shape: &Shape, spec: &PleatSpec, at: &EdgePoint, aside: Vec2) -> Option<Line> {
    let inward = Vec2::new(at.inward[0], at.inward[1]);
    let middle = Point::new(at.stitching[0], at.stitching[1]) + aside;
    let across = shape.cutting.segs.iter().flat_map(|seg| ray::crossings(&seg.curve, middle, inward));
    let mut met: Vec<f64> = across.map(|(reach, _)| reach).collect();
    met.sort_by(f64::total_cmp);
    let allowance = to_f64(shape.edges.iter().find(|edge| edge.name == spec.edge)?.allowance);
    // The edge itself is met about an allowance before the stitching line, the other side after it.
    let start = met.iter().copied().min_by(|one, two| (one + allowance).abs().total_cmp(&(two + allowance).abs()))?;
    let end = met.iter().copied().find(|place| *place > start + 1e-3)?;
    let end = match spec.length {
        Some(length) if to_f64(length) > end + 1e-6 => return None,
        Some(length) => to_f64(length),
        None => end,
    };
    Some(Line::new(middle + inward * start, middle + inward * end))
}

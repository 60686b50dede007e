//! Rectangles, with or without corners taken out: the outline of most bags and cushions.

use kurbo::{Line, PathSeg};

use super::super::fault::ShapeFault;
use super::super::limits::FARTHEST;
use super::super::ring::{ExactPoint, Named, Ring, Seg, point};
use super::super::spec::CornerOut;
use crate::measure::{Exact, to_f64};

/// How far a pair of corners is cut in from the sides, and from the top or the bottom.
type Cut = Option<[Exact; 2]>;

/// Reads a rectangle, clockwise from its top left corner. Where corners are taken out twice at one
/// side, the last counts.
pub(super) fn read(width: Exact, height: Exact, corners: &[CornerOut]) -> Result<Ring, Vec<ShapeFault>> {
    let mut faults = Vec::new();
    check(width, "top", &mut faults);
    check(height, "left", &mut faults);
    let (mut top, mut bottom): (Cut, Cut) = (None, None);
    for corner in corners {
        let (side, edge) =
            if corner.at_top { (&mut top, "top_left_corner") } else { (&mut bottom, "bottom_left_corner") };
        check(corner.width.min(corner.height), edge, &mut faults);
        check(corner.width.max(corner.height), edge, &mut faults);
        *side = Some([corner.width, corner.height]);
    }
    faults.dedup();
    if !faults.is_empty() {
        return Err(faults);
    }
    let none = [Exact::ZERO; 2];
    let ([top_in, top_down], [bottom_in, bottom_up]) = (top.unwrap_or(none), bottom.unwrap_or(none));
    for (edge, whole, cuts) in [
        ("top", width, [top_in, top_in]),
        ("bottom", width, [bottom_in, bottom_in]),
        ("left", height, [top_down, bottom_up]),
    ] {
        if !leaves_something(whole, cuts) {
            faults.push(ShapeFault::CornerTooLarge { edge: edge.to_owned() });
        }
    }
    if !faults.is_empty() {
        return Err(faults);
    }
    corners_of(width, height, top, bottom)
        .map(|corners| ring(&corners))
        .ok_or_else(|| vec![ShapeFault::TooFar { edge: "top".to_owned() }])
}

/// Reads a length of tape: a rectangle whose edges are ends and sides.
pub(super) fn strip(length: Exact, width: Exact) -> Result<Ring, Vec<ShapeFault>> {
    let mut ring = read(length, width, &[])?;
    for edge in &mut ring.edges {
        edge.name = match edge.name.as_str() {
            "top" => "side_a",
            "right" => "end",
            "bottom" => "side_b",
            _ => "start",
        }
        .to_owned();
    }
    Ok(ring)
}

fn check(value: Exact, edge: &str, faults: &mut Vec<ShapeFault>) {
    if !value.is_positive() {
        faults.push(ShapeFault::Degenerate(edge.to_owned()));
    } else if to_f64(value) > FARTHEST {
        faults.push(ShapeFault::TooFar { edge: edge.to_owned() });
    }
}

fn leaves_something(whole: Exact, [one, other]: [Exact; 2]) -> bool {
    one.checked_add(other).is_some_and(|cut| cut < whole)
}

/// Each corner with the edge that begins there, clockwise. `None` when a figure cannot be held.
fn corners_of(width: Exact, height: Exact, top: Cut, bottom: Cut) -> Option<Vec<(&'static str, ExactPoint)>> {
    let zero = Exact::ZERO;
    let mut corners = Vec::new();
    match top {
        Some([across, down]) => {
            let right = width.checked_sub(across)?;
            corners.push(("top", [across, zero]));
            corners.push(("top_right_corner", [right, zero]));
            corners.push(("top_right_corner", [right, down]));
            corners.push(("right", [width, down]));
        }
        None => {
            corners.push(("top", [zero, zero]));
            corners.push(("right", [width, zero]));
        }
    }
    match bottom {
        Some([across, up]) => {
            let (right, high) = (width.checked_sub(across)?, height.checked_sub(up)?);
            corners.push(("bottom_right_corner", [width, high]));
            corners.push(("bottom_right_corner", [right, high]));
            corners.push(("bottom", [right, height]));
            corners.push(("bottom_left_corner", [across, height]));
            corners.push(("bottom_left_corner", [across, high]));
            corners.push(("left", [zero, high]));
        }
        None => {
            corners.push(("bottom", [width, height]));
            corners.push(("left", [zero, height]));
        }
    }
    if let Some([across, down]) = top {
        corners.push(("top_left_corner", [zero, down]));
        corners.push(("top_left_corner", [across, down]));
    }
    Some(corners)
}

/// A sewist counts from the left or from the top, whichever way the line runs; along a corner taken
/// out, from its upper end.
fn counts_against(edge: &str) -> bool {
    matches!(edge, "bottom" | "left" | "bottom_left_corner" | "top_left_corner")
}

fn ring(corners: &[(&'static str, ExactPoint)]) -> Ring {
    let mut edges: Vec<Named> = Vec::new();
    let mut segs = Vec::new();
    let after = corners.iter().cycle().skip(1);
    for ((name, from), (_, to)) in corners.iter().zip(after) {
        if edges.last().is_none_or(|last| last.name != *name) {
            edges.push(Named { name: (*name).to_owned(), against: counts_against(name) });
        }
        segs.push(Seg {
            edge: Some(edges.len() - 1),
            curve: PathSeg::Line(Line::new(point(*from), point(*to))),
            ends: Some([*from, *to]),
        });
    }
    Ring { edges, segs }
}

//! Outlines drawn elsewhere and handed over as SVG path data, one entry for each edge.

use kurbo::{CubicBez, Line, PathSeg, Point};

use super::super::fault::ShapeFault;
use super::super::limits::JOIN_WITHIN;
use super::super::ring::{Ring, Seg};
use super::edges::name_edges;
use super::svg::one_line;

/// Reads the pieces of one outline and joins them end to start.
pub(super) fn read(entries: &[(String, String)]) -> Result<Ring, Vec<ShapeFault>> {
    let mut named: Vec<(String, Seg)> = Vec::new();
    let mut faults = Vec::new();
    let mut last_end: Option<Point> = None;
    let mut first_start: Option<Point> = None;
    for (index, (name, data)) in entries.iter().enumerate() {
        let edge = edge_name(name, index, entries.len());
        let mut curves = match one_line(data) {
            Ok(curves) => curves,
            Err(message) => {
                faults.push(ShapeFault::UnreadablePath { index, edge, message });
                last_end = None;
                continue;
            }
        };
        let (Some(start), Some(end)) = (curves.first().map(start_of), curves.last().map(end_of)) else {
            faults.push(ShapeFault::Degenerate(edge));
            continue;
        };
        if let Some(before) = last_end {
            let gap = (start - before).hypot();
            if gap > JOIN_WITHIN {
                faults.push(ShapeFault::NotJoined { index, edge: edge.clone(), gap });
            }
            move_start(&mut curves, before);
        }
        first_start = first_start.or(Some(start));
        last_end = Some(end);
        let seg = |curve| Seg { edge: None, curve, ends: None };
        named.extend(curves.into_iter().map(|curve| (edge.clone(), seg(curve))));
    }
    if !faults.is_empty() {
        return Err(faults);
    }
    let (Some(start), Some(end)) = (first_start, last_end) else {
        return Err(vec![ShapeFault::NotClosed { gap: 0.0 }]);
    };
    let gap = (end - start).hypot();
    if gap > JOIN_WITHIN {
        return Err(vec![ShapeFault::NotClosed { gap }]);
    }
    if let Some((_, last)) = named.last_mut() {
        last.curve = with_end(last.curve, start);
    }
    name_edges(named)
}

fn edge_name(name: &str, index: usize, count: usize) -> String {
    match (name, count) {
        ("", 1) => "outline".to_owned(),
        ("", _) => format!("edge_{}", index + 1),
        (name, _) => name.to_owned(),
    }
}

fn start_of(curve: &PathSeg) -> Point {
    kurbo::ParamCurve::start(curve)
}

fn end_of(curve: &PathSeg) -> Point {
    kurbo::ParamCurve::end(curve)
}

fn move_start(curves: &mut [PathSeg], start: Point) {
    if let Some(first) = curves.first_mut() {
        *first = with_end(first.reverse(), start).reverse();
    }
}

fn with_end(curve: PathSeg, end: Point) -> PathSeg {
    match curve {
        PathSeg::Line(line) => PathSeg::Line(Line::new(line.p0, end)),
        other => {
            let cubic = other.to_cubic();
            PathSeg::Cubic(CubicBez::new(cubic.p0, cubic.p1, cubic.p2, end))
        }
    }
}

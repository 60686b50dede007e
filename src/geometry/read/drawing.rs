//! Outlines drawn elsewhere and handed over as SVG path data, one entry for each edge.

use kurbo::{CubicBez, Line, PathSeg, Point, QuadBez};
use svgtypes::{SimplePathSegment, SimplifyingPathParser};

use super::super::JOIN_WITHIN;
use super::super::fault::ShapeFault;
use super::super::ring::{Ring, Seg};
use super::{name_edges, too_far};

/// Runs shorter than this, in mm, are left out: programs that draw leave such crumbs behind.
const CRUMB: f64 = 1e-6;

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
        if curves.iter().any(|curve| too_far(start_of(curve)) || too_far(end_of(curve))) {
            faults.push(ShapeFault::TooFar { edge: edge.clone() });
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

/// The runs of path data that holds one unbroken line, or what is wrong with it.
fn one_line(data: &str) -> Result<Vec<PathSeg>, String> {
    let mut curves: Vec<PathSeg> = Vec::new();
    let mut start: Option<Point> = None;
    let mut at = Point::ZERO;
    let mut closed = false;
    for segment in SimplifyingPathParser::from(data) {
        let segment = segment.map_err(|error| error.to_string())?;
        if closed {
            // What follows the closing would be a second line.
            return Err("it holds more than one line".to_owned());
        }
        let curve = match segment {
            SimplePathSegment::MoveTo { x, y } => {
                if !curves.is_empty() {
                    return Err("it holds more than one line".to_owned());
                }
                at = Point::new(x, y);
                start = Some(at);
                continue;
            }
            SimplePathSegment::LineTo { x, y } => PathSeg::Line(Line::new(at, Point::new(x, y))),
            SimplePathSegment::CurveTo { x1, y1, x2, y2, x, y } => {
                PathSeg::Cubic(CubicBez::new(at, (x1, y1), (x2, y2), (x, y)))
            }
            SimplePathSegment::Quadratic { x1, y1, x, y } => {
                PathSeg::Cubic(QuadBez::new(at, (x1, y1), (x, y)).raise())
            }
            SimplePathSegment::ClosePath => {
                closed = true;
                PathSeg::Line(Line::new(at, start.unwrap_or(at)))
            }
        };
        at = end_of(&curve);
        if size(&curve) > CRUMB {
            curves.push(curve);
        }
    }
    Ok(curves)
}

fn start_of(curve: &PathSeg) -> Point {
    kurbo::ParamCurve::start(curve)
}

fn end_of(curve: &PathSeg) -> Point {
    kurbo::ParamCurve::end(curve)
}

/// The length of the line through the control points: 0 only where the whole run is one point.
fn size(curve: &PathSeg) -> f64 {
    let cubic = curve.to_cubic();
    (cubic.p1 - cubic.p0).hypot() + (cubic.p2 - cubic.p1).hypot() + (cubic.p3 - cubic.p2).hypot()
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

//! A piece with its darts and pleats: both lines shaped, and every edge as long as it is sewn.

use kurbo::{Line, ParamCurve, PathSeg, Point, Shape as _, Vec2};

use super::super::dart::{Dart, DartSpec, PleatSpec};
use super::super::shape::{self, Shape};
use super::fault::ShapingFault;
use super::line::{self, ShapedLine};
use super::placing::{self, Mouth, Said};
use super::{pleats, ray, way};
use crate::measure::{Exact, to_f64};

/// What came of shaping a piece. What has a fault is left out of it.
#[derive(Debug, Clone)]
pub struct Shaped {
    /// The piece.
    pub shape: Shape,
    /// What is wrong with darts, each with its place in their list.
    pub darts: Vec<(usize, ShapingFault)>,
    /// What is wrong with pleats, in the same way.
    pub pleats: Vec<(usize, ShapingFault)>,
}

impl Shape {
    /// The piece with darts and pleats: to be asked once of a piece without any.
    pub fn shaped(self, darts: &[DartSpec], pleats: &[PleatSpec]) -> Shaped {
        let mut made = Shaped { shape: self, darts: Vec::new(), pleats: Vec::new() };
        let mut taken: Vec<(usize, f64, f64)> = Vec::new();
        made.pleat(pleats, &mut taken);
        made.open(darts, &mut taken);
        made.shape.open_shaped();
        made
    }
}

impl Shaped {
    fn pleat(&mut self, specs: &[PleatSpec], taken: &mut Vec<(usize, f64, f64)>) {
        for (at, spec) in specs.iter().enumerate() {
            let placed = pleats::place(&self.shape, spec).and_then(|laying| {
                let edge = laying.pleat.edge;
                let stretches = laying.takes_up.iter().map(|(from, to)| (edge, *from, *to)).collect();
                free(taken, stretches, &spec.edge).map(|()| laying.pleat)
            });
            match placed {
                Ok(pleat) => {
                    shorten(&mut self.shape, pleat.edge, pleat.takes);
                    self.shape.pleats.push(Some(pleat));
                }
                Err(fault) => {
                    self.shape.pleats.push(None);
                    self.pleats.push((at, fault));
                }
            }
        }
    }

    fn open(&mut self, specs: &[DartSpec], taken: &mut Vec<(usize, f64, f64)>) {
        let mut mouths: Vec<(usize, Mouth)> = Vec::new();
        for (at, spec) in specs.iter().enumerate() {
            self.shape.darts.push(None);
            let placed = match spec {
                DartSpec::Edge { edge, at: along, width, tip, laid } => {
                    let said = Said { edge, at: *along, width: *width, tip: *tip, laid: *laid };
                    placing::place(&self.shape, &said)
                        .and_then(|mouth| free(taken, vec![stretch(&self.shape, &said, &mouth)], edge).map(|()| mouth))
                        .map(|mouth| mouths.push((at, mouth)))
                }
                DartSpec::Inside { from, to, width, laid } => {
                    inside(&self.shape, [*from, *to], *width, *laid).map(|dart| self.shape.darts[at] = Some(dart))
                }
            };
            if let Err(fault) = placed {
                self.darts.push((at, fault));
            }
        }
        // A mouth that does not fit is left out, and the others are tried again.
        while !mouths.is_empty() {
            let list: Vec<&Mouth> = mouths.iter().map(|(_, mouth)| mouth).collect();
            let lines = line::shape(&self.shape.cutting.segs, &list)
                .and_then(|cutting| Ok((cutting, line::shape(&self.shape.stitching.segs, &list)?)));
            match lines {
                Ok((cutting, stitching)) => {
                    self.take_over(&mouths, cutting, stitching);
                    break;
                }
                Err(dart) => {
                    let (at, mouth) = mouths.remove(dart);
                    let edge = self.shape.edges[mouth.edge].name.clone();
                    self.darts.push((at, ShapingFault::NearCorner { edge }));
                }
            }
        }
    }

    fn take_over(&mut self, mouths: &[(usize, Mouth)], cutting: ShapedLine, stitching: ShapedLine) {
        let shape = &mut self.shape;
        for ((at, mouth), opening) in mouths.iter().zip(&cutting.openings) {
            let legs = opening.sides.map(|side| Line::new(side, mouth.point)).to_vec();
            let ends = mouth.ends();
            // The mouth is symmetric about its middle: there it is met once.
            let middle = ends[0].midpoint(ends[1]);
            let fold = Line::new(mouth_middle(&cutting, mouth.point, middle), mouth.point);
            let (edge, points, towards) = (Some(mouth.edge), vec![mouth.point], mouth.towards);
            shape.darts[*at] = Some(Dart { edge, points, legs, mouth: ends, fold, towards });
        }
        for (line, shaped) in [(&mut shape.cutting, &cutting), (&mut shape.stitching, &stitching)] {
            *line = shape::Line::new(shaped.segs.clone());
        }
        for ((edge, parts, cut), (_, seam_parts, seam)) in cutting.left.into_iter().zip(stitching.left) {
            let widths: Option<Exact> = mouths
                .iter()
                .filter(|(_, mouth)| mouth.edge == edge)
                .try_fold(Exact::ZERO, |sum, (_, mouth)| sum.checked_add(mouth.width));
            let trued = mouths.iter().any(|(_, mouth)| mouth.edge == edge && mouth.lengthened != [Vec2::ZERO; 2]);
            let less = |exact: Option<Exact>| exact.filter(|_| !trued)?.checked_sub(widths?);
            let author = shape.author_is_cutting();
            let (cut_line, seam_line) = (&shape.cutting, &shape.stitching);
            let one = &mut shape.edges[edge];
            // Pleats have been taken out of both lengths before.
            let laid = one.length - one.closed;
            let was = one.seam_length + laid;
            one.closed -= was - seam;
            one.exact_closed = less(one.exact_closed);
            one.exact_seam = less(one.exact_seam);
            one.seam_length = one.exact_seam.map_or(seam - laid, to_f64);
            one.exact_cut = None;
            one.cut_length = cut - laid;
            one.cut = cut_line.edge_path(edge, one.against);
            one.seam = seam_line.edge_path(edge, one.against);
            one.shifted = if author { parts } else { seam_parts };
        }
    }
}

/// The mouth of the cutting line on the middle of the dart.
fn mouth_middle(line: &ShapedLine, point: Point, middle: Point) -> Point {
    let way = (middle - point).normalize();
    let leg = (middle - point).hypot();
    let met = line.segs.iter().flat_map(|seg| ray::crossings(&seg.curve, point, way)).map(|(reach, _)| reach);
    // Nearest to the stitching line, on the far side of the point.
    let nearest =
        met.filter(|reach| *reach > 0.8 * leg).min_by(|one, two| (one - leg).abs().total_cmp(&(two - leg).abs()));
    nearest.map_or(middle, |reach| point + way * reach)
}

/// The stretch of its edge that a dart takes up, along the drawn line.
fn stretch(shape: &Shape, said: &Said<'_>, mouth: &Mouth) -> (usize, f64, f64) {
    let half = to_f64(said.width) / 2.0;
    let middle = shape.point_at(said.edge, said.at).map_or(0.0, |point| point.distance);
    (mouth.edge, middle - half, middle + half)
}

/// Takes up stretches of an edge that nothing else takes up.
fn free(taken: &mut Vec<(usize, f64, f64)>, stretches: Vec<(usize, f64, f64)>, name: &str) -> Result<(), ShapingFault> {
    for one in stretches {
        let over = |other: &(usize, f64, f64)| one.0 == other.0 && one.1 < other.2 - 1e-6 && other.1 < one.2 - 1e-6;
        if taken.iter().any(over) {
            return Err(ShapingFault::OverAnother { edge: name.to_owned() });
        }
        taken.push(one);
    }
    Ok(())
}

fn shorten(shape: &mut Shape, edge: usize, takes: Exact) {
    let one = &mut shape.edges[edge];
    let by = to_f64(takes);
    for length in [&mut one.closed, &mut one.seam_length, &mut one.cut_length] {
        *length -= by;
    }
    for exact in [&mut one.exact_closed, &mut one.exact_seam, &mut one.exact_cut] {
        *exact = exact.and_then(|exact| exact.checked_sub(takes));
    }
}

/// A dart with two points, widest half-way between them.
fn inside(
    shape: &Shape,
    [from, to]: [[Exact; 2]; 2],
    width: Exact,
    laid: Option<super::super::dart::Laid>,
) -> Result<Dart, ShapingFault> {
    let [from, to] = [from, to].map(|[x, y]| Point::new(to_f64(x), to_f64(y)));
    if !width.is_positive() {
        return Err(ShapingFault::NotAboveZero { what: "width" });
    }
    if (to - from).hypot() < 1e-6 {
        return Err(ShapingFault::NotAboveZero { what: "length" });
    }
    let along = (to - from).normalize();
    let across = Vec2::new(-along.y, along.x);
    let middle = from.midpoint(to);
    let mouth = [middle - across * (to_f64(width) / 2.0), middle + across * (to_f64(width) / 2.0)];
    let lines: Vec<PathSeg> =
        mouth.iter().flat_map(|side| [Line::new(*side, from), Line::new(*side, to)]).map(PathSeg::Line).collect();
    let piece = &shape.cutting.outline.path;
    let on = |line: &PathSeg| (0..=10).all(|tenth| piece.contains(line.eval(f64::from(tenth) / 10.0)));
    if !lines.iter().all(on) {
        return Err(ShapingFault::OffPiece);
    }
    let towards = way::towards(shape, middle, across, laid)?;
    let legs = lines.iter().map(|line| Line::new(line.start(), line.end())).collect();
    Ok(Dart { edge: None, points: vec![from, to], legs, mouth, fold: Line::new(from, to), towards })
}

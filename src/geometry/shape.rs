//! One piece with both of its lines: what can be asked of it once it is built.

use kurbo::{BezPath, ParamCurve, ParamCurveArclen, PathSeg, Point};

use super::fault::ShapeFault;
use super::fold::Fold;
use super::limits::FARTHEST;
use super::outline::Outline;
use super::ring::{self, Ring, Seg, direction, outward, to_path};
use super::spec::{Allowances, Drawn, Spec};
use super::{exact, offset, opened, read};
use crate::measure::{Exact, to_f64};

/// A piece: its cutting line, its stitching line and its named edges.
#[derive(Debug, Clone)]
pub struct Shape {
    edges: Vec<Edge>,
    cutting: Line,
    stitching: Line,
    drawn: Drawn,
    fold: Option<Fold>,
    /// A piece cut on the fold, opened.
    opened: Option<Box<Shape>>,
}

/// One of the two lines.
#[derive(Debug, Clone)]
struct Line {
    segs: Vec<Seg>,
    outline: Outline,
}

impl Line {
    fn new(segs: Vec<Seg>) -> Self {
        let path = to_path(segs.iter().map(|seg| &seg.curve), true);
        Self { segs, outline: Outline { path } }
    }

    fn of_edge(&self, edge: usize) -> impl Iterator<Item = &Seg> {
        self.segs.iter().filter(move |seg| seg.edge == Some(edge))
    }
}

/// One edge. Lengths are in mm; those of a piece cut on the fold are of the half that is drawn, but in
/// [`Shape::whole`].
#[derive(Debug, Clone)]
pub struct Edge {
    /// Its name.
    pub name: String,
    /// The edge of the drawn outline that it is, or is a half of: its own name but in a piece cut on the
    /// fold, opened.
    pub drawn: String,
    /// Whether it lies on the fold of the cloth.
    pub on_fold: bool,
    /// The edge on the line that the author drew, in the direction in which it is counted: as
    /// written; for a rectangle from the left or from the top.
    pub path: BezPath,
    /// The length of that path.
    pub length: f64,
    /// The same exactly. `None` where it bends or is no ratio of whole numbers.
    pub exact: Option<Exact>,
    /// The length on the stitching line, between the stitching lines of its neighbours: what is
    /// sewn.
    pub seam_length: f64,
    /// The same exactly. `None` where it bends or slants.
    pub exact_seam: Option<Exact>,
    /// The edge on the stitching line.
    pub seam: BezPath,
    /// The length on the cutting line.
    pub cut_length: f64,
    /// The same exactly. `None` where it bends or slants.
    pub exact_cut: Option<Exact>,
    /// The edge on the cutting line.
    pub cut: BezPath,
    /// The allowance between the two lines.
    pub allowance: Exact,
    // Clockwise, so that the inside is to the right.
    runs: Vec<PathSeg>,
    against: bool,
}

/// A place along an edge, counted in the direction of [`Edge::path`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Along {
    /// Half-way.
    Centre,
    /// This share of the length, from 0 to 1.
    Fraction(Exact),
    /// This many mm from the start.
    FromStart(Exact),
    /// This many mm from the end.
    FromEnd(Exact),
}

/// A point on an edge, in mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EdgePoint {
    /// On the line that the author drew.
    pub at: [f64; 2],
    /// One long, at a right angle to the edge, into the piece.
    pub inward: [f64; 2],
    /// From the start of the edge, along it.
    pub distance: f64,
    /// Straight across on the cutting line.
    pub cutting: [f64; 2],
    /// Straight across on the stitching line.
    pub stitching: [f64; 2],
}

impl Shape {
    /// Works out a piece from what its author described.
    ///
    /// # Errors
    /// Every fault of the outline; if it has none, every fault of the allowances and the fold.
    pub fn build(spec: &Spec, drawn: Drawn, allowances: &Allowances) -> Result<Self, Vec<ShapeFault>> {
        let ring = read::read(spec)?;
        let widths = widths(&ring, allowances)?;
        let fold_edge = allowances.fold.as_ref().and_then(|name| place(&ring, name));
        let fold = match fold_edge {
            Some(edge) => Some(Fold::of(&ring.segs, edge, &ring.name(Some(edge))).map_err(|fault| vec![fault])?),
            None => None,
        };
        let distances: Vec<Exact> =
            widths.iter().map(|width| if drawn == Drawn::Cutting { -*width } else { *width }).collect();
        let other = offset::offset(&ring, &distances)?;
        let (author, other) = (Line::new(ring.segs.clone()), Line::new(other));
        let (cutting, stitching) = match drawn {
            Drawn::Cutting => (author, other),
            Drawn::Stitching => (other, author),
        };
        if let (Some(fold), Some(edge)) = (&fold, fold_edge) {
            let name = ring.name(Some(edge));
            for line in [&cutting, &stitching] {
                fold.check(&line.outline, &name).map_err(|fault| vec![fault])?;
            }
        }
        let mut shape = Self { edges: Vec::new(), cutting, stitching, drawn, fold, opened: None };
        shape.edges = (0..ring.edges.len()).map(|edge| shape.measured(&ring, edge, &widths)).collect();
        shape.opened = fold.map(|fold| Box::new(shape.open(&ring, &widths, &fold)));
        Ok(shape)
    }

    /// The whole of a piece cut on the fold.
    fn open(&self, ring: &Ring, widths: &[Exact], fold: &Fold) -> Shape {
        let (author, other) = match self.drawn {
            Drawn::Cutting => (&self.cutting, &self.stitching),
            Drawn::Stitching => (&self.stitching, &self.cutting),
        };
        let opened = opened::open(&ring.edges, &author.segs, &other.segs, fold);
        let (author, other) = (Line::new(opened.ring.segs.clone()), Line::new(opened.other));
        let (cutting, stitching) = match self.drawn {
            Drawn::Cutting => (author, other),
            Drawn::Stitching => (other, author),
        };
        let mut whole = Self { edges: Vec::new(), cutting, stitching, drawn: self.drawn, fold: None, opened: None };
        let widths: Vec<Exact> =
            opened.from.iter().map(|from| widths.get(*from).copied().unwrap_or_default()).collect();
        for (edge, from) in opened.from.iter().enumerate() {
            let drawn = ring.name(Some(*from));
            whole.edges.push(Edge { drawn, ..whole.measured(&opened.ring, edge, &widths) });
        }
        // The line of the fold can still be pressed or marked, but it is no edge of the whole.
        let line = &self.edges[fold.edge];
        if whole.edge(&line.name).is_none() {
            whole.edges.push(line.clone());
        }
        whole
    }

    /// The piece as it is sewn: one cut on the fold is opened, any other is as it was drawn.
    pub fn whole(&self) -> &Shape {
        self.opened.as_deref().unwrap_or(self)
    }

    /// The points of the whole piece at a place along a drawn edge, with the edges that they lie on: one, or
    /// of a piece cut on the fold one in each half. None when there is no such edge or the place lies off it.
    pub fn points_of_whole(&self, drawn: &str, along: Along) -> Vec<(&Edge, EdgePoint)> {
        let (whole, Some(point)) = (self.whole(), self.point_at(drawn, along)) else { return Vec::new() };
        let half = self.edge(drawn).map_or(0.0, |edge| edge.length);
        let mut points: Vec<(&Edge, EdgePoint)> = Vec::new();
        for edge in whole.edges.iter().filter(|edge| edge.drawn == drawn) {
            let in_two = edge.length > half + 1e-6;
            let distances = match in_two {
                false => vec![point.distance],
                // Counted from the fold outwards, or towards it.
                true if self.begins_at_fold(drawn) => vec![half - point.distance, half + point.distance],
                true => vec![point.distance, edge.length - point.distance],
            };
            for distance in distances {
                let new = |known: &EdgePoint| (known.distance - distance).abs() > 1e-6;
                if points.iter().filter(|(known, _)| known.name == edge.name).all(|(_, known)| new(known)) {
                    points.extend(whole.point(edge, distance).map(|point| (edge, point)));
                }
            }
        }
        points
    }

    /// Whether a drawn edge is counted from the fold.
    fn begins_at_fold(&self, drawn: &str) -> bool {
        let start = self.edge(drawn).and_then(|edge| edge.path.segments().next().map(|run| run.start()));
        self.fold.zip(start).is_some_and(|(fold, start)| fold.holds(start))
    }

    fn measured(&self, ring: &Ring, edge: usize, widths: &[Exact]) -> Edge {
        let against = ring.edges.get(edge).is_some_and(|named| named.against);
        let path = |line: &Line| {
            let runs: Vec<PathSeg> = line.of_edge(edge).map(|seg| seg.curve).collect();
            if against {
                let turned: Vec<PathSeg> = runs.iter().rev().map(PathSeg::reverse).collect();
                to_path(turned.iter(), false)
            } else {
                to_path(runs.iter(), false)
            }
        };
        let length = |line: &Line| line.of_edge(edge).map(|seg| ring::length(&seg.curve)).sum();
        let author = match self.drawn {
            Drawn::Cutting => &self.cutting,
            Drawn::Stitching => &self.stitching,
        };
        Edge {
            name: ring.name(Some(edge)),
            drawn: ring.name(Some(edge)),
            on_fold: self.fold.is_some_and(|fold| fold.edge == edge),
            path: path(author),
            length: length(author),
            exact: exact::length(author.of_edge(edge)),
            seam_length: length(&self.stitching),
            exact_seam: exact::length(self.stitching.of_edge(edge)),
            seam: path(&self.stitching),
            cut_length: length(&self.cutting),
            exact_cut: exact::length(self.cutting.of_edge(edge)),
            cut: path(&self.cutting),
            allowance: widths.get(edge).copied().unwrap_or_default(),
            runs: author.of_edge(edge).map(|seg| seg.curve).collect(),
            against,
        }
    }

    /// The edges, in the order in which the author wrote them.
    pub fn edges(&self) -> &[Edge] {
        &self.edges
    }

    /// The edge of this name.
    pub fn edge(&self, name: &str) -> Option<&Edge> {
        self.edges.iter().find(|edge| edge.name == name)
    }

    /// The line to cut along; of a piece cut on the fold, its half.
    pub fn cutting(&self) -> &Outline {
        &self.cutting.outline
    }

    /// The line to sew along; of a piece cut on the fold, its half.
    pub fn stitching(&self) -> &Outline {
        &self.stitching.outline
    }

    /// The cutting and the stitching line of the whole piece.
    pub fn unfolded(&self) -> (Outline, Outline) {
        let whole = self.whole();
        (whole.cutting.outline.clone(), whole.stitching.outline.clone())
    }

    /// The width and the height of the box round the cutting line, in mm; of a piece cut on the
    /// fold, of its half. The box of the whole is that of [`Shape::unfolded`].
    pub fn box_size(&self) -> (f64, f64) {
        self.cutting.outline.box_size()
    }

    /// The same exactly. `None` unless the points of the cutting line that reach furthest are exact.
    pub fn exact_box(&self) -> Option<(Exact, Exact)> {
        exact::box_size(&self.cutting.segs, self.cutting.outline.bounds())
    }

    /// The area of cloth inside the cutting line, in mm², of the whole piece, unfolded.
    pub fn area(&self) -> f64 {
        self.cutting.outline.area() * if self.fold.is_some() { 2.0 } else { 1.0 }
    }

    /// The same exactly. `None` unless every run of the cutting line is straight between exact
    /// points.
    pub fn exact_area(&self) -> Option<Exact> {
        let area = exact::area(&self.cutting.segs)?;
        if self.fold.is_some() {
            return area.checked_mul(Exact::from_integer(2));
        }
        Some(area)
    }

    /// A point of an edge. `None` when there is no such edge or the place lies off it.
    pub fn point_at(&self, edge: &str, along: Along) -> Option<EdgePoint> {
        let edge = self.edge(edge)?;
        let distance = match along {
            Along::Centre => edge.length / 2.0,
            Along::Fraction(share) => to_f64(share) * edge.length,
            Along::FromStart(from) => to_f64(from),
            Along::FromEnd(from) => edge.length - to_f64(from),
        };
        self.point(edge, distance)
    }

    /// The point so many mm along an edge of this piece; `None` when that lies off it.
    fn point(&self, edge: &Edge, distance: f64) -> Option<EdgePoint> {
        // The end itself is on the edge, whatever the last binary place says.
        if !(-1e-7..=edge.length + 1e-7).contains(&distance) {
            return None;
        }
        let distance = distance.clamp(0.0, edge.length);
        let (at, inward) = edge.place(if edge.against { edge.length - distance } else { distance })?;
        let across = inward * to_f64(edge.allowance);
        let (cutting, stitching) = match self.drawn {
            Drawn::Cutting => (at, at + across),
            Drawn::Stitching => (at - across, at),
        };
        Some(EdgePoint {
            at: [at.x, at.y],
            inward: [inward.x, inward.y],
            distance,
            cutting: [cutting.x, cutting.y],
            stitching: [stitching.x, stitching.y],
        })
    }
}

impl Edge {
    /// The point so many mm along the edge, clockwise, and the direction into the piece.
    fn place(&self, mut distance: f64) -> Option<(Point, kurbo::Vec2)> {
        let last = self.runs.len().checked_sub(1)?;
        for (index, run) in self.runs.iter().enumerate() {
            let length = ring::length(run);
            if distance <= length || index == last {
                let t = if distance >= length { 1.0 } else { run.inv_arclen(distance, 1e-7) };
                return Some((run.eval(t), -outward(direction(run, t))));
            }
            distance -= length;
        }
        None
    }
}

fn place(ring: &Ring, name: &str) -> Option<usize> {
    ring.edges.iter().position(|edge| edge.name == name)
}

/// The allowance of every edge, in mm.
fn widths(ring: &Ring, allowances: &Allowances) -> Result<Vec<Exact>, Vec<ShapeFault>> {
    let mut widths = vec![allowances.all; ring.edges.len()];
    let mut faults = Vec::new();
    if allowances.all.is_negative() {
        faults.push(ShapeFault::AllowanceBelowZero { edge: None });
    }
    if to_f64(allowances.all) > FARTHEST {
        faults.push(ShapeFault::TooFar { edge: ring.name(Some(0)) });
    }
    let unknown = |name: &String| ShapeFault::NoSuchEdge {
        name: name.clone(),
        known: ring.edges.iter().map(|edge| edge.name.clone()).collect(),
    };
    for (name, width) in &allowances.by_edge {
        match place(ring, name) {
            Some(edge) => widths[edge] = *width,
            None => faults.push(unknown(name)),
        }
        if width.is_negative() {
            faults.push(ShapeFault::AllowanceBelowZero { edge: Some(name.clone()) });
        }
        if to_f64(*width) > FARTHEST {
            faults.push(ShapeFault::TooFar { edge: name.clone() });
        }
    }
    if let Some(name) = &allowances.fold {
        match place(ring, name) {
            Some(edge) => widths[edge] = Exact::ZERO,
            None => faults.push(unknown(name)),
        }
    }
    if faults.is_empty() { Ok(widths) } else { Err(faults) }
}

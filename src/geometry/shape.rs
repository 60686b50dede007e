//! One piece with both of its lines: what can be asked of it once it is built.

use kurbo::{Affine, BezPath, ParamCurve, PathSeg};

use super::dart::{Dart, Pleat};
use super::edge::{Edge, EdgePoint};
use super::fault::ShapeFault;
use super::fold::Fold;
use super::limits::FARTHEST;
use super::outline::Outline;
use super::ring::{self, Named, Ring, Seg, to_path};
use super::spec::{Allowances, Along, Drawn, Spec};
use super::{exact, offset, opened, read};
use crate::measure::{Exact, to_f64};

/// A piece: its cutting line, its stitching line and its named edges.
#[derive(Debug, Clone)]
pub struct Shape {
    pub(super) edges: Vec<Edge>,
    pub(super) cutting: Line,
    pub(super) stitching: Line,
    drawn: Drawn,
    pub(super) fold: Option<Fold>,
    pub(super) darts: Vec<Option<Dart>>,
    pub(super) pleats: Vec<Option<Pleat>>,
    /// A piece cut on the fold, opened.
    pub(super) opened: Option<Box<Shape>>,
}

/// One of the two lines.
#[derive(Debug, Clone)]
pub(super) struct Line {
    pub segs: Vec<Seg>,
    pub outline: Outline,
}

impl Line {
    pub fn new(segs: Vec<Seg>) -> Self {
        let path = to_path(segs.iter().map(|seg| &seg.curve), true);
        Self { segs, outline: Outline { path } }
    }

    pub fn of_edge(&self, edge: usize) -> impl Iterator<Item = &Seg> {
        self.segs.iter().filter(move |seg| seg.edge == Some(edge))
    }

    /// One edge of it, in the direction in which it is counted.
    pub fn edge_path(&self, edge: usize, against: bool) -> BezPath {
        let runs: Vec<PathSeg> = self.of_edge(edge).map(|seg| seg.curve).collect();
        if against {
            let turned: Vec<PathSeg> = runs.iter().rev().map(PathSeg::reverse).collect();
            to_path(turned.iter(), false)
        } else {
            to_path(runs.iter(), false)
        }
    }
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
        let mut shape = Self::of_lines(cutting, stitching, drawn, fold);
        shape.edges = (0..ring.edges.len()).map(|edge| shape.measured(&ring, edge, &widths)).collect();
        shape.opened = fold.map(|fold| Box::new(shape.open(&ring, &widths, &fold)));
        Ok(shape)
    }

    /// A shape whose edges are still to be measured.
    fn of_lines(cutting: Line, stitching: Line, drawn: Drawn, fold: Option<Fold>) -> Shape {
        let (darts, pleats) = (Vec::new(), Vec::new());
        Self { edges: Vec::new(), cutting, stitching, drawn, fold, darts, pleats, opened: None }
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
        let mut whole = Self::of_lines(cutting, stitching, self.drawn, None);
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

    /// Opens the piece anew once its half was shaped: the lines with their mouths, the edges as long as they are
    /// sewn.
    pub(super) fn open_shaped(&mut self) {
        let (Some(fold), Some(mut whole)) = (self.fold, self.opened.take()) else { return };
        let named = |edge: &Edge| Named { name: edge.name.clone(), against: edge.against };
        let names: Vec<Named> = self.edges.iter().map(named).collect();
        let cutting = opened::open(&names, &self.cutting.segs, &self.stitching.segs, &fold);
        let (cutting, stitching) = (Line::new(cutting.ring.segs), Line::new(cutting.other));
        for (at, edge) in whole.edges.iter_mut().enumerate().filter(|(_, edge)| !edge.on_fold) {
            let Some(half) = self.edges.iter().find(|half| half.name == edge.drawn) else { continue };
            let times = if edge.length > half.length + 1e-6 { 2 } else { 1 };
            edge.take_lengths(half, times);
            edge.cut = cutting.edge_path(at, edge.against);
            edge.seam = stitching.edge_path(at, edge.against);
        }
        (whole.cutting, whole.stitching) = (cutting, stitching);
        self.opened = Some(whole);
    }

    /// The mirror at the fold; `None` for a piece that is not cut on one.
    pub fn over_fold(&self) -> Option<Affine> {
        self.fold.map(|fold| Affine::reflect(fold.at, fold.along))
    }

    /// The piece as it is sewn: one cut on the fold is opened, any other is as it was drawn.
    pub fn whole(&self) -> &Shape {
        self.opened.as_deref().unwrap_or(self)
    }

    /// The points of the whole piece at a place along a drawn edge, with the edges that they lie on: one, or
    /// of a piece cut on the fold one in each half. None when there is no such edge or the place lies off it.
    pub fn points_of_whole(&self, drawn: &str, along: Along) -> Vec<(&Edge, EdgePoint)> {
        let (whole, Some(point)) = (self.whole(), self.place_at(drawn, along)) else { return Vec::new() };
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

    /// The place of a notch or a mark on a drawn edge. The centre of one that meets the fold is the middle of the
    /// whole edge, and lies at the fold. `None` as for [`Shape::point_at`].
    pub fn place_at(&self, drawn: &str, along: Along) -> Option<EdgePoint> {
        let at_fold = |begins| if begins { Along::FromStart(Exact::ZERO) } else { Along::FromEnd(Exact::ZERO) };
        match along {
            Along::Centre if self.meets_fold_once(drawn) => self.point_at(drawn, at_fold(self.begins_at_fold(drawn))),
            _ => self.point_at(drawn, along),
        }
    }

    /// Whether a drawn edge runs to the fold with one of its ends: then the whole edge has its middle there. One that
    /// runs from the fold to the fold goes all the way round, and has none.
    pub fn meets_fold_once(&self, drawn: &str) -> bool {
        let edge = self.edge(drawn).filter(|edge| !edge.on_fold);
        let ends =
            edge.and_then(|edge| Some((edge.path.segments().next()?.start(), edge.path.segments().last()?.end())));
        let ends = self.fold.zip(ends);
        ends.is_some_and(|(fold, (start, end))| fold.holds(start) != fold.holds(end))
    }

    /// Whether a drawn edge is counted from the fold.
    fn begins_at_fold(&self, drawn: &str) -> bool {
        let start = self.edge(drawn).and_then(|edge| edge.path.segments().next().map(|run| run.start()));
        self.fold.zip(start).is_some_and(|(fold, start)| fold.holds(start))
    }

    fn measured(&self, ring: &Ring, edge: usize, widths: &[Exact]) -> Edge {
        let against = ring.edges.get(edge).is_some_and(|named| named.against);
        let path = |line: &Line| line.edge_path(edge, against);
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
            closed: length(author),
            exact_closed: exact::length(author.of_edge(edge)),
            seam_length: length(&self.stitching),
            exact_seam: exact::length(self.stitching.of_edge(edge)),
            seam: path(&self.stitching),
            cut_length: length(&self.cutting),
            exact_cut: exact::length(self.cutting.of_edge(edge)),
            cut: path(&self.cutting),
            allowance: widths.get(edge).copied().unwrap_or_default(),
            runs: author.of_edge(edge).map(|seg| seg.curve).collect(),
            against,
            shifted: Vec::new(),
        }
    }

    /// The darts, in the order in which they were described; `None` where one could not be placed.
    pub fn darts(&self) -> &[Option<Dart>] {
        &self.darts
    }

    /// The pleats and tucks, in the same way.
    pub fn pleats(&self) -> &[Option<Pleat>] {
        &self.pleats
    }

    /// Gives each dart and pleat its place among `all` that there are; the others could not be placed.
    pub fn stand_as(&mut self, darts: (usize, Vec<usize>), pleats: (usize, Vec<usize>)) {
        self.darts = spread(std::mem::take(&mut self.darts), darts);
        self.pleats = spread(std::mem::take(&mut self.pleats), pleats);
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

    /// What the scissors cut of the half that is drawn: the cutting line without the edge that lies on the fold.
    pub fn cut_open(&self) -> BezPath {
        self.off_fold(&self.cutting)
    }

    /// The stitching line without that edge.
    pub fn sewn_open(&self) -> BezPath {
        self.off_fold(&self.stitching)
    }

    fn off_fold(&self, line: &Line) -> BezPath {
        let Some(fold) = &self.fold else { return line.outline.path.clone() };
        let segs = &line.segs;
        // From the end of the fold round to its start, so that the line is one.
        let last = segs.iter().rposition(|seg| seg.edge == Some(fold.edge)).map_or(0, |last| last + 1);
        let round = segs[last..].iter().chain(&segs[..last]);
        to_path(round.filter(|seg| seg.edge != Some(fold.edge)).map(|seg| &seg.curve), false)
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
        edge.point(self.drawn, distance.clamp(0.0, edge.length))
    }

    /// A point so many mm along an edge, by its place among the edges. `None` when there is no such edge.
    pub(super) fn point_on(&self, edge: usize, distance: f64) -> Option<EdgePoint> {
        self.edges.get(edge)?.point(self.drawn, distance)
    }

    pub(super) fn author_is_cutting(&self) -> bool {
        self.drawn == Drawn::Cutting
    }
}

fn spread<T: Clone>(found: Vec<Option<T>>, (all, places): (usize, Vec<usize>)) -> Vec<Option<T>> {
    let mut list = vec![None; all];
    for (one, at) in found.into_iter().zip(places) {
        list[at] = one;
    }
    list
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

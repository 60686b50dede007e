//! One piece or zip on the drawing: its outline, its edges and its notches, laid in place.

use kurbo::{Affine, BezPath, Point, Rect, Shape as _, Vec2};

use super::cloth::Face;
use super::desk::Desk;
use super::inside::{Detail, each};
use super::lies::{Lies, drawn_in};
use super::shut::Shut;
use super::trace::{Side, closed_line, corners, cut_back, inward, length, open_line, straight};
use super::turned::Turned;
use crate::geometry::Along;
use crate::model::NotchAt;
use crate::resolve::{CopyId, Inside, NotionId};

/// How wide a closed zip is over both tapes, in mm (common practice, no source).
const ZIP_WIDTH: f64 = 30.0;

/// How far apart folds of gathered cloth are drawn, in mm of cloth.
const GATHER: f64 = 35.0;

/// How far such a fold waves to each side, so that it is no crease, in mm of cloth.
const GATHER_WAVE: f64 = 5.0;

/// What the edge is called at which a piece is folded.
pub(super) const FOLD: &str = "fold";

/// How far the waves of a torn edge reach, in mm on paper.
const TORN: f64 = 1.2;

/// What is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Who {
    /// A copy.
    Copy(CopyId),
    /// A zip.
    Zip(NotionId),
}

/// A named edge.
#[derive(Debug, Clone)]
pub(super) struct Rim {
    pub name: String,
    /// The cutting line of the edge; of a piece cut on the fold, that of each half.
    pub lines: Vec<BezPath>,
}

/// A piece or a zip, in mm on paper.
#[derive(Debug, Clone)]
pub(super) struct Part {
    pub who: Who,
    pub face: Face,
    /// The whole cutting line.
    pub outline: BezPath,
    /// What of it is drawn.
    pub visible: BezPath,
    /// What lies on its wrong side and does not reach its edges, as far as it is drawn where that side is up.
    pub layer: Option<BezPath>,
    pub rims: Vec<Rim>,
    /// The edges that are folded out of sight, so that their seams do not show.
    pub hidden: Vec<String>,
    /// Edge, place on the cutting line, direction into the piece.
    pub notches: Vec<(String, Point, Vec2)>,
    /// Darts, pleats and marks; those of a piece cut on the fold in both halves.
    pub inside: Vec<(Inside, Vec<Detail>)>,
    /// The lines of darts, pleats and tucks that were closed before.
    pub shut: Vec<Detail>,
    /// Folds of cloth that run in from a gathered edge.
    pub gathers: Vec<BezPath>,
    /// Which way its pile runs; one long.
    pub nap: Option<Vec2>,
    /// Where the lower of two layers stands out, of a piece that lies folded in half; one long.
    pub doubled: Option<Vec2>,
    /// How it lies to the drawing of its author.
    pub turn: Affine,
}

impl Part {
    /// A copy at a scale, upright, with one side up; `None` when its outline could not be worked out.
    pub fn copy(desk: &Desk<'_, '_>, copy: CopyId, face: Face, scale: f64) -> Option<Part> {
        Part::lying(desk, copy, face, scale, &desk.past.lies(copy))
    }

    /// The same as it lies in a way of its own.
    pub fn lying(desk: &Desk<'_, '_>, copy: CopyId, face: Face, scale: f64, lies: &Lies) -> Option<Part> {
        let member = &desk.edition.cast[copy];
        let shape = desk.edition.values.shape(member.piece)?;
        let piece = &desk.edition.draft.facts.pieces[member.piece];
        let whole = shape.whole();
        let outline = whole.cutting().path.clone();
        let edges = whole.edges().iter().filter(|edge| !edge.on_fold);
        let rims = edges.map(|edge| Rim { name: edge.name.clone(), lines: vec![edge.cut.clone()] }).collect();
        let mut notches = Vec::new();
        for notch in &piece.notches {
            let along = match &notch.at {
                NotchAt::Centre => Some(Along::Centre),
                NotchAt::FromStart(formula) => desk.edition.values.along(formula, false),
                NotchAt::FromEnd(formula) => desk.edition.values.along(formula, true),
            };
            let points = along.map(|along| shape.points_of_whole(&notch.edge.text, along));
            for (edge, at) in points.into_iter().flatten() {
                let (point, inward) = (Point::new(at.cutting[0], at.cutting[1]), Vec2::new(at.inward[0], at.inward[1]));
                notches.push((edge.name.clone(), point, inward));
            }
        }
        let mut inside = each(desk.edition, member.piece);
        inside.retain(|(one, _)| !matches!(one, Inside::Mark(at) if !piece.marks[*at].is_on(&member.name)));
        if let Some(over) = shape.over_fold() {
            for (_, details) in &mut inside {
                let drawn = details.iter().filter(|detail| !matches!(detail, Detail::Name(..)));
                let other: Vec<Detail> = drawn.map(|detail| detail.moved(over)).collect();
                details.extend(other);
            }
        }
        let closed = desk.past.closed_in(copy);
        let is_turned_in = |edge: usize| {
            let name = shape.edges().get(edge).map_or("", |edge| edge.name.as_str());
            let mut of_whole = shape.points_of_whole(name, Along::Centre).into_iter();
            of_whole.any(|(edge, _)| desk.past.is_turned_in(copy, &edge.name))
        };
        let shut = Shut::of(shape, &closed, is_turned_in);
        let mut part = Part {
            who: Who::Copy(copy),
            face,
            visible: outline.clone(),
            layer: desk.smaller_layer(copy),
            outline,
            rims,
            hidden: Vec::new(),
            notches,
            inside,
            shut: Vec::new(),
            gathers: Vec::new(),
            nap: desk.nap(copy),
            doubled: None,
            turn: Affine::IDENTITY,
        };
        if desk.past.turned.contains_key(&copy) {
            part.turn(Turned::of(whole, |edge| desk.past.is_turned_in(copy, edge)));
        }
        if !shut.is_empty() {
            part.close(&shut, &closed);
        }
        part.lie(lies);
        let turned = (face == Face::Wrong) != member.mirrored;
        let placed = Affine::scale(1.0 / scale) * if turned { Affine::FLIP_X } else { Affine::IDENTITY };
        Some(part.moved(placed))
    }

    /// Lets the seams lie at the edge, in the author's drawing.
    fn turn(&mut self, turned: Turned) {
        self.visible = turned.outline.clone();
        self.outline = turned.outline;
        for (name, line, hidden) in turned.edges {
            if let Some(rim) = self.rims.iter_mut().find(|rim| rim.name == name) {
                rim.lines = vec![line];
            }
            if hidden {
                self.notches.retain(|(edge, ..)| *edge != name);
                self.hidden.push(name);
            }
        }
    }

    /// Gathers edges and folds the piece up, in the author's drawing.
    fn lie(&mut self, lies: &Lies) {
        for (edge, share) in &lies.gathered {
            let Some(hold) = self.hold(edge) else { continue };
            let bounds = self.bounds();
            let deep = bounds.width() * hold.1.x.abs() + bounds.height() * hold.1.y.abs();
            let long = self.length(edge);
            let across = Vec2::new(-hold.1.y, hold.1.x);
            let folds = (long / GATHER).clamp(5.0, 24.0) as usize;
            self.gathers.extend((1..folds).map(|at| {
                let from = hold.0 + across * (long * (at as f64 / folds as f64 - 0.5));
                let far = deep * if at % 2 == 0 { 0.14 } else { 0.1 };
                let wave = |turn: u8| {
                    let aside = [0.0, GATHER_WAVE, 0.0, -GATHER_WAVE][usize::from(turn % 4)];
                    from + hold.1 * (far * f64::from(turn) / 6.0) + across * aside
                };
                open_line(&(0..=6).map(wave).collect::<Vec<_>>())
            }));
            self.bend(|point| drawn_in(hold, deep, *share, point));
        }
        if lies.folds.is_none() {
            return;
        }
        let bounds = self.bounds();
        self.bend(|point| lies.folded(bounds, point));
        (self.notches, self.inside, self.layer) = (Vec::new(), Vec::new(), None);
        self.hidden.extend(self.rims.iter().map(|rim| rim.name.clone()));
        let Some(way) = lies.doubled(bounds) else { return };
        // The far one of two edges lies on the near one; what is far now is the fold.
        let far = |rim: &Rim| {
            middle_of(rim).is_some_and(|middle| (middle - self.outline.bounding_box().center()).dot(way) > 0.0)
        };
        let side = |rim: &Rim| {
            rim.lines.first().and_then(straight).is_some_and(|(from, to)| (to - from).dot(way).abs() < 1e-6)
        };
        let near: Vec<BezPath> =
            self.rims.iter().filter(|rim| side(rim) && !far(rim)).flat_map(|rim| rim.lines.clone()).collect();
        let mut fold = Vec::new();
        let lays: Vec<bool> = self.rims.iter().map(|rim| side(rim) && far(rim)).collect();
        for (rim, _) in self.rims.iter_mut().zip(lays).filter(|(_, lays)| *lays) {
            fold.append(&mut rim.lines);
            rim.lines.clone_from(&near);
        }
        self.rims.push(Rim { name: FOLD.to_owned(), lines: fold });
        self.doubled = Some(-way);
    }

    /// Moves every point of the part.
    fn bend(&mut self, to: impl Fn(Point) -> Point) {
        let path = |path: &BezPath| {
            let points: Vec<Point> = corners(path).into_iter().map(&to).collect();
            match path.elements().last() {
                Some(kurbo::PathEl::ClosePath) => closed_line(&points),
                _ => open_line(&points),
            }
        };
        self.outline = path(&self.outline);
        self.visible = path(&self.visible);
        self.layer = self.layer.as_ref().map(path);
        let rims = self.rims.iter_mut().flat_map(|rim| &mut rim.lines);
        rims.chain(&mut self.gathers).for_each(|line| *line = path(line));
        self.notches.iter_mut().for_each(|(_, point, _)| *point = to(*point));
        let details = self.inside.iter_mut().flat_map(|(_, details)| details);
        details.chain(&mut self.shut).for_each(|detail| *detail = detail.bent(&to, path));
    }

    /// Shuts what was closed before, in the author's drawing.
    fn close(&mut self, shut: &Shut, closed: &[Inside]) {
        self.outline = shut.path(&self.outline);
        self.visible = self.outline.clone();
        for line in self.rims.iter_mut().flat_map(|rim| &mut rim.lines) {
            *line = shut.path(line);
        }
        for (_, point, _) in &mut self.notches {
            *point = shut.point(*point);
        }
        shut.inside(&mut self.inside, closed);
        self.shut = shut.lines();
    }

    /// A zip of a length in mm of cloth, its start at the left and `tape_a` nearest as one sees its
    /// face.
    pub fn zip(zip: NotionId, length: f64, face: Face, scale: f64) -> Part {
        let at = |x: f64, y: f64| Point::new(x, y);
        let (a, b, c, d) = (at(0.0, 0.0), at(length, 0.0), at(length, ZIP_WIDTH), at(0.0, ZIP_WIDTH));
        let edge =
            |name: &str, from: Point, to: Point| Rim { name: name.to_owned(), lines: vec![open_line(&[from, to])] };
        let outline = closed_line(&[a, b, c, d]);
        let part = Part {
            who: Who::Zip(zip),
            face,
            visible: outline.clone(),
            layer: None,
            outline,
            rims: vec![edge("tape_b", a, b), edge("end", b, c), edge("tape_a", c, d), edge("start", d, a)],
            hidden: Vec::new(),
            notches: Vec::new(),
            inside: Vec::new(),
            shut: Vec::new(),
            gathers: Vec::new(),
            nap: None,
            doubled: None,
            turn: Affine::IDENTITY,
        };
        let turn = if face == Face::Wrong { Affine::FLIP_X } else { Affine::IDENTITY };
        part.moved(Affine::scale(1.0 / scale) * turn)
    }

    pub fn moved(mut self, by: Affine) -> Part {
        self.turn = by * self.turn;
        self.outline = by * self.outline;
        self.visible = by * self.visible;
        self.layer = self.layer.map(|layer| by * layer);
        for line in self.rims.iter_mut().flat_map(|rim| &mut rim.lines) {
            *line = by * line.clone();
        }
        self.gathers.iter_mut().for_each(|line| *line = by * line.clone());
        let turned = |way: Vec2| (by * way.to_point() - by * Point::ORIGIN).normalize();
        self.doubled = self.doubled.map(turned);
        self.nap = self.nap.map(turned);
        for detail in self.inside.iter_mut().flat_map(|(_, details)| details).chain(&mut self.shut) {
            *detail = detail.moved(by);
        }
        for (_, point, inward) in &mut self.notches {
            let tip = by * (*point + *inward);
            *point = by * *point;
            *inward = (tip - *point).normalize();
        }
        self
    }

    pub fn rim(&self, name: &str) -> Option<&Rim> {
        self.rims.iter().find(|rim| rim.name == name)
    }

    /// The middle of an edge, and the direction from there into the piece.
    pub fn hold(&self, edge: &str) -> Option<(Point, Vec2)> {
        inward(self.rim(edge)?.lines.first()?, &self.outline)
    }

    /// The same for each half of a piece cut on the fold.
    pub fn holds(&self, edge: &str) -> Vec<(Point, Vec2)> {
        self.rim(edge).iter().flat_map(|rim| &rim.lines).filter_map(|line| inward(line, &self.outline)).collect()
    }

    /// Whether an edge runs straight, in both halves of a piece cut on the fold.
    pub fn runs_straight(&self, edge: &str) -> bool {
        self.rim(edge).is_some_and(|rim| rim.lines.iter().all(|line| straight(line).is_some()))
    }

    /// Whether an edge runs straight, in one line.
    pub fn is_straight(&self, edge: &str) -> bool {
        self.rim(edge).is_some_and(|rim| rim.lines.len() == 1 && straight(&rim.lines[0]).is_some())
    }

    /// The length of an edge, in mm on paper.
    pub fn length(&self, edge: &str) -> f64 {
        self.rim(edge).map_or(0.0, |rim| rim.lines.iter().map(|line| length(&corners(line))).sum())
    }

    /// The same part moved and turned so that the point `far` inside the middle of an edge comes to
    /// `point`, and its inside lies towards `way`.
    pub fn laid(self, edge: &str, far: f64, point: Point, way: Vec2) -> Option<Part> {
        let (middle, inside) = self.hold(edge)?;
        let turn = way.atan2() - inside.atan2();
        let turned = Affine::rotate(turn) * (middle + inside * far);
        Some(self.moved(Affine::translate(point - turned) * Affine::rotate(turn)))
    }

    /// Takes what lies beyond a line out of sight.
    pub fn cut_back(&mut self, at: Point, inward: Vec2, side: Side) {
        self.visible = cut_back(&self.visible, at, inward, side);
        // A torn edge has waves, over which the layer must not stand out.
        let deeper = if side == Side::Torn { TORN } else { 0.0 };
        let layer = self.layer.take().map(|layer| cut_back(&layer, at + inward * deeper, inward, Side::Straight));
        self.layer = layer.filter(|layer| !layer.elements().is_empty());
    }

    /// Folds the allowance of an edge out of sight.
    pub fn fold_away(&mut self, edge: &str, allowance: f64) {
        for (point, inner) in self.holds(edge) {
            self.cut_back(point + inner * allowance, inner, Side::Straight);
            self.hidden.push(edge.to_owned());
        }
    }

    /// The box of what is seen.
    pub fn bounds(&self) -> Rect {
        self.visible.bounding_box()
    }
}

fn middle_of(rim: &Rim) -> Option<Point> {
    rim.lines.first().and_then(straight).map(midpoint)
}

/// The middle of a straight line.
pub(super) fn midpoint(line: (Point, Point)) -> Point {
    line.0.midpoint(line.1)
}

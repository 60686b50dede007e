//! Pieces of one size as true shapes: the author's outline, worked out and built.

use std::rc::Rc;

use super::ids::PieceId;
use super::values::Values;
use crate::diag::{Finding, Findings, did_you_mean};
use crate::faults::{EDGE_UNKNOWN, FORMULA_RING, NOTCH_OFF_EDGE, OUTLINE_WRONG, UNIT_MISMATCH};
use crate::geometry::{Allowances, Along, CornerOut, Drawn, Run, RunKind, Shape, ShapeFault, Spec};
use crate::measure::{Dimension, Exact, Quantity, ratio};
use crate::model::{Bend, BySize, Expression, Name, Outline, Piece};
use crate::source::Span;

impl Values<'_> {
    /// The shape of a piece; `None` when it could not be built, which is
    /// a finding of the size.
    pub fn shape(&self, piece: PieceId) -> Option<Rc<Shape>> {
        if let Some(known) = self.shapes.borrow().get(&piece) {
            return known.clone();
        }
        let facts = &self.draft.facts.pieces[piece];
        if self.building.borrow().contains(&piece) {
            self.note(
                FORMULA_RING
                    .at(facts.id.span, format!("the outline of `{}` leans on its own edges", facts.id.text))
                    .hint("give one of its lengths a figure of its own"),
            );
            return None;
        }
        self.building.borrow_mut().push(piece);
        let built = self.build(facts);
        self.building.borrow_mut().pop();
        let built = built.map(Rc::new);
        self.shapes.borrow_mut().insert(piece, built.clone());
        built
    }

    /// The allowance that a piece states for an edge, in mm; `None` when it states none.
    pub fn allowance(&self, piece: PieceId, edge: &str) -> Option<Exact> {
        let facts = &self.draft.facts.pieces[piece];
        let own = facts.allowance.iter().rev().find(|(name, _)| name.text == edge);
        let (_, formula) = own.or_else(|| facts.allowance.iter().find(|(name, _)| name.text == "all"))?;
        self.length(formula)
    }

    /// A place along an edge: a share of it, or a length from its beginning or end.
    pub fn along(&self, formula: &Expression, from_end: bool) -> Option<Along> {
        let value = self.quiet(formula)?.quantity;
        let one = Exact::from_integer(1);
        match (value.dimension, from_end) {
            (Dimension::Count, false) => Some(Along::Fraction(value.value)),
            (Dimension::Count, true) => Some(Along::Fraction(one - value.value)),
            (Dimension::Length, false) => Some(Along::FromStart(value.value)),
            (Dimension::Length, true) => Some(Along::FromEnd(value.value)),
            _ => None,
        }
    }

    /// A measure of a piece by its name: `width`, `height`, `area`, or the length of an edge.
    pub(super) fn piece_measure(&self, piece: PieceId, field: &str) -> Option<Quantity> {
        let shape = self.shape(piece)?;
        let length = |value: Exact| Quantity { value, dimension: Dimension::Length };
        if let Some(edge) = shape.edge(field) {
            return Some(length(edge.exact.or_else(|| hundredths(edge.length))?));
        }
        let (width, height) = shape.box_size();
        match field {
            "width" => Some(length(shape.exact_box().map(|(width, _)| width).or_else(|| hundredths(width))?)),
            "height" => Some(length(shape.exact_box().map(|(_, height)| height).or_else(|| hundredths(height))?)),
            "area" => {
                let value = shape.exact_area().or_else(|| hundredths(shape.area()))?;
                Some(Quantity { value, dimension: Dimension::Area })
            }
            _ => None,
        }
    }

    fn length(&self, formula: &Expression) -> Option<Exact> {
        let worked = self.heard(formula)?;
        if worked.quantity.dimension == Dimension::Length {
            return Some(worked.quantity.value);
        }
        self.note(
            UNIT_MISMATCH
                .at(formula.span(), format!("{} stands where a length should", worked.quantity.dimension.name()))
                .hint("give it a unit of length, such as `cm` or `in`"),
        );
        None
    }

    fn side(&self, value: &BySize) -> Option<Exact> {
        self.length(value.get(self.size())?)
    }

    fn point(&self, (across, down): &(Expression, Expression)) -> Option<[Exact; 2]> {
        Some([self.coordinate(across)?, self.coordinate(down)?])
    }

    /// A nought needs no unit.
    fn coordinate(&self, formula: &Expression) -> Option<Exact> {
        let worked = self.heard(formula)?;
        if worked.quantity.dimension == Dimension::Count && worked.quantity.value == Exact::from_integer(0) {
            return Some(worked.quantity.value);
        }
        self.length(formula)
    }

    fn build(&self, piece: &Piece) -> Option<Shape> {
        let spec = self.spec(piece)?;
        let mut allowances = Allowances {
            all: Exact::from_integer(0),
            by_edge: Vec::new(),
            fold: piece.fold.as_ref().map(|fold| fold.text.clone()),
        };
        for (name, formula) in &piece.allowance {
            let length = self.length(formula)?;
            match name.text.as_str() {
                "all" => allowances.all = length,
                edge => allowances.by_edge.push((edge.to_owned(), length)),
            }
        }
        let drawn = if piece.drawn_stitching { Drawn::Stitching } else { Drawn::Cutting };
        match Shape::build(&spec, drawn, &allowances) {
            Ok(shape) => {
                self.check_notches(piece, &shape);
                for raw in piece.raw.iter().filter(|raw| raw.text != "all" && shape.edge(&raw.text).is_none()) {
                    self.unknown_edge(piece, raw, &shape);
                }
                Some(shape)
            }
            Err(faults) => {
                for fault in faults {
                    let span = place(piece, &fault);
                    self.note(
                        OUTLINE_WRONG.at(span, format!("`{}`: {}", piece.id.text, fault.message())).hint(fault.hint()),
                    );
                }
                None
            }
        }
    }

    fn spec(&self, piece: &Piece) -> Option<Spec> {
        match piece.outline.as_ref()? {
            Outline::Rectangle { width, height, corners_out } => {
                let (width, height) = (self.side(width), self.side(height));
                let mut corners = Vec::new();
                for (at, across, down) in corners_out {
                    corners.push(CornerOut {
                        at_top: at.text == "top",
                        width: self.side(across)?,
                        height: self.side(down)?,
                    });
                }
                Some(Spec::Rectangle { width: width?, height: height?, corners_out: corners })
            }
            Outline::Path(segments) => {
                let mut runs = Vec::new();
                for (at, segment) in segments.iter().enumerate() {
                    let to = match &segment.to {
                        Some(point) => Some(self.point(point)?),
                        None => None,
                    };
                    let kind = match &segment.bend {
                        _ if at == 0 && segment.name.text == "start" => RunKind::Start,
                        Bend::Straight => RunKind::Straight,
                        Bend::Cubic([first, second]) => RunKind::Cubic([self.point(first)?, self.point(second)?]),
                        Bend::Arc { radius, left, large } => {
                            RunKind::Arc { radius: self.length(radius)?, left: *left, large: *large }
                        }
                    };
                    runs.push(Run { name: segment.name.text.clone(), to, kind });
                }
                Some(Spec::Path(runs))
            }
            Outline::Drawing { file, id } => {
                let id = self.draft.figure_path(&id.text, self.size());
                match self.draft.outlines.get(&(file.text.clone(), id.clone())) {
                    Some(paths) => Some(Spec::Drawing(paths.clone())),
                    None => {
                        self.note(
                            OUTLINE_WRONG
                                .at(file.span, format!("`{}` has no path with the id `{id}`", file.text))
                                .hint("give the outline's path, or the group of its edges, this id in the drawing"),
                        );
                        None
                    }
                }
            }
        }
    }

    /// Notches must lie on their edges.
    fn check_notches(&self, piece: &Piece, shape: &Shape) {
        for notch in &piece.notches {
            let edge = notch.edge.text.as_str();
            if shape.edge(edge).is_none() {
                self.unknown_edge(piece, &notch.edge, shape);
                continue;
            }
            let along = match &notch.at {
                crate::model::NotchAt::Centre => Some(Along::Centre),
                crate::model::NotchAt::FromStart(formula) => {
                    self.heard(formula).and_then(|_| self.along(formula, false))
                }
                crate::model::NotchAt::FromEnd(formula) => self.heard(formula).and_then(|_| self.along(formula, true)),
            };
            if let Some(along) = along
                && shape.point_at(edge, along).is_none()
            {
                self.note(
                    NOTCH_OFF_EDGE
                        .at(notch.text.span, format!("this notch lies off the edge `{edge}`"))
                        .hint("write a share from 0 to 1, or a length no longer than the edge"),
                );
            }
        }
    }

    fn unknown_edge(&self, piece: &Piece, edge: &Name, shape: &Shape) {
        let known: Vec<&str> = shape.edges().iter().map(|edge| edge.name.as_str()).collect();
        self.note(
            EDGE_UNKNOWN.at(edge.span, format!("`{}` has no edge `{}`", piece.id.text, edge.text)).hint(did_you_mean(
                &edge.text,
                known.iter().copied(),
                &format!("its edges are: {}", known.join(", ")),
            )),
        );
    }

    fn note(&self, finding: Finding) {
        self.findings.borrow_mut().push(finding.in_size(self.size(), ""));
    }

    /// A formula's value; a fault is noted for this size.
    fn heard(&self, formula: &Expression) -> Option<super::values::Worked> {
        let mut own = Findings::default();
        let worked = self.work_out(formula, self, &mut own);
        self.findings.borrow_mut().extend(own.iter().cloned());
        worked
    }

    /// A formula's value, without a word about faults, which have been reported.
    pub fn quiet(&self, formula: &Expression) -> Option<super::values::Worked> {
        self.work_out(formula, self, &mut Findings::default())
    }
}

/// Where a fault of an outline stands: the edge that it names, or the piece.
fn place(piece: &Piece, fault: &ShapeFault) -> Span {
    let Some(edge) = fault.edge() else { return piece.id.span };
    if let Some((name, _)) = piece.allowance.iter().find(|(name, _)| name.text == edge)
        && matches!(fault, ShapeFault::AllowanceEatsPiece { .. } | ShapeFault::NoSuchEdge { .. })
    {
        return name.span;
    }
    if let Some(fold) = piece.fold.as_ref().filter(|fold| fold.text == edge) {
        return fold.span;
    }
    match &piece.outline {
        Some(Outline::Path(segments)) => {
            segments.iter().find(|segment| segment.name.text == edge).map_or(piece.id.span, |segment| segment.name.span)
        }
        _ => piece.id.span,
    }
}

/// A drawn length as an exact one, to a hundredth of a millimetre.
fn hundredths(value: f64) -> Option<Exact> {
    let rounded = (value * 100.0).round();
    (rounded.abs() < 1e15).then(|| ratio(rounded as i128, 100)).flatten()
}

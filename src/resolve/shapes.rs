//! Pieces of one size as true shapes: the author's outline, worked out and built.

use super::ids::PieceId;
use super::reckoning::Reckoning;
use super::values::Values;
use super::worked::Worked;
use crate::diag::{Finding, Findings, did_you_mean};
use crate::faults::{EDGE_UNKNOWN, FORMULA_RING, NOTCH_OFF_EDGE, OUTLINE_WRONG, UNIT_MISMATCH};
use crate::geometry::{Allowances, Along, CornerOut, Drawn, Edge, Run, RunKind, Shape, ShapeFault, Spec};
use crate::limits::COPIES;
use crate::measure::{Dimension, Exact, Quantity, ratio};
use crate::model::{Bend, BySize, CutCopies, Expression, Name, Outline, Piece};
use crate::source::Span;

impl Values<'_> {
    /// The shape of a piece; `None` when it could not be built, which is a finding of the size.
    pub fn shape(&self, piece: PieceId) -> Option<&Shape> {
        self.shapes.get(&piece)?.as_ref()
    }

    /// The shape of a piece as it is sewn: one cut on the fold is opened.
    pub fn whole(&self, piece: PieceId) -> Option<&Shape> {
        self.shape(piece).map(Shape::whole)
    }

    /// The allowance that a piece states for an edge, in mm; `None` when it states none.
    pub fn allowance(&self, piece: PieceId, edge: &str) -> Option<Exact> {
        let facts = &self.draft.facts.pieces[piece];
        let own = facts.allowance.iter().rev().find(|(name, _)| name.text == edge);
        let (_, formula) = own.or_else(|| facts.allowance.iter().find(|(name, _)| name.text == "all"))?;
        let worked = self.quiet(formula)?.quantity;
        (worked.dimension == Dimension::Length).then_some(worked.value)
    }

    /// A place along an edge: a share of it, or a length from its beginning or end.
    pub fn along(&self, formula: &Expression, from_end: bool) -> Option<Along> {
        let value = self.quiet(formula)?.quantity;
        match (value.dimension, from_end) {
            (Dimension::Count, false) => Some(Along::Fraction(value.value)),
            (Dimension::Count, true) => Some(Along::Fraction(Exact::ONE.checked_sub(value.value)?)),
            (Dimension::Length, false) => Some(Along::FromStart(value.value)),
            (Dimension::Length, true) => Some(Along::FromEnd(value.value)),
            _ => None,
        }
    }

    /// How many copies are cut; `None` where the formula has a fault or comes to no such number.
    pub fn pieces_cut(&self, copies: &CutCopies) -> Option<u32> {
        match copies {
            CutCopies::Named(names) => u32::try_from(names.len()).ok(),
            CutCopies::Count(count) => Some(*count),
            CutCopies::Reckoned(formula) => self.quiet(formula)?.whole().filter(|count| *count as usize <= COPIES.most),
        }
    }

    /// A formula's value, without a word about faults, which have been reported.
    pub fn quiet(&self, formula: &Expression) -> Option<Worked> {
        self.work_out(formula, self, &mut Findings::default())
    }
}

impl Reckoning<'_> {
    /// Builds a piece and takes down its measures, each once.
    pub fn piece(&mut self, id: PieceId) {
        if self.values.shapes.contains_key(&id) {
            return;
        }
        let facts = &self.values.draft.facts.pieces[id];
        if self.building.contains(&id) {
            self.note(
                FORMULA_RING
                    .at(facts.id.span, format!("the outline of `{}` leans on its own edges", facts.id.text))
                    .hint("give one of its lengths a figure of its own"),
            );
            return;
        }
        self.building.push(id);
        let built = self.build(facts);
        // A dart may lean on the edges of its own piece as they are drawn.
        built.iter().for_each(|shape| self.take_down(id, measures(shape.whole())));
        let built = built.map(|shape| self.shaped(facts, shape));
        built.iter().for_each(|shape| self.take_down(id, closed(shape.whole())));
        self.building.pop();
        self.values.shapes.insert(id, built);
    }

    /// Makes the measures of a piece known, under its name and those of its copies.
    fn take_down(&mut self, id: PieceId, measures: Vec<(String, Quantity)>) {
        let facts = &self.values.draft.facts.pieces[id];
        let catalogue = self.values.catalogue;
        for (field, quantity) in measures {
            let owners = std::iter::once(&facts.id).chain(facts.copies());
            let own = |owner: &&Name| catalogue.get(&owner.text).and_then(|kind| kind.piece()) == Some(id);
            for owner in owners.filter(own) {
                let worked = Worked { quantity, stated: None };
                self.values.known.insert(format!("{}.{field}", owner.text), Some(worked));
            }
        }
    }

    pub(super) fn length(&mut self, formula: &Expression) -> Option<Exact> {
        let worked = self.work_out(formula)?;
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

    fn side(&mut self, value: &BySize) -> Option<Exact> {
        self.length(value.get(self.values.size)?)
    }

    pub(super) fn point(&mut self, (across, down): &(Expression, Expression)) -> Option<[Exact; 2]> {
        Some([self.coordinate(across)?, self.coordinate(down)?])
    }

    /// A nought needs no unit.
    fn coordinate(&mut self, formula: &Expression) -> Option<Exact> {
        let worked = self.work_out(formula)?;
        if worked.quantity.dimension == Dimension::Count && worked.quantity.value == Exact::from_integer(0) {
            return Some(worked.quantity.value);
        }
        self.length(formula)
    }

    fn build(&mut self, piece: &Piece) -> Option<Shape> {
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
                for (edge, _) in piece.edge_names.iter().filter(|(edge, _)| shape.edge(&edge.text).is_none()) {
                    self.unknown_edge(piece, edge, &shape);
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

    fn spec(&mut self, piece: &Piece) -> Option<Spec> {
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
                if piece.tape.is_some() {
                    return Some(Spec::Strip { length: width?, width: height? });
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
                let id = self.values.draft.figure_path(&id.text, self.values.size);
                match self.values.draft.outlines.get(&(file.text.clone(), id.clone())) {
                    // A fault of the drawing itself is told where it is read.
                    Some(paths) if paths.is_empty() => None,
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
    fn check_notches(&mut self, piece: &Piece, shape: &Shape) {
        for notch in &piece.notches {
            let edge = notch.edge.text.as_str();
            if shape.edge(edge).is_none() {
                self.unknown_edge(piece, &notch.edge, shape);
                continue;
            }
            if let Some(along) = self.along(&notch.at)
                && shape.place_at(edge, along).is_none()
            {
                self.note(
                    NOTCH_OFF_EDGE
                        .at(notch.text.span, format!("this notch lies off the edge `{edge}`"))
                        .hint("write a share from 0 to 1, or a length no longer than the edge"),
                );
            }
        }
    }

    pub(super) fn unknown_edge(&mut self, piece: &Piece, edge: &Name, shape: &Shape) {
        let known: Vec<&str> = shape.edges().iter().map(|edge| edge.name.as_str()).collect();
        self.note(
            EDGE_UNKNOWN.at(edge.span, format!("`{}` has no edge `{}`", piece.id.text, edge.text)).hint(did_you_mean(
                &edge.text,
                known.iter().copied(),
                &format!("its edges are: {}", known.join(", ")),
            )),
        );
    }

    pub(super) fn note(&mut self, finding: Finding) {
        self.findings.push(finding.in_size(self.values.size, ""));
    }
}

/// The measures of a piece that formulas may name: `width`, `height`, `area`, and the length of each edge,
/// which goes before. An edge that stands twice in a piece cut on the fold, opened, is as long as either.
fn measures(shape: &Shape) -> Vec<(String, Quantity)> {
    let length = |value: Exact| Quantity { value, dimension: Dimension::Length };
    let (width, height) = shape.box_size();
    let exact = shape.exact_box();
    let area = shape.exact_area().or_else(|| hundredths(shape.area()));
    let whole = [
        ("width", exact.map(|(width, _)| width).or_else(|| hundredths(width)).map(length)),
        ("height", exact.map(|(_, height)| height).or_else(|| hundredths(height)).map(length)),
        ("area", area.map(|value| Quantity { value, dimension: Dimension::Area })),
    ];
    let by_name =
        |edge: &'_ Edge, name: &str| (name.to_owned(), edge.exact.or_else(|| hundredths(edge.length)).map(length));
    let halves = shape.edges().iter().filter(|edge| edge.drawn != edge.name);
    let halves = halves.map(|edge| by_name(edge, &edge.drawn));
    let edges = shape.edges().iter().map(|edge| by_name(edge, &edge.name));
    let whole = whole.into_iter().map(|(name, value)| (name.to_owned(), value));
    whole.chain(halves).chain(edges).filter_map(|(name, value)| Some((name, value?))).collect()
}

/// The length of each edge with its darts closed and its pleats laid.
fn closed(shape: &Shape) -> Vec<(String, Quantity)> {
    let length = |value: Exact| Quantity { value, dimension: Dimension::Length };
    let closed = |edge: &Edge| edge.exact_closed.or_else(|| hundredths(edge.closed)).map(length);
    let mut found = Vec::new();
    for edge in shape.edges() {
        // An edge that stands twice is named by what it was drawn as, too.
        for name in [&edge.drawn, &edge.name] {
            found.extend(closed(edge).map(|length| (format!("{name}.closed"), length)));
        }
    }
    found
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
pub(super) fn hundredths(value: f64) -> Option<Exact> {
    let rounded = (value * 100.0).round();
    (rounded.abs() < 1e15).then(|| ratio(rounded as i128, 100)).flatten()
}

//! Darts, pleats and marks of one size: their figures worked out, and their places on the piece.

use kurbo::{Affine, Point, Vec2};

use super::ids::PieceId;
use super::mark::MarkAt;
use super::reckoning::Reckoning;
use crate::diag::did_you_mean;
use crate::faults::{OFF_PIECE, OUT_OF_RANGE, UNIT_MISMATCH, UNKNOWN_NAME};
use crate::geometry::{Along, DartSpec, PleatSpec, Shape, ShapingFault, Tip};
use crate::measure::{Dimension, Exact, to_f64};
use crate::model::{Dart, DartPlace, DartTip, Expression, Mark, MarkPlace, Name, NotchAt, Piece, Pleat, Row, is_for};
use crate::source::Span;

/// The most pleats, and places in a row, that an entry can be meant to have.
const MOST: i64 = 200;

/// From how far to how far within the stitching line the arrow runs that says which edge is up, in mm: the first that a
/// piece has room for.
const UP: [(f64, f64); 4] = [(40.0, 15.0), (24.0, 8.0), (12.0, 3.0), (5.0, 1.0)];

impl Reckoning<'_> {
    /// The piece with its darts and pleats; what cannot be placed is a finding and left out.
    pub(super) fn shaped(&mut self, piece: &Piece, shape: Shape) -> Shape {
        if piece.darts.is_empty() && piece.pleats.is_empty() {
            return shape;
        }
        let mut darts: Vec<(usize, DartSpec)> = Vec::new();
        for (at, dart) in piece.darts.iter().enumerate() {
            darts.extend(self.dart(dart).map(|spec| (at, spec)));
        }
        let mut pleats: Vec<(usize, PleatSpec)> = Vec::new();
        for (at, pleat) in piece.pleats.iter().enumerate() {
            pleats.extend(self.pleat(pleat).map(|spec| (at, spec)));
        }
        let specs: Vec<DartSpec> = darts.iter().map(|(_, spec)| spec.clone()).collect();
        let folds: Vec<PleatSpec> = pleats.iter().map(|(_, spec)| spec.clone()).collect();
        let mut made = shape.shaped(&specs, &folds);
        for (at, fault) in &made.darts {
            let dart = &piece.darts[darts[*at].0];
            let edge = match &dart.place {
                DartPlace::Edge { edge, .. } => Some(edge),
                DartPlace::Inside { .. } => None,
            };
            self.off(piece, (&dart.name, edge), ("this dart", fault), &made.shape);
        }
        for (at, fault) in &made.pleats {
            let pleat = &piece.pleats[pleats[*at].0];
            self.off(piece, (&pleat.name, Some(&pleat.edge)), ("this pleat", fault), &made.shape);
        }
        made.shape.stand_as(
            (piece.darts.len(), darts.iter().map(|(at, _)| *at).collect()),
            (piece.pleats.len(), pleats.iter().map(|(at, _)| *at).collect()),
        );
        made.shape
    }

    fn off(
        &mut self,
        piece: &Piece,
        (name, edge): (&Name, Option<&Name>),
        (what, fault): (&str, &ShapingFault),
        shape: &Shape,
    ) {
        match (fault, edge) {
            (ShapingFault::NoSuchEdge { .. }, Some(edge)) => self.unknown_edge(piece, edge, shape),
            _ => self.note(OFF_PIECE.at(name.span, fault.message(what)).hint(fault.hint())),
        }
    }

    fn dart(&mut self, dart: &Dart) -> Option<DartSpec> {
        let width = self.length(&dart.width);
        let laid = dart.laid;
        match &dart.place {
            DartPlace::Edge { edge, at, tip } => {
                let at = self.along(at);
                let tip = match tip {
                    DartTip::Point(point) => self.point(point).map(Tip::Point),
                    DartTip::Straight(length) => self.length(length).map(Tip::Straight),
                };
                Some(DartSpec::Edge { edge: edge.text.clone(), at: at?, width: width?, tip: tip?, laid })
            }
            DartPlace::Inside { from, to } => {
                let (from, to) = (self.point(from), self.point(to));
                Some(DartSpec::Inside { from: from?, to: to?, width: width?, laid })
            }
        }
    }

    fn pleat(&mut self, pleat: &Pleat) -> Option<PleatSpec> {
        let (at, depth) = (self.along(&pleat.at), self.length(&pleat.depth));
        let count = match &pleat.count {
            Some(formula) => self.count(formula),
            None => Some(1),
        };
        let apart = pleat.apart.as_ref().map(|formula| self.length(formula));
        let length = pleat.length.as_ref().map(|formula| self.length(formula));
        Some(PleatSpec {
            edge: pleat.edge.text.clone(),
            at: at?,
            depth: depth?,
            fold: pleat.fold,
            count: count?,
            apart: flipped(apart)?,
            length: flipped(length)?,
            laid: pleat.laid,
        })
    }

    /// A place along an edge.
    pub(super) fn along(&mut self, at: &NotchAt) -> Option<Along> {
        let (formula, from_end) = match at {
            NotchAt::Centre => return Some(Along::Centre),
            NotchAt::FromStart(formula) => (formula, false),
            NotchAt::FromEnd(formula) => (formula, true),
        };
        let worked = self.work_out(formula)?;
        let along = self.values.along(formula, from_end);
        if along.is_none() {
            let what = worked.quantity.dimension.name();
            self.note(
                UNIT_MISMATCH
                    .at(formula.span(), format!("{what} stands where a place along an edge should"))
                    .hint("write `centre`, a share such as `1/3`, or a length such as `6 cm`"),
            );
        }
        along
    }

    /// A whole number of things.
    fn count(&mut self, formula: &Expression) -> Option<u32> {
        let quantity = self.work_out(formula)?.quantity;
        let whole = Some(quantity.value).filter(|value| value.is_integer() && quantity.dimension == Dimension::Count);
        let whole = whole.map(Exact::numer);
        let count =
            whole.filter(|count| (1..=i128::from(MOST)).contains(count)).and_then(|count| u32::try_from(count).ok());
        if count.is_none() {
            self.note(
                OUT_OF_RANGE
                    .at(formula.span(), format!("`{}` is no count of things", formula.formula.text.trim()))
                    .hint(format!("write a whole number from 1 to {MOST}")),
            );
        }
        count
    }

    /// Places every mark of a piece; all shapes are known by now.
    pub(super) fn place_marks(&mut self, id: PieceId) {
        let draft = self.values.draft;
        let piece = &draft.facts.pieces[id];
        let placed = piece.marks.iter().map(|mark| self.place_mark(id, piece, mark)).collect();
        self.values.marks.insert(id, placed);
    }

    fn place_mark(&mut self, id: PieceId, piece: &Piece, mark: &Mark) -> Option<MarkAt> {
        for copy in mark.only.iter().filter(|copy| !piece.copies().any(|known| known.text == copy.text)) {
            let known: Vec<&str> = piece.copies().map(|copy| copy.text.as_str()).collect();
            let otherwise = match known.is_empty() {
                true => "give its copies names under `cut:`, such as `outer: [front, back]`, or take `for:` out".into(),
                false => format!("its copies are: {}", known.join(", ")),
            };
            let finding = UNKNOWN_NAME.at(copy.span, format!("`{}` has no copy `{}`", piece.id.text, copy.text));
            self.findings.push(finding.hint(did_you_mean(&copy.text, known.iter().copied(), &otherwise)).everywhere());
        }
        let placed = match &mark.place {
            MarkPlace::Point(point) => MarkAt::Point(self.drawn_point(point)?),
            MarkPlace::Edge { edge, at } => {
                let along = self.along(at);
                let shape = self.values.shapes.get(&id).cloned().flatten()?;
                if shape.edge(&edge.text).is_none() {
                    self.unknown_edge(piece, edge, &shape);
                    return None;
                }
                let Some(point) = shape.place_at(&edge.text, along?) else {
                    return self.mark_off(mark.name.span, format!("this mark lies off the edge `{}`", edge.text));
                };
                MarkAt::Point(Point::new(point.stitching[0], point.stitching[1]))
            }
            MarkPlace::Up(edge) => {
                let shape = self.values.shapes.get(&id).cloned().flatten()?;
                let Some(point) = shape.point_at(&edge.text, Along::Centre) else {
                    self.unknown_edge(piece, edge, &shape);
                    return None;
                };
                let (at, inward) = (Point::from((point.stitching[0], point.stitching[1])), point.inward);
                let inward = Vec2::new(inward[0], inward[1]);
                let ways = UP.map(|(from, to)| MarkAt::Up([at + inward * from, at + inward * to]));
                // A piece too small for it has a short one.
                return ways.into_iter().find(|way| way.lies_on(&shape));
            }
            MarkPlace::Outline { piece, at } => {
                let at = self.drawn_point(at);
                self.outline(piece, at?)?
            }
            MarkPlace::Line { ends: [from, to], row } => {
                let (from, to) = (self.drawn_point(from), self.drawn_point(to));
                let row = row.as_ref().map(|row| self.row(row));
                MarkAt::line([from?, to?], flipped(row)?)
            }
        };
        let shape = self.values.shapes.get(&id)?.as_ref()?;
        if placed.lies_on(shape) {
            return Some(placed);
        }
        self.mark_off(mark.name.span, "this mark does not lie on the piece".to_owned())
    }

    fn mark_off(&mut self, span: Span, message: String) -> Option<MarkAt> {
        self.note(
            OFF_PIECE
                .at(span, message)
                .hint("points are counted in the outline’s own drawing, across and down: check its place in this size"),
        );
        None
    }

    fn drawn_point(&mut self, point: &crate::model::PointAt) -> Option<Point> {
        let [x, y] = self.point(point)?;
        Some(Point::new(to_f64(x), to_f64(y)))
    }

    fn row(&mut self, row: &Row) -> Option<(u32, Option<Exact>, bool)> {
        let count = self.count(&row.count);
        let each = row.each.as_ref().map(|each| self.length(each));
        Some((count?, flipped(each)?, row.along))
    }

    /// Another piece laid with the upper left corner of its stitching line there.
    fn outline(&mut self, name: &Name, at: Point) -> Option<MarkAt> {
        let facts = &self.values.draft.facts;
        let size = self.values.size;
        let found = PieceId::each(&facts.pieces).find(|(_, piece)| piece.id.text == name.text);
        let Some((piece, _)) = found.filter(|(_, piece)| is_for(piece.sizes.as_ref(), size)) else {
            let pieces = facts.pieces.iter().map(|piece| piece.id.text.as_str());
            let hint =
                did_you_mean(&name.text, pieces, "name the piece that is laid there, as it stands under `pieces:`");
            self.note(
                UNKNOWN_NAME.at(name.span, format!("no piece of this size is called `{}`", name.text)).hint(hint),
            );
            return None;
        };
        let line = self.values.shapes.get(&piece)?.as_ref()?.unfolded().1;
        let bounds = line.bounds();
        Some(MarkAt::Outline { piece, line: Affine::translate((at.x - bounds.x0, at.y - bounds.y0)) * line.path })
    }
}

/// What is asked for and known, or not asked for.
fn flipped<T>(asked: Option<Option<T>>) -> Option<Option<T>> {
    match asked {
        Some(found) => found.map(Some),
        None => Some(None),
    }
}

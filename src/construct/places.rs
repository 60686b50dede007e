//! Places along an edge.

use super::fault::OffEdge;
use super::player::Player;
use crate::geometry::Along;
use crate::measure::{Dimension, Exact, to_f64};
use crate::model::Far;
use crate::resolve::{CopyId, EdgeId, MarkAt, PieceId, Placed};

/// How far two corners may lie apart and still be one, in mm.
pub(super) const SAME_CORNER: f64 = 0.5;

/// How far beside the stitching line a mark may lie and still tell a place on the edge, in mm (common practice, no
/// source).
const NEAR: f64 = 6.0;

impl Player<'_> {
    /// How far along an edge a place lies, in mm from its start.
    pub fn place_on(&self, copy: CopyId, edge: EdgeId, placed: &Placed<'_>) -> Result<f64, OffEdge> {
        let (far, from_end) = self.counted(copy, edge, placed)?;
        Ok(if from_end { self.drawn_length(&[(copy, edge)]) - far } else { far })
    }

    /// How far a place lies from the end that one counts from, in mm, and whether that is the edge's end.
    pub fn counted(&self, copy: CopyId, edge: EdgeId, placed: &Placed<'_>) -> Result<(f64, bool), OffEdge> {
        let length = self.drawn_length(&[(copy, edge)]);
        if let Some(mark) = placed.mark {
            return self.mark_on(copy, edge, mark).map(|far| (far, false)).ok_or(OffEdge::MarkElsewhere);
        }
        if let Some(beside) = placed.beside {
            return Ok((0.0, self.lies_at_end(copy, edge, beside)?));
        }
        let from_end = match placed.place.from.as_ref().map(|from| from.text.as_str()) {
            None | Some("start") => false,
            Some("end") => true,
            Some(beside) => self.lies_at_end(copy, edge, beside)?,
        };
        let far = match &placed.place.far {
            Far::Here => 0.0,
            Far::There => length,
            Far::Centre => length / 2.0,
            Far::Notch(number) => {
                let mut notches = self.notches(copy, edge);
                if from_end {
                    notches = notches.iter().rev().map(|far| length - far).collect();
                }
                let found = number.checked_sub(1).and_then(|at| notches.get(at));
                *found.ok_or(OffEdge::NoNotch(notches.len()))?
            }
            Far::Along(_) => match placed.along.map(|along| along.quantity) {
                Some(along) if along.dimension == Dimension::Length => to_f64(along.value),
                Some(along) if along.dimension == Dimension::Count => to_f64(along.value) * length,
                _ => return Err(OffEdge::Follows),
            },
        };
        if !(0.0..=length + SAME_CORNER).contains(&far) {
            return Err(OffEdge::TooFar(length));
        }
        Ok((far, from_end))
    }

    /// Whether the edge `beside` meets an edge at its end, and not at its start.
    pub fn lies_at_end(&self, copy: CopyId, edge: EdgeId, beside: &str) -> Result<bool, OffEdge> {
        let shape = self.edition.values.whole(self.edition.cast[copy].piece).ok_or(OffEdge::Follows)?;
        let ends = |name: &str| {
            let at = |share| shape.point_at(name, Along::Fraction(share)).map(|point| point.at);
            Some([at(Exact::ZERO)?, at(Exact::ONE)?])
        };
        let name = &shape.edges()[edge.at()].name;
        let own = ends(name).ok_or(OffEdge::Follows)?;
        let meets = |name: &str, corner: [f64; 2]| {
            let near = |other: &[f64; 2]| (other[0] - corner[0]).hypot(other[1] - corner[1]) < SAME_CORNER;
            ends(name).is_some_and(|ends| ends.iter().any(near))
        };
        // An edge off the fold stands twice, and is called as it was drawn.
        let called = |corner| {
            let named = shape.edges().iter().filter(|other| other.name == beside || other.drawn == beside);
            named.filter(|other| other.name != *name).any(|other| meets(&other.name, corner))
        };
        match (called(own[0]), called(own[1])) {
            (true, _) => Ok(false),
            (false, true) => Ok(true),
            (false, false) => {
                let others = shape.edges().iter().filter(|other| other.name != *name && !other.on_fold);
                let known = others.filter(|other| own.iter().any(|corner| meets(&other.name, *corner)));
                Err(OffEdge::NotBeside(known.map(|other| other.drawn.clone()).collect()))
            }
        }
    }

    /// How far along an edge a mark lies, in mm from its start; `None` where it lies elsewhere.
    pub fn mark_on(&self, copy: CopyId, edge: EdgeId, (piece, mark): (PieceId, usize)) -> Option<f64> {
        if self.edition.cast[copy].piece != piece {
            return None;
        }
        let (edge, shape) = (self.edition.edge(copy, edge)?, self.edition.values.shape(piece)?);
        let points = match self.edition.values.marks(piece).get(mark)?.as_ref()? {
            MarkAt::Point(point) => vec![*point],
            MarkAt::Line { ends, .. } => ends.to_vec(),
            MarkAt::Outline { .. } | MarkAt::Up(_) => Vec::new(),
        };
        // What is marked on a half is marked on both.
        let halves = points.iter().flat_map(|point| [Some(*point), shape.over_fold().map(|fold| fold * *point)]);
        let near = halves.flatten().map(|point| edge.nearest(point)).min_by(|one, two| one.1.total_cmp(&two.1))?;
        (near.1 <= to_f64(edge.allowance) + NEAR).then_some(near.0)
    }
}

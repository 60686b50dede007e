//! Places along an edge.

use super::corners::{SAME_CORNER, ends, meets};
use super::fault::OffEdge;
use super::player::Player;
use crate::geometry::Edge;
use crate::measure::{Dimension, to_f64};
use crate::model::Far;
use crate::resolve::{CopyId, EdgeId, MarkAt, PieceId, Placed};

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
        let name = &shape.edges()[edge.at()].name;
        let own = ends(shape, name).ok_or(OffEdge::Follows)?;
        // An edge off the fold stands twice, and may be called as it was drawn, where no other edge is called so.
        let exact = shape.edges().iter().any(|other| other.name == beside);
        let called = |corner| {
            let called = |other: &&Edge| if exact { other.name == beside } else { other.drawn == beside };
            let named = shape.edges().iter().filter(called);
            named.filter(|other| other.name != *name).any(|other| meets(shape, &other.name, corner))
        };
        match (called(own[0]), called(own[1])) {
            (true, _) => Ok(false),
            (false, true) => Ok(true),
            (false, false) => {
                let others = shape.edges().iter().filter(|other| other.name != *name && !other.on_fold);
                let known = others.filter(|other| own.iter().any(|corner| meets(shape, &other.name, *corner)));
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
            MarkAt::Outline { .. } => Vec::new(),
        };
        // What is marked on a half is marked on both.
        let halves = points.iter().flat_map(|point| [Some(*point), shape.over_fold().map(|fold| fold * *point)]);
        let near = halves.flatten().map(|point| edge.nearest(point)).min_by(|one, two| one.1.total_cmp(&two.1))?;
        (near.1 <= to_f64(edge.allowance) + NEAR).then_some(near.0)
    }
}

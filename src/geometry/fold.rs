//! The line that a piece cut on the fold is mirrored over.

use kurbo::{Affine, ParamCurve, Point, Shape as _, Vec2};

use super::fault::ShapeFault;
use super::limits::JOIN_WITHIN;
use super::outline::Outline;
use super::ring::{ExactPoint, Seg, to_path};

/// The line of the fold, clockwise along the piece.
#[derive(Debug, Clone, Copy)]
pub(super) struct Fold {
    pub edge: usize,
    pub at: Point,
    pub along: Vec2,
    /// Both ends, where they are known exactly.
    pub ends: Option<[ExactPoint; 2]>,
}

impl Fold {
    /// Reads the fold from the edge that lies on it.
    pub fn of(segs: &[Seg], edge: usize, name: &str) -> Result<Self, ShapeFault> {
        let of_edge = || segs.iter().filter(|seg| seg.edge == Some(edge));
        let ends = of_edge().next().zip(of_edge().next_back());
        let Some((from, to)) = ends.map(|(first, last)| (first.curve.start(), last.curve.end())) else {
            return Err(ShapeFault::Degenerate(name.to_owned()));
        };
        let length = (to - from).hypot();
        // An edge that comes back to its start has no direction to fold along.
        let along = if length > JOIN_WITHIN { (to - from) / length } else { Vec2::new(1.0, 0.0) };
        let exact = |seg: Option<&Seg>| seg.and_then(|seg| seg.ends);
        let ends = exact(of_edge().next()).zip(exact(of_edge().next_back())).map(|(first, last)| [first[0], last[1]]);
        let fold = Self { edge, at: from, along, ends };
        let drawn = to_path(of_edge().map(|seg| &seg.curve), false);
        let upright = (fold.level() * drawn).bounding_box();
        let by = upright.height().max(upright.width() - length);
        if by > JOIN_WITHIN {
            return Err(ShapeFault::FoldNotStraight { edge: name.to_owned(), by });
        }
        Ok(fold)
    }

    /// Makes sure that a line of the piece stays on its side of the fold.
    pub fn check(&self, line: &Outline, name: &str) -> Result<(), ShapeFault> {
        // Walking clockwise along the fold, the piece lies to the right, which is downwards here.
        let by = -(self.level() * &line.path).bounding_box().y0;
        if by > JOIN_WITHIN {
            return Err(ShapeFault::FoldCrossed { edge: name.to_owned(), by });
        }
        Ok(())
    }

    /// Turns the plane so that the fold runs along the x axis from 0.
    fn level(&self) -> Affine {
        Affine::rotate(-self.along.atan2()) * Affine::translate(-self.at.to_vec2())
    }
}

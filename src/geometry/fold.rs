//! Pieces cut on the fold: the half that is drawn, mirrored over its fold edge and joined.

use kurbo::{Affine, ParamCurve, PathSeg, Point, Shape as _, Vec2};

use super::fault::ShapeFault;
use super::limits::JOIN_WITHIN;
use super::outline::Outline;
use super::ring::{Seg, to_path};

/// The line of the fold, clockwise along the piece.
#[derive(Debug, Clone, Copy)]
pub(super) struct Fold {
    edge: usize,
    at: Point,
    along: Vec2,
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
        let fold = Self { edge, at: from, along };
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

    /// The edge that lies on it, by its place among the edges.
    pub fn edge(&self) -> usize {
        self.edge
    }

    /// Turns the plane so that the fold runs along the x axis from 0.
    fn level(&self) -> Affine {
        Affine::rotate(-self.along.atan2()) * Affine::translate(-self.at.to_vec2())
    }

    /// The line of the half and of its mirror image, without the fold between them.
    pub fn unfold(&self, segs: &[Seg]) -> Outline {
        let on_fold = |seg: &&Seg| seg.edge == Some(self.edge);
        let start = segs
            .iter()
            .zip(segs.iter().cycle().skip(1))
            .position(|(seg, next)| on_fold(&seg) && !on_fold(&next))
            .map_or(0, |last| last + 1);
        let half: Vec<PathSeg> =
            segs.iter().cycle().skip(start).take(segs.len()).filter(|seg| !on_fold(seg)).map(|seg| seg.curve).collect();
        let mirror = Affine::reflect(self.at, self.along);
        let mirrored: Vec<PathSeg> = half.iter().rev().map(|curve| mirror * curve.reverse()).collect();
        Outline { path: to_path(half.iter().chain(&mirrored), true) }
    }
}

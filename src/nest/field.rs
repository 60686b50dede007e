//! The outlines of all pieces in all their poses, and for any two of them the shifts at which they
//! overlap, worked out when first asked for.

use super::cuts::Cuts;
use super::eased::eased;
use super::nofit::{Corner, nofit};
use super::outline::Point;
use super::pose::Piece;

/// Whole units in the longest side of any piece: about a ten-thousandth of a millimetre on cloth.
const UNITS: f64 = (1 << 25) as f64;

/// How far an outline may be eased, mm: well below what a hand with scissors keeps to.
const EASED: f64 = 0.05;

/// One pose of a piece; pieces that are alike share theirs.
pub(super) struct Body {
    outline: Vec<Vec<Corner>>,
    /// The width and the height of the grown outline's box.
    pub(super) sides: [f64; 2],
}

/// Every pose of every piece.
pub(super) struct Field {
    pub(super) bodies: Vec<Body>,
    /// The bodies of each piece, by its poses.
    pub(super) poses: Vec<Vec<usize>>,
    /// Whether a piece stays at x = 0.
    pub(super) on_fold: Vec<bool>,
    /// Of each piece, mm².
    pub(super) areas: Vec<f64>,
    /// Nearer than this counts as touching.
    pub(super) touch: f64,
    /// What a whole unit stands for, mm.
    unit: f64,
    nofits: Vec<Option<Box<[Cuts; 2]>>>,
}

impl Field {
    /// Takes the grown outlines as whole units. They are eased where a gap is kept between them: where none is,
    /// they may have to fit exactly.
    pub(super) fn new(pieces: &[Piece], gap: f64) -> Field {
        let lines = pieces.iter().flat_map(|piece| &piece.poses).flat_map(|pose| &pose.outline);
        let longest = lines.flatten().flatten().copied().fold(1e-3, f64::max);
        let most = EASED.min(gap / 8.0);
        // A power of two, so that scaling alone never rounds.
        let mut unit = 1.0;
        while unit * UNITS > longest {
            unit /= 2.0;
        }
        while unit * UNITS < longest {
            unit *= 2.0;
        }
        let mut field = Field {
            bodies: Vec::new(),
            poses: Vec::new(),
            on_fold: pieces.iter().map(|piece| piece.on_fold).collect(),
            areas: pieces.iter().map(|piece| piece.area).collect(),
            touch: unit * 8.0,
            unit,
            nofits: Vec::new(),
        };
        for (at, piece) in pieces.iter().enumerate() {
            if piece.twin < at {
                field.poses.push(field.poses[piece.twin].clone());
                continue;
            }
            let mut poses = Vec::new();
            for pose in &piece.poses {
                let corner = |point: Point| point.map(|number| (number / unit).round() as i32);
                let line = |part: &Vec<Point>| eased(part, most).into_iter().map(corner).collect();
                let outline: Vec<Vec<Corner>> = pose.outline.iter().map(line).collect();
                let most = |axis: usize| outline.iter().flatten().map(|corner| corner[axis]).max().unwrap_or(0);
                let sides = [0, 1].map(|axis| f64::from(most(axis)) * unit);
                poses.push(field.bodies.len());
                field.bodies.push(Body { outline, sides });
            }
            field.poses.push(poses);
        }
        field.nofits.resize_with(field.bodies.len() * field.bodies.len(), || None);
        field
    }

    /// The shifts at which one body overlaps another that stays, cut by lines that stand at an x and by lines
    /// that lie at a y.
    pub(super) fn nofit(&mut self, stays: usize, moves: usize) -> &[Cuts; 2] {
        let at = stays * self.bodies.len() + moves;
        let (bodies, unit) = (&self.bodies, self.unit);
        self.nofits[at].get_or_insert_with(|| Box::new(nofit(&bodies[stays].outline, &bodies[moves].outline, unit)))
    }
}

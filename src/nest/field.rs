//! The outlines of all pieces in all their poses, and for any two of them the shifts at which they
//! overlap, worked out when first asked for.

use super::nofit::{Corner, NoFit};
use super::pose::Piece;

/// Whole units in the longest side of any piece: about a ten-thousandth of a millimetre on cloth.
const UNITS: f64 = (1 << 25) as f64;

/// One pose of a piece; pieces that are alike share theirs.
pub(super) struct Body {
    outline: Vec<Vec<Corner>>,
    /// Of the grown outline's box.
    pub(super) width: f64,
    pub(super) height: f64,
}

/// Every pose of every piece.
pub(super) struct Field {
    pub(super) bodies: Vec<Body>,
    /// The bodies of each piece, by its poses.
    pub(super) poses: Vec<Vec<usize>>,
    /// Whether a piece stays at x = 0.
    pub(super) on_fold: Vec<bool>,
    pub(super) areas: Vec<f64>,
    /// Nearer than this counts as touching.
    pub(super) touch: f64,
    unit: f64,
    nofits: Vec<Option<Box<NoFit>>>,
}

impl Field {
    /// Takes the grown outlines as whole units.
    pub(super) fn new(pieces: &[Piece]) -> Field {
        let outlines = |piece: &Piece| piece.poses.iter().map(|pose| pose.outline.clone()).collect::<Vec<_>>();
        let longest = pieces.iter().flat_map(outlines).flatten().flatten().flatten().fold(0.0, f64::max);
        // A power of two, so that scaling alone never rounds.
        let unit = (longest / UNITS).log2().ceil().exp2();
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
            for outline in outlines(piece) {
                let corner = |point: &[f64; 2]| [(point[0] / unit).round() as i32, (point[1] / unit).round() as i32];
                let outline: Vec<Vec<Corner>> =
                    outline.iter().map(|part| part.iter().map(corner).collect()).collect();
                let most = |axis: usize| outline.iter().flatten().map(|corner| corner[axis]).max().unwrap_or(0);
                let (width, height) = (f64::from(most(0)) * unit, f64::from(most(1)) * unit);
                poses.push(field.bodies.len());
                field.bodies.push(Body { outline, width, height });
            }
            field.poses.push(poses);
        }
        field.nofits.resize_with(field.bodies.len() * field.bodies.len(), || None);
        field
    }

    /// The shifts at which one body overlaps another that stays.
    pub(super) fn nofit(&mut self, stays: usize, moves: usize) -> &NoFit {
        let at = stays * self.bodies.len() + moves;
        let (bodies, unit) = (&self.bodies, self.unit);
        self.nofits[at]
            .get_or_insert_with(|| Box::new(NoFit::new(&bodies[stays].outline, &bodies[moves].outline, unit)))
    }
}

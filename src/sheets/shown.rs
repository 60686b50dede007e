//! What each sheet shows of each piece, as lines alone: by it one knows which sheets a change touches.

use kurbo::{Affine, BezPath, Line};

use super::plan::{SheetPlan, tile_name};
use super::{inside, window};
use crate::draw::Plan;
use crate::figure::svg_data;
use crate::resolve::PieceId;

/// One sheet and the pieces on it.
#[derive(Debug, Clone)]
pub struct ShownSheet {
    /// Its name: row and column.
    pub name: String,
    /// What it shows, piece by piece and size by size.
    pub shows: Vec<ShownPiece>,
}

/// What a sheet shows of a piece in one size.
#[derive(Debug, Clone)]
pub struct ShownPiece {
    /// The piece, by its place in the facts.
    pub piece: PieceId,
    /// The size, by its place in `sizes`.
    pub size: usize,
    /// The lines inside the sheet's own part of the plan, as SVG path data, in mm from its corner.
    pub lines: String,
}

/// Every line of a piece, each with its class.
pub fn lines_of(plan: &Plan) -> Vec<(&'static str, BezPath)> {
    let straight = |line: &Line| {
        let mut path = BezPath::new();
        path.move_to(line.p0);
        path.line_to(line.p1);
        path
    };
    let mut lines = vec![("nb-cut", plan.cutting.clone())];
    lines.extend(plan.has_allowance().then(|| ("nb-sew", plan.stitching.clone())));
    lines.extend(plan.fold.iter().map(|fold| ("nb-fold", fold.clone())));
    lines.extend(plan.notches.iter().map(|notch| ("nb-snip", straight(notch))));
    lines.extend(plan.grain.iter().map(|grain| ("nb-grain", straight(grain))));
    lines.extend(plan.details.iter().filter_map(inside::stroke));
    lines
}

/// What every sheet of a plan shows, in the order of the pages.
pub fn shown(plan: &SheetPlan) -> Vec<ShownSheet> {
    let sheet = |tile: &(usize, usize)| {
        let room = plan.tile(tile.0, tile.1);
        let home = Affine::translate((-room.x0, -room.y0));
        let mut shows = Vec::new();
        for piece in &plan.pieces {
            // A nest shows where to cut, and no seam of any size.
            let nested = plan.sizes.len() > 1 && !piece.once;
            for (size, lines) in &piece.outlines {
                let seen = |(class, path): (&'static str, BezPath)| {
                    let seen = home * window::through(&path, room);
                    (!seen.elements().is_empty()).then(|| format!("{class} {}", svg_data(&seen)))
                };
                let drawn = lines_of(lines).into_iter().filter(|(class, _)| !nested || *class != "nb-sew");
                let lines: Vec<String> = drawn.filter_map(seen).collect();
                if !lines.is_empty() {
                    shows.push(ShownPiece { piece: piece.piece, size: *size, lines: lines.join(";") });
                }
            }
        }
        ShownSheet { name: tile_name(*tile), shows }
    };
    plan.tiles.iter().map(sheet).collect()
}

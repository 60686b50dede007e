//! The plan: every piece of one size, or of all sizes nested, at its place on the joined sheets. What
//! prints sheets and maps reads it; `planning` makes it.

use kurbo::{BezPath, Rect, Shape as _};

use super::paper::SheetPaper;
use super::window;
use crate::draw::Plan;
use crate::model::SheetSettings;
use crate::resolve::PieceId;

/// A piece at its place.
#[derive(Debug, Clone)]
pub struct PlacedPiece {
    /// The piece, by its place in the facts.
    pub piece: PieceId,
    /// Its number on sheets and in the booklet, from 1.
    pub number: usize,
    /// Its lines in each size shown, with the size's place in `sizes`; already at their place.
    pub outlines: Vec<(usize, Plan)>,
    /// The box that holds all of them.
    pub bounds: Rect,
    /// Room for the words beside a piece that is too small to hold them.
    pub beside: Option<Rect>,
    /// Whether it is turned by a quarter.
    pub turned: bool,
    /// Whether it is equal in every size shown, for several things, and printed once for them all.
    pub once: bool,
}

impl PlacedPiece {
    /// Whether any of some sizes has it.
    pub fn is_of(&self, sizes: &[usize]) -> bool {
        self.outlines.iter().any(|(size, _)| sizes.contains(size))
    }

    /// The outlines to draw: one where they are all the same.
    pub(super) fn drawn(&self) -> &[(usize, Plan)] {
        if self.once { &self.outlines[..1] } else { &self.outlines }
    }

    /// Its smallest size: what stands on that lies on every size of a nest.
    pub(super) fn smallest(&self) -> Option<&Plan> {
        let area = |plan: &Plan| plan.cutting.area().abs();
        self.outlines.iter().map(|(_, plan)| plan).min_by(|one, two| area(one).total_cmp(&area(two)))
    }
}

/// All pieces on the joined sheets of one paper.
#[derive(Debug, Clone)]
pub struct SheetPlan {
    /// The paper.
    pub paper: SheetPaper,
    /// The settings of margins and overlap.
    pub settings: SheetSettings,
    /// The sizes shown, by their places in `sizes`.
    pub sizes: Vec<usize>,
    /// The pieces.
    pub pieces: Vec<PlacedPiece>,
    /// The room of the test gauge.
    pub gauge: Rect,
    /// The lines of a nest: the pattern of each by its number, and the sizes that have it. Empty for one size.
    pub key: Vec<(usize, String)>,
    /// The part of the plan that each sheet adds, in mm.
    pub step: (f64, f64),
    /// The sheets to print, row by row: row and column, from 0.
    pub tiles: Vec<(usize, usize)>,
    /// How many sheets a plain grid would take.
    pub naive: usize,
    /// Pieces that do not fit on the paper at all (an endless page takes any length, but not any
    /// width).
    pub too_large: Vec<PieceId>,
}

impl SheetPlan {
    /// The sheets that show something: a line of a piece, its inside, or the gauge.
    pub(super) fn used_tiles(&self) -> Vec<(usize, usize)> {
        let gauge = self.gauge;
        let last = |end: f64, step: f64| ((end - 1e-6) / step).floor().max(0.0) as usize;
        let rooms = self.pieces.iter().flat_map(|piece| [Some(piece.bounds), piece.beside].into_iter().flatten());
        let reach = rooms.fold(gauge, |all, one| all.union(one));
        let mut tiles = Vec::new();
        for row in 0..=last(reach.y1, self.step.1) {
            for column in 0..=last(reach.x1, self.step.0) {
                let tile = self.tile(row, column);
                if tile.intersect(gauge).area() > 0.0 || self.pieces.iter().any(|piece| shows(piece, tile)) {
                    tiles.push((row, column));
                }
            }
        }
        tiles
    }

    /// The pieces that a sheet shows.
    pub(super) fn pieces_on(&self, tile: (usize, usize)) -> impl Iterator<Item = &PlacedPiece> {
        let room = self.tile(tile.0, tile.1);
        self.pieces.iter().filter(move |piece| shows(piece, room))
    }

    /// The sheets that a maker of some of the sizes prints: those that show a piece of theirs, and the one with the
    /// gauge.
    pub fn sheets_of(&self, sizes: &[usize]) -> Vec<String> {
        let own = |tile: &&(usize, usize)| {
            let room = self.tile(tile.0, tile.1);
            let mut pieces = self.pieces.iter().filter(|piece| piece.is_of(sizes));
            self.tiles.first() == Some(*tile) || pieces.any(|piece| shows(piece, room))
        };
        self.tiles.iter().filter(own).map(|tile| tile_name(*tile)).collect()
    }

    /// The part of the plan that a sheet adds.
    pub fn tile(&self, row: usize, column: usize) -> Rect {
        let (x, y) = (column as f64 * self.step.0, row as f64 * self.step.1);
        Rect::new(x, y, x + self.step.0, y + self.step.1)
    }

    /// Rows and columns of the grid that holds all sheets.
    pub fn grid(&self) -> (usize, usize) {
        let rows = self.tiles.iter().map(|(row, _)| row + 1).max().unwrap_or(1);
        let columns = self.tiles.iter().map(|(_, column)| column + 1).max().unwrap_or(1);
        (rows, columns)
    }
}

/// Whether a sheet shows something of a piece, or of the words beside it.
fn shows(piece: &PlacedPiece, tile: Rect) -> bool {
    piece.beside.is_some_and(|room| tile.intersect(room).area() > 0.0)
        || piece.outlines.iter().any(|(_, plan)| meets(&plan.cutting, tile))
}

/// Whether an outline crosses a rectangle, lies in it, or holds it.
fn meets(outline: &BezPath, tile: Rect) -> bool {
    if outline.bounding_box().intersect(tile).area() <= 0.0 {
        return false;
    }
    if outline.contains(tile.center()) {
        return true;
    }
    let mut crosses = false;
    window::segments(outline, &mut |from, to| crosses |= window::clip(from, to, tile).is_some());
    crosses
}

/// A tile's name: a letter for its row, a number for its column.
pub(super) fn tile_name((row, column): (usize, usize)) -> String {
    let mut letters = String::new();
    let mut row = row;
    loop {
        letters.insert(0, char::from(b'A' + u8::try_from(row % 26).unwrap_or(0)));
        if row < 26 {
            break;
        }
        row = row / 26 - 1;
    }
    format!("{letters}{}", column + 1)
}

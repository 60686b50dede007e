//! The page map: the joined sheets seen from above, with the pieces on them. Made from the very plan
//! that the sheets are printed from.

use kurbo::{Affine, BezPath, Shape as _};

use super::plan::{SheetPlan, tile_name};
use crate::figure::{Dresser, escape, svg_data};
use crate::model::{Size, by_view};
use crate::resolve::PieceId;

/// The map of one plan.
#[derive(Debug, Clone)]
pub struct PageMap {
    /// The drawing.
    pub svg: String,
    /// Its width and height on paper, in mm.
    pub size: (f64, f64),
    /// The names of the sheets, in the order of the pages.
    pub sheets: Vec<String>,
    /// Rows and columns of the grid.
    pub grid: (usize, usize),
    /// How many sheets a plain grid would have taken.
    pub naive: usize,
    /// The sheets of each of several things, under its name; none where the plan is for one alone.
    pub lists: Vec<(String, Vec<String>)>,
}

/// The room for a map, in mm.
const ROOM: (f64, f64) = (150.0, 120.0);

/// Draws the map of a plan in the house style.
pub fn page_map(plan: &SheetPlan, names: &dyn Fn(PieceId) -> String, sizes: &[Size], dresser: &Dresser) -> PageMap {
    let (rows, columns) = plan.grid();
    let whole = (columns as f64 * plan.step.0, rows as f64 * plan.step.1);
    let scale = (ROOM.0 / whole.0).min(ROOM.1 / whole.1).min(0.25);
    let rim = 1.0;
    let size = (whole.0 * scale + 2.0 * rim, whole.1 * scale + 2.0 * rim);
    let place = Affine::translate((rim, rim)) * Affine::scale(scale);
    let mut inside = String::new();
    let mut path = |class: &str, path: BezPath| {
        inside.push_str(&format!(r#"<path class="{class}" d="{}"/>"#, svg_data(&(place * path))));
    };
    for piece in &plan.pieces {
        for (_, lines) in &piece.outlines {
            path("nb-piece", lines.cutting.clone());
        }
    }
    for row in 0..rows {
        for column in 0..columns {
            let used = plan.tiles.contains(&(row, column));
            let class = if used { "nb-tile" } else { "nb-tile-left-out" };
            path(class, plan.tile(row, column).to_path(0.1));
        }
    }
    path("nb-seam-line", plan.gauge.to_path(0.1));
    for tile in &plan.tiles {
        let area = plan.tile(tile.0, tile.1);
        let at = place * kurbo::Point::new(area.x0, area.y0);
        inside.push_str(&format!(
            r#"<text class="label nb-strong" x="{:.2}" y="{:.2}">{}</text>"#,
            at.x + 1.0,
            at.y + 3.4,
            tile_name(*tile)
        ));
    }
    for piece in &plan.pieces {
        let name = names(piece.piece);
        let at = place * piece.bounds.center();
        let room = piece.bounds.width() * scale;
        // A piece too narrow for its name carries its number.
        let text = if name.chars().count() as f64 * 1.6 <= room { name } else { piece.number.to_string() };
        inside.push_str(&format!(
            r#"<text class="label" text-anchor="middle" x="{:.2}" y="{:.2}">{}</text>"#,
            at.x,
            at.y + 1.0,
            escape(&text)
        ));
    }
    let root = format!(
        r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {0:.3} {1:.3}" width="{0:.3}mm" height="{1:.3}mm">"#,
        size.0, size.1
    );
    PageMap {
        svg: dresser.dress(&root, &inside),
        size,
        sheets: plan.tiles.iter().map(|tile| tile_name(*tile)).collect(),
        grid: (rows, columns),
        naive: plan.naive,
        lists: sheet_lists(plan, sizes),
    }
}

/// The sheets that a maker of each of several things prints, under its name; none where the plan is for one alone.
pub fn sheet_lists(plan: &SheetPlan, sizes: &[Size]) -> Vec<(String, Vec<String>)> {
    let shown = |view: &Vec<usize>| view.iter().any(|size| plan.sizes.contains(size));
    let views: Vec<Vec<usize>> = by_view(sizes).into_iter().filter(shown).collect();
    if views.len() < 2 {
        return Vec::new();
    }
    let named = |view: &Vec<usize>| {
        let name = sizes[view[0]].view.as_ref()?.name.text.clone();
        Some((name, plan.sheets_of(view)))
    };
    views.iter().filter_map(named).collect()
}

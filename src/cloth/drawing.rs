//! A cutting layout as a drawing: the cloth with its selvedges and its fold, the pieces to scale.

use kurbo::{Affine, BezPath, Point, Rect, Shape as _};

use super::label::{LINE, label};
use super::layout::ClothLayout;
use crate::figure::{Dresser, escape, svg_data};
use crate::resolve::PieceId;

/// The room for a layout, in mm.
const ROOM: (f64, f64) = (150.0, 78.0);
/// Room for the words above and below the cloth, in mm.
const RIM: f64 = 6.0;

/// The cloth that is drawn, in mm: x across it from the fold or the first selvedge, y along it.
fn extent(layout: &ClothLayout) -> Rect {
    let half = layout.bolt.width / 2.0;
    let (left, right) = match (layout.bolt.folded, layout.opened_from) {
        (false, _) => (0.0, layout.bolt.width),
        (true, None) => (0.0, half),
        (true, Some(_)) => (-half, half),
    };
    Rect::new(left, 0.0, right, layout.length.max((right - left) * 0.2))
}

/// The scale at which all layouts of one size fit their room: one for all, so that they compare.
pub fn cloth_scale(layouts: &[ClothLayout]) -> f64 {
    layouts
        .iter()
        .map(extent)
        .map(|cloth| (ROOM.0 / cloth.height()).min((ROOM.1 - 2.0 * RIM) / cloth.width()))
        .fold(0.25, f64::min)
}

/// Draws a layout with the cloth's length running to the right; gives the drawing and its size in mm.
pub fn draw_cloth(
    layout: &ClothLayout,
    scale: f64,
    names: &dyn Fn(PieceId) -> String,
    numbers: &dyn Fn(PieceId) -> usize,
    dresser: &Dresser,
) -> (String, (f64, f64)) {
    let cloth = extent(layout);
    let size = (cloth.height() * scale + 2.0, cloth.width() * scale + 2.0 * RIM);
    // x across becomes down, y along becomes right; fold or first selvedge at the foot.
    let place = Affine::new([0.0, -scale, scale, 0.0, 1.0, RIM + cloth.x1 * scale]);
    let mut inside = String::new();
    let mut path = |class: &str, path: &BezPath| {
        inside.push_str(&format!(r#"<path class="{class}" d="{}"/>"#, svg_data(&(place * path.clone()))));
    };
    for (class, line) in cloth_lines(layout, cloth) {
        path(class, &line);
    }
    for piece in &layout.pieces {
        path("nb-piece", &piece.outline);
    }
    for piece in &layout.pieces {
        let outline = place * piece.outline.clone();
        let Some((lines, middle)) = label(layout, piece, &outline, &names(piece.piece), numbers(piece.piece)) else {
            continue;
        };
        for (at, text) in lines.iter().enumerate() {
            let down = (at as f64 - (lines.len() - 1) as f64 / 2.0) * LINE;
            inside.push_str(&format!(
                r#"<text class="label" text-anchor="middle" x="{:.2}" y="{:.2}">{}</text>"#,
                middle.x,
                middle.y + 1.0 + down,
                escape(text)
            ));
        }
    }
    for (text, at) in edge_names(layout, cloth) {
        let at = place * at;
        let y = if text.starts_with("selvedge") && at.y < RIM + 0.1 { at.y - 1.6 } else { at.y + 4.0 };
        inside.push_str(&format!(r#"<text class="label" x="{:.2}" y="{y:.2}">{text}</text>"#, at.x));
    }
    let root = format!(
        r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {0:.3} {1:.3}" width="{0:.3}mm" height="{1:.3}mm">"#,
        size.0, size.1
    );
    (dresser.dress(&root, &inside), size)
}

/// The cloth, its selvedges and its fold, each with its class.
fn cloth_lines(layout: &ClothLayout, cloth: Rect) -> Vec<(&'static str, BezPath)> {
    let line = |x: f64, from: f64, to: f64| {
        let mut line = BezPath::new();
        line.move_to(Point::new(x, from));
        line.line_to(Point::new(x, to));
        line
    };
    let end = cloth.y1;
    let foot = if layout.bolt.folded { "fold" } else { "nb-selvedge" };
    let mut lines = match layout.opened_from {
        None => vec![("nb-cloth", cloth.to_path(0.1)), (foot, line(0.0, 0.0, end))],
        Some(from) => vec![
            ("nb-cloth", Rect::new(0.0, 0.0, cloth.x1, from).to_path(0.1)),
            ("nb-cloth", Rect::new(cloth.x0, from, cloth.x1, end).to_path(0.1)),
            ("fold", line(0.0, 0.0, from)),
            ("nb-selvedge", line(cloth.x0, from, end)),
        ],
    };
    lines.push(("nb-selvedge", line(cloth.x1, 0.0, end)));
    lines
}

/// What the edges of the cloth are called, each at its beginning.
fn edge_names(layout: &ClothLayout, cloth: Rect) -> Vec<(&'static str, Point)> {
    let foot = if layout.bolt.folded { "fold" } else { "selvedge" };
    let head = if layout.bolt.folded { "selvedges" } else { "selvedge" };
    let mut names = vec![(head, Point::new(cloth.x1, 0.0)), (foot, Point::new(0.0, 0.0))];
    if let Some(from) = layout.opened_from {
        names.push(("selvedge", Point::new(cloth.x0, from)));
    }
    names
}

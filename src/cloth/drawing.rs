//! A cutting layout as a drawing: the cloth with its selvedges and its fold, the pieces to scale.

use kurbo::{Affine, BezPath, Point, Shape as _};

use super::layout::ClothLayout;
use crate::figure::{Dresser, escape, svg_data};
use crate::resolve::PieceId;

/// The room for a layout, in mm.
const ROOM: (f64, f64) = (150.0, 78.0);
/// Room for the words above and below the cloth, in mm.
const RIM: f64 = 6.0;

/// How far the cloth that is drawn reaches across and along, in mm.
fn extent(layout: &ClothLayout) -> (f64, f64) {
    let across = if layout.bolt.folded { layout.bolt.width / 2.0 } else { layout.bolt.width };
    (across, layout.length.max(across * 0.2))
}

/// The scale at which all layouts of one size fit their room: one for all, so that they compare.
pub fn cloth_scale(layouts: &[ClothLayout]) -> f64 {
    layouts
        .iter()
        .map(extent)
        .map(|(across, length)| (ROOM.0 / length).min((ROOM.1 - 2.0 * RIM) / across))
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
    let (across, length) = extent(layout);
    let size = (length * scale + 2.0, across * scale + 2.0 * RIM);
    // x across becomes down, y along becomes right; fold or first selvedge at the foot.
    let place = Affine::new([0.0, -scale, scale, 0.0, 1.0, RIM + across * scale]);
    let mut inside = String::new();
    let mut path = |class: &str, path: &BezPath| {
        inside.push_str(&format!(r#"<path class="{class}" d="{}"/>"#, svg_data(&(place * path.clone()))));
    };
    path("nb-cloth", &kurbo::Rect::new(0.0, 0.0, across, length).to_path(0.1));
    let edge = |x: f64| {
        let mut line = BezPath::new();
        line.move_to(Point::new(x, 0.0));
        line.line_to(Point::new(x, length));
        line
    };
    path("nb-selvedge", &edge(across));
    path(if layout.bolt.folded { "fold" } else { "nb-selvedge" }, &edge(0.0));
    for piece in &layout.pieces {
        path("nb-piece", &piece.outline);
    }
    for piece in &layout.pieces {
        let bounds = (place * piece.outline.clone()).bounding_box();
        let name = names(piece.piece);
        let text =
            if name.chars().count() as f64 * 1.6 <= bounds.width() { name } else { numbers(piece.piece).to_string() };
        if bounds.width() > 1.5 && bounds.height() > 1.5 {
            inside.push_str(&format!(
                r#"<text class="label" text-anchor="middle" x="{:.2}" y="{:.2}">{}</text>"#,
                bounds.center().x,
                bounds.center().y + 1.0,
                escape(&text)
            ));
        }
    }
    let foot = if layout.bolt.folded { "fold" } else { "selvedge" };
    let head = if layout.bolt.folded { "selvedges" } else { "selvedge" };
    for (text, y) in [(head, RIM - 1.6), (foot, size.1 - RIM + 4.0)] {
        inside.push_str(&format!(r#"<text class="label" x="1" y="{y:.2}">{text}</text>"#));
    }
    let root = format!(
        r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {0:.3} {1:.3}" width="{0:.3}mm" height="{1:.3}mm">"#,
        size.0, size.1
    );
    (dresser.dress(&root, &inside), size)
}

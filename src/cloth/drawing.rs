//! A cutting layout as a drawing: the cloth with its selvedges and its fold, the pieces to scale.

use kurbo::{Affine, BezPath, Point, Rect, Shape as _, Vec2};

use super::label::{LINE, Label, label, room};
use super::layout::ClothLayout;
use crate::figure::{Dresser, escape, svg_data};
use crate::model::HouseWords;
use crate::resolve::PieceId;

/// The room for a layout, in mm.
const ROOM: (f64, f64) = (150.0, 86.0);
/// Room for the words above and below the cloth, and for its width at its end, in mm.
const RIM: f64 = 9.5;
const END: f64 = 6.0;

/// What is written on a layout beside the names of its pieces.
#[derive(Debug, Clone, Copy)]
pub struct ClothWords<'a> {
    /// The width of the cloth as it is bought.
    pub width: &'a str,
    /// The length that the pieces take.
    pub length: &'a str,
    /// Whether its pile or print runs one way.
    pub nap: bool,
    /// Whether it has a grain; without one it has no sides either, as wadding.
    pub grain: bool,
    /// The words of the house.
    pub house: &'a HouseWords,
}

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
        .map(|cloth| ((ROOM.0 - END) / cloth.height()).min((ROOM.1 - 2.0 * RIM) / cloth.width()))
        .fold(0.25, f64::min)
}

/// Draws a layout with the cloth's length running to the right; gives the drawing and its size in mm.
pub fn draw_cloth(
    layout: &ClothLayout,
    scale: f64,
    words: ClothWords<'_>,
    names: &dyn Fn(PieceId) -> String,
    numbers: &dyn Fn(PieceId) -> usize,
    dresser: &Dresser,
) -> (String, (f64, f64)) {
    let cloth = extent(layout);
    // Short cloth leaves room for its words, which then stand in two lines.
    let needed = cloth.height() * scale + 2.0 + END;
    let short = needed < LEAST && layout.opened_from.is_none();
    let (least, head) = if short { (LEAST_IN_TWO, RIM + LINE) } else { (LEAST, RIM) };
    let size = (needed.max(least), cloth.width() * scale + head + RIM);
    // x across becomes down, y along becomes right; fold or first selvedge at the foot.
    let place = Affine::new([0.0, -scale, scale, 0.0, 1.0, head + cloth.x1 * scale]);
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
    let outlines: Vec<BezPath> = layout.pieces.iter().map(|piece| place * piece.outline.clone()).collect();
    let sheet = Rect::new(0.0, head - 1.0, size.0, size.1 - RIM + 1.0);
    let mut written: Vec<Rect> = outlines.iter().map(|outline| outline.bounding_box()).collect();
    for (piece, outline) in layout.pieces.iter().zip(&outlines) {
        let (name, number) = (names(piece.piece), numbers(piece.piece));
        let label = label(layout, piece, outline, (&name, number, words.house), (sheet, &written));
        if label.leader.is_some() {
            written.push(room(&label.lines, label.middle));
        }
        inside.push_str(&told(&label));
    }
    inside.push_str(&edge_names(layout, cloth, place, words.house));
    inside.push_str(&measures(layout, place.transform_rect_bbox(cloth), words, short));
    let root = format!(
        r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {0:.3} {1:.3}" width="{0:.3}mm" height="{1:.3}mm">"#,
        size.0, size.1
    );
    (dresser.dress(&root, &inside), size)
}

/// The least width of a drawing, in mm: that of its words, in one line and in two.
const LEAST: f64 = 62.0;
const LEAST_IN_TWO: f64 = 44.0;

fn text(at: Point, anchor: &str, more: &str, words: &str) -> String {
    let words = escape(words);
    format!(r#"<text class="label" text-anchor="{anchor}" x="{:.2}" y="{:.2}"{more}>{words}</text>"#, at.x, at.y)
}

/// A label with its leader.
fn told(label: &Label) -> String {
    let mut out = String::new();
    if let Some(heart) = label.leader {
        let room = room(&label.lines, label.middle);
        let from = Point::new(heart.x.clamp(room.x0, room.x1), heart.y.clamp(room.y0, room.y1));
        let line = format!("M{:.2},{:.2}L{:.2},{:.2}", from.x, from.y, heart.x, heart.y);
        out.push_str(&format!(r#"<path class="nb-fine" d="{line}"/>"#));
        out.push_str(&format!(r#"<circle class="nb-ink" cx="{:.2}" cy="{:.2}" r="0.5"/>"#, heart.x, heart.y));
    }
    for (at, line) in label.lines.iter().enumerate() {
        let down = (at as f64 - (label.lines.len() - 1) as f64 / 2.0) * LINE;
        out.push_str(&text(Point::new(label.middle.x, label.middle.y + 1.0 + down), "middle", "", line));
    }
    out
}

/// How wide and how long the cloth is, which way its grain and its nap run, and which side lies up. `drawn` is the cloth
/// on paper, `short` whether the words stand in two lines.
fn measures(layout: &ClothLayout, drawn: Rect, words: ClothWords<'_>, short: bool) -> String {
    let line = |class: &str, from: Point, to: Point| {
        format!(r#"<path class="{class}" d="M{:.2},{:.2}L{:.2},{:.2}"/>"#, from.x, from.y, to.x, to.y)
    };
    let mut out = String::new();
    let foot = drawn.y1 + 5.6;
    out.push_str(&line("dimension", Point::new(drawn.x0, foot), Point::new(drawn.x1, foot)));
    let middle = drawn.center().x.max(drawn.x0 + 12.0);
    out.push_str(&text(Point::new(middle, foot + 3.0), "middle", "", words.length));
    // Folded cloth is drawn as it lies, half as wide as it is bought.
    let end = Point::new(drawn.x1 + 3.4, drawn.center().y);
    let side = |y: f64| Point::new(drawn.x1 + 1.6, y);
    out.push_str(&line("dimension", side(drawn.y0), side(drawn.y1)));
    let half = layout.bolt.folded && layout.opened_from.is_none();
    let width = match half {
        true => words.house.fill("cloth_half", &[("width", words.width)]),
        false => words.width.to_owned(),
    };
    let turned = format!(r#" transform="rotate(90 {:.2} {:.2})""#, end.x, end.y);
    out.push_str(&text(end, "middle", &turned, &width));
    if !words.grain {
        return out;
    }
    let low = drawn.y0 - 5.8;
    let top = if short { low - LINE } else { low };
    let reach = (drawn.width() * 0.3).clamp(10.0, 26.0);
    out.push_str(&line(
        "nb-grain-line",
        Point::new(drawn.x0 + 1.0, top - 1.0),
        Point::new(drawn.x0 + reach, top - 1.0),
    ));
    let side = match (layout.bolt.folded, layout.opened_from) {
        (false, _) => "cloth_right_side",
        (true, None) => "cloth_wrong_side",
        (true, Some(_)) => "cloth_opened_out",
    };
    let grain = words.house.say(if words.nap { "cloth_grain_one_way" } else { "cloth_grain" });
    let (side, after) = (words.house.say(side), Point::new(drawn.x0 + reach + 1.6, top));
    if short {
        out.push_str(&text(after, "start", "", &grain));
        out.push_str(&text(Point::new(drawn.x0 + 1.0, low), "start", "", &side));
    } else {
        out.push_str(&text(after, "start", "", &format!("{grain} · {side}")));
    }
    out
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
fn edge_names(layout: &ClothLayout, cloth: Rect, place: Affine, house: &HouseWords) -> String {
    let foot = if layout.bolt.folded { "cloth_fold" } else { "cloth_selvedge" };
    let head = if layout.bolt.folded && layout.opened_from.is_none_or(|from| from > 0.0) {
        "cloth_selvedges"
    } else {
        "cloth_selvedge"
    };
    let above = |along: f64| place * Point::new(cloth.x1, along) + Vec2::new(0.0, -1.6);
    let below = |across: f64, along: f64| place * Point::new(across, along) + Vec2::new(0.0, 3.6);
    let mut out = text(above(0.0), "start", "", &house.say(head));
    out.push_str(&text(below(0.0, 0.0), "start", "", &house.say(foot)));
    if let Some(from) = layout.opened_from {
        out.push_str(&text(below(cloth.x0, from), "start", "", &house.say("cloth_selvedge")));
    }
    out
}

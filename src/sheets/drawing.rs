//! Sheets as drawings, one a page, in mm at true size.

use kurbo::{Affine, BezPath, Point, Rect};

use super::frame::{self, Frame};
use super::labels::{self, Words};
use super::plan::{SheetPlan, tile_name};
use super::{gauge, inside, window};
use crate::figure::svg_data;
use crate::model::{by_view, spoken_sizes};
use crate::resolve::Edition;

/// One page.
#[derive(Debug, Clone)]
pub struct Page {
    /// The drawing, as large as the page.
    pub svg: String,
    /// Its name: row and column.
    pub name: String,
    /// What it shows, in words, for those who cannot see it.
    pub alt: String,
}

/// All pages of one plan.
#[derive(Debug, Clone)]
pub struct SheetSet {
    /// Width and height of each page, in mm.
    pub size: (f64, f64),
    /// The pages, the one with the gauge first.
    pub pages: Vec<Page>,
}

/// The longest page that readers open, in mm: 14,400 points of 1/72 in (ISO 32000-1, annex C).
pub(super) const LONGEST: f64 = 14_400.0 / 72.0 * 25.4;

/// Draws every sheet of a plan; `None` when a page would be longer than readers open.
pub fn draw_sheets(plan: &SheetPlan, editions: &[&Edition<'_>], title: &str, edition: &str) -> Option<SheetSet> {
    let (width, height) = plan.paper.size();
    let margin = plan.paper.margin(&plan.settings);
    let height = height.unwrap_or(plan.step.1 + 2.0 * margin);
    if height > LONGEST {
        return None;
    }
    let mut pages = Vec::new();
    let words = all_words(plan, editions);
    let views = editions.first().map_or_else(Vec::new, |edition| by_view(&edition.draft.facts.sizes));
    for (at, tile) in plan.tiles.iter().enumerate() {
        let seen = frame::window(plan, *tile);
        let place = Affine::translate((margin - seen.x0, margin - seen.y0));
        let frame = frame::frame(plan, *tile);
        let foot = foot(plan, *tile, at, title, edition, editions);
        let sheet = Sheet { plan, seen, place, views: &views };
        pages.push(Page {
            svg: sheet.draw((width, height), &frame, &words, &foot, at == 0),
            name: tile_name(*tile),
            alt: format!("Pattern sheet {}, {} of {}", tile_name(*tile), at + 1, plan.tiles.len()),
        });
    }
    Some(SheetSet { size: (width, height), pages })
}

fn all_words(plan: &SheetPlan, editions: &[&Edition<'_>]) -> Vec<Words> {
    let mut words: Vec<Words> = plan.pieces.iter().flat_map(|piece| labels::words(plan, piece, editions)).collect();
    for (x, y, text, strong) in gauge::words(plan.tiles.len()) {
        words.push(Words { at: Point::new(plan.gauge.0 + x, plan.gauge.1 + y), text, size: 3.1, strong });
    }
    words
}

/// The line at the foot: which sheet of what.
fn foot(
    plan: &SheetPlan,
    tile: (usize, usize),
    at: usize,
    title: &str,
    edition: &str,
    editions: &[&Edition<'_>],
) -> String {
    let sizes = sizes_at(plan, tile, editions);
    let place = if plan.tiles.len() > 1 {
        format!(
            "sheet {}: row {}, column {}",
            tile_name(tile),
            tile_name((tile.0, 0)).trim_end_matches('1'),
            tile.1 + 1
        )
    } else {
        "one sheet".to_owned()
    };
    format!("{title}, {} · edition {edition} · {place} · page {} of {}", sizes, at + 1, plan.tiles.len())
}

/// The sizes that need a sheet, thing by thing.
fn sizes_at(plan: &SheetPlan, tile: (usize, usize), editions: &[&Edition<'_>]) -> String {
    let Some(facts) = editions.first().map(|edition| &edition.draft.facts) else { return String::new() };
    let shown: Vec<usize> = editions.iter().map(|edition| edition.size()).collect();
    let mut needed = Vec::new();
    for view in by_view(&facts.sizes) {
        let own: Vec<usize> = view.into_iter().filter(|size| shown.contains(size)).collect();
        if plan.sheets_of(&own).contains(&tile_name(tile)) {
            needed.extend(own);
        }
    }
    spoken_sizes(&facts.sizes, if needed.is_empty() { &shown } else { &needed })
}

/// The band at the lower edge of a window that the foot line has to itself, in mm.
const FOOT: f64 = 4.6;

/// One sheet while it is drawn.
struct Sheet<'a> {
    plan: &'a SheetPlan,
    seen: Rect,
    place: Affine,
    /// The sizes of each thing.
    views: &'a [Vec<usize>],
}

impl Sheet<'_> {
    fn draw(&self, size: (f64, f64), frame: &Frame, words: &[Words], foot: &str, first: bool) -> String {
        let mut drawn = String::new();
        // Words lie under the lines: their white rims never break one.
        for word in words.iter().chain(&frame.words) {
            self.word(word, &mut drawn);
        }
        for piece in &self.plan.pieces {
            let nested = self.plan.sizes.len() > 1 && !piece.once;
            for (size, lines) in piece.drawn() {
                // A line pattern for each size, told apart without colour.
                let pattern =
                    if nested { format!("nb-cut nb-size-{}", self.nth(*size) % 8) } else { "nb-cut".to_owned() };
                self.path(&pattern, &lines.cut, &mut drawn);
                if lines.has_allowance() && !nested {
                    self.path("nb-sew", &lines.sewn, &mut drawn);
                }
                for fold in lines.fold.iter() {
                    self.path("nb-fold", fold, &mut drawn);
                }
                for (class, path) in lines.details.iter().filter_map(inside::stroke) {
                    self.path(class, &path, &mut drawn);
                }
                for notch in &lines.notches {
                    self.path("nb-snip", &line(notch.p0, notch.p1), &mut drawn);
                }
            }
            // One bracket stands for all sizes of a nest.
            if let Some((bracket, _)) = piece.smallest().and_then(inside::bracket) {
                self.path("nb-bracket", &bracket, &mut drawn);
            }
            if let Some(grain) = piece.outlines.first().and_then(|(_, lines)| lines.grain) {
                self.path("nb-grain", &with_heads(grain), &mut drawn);
            }
        }
        if first {
            self.path("nb-gauge", &gauge::lines(self.plan.gauge), &mut drawn);
        }
        self.path("nb-joint", &frame.joints, &mut drawn);
        self.path("nb-joint-mark", &frame.marks, &mut drawn);
        let (width, height) = size;
        let name = self.foot(foot);
        format!(
            r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width:.3} {height:.3}" width="{width:.3}mm" height="{height:.3}mm"><style>{STYLE}</style>{drawn}{name}</svg>"#
        )
    }

    /// The place of a size among those of its thing.
    fn nth(&self, size: usize) -> usize {
        self.views.iter().find_map(|view| view.iter().position(|own| *own == size)).unwrap_or(size)
    }

    /// A path, cut at the window's edge.
    fn path(&self, class: &str, path: &BezPath, into: &mut String) {
        let seen = self.place * window::through(path, self.seen);
        if !seen.elements().is_empty() {
            into.push_str(&format!(r#"<path class="{class}" d="{}"/>"#, svg_data(&seen)));
        }
    }

    /// Words that lie on this sheet; those that a joint cuts are on both, each up to its edge.
    fn word(&self, words: &Words, into: &mut String) {
        let wide = words.text.chars().count() as f64 * words.size * 0.62;
        let room = Rect::new(words.at.x, words.at.y - words.size, words.at.x + wide, words.at.y + words.size * 0.3);
        // Words are never cut: they stand on the sheet that has the most of them.
        if room.intersect(self.seen).area() < room.area() * 0.5 {
            return;
        }
        // Nor do they reach over the window's edge, where a printer would cut them.
        let inside = |at: f64, low: f64, high: f64| at.min(high).max(low);
        let at = Point::new(
            inside(words.at.x, self.seen.x0 + 0.5, self.seen.x1 - wide - 0.5),
            inside(words.at.y, self.seen.y0 + words.size + 0.5, self.seen.y1 - words.size * 0.3 - FOOT),
        );
        let at = self.place * at;
        let class = if words.strong { "nb-words nb-strong" } else { "nb-words" };
        into.push_str(&format!(
            r#"<text class="{class}" font-size="{:.2}" x="{:.2}" y="{:.2}">{}</text>"#,
            words.size,
            at.x,
            at.y,
            escape(&words.text)
        ));
    }

    /// The foot line, inside the window: many printers leave what is below it white.
    fn foot(&self, foot: &str) -> String {
        let at = self.place * Point::new(self.seen.x0 + 7.0, self.seen.y1 - 1.4);
        format!(r#"<text class="nb-words" font-size="2.4" x="{:.2}" y="{:.2}">{}</text>"#, at.x, at.y, escape(foot))
    }
}

fn line(from: Point, to: Point) -> BezPath {
    let mut path = BezPath::new();
    path.move_to(from);
    path.line_to(to);
    path
}

/// A grain line with a head at each end.
fn with_heads(grain: kurbo::Line) -> BezPath {
    let mut path = line(grain.p0, grain.p1);
    let along = (grain.p1 - grain.p0).normalize();
    let across = kurbo::Vec2::new(-along.y, along.x);
    for (end, back) in [(grain.p0, along), (grain.p1, -along)] {
        path.move_to(end + back * 3.0 + across * 1.4);
        path.line_to(end);
        path.line_to(end + back * 3.0 - across * 1.4);
    }
    path
}

fn escape(words: &str) -> String {
    words.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;")
}

/// Hairlines, told apart by pattern; nothing is filled.
const STYLE: &str = "\
path{fill:none;stroke:#000;stroke-width:0.3;stroke-linejoin:miter;stroke-linecap:butt}\
.nb-cut{stroke-width:0.35}\
.nb-sew{stroke-width:0.18;stroke-dasharray:2.4 1.6;stroke:#444}\
.nb-fold{stroke-width:0.3;stroke-dasharray:8 2 2 2}\
.nb-bracket{stroke-width:0.45}\
.nb-dart{stroke-width:0.28;stroke-dasharray:2.4 1.2}\
.nb-inner-fold{stroke-width:0.23;stroke-dasharray:6 1.5 1.5 1.5}\
.nb-onto{stroke-width:0.23}\
.nb-arrow,.nb-dot{stroke-width:0.4}\
.nb-placed{stroke-width:0.32;stroke-dasharray:4 2}\
.nb-hole{stroke-width:0.4}\
.nb-snip{stroke-width:0.5}\
.nb-grain{stroke-width:0.25}\
.nb-gauge{stroke-width:0.2}\
.nb-joint{stroke-width:0.15;stroke-dasharray:1 2;stroke:#555}\
.nb-joint-mark{stroke-width:0.25}\
.nb-size-1{stroke-dasharray:7 2}\
.nb-size-2{stroke-dasharray:3 1.6}\
.nb-size-3{stroke-dasharray:9 1.8 1.8 1.8}\
.nb-size-4{stroke-dasharray:1.2 1.4}\
.nb-size-5{stroke-dasharray:9 1.6 1.2 1.6 1.2 1.6}\
.nb-size-6{stroke-dasharray:14 3}\
.nb-size-7{stroke-dasharray:4 1.4 0.8 1.4}\
text{font-family:'Noto Sans';fill:#000;stroke:#fff;stroke-width:0.8;paint-order:stroke;stroke-linejoin:round}\
.nb-strong{font-weight:700}";

//! One sheet as a drawing: the pieces, the words and the frame seen through its window.

use kurbo::{Affine, BezPath, Point, Rect, Vec2};

use super::crowd::Crowd;
use super::face::{Face, is_beam, style, width};
use super::frame::Frame;
use super::labels::Words;
use super::names::Names;
use super::plan::{PlacedPiece, SheetPlan};
use super::strokes::Stroke;
use super::{gauge, inside, window};
use crate::figure::svg_data;
use crate::model::HouseWords;

/// A piece as it is drawn on every sheet.
pub(super) struct Drawn<'a> {
    pub piece: &'a PlacedPiece,
    /// Whether its sizes lie over one another, each with its own line.
    pub nested: bool,
    pub strokes: Vec<Stroke>,
    pub folds: Vec<Stroke>,
}

/// One sheet while it is drawn.
pub(super) struct Sheet<'a> {
    pub plan: &'a SheetPlan,
    /// What it adds to the plan, and what it shows.
    pub area: Rect,
    pub seen: Rect,
    pub place: Affine,
    /// The sizes of each thing.
    pub views: &'a [Vec<usize>],
    pub face: &'a Face,
    pub house: &'a HouseWords,
}

impl Sheet<'_> {
    pub(super) fn draw(
        &self,
        size: (f64, f64),
        pieces: &[Drawn<'_>],
        frame: &Frame,
        (words, names): (&[Words], &Names),
        foot: String,
        first: bool,
    ) -> String {
        let mut drawn = String::new();
        if is_beam(self.plan.paper) {
            self.path("nb-grid", &grid(self.seen), &mut drawn);
        }
        // Words lie under the lines: their white rims never break one.
        words.iter().for_each(|word| self.word(word, &mut drawn));
        pieces.iter().for_each(|piece| self.piece(piece, &mut drawn));
        self.path("nb-leader", &names.leaders, &mut drawn);
        self.path("nb-leader-dot", &names.dots, &mut drawn);
        if first {
            self.gauge(&mut drawn);
        }
        self.path("nb-joint", &frame.joints, &mut drawn);
        self.path("nb-joint-mark", &frame.marks, &mut drawn);
        let (width, height) = size;

        let style = style(self.plan.paper);
        format!(
            r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width:.3} {height:.3}" width="{width:.3}mm" height="{height:.3}mm"><style>{style}</style>{drawn}{foot}</svg>"#
        )
    }

    fn piece(&self, own: &Drawn<'_>, drawn: &mut String) {
        let piece = own.piece;
        for stroke in &own.strokes {
            self.path(&self.class(stroke, own.nested), &stroke.path, drawn);
        }
        for fold in &own.folds {
            self.path("nb-fold", &fold.path, drawn);
        }
        for (_, lines) in piece.drawn() {
            if lines.has_allowance() && !own.nested {
                self.path("nb-sew", &lines.sewn, drawn);
            }
            for (class, path) in lines.details.iter().filter_map(inside::stroke) {
                self.path(class, &path, drawn);
            }
            for notch in &lines.notches {
                self.path("nb-snip", &line(notch.p0, notch.p1), drawn);
            }
        }
        // One bracket stands for all sizes of a nest.
        if let Some((bracket, _)) = piece.smallest().and_then(inside::bracket) {
            self.path("nb-bracket", &bracket, drawn);
        }
        if let Some(grain) = piece.outlines.first().and_then(|(_, lines)| lines.grain) {
            self.path("nb-grain", &with_heads(grain), drawn);
        }
    }

    /// A line pattern for each size, told apart without colour; what several sizes share is whole.
    fn class(&self, stroke: &Stroke, nested: bool) -> String {
        if !nested {
            return "nb-cut".to_owned();
        }
        let sizes = stroke.sizes.iter().map(|size| format!(" nb-size-{}", self.nth(*size) % 8)).collect::<String>();
        let shared = if stroke.sizes.len() > 1 { " nb-shared" } else { "" };
        format!("nb-cut{sizes}{shared}")
    }

    fn gauge(&self, drawn: &mut String) {
        let (plan, corner) = (self.plan, self.plan.gauge.origin());
        self.path("nb-gauge", &gauge::lines(plan.paper, corner), drawn);
        let key = gauge::key_lines(&plan.key, self.house);
        for ((pattern, _), (sample, _)) in key.iter().zip(gauge::key_places(plan.paper, &key)) {
            let class = match pattern {
                Some(pattern) => format!("nb-size-{} nb-key", pattern % 8),
                None => "nb-key-shared".to_owned(),
            };
            self.path(&class, &line(corner + sample.p0.to_vec2(), corner + sample.p1.to_vec2()), drawn);
        }
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

    /// Words that lie on this sheet, at their place on it. They are never cut: they stand on the sheet that has the
    /// most of them, and the lines of a block on that of its middle.
    pub(super) fn settled(&self, words: &Words) -> Option<Words> {
        let wide = words.text.chars().count() as f64 * words.size * 0.62;
        let own = Rect::new(words.at.x, words.at.y - words.size, words.at.x + wide, words.at.y + words.size * 0.3);
        let here = match words.block {
            Some(block) => self.area.contains(block.center()),
            None => own.intersect(self.seen).area() >= own.area() * 0.5,
        };
        if !here {
            return None;
        }
        // Nor do they reach over the window's edge, where a printer would cut them, or over the foot line.
        let room = words.block.unwrap_or(own);
        let (right, foot) = (self.seen.x1 - 0.5, self.seen.y1 - self.face.foot.1);
        let shift = Vec2::new(
            (right - room.x1).min(0.0).max(self.seen.x0 + 0.5 - room.x0),
            (foot - room.y1).min(0.0).max(self.seen.y0 + 0.5 - room.y0),
        );
        Some(Words { at: words.at + shift, ..words.clone() })
    }

    fn word(&self, words: &Words, into: &mut String) {
        let at = self.place * words.at;
        let class = if words.strong { "nb-words nb-strong" } else { "nb-words" };
        into.push_str(&format!(
            r#"<text class="{class}" font-size="{:.2}" x="{:.2}" y="{:.2}">{}</text>"#,
            words.size,
            at.x,
            at.y,
            escape(&words.text)
        ));
    }

    /// The line at the foot, inside the window, since many printers leave what is below it white; at the head where
    /// lines run through it.
    pub(super) fn foot(&self, foot: &str, crowd: &Crowd) -> String {
        let (size, band) = self.face.foot;
        let left = self.seen.x0 + 7.0;
        let at = |y: f64| Rect::new(left, y, left + width(foot, size), y + band * 0.8);
        let (low, high) = (at(self.seen.y1 - band * 0.8), at(self.seen.y0));
        let room = if crowd.is_unlined(low) || !crowd.is_unlined(high) { low } else { high };
        let at = self.place * Point::new(room.x0, room.y1 - size * 0.4);
        let (x, y, foot) = (at.x, at.y, escape(foot));
        format!(r#"<text class="nb-words" font-size="{size:.2}" x="{x:.2}" y="{y:.2}">{foot}</text>"#)
    }
}

/// The lines of a grid of 10 cm from a window's corner, by which a beam is set straight.
fn grid(seen: Rect) -> BezPath {
    const EACH: f64 = 100.0;
    let mut path = BezPath::new();
    let mut at = EACH;
    while at < seen.width().max(seen.height()) {
        if at < seen.width() {
            path.extend(line(Point::new(seen.x0 + at, seen.y0), Point::new(seen.x0 + at, seen.y1)));
        }
        if at < seen.height() {
            path.extend(line(Point::new(seen.x0, seen.y0 + at), Point::new(seen.x1, seen.y0 + at)));
        }
        at += EACH;
    }
    path
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

//! The sheet that a step is drawn on: shapes and labels in millimetres, kept apart, then written as
//! a drawing.

use kurbo::{Affine, BezPath, Point, Rect, Shape as _, Vec2};

use super::digits::{number, shape};
use super::trace::open_line;
use crate::figure::{Ruler, escape};

/// A sheet that a step is drawn on, in mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Sheet {
    pub width: f64,
    /// The greatest height.
    pub high: f64,
    pub cropped: bool,
}

/// Beside its words.
pub(super) const BESIDE: Sheet = Sheet { width: 76.0, high: 62.0, cropped: false };
/// Above them: for what would be too small to be read beside them.
pub(super) const ABOVE: Sheet = Sheet { width: 156.0, high: 100.0, cropped: false };

/// The least height, in mm.
const LEAST: f64 = 36.0;
/// What stays white at every side, in mm.
const MARGIN: f64 = 1.6;
/// What stays free round words, in mm.
const AIR: f64 = 0.7;

/// How words hang on their point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Anchor {
    Start,
    Middle,
    End,
}

#[derive(Debug, Clone)]
pub(super) enum Item {
    Path(&'static str, BezPath),
    Line(&'static str, Point, Point),
    /// What a lens shows, larger than all else.
    Lens(Vec<(&'static str, BezPath)>),
    /// Symbol, middle, size, turn in degrees.
    Symbol(&'static str, Point, f64, f64),
    /// The lines of one label, each with the start of its baseline; anchor, whether they read upwards.
    Label(Vec<(String, Point)>, Anchor, bool),
}

/// A drawing in the making.
#[derive(Clone)]
pub(super) struct Page<'a> {
    pub ruler: &'a Ruler<'a>,
    items: Vec<Item>,
    /// Where words and symbols are.
    taken: Vec<Rect>,
    /// Words below everything, line by line.
    captions: Vec<String>,
}

impl<'a> Page<'a> {
    pub fn new(ruler: &'a Ruler<'a>) -> Page<'a> {
        Page { ruler, items: Vec::new(), taken: Vec::new(), captions: Vec::new() }
    }

    pub fn path(&mut self, class: &'static str, path: BezPath) {
        if !path.elements().is_empty() {
            self.items.push(Item::Path(class, path));
        }
    }

    pub fn line(&mut self, class: &'static str, from: Point, to: Point) {
        self.items.push(Item::Line(class, from, to));
    }

    pub fn lens(&mut self, inside: Vec<(&'static str, BezPath)>) {
        self.items.push(Item::Lens(inside));
    }

    pub(super) fn items(&self) -> &[Item] {
        &self.items
    }

    /// All paths so far, each with its class.
    pub fn shapes(&self) -> impl Iterator<Item = (&'static str, &BezPath)> {
        self.items.iter().filter_map(|item| match item {
            Item::Path(class, path) => Some((*class, path)),
            _ => None,
        })
    }

    pub fn symbol(&mut self, id: &'static str, middle: Point, size: f64, degrees: f64) {
        self.taken.push(Rect::from_center_size(middle, (size, size)));
        self.items.push(Item::Symbol(id, middle, size, degrees));
    }

    /// A pin, its head at `from`.
    pub fn pin(&mut self, from: Point, to: Point) {
        self.taken.push(Rect::from_points(from, to).inflate(0.3, 0.3));
        self.path("pin", open_line(&[from, to]));
    }

    /// Whether a symbol or words there would touch others.
    pub fn is_free(&self, room: Rect) -> bool {
        !self.taken.iter().any(|taken| taken.overlaps(room))
    }

    /// Words below the drawing; said once.
    pub fn caption(&mut self, words: impl Into<String>) {
        let words = words.into();
        if !words.is_empty() && !self.captions.contains(&words) {
            self.captions.push(words);
        }
    }

    pub fn take_captions(&mut self) -> Vec<String> {
        std::mem::take(&mut self.captions)
    }

    /// Words at a point, wherever they come to lie; the caller knows that the place is free.
    pub fn label(&mut self, words: &str, at: Point, anchor: Anchor) {
        self.lines(vec![(words.to_owned(), at)], anchor);
    }

    /// The lines of one label.
    pub(super) fn lines(&mut self, lines: Vec<(String, Point)>, anchor: Anchor) {
        for (words, at) in &lines {
            let room = self.room(words, *at, anchor);
            self.taken.push(room);
        }
        self.items.push(Item::Label(lines, anchor, false));
    }

    /// The same, if the place is free.
    pub fn label_if_free(&mut self, words: &str, at: Point, anchor: Anchor) -> bool {
        let free = self.is_free(self.room(words, at, anchor));
        if free {
            self.label(words, at, anchor);
        }
        free
    }

    /// Words that read upwards, their middle at a point.
    pub fn upright(&mut self, words: &str, middle: Point) {
        let size = self.ruler.type_size();
        self.taken.push(Rect::from_center_size(middle, (size + AIR, self.ruler.width(words) + AIR)));
        let at = Point::new(middle.x + size * 0.36, middle.y);
        self.items.push(Item::Label(vec![(words.to_owned(), at)], Anchor::Middle, true));
    }

    pub(super) fn room(&self, words: &str, at: Point, anchor: Anchor) -> Rect {
        let (width, size) = (self.ruler.width(words), self.ruler.type_size());
        let left = match anchor {
            Anchor::Start => at.x,
            Anchor::Middle => at.x - width / 2.0,
            Anchor::End => at.x - width,
        };
        Rect::new(left - AIR, at.y - size * 0.8 - AIR / 2.0, left + width + AIR, at.y + size * 0.25 + AIR / 2.0)
    }

    /// A measured stretch with its figure: over, under, left or right of the line as `away` points.
    pub fn dimension(&mut self, from: Point, to: Point, words: &[String], away: Vec2) {
        self.line("dimension", from, to);
        let middle = from.midpoint(to);
        let (size, step) = (self.ruler.type_size(), self.ruler.line());
        let whole = words.join(" ");
        if (to - from).x.abs() > (to - from).y.abs() {
            let y = if away.y < 0.0 { middle.y - 1.3 } else { middle.y + size + 0.9 };
            self.label(&whole, Point::new(middle.x, y), Anchor::Middle);
        } else if self.ruler.width(&whole) <= from.distance(to) * 1.3 {
            self.upright(&whole, Point::new(middle.x + away.x.signum() * (1.4 + size / 2.0), middle.y));
        } else {
            let anchor = if away.x < 0.0 { Anchor::End } else { Anchor::Start };
            let top = middle.y - step * words.len() as f64 / 2.0 + size;
            let place = |at: usize| Point::new(middle.x + away.x.signum() * 1.8, top + step * at as f64);
            self.lines(words.iter().enumerate().map(|(at, line)| (line.clone(), place(at))).collect(), anchor);
        }
    }

    /// The box round everything so far.
    pub fn bounds(&self) -> Rect {
        let mut all: Option<Rect> = None;
        let boxes = self.items.iter().map(|item| match item {
            Item::Path(_, path) => path.bounding_box().inflate(0.3, 0.3),
            Item::Line(_, from, to) => Rect::from_points(*from, *to).inflate(0.9, 0.9),
            Item::Lens(inside) => inside
                .iter()
                .map(|(_, path)| path.bounding_box())
                .reduce(|one, other| one.union(other))
                .unwrap_or_default(),
            Item::Symbol(_, middle, size, _) => Rect::from_center_size(*middle, (*size, *size)),
            Item::Label(lines, ..) => {
                Rect::from_origin_size(lines.first().map_or(Point::ORIGIN, |(_, at)| *at), (0.0, 0.0))
            }
        });
        for one in boxes.chain(self.taken.iter().copied()) {
            all = Some(all.map_or(one, |all| all.union(one)));
        }
        all.unwrap_or(Rect::ZERO)
    }

    pub fn moved(mut self, by: Vec2) -> Page<'a> {
        for item in &mut self.items {
            match item {
                Item::Path(_, path) => *path = Affine::translate(by) * path.clone(),
                Item::Line(_, from, to) => (*from, *to) = (*from + by, *to + by),
                Item::Lens(inside) => {
                    inside.iter_mut().for_each(|(_, path)| *path = Affine::translate(by) * path.clone());
                }
                Item::Symbol(_, at, ..) => *at += by,
                Item::Label(lines, ..) => lines.iter_mut().for_each(|(_, at)| *at += by),
            }
        }
        for taken in &mut self.taken {
            *taken = *taken + by;
        }
        self
    }

    /// Puts another drawing beside or below this one.
    pub fn join(&mut self, mut other: Page<'a>, beside: bool, gap: f64) {
        self.captions.extend(other.take_captions());
        if self.items.is_empty() {
            (self.items, self.taken) = (other.items, other.taken);
            return;
        }
        let (here, there) = (self.bounds(), other.bounds());
        let by = match beside {
            true => Vec2::new(here.x1 + gap - there.x0, here.center().y - there.center().y),
            false => Vec2::new(here.center().x - there.center().x, here.y1 + gap - there.y0),
        };
        let other = other.moved(by);
        self.items.extend(other.items);
        self.taken.extend(other.taken);
    }

    /// How large the largest shape is drawn, in mm.
    pub fn reach(&self) -> f64 {
        let shapes = self.items.iter().filter_map(|item| match item {
            Item::Path(_, path) => Some(path.bounding_box()),
            _ => None,
        });
        shapes.map(|shape| shape.width().max(shape.height())).fold(0.0, f64::max)
    }

    /// Drawings side by side, in as many rows as they need, or below each other.
    pub fn flowed(ruler: &'a Ruler<'a>, drawings: Vec<Page<'a>>, beside: bool, gap: f64, sheet: Sheet) -> Page<'a> {
        let mut page = Page::new(ruler);
        let mut row = Page::new(ruler);
        for drawing in drawings {
            let wide = row.bounds().width() + gap + drawing.bounds().width();
            if !row.items.is_empty() && (!beside || wide > sheet.width - 2.0 * MARGIN) {
                page.join(std::mem::replace(&mut row, Page::new(ruler)), false, gap);
            }
            row.join(drawing, true, gap);
        }
        page.join(row, false, gap);
        page
    }

    /// Sets the captions below the drawing, in lines no wider than `width`; `None` when one word is wider.
    pub fn set_captions(&mut self, width: f64) -> Option<()> {
        let drawn = self.bounds();
        let (size, step) = (self.ruler.type_size(), self.ruler.line());
        let mut y = drawn.y1 + 1.6 + size;
        for caption in self.take_captions() {
            let mut lines = Vec::new();
            for line in self.balanced(&caption, width - 2.0 * AIR)? {
                let half = self.ruler.width(&line) / 2.0 + AIR;
                // Centred under the drawing, as far as the sheet allows.
                let least = drawn.x0.min(drawn.center().x - width / 2.0) + half;
                let x = drawn.center().x.max(least);
                lines.push((line, Point::new(x, y)));
                y += step;
            }
            self.lines(lines, Anchor::Middle);
        }
        Some(())
    }

    /// Sets the captions and writes the drawing; `None` when it does not fit the sheet.
    pub fn finish(mut self, scale: u32, sheet: Sheet) -> Option<String> {
        self.set_captions(sheet.width - 2.0 * MARGIN)?;
        let bounds = self.bounds();
        let (room, least) = if sheet.cropped { (bounds.width() + 2.0 * MARGIN, 0.0) } else { (sheet.width, LEAST) };
        let height = (bounds.height() + 2.0 * MARGIN).max(least);
        if bounds.width() > sheet.width - 2.0 * MARGIN + 0.01 || height > sheet.high + 0.01 {
            return None;
        }
        let height = (height * 10.0).ceil() / 10.0;
        let middle = Point::new(room / 2.0, height / 2.0);
        Some(self.moved(middle - bounds.center()).written((room, height), scale))
    }

    fn written(&self, (width, height): (f64, f64), scale: u32) -> String {
        let mut svg = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {0} {1}\" width=\"{0}mm\" data-scale=\"1:{scale}\">\n",
            number(width),
            number(height)
        );
        let (labels, shapes): (Vec<&Item>, Vec<&Item>) =
            self.items.iter().partition(|item| matches!(item, Item::Label(..)));
        for item in shapes.into_iter().chain(labels) {
            svg.push_str("  ");
            svg.push_str(&write(item));
            svg.push('\n');
        }
        svg.push_str("</svg>\n");
        svg
    }
}

fn write(item: &Item) -> String {
    match item {
        Item::Path(class, path) => shape(class, path),
        Item::Line(class, from, to) => {
            let (x1, y1, x2, y2) = (number(from.x), number(from.y), number(to.x), number(to.y));
            format!("<line class=\"{class}\" x1=\"{x1}\" y1=\"{y1}\" x2=\"{x2}\" y2=\"{y2}\"/>")
        }
        Item::Lens(inside) => {
            format!("<g>{}</g>", inside.iter().map(|(class, path)| shape(class, path)).collect::<String>())
        }
        Item::Symbol(id, middle, size, degrees) => {
            let (x, y, side) = (number(middle.x - size / 2.0), number(middle.y - size / 2.0), number(*size));
            let turn = match *degrees {
                0.0 => String::new(),
                turn => format!(" transform=\"rotate({} {} {})\"", number(turn), number(middle.x), number(middle.y)),
            };
            format!("<use href=\"#{id}\" x=\"{x}\" y=\"{y}\" width=\"{side}\" height=\"{side}\"{turn}/>")
        }
        Item::Label(lines, anchor, upright) => {
            let place = |at: &Point| match upright {
                true => format!(" transform=\"translate({} {}) rotate(-90)\"", number(at.x), number(at.y)),
                false => format!(" x=\"{}\" y=\"{}\"", number(at.x), number(at.y)),
            };
            let anchor = match anchor {
                Anchor::Start => "",
                Anchor::Middle => " text-anchor=\"middle\"",
                Anchor::End => " text-anchor=\"end\"",
            };
            // The lines of one label are one text, so that they are read, and laid over those of another
            // size, as one.
            match lines.as_slice() {
                [(words, at)] => format!("<text class=\"label\"{}{anchor}>{}</text>", place(at), escape(words)),
                lines => {
                    let line = |(words, at): &(String, Point)| format!("<tspan{}>{}</tspan>", place(at), escape(words));
                    let lines: String = lines.iter().map(line).collect();
                    format!("<text class=\"label\"{anchor}>{lines}</text>")
                }
            }
        }
    }
}

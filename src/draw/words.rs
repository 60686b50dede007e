//! Words on a drawing: on the cloth that they name, clear of its edge and of lines that matter; below it, or at the end of a
//! line that leads there, where it is too small.

use kurbo::{BezPath, Point, Rect, Shape as _};

use super::page::{Anchor, Item, Page};
use super::trace::{corners, open_line};

/// Classes of lines; all others are filled.
const LINES: [&str; 10] =
    ["stitch", "stitched", "fold", "mark", "arrow", "dimension", "context", "cut-line", "pin", "notch"];
/// Lines that words may lie over where there is no other place: what was sewn before, and what is only marked.
const SOFT: [&str; 3] = ["stitched", "mark", "context"];
/// How many places are tried to each side of the middle of a room.
const PLACES: i32 = 4;
/// How far words rather stand from the middle of their room than over one line that was sewn before, in mm.
const RATHER: f64 = 2.5;

/// How far words rather stand from the middle of their room than on one more line, in mm.
const EACH: f64 = 2.0;
/// How far words stand beside others, in mm: nearer they would be read as one.
const BESIDE: f64 = 1.6;

/// Something that is drawn, as far as words must keep clear of it.
struct Obstacle<'p> {
    class: &'static str,
    room: Rect,
    line: Vec<Point>,
    /// What is filled hides all that was drawn before it.
    filled: Option<&'p BezPath>,
}

/// What lies under words.
enum Under {
    /// A line that matters, or the edge of something.
    Crossed,
    /// Cloth, with so many lines over it that words may cover.
    Cloth(usize),
    Paper,
}

impl Page<'_> {
    /// Words on the cloth in a room, in as few lines as fit; `false` when they do not fit at all, or the room is taken.
    pub fn label_in(&mut self, words: &str, room: Rect) -> bool {
        self.label_at(words, room, true)
    }

    fn label_at(&mut self, words: &str, room: Rect, on_cloth: bool) -> bool {
        let obstacles = self.obstacles();
        let mut best: Option<(f64, Vec<(String, Point)>)> = None;
        for share in [1.0, 0.8, 0.65, 0.5] {
            let Some(lines) = self.wrapped(words, (room.width() - 1.6) * share) else { continue };
            let count = lines.len() as f64;
            let Some((cost, top)) = self.spot(&lines, room, on_cloth, &obstacles) else { continue };
            let cost = cost + EACH * count;
            if best.as_ref().is_none_or(|(known, _)| cost < *known) {
                best = Some((cost, self.set(lines, top)));
            }
        }
        let Some((_, lines)) = best else { return false };
        self.lines(lines, Anchor::Middle);
        true
    }

    /// Lines about a point, which is the middle of their upper side.
    fn set(&self, lines: Vec<String>, top: Point) -> Vec<(String, Point)> {
        let (step, size) = (self.ruler.line(), self.ruler.type_size());
        let place = |at: usize| Point::new(top.x, top.y + step * at as f64 + size);
        lines.into_iter().enumerate().map(|(at, line)| (line, place(at))).collect()
    }

    /// Where lines stand in a room, the middle of their upper side: as near to its middle as they are free there.
    /// How far that is from there comes with it.
    fn spot(&self, lines: &[String], room: Rect, on_cloth: bool, obstacles: &[Obstacle<'_>]) -> Option<(f64, Point)> {
        let height = self.ruler.line() * lines.len() as f64;
        let width = lines.iter().map(|line| self.ruler.width(line)).fold(0.0, f64::max);
        let (aside, down) = ((room.width() - width) / 2.0 - 0.8, (room.height() - height) / 2.0);
        if down < 0.0 {
            return None;
        }
        let middle = Point::new(room.center().x, room.center().y - height / 2.0);
        let steps = (-PLACES..=PLACES).flat_map(|x| (-PLACES..=PLACES).map(move |y| (x, y)));
        let by = |share: i32, reach: f64| f64::from(share) / f64::from(PLACES) * reach.max(0.0);
        let mut places: Vec<Point> =
            steps.map(|(x, y)| Point::new(middle.x + by(x, aside), middle.y + by(y, down))).collect();
        places.sort_by(|one, other| one.distance(middle).total_cmp(&other.distance(middle)));
        let mut best: Option<(f64, Point)> = None;
        for place in places {
            let far = place.distance(middle);
            if best.is_some_and(|(known, _)| known <= far) {
                break;
            }
            let Some(over) = self.over(lines, place, on_cloth, obstacles) else { continue };
            let cost = far + RATHER * over as f64;
            if best.is_none_or(|(known, _)| cost < known) {
                best = Some((cost, place));
            }
        }
        best
    }

    /// Over how many lines that were sewn before words would lie; `None` where they may not lie at all.
    fn over(&self, lines: &[String], top: Point, on_cloth: bool, obstacles: &[Obstacle<'_>]) -> Option<usize> {
        let mut over = 0;
        for (line, at) in self.set(lines.to_vec(), top) {
            let room = self.room(&line, at, Anchor::Middle);
            if !self.is_free(room.inflate(BESIDE, 0.0)) {
                return None;
            }
            match under(obstacles, room.inset(-0.2)) {
                Under::Crossed => return None,
                Under::Cloth(count) => over += count,
                Under::Paper if on_cloth => return None,
                Under::Paper => {}
            }
        }
        Some(over)
    }

    /// All that is drawn, the uppermost first.
    fn obstacles(&self) -> Vec<Obstacle<'_>> {
        let seen = self.items().iter().rev().filter_map(|item| match item {
            Item::Path(class, path) => {
                let mut line = corners(path);
                let filled = (!LINES.contains(class)).then_some(path);
                if path.elements().last() == Some(&kurbo::PathEl::ClosePath) {
                    line.extend(line.first().copied());
                }
                Some(Obstacle { class, room: path.bounding_box(), line, filled })
            }
            Item::Line(class, from, to) => {
                Some(Obstacle { class, room: Rect::from_points(*from, *to), line: vec![*from, *to], filled: None })
            }
            Item::Lens(_) | Item::Symbol(..) | Item::Label(..) => None,
        });
        seen.collect()
    }

    /// Words in lines no wider than `width`, of nearly one length; `None` when one word alone is wider.
    fn wrapped(&self, words: &str, width: f64) -> Option<Vec<String>> {
        // A break after a comma reads best.
        if self.ruler.width(words) > width
            && let Some((first, rest)) = words.split_once(", ")
        {
            let (mut lines, rest) = (self.wrapped(&format!("{first},"), width)?, self.wrapped(rest, width)?);
            lines.extend(rest);
            return Some(lines);
        }
        self.broken(words, width)
    }

    fn broken(&self, words: &str, width: f64) -> Option<Vec<String>> {
        let mut lines: Vec<String> = Vec::new();
        for part in words.split(' ') {
            if self.ruler.width(part) > width {
                return None;
            }
            match lines.last_mut() {
                Some(line) if self.ruler.width(&format!("{line} {part}")) <= width => {
                    line.push(' ');
                    line.push_str(part);
                }
                _ => lines.push(part.to_owned()),
            }
        }
        Some(lines)
    }

    /// Words in as few lines as a width allows, all of nearly one length; `None` when one word alone is wider.
    pub(super) fn balanced(&self, words: &str, width: f64) -> Option<Vec<String>> {
        let mut lines = self.broken(words, width)?;
        let (mut low, mut high) = (0.0, width);
        while lines.len() > 1 && high - low > 0.5 {
            let middle = f64::midpoint(low, high);
            match self.broken(words, middle).filter(|narrower| narrower.len() == lines.len()) {
                Some(narrower) => (lines, high) = (narrower, middle),
                None => low = middle,
            }
        }
        Some(lines)
    }

    /// Words above or below everything, with a line that leads to what they name.
    ///
    /// It runs from the first of the places, and to the side, from which it strikes no words; `over` is the side that is
    /// tried first.
    pub(super) fn lead(&mut self, words: &str, places: &[Point], over: bool) {
        let (all, size) = (self.bounds(), self.ruler.type_size());
        let clear = |place: &Point, over: bool| {
            let end = if over { all.y0 } else { all.y1 };
            self.is_free(Rect::from_points(*place, Point::new(place.x, end)).inflate(0.1, 0.0))
        };
        let ways = [over, !over].into_iter().flat_map(|over| places.iter().map(move |place| (*place, over)));
        let first = places.first().map(|place| (*place, over));
        let Some((to, over)) = ways.into_iter().find(|(place, over)| clear(place, *over)).or(first) else { return };
        let (foot, text) = match over {
            true => (all.y0 - 0.6, all.y0 - 1.6),
            false => (all.y1 + 0.6, all.y1 + 1.4 + size * 0.8),
        };
        self.path("context", open_line(&[to, Point::new(to.x, foot)]));
        let left = to.x - all.x0 <= all.x1 - to.x;
        let (x, anchor) = if left { (to.x - 1.0, Anchor::Start) } else { (to.x + 1.0, Anchor::End) };
        self.label(words, Point::new(x, text), anchor);
    }

    /// Words at a point, if neither other words nor lines that matter are there.
    pub(super) fn label_if_clear(&mut self, words: &str, at: Point, anchor: Anchor) -> bool {
        let room = self.room(words, at, anchor);
        let clear = self.is_free(room) && !matches!(under(&self.obstacles(), room.inset(-0.2)), Under::Crossed);
        if clear {
            self.label(words, at, anchor);
        }
        clear
    }

    /// Words in the first of some rooms on the cloth that has place for them; else at the end of a line from the first.
    pub(super) fn label_in_one(&mut self, words: &str, rooms: &[Rect]) {
        if !rooms.iter().any(|room| self.label_in(words, *room))
            && let Some(first) = rooms.first()
        {
            self.lead(words, &[first.center()], false);
        }
    }

    /// Words in a part's box, or below it where it is too small.
    pub(super) fn name(&mut self, words: &str, bounds: Rect) {
        if self.label_in(words, bounds.inset(-0.6)) {
            return;
        }
        let step = self.ruler.line();
        let wide = bounds.width().max(34.0) / 2.0;
        for lines in 1..=4 {
            let top = self.bounds().y1.max(bounds.y1) + 0.5;
            let room = Rect::new(
                bounds.center().x - wide,
                top,
                bounds.center().x + wide,
                top + step * f64::from(lines) + 0.01,
            );
            if self.label_at(words, room, false) {
                return;
            }
        }
        self.caption(words);
    }
}

/// What lies under words in a room; `obstacles` the uppermost first.
fn under(obstacles: &[Obstacle<'_>], room: Rect) -> Under {
    let mut over = 0;
    for one in obstacles.iter().filter(|one| one.room.inflate(0.01, 0.01).overlaps(room)) {
        let crossed = one.line.windows(2).any(|pair| passes(room, pair[0], pair[1]));
        if crossed && !SOFT.contains(&one.class) {
            return Under::Crossed;
        }
        over += usize::from(crossed);
        if one.filled.is_some_and(|path| path.contains(room.center())) {
            return Under::Cloth(over);
        }
    }
    Under::Paper
}

/// Whether a stretch comes into a room.
fn passes(room: Rect, from: Point, to: Point) -> bool {
    let way = to - from;
    let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
    for (start, by, low, high) in [(from.x, way.x, room.x0, room.x1), (from.y, way.y, room.y0, room.y1)] {
        if by.abs() < 1e-9 {
            if start < low || start > high {
                return false;
            }
            continue;
        }
        let (one, other) = ((low - start) / by, (high - start) / by);
        (enters, leaves) = (enters.max(one.min(other)), leaves.min(one.max(other)));
    }
    enters <= leaves
}

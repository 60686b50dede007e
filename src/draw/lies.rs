//! How a piece lies that is no longer flat as it was cut: folded up, or gathered along an edge.

use kurbo::{Point, Rect, Vec2};

use crate::construct::LONG;

/// What folds leave of the two sides of a piece, as shares.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Folds {
    pub short: f64,
    pub long: f64,
}

impl Folds {
    /// Not folded.
    pub const NONE: Folds = Folds { short: 1.0, long: 1.0 };

    pub fn is_none(self) -> bool {
        self == Folds::NONE
    }

    /// The same, folded once more.
    pub fn after(self, fold: Fold) -> Folds {
        match fold {
            Fold::Opened => self,
            Fold::Along(share) => Folds { short: self.short * share, ..self },
            Fold::Across(share) => Folds { long: self.long * share, ..self },
        }
    }
}

/// One fold of a whole piece, as its words tell it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Fold {
    /// Folded and opened again: a crease.
    Opened,
    /// Along the longer side, to this share of the shorter.
    Along(f64),
    /// Across the longer side, to this share of it.
    Across(f64),
}

impl Fold {
    /// What the words behind a folded piece say; `None` where they leave open what becomes of its size.
    pub fn told(words: &str, (wide, high): (f64, f64)) -> Option<Fold> {
        let says = |all: &[&str]| all.iter().any(|word| words.contains(word));
        let across =
            says(&["crosswise", "widthwise", "short e", "short sides", "end to end", "ends together", "ends to"]);
        let along = says(&["lengthwise", "long edges", "long sides", "along the"]);
        let way = |share: f64| if across { Fold::Across(share) } else { Fold::Along(share) };
        let is_long = wide.max(high) >= LONG * wide.min(high);
        if says(&["open"]) {
            return Some(Fold::Opened);
        }
        let share = match () {
            () if says(&["four", "quarter"]) => 0.25,
            () if says(&["third", "three"]) => 1.0 / 3.0,
            () if says(&["half", "double", "in two", "middle", "centre", "center", "to the crease"]) => 0.5,
            () if across || along || words.is_empty() || says(&["sides together", "side out"]) => 0.5,
            () => return None,
        };
        (across || along || is_long).then(|| way(share))
    }
}

/// How a piece lies.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Lies {
    pub folds: Folds,
    /// Edges that are gathered, and what is left of their length, as a share.
    pub gathered: Vec<(String, f64)>,
}

impl Default for Lies {
    fn default() -> Lies {
        Lies { folds: Folds::NONE, gathered: Vec::new() }
    }
}

impl Lies {
    /// Whether both halves of a piece lie on each other once, so that two opposite edges are one: the direction in which
    /// the far one lies.
    pub fn doubled(&self, bounds: Rect) -> Option<Vec2> {
        let wide = bounds.width() >= bounds.height();
        let (level, upright) = (Vec2::new(1.0, 0.0), Vec2::new(0.0, 1.0));
        let (long, short) = if wide { (level, upright) } else { (upright, level) };
        match (self.folds.short, self.folds.long) {
            (_, 0.5) => Some(long),
            (0.5, 1.0) => Some(short),
            _ => None,
        }
    }

    /// Where a point of a rectangle comes to lie once it is folded up.
    pub fn folded(&self, bounds: Rect, point: Point) -> Point {
        let (across, down) = if bounds.width() >= bounds.height() {
            (self.folds.long, self.folds.short)
        } else {
            (self.folds.short, self.folds.long)
        };
        Point::new(bounds.x0 + (point.x - bounds.x0) * across, bounds.y0 + (point.y - bounds.y0) * down)
    }
}

/// Where a point comes to lie when an edge is gathered to a share of its length: the nearer to it, the nearer to its
/// middle. `at` is that middle, `inner` the direction into the piece, `deep` how far the piece reaches.
pub(super) fn drawn_in((at, inner): (Point, Vec2), deep: f64, share: f64, point: Point) -> Point {
    let across = Vec2::new(-inner.y, inner.x);
    let from = point - at;
    let (far, aside) = (from.dot(inner), from.dot(across));
    let left = share + (1.0 - share) * (far / deep.max(1e-9)).clamp(0.0, 1.0);
    at + inner * far + across * (aside * left)
}

//! Corners of an offset line: neighbours are prolonged until they meet, cut where they cross, or
//! joined by a step where one runs on in the direction of the other.

use kurbo::{Line, ParamCurve, PathSeg, Point, Vec2};

use super::super::ring::direction;
use super::curve::Shifted;
use super::meet::meet;

/// A mitre may stand out this many times the larger allowance; beyond it is squared off.
const MITRE_LIMIT: f64 = 4.0;

/// Ends that lie closer than this, in mm, are one point.
const SAME_POINT: f64 = 1e-4;

/// Two directions are one when the sine of the angle between them is under this.
const SAME_DIRECTION: f64 = 1e-9;

/// The offset of one run between its two corners. Places in the chain are the number of the run
/// plus the parameter within it.
#[derive(Debug, Clone)]
pub(super) struct Stretch {
    pub edge: Option<usize>,
    /// In mm, below 0 inwards.
    pub distance: f64,
    pub chain: Vec<PathSeg>,
    /// Some of it runs backwards.
    pub backwards: bool,
    pub from: f64,
    pub to: f64,
    /// A straight line leads from its end to the start of the next.
    pub link: bool,
    /// That line goes round by the corner that was drawn.
    pub via: Option<Point>,
}

impl Stretch {
    pub fn new(edge: Option<usize>, distance: f64, shifted: Shifted) -> Self {
        Self {
            edge,
            distance,
            from: 0.0,
            to: shifted.chain.len() as f64,
            chain: shifted.chain,
            backwards: shifted.backwards,
            link: false,
            via: None,
        }
    }

    /// Before anything was cut off.
    pub fn start(&self) -> Point {
        self.chain.first().map_or(Point::ZERO, ParamCurve::start)
    }

    /// Before anything was cut off.
    pub fn end(&self) -> Point {
        self.chain.last().map_or(Point::ZERO, ParamCurve::end)
    }

    fn prolong(&mut self, to: Point) {
        let end = self.end();
        self.chain.push(PathSeg::Line(Line::new(end, to)));
        self.to = self.chain.len() as f64;
    }

    // The places already found move along by the run that is put in front.
    fn begin_earlier(&mut self, from: Point) {
        let start = self.start();
        self.chain.insert(0, PathSeg::Line(Line::new(from, start)));
        self.to += 1.0;
        self.from = 0.0;
    }
}

/// What happens at the corner between two stretches.
enum Corner {
    Same,
    Step,
    /// Both are prolonged to one point.
    Mitre(Point),
    /// Both are prolonged, and a line squares them off.
    Squared(Point, Point),
    /// One or both must be cut: the rays tell how far the other may have to reach for it.
    Cut {
        first: Option<Point>,
        second: Option<Point>,
    },
}

/// Joins two neighbours at the corner of the drawn line. `false` when they should cross and do not:
/// then there is a loop to remove.
pub(super) fn join(first: &mut Stretch, second: &mut Stretch, corner: Point, ways: [Vec2; 2]) -> bool {
    if !prolong(first, second, corner, ways) {
        return true;
    }
    match meet(&first.chain, &second.chain) {
        Some(found) => {
            first.to = found.first;
            second.from = found.second;
            true
        }
        None => false,
    }
}

/// Joins two neighbours without cutting them: where they should cross, the line goes back to the
/// corner that was drawn and from there to the next, which leaves a loop to remove.
pub(super) fn join_loosely(first: &mut Stretch, second: &mut Stretch, corner: Point, ways: [Vec2; 2]) {
    if prolong(first, second, corner, ways) {
        first.via = Some(corner);
    }
}

/// Prolongs both as far as they need it. `true` when they are still to be cut where they cross.
fn prolong(first: &mut Stretch, second: &mut Stretch, corner: Point, ways: [Vec2; 2]) -> bool {
    match decide(first, second, corner, ways) {
        Corner::Same => {}
        Corner::Step => first.link = true,
        Corner::Mitre(at) => {
            first.prolong(at);
            second.begin_earlier(at);
        }
        Corner::Squared(end, start) => {
            first.prolong(end);
            second.begin_earlier(start);
            first.link = true;
        }
        Corner::Cut { first: end, second: start } => {
            if let Some(end) = end {
                first.prolong(end);
            }
            if let Some(start) = start {
                second.begin_earlier(start);
            }
            return true;
        }
    }
    false
}

/// The directions of the drawn line on both sides of a corner.
pub(super) fn ways(before: &PathSeg, after: &PathSeg) -> [Vec2; 2] {
    [direction(before, 1.0), direction(after, 0.0)]
}

fn decide(first: &Stretch, second: &Stretch, corner: Point, [way, next]: [Vec2; 2]) -> Corner {
    let (end, start) = (first.end(), second.start());
    if (start - end).hypot() < SAME_POINT {
        return Corner::Same;
    }
    let limit = MITRE_LIMIT * first.distance.abs().max(second.distance.abs());
    let turn = way.cross(next);
    if turn.abs() < SAME_DIRECTION {
        return if way.dot(next) > 0.0 {
            Corner::Step
        } else if first.distance.max(second.distance) > 0.0 {
            // The line turns back on itself: round the outside of such a tip it is squared off.
            Corner::Squared(end + way * limit, start + way * limit)
        } else {
            Corner::Cut { first: None, second: None }
        };
    }
    // How far the first must run on, and the second must begin earlier, to meet.
    let ahead = (start - end).cross(next) / turn;
    let back = (start - end).cross(way) / -turn;
    let tip = end + way * ahead;
    let reach = (tip - corner).hypot();
    match (ahead >= 0.0, back >= 0.0) {
        (true, true) if reach <= limit => Corner::Mitre(tip),
        (true, true) => {
            let out = (tip - corner) / reach;
            let short = |from: Point, along: Vec2| from + along * ((limit - (from - corner).dot(out)) / along.dot(out));
            Corner::Squared(short(end, way), short(start, -next))
        }
        (false, false) => Corner::Cut { first: None, second: None },
        _ if reach > limit => Corner::Step,
        (true, false) => Corner::Cut { first: Some(end + way * limit), second: None },
        (false, true) => Corner::Cut { first: None, second: Some(start - next * limit) },
    }
}

//! In a nest, the name of its size on every line of every sheet: on the inner side of the line, or at the end of a
//! leader where the line is too short or too near to another.

use kurbo::{BezPath, Circle, Point, Rect, Shape as _, Vec2};

use super::crowd::Crowd;
use super::face::{Face, width};
use super::labels::Words;
use super::plan::PlacedPiece;
use super::strokes::Stroke;
use super::window;
use crate::model::{HouseWords, Size};

/// The names on one sheet.
#[derive(Debug, Clone, Default)]
pub(super) struct Names {
    pub words: Vec<Words>,
    /// Lines from a name to its line.
    pub leaders: BezPath,
    /// The dots in which they end.
    pub dots: BezPath,
}

impl Names {
    /// Takes in those of another piece.
    pub(super) fn add(&mut self, other: Names) {
        self.words.extend(other.words);
        self.leaders.extend(other.leaders);
        self.dots.extend(other.dots);
    }
}

/// A line shorter than this is not told by its name, in mm: it is the rest of one that goes on beyond the sheet.
const LEAST: f64 = 2.0;
/// How far a name keeps from its line, as a share of its height.
const GAP: f64 = 0.3;
/// The places along a line that are tried, from its middle outwards.
const ALONG: [f64; 13] = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82, 0.1, 0.9, 0.04, 0.96];

/// Names every line of a piece that a sheet shows, and adds the names to what lies there. What is not `always` to be named
/// has its name where it has room beside it.
pub(super) fn names(
    piece: &PlacedPiece,
    (strokes, always): (&[Stroke], bool),
    (sizes, house): (&[Size], &HouseWords),
    (seen, face): (Rect, &Face),
    crowd: &mut Crowd,
) -> Names {
    let mut found = Names::default();
    for stroke in strokes {
        let text = called((sizes, house), &stroke.sizes, piece);
        for run in runs(&stroke.path, seen) {
            if length(&run) < LEAST {
                continue;
            }
            let room = (width(&text, face.line) * 1.2, face.line);
            let inner = |at: Point, way: Vec2| inward(piece, &stroke.sizes, at, way);
            let search = Search { run: &run, room, seen, crowd, inner: &inner };
            let Some(spot) = search.beside().or_else(|| always.then(|| search.led())) else { continue };
            crowd.room(spot.place);
            if let Some(at) = spot.leader {
                found.leaders.move_to(at);
                found.leaders.line_to(nearest(spot.place, at));
                found.dots.extend(dot(at, face.line * 0.2));
            }
            let at = Point::new(spot.place.x0, spot.place.y1 - face.line * 0.2);
            found.words.push(Words { at, text: text.clone(), size: face.line, strong: true, block: None });
        }
    }
    found
}

/// The sizes of a line in words: each by its name, and all that the piece has in two words.
fn called((sizes, house): (&[Size], &HouseWords), own: &[usize], piece: &PlacedPiece) -> String {
    let name = |at: &usize| sizes[*at].name.clone();
    if own.len() > 1 && own.len() == piece.outlines.len() {
        return house.say("sheet_all_sizes");
    }
    // Things are nested one by one, so that the name of a size says enough.
    own.iter().map(name).collect::<Vec<_>>().join(", ")
}

/// A line as far as a window shows it, in connected runs of points.
fn runs(path: &BezPath, seen: Rect) -> Vec<Vec<Point>> {
    let mut runs: Vec<Vec<Point>> = Vec::new();
    window::segments(&window::through(path, seen), &mut |from, to| match runs
        .last_mut()
        .filter(|run| run.last().is_some_and(|end| end.distance(from) < 1e-6))
    {
        Some(run) => run.push(to),
        None => runs.push(vec![from, to]),
    });
    // The start of a closed line lies in the middle of a run.
    if let [first, .., last] = runs.as_slice()
        && last.last().zip(first.first()).is_some_and(|(end, start)| end.distance(*start) < 1e-6)
    {
        let tail = first[1..].to_vec();
        let mut joined = runs.pop().unwrap_or_default();
        joined.extend(tail);
        runs[0] = joined;
    }
    runs
}

fn length(run: &[Point]) -> f64 {
    run.windows(2).map(|pair| pair[0].distance(pair[1])).sum()
}

/// The point at a share of a run, and which way the run goes there.
fn along(run: &[Point], share: f64) -> (Point, Vec2) {
    let mut left = length(run) * share;
    for pair in run.windows(2) {
        let own = pair[0].distance(pair[1]);
        if left <= own && own > 0.0 {
            return (pair[0].lerp(pair[1], left / own), (pair[1] - pair[0]) / own);
        }
        left -= own;
    }
    (run[0], Vec2::new(1.0, 0.0))
}

/// Which way is into the piece from a place on its line.
fn inward(piece: &PlacedPiece, own: &[usize], at: Point, way: Vec2) -> Vec2 {
    let across = Vec2::new(-way.y, way.x);
    let plan = piece.outlines.iter().find(|(size, _)| own.first() == Some(size));
    let holds = plan.is_some_and(|(_, plan)| plan.cutting.contains(at + across * 0.4));
    if holds { across } else { -across }
}

/// A place for a name, and the point of the line from which a leader comes.
struct Spot {
    place: Rect,
    leader: Option<Point>,
}

struct Search<'a> {
    run: &'a [Point],
    /// The width and the height of the name.
    room: (f64, f64),
    seen: Rect,
    crowd: &'a Crowd,
    inner: &'a dyn Fn(Point, Vec2) -> Vec2,
}

impl Search<'_> {
    fn led(&self) -> Spot {
        self.away(true).or_else(|| self.away(false)).unwrap_or_else(|| self.anywhere())
    }

    /// At the line, on its inner side.
    fn beside(&self) -> Option<Spot> {
        let at = |share: &f64| {
            let (point, way) = along(self.run, *share);
            self.at(point, (self.inner)(point, way), self.room.1 * GAP)
        };
        ALONG.iter().map(at).find(|place| self.is_free(*place)).map(|place| Spot { place, leader: None })
    }

    /// Away from the line, with a leader to it: nearest first, on either side. Where lines lie so close that none is
    /// free, other lines may run through the name.
    fn away(&self, unlined: bool) -> Option<Spot> {
        for far in 1..=14 {
            for share in ALONG {
                let (point, way) = along(self.run, share);
                let inner = (self.inner)(point, way);
                for side in [inner, -inner, (inner + way).normalize(), (inner - way).normalize()] {
                    let place = self.at(point, side, self.room.1 * 1.4 * f64::from(far));
                    let free = if unlined { self.is_free(place) } else { self.is_unsaid(place) };
                    if free {
                        return Some(Spot { place, leader: Some(point) });
                    }
                }
            }
        }
        None
    }

    /// Where words stand everywhere: in the middle, with its leader.
    fn anywhere(&self) -> Spot {
        let (point, way) = along(self.run, 0.5);
        let place = self.at(point, (self.inner)(point, way), self.room.1 * GAP);
        let shift = Vec2::new(
            (self.seen.x0 - place.x0).max(0.0) + (self.seen.x1 - place.x1).min(0.0),
            (self.seen.y0 - place.y0).max(0.0) + (self.seen.y1 - place.y1).min(0.0),
        );
        Spot { place: place + shift, leader: Some(point) }
    }

    /// The room of the name, `gap` away from a point.
    fn at(&self, point: Point, way: Vec2, gap: f64) -> Rect {
        let (wide, high) = self.room;
        let reach = gap + (way.x.abs() * wide + way.y.abs() * high) / 2.0;
        Rect::from_center_size(point + way * reach, (wide, high))
    }

    fn is_unsaid(&self, place: Rect) -> bool {
        self.seen.contains_rect(place) && self.crowd.is_unsaid(place)
    }

    fn is_free(&self, place: Rect) -> bool {
        let rim = self.room.1 * 0.2;
        self.seen.inflate(-rim, -rim).contains_rect(place) && self.crowd.is_clear(place.inflate(rim / 2.0, rim / 2.0))
    }
}

/// The point of a room's rim that is nearest to a place outside it.
fn nearest(room: Rect, to: Point) -> Point {
    Point::new(to.x.clamp(room.x0, room.x1), to.y.clamp(room.y0, room.y1))
}

/// A dot with straight sides, as all lines of a sheet have.
pub(super) fn dot(at: Point, radius: f64) -> BezPath {
    let mut path = BezPath::new();
    window::segments(&Circle::new(at, radius).to_path(0.1), &mut |from, to| {
        if path.elements().is_empty() {
            path.move_to(from);
        }
        path.line_to(to);
    });
    path
}

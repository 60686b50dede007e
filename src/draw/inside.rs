//! What is shown inside a piece: the lines of darts, pleats and tucks, and the marks, at true size.

use kurbo::{Affine, BezPath, Line, ParamCurveNearest as _, Point, Shape as _, Vec2};

use crate::geometry::{Dart, Fold, Pleat};
use crate::model::{self, HouseWords};
use crate::resolve::{Edition, Inside, MarkAt, PieceId};

/// One thing that is drawn inside a piece, in mm.
#[derive(Debug, Clone, PartialEq)]
pub enum Detail {
    /// A line to sew along.
    Sewn(Line),
    /// A line to fold along.
    Folded(Line),
    /// A line onto which a fold is brought.
    Onto(Line),
    /// From where to where something is laid.
    Laid(Line),
    /// To the edge that is up.
    Up(Line),
    /// A point to mark.
    Dot(Point),
    /// A line that another piece is laid along, or that is only marked.
    Placed(BezPath),
    /// A buttonhole.
    Hole(Line),
    /// What it is called, near where it lies.
    Name(Point, String),
}

impl Detail {
    /// The lines that are drawn of it, but for arrows.
    fn lines(&self) -> Vec<Line> {
        match self {
            Detail::Sewn(line) | Detail::Folded(line) | Detail::Onto(line) | Detail::Hole(line) => vec![*line],
            Detail::Placed(path) => path.segments().filter_map(|seg| seg.as_line()).collect(),
            Detail::Laid(_) | Detail::Up(_) | Detail::Dot(_) | Detail::Name(..) => Vec::new(),
        }
    }

    /// The same moved.
    pub fn moved(&self, place: Affine) -> Detail {
        match self {
            Detail::Sewn(line) => Detail::Sewn(place * *line),
            Detail::Folded(line) => Detail::Folded(place * *line),
            Detail::Onto(line) => Detail::Onto(place * *line),
            Detail::Laid(line) => Detail::Laid(place * *line),
            Detail::Up(line) => Detail::Up(place * *line),
            Detail::Hole(line) => Detail::Hole(place * *line),
            Detail::Dot(point) => Detail::Dot(place * *point),
            Detail::Placed(path) => Detail::Placed(place * path.clone()),
            Detail::Name(point, name) => Detail::Name(place * *point, name.clone()),
        }
    }

    /// The middle of a mark; `None` of what is no mark, or only its name.
    pub fn middle(&self) -> Option<Point> {
        match self {
            Detail::Dot(point) => Some(*point),
            Detail::Hole(line) => Some(line.p0.midpoint(line.p1)),
            Detail::Placed(path) => Some(path.bounding_box().center()),
            _ => None,
        }
    }

    /// The same where its cloth is bent: where points and lines come to lie.
    pub fn bent(&self, point: impl Fn(Point) -> Point, path: impl Fn(&BezPath) -> BezPath) -> Detail {
        let line = |line: &Line| Line::new(point(line.p0), point(line.p1));
        match self {
            Detail::Sewn(one) => Detail::Sewn(line(one)),
            Detail::Folded(one) => Detail::Folded(line(one)),
            Detail::Onto(one) => Detail::Onto(line(one)),
            Detail::Laid(one) => Detail::Laid(line(one)),
            Detail::Up(one) => Detail::Up(line(one)),
            Detail::Hole(one) => Detail::Hole(line(one)),
            Detail::Dot(at) => Detail::Dot(point(*at)),
            Detail::Placed(one) => Detail::Placed(path(one)),
            Detail::Name(at, name) => Detail::Name(point(*at), name.clone()),
        }
    }
}

/// How far from the stitching line the arrows of darts and pleats lie, as a share of their lines.
const ARROW: f64 = 0.3;

/// Everything inside a piece, in its author's drawing.
pub(super) fn details(edition: &Edition<'_>, piece: PieceId) -> Vec<Detail> {
    let facts = &edition.draft.facts.pieces[piece];
    let told = |(inside, details): (Inside, Vec<Detail>)| {
        let only = match inside {
            Inside::Mark(at) => facts.marks[at].only.as_slice(),
            Inside::Dart(_) | Inside::Pleat(_) => &[],
        };
        let copies: Vec<String> = only.iter().map(|copy| facts.copy_called(&copy.text)).collect();
        details.into_iter().map(move |detail| match detail {
            // The outline is one for all copies: what some have alone says so.
            Detail::Name(at, name) if !copies.is_empty() => {
                Detail::Name(at, format!("{name} ({})", edition.draft.house.listed(&copies)))
            }
            detail => detail,
        })
    };
    each(edition, piece).into_iter().flat_map(told).collect()
}

/// The same, each dart, pleat and mark by itself.
pub(super) fn each(edition: &Edition<'_>, piece: PieceId) -> Vec<(Inside, Vec<Detail>)> {
    let Some(shape) = edition.values.shape(piece) else { return Vec::new() };
    let facts = &edition.draft.facts.pieces[piece];
    let marks = edition.values.marks(piece);
    let house = &edition.draft.house;
    let drawn = |inside: Inside| {
        let (name, _) = inside.called(facts);
        let mut found = Vec::new();
        match inside {
            Inside::Dart(at) => dart(shape.darts().get(at)?.as_ref()?, name, house, &mut found),
            Inside::Pleat(at) => pleat(shape.pleats().get(at)?.as_ref()?, name, house, &mut found),
            Inside::Mark(at) => mark(marks.get(at)?.as_ref()?, name, &mut found),
        }
        Some((inside, found))
    };
    let mut found: Vec<(Inside, Vec<Detail>)> = Inside::all(facts).filter_map(drawn).collect();
    clear_up(&mut found, &shape.cutting().path);
    found
}

/// How far the arrow to the edge that is up keeps from other lines, in mm.
const CLEAR: f64 = 7.0;
/// How far it is moved at a time, in mm, and how often.
const MOVED: (f64, i32) = (8.0, 10);

/// Moves the arrow that says which edge is up along that edge, clear of other lines where there is room.
fn clear_up(found: &mut [(Inside, Vec<Detail>)], outline: &BezPath) {
    let lines: Vec<Line> = found.iter().flat_map(|(_, details)| details).flat_map(Detail::lines).collect();
    for (_, details) in found.iter_mut() {
        let Some(arrow) = details.iter().find_map(|detail| match detail {
            Detail::Up(line) => Some(*line),
            _ => None,
        }) else {
            continue;
        };
        let way = (arrow.p1 - arrow.p0).normalize();
        let along = Vec2::new(-way.y, way.x);
        let steps = (0..=MOVED.1).flat_map(|at| [f64::from(at), -f64::from(at)]).map(|at| along * (at * MOVED.0));
        let free = |by: &Vec2| {
            let points = [0.0, 0.25, 0.5, 0.75, 1.0].map(|share| arrow.p0.lerp(arrow.p1, share) + *by);
            let far = |point: Point| lines.iter().all(|line| line.nearest(point, 0.01).distance_sq > CLEAR * CLEAR);
            points.into_iter().all(|point| outline.contains(point) && far(point))
        };
        if let Some(by) = steps.into_iter().find(free) {
            details.iter_mut().for_each(|detail| *detail = detail.moved(Affine::translate(by)));
        }
    }
}

fn spoken(name: &model::Name) -> String {
    name.text.replace('_', " ")
}

fn dart(dart: &Dart, name: &model::Name, house: &HouseWords, into: &mut Vec<Detail>) {
    into.extend(dart.legs.iter().copied().map(Detail::Sewn));
    into.push(Detail::Folded(dart.fold));
    into.extend(dart.points.iter().copied().map(Detail::Dot));
    into.extend(dart.mouth.map(Detail::Dot));
    let width = dart.mouth[0].distance(dart.mouth[1]);
    let middle = dart.mouth[0].midpoint(dart.mouth[1]);
    let reach = dart.towards * (width / 2.0);
    into.push(Detail::Laid(Line::new(middle - reach, middle + reach)));
    into.push(Detail::Name(dart.fold.p0.lerp(dart.fold.p1, 0.55), house.fill("draw_dart", &[("name", &spoken(name))])));
}

fn pleat(pleat: &Pleat, name: &model::Name, house: &HouseWords, into: &mut Vec<Detail>) {
    let tuck = pleat.fold == Fold::Tuck;
    for [from, to] in &pleat.folds {
        if tuck {
            into.extend([Detail::Sewn(*from), Detail::Sewn(*to)]);
            into.push(Detail::Folded(Line::new(from.p0.midpoint(to.p0), from.p1.midpoint(to.p1))));
        } else {
            into.extend([Detail::Folded(*from), Detail::Onto(*to)]);
        }
        into.push(Detail::Laid(Line::new(from.p0.lerp(from.p1, ARROW), to.p0.lerp(to.p1, ARROW))));
    }
    let Some([from, _]) = pleat.folds.first() else { return };
    let what = match (pleat.fold, pleat.folds.len() > 1) {
        (Fold::Knife, false) => "draw_pleat",
        (Fold::Knife, true) => "draw_pleats",
        (Fold::Box, _) => "draw_box_pleat",
        (Fold::Inverted, _) => "draw_inverted_pleat",
        (Fold::Tuck, false) => "draw_tuck",
        (Fold::Tuck, true) => "draw_tucks",
    };
    into.push(Detail::Name(from.p0.lerp(from.p1, ARROW * 1.5), house.fill(what, &[("name", &spoken(name))])));
}

fn mark(mark: &MarkAt, name: &model::Name, into: &mut Vec<Detail>) {
    let at = match mark {
        MarkAt::Point(point) => {
            into.push(Detail::Dot(*point));
            *point
        }
        MarkAt::Up([from, to]) => {
            into.push(Detail::Up(Line::new(*from, *to)));
            from.lerp(*to, 0.3)
        }
        MarkAt::Outline { line, .. } => {
            into.push(Detail::Placed(line.clone()));
            let bounds = kurbo::Shape::bounding_box(line);
            Point::new(bounds.x0 + bounds.width() * 0.1, bounds.y0 + bounds.height() * 0.5)
        }
        MarkAt::Line { ends: [from, to], places, each } => {
            // The line that only carries a row would look like one more thing to sew or to fold.
            if places.is_empty() {
                let mut line = BezPath::new();
                line.move_to(*from);
                line.line_to(*to);
                into.push(Detail::Placed(line));
            }
            into.extend(places.iter().map(|place| match each {
                Some(each) => Detail::Hole(Line::new(*place - *each / 2.0, *place + *each / 2.0)),
                None => Detail::Dot(*place),
            }));
            from.lerp(*to, 0.45)
        }
    };
    into.push(Detail::Name(at + Vec2::new(2.0, 0.0), spoken(name)));
}

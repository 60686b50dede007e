//! The gauge on the first sheet: squares and rulers in centimetres and in inches, and the words that
//! say to print it first.

use kurbo::{BezPath, Line, Point};

use super::face::is_beam;
use super::paper::SheetPaper;
use crate::model::HouseWords;

/// The room that the gauge takes on the plan: width and height in mm, with a key of so many lines.
pub(super) fn size(paper: SheetPaper, key: &[KeyLine]) -> (f64, f64) {
    match (is_beam(paper), key.is_empty()) {
        (true, true) => BEAM_ROOM,
        (true, false) => (BEAM_ROOM.0 + 310.0, BEAM_ROOM.1.max(34.0 + 16.0 * (key.len() + 1) as f64)),
        (false, true) => ROOM,
        (false, false) if beside_squares(key) => ROOM,
        (false, false) => (ROOM.0, ROOM.1 + KEY_STEP * (key.len() + 2) as f64),
    }
}

/// The room of the squares, the rulers and their words.
const ROOM: (f64, f64) = (150.0, 107.0);
const BEAM_ROOM: (f64, f64) = (440.0, 290.0);

/// A line of the key: the pattern by its number, `None` for a line of several sizes, and whose line it is.
pub(super) type KeyLine = (Option<usize>, String);

/// The lines of a key as they are drawn: those of the sizes, and the one that several share.
pub(super) fn key_lines(key: &[(usize, String)], house: &HouseWords) -> Vec<KeyLine> {
    let mut lines: Vec<KeyLine> = key.iter().map(|(pattern, name)| (Some(*pattern), name.clone())).collect();
    if !lines.is_empty() {
        lines.push((None, house.say("sheet_key_shared")));
    }
    lines
}

/// From line to line of the key, in mm; how many lines and how long a name have room beside the squares.
const KEY_STEP: f64 = 5.0;
const KEY_LINES: usize = 8;
const KEY_NAME: usize = 20;

/// A centimetre square of five and an inch square of two: corner, side, name.
const SQUARES: [Square; 2] = [(2.0, 22.0, 50.0, "5 cm"), (58.0, 22.0, 50.8, "2 in")];
/// What a beam is measured by: the larger, the truer.
const BEAM_SQUARES: [Square; 2] = [(2.0, 80.0, 200.0, "20 cm"), (222.0, 80.0, 203.2, "8 in")];
type Square = (f64, f64, f64, &'static str);

/// The rulers' upper left ends, and their lengths: 10 cm and 4 in.
const CENTIMETRES: (f64, f64) = (2.0, 79.0);
const INCHES: (f64, f64) = (2.0, 91.0);

fn squares(paper: SheetPaper) -> &'static [Square; 2] {
    if is_beam(paper) { &BEAM_SQUARES } else { &SQUARES }
}

fn beside_squares(key: &[KeyLine]) -> bool {
    key.len() <= KEY_LINES && key.iter().all(|(_, name)| name.chars().count() <= KEY_NAME)
}

/// Where each line of the key begins, how long its sample is, and where its name stands, from the gauge's corner.
pub(super) fn key_places(paper: SheetPaper, key: &[KeyLine]) -> Vec<(Line, Point)> {
    let (left, top, step, sample) = match is_beam(paper) {
        true => (450.0, 50.0, 16.0, 70.0),
        false if beside_squares(key) => (112.0, 30.0, KEY_STEP, 13.0),
        false => (2.0, ROOM.1 + KEY_STEP * 1.6, KEY_STEP, 24.0),
    };
    let row = |at: usize| {
        let y = top + step * at as f64;
        (Line::new((left, y), (left + sample, y)), Point::new(left + sample + step * 0.35, y + step * 0.2))
    };
    (0..key.len()).map(row).collect()
}

/// The lines of the gauge, its upper left corner at `at`.
pub(super) fn lines(paper: SheetPaper, at: Point) -> BezPath {
    let mut path = BezPath::new();
    let mut line = |x0: f64, y0: f64, x1: f64, y1: f64| {
        path.move_to(Point::new(at.x + x0, at.y + y0));
        path.line_to(Point::new(at.x + x1, at.y + y1));
    };
    for (x, y, side, _) in squares(paper).iter().copied() {
        line(x, y, x + side, y);
        line(x + side, y, x + side, y + side);
        line(x + side, y + side, x, y + side);
        line(x, y + side, x, y);
    }
    if is_beam(paper) {
        return path;
    }
    let (x, y) = CENTIMETRES;
    line(x, y, x + 100.0, y);
    for millimetre in 0..=100 {
        let length = match millimetre {
            at if at % 10 == 0 => 4.0,
            at if at % 5 == 0 => 2.8,
            _ => 1.8,
        };
        let place = x + f64::from(millimetre);
        line(place, y, place, y - length);
    }
    let (x, y) = INCHES;
    line(x, y, x + 101.6, y);
    for eighth in 0..=32 {
        let length = match eighth {
            at if at % 8 == 0 => 4.0,
            at if at % 4 == 0 => 3.2,
            at if at % 2 == 0 => 2.5,
            _ => 1.8,
        };
        let place = x + f64::from(eighth) * 25.4 / 8.0;
        line(place, y, place, y - length);
    }
    path
}

/// Words of the gauge: the left end of the base line from its corner, and what sort of words they are.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Told {
    pub at: (f64, f64),
    pub text: String,
    pub sort: Sort,
}

/// What words are to those who have the file read to them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Sort {
    /// Over the words that follow.
    Heading,
    /// Read with the lines before and after.
    Prose,
    /// A mark on the drawing, which the prose says as well.
    Mark,
}

/// What the gauge says.
pub(super) fn words(paper: SheetPaper, sheets: usize, key: &[KeyLine], house: &HouseWords) -> Vec<Told> {
    let mut said = if is_beam(paper) { beam_words(house) } else { paper_words(sheets, house) };
    for (x, y, side, name) in squares(paper).iter().copied() {
        let (aside, down) = if is_beam(paper) { (70.0, 4.0) } else { (7.0, 1.2) };
        let at = (x + side / 2.0 - aside, y + side / 2.0 + down);
        said.push(Told { at, text: format!("{name} × {name}"), sort: Sort::Mark });
    }
    let places = key_places(paper, key);
    if let Some((first, _)) = places.first() {
        let over = if is_beam(paper) { 18.0 } else { 5.2 };
        said.push(Told { at: (first.p0.x, first.p0.y - over), text: house.say("sheet_key"), sort: Sort::Heading });
    }
    let named = places.iter().zip(key);
    said.extend(named.map(|((_, at), (_, name))| Told { at: (at.x, at.y), text: name.clone(), sort: Sort::Prose }));
    said
}

fn beam_words(house: &HouseWords) -> Vec<Told> {
    let mut said = vec![Told { at: (2.0, 14.0), text: house.say("sheet_beam"), sort: Sort::Heading }];
    let prose = ["sheet_beam_measure", "sheet_beam_scale"].into_iter().enumerate();
    said.extend(prose.map(|(at, name)| Told {
        at: (2.0, 34.0 + 16.0 * at as f64),
        text: house.say(name),
        sort: Sort::Prose,
    }));
    said
}

fn paper_words(sheets: usize, house: &HouseWords) -> Vec<Told> {
    let told = |y: f64, name: &str, sort: Sort| Told { at: (2.0, y), text: house.say(name), sort };
    let mark = |x: f64, y: f64, text: &str| Told { at: (x, y), text: text.to_owned(), sort: Sort::Mark };
    let rest = if sheets > 1 { "sheet_gauge_rest" } else { "sheet_gauge_lay" };
    let mut said = vec![
        told(4.4, "sheet_gauge_first", Sort::Heading),
        told(9.4, "sheet_gauge_choose", Sort::Prose),
        told(14.0, "sheet_gauge_measure", Sort::Prose),
        told(18.6, rest, Sort::Prose),
        mark(105.0, 79.0, "10 cm"),
        mark(106.6, 91.0, "4 in"),
    ];
    if sheets > 1 {
        said.extend([told(97.6, "sheet_gauge_join", Sort::Prose), told(102.2, "sheet_gauge_trim", Sort::Prose)]);
    }
    said
}

//! What plain words of work say of rows: which way lines of quilting run, and where rows cross a piece.

use kurbo::{Affine, BezPath, Point, Vec2};

use super::trace::{length, open_line, runs_inside};
use crate::model::Verb;
use crate::resolve::{CopyId, Edition, EditionWork, Worked};

/// How near to each other lines are drawn at the least, in mm on paper: of closer ones every second, third or so on
/// is drawn.
const NEAREST: f64 = 2.2;
/// What is shorter is not drawn, in mm on paper.
const SHORTEST: f64 = 1.5;

/// Which way lines run over a piece as its author drew it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Way {
    Slanting,
    Level,
    Upright,
    /// Slanting both ways.
    Diamonds,
    /// Level and upright.
    Squares,
}

impl Way {
    /// What words say; `None` where they say nothing of it.
    fn told(words: &str) -> Option<Way> {
        let says = |all: &[&str]| all.iter().any(|word| words.contains(word));
        let slanting = says(&["slant", "diagonal", "on the bias", "45", "askew"]);
        let both = says(&["both ways", "crosshatch", "cross-hatch", "grid", "crossing"]);
        match () {
            () if says(&["diamond"]) || slanting && both => Some(Way::Diamonds),
            () if both || says(&["square"]) => Some(Way::Squares),
            () if slanting => Some(Way::Slanting),
            () if says(&["upright", "vertical", "top to bottom", "lengthwise", "up and down"]) => Some(Way::Upright),
            () if says(&["level", "horizontal", "side to side", "crosswise", "across"]) => Some(Way::Level),
            () => None,
        }
    }

    /// The directions of its lines.
    fn along(self) -> Vec<Vec2> {
        let slant = std::f64::consts::FRAC_1_SQRT_2;
        let (up, down) = (Vec2::new(slant, -slant), Vec2::new(slant, slant));
        let (level, upright) = (Vec2::new(1.0, 0.0), Vec2::new(0.0, 1.0));
        match self {
            Way::Slanting => vec![up],
            Way::Level => vec![level],
            Way::Upright => vec![upright],
            Way::Diamonds => vec![up, down],
            Way::Squares => vec![level, upright],
        }
    }
}

/// Lines of quilting, as far as facts tell of them.
#[derive(Debug, Clone, Copy)]
pub(super) struct Quilting {
    /// `None` where no words say it.
    pub way: Option<Way>,
    /// From one line to the next; `None` where no fact says it.
    pub apart: Option<Worked>,
}

impl Quilting {
    /// Of layers that are quilted together: what the facts say that quilt or mark one of them; `None` where none is
    /// ever quilted.
    pub fn of(edition: &Edition<'_>, layers: &[CopyId]) -> Option<Quilting> {
        let about =
            |work: &&EditionWork<'_>| work.touched().filter_map(|one| one.copy()).any(|one| layers.contains(&one));
        let works: Vec<&EditionWork<'_>> = edition.steps().flat_map(|step| &step.works).filter(about).collect();
        let quilts = works.iter().filter(|work| work.verb == Verb::Quilt);
        let way = |verb: Verb| {
            let own = works.iter().filter(move |work| work.verb == verb);
            let mut told =
                own.flat_map(|work| &work.work.words).filter_map(|words| Way::told(&words.text.to_lowercase()));
            told.next()
        };
        let apart = quilts.clone().find_map(|work| work.gap);
        quilts.clone().next()?;
        Some(Quilting { way: way(Verb::Quilt).or_else(|| way(Verb::Mark)), apart })
    }
}

/// Lines over a shape, from one through its middle outwards: `apart` in mm on paper, `turn` how the shape lies to the
/// author's drawing of it.
pub(super) fn lines(shape: &BezPath, middle: Point, turn: Affine, way: Way, apart: f64) -> Vec<BezPath> {
    let bounds = kurbo::Shape::bounding_box(shape);
    let reach = (bounds.width() + bounds.height()) / 2.0 + (bounds.center() - middle).hypot();
    let apart = apart.max(0.05);
    let apart = apart * (NEAREST / apart).ceil().max(1.0);
    let count = (reach / apart) as i32;
    let turned = |way: Vec2| (turn * way.to_point() - turn * Point::ORIGIN).normalize();
    let mut found = Vec::new();
    for along in way.along().into_iter().map(turned) {
        let across = Vec2::new(along.y, -along.x) * apart;
        for line in -count..=count {
            let on = middle + across * f64::from(line);
            let runs = runs_inside(&[on - along * reach * 1.1, on + along * reach * 1.1], shape);
            found.extend(runs.into_iter().filter(|run| length(run) > SHORTEST).map(|run| open_line(&run)));
        }
    }
    found
}

/// Rows across a piece that words place by its width: the shares of it, from one side to the other, and whether they run
/// from side to side instead of down; none where the words say no such thing.
pub(super) fn rows(words: &str) -> (Vec<f64>, bool) {
    let says = |all: &[&str]| all.iter().any(|word| words.contains(word));
    let shares = match () {
        () if says(&["quarter"]) => vec![0.25, 0.5, 0.75],
        () if says(&["each third", "at the thirds", "in thirds", "into three", "both thirds"]) => {
            vec![1.0 / 3.0, 2.0 / 3.0]
        }
        () if says(&["down the middle", "down the cent", "along the middle", "along the cent", "along its middle"]) => {
            vec![0.5]
        }
        () if says(&["across the middle", "across the cent"]) => vec![0.5],
        () => Vec::new(),
    };
    (shares, says(&["across", "side to side", "crosswise"]))
}

/// How many places words name: `both ends`, `each mark`; one where they say nothing of it.
pub(super) fn places(words: &str) -> usize {
    let two = ["both", "each", "two", "either", "ends"].iter().any(|word| words.contains(word));
    if two { 2 } else { 1 }
}

/// All plain words of a fact, in small letters.
pub(super) fn words_of(work: &EditionWork<'_>) -> String {
    work.work.words.iter().map(|words| words.text.to_lowercase()).collect::<Vec<_>>().join(", ")
}

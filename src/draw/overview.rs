//! All pieces of a size side by side at one scale, for the page of what to cut.

use kurbo::{Affine, BezPath};

use super::inside::Detail;
use super::plan::Plan;
use crate::figure::{Dresser, escape, svg_data};
use crate::model::{Verb, is_for};
use crate::resolve::{Edition, EditionWork, PieceId};

/// The pieces drawn to one scale.
#[derive(Debug, Clone, Default)]
pub struct Overview {
    /// How many millimetres of cloth one on paper stands for.
    pub scale: u32,
    /// A drawing for each piece, in the order in which the steps first use them.
    pub drawings: Vec<PieceDrawing>,
}

/// One piece.
#[derive(Debug, Clone)]
pub struct PieceDrawing {
    /// The piece.
    pub piece: PieceId,
    /// The drawing in the house style.
    pub svg: String,
    /// Its width and height on paper, in mm.
    pub size: (f64, f64),
}

/// The room for the largest piece, in mm.
const ROOM: (f64, f64) = (62.0, 66.0);
/// Room round a piece, for line ends.
const RIM: f64 = 1.5;
/// The scales to choose from.
const SCALES: &[u32] = &[1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100];

/// Draws the pieces of one size; pieces whose outline has a fault are left out.
pub fn overview(edition: &Edition<'_>, dresser: &Dresser) -> Overview {
    let facts = &edition.draft.facts;
    let mut plans: Vec<Plan> = PieceId::each(&facts.pieces)
        .filter(|(_, piece)| is_for(piece.sizes.as_ref(), edition.size()))
        .filter_map(|(piece, _)| Plan::of(edition, piece))
        .collect();
    plans.sort_by_key(|plan| first_used(edition, plan.piece));
    let widest = plans.iter().map(|plan| plan.size.0).fold(1.0, f64::max);
    let highest = plans.iter().map(|plan| plan.size.1).fold(1.0, f64::max);
    let fits = |scale: &&u32| widest / f64::from(**scale) <= ROOM.0 && highest / f64::from(**scale) <= ROOM.1;
    let scale = SCALES.iter().find(fits).copied().unwrap_or(200);
    let top = escape(&edition.draft.house.say("draw_top"));
    let drawings = plans
        .iter()
        .map(|plan| {
            let (svg, size) = draw(plan, 1.0 / f64::from(scale), (dresser, &top));
            PieceDrawing { piece: plan.piece, svg, size }
        })
        .collect();
    Overview { scale, drawings }
}

/// The step that first does something with a piece beyond cutting and marking it; those that none does come last.
fn first_used(edition: &Edition<'_>, piece: PieceId) -> usize {
    let uses = |work: &EditionWork<'_>| {
        !matches!(work.verb, Verb::Cut | Verb::Mark)
            && work.touched().filter_map(|touched| touched.copy()).any(|copy| edition.cast[copy].piece == piece)
    };
    let step = edition.steps().find(|step| step.works.iter().any(uses));
    step.map_or(usize::MAX, |step| step.number)
}

fn draw(plan: &Plan, scale: f64, (dresser, top): (&Dresser, &str)) -> (String, (f64, f64)) {
    let size = (plan.size.0 * scale + 2.0 * RIM, plan.size.1 * scale + 2.0 * RIM);
    let place = Affine::translate((RIM, RIM)) * Affine::scale(scale);
    let root = format!(
        r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {0:.3} {1:.3}" width="{0:.3}mm" height="{1:.3}mm">"#,
        size.0, size.1
    );
    let mut inside = path("nb-piece", &(place * plan.cutting.clone()));
    // Which edge is up lies over all else.
    let (up, others): (Vec<&Detail>, Vec<&Detail>) =
        plan.details.iter().partition(|detail| matches!(detail, Detail::Up(_)));
    for detail in others.into_iter().chain(up) {
        inside.push_str(&self::detail(&detail.moved(place), top));
    }
    // Lines closer than a pen's width would run into one.
    if plan.has_allowance() {
        inside.push_str(&path("nb-seam-line", &(place * plan.stitching.clone())));
    }
    for fold in plan.fold.iter() {
        inside.push_str(&path("fold", &(place * fold.clone())));
    }
    for notch in &plan.notches {
        // On so small a drawing a notch is shown longer than it is.
        let (from, to) = (place * notch.p0, place * notch.p1);
        let to = from + (to - from).normalize() * 1.3;
        inside.push_str(&path("nb-notch-line", &line_path(from, to)));
    }
    if let Some(grain) = plan.grain {
        let (from, to) = (place * grain.p0, place * grain.p1);
        if from.distance(to) > 4.0 {
            inside.push_str(&path("nb-grain-line", &line_path(from, to)));
        }
    }
    (dresser.dress(&root, &inside), size)
}

/// How long a mark in a row is at the most that is drawn as thick as a notch, in mm on paper.
const LONG: f64 = 4.0;
/// How long the head of an arrow is, in mm on paper.
const HEAD: f64 = 1.1;

/// One thing inside a piece; names would not be read at this scale.
fn detail(detail: &Detail, top: &str) -> String {
    match detail {
        Detail::Sewn(line) => path("stitched", &line_path(line.p0, line.p1)),
        Detail::Folded(line) => path("fold", &line_path(line.p0, line.p1)),
        Detail::Onto(line) | Detail::Laid(line) => path("nb-fine", &line_path(line.p0, line.p1)),
        Detail::Up(line) => {
            let (from, to) = (line.p0, line.p1);
            let back = (from - to).normalize();
            let across = kurbo::Vec2::new(-back.y, back.x) * HEAD * 0.5;
            let mut arrow = line_path(from, to);
            arrow.move_to(to + back * HEAD + across);
            arrow.line_to(to);
            arrow.line_to(to + back * HEAD - across);
            let at = from + back * 2.4;
            let words = format!(
                r#"<text class="label" text-anchor="middle" x="{:.2}" y="{:.2}">{top}</text>"#,
                at.x,
                at.y + 0.9
            );
            path("nb-fine", &arrow) + &words
        }
        Detail::Dot(point) => path("nb-ink", &kurbo::Shape::to_path(&kurbo::Circle::new(*point, 0.45), 0.05)),
        Detail::Placed(line) => path("mark", line),
        // So thick a line is a buttonhole; what is longer is a line among others.
        Detail::Hole(line) if line.p0.distance(line.p1) > LONG => path("nb-fine", &line_path(line.p0, line.p1)),
        Detail::Hole(line) => path("nb-notch-line", &line_path(line.p0, line.p1)),
        Detail::Name(..) => String::new(),
    }
}

fn line_path(from: kurbo::Point, to: kurbo::Point) -> BezPath {
    let mut path = BezPath::new();
    path.move_to(from);
    path.line_to(to);
    path
}

fn path(class: &str, path: &BezPath) -> String {
    format!(r#"<path class="{class}" d="{}"/>"#, svg_data(path))
}

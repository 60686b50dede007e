//! A piece drawn from its true outline, at any scale: both lines, fold, notches, grain.
//!
//! What the booklet shows of a piece, and what is laid on cloth and on sheets, are drawn by this one
//! hand, so that they cannot differ.

use kurbo::{Affine, BezPath, Line, PathSeg, Point, Rect, Shape as _};

use super::inside::{Detail, details};
use crate::geometry::{Along, Shape};
use crate::measure::Exact;
use crate::model::{Notch, NotchAt, Piece};
use crate::resolve::{Edition, PieceId};

/// A piece as lines, in mm at true size, its upper left corner at 0, 0. A piece cut on the fold is
/// drawn as the half that its author drew.
#[derive(Debug, Clone)]
pub struct Plan {
    /// The piece, by its place in the facts.
    pub piece: PieceId,
    /// Where the scissors go.
    pub cutting: BezPath,
    /// Where the needle goes.
    pub stitching: BezPath,
    /// What the scissors cut of it: without the edge on the fold.
    pub cut: BezPath,
    /// The stitching line without that edge.
    pub sewn: BezPath,
    /// The edge on the fold.
    pub fold: Option<BezPath>,
    /// Notches: short lines from the cutting line inwards.
    pub notches: Vec<Line>,
    /// Darts, pleats and marks.
    pub details: Vec<Detail>,
    /// The grain line; `None` where the author states no grain.
    pub grain: Option<Line>,
    /// The box round the cutting line.
    pub size: (f64, f64),
    /// Where that box's upper left corner lies in the author's own drawing: what lays the outlines of
    /// several sizes over one another.
    pub origin: (f64, f64),
}

/// How long a notch is (common practice, no source: a snip of 2 to 3 mm that never reaches the
/// stitching line).
const NOTCH: f64 = 3.0;
/// How far the grain line keeps from a line beside it, in mm.
const BESIDE: f64 = 4.0;

impl Plan {
    /// The plan of a piece in one size; `None` when its outline has a fault.
    pub fn of(edition: &Edition<'_>, piece: PieceId) -> Option<Plan> {
        let shape = edition.values.shape(piece)?;
        let facts = &edition.draft.facts.pieces[piece];
        let bounds = shape.cutting().bounds();
        let home = Affine::translate((-bounds.x0, -bounds.y0));
        let fold = facts.fold.as_ref().and_then(|fold| shape.edge(&fold.text)).map(|edge| home * edge.cut.clone());
        let inner = details(edition, piece);
        Some(Plan {
            piece,
            cutting: home * shape.cutting().path.clone(),
            stitching: home * shape.stitching().path.clone(),
            cut: home * shape.cut_open(),
            sewn: home * shape.sewn_open(),
            fold,
            grain: facts.grain.as_ref().map(|grain| home * grain_line(shape, &grain.text, &inner)),
            details: inner.iter().map(|detail| detail.moved(home)).collect(),
            notches: notches(edition, facts, shape).into_iter().map(|notch| home * notch).collect(),
            size: (bounds.width(), bounds.height()),
            origin: (bounds.x0, bounds.y0),
        })
    }

    /// Whether the grain line lies wholly on the piece; true where there is none.
    pub fn grain_lies_on_piece(&self) -> bool {
        self.grain.is_none_or(|grain| {
            [0.0, 0.25, 0.5, 0.75, 1.0].iter().all(|share| self.cutting.contains(grain.p0.lerp(grain.p1, *share)))
        })
    }

    /// Whether the piece has allowances, so that its two lines differ.
    pub fn has_allowance(&self) -> bool {
        (self.cutting.area() - self.stitching.area()).abs() > 1.0
    }
}

fn notches(edition: &Edition<'_>, piece: &Piece, shape: &Shape) -> Vec<Line> {
    let mut lines = Vec::new();
    for notch in &piece.notches {
        let along = match &notch.at {
            NotchAt::Centre => Some(Along::Centre),
            NotchAt::FromStart(formula) => edition.values.along(formula, false),
            NotchAt::FromEnd(formula) => edition.values.along(formula, true),
        };
        let Some(point) = along.and_then(|along| shape.place_at(&notch.edge.text, along)) else { continue };
        let from = Point::new(point.cutting[0], point.cutting[1]);
        let seam = Point::new(point.stitching[0], point.stitching[1]);
        // A snip that reached the stitching line would show in the finished seam.
        let length = match from.distance(seam) {
            allowance if allowance > 0.5 => NOTCH.min(allowance * 0.6),
            _ => NOTCH,
        };
        let inward = kurbo::Vec2::new(point.inward[0], point.inward[1]);
        let snip = Line::new(from, from + inward * length);
        lines.push(off_fold(shape, notch, snip, length));
    }
    lines
}

/// A snip at the fold would lie on its line and not be seen: there the corner of the folded cloth is snipped off, as
/// one does (common practice, no source), which opens to a notch in the middle.
fn off_fold(shape: &Shape, notch: &Notch, snip: Line, length: f64) -> Line {
    let Some(over) = shape.over_fold().filter(|over| (*over * snip.p0 - snip.p0).hypot() < 0.1) else { return snip };
    let beside = [Along::FromStart, Along::FromEnd].into_iter().filter_map(|from| {
        let point = shape.point_at(&notch.edge.text, from(Exact::of::<2, 1>()))?;
        Some(Point::new(point.cutting[0], point.cutting[1]))
    });
    let near = beside.min_by(|one, two| (*one - snip.p0).hypot().total_cmp(&(*two - snip.p0).hypot()));
    match near {
        Some(near) if (near - snip.p0).hypot() < length * 2.0 && (over * near - near).hypot() > 1.0 => {
            Line::new(near, snip.p1)
        }
        _ => snip,
    }
}

/// A line in the middle of the piece, along the grain and wholly on the piece where it can be.
fn grain_line(shape: &Shape, grain: &str, inner: &[Detail]) -> Line {
    let bounds: Rect = shape.cutting().bounds();
    let path = &shape.cutting().path;
    let upright = grain != "horizontal";
    let bias = grain == "bias";
    let reach = if upright { bounds.height() } else { bounds.width() };
    let length = (reach * 0.5).min(120.0);
    let along = match (bias, upright) {
        (true, _) => kurbo::Vec2::new(0.707, 0.707),
        (false, true) => kurbo::Vec2::new(0.0, 1.0),
        (false, false) => kurbo::Vec2::new(1.0, 0.0),
    };
    let mut best = Line::new(bounds.center() - along * (length / 2.0), bounds.center() + along * (length / 2.0));
    // From the middle outwards, and shorter, until both ends and the middle lie on the piece: clear of the lines that
    // run along it if that can be, since two lines on each other cannot be told apart.
    let trials = [true, false].into_iter().flat_map(|clear| [1.0, 0.7, 0.5, 0.3].map(|shrink| (clear, shrink)));
    'search: for (clear, shrink) in trials {
        for step in 0..9 {
            let aside = f64::from((step + 1) / 2) * 0.1 * if step % 2 == 0 { 1.0 } else { -1.0 };
            let across = kurbo::Vec2::new(along.y * bounds.width(), along.x * bounds.height()) * aside;
            let centre = bounds.center() + across;
            let half = along * (length * shrink / 2.0);
            let line = Line::new(centre - half, centre + half);
            let on_piece = [line.p0, centre, line.p1].iter().all(|point| path.contains(*point));
            if on_piece && !(clear && inner.iter().any(|detail| runs_along(detail, line))) {
                best = line;
                break 'search;
            }
        }
    }
    best
}

/// Whether a line inside a piece lies on the grain line, or so near beside it that they would be taken for one.
fn runs_along(detail: &Detail, grain: Line) -> bool {
    let lines: Vec<Line> = match detail {
        Detail::Sewn(line) | Detail::Folded(line) | Detail::Onto(line) | Detail::Up(line) | Detail::Hole(line) => {
            vec![*line]
        }
        Detail::Placed(path) => path
            .segments()
            .filter_map(|seg| match seg {
                PathSeg::Line(line) => Some(line),
                _ => None,
            })
            .collect(),
        Detail::Laid(_) | Detail::Dot(_) | Detail::Name(..) => Vec::new(),
    };
    let along = (grain.p1 - grain.p0).normalize();
    lines.into_iter().any(|line| {
        let way = (line.p1 - line.p0).normalize();
        let level = way.cross(along).abs() < 0.1;
        let near = (0..=10).any(|tenth| {
            let from = line.p0.lerp(line.p1, f64::from(tenth) / 10.0) - grain.p0;
            let over = from.dot(along);
            from.cross(along).abs() < BESIDE && over > -BESIDE && over < (grain.p1 - grain.p0).hypot() + BESIDE
        });
        level && near
    })
}

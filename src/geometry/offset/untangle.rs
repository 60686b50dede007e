//! Offset lines with loops: where an allowance is wider than a hollow, a notch or a tight curve, the
//! shifted line crosses itself, and only the part round the piece is kept.

use i_overlay::core::edge_data::{EdgeDataMerge, OverlayEdgeData};
use i_overlay::core::edge_overlay::{EdgeOverlay, InputEdge};
use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay::ShapeType;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::i_float::int::point::IntPoint;
use i_overlay::segm::boolean::ShapeCountBoolean;
use i_overlay::vector::edge::DataVectorEdge;
use kurbo::{Line, ParamCurve, PathSeg, Point};

use super::super::crossing::chord_count;
use super::super::fault::ShapeFault;
use super::super::ring::{Ring, Seg, length};
use super::joint::Stretch;
use super::trim::close_up;

/// Curves are followed with chords this close, in mm, to find the crossings; what is kept are the
/// curves themselves.
const CHORD_WITHIN: f64 = 0.002;

/// Grid steps to the mm: a ten-millionth, so that snapping to the grid moves nothing measurable.
const GRID: f64 = 1e7;

/// Scraps and holes under this area, in mm², come from the snapping and not from the piece.
const SCRAP: f64 = 0.01;

/// An edge with less than this left of it, in mm, has vanished.
const VANISHED: f64 = 1e-3;

/// The number of the chord that a stretch of the result lies on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Source(usize);

impl OverlayEdgeData for Source {
    type Store = ();

    // Of two chords that lie on each other either may stand for both.
    fn merge(context: EdgeDataMerge<ShapeCountBoolean, Self>, _store: &mut ()) -> Self {
        context.lhs_data
    }
}

/// One chord of the line with its loops: the stretch and the run that it follows, `None` for a link
/// between two stretches, and the parameters of its ends.
struct Chord {
    stretch: usize,
    run: Option<usize>,
    places: [f64; 2],
    ends: [Point; 2],
}

/// A piece of the result on one run.
struct Kept {
    stretch: usize,
    run: Option<usize>,
    from: f64,
    to: f64,
    ends: [Point; 2],
}

/// Removes the loops of stretches that were joined loosely.
pub(super) fn untangle(ring: &Ring, stretches: &[Stretch]) -> Result<Vec<Seg>, Vec<ShapeFault>> {
    let chords = chords(stretches);
    let mut overlay: EdgeOverlay<i64, Source> = EdgeOverlay::new(chords.len());
    for (index, chord) in chords.iter().enumerate() {
        let [a, b] = chord.ends.map(to_grid);
        overlay.add_edge(InputEdge { a, b, data: Source(index) }, ShapeType::Subject);
    }
    // Inside what the line surrounds clockwise: a loop that it makes the other way is not cloth.
    let shapes = overlay.build_vector_shapes(OverlayRule::Subject, FillRule::Positive);
    let mut contours: Vec<Vec<Kept>> = shapes
        .iter()
        .flatten()
        .filter(|contour| area(contour).abs() > SCRAP)
        .map(|contour| keep(&chords, contour))
        .collect();
    contours.sort_by(|a, b| kept_area(b).total_cmp(&kept_area(a)));
    let Some(main) = contours.first() else {
        return Err(vec![eaten(ring, first_of_widest(stretches))]);
    };
    if contours.len() > 1 {
        return Err(vec![meeting(ring, stretches, main)]);
    }
    let mut segs: Vec<Seg> = main.iter().map(|kept| seg(stretches, kept)).collect();
    close_up(&mut segs);
    begin_edges(&mut segs);
    let left =
        |edge: usize| -> f64 { segs.iter().filter(|seg| seg.edge == Some(edge)).map(|seg| length(&seg.curve)).sum() };
    let gone: Vec<ShapeFault> =
        (0..ring.edges.len()).filter(|edge| left(*edge) < VANISHED).map(|edge| eaten(ring, Some(edge))).collect();
    if gone.is_empty() { Ok(segs) } else { Err(gone) }
}

fn eaten(ring: &Ring, edge: Option<usize>) -> ShapeFault {
    ShapeFault::AllowanceEatsPiece { edge: ring.name(edge) }
}

fn first_of_widest(stretches: &[Stretch]) -> Option<usize> {
    let widest = stretches.iter().map(|stretch| stretch.distance.abs()).fold(0.0, f64::max);
    stretches.iter().find(|stretch| stretch.distance.abs() >= widest).and_then(|stretch| stretch.edge)
}

/// The two edges whose allowances run into each other, where the line that is kept leaps over the
/// most stretches.
fn meeting(ring: &Ring, stretches: &[Stretch], main: &[Kept]) -> ShapeFault {
    let count = stretches.len();
    let leap = |a: &Kept, b: &Kept| (b.stretch + count - a.stretch) % count;
    let widest = main.iter().zip(main.iter().cycle().skip(1)).max_by_key(|(a, b)| leap(a, b));
    let (first, second) = widest.map_or((0, 0), |(a, b)| (a.stretch, b.stretch));
    let name = |index: usize| ring.name(stretches.get(index).and_then(|stretch| stretch.edge));
    ShapeFault::AllowancesMeet { first: name(first.min(second)), second: name(first.max(second)) }
}

fn chords(stretches: &[Stretch]) -> Vec<Chord> {
    let mut chords: Vec<Chord> = Vec::new();
    for (index, stretch) in stretches.iter().enumerate() {
        for (run, curve) in stretch.chain.iter().enumerate() {
            let count = chord_count(curve, CHORD_WITHIN);
            for k in 0..count {
                let places = [k, k + 1].map(|k| k as f64 / count as f64);
                chords.push(Chord { stretch: index, run: Some(run), places, ends: places.map(|t| curve.eval(t)) });
            }
        }
        let next = &stretches[(index + 1) % stretches.len()];
        let corners = [Some(stretch.end()), stretch.via, Some(next.start())];
        let corners: Vec<Point> = corners.into_iter().flatten().collect();
        for pair in corners.windows(2) {
            chords.push(Chord { stretch: index, run: None, places: [0.0, 1.0], ends: [pair[0], pair[1]] });
        }
    }
    // What ends in one grid point and begins in the next must not leave a gap.
    chords.retain(|chord| to_grid(chord.ends[0]) != to_grid(chord.ends[1]));
    chords
}

fn to_grid(point: Point) -> IntPoint<i64> {
    IntPoint::new((point.x * GRID).round() as i64, (point.y * GRID).round() as i64)
}

fn from_grid(point: IntPoint<i64>) -> Point {
    Point::new(point.x as f64 / GRID, point.y as f64 / GRID)
}

/// Positive when the contour runs clockwise as seen.
fn area(contour: &[DataVectorEdge<i64, Source>]) -> f64 {
    contour.iter().map(|edge| Line::new(from_grid(edge.a), from_grid(edge.b))).map(doubled).sum::<f64>() / 2.0
}

fn kept_area(contour: &[Kept]) -> f64 {
    contour.iter().map(|kept| doubled(Line::new(kept.ends[0], kept.ends[1]))).sum::<f64>() / 2.0
}

fn doubled(line: Line) -> f64 {
    line.p0.to_vec2().cross(line.p1.to_vec2())
}

/// The contour in the direction of the line, as pieces of its runs. Holes come out with an area
/// below 0.
fn keep(chords: &[Chord], contour: &[DataVectorEdge<i64, Source>]) -> Vec<Kept> {
    let mut kept: Vec<Kept> = Vec::new();
    for edge in contour {
        let Some(chord) = chords.get(edge.data.0) else {
            continue;
        };
        let ends = [from_grid(edge.a), from_grid(edge.b)];
        let [from, to] = ends.map(|end| place(chord, end));
        match kept.last_mut() {
            Some(last)
                if last.stretch == chord.stretch
                    && last.run == chord.run
                    && chord.run.is_some()
                    && (last.to - from).abs() < 1e-6 =>
            {
                last.to = to;
                last.ends[1] = ends[1];
            }
            _ => kept.push(Kept { stretch: chord.stretch, run: chord.run, from, to, ends }),
        }
    }
    kept
}

/// The parameter on the run of a chord at a point of the chord.
fn place(chord: &Chord, point: Point) -> f64 {
    let along = chord.ends[1] - chord.ends[0];
    let share = ((point - chord.ends[0]).dot(along) / along.hypot2()).clamp(0.0, 1.0);
    chord.places[0] + (chord.places[1] - chord.places[0]) * share
}

fn seg(stretches: &[Stretch], kept: &Kept) -> Seg {
    let stretch = stretches.get(kept.stretch);
    let run = stretch.zip(kept.run).and_then(|(stretch, run)| stretch.chain.get(run));
    let straight = Seg::line(None, kept.ends[0], kept.ends[1]);
    match (stretch, run) {
        (Some(stretch), Some(PathSeg::Line(_))) => Seg { edge: stretch.edge, ..straight },
        (Some(stretch), Some(curve)) if kept.from < kept.to => {
            Seg { edge: stretch.edge, curve: curve.subsegment(kept.from..kept.to), ends: None }
        }
        (Some(stretch), Some(_)) => Seg { edge: stretch.edge, ..straight },
        _ => straight,
    }
}

/// Turns the closed line so that it begins where an edge does.
fn begin_edges(segs: &mut [Seg]) {
    let last = segs.last().and_then(|seg| seg.edge);
    if segs.first().is_some_and(|seg| seg.edge == last)
        && let Some(start) = segs.windows(2).position(|pair| pair[0].edge != pair[1].edge)
    {
        segs.rotate_left(start + 1);
    }
}

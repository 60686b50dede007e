//! How much thread the seams take.

use crate::geometry::Shape;
use crate::measure::to_f64;
use crate::model::{EdgeFinish, Verb};
use crate::resolve::{Edition, Inside, Touched};

/// An estimate of thread, in metres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ThreadEstimate {
    /// The length of all seams that the pieces determine, in metres.
    pub seams: f64,
    /// The thread to have at hand, in whole steps of five metres.
    pub thread: f64,
}

/// A lockstitch takes about 2.5 to 3 times its length in thread (thread makers' tables, from memory).
const PER_SEAM: f64 = 3.0;
/// Ends, bobbins and a seam sewn twice: a quarter more (common practice, no source).
const WASTE: f64 = 1.25;

/// The estimate for one size; quilting lines and stitching by hand are left out, since the pieces do
/// not tell how long they are. `None` when nothing is sewn.
pub fn thread(edition: &Edition<'_>) -> Option<ThreadEstimate> {
    let mut millimetres = 0.0;
    for step in edition.steps_to(None) {
        for work in step.works.iter().filter(|work| !work.work.by_hand) {
            if !work.verb.stitches() || work.verb == Verb::Quilt {
                continue;
            }
            if let Some(up) = work.up {
                // Sewn across once, as long as the base is deep.
                millimetres += 2.0 * to_f64(up.quantity.value);
                continue;
            }
            let targets: Vec<Touched> = work.touched().collect();
            millimetres += length(edition, work.verb, &targets) * over(work.work.finish);
        }
    }
    let seams = millimetres / 1000.0;
    (seams > 0.0).then(|| ThreadEstimate { seams, thread: (seams * PER_SEAM * WASTE / 5.0).ceil() * 5.0 })
}

/// How much more thread stitches over an edge take than a seam of the same length: a zigzag of the machine
/// takes about 7 times its length, three threads of an overlock about 14 (thread makers' tables, from memory).
fn over(finish: Option<EdgeFinish>) -> f64 {
    match finish {
        Some(EdgeFinish::Overlock) => 14.0 / PER_SEAM,
        Some(EdgeFinish::Zigzag) => 7.0 / PER_SEAM,
        Some(EdgeFinish::Pinking | EdgeFinish::Hand) => 0.0,
        Some(EdgeFinish::Binding) | None => 1.0,
    }
}

/// The length of one work's stitching: the longest edge where edges are sewn to one another, the sum
/// where each is stitched by itself. A whole piece beside an edge is what that edge is stitched to.
fn length(edition: &Edition<'_>, verb: Verb, targets: &[Touched]) -> f64 {
    let on_edges = targets.iter().any(|target| matches!(target, Touched::Edge(..) | Touched::ZipEdge(..)));
    let lengths = targets.iter().filter_map(|target| match target {
        Touched::Edge(copy, edge) => Some(edition.edge(*copy, *edge)?.seam_length),
        Touched::Copy(copy) if !on_edges => {
            let edges = edition.edges_of(*copy).into_iter();
            Some(edges.filter_map(|edge| edition.edge(*copy, edge)).map(|edge| edge.seam_length).sum())
        }
        Touched::Inside(copy, inside) => {
            let shape = edition.values.shape(edition.cast[*copy].piece)?;
            // What lies in a half is sewn in both.
            let halves = if shape.over_fold().is_some() { 2.0 } else { 1.0 };
            stitching_inside(shape, *inside).map(|length| length * halves)
        }
        _ => None,
    });
    match verb {
        Verb::Sew | Verb::Box | Verb::Baste | Verb::Close => lengths.fold(0.0, f64::max),
        _ => lengths.sum(),
    }
}

/// A dart is sewn once along its legs, laid on each other; a tuck along each fold.
fn stitching_inside(shape: &Shape, inside: Inside) -> Option<f64> {
    match inside {
        Inside::Dart(at) => {
            let dart = shape.darts().get(at)?.as_ref()?;
            Some(dart.legs.iter().map(|leg| leg.p0.distance(leg.p1)).sum::<f64>() / 2.0)
        }
        Inside::Pleat(at) => {
            let pleat = shape.pleats().get(at)?.as_ref()?;
            Some(pleat.folds.iter().map(|[from, _]| from.p0.distance(from.p1)).sum())
        }
        Inside::Mark(_) => None,
    }
}

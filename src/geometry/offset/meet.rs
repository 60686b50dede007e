//! Where two chains of runs that come from one corner cross each other.

use kurbo::{ParamCurve, PathSeg, Point};

use super::super::crossing::chord_count;
use super::super::ring::speed;

/// Chains are followed with chords this close, in mm, before the crossing is refined on the curves.
const CHORD_WITHIN: f64 = 0.02;

/// A crossing is refined until the two curves agree to this, in mm.
const AGREE_WITHIN: f64 = 1e-9;

/// Where two chains cross: the place on each, as the number of the run plus the parameter within
/// it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Meeting {
    pub first: f64,
    pub second: f64,
}

/// One chord: the place in the chain of its two ends, and the ends.
#[derive(Clone, Copy)]
struct Chord {
    places: [f64; 2],
    ends: [Point; 2],
}

/// The crossing nearest to the end of the first chain and the start of the second. `None` when they
/// do not cross.
pub(super) fn meet(first: &[PathSeg], second: &[PathSeg]) -> Option<Meeting> {
    let (one, other) = (chords(first), chords(second));
    let mut best: Option<(usize, Meeting)> = None;
    for (i, a) in one.iter().rev().enumerate() {
        for (j, b) in other.iter().enumerate() {
            if best.is_some_and(|(steps, _)| i + j >= steps) {
                break;
            }
            if let Some(found) = cross(a, b).and_then(|rough| refine(first, second, rough)) {
                best = Some((i + j, found));
            }
        }
    }
    best.map(|(_, found)| found)
}

fn chords(chain: &[PathSeg]) -> Vec<Chord> {
    let mut chords = Vec::new();
    for (index, curve) in chain.iter().enumerate() {
        let count = chord_count(curve, CHORD_WITHIN);
        for k in 0..count {
            let ends = [k, k + 1].map(|k| k as f64 / count as f64);
            chords.push(Chord { places: ends.map(|t| index as f64 + t), ends: ends.map(|t| curve.eval(t)) });
        }
    }
    chords
}

fn cross(a: &Chord, b: &Chord) -> Option<[f64; 2]> {
    let (along, other, between) = (a.ends[1] - a.ends[0], b.ends[1] - b.ends[0], b.ends[0] - a.ends[0]);
    let across = along.cross(other);
    if across.abs() <= 1e-12 * along.hypot() * other.hypot() {
        return None;
    }
    let (t, u) = (between.cross(other) / across, between.cross(along) / across);
    let within = |value: f64| (-1e-9..=1.0 + 1e-9).contains(&value);
    let place =
        |chord: &Chord, share: f64| chord.places[0] + (chord.places[1] - chord.places[0]) * share.clamp(0.0, 1.0);
    (within(t) && within(u)).then(|| [place(a, t), place(b, u)])
}

/// Newton's method on the two curves, each kept within its own run.
fn refine(first: &[PathSeg], second: &[PathSeg], rough: [f64; 2]) -> Option<Meeting> {
    let run = |chain: &[PathSeg], place: f64| (place.floor() as usize).min(chain.len().saturating_sub(1));
    let (i, j) = (run(first, rough[0]), run(second, rough[1]));
    let (one, other) = (first.get(i)?, second.get(j)?);
    let (mut t, mut u) = (rough[0] - i as f64, rough[1] - j as f64);
    for _ in 0..12 {
        let apart = other.eval(u) - one.eval(t);
        if apart.hypot() < AGREE_WITHIN {
            return Some(Meeting { first: i as f64 + t, second: j as f64 + u });
        }
        let (along, across) = (slope(one, t), slope(other, u));
        let turn = along.cross(across);
        if turn == 0.0 {
            return None;
        }
        t = (t + apart.cross(across) / turn).clamp(0.0, 1.0);
        u = (u + apart.cross(along) / turn).clamp(0.0, 1.0);
    }
    None
}

fn slope(curve: &PathSeg, t: f64) -> kurbo::Vec2 {
    match curve {
        PathSeg::Line(line) => line.p1 - line.p0,
        other => speed(&other.to_cubic(), t),
    }
}

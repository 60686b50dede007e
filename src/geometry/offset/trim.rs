//! Shifted runs cut to their places and closed up, end to start.

use kurbo::{ParamCurve, PathSeg};

use super::super::ring::Seg;
use super::joint::Stretch;

/// Less than this of a run left between its two corners, as a share of it, is nothing.
pub(super) const LEAST_SHARE: f64 = 1e-9;

/// The stretches cut to their places, end to start.
pub(super) fn trimmed(stretches: &[Stretch]) -> Vec<Seg> {
    let mut segs: Vec<Seg> = Vec::new();
    for (index, stretch) in stretches.iter().enumerate() {
        let mut own: Vec<PathSeg> = Vec::new();
        for (number, curve) in stretch.chain.iter().enumerate() {
            let place = number as f64;
            let (from, to) = ((stretch.from - place).max(0.0), (stretch.to - place).min(1.0));
            if to - from < LEAST_SHARE {
                continue;
            }
            let kept = curve.subsegment(from..to);
            match (own.last_mut(), kept) {
                // A straight run and its prolongation are one line.
                (Some(PathSeg::Line(line)), PathSeg::Line(more)) => line.p1 = more.p1,
                _ => own.push(kept),
            }
        }
        let seg = |curve| Seg { edge: stretch.edge, curve, ends: None };
        segs.extend(own.into_iter().map(seg));
        if stretch.link {
            let next = &stretches[(index + 1) % stretches.len()];
            segs.push(Seg::line(None, stretch.end(), next.start()));
        }
    }
    close_up(&mut segs);
    segs
}

/// Lets every run start exactly where the one before it ends.
pub(super) fn close_up(segs: &mut [Seg]) {
    let Some(mut at) = segs.last().map(|last| last.curve.end()) else {
        return;
    };
    for seg in segs {
        match &mut seg.curve {
            PathSeg::Line(line) => line.p0 = at,
            PathSeg::Cubic(cubic) => {
                cubic.p1 += at - cubic.p0;
                cubic.p0 = at;
            }
            PathSeg::Quad(quad) => quad.p0 = at,
        }
        at = seg.curve.end();
    }
}

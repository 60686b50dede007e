//! Where one outline overlaps another: the region of all shifts at which it does, found as the sum of
//! the one outline and the other turned about the origin.
//!
//! The line of the sum is the convolution of the two lines; how often it winds round a shift is in how
//! many parts the outlines overlap there (L. Guibas, L. Ramshaw and J. Stolfi, A kinetic framework for
//! computational geometry, 1983; from memory).

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay::Overlay;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::i_float::int::point::IntPoint;

use super::cuts::Cuts;

/// A corner in whole units.
pub(super) type Corner = [i32; 2];

/// All shifts of one outline at which it overlaps another that stays, both of sound parts that run the same way
/// round: cut by lines along y, which stand at an x, and by lines across, which lie at a y. `unit` is what a
/// whole unit stands for.
pub(super) fn nofit(stays: &[Vec<Corner>], moves: &[Vec<Corner>], unit: f64) -> [Cuts; 2] {
    let mut loops: Vec<Vec<IntPoint<i32>>> = Vec::new();
    for still in stays {
        for moving in moves {
            let turned: Vec<Corner> = moving.iter().map(|[x, y]| [-x, -y]).collect();
            convolve(still, &turned, &mut loops);
        }
    }
    let shapes = Overlay::from_subj(&loops).overlay(OverlayRule::Subject, FillRule::NonZero);
    let scaled = |point: &IntPoint<i32>| [f64::from(point.x) * unit, f64::from(point.y) * unit];
    let contours: Vec<Vec<[f64; 2]>> =
        shapes.iter().flatten().map(|contour| contour.iter().map(scaled).collect()).collect();
    [Cuts::new(&contours, 0), Cuts::new(&contours, 1)]
}

fn cross(a: Corner, b: Corner) -> i64 {
    i64::from(a[0]) * i64::from(b[1]) - i64::from(a[1]) * i64::from(b[0])
}

/// The closed lines of the convolution of two closed lines.
fn convolve(one: &[Corner], other: &[Corner], loops: &mut Vec<Vec<IntPoint<i32>>>) {
    let (rows, columns) = (one.len(), other.len());
    let ways = |line: &[Corner]| -> Vec<Corner> {
        let next = line.iter().cycle().skip(1);
        line.iter().zip(next).map(|(from, to)| [to[0] - from[0], to[1] - from[1]]).collect()
    };
    let (own, theirs) = (ways(one), ways(other));
    let node = |row: usize, column: usize| (row % rows) * columns + column % columns;
    // A step leads from one pair of corners to the next; as many lead to a pair as away from it.
    let mut steps: Vec<(usize, usize)> = Vec::new();
    let mut add = |from: usize, to: usize, forth: bool| steps.push(if forth { (from, to) } else { (to, from) });
    for column in 0..columns {
        let (before, after) = (theirs[(column + columns - 1) % columns], theirs[column]);
        let left = cross(before, after) > 0;
        let (first, last) = if left { (before, after) } else { (after, before) };
        for (row, way) in own.iter().enumerate() {
            // Lines that run the same way: those of the one go first.
            if cross(first, *way) > 0 && cross(*way, last) >= 0 && cross(first, last) > 0 {
                add(node(row, column), node(row + 1, column), left);
            }
        }
    }
    for row in 0..rows {
        let (before, after) = (own[(row + rows - 1) % rows], own[row]);
        let left = cross(before, after) > 0;
        let (first, last) = if left { (before, after) } else { (after, before) };
        for (column, way) in theirs.iter().enumerate() {
            if cross(first, *way) >= 0 && cross(*way, last) > 0 && cross(first, last) > 0 {
                add(node(row, column), node(row, column + 1), left);
            }
        }
    }
    steps.sort_unstable();
    let mut used = vec![false; steps.len()];
    for start in 0..steps.len() {
        if used[start] {
            continue;
        }
        let mut line = Vec::new();
        let mut at = start;
        loop {
            used[at] = true;
            let (from, to) = steps[at];
            let (row, column) = (from / columns, from % columns);
            line.push(IntPoint::new(one[row][0] + other[column][0], one[row][1] + other[column][1]));
            let mut next = steps.partition_point(|step| step.0 < to);
            while next < steps.len() && steps[next].0 == to && used[next] {
                next += 1;
            }
            if next >= steps.len() || steps[next].0 != to {
                break;
            }
            at = next;
        }
        loops.push(line);
    }
}

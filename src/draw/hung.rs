//! What hangs on a thing: handles, loops, straps and ties, as ribbons as wide as they are folded.
//!
//! Where along its edge one is sewn is drawn at the mark that bears its name; without one, where such things usually
//! are (common practice, no source): handles about the middle, straps at the ends, loops near the top of a side.

use kurbo::{BezPath, CubicBez, ParamCurve, ParamCurveDeriv, Point, Vec2};

use super::cloth::Face;
use super::desk::Desk;
use super::page::Page;
use super::past::{Held, held};
use super::seen::{is_seen, strip, works};
use super::trace::{closed_line, corners, length, place};
use crate::model::Verb;
use crate::resolve::CopyId;

/// How much of its edge a handle spans at the most.
const SPAN: f64 = 0.45;
/// How long a loop is at the most, in mm of cloth; what is longer hangs down in two tails.
const LOOP: f64 = 200.0;
/// How far down a side a loop or a strap is sewn, as a share of the side.
const DOWN: f64 = 0.16;
/// How far a strap is drawn at the most, as a share of the height of the side that it hangs on.
const REACH: f64 = 0.42;

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum How {
    /// Both ends on one edge.
    Handle,
    /// Folded end to end.
    Loop,
    /// One end.
    Strap,
    /// Its middle.
    Tails,
}

/// A strip that is sewn on by its ends.
pub(super) struct Hung {
    pub copy: CopyId,
    /// The edge that it hangs on.
    pub on: (CopyId, String),
    pub how: How,
    /// Which of how many on that edge it is.
    pub nth: (usize, usize),
    /// In mm of cloth.
    pub long: f64,
    pub wide: f64,
}

/// All strips that hang on something that is seen.
pub(super) fn hung(desk: &Desk<'_, '_>) -> Vec<Hung> {
    let mut found: Vec<Hung> = Vec::new();
    let sews = [Verb::Attach, Verb::Baste, Verb::Sew, Verb::Topstitch, Verb::Boxstitch, Verb::Edgestitch];
    for work in works(desk).filter(|work| sews.contains(&work.verb)) {
        let mut strips: Vec<(CopyId, usize)> = Vec::new();
        let mut bases: Vec<(CopyId, String)> = Vec::new();
        for one in held(work, desk.edition) {
            match one {
                Held::Copy(copy) if strip(desk, copy).is_some() => strips.push((copy, 0)),
                Held::Edge(copy, edge) if is_end(desk, copy, &edge) => {
                    match strips.iter_mut().find(|one| one.0 == copy) {
                        Some(known) => known.1 += 1,
                        None => strips.push((copy, 1)),
                    }
                }
                Held::Edge(copy, edge) if is_seen(desk, copy) => bases.push((copy, edge)),
                _ => {}
            }
        }
        strips.retain(|(copy, _)| {
            !bases.iter().any(|base| base.0 == *copy) && !found.iter().any(|one| one.copy == *copy)
        });
        let paired = strips.len() == bases.len();
        let count = strips.len();
        for (at, (copy, ends)) in strips.into_iter().enumerate() {
            let Some(on) = bases.get(if paired { at } else { 0 }).cloned() else { continue };
            let Some((long, wide)) = strip(desk, copy) else { continue };
            let doubled = desk.past.lies(copy).folds.long < 1.0;
            let how = match (ends, doubled) {
                (2, false) => How::Handle,
                (_, true) if long <= LOOP => How::Loop,
                (_, true) => How::Tails,
                _ => How::Strap,
            };
            found.push(Hung { copy, on, how, nth: if paired { (0, 1) } else { (at, count) }, long, wide });
        }
    }
    found
}

/// Whether an edge is a short end of a strip.
fn is_end(desk: &Desk<'_, '_>, copy: CopyId, edge: &str) -> bool {
    let Some(shape) = desk.edition.values.whole(desk.edition.cast[copy].piece) else { return false };
    let (wide, high) = shape.box_size();
    strip(desk, copy).is_some()
        && shape.edge(edge).is_some_and(|edge| length(&corners(&edge.cut)) <= wide.min(high) * 1.05)
        && wide.max(high) > wide.min(high) * 1.5
}

impl Hung {
    /// Draws it on an edge: `line` from end to end and `out` away from the cloth; `high` is how high the cloth is on paper,
    /// `scale` how many mm of it are one there.
    pub fn draw(
        &self,
        desk: &Desk<'_, '_>,
        page: &mut Page<'_>,
        (line, out): (&BezPath, Vec2),
        at: Option<Point>,
        (high, scale): (f64, f64),
    ) {
        let class = desk.class(self.copy, Face::Right);
        let (long, wide) = (self.long / scale, (self.wide / scale).max(0.8));
        let mut edge = corners(line);
        // From the left, or from the top.
        let level = out.y.abs() > out.x.abs();
        if edge.first().zip(edge.last()).is_some_and(|(from, to)| if level { from.x > to.x } else { from.y > to.y }) {
            edge.reverse();
        }
        let all = length(&edge);
        let on = |far: f64| place(&edge, far.clamp(0.0, all)).map_or(Point::ORIGIN, |(point, _)| point);
        let along = Vec2::new(-out.y, out.x);
        match self.how {
            How::Handle => {
                let span = (all * SPAN).min(long * 0.5);
                let (from, to) = (on((all - span) / 2.0), on((all + span) / 2.0));
                let up = out * ((long - span) / 2.0 + span * 0.15).min(high * 0.7) * 1.25;
                page.path(class, ribbon(CubicBez::new(from, from + up, to + up, to), wide));
            }
            How::Loop => {
                let from = at.unwrap_or_else(|| on(if level { all / 2.0 } else { all * DOWN }));
                let half = along * wide / 2.0;
                let tip = from + out * long;
                page.path(class, closed_line(&[from - half, tip - half * 0.8, tip + half * 0.8, from + half]));
            }
            How::Strap if level && self.nth.1 == 2 && out.y < 0.0 => {
                let inset = wide * 0.5;
                let from = on(if self.nth.0 == 0 { inset } else { all - inset });
                let up = out * long.min(high * REACH);
                let side = if self.nth.0 == 0 { 1.0 } else { -1.0 };
                let to = on(all / 2.0) + up - Vec2::new(wide * 0.5 * side, 0.0);
                let lean = Vec2::new((to.x - from.x) * 0.75, 0.0);
                page.path(
                    class,
                    ribbon(
                        CubicBez::new(from, from + up * 0.75, to - lean * 0.8, to + Vec2::new(lean.x * 0.25, 0.0)),
                        wide,
                    ),
                );
            }
            How::Strap | How::Tails => {
                let share = match (self.nth, level) {
                    ((0, 1), true) => all / 2.0,
                    ((0, 1), false) if self.how == How::Tails => all / 2.0,
                    ((0, 1), false) => wide * 0.7,
                    ((at, count), _) => all * (at as f64 + 0.5) / count as f64,
                };
                let from = at.unwrap_or_else(|| on(share));
                let far = long.min(high * REACH);
                let down = Vec2::new(0.0, 1.0);
                let tails: &[f64] = if self.how == How::Tails { &[1.0, 0.8] } else { &[1.0] };
                for more in tails {
                    let to = from + out * (far * 0.5 * more) + down * (far * 0.75);
                    page.path(
                        class,
                        ribbon(CubicBez::new(from, from + out * far * 0.45, to - down * far * 0.5, to), wide),
                    );
                }
            }
        }
    }
}

/// A ribbon along a curve.
pub(super) fn ribbon(curve: CubicBez, wide: f64) -> BezPath {
    let deriv = curve.deriv();
    let side = |way: f64| {
        (0..=24).map(move |at| {
            let share = f64::from(at) / 24.0;
            let along = deriv.eval(share).to_vec2();
            let along = if along.hypot() < 1e-9 { curve.p3 - curve.p0 } else { along };
            let along = along / along.hypot().max(1e-9);
            curve.eval(share) + Vec2::new(-along.y, along.x) * (way * wide / 2.0)
        })
    };
    let mut all: Vec<Point> = side(1.0).collect();
    all.extend(side(-1.0).collect::<Vec<_>>().into_iter().rev());
    closed_line(&all)
}

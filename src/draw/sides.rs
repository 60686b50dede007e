//! The sides of a thing: its pieces laid beside each other as they are sewn, right side out and turned to the stitching
//! line, seen from the front and from the back.
//!
//! Edges that face each other lie side by side on one side of the thing; edges that face the same way lie on each other,
//! so that the other piece belongs to the other side. Names with “front” and “back” go before that.

use kurbo::{Affine, Point, Rect, Shape as _, Vec2};

use super::bands::is_band;
use super::cloth::Face;
use super::desk::Desk;
use super::inside::Detail;
use super::part::{Part, Who};
use super::past::Held;
use super::seen::{area, is_seen, side_of};
use super::trace::{corners, length, straight};
use crate::resolve::CopyId;

/// How nearly two edges must face the same way.
const SAME: f64 = 0.7;
/// Which share of the first piece of a side another one has at least that is named after none.
const LARGE: f64 = 0.3;
/// How deep a bent edge is at least that goes round a base, as a share of the distance of its ends.
const ROUND: f64 = 0.3;

/// A side of a thing, in mm on paper.
#[derive(Default)]
pub(super) struct Side {
    pub parts: Vec<Part>,
}

impl Side {
    /// The box of its cloth.
    pub fn bounds(&self) -> Rect {
        let boxes = self.parts.iter().map(Part::bounds);
        boxes.reduce(|one, other| one.union(other)).unwrap_or(Rect::ZERO)
    }

    pub fn part(&self, copy: CopyId) -> Option<&Part> {
        self.parts.iter().find(|part| part.who == Who::Copy(copy))
    }
}

/// A piece right side up without what is only told to the one who makes it.
pub(super) fn smooth(desk: &Desk<'_, '_>, copy: CopyId, scale: f64) -> Option<Part> {
    let mut part = Part::copy(desk, copy, Face::Right, scale)?;
    part.inside.iter_mut().for_each(|(_, details)| details.retain(|detail| !matches!(detail, Detail::Up(_))));
    Some(part)
}

/// A way to lay a piece on.
struct Trial {
    /// The lowest is the best.
    cost: f64,
    side: usize,
    part: Part,
    /// The edge that is then taken.
    edge: (CopyId, String),
}

/// What is laid so far.
struct Laying<'d, 'a, 'e> {
    desk: &'d Desk<'a, 'e>,
    scale: f64,
    root: CopyId,
    sides: [Side; 2],
    taken: Vec<(CopyId, String)>,
}

/// The front and the back of the thing whose largest piece is `root`; the back is empty where nothing lies there, or the
/// thing has one side alone.
pub(super) fn sides(desk: &Desk<'_, '_>, root: CopyId, scale: f64, both: bool) -> Option<[Side; 2]> {
    let part = smooth(desk, root, scale)?;
    let mut laying = Laying { desk, scale, root, sides: Default::default(), taken: Vec::new() };
    laying.sides[side_of(desk, root).filter(|_| both).unwrap_or(0)].parts.push(part);
    let seen: Vec<CopyId> =
        desk.edition.cast.copies().map(|(copy, _)| copy).filter(|copy| is_seen(desk, *copy)).collect();
    loop {
        let open = seen.iter().filter(|copy| laying.sides.iter().all(|side| side.part(**copy).is_none()));
        let trials = open.flat_map(|copy| laying.trials(*copy)).filter(|trial| both || trial.side == 0);
        let Some(best) = trials.min_by(|one, other| one.cost.total_cmp(&other.cost)) else { break };
        laying.taken.push(best.edge);
        laying.sides[best.side].parts.push(best.part);
    }
    Some(laying.sides)
}

impl Laying<'_, '_, '_> {
    fn trials(&self, copy: CopyId) -> Vec<Trial> {
        let mut found = Vec::new();
        if is_band(self.desk, copy) {
            return found;
        }
        let Some(part) = smooth(self.desk, copy, self.scale) else { return found };
        for seam in &self.desk.past.seams {
            let edges = |of: CopyId| {
                seam.members.iter().filter_map(move |one| match one {
                    Held::Edge(other, edge) if *other == of => Some(edge.as_str()),
                    _ => None,
                })
            };
            let own: Vec<&str> = edges(copy).collect();
            if own.is_empty() {
                continue;
            }
            let of_sides = |at: usize| {
                let mut all = super::past::copies(&seam.members).into_iter();
                all.any(|other| self.sides[at].part(other).is_some())
            };
            for (at, side) in self.sides.iter().enumerate() {
                for laid in &side.parts {
                    let Who::Copy(on) = laid.who else { continue };
                    for (edge, to) in own.iter().flat_map(|edge| edges(on).map(move |to| (*edge, to))) {
                        let mut trial = self.trial((copy, &part, edge), (on, laid, to), at);
                        // What is sewn to both sides at once lies on the other one.
                        let both = of_sides(1 - at);
                        trial.iter_mut().filter(|one| both && one.side == at).for_each(|one| one.cost += 8.0);
                        found.extend(trial);
                    }
                }
            }
        }
        found
    }

    fn trial(
        &self,
        (copy, part, edge): (CopyId, &Part, &str),
        (on, laid, to): (CopyId, &Part, &str),
        at: usize,
    ) -> Option<Trial> {
        let (mine, there) = (part.hold(edge)?, laid.hold(to)?);
        if is_round(part, edge) && !is_round(laid, to) {
            return None;
        }
        let facing = mine.1.dot(there.1);
        let named = side_of(self.desk, copy).filter(|_| side_of(self.desk, self.root).is_some() || facing < -SAME);
        let upright = there.1.y.abs() > SAME;
        let side = match named {
            Some(side) => side,
            None if facing > SAME => 1 - at,
            None if facing < -SAME => at,
            None => return None,
        };
        let other = side != at;
        // What faces the same way lies behind, and what faces another way beside or below.
        if facing > -SAME && (!other || facing < SAME) {
            return None;
        }
        if named.is_none() && other && area(self.desk, copy) < LARGE * area(self.desk, self.root) {
            return None;
        }
        // The other side is seen from behind: left is right there.
        let turn = if other { Affine::FLIP_X } else { Affine::IDENTITY };
        let point = turn * there.0;
        let inner = (turn * (there.0 + there.1)) - point;
        let wanted = if other { inner } else { -inner };
        let ways = [Affine::IDENTITY, Affine::FLIP_X, Affine::rotate(std::f64::consts::PI)];
        let (nth, way) = ways.into_iter().enumerate().find(|(_, way)| way_of(*way, mine.1).dot(wanted) > SAME)?;
        let moved = part.clone().moved(way);
        let by = point - way * mine.0;
        let long = |part: &Part, edge: &str| part.length(edge);
        let (one, two) = (long(part, edge), long(laid, to));
        let unlike = (one - two).abs() / one.max(two).max(1e-9);
        let taken = self.taken.contains(&(on, to.to_owned()));
        let cost = if taken { 8.0 } else { 0.0 }
            + 2.0 * nth as f64
            + if edge == to { 0.0 } else { 0.5 }
            + if unlike > 0.15 && !upright { 6.0 } else { unlike };
        Some(Trial { cost, side, part: moved.moved(Affine::translate(by)), edge: (on, to.to_owned()) })
    }
}

fn way_of(way: Affine, along: Vec2) -> Vec2 {
    way * along.to_point() - way * Point::ORIGIN
}

/// Whether an edge is bent so far that it goes round a base.
fn is_round(part: &Part, edge: &str) -> bool {
    let Some(line) = part.rim(edge).and_then(|rim| rim.lines.first()) else { return false };
    if straight(line).is_some() {
        return false;
    }
    let points = corners(line);
    let apart = points[0].distance(points[points.len() - 1]);
    length(&points) > apart * (1.0 + ROUND) || line.bounding_box().area() < 1e-9
}

//! A thing with a round base as it stands when it is made up: its wall goes round, its rim is open or closed by a second
//! round, its pockets lie on its front and its handles hang in its rim.
//!
//! A wall of the length C goes round a base that is C / π wide (plane geometry).

use std::f64::consts::PI;

use kurbo::{Affine, BezPath, Point, Vec2};

use super::bag::lining_of;
use super::cloth::Face;
use super::desk::Desk;
use super::hung::hung;
use super::laid_on::{patches, set_on};
use super::page::Page;
use super::paint::{CLOSE, edges_of};
use super::part::{Part, Who};
use super::past::{Seam, copies};
use super::seen::{is_seen, side_of};
use super::sides::smooth;
use super::sized::{Length, Rows};
use super::trace::{closed_line, open_line};
use crate::resolve::CopyId;

/// How far the sides of a round may differ, and its area from that of a circle, as a share.
const ROUND: f64 = 0.03;
/// How far the length of a wall may lie from that of its base, as a share.
const LONG: f64 = 0.08;
/// How high a level circle is seen, as a share of its width.
const TILT: f64 = 0.26;
/// Into how many parts half a circle is divided.
const PARTS: i32 = 48;
/// How nearly an edge must face down or up.
const LEVEL: f64 = 0.9;

/// What stands on a round base.
pub(super) struct Drum {
    base: CopyId,
    /// The pieces of its wall, that before first.
    walls: Vec<CopyId>,
    /// What closes it above.
    lid: Option<CopyId>,
    /// In mm of cloth.
    wide: f64,
    high: f64,
}

/// The thing that stands on a round base, where there is one. `plain` is the desk whose pieces are made up.
pub(super) fn of(plain: &Desk<'_, '_>) -> Option<Drum> {
    let seams = &plain.past.seams;
    let (base, walls, wide) = seams.iter().find_map(|seam| round_of(plain, seam, -1.0))?;
    let lid = seams.iter().find_map(|seam| round_of(plain, seam, 1.0).filter(|lid| lid.0 != base && lid.1 == walls));
    let part = smooth(plain, *walls.first()?, 1.0)?;
    Some(Drum { base, walls, lid: lid.map(|lid| lid.0), wide, high: part.bounds().height() })
}

/// The round that a seam holds, the pieces of the wall that it holds by edges on one side, `way` from there into the
/// piece, and how wide the round is.
fn round_of(plain: &Desk<'_, '_>, seam: &Seam, way: f64) -> Option<(CopyId, Vec<CopyId>, f64)> {
    let all: Vec<CopyId> = copies(&seam.members).into_iter().filter(|copy| is_seen(plain, *copy)).collect();
    let (base, wide) = all.iter().find_map(|copy| Some((*copy, round(plain, *copy)?)))?;
    let mut walls: Vec<CopyId> = all.into_iter().filter(|copy| *copy != base).collect();
    let mut long = 0.0;
    for wall in &walls {
        let part = smooth(plain, *wall, 1.0)?;
        for edge in edges_of(seam, *wall) {
            if !part.runs_straight(edge) || part.hold(edge)?.1.y * way < LEVEL {
                return None;
            }
            long += part.length(edge);
        }
    }
    walls.sort_by_key(|wall| side_of(plain, *wall).unwrap_or(1));
    ((long / (PI * wide) - 1.0).abs() <= LONG).then_some((base, walls, wide))
}

/// How wide a copy is between its stitching lines, where it is round.
fn round(plain: &Desk<'_, '_>, copy: CopyId) -> Option<f64> {
    let part = smooth(plain, copy, 1.0)?;
    let bounds = part.bounds();
    let (wide, high) = (bounds.width(), bounds.height());
    let area = kurbo::Shape::area(&part.outline).abs();
    let is_round = (wide / high - 1.0).abs() <= ROUND && (area / (PI / 4.0 * wide * high) - 1.0).abs() <= ROUND;
    is_round.then_some((wide + high) / 2.0)
}

impl Drum {
    /// Whether a copy is one of its pieces.
    pub fn has(&self, copy: CopyId) -> bool {
        self.base == copy || self.lid == Some(copy) || self.walls.contains(&copy)
    }

    /// A point on the level circle so high above the base: 0 at the front, a quarter turn at its right end.
    fn at(&self, turn: f64, up: f64, scale: f64) -> Point {
        let far = self.wide / 2.0 / scale;
        Point::new(far * turn.sin(), far * TILT * turn.cos() - up / scale)
    }

    /// Half of a level circle from its left end to its right one, before or behind.
    fn half(&self, before: bool, up: f64, scale: f64) -> Vec<Point> {
        let turn = |part: i32| PI * (f64::from(part) / f64::from(PARTS) - 0.5);
        let turned = |part: i32| if before { turn(part) } else { PI - turn(part) };
        (0..=PARTS).map(|part| self.at(turned(part), up, scale)).collect()
    }

    /// Draws it.
    pub fn draw<'a>(&self, desk: &Desk<'a, '_>, plain: &Desk<'a, '_>, scale: f64, rows: &mut Rows) -> Option<Page<'a>> {
        let front = *self.walls.first()?;
        let mut page = Page::new(desk.ruler);
        let (rim, far_rim) = (self.half(true, self.high, scale), self.half(false, self.high, scale));
        let base = self.half(true, 0.0, scale);
        let high = self.high / scale;
        let all = hung(desk);
        // What hangs in the back of the rim lies behind the thing; a wall of one piece has its handles before.
        let draw = |page: &mut Page<'_>, behind: bool| {
            for one in all.iter().filter(|one| one.on.1.contains("top") && self.walls.contains(&one.on.0)) {
                let of_back = one.on.0 != front || (self.walls.len() == 1 && one.nth.0 > 0);
                if of_back == behind {
                    let line = open_line(if of_back { &far_rim } else { &rim });
                    one.draw(desk, page, (&line, Vec2::new(0.0, -1.0)), None, (high, scale));
                }
            }
        };
        draw(&mut page, true);
        let ring = |back: &[Point]| closed_line(&rim.iter().chain(back.iter().rev()).copied().collect::<Vec<_>>());
        let inside = match (self.lid, lining_of(desk, front)) {
            (Some(lid), _) => desk.class(lid, Face::Right),
            (None, Some(lining)) => desk.class(lining, Face::Right),
            (None, None) => desk.class(front, Face::Wrong),
        };
        page.path(inside, ring(&far_rim));
        let wall: BezPath = closed_line(&rim.iter().chain(base.iter().rev()).copied().collect::<Vec<_>>());
        page.path(desk.class(front, Face::Right), wall.clone());
        let middle = Point::new(0.0, -high / 2.0);
        desk.quilting(&mut page, front, (&wall, middle), Affine::IDENTITY, scale);
        self.on_front(plain, &mut page, front, scale);
        for (copy, edge, far) in plain.past.topstitched.iter().filter(|(copy, ..)| *copy == front) {
            if edge.contains("top") && is_seen(desk, *copy) {
                page.path("stitched", open_line(&self.half(true, self.high - far.unwrap_or(CLOSE), scale)));
            }
        }
        draw(&mut page, false);
        let ends = |line: &[Point]| Some((*line.first()?, *line.last()?));
        let ((left, right), (up, _)) = (ends(&base)?, ends(&rim)?);
        let down = Vec2::new(0.0, 1.0);
        rows.set(
            &mut page,
            &[
                Length { from: left, to: right, away: down, mm: self.wide },
                Length { from: up, to: left, away: Vec2::new(-1.0, 0.0), mm: self.high },
            ],
        );
        Some(page)
    }

    /// What lies on the front, turned with the wall.
    fn on_front(&self, plain: &Desk<'_, '_>, page: &mut Page<'_>, front: CopyId, scale: f64) {
        let Some(part) = smooth(plain, front, scale) else { return };
        let bounds = part.bounds();
        for patch in patches(plain, &part, &self.walls, scale) {
            let Who::Copy(copy) = patch.who else { continue };
            let from = patch.bounds().center();
            let turn = (from.x - bounds.center().x) * scale / (self.wide / 2.0);
            if !is_seen(plain, copy) || turn.abs() > PI / 3.0 {
                continue;
            }
            let to = self.at(turn, (bounds.y1 - from.y) * scale, scale);
            let narrowed = Affine::scale_non_uniform(turn.cos(), 1.0);
            let by = Affine::translate(to.to_vec2()) * narrowed * Affine::translate(-from.to_vec2());
            let patch: Part = patch.moved(by);
            plain.paint(page, &patch, Vec2::ZERO, scale);
            set_on(plain, page, &patch, scale);
        }
    }
}

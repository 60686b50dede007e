//! Where the gap of a seam lies: the same place on its edge in every drawing, from the step that leaves it to the one that
//! closes it.

use kurbo::{Point, Vec2};

use super::desk::Desk;
use super::part::{Part, Who};
use super::past::{Held, Seam, millimetres};
use super::trace::{corners, inward, length, place};
use crate::geometry::Edge;
use crate::measure::{Dimension, to_f64};
use crate::model::Far;
use crate::resolve::CopyId;

/// How near to each other two ends are one corner, in mm of cloth.
const SAME: f64 = 0.1;

/// A gap on an edge of a part.
#[derive(Debug, Clone)]
pub(super) struct Gap {
    /// How long it is, in mm on paper.
    pub long: f64,
    /// The edge and how far along its middle lies, as a share; `None` for the middle of the longest edge.
    pub at: Option<(String, f64)>,
}

impl Gap {
    /// The middle of the gap on its edge of a part, and the direction from there into the part.
    pub fn middle(&self, part: &Part) -> Option<(Point, Vec2)> {
        let (edge, share) = self.at.as_ref()?;
        let line = part.rim(edge)?.lines.first()?;
        let (_, inner) = inward(line, &part.outline)?;
        let points = corners(line);
        let (point, along) = place(&points, length(&points) * share)?;
        let across = Vec2::new(-along.y, along.x).normalize();
        Some((point, if across.dot(inner) < 0.0 { -across } else { across }))
    }
}

impl Desk<'_, '_> {
    /// The gap of a seam on a part; `None` where it has none.
    pub fn gap_on(&self, seam: &Seam, who: Who, scale: f64) -> Option<Gap> {
        let long = seam.gap?;
        let at = match who {
            Who::Copy(copy) => self.gap_share(seam, copy, long),
            Who::Zip(_) => None,
        };
        Some(Gap { long: long / scale, at })
    }

    fn gap_share(&self, seam: &Seam, copy: CopyId, long: f64) -> Option<(String, f64)> {
        let Some(Held::Edge(first, edge)) = seam.members.first() else { return None };
        let only = |copy: CopyId| {
            let mut own = seam.members.iter().filter_map(|member| match member {
                Held::Edge(other, edge) if *other == copy => Some(edge.clone()),
                _ => None,
            });
            own.next().filter(|_| own.next().is_none())
        };
        only(*first)?;
        let share = self.first_share(seam, *first, edge, long)?;
        let own = only(copy)?;
        // Laid right sides together, edges with their insides to the same hand meet end to beginning.
        let meets = copy == *first || self.runs_round(copy, &own)? != self.runs_round(*first, edge)?;
        Some((own, if meets { share } else { 1.0 - share }))
    }

    /// How far along the edge that its fact names first the middle of a gap lies.
    fn first_share(&self, seam: &Seam, copy: CopyId, edge: &str, long: f64) -> Option<f64> {
        let step = self.edition.steps().find(|step| step.number == seam.step)?;
        let placed = step.works.get(seam.work)?.leave_at.as_ref()?;
        let shape = self.edition.values.whole(self.edition.cast[copy].piece)?;
        let edges = shape.edges();
        let at = edges.iter().position(|own| own.name == edge)?;
        // A place is counted on the line of the seam; its edge is longer by the allowances at its ends.
        let (whole, cut) = (edges[at].length, length(&corners(&edges[at].cut)));
        let beside = placed.beside.or(placed.place.from.as_ref().map(|from| from.text.as_str()));
        let from_end = match beside {
            None | Some("start") => false,
            Some("end") => true,
            Some(beside) => ends_at(edges, at, beside)?,
        };
        let far = match placed.place.far {
            _ if placed.mark.is_some() => return None,
            Far::Here => 0.0,
            Far::There => whole - long,
            Far::Centre => (whole - long) / 2.0,
            Far::Notch(_) => return None,
            Far::Along(_) => match millimetres(placed.along?) {
                Some(far) => far,
                None if placed.along?.quantity.dimension == Dimension::Count => {
                    to_f64(placed.along?.quantity.value) * whole
                }
                None => return None,
            },
        };
        let share = ((cut - whole) / 2.0 + far + long / 2.0) / cut;
        (cut > 0.0 && (0.0..=1.0).contains(&share)).then_some(if from_end { 1.0 - share } else { share })
    }

    /// Whether the inside of a copy lies to the left of an edge as that runs, where one sees its right side.
    fn runs_round(&self, copy: CopyId, edge: &str) -> Option<bool> {
        let member = &self.edition.cast[copy];
        let shape = self.edition.values.whole(member.piece)?;
        let line = &shape.edges().iter().find(|own| own.name == edge)?.cut;
        let (_, inner) = inward(line, &shape.cutting().path)?;
        let points = corners(line);
        let (_, along) = place(&points, length(&points) / 2.0)?;
        Some((along.cross(inner) > 0.0) != member.mirrored)
    }
}

/// Whether an edge meets another at its end; `None` where it does not meet it, or at both of its ends.
fn ends_at(edges: &[Edge], at: usize, beside: &str) -> Option<bool> {
    let ends = |edge: &Edge| {
        let points = corners(&edge.path);
        Some([*points.first()?, *points.last()?])
    };
    let [start, end] = ends(&edges[at])?;
    let its = edges.iter().filter(|edge| edge.name == beside).filter_map(ends).flatten();
    let its: Vec<Point> = its.collect();
    let meets = |point: Point| its.iter().any(|other| other.distance(point) < SAME);
    (meets(start) != meets(end)).then(|| meets(end))
}

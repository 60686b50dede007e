//! A piece cut on the fold, opened: its edges as they are sewn. An edge that meets the fold is one with its
//! mirror image; an edge off the fold stands twice.

use kurbo::{Affine, Point, Vec2};

use super::fold::Fold;
use super::ring::{ExactPoint, Named, Ring, Seg};
use crate::measure::Exact;

/// An opened line's edges, in their order along it.
pub(super) struct Opened {
    /// The edges of the whole, and the runs of the line that the author drew.
    pub ring: Ring,
    /// For each of those edges the one that it comes from, by its place in the half.
    pub from: Vec<usize>,
    /// The runs of the other line.
    pub other: Vec<Seg>,
}

/// Opens both lines of a piece; `edges` are those of the half.
pub(super) fn open(edges: &[Named], author: &[Seg], other: &[Seg], fold: &Fold) -> Opened {
    let numbers = Numbers::of(edges, author, fold);
    let ring = Ring { edges: numbers.named, segs: fold.whole(author, &numbers.twins, numbers.first) };
    Opened { other: fold.whole(other, &numbers.twins, numbers.first), ring, from: numbers.from }
}

/// The edges of the whole.
struct Numbers {
    named: Vec<Named>,
    from: Vec<usize>,
    /// For each edge of the half its number in the whole, and that of its mirror image: the same where the
    /// edge meets the fold. `None` for the fold itself.
    twins: Vec<Option<(usize, usize)>>,
    /// The edge that begins at the fold, by its place in the half.
    first: Option<usize>,
}

impl Numbers {
    /// Numbers the edges clockwise from the fold.
    fn of(edges: &[Named], author: &[Seg], fold: &Fold) -> Numbers {
        let half = fold.half(author);
        let first = half.first().and_then(|seg| seg.edge);
        let last = half.last().and_then(|seg| seg.edge);
        let mut order: Vec<usize> = Vec::new();
        for edge in half.iter().filter_map(|seg| seg.edge) {
            if !order.contains(&edge) {
                order.push(edge);
            }
        }
        let mut numbers = Numbers { named: Vec::new(), from: Vec::new(), twins: vec![None; edges.len()], first };
        let meets = |edge: usize| Some(edge) == first || Some(edge) == last;
        for edge in &order {
            let named = &edges[*edge];
            let name = match meets(*edge) {
                true => named.name.clone(),
                false => own_name(edges, *edge, fold),
            };
            let at = numbers.add(Named { name, against: named.against }, *edge);
            numbers.twins[*edge] = Some((at, at));
        }
        for edge in order.iter().rev().filter(|edge| !meets(**edge)) {
            let named = &edges[*edge];
            let twin = numbers.add(Named { name: twin_name(edges, *edge, fold), against: !named.against }, *edge);
            if let Some((_, mirrored)) = &mut numbers.twins[*edge] {
                *mirrored = twin;
            }
        }
        numbers
    }

    fn add(&mut self, named: Named, from: usize) -> usize {
        self.named.push(named);
        self.from.push(from);
        self.named.len() - 1
    }
}

/// What tells the two halves apart: the drawn one, and its mirror image, as the piece lies before one.
fn sides(fold: &Fold) -> (&'static str, &'static str) {
    let inside = fold.inside();
    match (inside.x.abs() >= inside.y.abs(), inside.x > 0.0, inside.y > 0.0) {
        (true, true, _) => ("right", "left"),
        (true, false, _) => ("left", "right"),
        (false, _, true) => ("lower", "upper"),
        (false, _, false) => ("upper", "lower"),
    }
}

/// An edge that says its side already keeps its name: the `right` of a rectangle folded at its `left`.
fn own_name(edges: &[Named], edge: usize, fold: &Fold) -> String {
    let name = &edges[edge].name;
    match swapped(edges, edge, fold) {
        Some(_) => name.clone(),
        None => format!("{}_{name}", sides(fold).0),
    }
}

fn twin_name(edges: &[Named], edge: usize, fold: &Fold) -> String {
    swapped(edges, edge, fold).unwrap_or_else(|| format!("{}_{}", sides(fold).1, edges[edge].name))
}

/// The name with its side changed for the other; `None` where it says no side, the wrong one, or another edge
/// is called so.
fn swapped(edges: &[Named], edge: usize, fold: &Fold) -> Option<String> {
    let pairs = match sides(fold) {
        (own @ ("left" | "right"), other) => [(own, other), (own, other)],
        ("lower", _) => [("lower", "upper"), ("bottom", "top")],
        _ => [("upper", "lower"), ("top", "bottom")],
    };
    let name = &edges[edge].name;
    let swap = |(own, other): &(&str, &str)| {
        let words: Vec<&str> = name.split('_').map(|word| if word == *own { *other } else { word }).collect();
        let new = words.join("_");
        (new != *name).then_some(new)
    };
    let new = pairs.iter().find_map(swap)?;
    let taken = edges.iter().enumerate().any(|(at, named)| named.name == new && !fold.is(at));
    (!taken).then_some(new)
}

impl Fold {
    /// The runs of the half, clockwise from the end of the fold to its beginning.
    fn half(&self, segs: &[Seg]) -> Vec<Seg> {
        let on_fold = |seg: &Seg| seg.edge.is_some_and(|edge| self.is(edge));
        let start = segs
            .iter()
            .zip(segs.iter().cycle().skip(1))
            .position(|(seg, next)| on_fold(seg) && !on_fold(next))
            .map_or(0, |last| last + 1);
        segs.iter().cycle().skip(start).take(segs.len()).filter(|seg| !on_fold(seg)).cloned().collect()
    }

    /// The runs of the whole: the half and its mirror image, beginning where the edge begins that the half
    /// begins with, so that every edge is one stretch.
    fn whole(&self, segs: &[Seg], twins: &[Option<(usize, usize)>], first: Option<usize>) -> Vec<Seg> {
        let half = self.half(segs);
        let mirror = self.mirror();
        let mirrored = half.iter().rev().map(|seg| {
            let ends = seg.ends.and_then(|[from, to]| Some([self.over(to)?, self.over(from)?]));
            Seg { edge: seg.edge, curve: mirror * seg.curve.reverse(), ends }
        });
        let mirrored: Vec<Seg> = mirrored.collect();
        let of_first = |seg: &&Seg| seg.edge.is_none() || seg.edge == first;
        let tail = mirrored.iter().rev().take_while(of_first).count();
        let (rest, begin) = match tail == mirrored.len() {
            true => (mirrored.as_slice(), &[][..]),
            false => mirrored.split_at(mirrored.len() - tail),
        };
        let numbered = |seg: &Seg, twin: bool| {
            let pair = seg.edge.and_then(|edge| twins.get(edge).copied().flatten());
            Seg { edge: pair.map(|(own, other)| if twin { other } else { own }), ..seg.clone() }
        };
        let begin = begin.iter().map(|seg| numbered(seg, true));
        let half = half.iter().map(|seg| numbered(seg, false));
        begin.chain(half).chain(rest.iter().map(|seg| numbered(seg, true))).collect()
    }

    /// The direction from the fold into the drawn half.
    fn inside(&self) -> Vec2 {
        Vec2::new(-self.along.y, self.along.x)
    }

    /// The mirror image of an exact point; `None` where the fold runs neither upright nor level, or is not
    /// known exactly.
    fn over(&self, [x, y]: ExactPoint) -> Option<ExactPoint> {
        let [from, to] = self.ends?;
        let two = Exact::from_integer(2);
        let beyond = |at: Exact, line: Exact| line.checked_mul(two)?.checked_sub(at);
        match (from[0] == to[0], from[1] == to[1]) {
            (true, false) => Some([beyond(x, from[0])?, y]),
            (false, true) => Some([x, beyond(y, from[1])?]),
            _ => None,
        }
    }

    /// The plane mirrored over the fold.
    pub(super) fn mirror(&self) -> Affine {
        Affine::reflect(self.at, self.along)
    }

    /// Whether a point lies on the line of the fold.
    pub(super) fn holds(&self, point: Point) -> bool {
        (point - self.at).cross(self.along).abs() < super::limits::JOIN_WITHIN
    }

    fn is(&self, edge: usize) -> bool {
        self.edge == edge
    }
}

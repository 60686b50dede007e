//! What was done before a step, as far as it shows in a drawing of the step.

use std::collections::{BTreeMap, BTreeSet};

use kurbo::Shape as _;

use super::lies::{Fold, Folds, Lies};
use super::told::{Quilting, words_of};
use crate::construct::play;
use crate::measure::{Dimension, to_f64};
use crate::model::Verb;
use crate::resolve::{CopyId, Edition, EditionStep, EditionWork, Inside, NotionId, Target, Touched, Worked, ZipEdge};

/// How a piece is told that was folded up.
const FOLDED: &str = "folded";

/// Something that work holds, its edges by the names that are drawn.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Held {
    Copy(CopyId),
    Edge(CopyId, String),
    Notion(NotionId),
    ZipEdge(NotionId, ZipEdge),
}

/// A seam.
#[derive(Debug, Clone)]
pub(super) struct Seam {
    /// What it holds, in the order of the fact.
    pub members: Vec<Held>,
    /// How far from the edge it is sewn, in mm of cloth; `None` when the fact does not say.
    pub allowance: Option<f64>,
    /// How long a gap it has, in mm of cloth; `None` for a closed one.
    pub gap: Option<f64>,
    /// What was basted to its edges before and is caught: it lies between the layers, and the facts do not say where.
    pub between: Vec<CopyId>,
    /// The work fact's place in its step, and the number of that.
    pub work: usize,
    pub step: usize,
}

/// The work before a step, and the seams of the step itself.
#[derive(Debug, Clone, Default)]
pub(super) struct Past {
    /// Seams sewn before.
    pub seams: Vec<Seam>,
    /// Seams that the step sews.
    pub now: Vec<Seam>,
    /// Copies that were fused or quilted to each other.
    pub layers: Vec<BTreeSet<CopyId>>,
    /// Copies that were quilted together, and how.
    pub quilted: Vec<(BTreeSet<CopyId>, Quilting)>,
    /// Copies, edges and distances in mm of cloth of topstitching; `None` when the fact gives none.
    pub topstitched: Vec<(CopyId, String, Option<f64>)>,
    /// Copies that were trimmed.
    pub trimmed: BTreeSet<CopyId>,
    /// Darts, pleats and tucks that are closed.
    pub closed: Vec<(CopyId, Inside)>,
    /// Copies that are folded up or gathered, where that tells their shape.
    pub lies: BTreeMap<CopyId, Lies>,
    /// Copies that are folded or gathered in a way that leaves their shape open; with the number of the step.
    pub changed: Vec<(CopyId, usize, &'static str)>,
    /// Copies with a boxed corner, so that nothing lies flat any more; with the number of the step.
    pub boxed: Vec<(CopyId, usize)>,
    /// Copies that were turned right side out; with the number of the step.
    pub turned: BTreeMap<CopyId, usize>,
}

impl Past {
    pub fn of(edition: &Edition<'_>, step: &EditionStep<'_>) -> Past {
        let mut past = Past::default();
        let history = play(edition, Some(step.number));
        for seam in history.seams() {
            let Some(work) = work_at(edition, seam.sewn.step, seam.sewn.work) else { continue };
            let now = seam.sewn.step == step.number;
            let closed_now = seam.closed.is_some_and(|closed| closed.step == step.number);
            let mut members: Vec<Held> = seam.members.iter().filter_map(|member| shown(member, edition)).collect();
            let mut between = Vec::new();
            if now {
                let mut loose = basted(edition, step.number, work);
                let caught = work.caught.iter().flat_map(|target| &target.touched);
                loose.extend(caught.filter_map(|touched| touched.copy()));
                loose.extend(held_as_one(edition, step.number, &loose));
                between = copies(&members);
                between.retain(|copy| loose.contains(copy));
                members.retain(|member| !matches!(member, Held::Edge(copy, _) if loose.contains(copy)));
            }
            let told = Seam {
                members,
                between,
                allowance: work.allowance.and_then(millimetres),
                gap: work.leave.and_then(millimetres).filter(|_| now || seam.open_gap || closed_now),
                work: seam.sewn.work,
                step: seam.sewn.step,
            };
            let told = pairs(work, told, edition);
            if now { past.now.extend(told) } else { past.seams.extend(told) }
        }
        for earlier in edition.steps_to(Some(step.number)).filter(|earlier| earlier.number < step.number) {
            for work in &earlier.works {
                past.note(work, earlier.number, edition);
            }
        }
        // What the step turns before it stitches is drawn as it is turned.
        for work in step.works.iter().take_while(|work| !work.verb.stitches()).filter(|work| work.verb == Verb::Turn) {
            past.turn(work, copies(&held(work, edition)), step.number);
        }
        past
    }

    /// All the work up to a step, its own too.
    pub fn after(edition: &Edition<'_>, step: &EditionStep<'_>) -> Past {
        let mut past = Past::default();
        let history = play(edition, Some(step.number));
        for seam in history.seams() {
            let Some(work) = work_at(edition, seam.sewn.step, seam.sewn.work) else { continue };
            let mut caught: BTreeSet<CopyId> = touched(&work.caught).filter_map(|touched| touched.copy()).collect();
            caught.extend(held_as_one(edition, seam.sewn.step, &caught));
            let held = seam.members.iter().filter(|member| member.copy().is_none_or(|copy| !caught.contains(&copy)));
            let members = held.filter_map(|member| shown(member, edition)).collect();
            let allowance = work.allowance.and_then(millimetres);
            let gap = work.leave.and_then(millimetres).filter(|_| seam.open_gap);
            let (work_at, step) = (seam.sewn.work, seam.sewn.step);
            let told = Seam { members, between: Vec::new(), allowance, gap, work: work_at, step };
            past.seams.extend(pairs(work, told, edition));
        }
        for step in edition.steps_to(Some(step.number)) {
            step.works.iter().for_each(|work| past.note(work, step.number, edition));
        }
        past
    }

    /// What a work leaves behind that shows later; seams are told by the play.
    pub fn note(&mut self, work: &EditionWork<'_>, step: usize, edition: &Edition<'_>) {
        let targets = held(work, edition);
        let whole = targets.iter().filter_map(|target| match target {
            Held::Copy(copy) => Some(*copy),
            _ => None,
        });
        match work.verb {
            Verb::Fuse | Verb::Quilt => {
                let named = copies(&targets);
                let group: BTreeSet<CopyId> = named.iter().copied().collect();
                if let Some(told) = Quilting::of(edition, &named).filter(|_| work.verb == Verb::Quilt) {
                    self.quilted.push((group.clone(), told));
                }
                if group.len() > 1 {
                    self.layers.push(group);
                }
            }
            Verb::Topstitch | Verb::Edgestitch | Verb::Understitch => {
                let far = work.allowance.and_then(millimetres);
                let edges = targets.into_iter().filter_map(|target| match target {
                    Held::Edge(copy, edge) => Some((copy, edge, far)),
                    _ => None,
                });
                self.topstitched.extend(edges);
            }
            Verb::Trim => self.trimmed.extend(whole),
            Verb::Fold => self.fold(work, step, edition),
            Verb::Open => whole.for_each(|copy| {
                self.lies.entry(copy).or_default().folds = Folds::NONE;
                self.changed.retain(|(other, _, how)| *other != copy || *how != FOLDED);
            }),
            Verb::Dart | Verb::Pleat | Verb::Tuck => {
                self.closed.extend(work.touched().filter_map(|touched| match touched {
                    Touched::Inside(copy, inside) => Some((copy, inside)),
                    _ => None,
                }))
            }
            Verb::Gather => self.gather(&targets, step, edition),
            Verb::Box => self.boxed.extend(copies(&targets).into_iter().map(|copy| (copy, step))),
            Verb::Turn => self.turn(work, copies(&targets), step),
            _ => {}
        }
    }

    fn fold(&mut self, work: &EditionWork<'_>, step: usize, edition: &Edition<'_>) {
        for touched in work.touched() {
            let (copy, fold) = match touched {
                Touched::Copy(copy) => (copy, folded(work, copy, edition)),
                Touched::Inside(copy, _) => (copy, None),
                _ => continue,
            };
            match fold {
                Some(fold) => {
                    let lies = self.lies.entry(copy).or_default();
                    lies.folds = lies.folds.after(fold);
                }
                None => self.changed.push((copy, step, FOLDED)),
            }
        }
    }

    fn gather(&mut self, targets: &[Held], step: usize, edition: &Edition<'_>) {
        for target in targets {
            let Held::Edge(copy, edge) = target else { continue };
            match gathered_to(edition, target) {
                Some(share) => self.lies.entry(*copy).or_default().gathered.push((edge.clone(), share)),
                None => self.changed.push((*copy, step, "gathered")),
            }
        }
    }

    /// A copy with all that seams hold together with it.
    pub fn sewn_to(&self, copy: CopyId) -> Vec<CopyId> {
        joined(vec![copy], self.seams.iter())
    }

    /// What is turned right side out is all that is sewn to it; a facing is turned by itself.
    fn turn(&mut self, work: &EditionWork<'_>, named: Vec<CopyId>, step: usize) {
        let aside = work.work.words.iter().any(|words| words.text.contains("inside"));
        let named = joined(named, self.seams.iter().filter(|seam| seam.step <= step && !aside));
        named.into_iter().for_each(|copy| {
            self.turned.entry(copy).or_insert(step);
        });
    }

    /// How a copy lies.
    pub fn lies(&self, copy: CopyId) -> Lies {
        self.lies.get(&copy).cloned().unwrap_or_default()
    }

    /// Whether a copy lies folded up, so that its right side is outside all round.
    pub fn is_folded(&self, copy: CopyId) -> bool {
        self.lies.get(&copy).is_some_and(|lies| !lies.folds.is_none())
    }

    /// Whether an edge was sewn before its copy was turned.
    pub fn is_turned_in(&self, copy: CopyId, edge: &str) -> bool {
        let Some(turned) = self.turned.get(&copy) else { return false };
        self.seams_of(copy).any(|(seam, own)| own == edge && seam.step <= *turned)
    }

    /// What is closed in a copy.
    pub fn closed_in(&self, copy: CopyId) -> Vec<Inside> {
        self.closed.iter().filter(|(other, _)| *other == copy).map(|(_, inside)| *inside).collect()
    }

    /// The seams before that hold an edge of a copy, with the edge's name.
    pub fn seams_of(&self, copy: CopyId) -> impl Iterator<Item = (&Seam, &str)> {
        self.seams.iter().flat_map(move |seam| {
            seam.members.iter().filter_map(move |member| match member {
                Held::Edge(other, edge) if *other == copy => Some((seam, edge.as_str())),
                _ => None,
            })
        })
    }
}

fn touched(targets: &[Target]) -> impl Iterator<Item = &Touched> {
    targets.iter().flat_map(|target| &target.touched)
}

/// Copies with all that seams hold together with them.
fn joined<'s>(mut named: Vec<CopyId>, seams: impl Iterator<Item = &'s Seam>) -> Vec<CopyId> {
    let mut seams: Vec<Vec<CopyId>> = seams.map(|seam| copies(&seam.members)).collect();
    while let Some(at) = seams.iter().position(|seam| seam.iter().any(|copy| named.contains(copy))) {
        for copy in seams.remove(at) {
            if !named.contains(&copy) {
                named.push(copy);
            }
        }
    }
    named
}

/// What a fact joins, side by side: each row of edges counts as one.
fn sides<'w>(work: &'w EditionWork<'_>) -> Vec<Vec<&'w Target>> {
    let mut sides: Vec<Vec<&Target>> = Vec::new();
    for target in &work.targets {
        match sides.last_mut() {
            Some(side) if target.row.is_some() && side[0].row == target.row => side.push(target),
            _ => sides.push(vec![target]),
        }
    }
    sides
}

/// A seam between two rows of pieces is a seam for each pair in them.
fn pairs(work: &EditionWork<'_>, seam: Seam, edition: &Edition<'_>) -> Vec<Seam> {
    let row = |side: &Vec<&Target>| {
        let all = side.iter().flat_map(|target| &target.touched);
        let row: Vec<Held> = all.filter_map(|touched| shown(touched, edition)).collect();
        (copies(&row).len() == row.len() && row.len() > 1).then_some(row)
    };
    let rows: Option<Vec<Vec<Held>>> = sides(work).iter().map(row).collect();
    let Some([one, other]) = rows.as_deref() else { return vec![seam] };
    let all = one.iter().chain(other);
    if one.len() != other.len() || !seam.between.is_empty() || !all.clone().all(|member| seam.members.contains(member))
    {
        return vec![seam];
    }
    let pair = |(one, other): (&Held, &Held)| Seam { members: vec![one.clone(), other.clone()], ..seam.clone() };
    one.iter().zip(other).map(pair).collect()
}

/// How a fact folds a whole copy that is a rectangle; `None` where that leaves its shape open.
pub(super) fn folded(work: &EditionWork<'_>, copy: CopyId, edition: &Edition<'_>) -> Option<Fold> {
    let words = words_of(work);
    let shape = edition.values.whole(edition.cast[copy].piece)?;
    let (wide, high) = shape.box_size();
    let fold = Fold::told(&words, (wide, high))?;
    let is_rectangle = (shape.cutting().path.area().abs() - wide * high).abs() < 1.0;
    (is_rectangle || fold == Fold::Opened).then_some(fold)
}

/// To which share of its length an edge is gathered: the seam that holds it says that.
fn gathered_to(edition: &Edition<'_>, edge: &Held) -> Option<f64> {
    let long = |side: &Vec<&Target>| -> f64 {
        let edges = side.iter().flat_map(|target| &target.touched).filter_map(|touched| match touched {
            Touched::Edge(copy, edge) => edition.edge(*copy, *edge).map(|edge| edge.closed),
            _ => None,
        });
        edges.sum()
    };
    let works = edition.steps().flat_map(|step| &step.works);
    let mut shares = works.filter_map(|work| {
        let sides = sides(work);
        let holds = |side: &&Vec<&Target>| {
            let all = side.iter().flat_map(|target| &target.touched);
            all.filter_map(|one| shown(one, edition)).any(|one| one == *edge)
        };
        let own = sides.iter().find(holds)?;
        let to = match work.gather.and_then(millimetres) {
            Some(to) => to,
            None if matches!(work.verb, Verb::Sew | Verb::Baste | Verb::Pin | Verb::Attach) && sides.len() > 1 => {
                sides.iter().filter(|side| !std::ptr::eq(*side, own)).map(long).fold(0.0, f64::max)
            }
            None => return None,
        };
        let share = to / long(own).max(1e-9);
        (share > 0.05).then_some(share.min(1.0))
    });
    shares.next()
}

/// Copies that were basted to something before a step and that a fact of it does not name.
fn basted(edition: &Edition<'_>, step: usize, work: &EditionWork<'_>) -> BTreeSet<CopyId> {
    let named: BTreeSet<CopyId> =
        work.named().flat_map(|target| &target.touched).filter_map(|touched| touched.copy()).collect();
    let earlier = edition.steps_to(Some(step)).filter(|earlier| earlier.number < step);
    let basting = earlier.flat_map(|step| &step.works).filter(|work| work.verb == Verb::Baste && !work.work.as_one);
    let loose: BTreeSet<CopyId> = basting.flat_map(|work| copies(&held(work, edition))).collect();
    loose.difference(&named).copied().collect()
}

/// Copies that were basted as one with others before a step.
fn held_as_one(edition: &Edition<'_>, step: usize, with: &BTreeSet<CopyId>) -> BTreeSet<CopyId> {
    let earlier = edition.steps_to(Some(step)).filter(|earlier| earlier.number < step);
    let basting = earlier.flat_map(|step| &step.works).filter(|work| work.verb == Verb::Baste && work.work.as_one);
    let groups = basting.map(|work| copies(&held(work, edition)));
    groups.filter(|group| group.iter().any(|copy| with.contains(copy))).flatten().collect()
}

/// The copies that targets name, each once, in order.
pub(super) fn copies(targets: &[Held]) -> Vec<CopyId> {
    let mut found = Vec::new();
    for target in targets {
        if let Held::Copy(copy) | Held::Edge(copy, _) = target
            && !found.contains(copy)
        {
            found.push(*copy);
        }
    }
    found
}

/// What a fact touches, as far as it can be drawn.
pub(super) fn held(work: &EditionWork<'_>, edition: &Edition<'_>) -> Vec<Held> {
    work.touched().filter_map(|touched| shown(&touched, edition)).collect()
}

/// `None` for what is unknown, which has been reported.
fn shown(touched: &Touched, edition: &Edition<'_>) -> Option<Held> {
    Some(match *touched {
        Touched::Copy(copy) | Touched::Inside(copy, _) => Held::Copy(copy),
        Touched::Edge(copy, edge) => Held::Edge(copy, edition.edge_word(copy, edge)),
        Touched::Notion(notion) => Held::Notion(notion),
        Touched::ZipEdge(notion, edge) => Held::ZipEdge(notion, edge),
        Touched::Unknown => return None,
    })
}

/// A length in mm.
pub(super) fn millimetres(worked: Worked) -> Option<f64> {
    (worked.quantity.dimension == Dimension::Length).then(|| to_f64(worked.quantity.value))
}

fn work_at<'a, 'e>(edition: &'a Edition<'e>, step: usize, work: usize) -> Option<&'a EditionWork<'e>> {
    edition.steps().find(|known| known.number == step)?.works.get(work)
}

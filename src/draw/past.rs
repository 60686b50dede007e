//! What was done before a step, as far as it shows in a drawing of the step.

use std::collections::BTreeSet;

use crate::construct::play;
use crate::measure::{Dimension, to_f64};
use crate::model::Verb;
use crate::resolve::{CopyId, Edition, EditionStep, EditionWork, Inside, NotionId, Touched, Worked, ZipEdge};

/// How a piece is told that was turned right side out.
pub(super) const TURNED: &str = "turned out";

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
    /// The work fact's place in its step.
    pub work: usize,
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
    /// Copies, edges and distances in mm of cloth of topstitching; `None` when the fact gives none.
    pub topstitched: Vec<(CopyId, String, Option<f64>)>,
    /// Copies that were trimmed.
    pub trimmed: BTreeSet<CopyId>,
    /// Darts, pleats and tucks that are closed.
    pub closed: Vec<(CopyId, Inside)>,
    /// Copies that are folded up as a whole, or gathered, so that their outline is no longer the one
    /// that was cut; with the number of the step.
    pub changed: Vec<(CopyId, usize, &'static str)>,
    /// Copies with a boxed corner, or turned out: nothing lies flat any more; with the number of the
    /// step.
    pub rounded: Vec<(CopyId, usize, &'static str)>,
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
                let loose = basted(edition, step.number, work);
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
            };
            if now { past.now.push(told) } else { past.seams.push(told) }
        }
        for earlier in edition.steps_to(Some(step.number)).filter(|earlier| earlier.number < step.number) {
            for work in &earlier.works {
                past.note(work, earlier.number, edition);
            }
        }
        past
    }

    fn note(&mut self, work: &EditionWork<'_>, step: usize, edition: &Edition<'_>) {
        let targets = held(work, edition);
        let whole = targets.iter().filter_map(|target| match target {
            Held::Copy(copy) => Some(*copy),
            _ => None,
        });
        match work.verb {
            Verb::Fuse | Verb::Quilt => {
                let group: BTreeSet<CopyId> = copies(&targets).into_iter().collect();
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
            Verb::Fold => self.changed.extend(whole.map(|copy| (copy, step, "folded"))),
            Verb::Dart | Verb::Pleat | Verb::Tuck => {
                self.closed.extend(work.touched().filter_map(|touched| match touched {
                    Touched::Inside(copy, inside) => Some((copy, inside)),
                    _ => None,
                }))
            }
            Verb::Gather => self.changed.extend(copies(&targets).into_iter().map(|copy| (copy, step, "gathered"))),
            Verb::Box => self.rounded.extend(copies(&targets).into_iter().map(|copy| (copy, step, "boxed"))),
            Verb::Turn => self.rounded.extend(copies(&targets).into_iter().map(|copy| (copy, step, TURNED))),
            _ => {}
        }
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

/// Copies that were basted to something before a step and that a fact of it does not name.
fn basted(edition: &Edition<'_>, step: usize, work: &EditionWork<'_>) -> BTreeSet<CopyId> {
    let named: BTreeSet<CopyId> =
        work.named().flat_map(|target| &target.touched).filter_map(|touched| touched.copy()).collect();
    let earlier = edition.steps_to(Some(step)).filter(|earlier| earlier.number < step);
    let basting = earlier.flat_map(|step| &step.works).filter(|work| work.verb == Verb::Baste && !work.work.as_one);
    let loose: BTreeSet<CopyId> = basting.flat_map(|work| copies(&held(work, edition))).collect();
    loose.difference(&named).copied().collect()
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

//! Words that several checks share.

use crate::construct::Moment;
use crate::resolve::{Edition, Target, Touched, Worked};
use crate::source::Span;

/// A length in mm as the booklet shows it in its first system: to the millimetre.
pub(super) fn length(edition: &Edition<'_>, millimetres: f64) -> String {
    let quantity = super::apart::millimetres(millimetres);
    edition.figures(&Worked { quantity, stated: None }).first.to_string().replace('\u{a0}', " ")
}

/// A value as the booklet shows it in its first system.
pub(super) fn length_of(edition: &Edition<'_>, worked: Worked) -> String {
    edition.figures(&worked).first.to_string().replace('\u{a0}', " ")
}

/// Another moment as seen from a step: "step 4", or the other work where both stand in one step.
pub(super) fn that_step(other: &Moment, own: &Moment) -> String {
    if other.step == own.step { "the other work of this step".to_owned() } else { format!("step {}", other.step) }
}

/// Where a name in the work of a shared part was handed to it; `None` where the part names it itself.
pub(super) fn handed(edition: &Edition<'_>, moment: Moment, edge: &str) -> Option<Span> {
    let part = edition.parts.iter().find(|part| part.steps.iter().any(|step| step.number == moment.step))?;
    let work = part.steps.iter().find(|step| step.number == moment.step)?.works.get(moment.work)?;
    let means = |target: &&Target| {
        let edges = target.touched.iter().filter_map(|touched| match touched {
            Touched::Edge(copy, named) => Some(edition.edge_name(*copy, *named)),
            _ => None,
        });
        edges.into_iter().any(|name| name == edge)
    };
    let target = work.targets.iter().find(means)?;
    let params = part.part.params.of(edition.size()).iter();
    let mut params =
        params.filter(|param| param.text.text.trim() == target.name.text || param.name.text == target.name.text);
    params.next().map(|param| param.text.span)
}

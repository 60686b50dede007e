//! Where a step that a size leaves out is the reason that nothing of it is used there.

use crate::model::{Step, is_for};
use crate::resolve::Edition;
use crate::source::Span;

/// The heading of the step that does something with one of these names, and that is for other sizes than this one.
pub(super) fn step_of_others(edition: &Edition<'_>, is_one: &dyn Fn(&str) -> bool) -> Option<Span> {
    let touches = |step: &Step| {
        let touched = step.works.iter().flat_map(|work| work.touches.iter().chain(&work.caught));
        touched.into_iter().any(|touch| is_one(touch.name.text.split('.').next().unwrap_or_default()))
    };
    let steps = edition.parts.iter().flat_map(|part| &part.part.steps);
    let mut left = steps.filter(|step| !is_for(step.sizes.as_ref(), edition.size()));
    left.find(|step| touches(step)).map(|step| step.span)
}

//! The stated amount of a fabric is less than the pieces need.

use super::Subject;
use super::words::length;
use crate::diag::{Finding, Findings};
use crate::resolve::Edition;
use crate::sheets::ClothLayout;

/// Looks at every fabric whose amount the author states, in each width that it is sold in.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let facts = &subject.draft.facts;
    for (edition, laid) in subject.editions.iter().zip(subject.cloth) {
        for layout in laid.iter().filter_map(|one| one.as_ref().ok()) {
            let fabric = &facts.fabrics[layout.bolt.fabric];
            let value = fabric.amount.as_ref().and_then(|amount| amount.get(edition.size()));
            let Some(value) = value.filter(|_| layout.exceeds_stated()) else { continue };
            let Some(width) = width(edition, layout) else { continue };
            let width = edition.figures(&width).first;
            findings.push(
                Finding::error("amount-too-small", value.span(), format!("this is less of `{}` than the pieces need", fabric.id.text))
                    .hint("state more, or leave `amount:` out to have it reckoned from the cutting layout")
                    .in_size(
                        edition.size(),
                        format!("on cloth {width} wide they take {}", length(edition, layout.unwashed())).replace('\u{a0}', " "),
                    ),
            );
        }
    }
}

fn width(edition: &Edition<'_>, layout: &ClothLayout) -> Option<crate::resolve::Worked> {
    let fabric = &edition.draft.facts.fabrics[layout.bolt.fabric];
    edition.sheet.quiet(fabric.widths.get(layout.bolt.width_at)?)
}

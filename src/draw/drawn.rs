//! Every mention that the compiler draws, made a figure like any other, and the faults where it cannot.

use std::path::Path;

use super::desk::Undrawn;
use super::step::draw;
use crate::construct::History;
use crate::diag::{Finding, Findings, did_you_mean};
use crate::faults::FIGURE_NOT_DRAWABLE;
use crate::figure::{BoundFigure, DRAW, Figures, Ruler, Studio};
use crate::model::Step;
use crate::resolve::{Edition, FigureUse};

/// Draws the steps that the editions ask for, and puts them among the figures.
pub fn draw_steps(
    editions: &[Edition<'_>],
    histories: &[History],
    studio: &Studio,
    figures: &mut Figures,
    findings: &mut Findings,
) {
    // One ruler for all sizes, which name the same pieces.
    let ruler = studio.ruler();
    for edition in editions {
        for (mention, scope) in edition.figure_uses() {
            if !mention.path.starts_with(DRAW) || figures.get(edition.size(), &mention.key).is_some() {
                continue;
            }
            let mut told = Findings::default();
            if let Some(figure) = drawn(mention, edition, scope.step, (studio, &ruler), &mut told) {
                figures.add(edition.size(), &mention.key, figure);
            }
            // Where the order of the steps is at fault, or only said to be meant, a step that cannot be drawn
            // most likely follows from it; it is told all the same unless an error stops the build.
            // That nothing stands behind a mention holds in any order.
            let idle = scope.step.is_none() || mention.path != "draw:work";
            let sound = idle || histories.get(edition.size()).is_none_or(|history| history.faults.is_empty());
            let follows = |finding: Finding| if sound { finding } else { finding.follows() };
            findings.extend(told.into_iter().map(follows));
        }
    }
}

/// Draws what a mention asks for; what cannot be drawn is a finding at the mention.
fn drawn(
    mention: &FigureUse,
    edition: &Edition<'_>,
    step: Option<&Step>,
    (studio, ruler): (&Studio, &Ruler<'_>),
    findings: &mut Findings,
) -> Option<BoundFigure> {
    let size = edition.size();
    let what = mention.path.strip_prefix(DRAW)?;
    let outcome = if what != "work" {
        Err(Undrawn {
            message: format!("`{}` is nothing that can be drawn", mention.path),
            hint: did_you_mean(&mention.path, ["draw:work"], "write `draw:work`, or the path of a drawing"),
            follows: false,
        })
    } else {
        let step = step.and_then(|step| edition.steps().find(|known| std::ptr::eq(known.step, step)));
        match step {
            Some(step) => draw(edition, step, ruler).map(|svg| (svg, step.number, step.step.id.as_ref())),
            None => Err(Undrawn {
                message: "no step's work stands behind this diagram".into(),
                hint: "move it below the heading of a step, or name the file of a drawing".into(),
                follows: false,
            }),
        }
    };
    let (text, number, id) = match outcome {
        Ok(drawing) => drawing,
        Err(undrawn) => {
            let finding = FIGURE_NOT_DRAWABLE.at(mention.span, undrawn.message).hint(undrawn.hint).in_size(size, "");
            findings.push(if undrawn.follows { finding.follows() } else { finding });
            return None;
        }
    };
    let name = id.map_or_else(|| format!("step-{number}"), |id| id.text.clone());
    let path = Path::new(&mention.path).join(name).to_string_lossy().replace('\\', "/");
    studio.finish(&text, path, mention.span, size, findings)
}

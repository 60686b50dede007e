//! The questions of one size: those that are general, and those of the steps that it has.

use std::path::Path;

use super::printed::{Block, Inline};
use super::prose::printing;
use super::references::Ends;
use super::scope::Scope;
use super::uses::Told;
use super::values::Values;
use crate::diag::{Finding, did_you_mean};
use crate::faults::{REFERENCE_BROKEN, REFERENCE_LEFT_OUT};
use crate::model::{Draft, Name, Question, is_for};

/// A question with its answer in one size.
#[derive(Debug, Clone, PartialEq)]
pub struct Answer {
    /// Its place among all questions.
    pub at: usize,
    /// Its step: the place of the step's part under `parts:`, and its own place there; `None` for a general question.
    pub step: Option<(usize, usize)>,
    /// What is asked.
    pub title: Vec<Inline>,
    /// What is answered.
    pub content: Vec<Block>,
}

/// The questions that a size has. One of a step goes where the step goes.
pub(super) fn answers(draft: &Draft, ends: &Ends, values: &Values<'_>, told: &mut Told) -> Vec<Answer> {
    let mut found = Vec::new();
    let here = |question: &Question| is_for(question.sizes.as_ref(), values.size());
    for (at, question) in draft.help.iter().enumerate().filter(|(_, question)| here(question)) {
        let step = match &question.step {
            None => None,
            Some(name) => match ends.step_at(&name.text) {
                Some((part, step, true)) => Some((part, step)),
                Some((.., false)) => {
                    // Who names sizes means each of them.
                    if question.sizes.is_some() {
                        told.findings.push(left_out(name, values.size()));
                    }
                    continue;
                }
                None => {
                    told.findings.push(nowhere(name, draft));
                    continue;
                }
            },
        };
        // The answer may name what its step may: the step's own figures, and what its part was handed.
        let scope = match step.and_then(|(part, step)| Some((draft.parts.get(part)?, step))) {
            Some((part, step)) => Scope {
                values,
                params: part.params.of(values.size()),
                folder: Path::new(""),
                step: part.steps.get(step),
            },
            None => Scope::plain(values),
        };
        let mut printer = printing(draft, (ends, step.map(|(part, _)| part)), scope, told);
        let (title, content) = (printer.inlines(&question.title), printer.blocks(&question.answer));
        found.push(Answer { at, step, title, content });
    }
    found
}

fn left_out(name: &Name, size: usize) -> Finding {
    REFERENCE_LEFT_OUT
        .at(name.span, format!("the step `{}` is left out in a size that this question is for", name.text))
        .hint("take `for=` out: the question goes where its step goes")
        .in_size(size, "")
}

fn nowhere(name: &Name, draft: &Draft) -> Finding {
    let id = name.text.as_str();
    if draft.parts.iter().any(|part| part.id.as_ref().is_some_and(|own| own.text == id)) {
        return REFERENCE_BROKEN
            .at(name.span, format!("`{id}` is a part, and a question belongs to a step"))
            .hint("name one of its steps, or take the braces out for a general question");
    }
    let known: Vec<&str> =
        draft.steps().filter_map(|(_, step)| step.id.as_ref()).map(|known| known.text.as_str()).collect();
    REFERENCE_BROKEN.at(name.span, format!("no step has the id `{id}`")).hint(did_you_mean(
        id,
        known,
        "write the id of the step, as it stands in its heading's braces, or take the braces out for a general question",
    ))
}

//! Where a figure comes from: the braces that print it, and behind them the facts that their formula names.

use super::evidence::Evidence;
use super::row::Origin;
use crate::model::{Expression, Step, Work};
use crate::resolve::{Edition, Scope};
use crate::source::Span;

/// How far names are followed to the facts behind them: all else stands in the table of measurements.
const DEPTH: usize = 2;

/// Leads formulas of one size back to what is written.
pub(super) struct Tracer<'a, 'b> {
    pub evidence: &'b Evidence<'a>,
    pub edition: &'b Edition<'a>,
    pub scope: &'b Scope<'b>,
}

impl Tracer<'_, '_> {
    /// What stands at `span`, and what its formula names.
    pub fn printed(&self, how: &'static str, formula: &Expression, span: Span) -> Vec<Origin> {
        let text = self.evidence.sources.text(span).trim().to_owned();
        let text = if text.is_empty() { formula.formula.text.trim().to_owned() } else { text };
        let mut found = vec![Origin { how, text, place: self.evidence.place(span) }];
        self.named(formula, DEPTH, &mut found);
        found
    }

    fn named(&self, formula: &Expression, depth: usize, found: &mut Vec<Origin>) {
        if depth == 0 {
            return;
        }
        for (name, _) in formula.formula.names() {
            if let Some(param) = self.scope.params.iter().find(|param| param.name.text == name) {
                self.note(found, "handed", format!("{name}: {}", param.text.text), param.text.span);
                if let Some(formula) = &param.expression {
                    self.named(formula, depth - 1, found);
                }
                continue;
            }
            if let Some(own) = self.scope.step.and_then(|step| own_fact(step, name)) {
                let text = format!("{name}: {}", own.formula.text.trim());
                self.note(found, "fact", text, own.span());
                self.named(own, depth - 1, found);
                continue;
            }
            let whole = self.scope.params.iter().find_map(|param| param.behind_dot(name));
            let name = whole.as_deref().unwrap_or(name);
            match self.edition.values.expression(name) {
                Some(formula) => {
                    let stated = formula.formula.as_measure().is_some();
                    let text = match stated {
                        true => name.to_owned(),
                        false => format!("{name} = {}", formula.formula.text.trim()),
                    };
                    self.note(found, if stated { "stated" } else { "formula" }, text, formula.span());
                    self.named(formula, depth - 1, found);
                }
                None => self.outline(name, found),
            }
        }
    }

    /// A measure of a piece has no formula: its outline gives it.
    fn outline(&self, name: &str, found: &mut Vec<Origin>) {
        let Some((owner, _)) = name.split_once('.') else { return };
        let piece = self.edition.catalogue.get(owner).and_then(|kind| kind.piece());
        let Some(piece) = piece else { return };
        let span = self.evidence.draft.facts.pieces[piece].id.span;
        self.note(found, "outline", name.to_owned(), span);
    }

    fn note(&self, found: &mut Vec<Origin>, how: &'static str, text: String, span: Span) {
        let origin = Origin { how, text, place: self.evidence.place(span) };
        if !found.contains(&origin) {
            found.push(origin);
        }
    }
}

/// The first work of a step that states the fact of a name.
fn own_fact<'s>(step: &'s Step, name: &str) -> Option<&'s Expression> {
    let fact = |work: &'s Work| match name {
        "allowance" => work.allowance.as_ref(),
        "stitch" => work.stitch.as_ref(),
        "leave" => work.leave.as_ref(),
        "ease" => work.ease.as_ref(),
        "gather" => work.gather.as_ref(),
        _ => None,
    };
    step.works.iter().find_map(fact)
}

/// The origins of one figure in several sizes, each once.
pub(super) fn merged(each: impl IntoIterator<Item = Vec<Origin>>) -> Vec<Origin> {
    let mut all: Vec<Origin> = Vec::new();
    for origin in each.into_iter().flatten() {
        // A value of its own for each size stands in one list: its name is told once.
        if !all.iter().any(|known| known.how == origin.how && known.text == origin.text) {
            all.push(origin);
        }
    }
    all
}

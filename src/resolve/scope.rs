//! The names that a step's words may use: its own seam facts, what a shared part was handed, and all
//! measurements.

use std::path::Path;

use crate::faults::UNKNOWN_NAME;
use crate::measure::{Lookup, Names};
use crate::model::{Param, Step, Work};

use super::shown::Shown;
use super::values::Values;
use super::worked::Worked;
use crate::diag::Findings;
use crate::model::Expression;

/// The words that stand for a fact of the step itself.
const OWN: &[&str] = &["allowance", "stitch", "leave", "ease", "gather"];

/// Where words look names up.
pub struct Scope<'a> {
    /// The size's values.
    pub values: &'a Values<'a>,
    /// What a shared part was handed.
    pub params: &'a [Param],
    /// The folder of the text, from which its diagrams are named.
    pub folder: &'a Path,
    /// The step that the words stand in; `None` outside steps.
    pub step: Option<&'a Step>,
}

impl<'a> Scope<'a> {
    /// The scope of words that stand in no step and no shared part.
    pub fn plain(values: &'a Values<'a>) -> Scope<'a> {
        Scope { values, params: &[], folder: Path::new(""), step: None }
    }

    /// Works a formula out for printing; faults are findings.
    pub fn work_out(&self, expression: &Expression, findings: &mut Findings) -> Option<Worked> {
        if let Some(name) = own_name(expression)
            && !self.params.iter().any(|param| param.name.text == name)
            && let Some(step) = self.step
        {
            return self.own_fact(step, name, expression, findings);
        }
        if let Some(param) = self.param_of(expression)
            && let Some(formula) = &param.expression
        {
            // A bare parameter keeps the figure as it was stated where it was handed over.
            return self.values.work_out(formula, self.values, findings);
        }
        self.values.work_out(expression, self, findings)
    }

    /// The parameter that a formula is nothing but the name of.
    pub fn param_of(&self, expression: &Expression) -> Option<&'a Param> {
        let name = expression.formula.text.trim();
        self.params.iter().find(|param| param.name.text == name)
    }

    /// The step's own allowance, stitch or gap: the one that all its work facts share.
    fn own_fact(&self, step: &Step, name: &str, expression: &Expression, findings: &mut Findings) -> Option<Worked> {
        let given: Vec<&Expression> = step.works.iter().filter_map(|work| fact(work, name)).collect();
        let mut worked: Vec<Worked> = Vec::new();
        for formula in &given {
            let one = self.work_out_fact(formula, findings)?;
            if !worked.iter().any(|known| known.quantity == one.quantity) {
                worked.push(one);
            }
        }
        let finding = match worked.as_slice() {
            [one] => return Some(*one),
            // That a work fact leaves it out is told where it does.
            [] if step.works.iter().any(|work| ought_to_name(work, name)) => return None,
            [] => UNKNOWN_NAME
                .at(expression.span(), format!("no work of this step gives its `{name}`"))
                .hint(format!("add `{name}: …` to a fact in the step's work block, or name a measurement here")),
            [_, ..] => UNKNOWN_NAME
                .at(
                    expression.span(),
                    format!("the work of this step gives {} different figures for `{name}`", worked.len()),
                )
                .hint("name the measurement that is meant here"),
        };
        findings.push(finding.in_size(self.values.size(), ""));
        None
    }

    /// A work fact's own formula: parameters count, the step's facts do not.
    pub fn work_out_fact(&self, formula: &Expression, findings: &mut Findings) -> Option<Worked> {
        let outside = Scope { step: None, ..*self };
        outside.work_out(formula, findings)
    }

    /// A value as the booklet prints it, a stitch length as a stitch length.
    pub fn figures(&self, expression: &Expression, worked: Worked, show: &crate::model::Show) -> Shown {
        match own_name(expression) {
            Some("stitch") => super::shown::stitch_figures(&worked, show),
            _ => Shown::of(&worked, show),
        }
    }
}

fn own_name(expression: &Expression) -> Option<&'static str> {
    let text = expression.formula.text.trim();
    OWN.iter().copied().find(|name| *name == text)
}

fn ought_to_name(work: &Work, name: &str) -> bool {
    match name {
        "allowance" => work.verb.joins_at_allowance(),
        "stitch" => work.verb.measures_stitches() && !work.by_hand,
        _ => false,
    }
}

fn fact<'w>(work: &'w Work, name: &str) -> Option<&'w Expression> {
    match name {
        "allowance" => work.allowance.as_ref(),
        "stitch" => work.stitch.as_ref(),
        "leave" => work.leave.as_ref(),
        "ease" => work.ease.as_ref(),
        _ => work.gather.as_ref(),
    }
}

impl Names for Scope<'_> {
    fn value(&self, name: &str) -> Lookup {
        if let Some(param) = self.params.iter().find(|param| param.name.text == name) {
            let Some(expression) = &param.expression else { return Lookup::Unknown };
            let mut unheard = Findings::default();
            return match self.values.work_out(expression, self.values, &mut unheard) {
                Some(worked) => Lookup::Found(worked.quantity),
                // The fault is reported where the parameter is printed or checked by itself.
                None => Lookup::Broken,
            };
        }
        if let Some(step) = self.step
            && OWN.contains(&name)
            && let Some(formula) = step.works.iter().find_map(|work| fact(work, name))
        {
            let mut unheard = Findings::default();
            return match self.work_out_fact(formula, &mut unheard) {
                Some(worked) => Lookup::Found(worked.quantity),
                None => Lookup::Broken,
            };
        }
        let whole = self.params.iter().find_map(|param| param.behind_dot(name));
        self.values.value(whole.as_deref().unwrap_or(name))
    }
}

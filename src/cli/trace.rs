//! `trace`: how a value comes about, formula by formula; or the state of the work after a step.

use std::collections::BTreeSet;
use std::path::Path;

use super::args::TraceArgs;
use super::{Outcome, Refusal, choose, output};
use crate::construct::{play, tell};
use crate::diag::{Findings, did_you_mean};
use crate::measure::explain;
use crate::model::Expression;
use crate::pipeline::{Reach, Workshop};
use crate::resolve::{Edition, Worked};

pub(super) fn run(folder: Option<&Path>, args: &TraceArgs) -> Result<Outcome, Refusal> {
    let wanted: Vec<String> = args.booklet.iter().cloned().collect();
    let choice = choose::booklets(folder, &wanted)?;
    let (kind, name) = match (&args.step, &args.name) {
        (Some(step), _) => ("step", step),
        (None, Some(name)) => ("value", name),
        (None, None) => return Err(Refusal::new("there is nothing to trace", "name a value, or a step with --step")),
    };
    let mut homes = Vec::new();
    let mut names: BTreeSet<String> = BTreeSet::new();
    for booklet in &choice.booklets {
        let workshop = Workshop::open(&choice.folder, booklet, Reach::Values);
        let mut here = false;
        for edition in workshop.editions() {
            let known = if kind == "step" { steps(edition) } else { edition.catalogue.in_formulas(edition.draft) };
            here |= known.contains(name) || (kind == "value" && edition.values.get(name).is_some());
            names.extend(known);
        }
        if here {
            homes.push((booklet, workshop));
        }
    }
    match homes.as_slice() {
        [(booklet, workshop)] => show(&booklet.name, workshop, args, name),
        [] => Err(Refusal::new(
            format!("no {kind} is called `{name}`"),
            did_you_mean(name, names.iter().map(String::as_str), "`notchbook values` lists the values"),
        )),
        several => {
            let names: Vec<&str> = several.iter().map(|(booklet, _)| booklet.name.as_str()).collect();
            Err(Refusal::new(
                format!("several booklets have a {kind} called `{name}`"),
                format!("add `--in` and one of: {}", names.join(", ")),
            ))
        }
    }
}

fn steps(edition: &Edition<'_>) -> Vec<String> {
    edition.steps().filter_map(|step| step.step.id.as_ref()).map(|id| id.text.clone()).collect()
}

fn show(booklet: &str, workshop: &Workshop, args: &TraceArgs, name: &str) -> Result<Outcome, Refusal> {
    let size = choose::sizes(workshop, std::slice::from_ref(&args.size), booklet)?;
    for edition in workshop.editions().iter().filter(|edition| size.contains(&edition.size())) {
        if args.step.is_none() {
            output::line(&format!("{booklet}, {}", edition.size_name()));
            Tracer { workshop, edition }.one(name, 0, &mut BTreeSet::new());
            continue;
        }
        let found = edition.steps().find(|step| step.step.id.as_ref().is_some_and(|id| id.text == name));
        let Some(step) = found else {
            return Err(Refusal::new(
                format!("`{name}` is left out in {}", args.size),
                "name a size that has the step",
            ));
        };
        output::line(&format!("{booklet}, {}: after step {}", edition.size_name(), step.number));
        for line in tell(edition, &play(edition, Some(step.number))) {
            output::line(&format!("  {line}"));
        }
    }
    Ok(Outcome::Clean)
}

struct Tracer<'a> {
    workshop: &'a Workshop,
    edition: &'a Edition<'a>,
}

impl Tracer<'_> {
    /// One value and, below it, the values that its formula names, each told once.
    fn one(&self, name: &str, depth: usize, told: &mut BTreeSet<String>) {
        let indent = "  ".repeat(depth);
        let Some(expression) = self.expression(name) else {
            // A measure of a piece has no formula: its outline is what gives it.
            if let Some(worked) = self.edition.values.get(name) {
                output::line(&format!("{indent}{name} = {} (from the outline)", self.figures(&worked)));
            }
            return;
        };
        let mut unheard = Findings::default();
        let Some(worked) = self.edition.values.work_out(expression, &self.edition.values, &mut unheard) else {
            output::line(&format!("{indent}{name} cannot be worked out: run `notchbook check`"));
            return;
        };
        let place = self.workshop.sources.place(expression.span());
        let file = &self.workshop.sources.file(expression.span().file).path;
        let text = expression.formula.text.trim();
        let is_figure = expression.formula.as_measure().is_some();
        let value =
            if is_figure { format!("{name} = {text}") } else { format!("{name} = {text} = {}", self.figures(&worked)) };
        if !told.insert(name.to_owned()) {
            output::line(&format!("{indent}{value} (see above)"));
            return;
        }
        output::line(&format!("{indent}{value}    {file}:{}", place.line));
        for (part, quantity) in explain(&expression.formula, &self.edition.values) {
            if part.contains('(') && part != text {
                let worked = Worked { quantity, stated: None };
                output::line(&format!("{indent}  {part} = {}", self.figures(&worked)));
            }
        }
        let mut names: Vec<&str> = Vec::new();
        for (inner, _) in expression.formula.names() {
            if !names.contains(&inner) {
                names.push(inner);
            }
        }
        for inner in names {
            self.one(inner, depth + 1, told);
        }
    }

    fn figures(&self, worked: &Worked) -> String {
        self.edition.figures(worked).to_string().replace('\u{a0}', " ")
    }

    fn expression(&self, name: &str) -> Option<&Expression> {
        self.edition.values.expression(name)
    }
}

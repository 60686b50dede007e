//! `trace`: how a value comes about, formula by formula.

use std::collections::BTreeSet;
use std::path::Path;

use super::args::TraceArgs;
use super::{Outcome, Refusal, choose, output};
use crate::diag::{Findings, did_you_mean};
use crate::measure::explain;
use crate::model::Expression;
use crate::pipeline::{Compiled, compile};
use crate::resolve::{Edition, Worked};

pub(super) fn run(folder: Option<&Path>, args: &TraceArgs) -> Result<Outcome, Refusal> {
    let wanted: Vec<String> = args.booklet.iter().cloned().collect();
    let choice = choose::booklets(folder, &wanted)?;
    let mut homes = Vec::new();
    let mut names: BTreeSet<String> = BTreeSet::new();
    for booklet in &choice.booklets {
        compile(&choice.folder, booklet, |compiled| {
            if let Some(edition) = compiled.editions.first() {
                let known = edition.catalogue.in_formulas(edition.draft);
                if known.contains(&args.name) {
                    homes.push(booklet);
                }
                names.extend(known);
            }
        });
    }
    match homes.as_slice() {
        [booklet] => compile(&choice.folder, booklet, |compiled| show(&booklet.name, &compiled, args)),
        [] => Err(Refusal::new(
            format!("no value is called `{}`", args.name),
            did_you_mean(&args.name, names.iter().map(String::as_str), "`notchbook values` lists them"),
        )),
        several => {
            let names: Vec<&str> = several.iter().map(|booklet| booklet.name.as_str()).collect();
            Err(Refusal::new(
                format!("several booklets have a value called `{}`", args.name),
                format!("add `--in` and one of: {}", names.join(", ")),
            ))
        }
    }
}

fn show(name: &str, compiled: &Compiled<'_>, args: &TraceArgs) -> Result<Outcome, Refusal> {
    let size = choose::sizes(&compiled.sizes, std::slice::from_ref(&args.size), name)?;
    let editions = compiled.editions.iter().filter(|edition| size.contains(&edition.size()));
    for edition in editions {
        output::line(&format!("{name}, {}", edition.size_facts().name));
        let mut told = BTreeSet::new();
        Tracer { compiled, edition }.one(&args.name, 0, &mut told);
    }
    Ok(Outcome::Clean)
}

struct Tracer<'a> {
    compiled: &'a Compiled<'a>,
    edition: &'a Edition<'a>,
}

impl Tracer<'_> {
    /// One value and, below it, the values that its formula names, each told once.
    fn one(&self, name: &str, depth: usize, told: &mut BTreeSet<String>) {
        let indent = "  ".repeat(depth);
        let Some(expression) = self.expression(name) else { return };
        let mut unheard = Findings::default();
        let Some(worked) = self.edition.sheet.work_out(expression, self.edition.sheet, &mut unheard) else {
            output::line(&format!("{indent}{name} cannot be worked out: run `notchbook check`"));
            return;
        };
        let place = self.compiled.sources.place(expression.span());
        let file = &self.compiled.sources.file(expression.span().file).path;
        let text = expression.formula.text.trim();
        let is_figure = expression.formula.as_measure().is_some();
        let value = if is_figure { format!("{name} = {text}") } else { format!("{name} = {text} = {}", self.figures(&worked)) };
        if !told.insert(name.to_owned()) {
            output::line(&format!("{indent}{value} (see above)"));
            return;
        }
        output::line(&format!("{indent}{value}    {file}:{}", place.line));
        for (part, quantity) in explain(&expression.formula, self.edition.sheet) {
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
        self.edition.sheet.expression(name)
    }
}

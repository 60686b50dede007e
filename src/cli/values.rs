//! `values`: every measurement, exact and as shown in both systems.

use std::path::Path;

use serde_json::json;

use super::args::{Form, Listing, ValuesArgs};
use super::{Outcome, Refusal, choose, output};
use crate::measure::{Exact, NumberStyle, System, show};
use crate::pipeline::{Reach, Workshop};
use crate::resolve::{Edition, Worked, in_system};

/// One value in one size.
struct Row {
    size: String,
    name: String,
    formula: String,
    exact: String,
    metric: String,
    imperial: String,
}

pub(super) fn run(folder: Option<&Path>, args: &ValuesArgs) -> Result<Outcome, Refusal> {
    let choice = choose::booklets(folder, &args.booklets)?;
    let mut worst = Outcome::Clean;
    if args.format == Listing::Csv {
        output::line("booklet,size,name,formula,exact,metric,imperial");
    }
    for booklet in &choice.booklets {
        let workshop = Workshop::open(&choice.folder, booklet, Reach::Values);
        let outcome = list(&booklet.name, &workshop, args)?;
        worst = worst.max(outcome);
    }
    Ok(worst)
}

fn list(name: &str, workshop: &Workshop, args: &ValuesArgs) -> Result<Outcome, Refusal> {
    let sizes = choose::sizes(workshop, &args.size, name)?;
    for edition in workshop.editions().iter().filter(|edition| sizes.contains(&edition.size())) {
        let rows = rows(edition);
        match args.format {
            Listing::Table => table(name, edition, &rows),
            Listing::Csv => rows.iter().for_each(|row| {
                let cells = [name, &row.size, &row.name, &row.formula, &row.exact, &row.metric, &row.imperial];
                output::line(&cells.map(quoted).join(","));
            }),
            Listing::Json => rows.iter().for_each(|row| {
                let object = json!({
                    "booklet": name, "size": row.size, "name": row.name, "formula": row.formula,
                    "exact": row.exact, "metric": row.metric, "imperial": row.imperial,
                });
                output::line(&object.to_string());
            }),
        }
    }
    if workshop.report.errors() > 0 {
        if args.format == Listing::Table {
            output::report(&workshop.report, workshop, Form::People);
        }
        return Ok(Outcome::Findings);
    }
    Ok(Outcome::Clean)
}

fn rows(edition: &Edition<'_>) -> Vec<Row> {
    let facts = &edition.draft.facts;
    let mut rows = Vec::new();
    for measurement in &facts.measurements {
        let name = &measurement.name.text;
        if let Some(worked) = edition.values.get(name) {
            let formula = measurement.value.get(edition.size()).map_or("", |value| value.formula.text.trim());
            rows.push(row(edition, name, formula, &worked));
        }
    }
    for notion in &facts.notions {
        for (figure, value) in &notion.figures {
            let Some(formula) = value.get(edition.size()) else { continue };
            let mut unheard = crate::diag::Findings::default();
            if let Some(worked) = edition.values.work_out(formula, &edition.values, &mut unheard) {
                let name = format!("{}.{}", notion.id.text, figure.word());
                rows.push(row(edition, &name, formula.formula.text.trim(), &worked));
            }
        }
    }
    rows
}

fn row(edition: &Edition<'_>, name: &str, formula: &str, worked: &Worked) -> Row {
    let show = &edition.draft.facts.show;
    let shown = |system| in_system(worked, system, show).to_string().replace('\u{a0}', " ");
    Row {
        size: edition.size_facts().id.text.clone(),
        name: name.to_owned(),
        formula: formula.to_owned(),
        exact: exact(worked),
        metric: shown(System::Metric),
        imperial: shown(System::Imperial),
    }
}

/// The exact value in the base unit: a decimal where it ends, a fraction where it does not.
fn exact(worked: &Worked) -> String {
    let quantity = worked.quantity;
    let unit = quantity.dimension.base();
    let number: Exact = quantity.value;
    let decimal = show(number, unit, NumberStyle::Decimal);
    let shown = if decimal.exact { decimal } else { show(number, unit, NumberStyle::Fraction) };
    shown.to_string().replace('\u{a0}', " ")
}

fn table(name: &str, edition: &Edition<'_>, rows: &[Row]) {
    output::line(&format!("{name}, {}", edition.size_name()));
    let cells: Vec<[&str; 5]> = std::iter::once(["name", "formula", "exact", "metric", "imperial"])
        .chain(rows.iter().map(|row| [&*row.name, &*row.formula, &*row.exact, &*row.metric, &*row.imperial]))
        .collect();
    let width = |column: usize| cells.iter().map(|row| row[column].chars().count()).max().unwrap_or(0);
    let widths: Vec<usize> = (0..5).map(width).collect();
    for row in &cells {
        let padded: Vec<String> = row.iter().zip(&widths).map(|(cell, width)| format!("{cell:<width$}")).collect();
        output::line(padded.join("  ").trim_end());
    }
    output::line("");
}

/// A cell as RFC 4180 has it. One that a spreadsheet would take for a formula is made words by an apostrophe before it.
fn quoted(cell: &str) -> String {
    let formula = cell.starts_with(['=', '+', '@', '\t', '\r'])
        || cell.strip_prefix('-').is_some_and(|rest| !rest.starts_with(|letter: char| letter.is_ascii_digit()));
    let safe = format!("'{cell}");
    let cell = if formula { safe.as_str() } else { cell };
    if cell.contains([',', '"', '\n']) { format!("\"{}\"", cell.replace('"', "\"\"")) } else { cell.to_owned() }
}

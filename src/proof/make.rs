//! The proof of a booklet: everything that an editor looks at, put together.

use std::collections::BTreeMap;

use serde_json::Value as Json;

use super::changes::changes;
use super::evidence::Evidence;
use super::front::front;
use super::record::{Counts, Record, Table};
use super::row::Sentence;
use super::sheet::StepSheet;
use super::steps::steps;
use super::tables::{allowances, tables, values};
use super::told::{checks, findings, matrix, unchecked, waivers};

/// How many sizes stand side by side in one table.
const BAND: usize = 5;

/// A proof: its data, and its pictures by the path at which the templates find them.
#[derive(Debug, Clone)]
pub struct Proof {
    /// What it tells.
    pub record: Record,
    /// The pictures.
    pub files: BTreeMap<String, Vec<u8>>,
}

impl Proof {
    /// What it tells, for the templates.
    pub fn data(&self) -> Json {
        // Plain texts and numbers always have a place in JSON.
        serde_json::to_value(&self.record).unwrap_or_default()
    }
}

/// Makes the proof of a booklet.
pub fn proof(evidence: &Evidence<'_>) -> Proof {
    let mut files = BTreeMap::new();
    let steps = steps(evidence, &mut files);
    let words = front(evidence);
    let (all, count) = (evidence.all, evidence.count());
    let (findings, waivers, unchecked) = (findings(evidence), waivers(evidence), unchecked(evidence));
    let sentences =
        || words.iter().flat_map(|passages| &passages.sentences).chain(steps.iter().flat_map(|step| &step.sentences));
    let tables = tables(evidence);
    let counts = Counts {
        errors: evidence.report.errors(),
        warnings: evidence.report.warnings(),
        waivers: waivers.len(),
        unchecked: unchecked.len(),
        steps: steps.len(),
        sentences: sentences().count(),
        reckoned: sentences().map(|one| figures(one, false)).sum::<usize>() + of_work(&steps) + in_tables(&tables),
        typed: sentences().map(|one| figures(one, true)).sum(),
        looked: evidence.ran.iter().filter(|ran| ran.looked.looked()).count(),
        checks: evidence.ran.len(),
    };
    // As many sizes as there are, in tables of about the same breadth.
    let tables_wide = count.div_ceil(BAND).max(1);
    let breadth = count.div_ceil(tables_wide).max(1);
    let places: Vec<usize> = (0..count).collect();
    let record = Record {
        booklet: evidence.draft.name.clone(),
        title: all.title.clone(),
        designer: all.designer.clone(),
        edition: all.edition.clone(),
        date: all.date.clone(),
        language: all.language.clone(),
        accent: all.accent.clone(),
        sizes: places.iter().map(|size| evidence.plain().size(*size)).collect(),
        bands: places.chunks(breadth).map(<[usize]>::to_vec).collect(),
        counts,
        findings,
        waivers,
        unchecked,
        changes: changes(evidence),
        matrix: matrix(evidence),
        values: values(evidence),
        tables,
        allowances: allowances(evidence),
        words,
        steps,
        checks: checks(evidence),
    };
    Proof { record, files }
}

/// The figures of a sentence, those that are typed or the others.
fn figures(sentence: &Sentence, typed: bool) -> usize {
    sentence.readings.iter().flat_map(|reading| &reading.rows).filter(|row| row.typed == typed).count()
}

fn of_work(steps: &[StepSheet]) -> usize {
    steps.iter().flat_map(|step| &step.work).map(|work| work.rows.len()).sum()
}

fn in_tables(tables: &[Table]) -> usize {
    tables.iter().map(|table| table.rows.len()).sum()
}

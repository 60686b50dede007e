//! The proof as plain data, from which the page and the pages on paper are both printed.
//!
//! Cells stand in the order of the sizes; words of the house are keys where nothing else is said.

use serde::Serialize;

use super::row::{Row, Sentence};
use super::sheet::StepSheet;

/// All that an editor is shown.
#[derive(Debug, Clone, Serialize)]
pub struct Record {
    /// What commands and files call the booklet.
    pub booklet: String,
    /// Its title.
    pub title: String,
    /// Who sells it.
    pub designer: String,
    /// The edition.
    pub edition: String,
    /// Its date, as `YYYY-MM-DD`; `None` where it is not stated.
    pub date: Option<String>,
    /// A language tag.
    pub language: String,
    /// The booklet's colour.
    pub accent: String,
    /// The names of the sizes.
    pub sizes: Vec<String>,
    /// The places of the sizes whose columns stand side by side, table by table.
    pub bands: Vec<Vec<usize>>,
    /// How much there is of everything.
    pub counts: Counts,
    /// What the checks found, and still stands.
    pub findings: Vec<FindingRow>,
    /// Every waiver.
    pub waivers: Vec<WaiverRow>,
    /// What no check looked at.
    pub unchecked: Vec<UncheckedRow>,
    /// What is new in this edition.
    pub changes: Changes,
    /// The steps by checks by sizes.
    pub matrix: Vec<MatrixRow>,
    /// The named figures of the facts.
    pub values: Vec<Row>,
    /// The tables of the booklet.
    pub tables: Vec<Table>,
    /// The seam allowances with which pieces are cut.
    pub allowances: Vec<Table>,
    /// The words that stand in no step.
    pub words: Vec<Passages>,
    /// The steps.
    pub steps: Vec<StepSheet>,
    /// Every check.
    pub checks: Vec<CheckGroup>,
}

/// How much there is of everything.
#[derive(Debug, Clone, Serialize)]
#[allow(missing_docs, reason = "the names say what is counted")]
pub struct Counts {
    pub errors: usize,
    pub warnings: usize,
    pub waivers: usize,
    pub unchecked: usize,
    pub steps: usize,
    /// Sentences, cells and labels that hold a figure.
    pub sentences: usize,
    /// Figures that a formula gives.
    pub reckoned: usize,
    /// Figures that are typed by hand, behind which no fact stands.
    pub typed: usize,
    /// Checks that looked, and all.
    pub looked: usize,
    pub checks: usize,
}

/// A table of figures under a name.
#[derive(Debug, Clone, Serialize)]
pub struct Table {
    /// Its name.
    pub name: String,
    /// Its rows.
    pub rows: Vec<Row>,
}

/// Sentences under a name.
#[derive(Debug, Clone, Serialize)]
pub struct Passages {
    /// The name.
    pub name: String,
    /// The sentences.
    pub sentences: Vec<Sentence>,
}

/// A finding that stands.
#[derive(Debug, Clone, Serialize)]
#[allow(missing_docs, reason = "named as in a finding")]
pub struct FindingRow {
    /// The key of its level.
    pub level: &'static str,
    pub code: &'static str,
    pub message: String,
    pub hint: String,
    /// What differs from size to size.
    pub details: Vec<String>,
    /// The names of the sizes; none where it is all.
    pub sizes: Vec<String>,
    pub place: String,
    /// The other places that matter.
    pub notes: Vec<String>,
    /// The words at fault.
    pub excerpt: String,
}

/// A waiver with what it takes away.
#[derive(Debug, Clone, Serialize)]
pub struct WaiverRow {
    /// The check.
    pub code: String,
    /// What the check finds, in its own words.
    pub about: String,
    /// The author's reason; empty where there is none.
    pub reason: String,
    /// Where it is written.
    pub place: String,
    /// What it took away; none for one that is of no use.
    pub findings: Vec<FindingRow>,
}

/// Something that no check looked at.
#[derive(Debug, Clone, Serialize)]
pub struct UncheckedRow {
    /// What it is, and why.
    pub what: String,
    /// Where it stands.
    pub place: String,
}

/// What is new in this edition.
#[derive(Debug, Clone, Serialize)]
pub struct Changes {
    /// The older edition that it was held against; `None` where none was given.
    pub since: Option<String>,
    /// What changed by meaning.
    pub told: Vec<Change>,
    /// The pattern sheets to print again.
    pub sheets: Vec<String>,
    /// Steps whose words are others: what was said before and what is said now.
    pub words: Vec<Reworded>,
    /// Whether anything else differs.
    pub otherwise: bool,
    /// The author's record.
    pub record: Vec<RecordRow>,
}

/// A change by meaning.
#[derive(Debug, Clone, Serialize)]
pub struct Change {
    /// What became of what.
    pub text: String,
    /// The names of the sizes; none where it is all.
    pub sizes: Vec<String>,
}

/// Words that are others than before.
#[derive(Debug, Clone, Serialize)]
pub struct Reworded {
    /// Whose words they are.
    pub what: String,
    /// The lines that are gone.
    pub before: Vec<String>,
    /// The lines that are new.
    pub after: Vec<String>,
}

/// An entry of the author's record.
#[derive(Debug, Clone, Serialize)]
pub struct RecordRow {
    /// The edition.
    pub edition: String,
    /// Its date; `None` where it is not stated.
    pub date: Option<String>,
    /// What changed, line by line.
    pub lines: Vec<String>,
}

/// What the checks came to at one place.
#[derive(Debug, Clone, Serialize)]
pub struct MatrixRow {
    /// The step, by its number and heading, or what else it is.
    pub name: String,
    /// Where it is written.
    pub place: String,
    /// The checks that told something here.
    pub checks: Vec<CheckRow>,
    /// All others, size by size; `None` where a size does not have the step.
    pub rest: Vec<Option<Rest>>,
}

/// The checks that told nothing.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Rest {
    /// How many looked, and found nothing.
    pub silent: usize,
    /// How many did not look.
    pub unrun: usize,
}

/// A check in every size.
#[derive(Debug, Clone, Serialize)]
pub struct CheckRow {
    /// Its name.
    pub code: &'static str,
    /// What it finds; empty where that is told elsewhere.
    pub about: String,
    /// The key of what it looked at.
    pub looked: &'static str,
    /// What it came to.
    pub cells: Vec<Option<Verdict>>,
}

/// What a check came to in one size.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Verdict {
    /// How many of its findings stand.
    pub found: usize,
    /// How many are waived.
    pub waived: usize,
    /// Whether it looked.
    pub looked: bool,
}

/// The checks of one group.
#[derive(Debug, Clone, Serialize)]
pub struct CheckGroup {
    /// Its key.
    pub name: String,
    /// Its checks.
    pub checks: Vec<CheckRow>,
}

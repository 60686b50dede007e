//! What the checks say of a booklet with one edit in it.

use std::path::Path;

use notchbook::pipeline::{Reach, Workshop};
use notchbook::source::{BookletFolder, Folder};

use super::edit::Entry;

/// A finding: its check, its file, its lines, its message.
#[derive(Debug, Clone)]
pub struct Told {
    code: &'static str,
    file: String,
    lines: std::ops::RangeInclusive<usize>,
    message: String,
}

impl Told {
    fn is(&self, other: &Told) -> bool {
        (self.code, &self.file, &self.message) == (other.code, &other.file, &other.message)
    }
}

/// What came of one entry.
pub struct Outcome {
    /// The checks that tell it at its line.
    pub at_line: Vec<&'static str>,
    /// Everything that was told.
    pub all: Vec<Told>,
}

/// Makes the edit and checks the booklet; the demos are clean, so that all findings come of the edit. Without its
/// expectations a demo may have findings by itself, `before`, which do not.
pub fn seed(entry: &Entry, expects: bool, before: &[Told]) -> Outcome {
    let booklets = Path::new(env!("CARGO_MANIFEST_DIR")).join("booklets");
    let folder = Folder::open(&booklets).expect("the folder of the demos");
    let mut texts = entry.texts(&booklets);
    let told_in = entry.told_in();
    let place = (!entry.harmless).then(|| {
        let text = texts.iter().find(|(path, _)| *path == told_in).map_or_else(
            || {
                std::fs::read_to_string(booklets.join(&told_in))
                    .unwrap_or_else(|error| panic!("{}: {error}", entry.id))
            },
            |(_, text)| text.clone(),
        );
        let first = entry.at.lines().next().unwrap_or("");
        let at = text
            .find(entry.at.trim_end_matches('\n'))
            .or_else(|| text.find(first));
        let at = at.unwrap_or_else(|| {
            panic!(
                "{}: the line to be told at stands in {}",
                entry.id,
                told_in.display()
            )
        });
        let line = text[..at].matches('\n').count() + 1;
        line..=line + entry.at.trim_end_matches('\n').matches('\n').count()
    });
    if !expects {
        entry.without_expectations(&mut texts, &booklets);
    }
    let shown = folder.show(&told_in);
    let folder = folder.with_unsaved(texts);
    let booklet = BookletFolder {
        name: entry.booklet.clone(),
        path: entry.booklet.clone().into(),
    };
    let workshop = Workshop::open(&folder, &booklet, Reach::Checks);
    let sources = &workshop.sources;
    let told = |finding: &notchbook::diag::Finding| {
        let place = sources.place(finding.span);
        Told {
            code: finding.code(),
            file: sources.file(finding.span.file).path.clone(),
            lines: place.line..=place.end_line.max(place.line),
            message: finding.message.clone(),
        }
    };
    let findings = workshop.report.findings.iter().map(told);
    let all: Vec<Told> = findings
        .filter(|told| !before.iter().any(|own| own.is(told)))
        .collect();
    let mut at_line: Vec<&'static str> = all
        .iter()
        .filter(|told| {
            place.as_ref().is_some_and(|place| {
                told.file == shown
                    && told.lines.start() <= place.end()
                    && place.start() <= told.lines.end()
            })
        })
        .map(|told| told.code)
        .collect();
    at_line.dedup();
    Outcome { at_line, all }
}

impl Outcome {
    /// `line`, `elsewhere` or `missed`; of a harmless edit `silent` or `blamed`.
    pub fn word(&self) -> &'static str {
        match (self.at_line.is_empty(), self.all.is_empty()) {
            (false, _) => "line",
            (true, false) => "elsewhere",
            (true, true) => "missed",
        }
    }

    /// Its line in the record.
    pub fn row(&self, entry: &Entry) -> String {
        if entry.harmless {
            let word = if self.all.is_empty() {
                "silent"
            } else {
                "blamed"
            };
            return format!("{},,,{word},{}", entry.id, self.codes());
        }
        let codes = if self.at_line.is_empty() {
            self.codes()
        } else {
            self.at_line.join(" ")
        };
        format!(
            "{},{},{},{},{codes}",
            entry.id,
            entry.family,
            entry.harm,
            self.word()
        )
    }

    fn codes(&self) -> String {
        let mut codes: Vec<&str> = self.all.iter().map(|told| told.code).collect();
        codes.sort_unstable();
        codes.dedup();
        codes.join(" ")
    }

    /// All that is told of it, for one who looks at it alone.
    pub fn told(&self, entry: &Entry) -> String {
        let lines = self.all.iter().map(|told| {
            format!(
                "    {}:{}: {}: {}",
                told.file,
                told.lines.start(),
                told.code,
                told.message
            )
        });
        format!(
            "{}: {}\n{}",
            entry.id,
            self.word(),
            lines.collect::<Vec<_>>().join("\n")
        )
    }
}

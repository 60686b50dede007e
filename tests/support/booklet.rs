//! A case as files on disk, compiled, and its findings as marks.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use notchbook::book::Plain;
use notchbook::checks::unused_waiver;
use notchbook::diag::{Finding, Findings, Level, Report};
use notchbook::manifest::{Manifest, read};
use notchbook::pipeline::{Reach, Workshop};
use notchbook::publish::{
    Earlier, Included, file_sizes, not_raised, shop_text, text_length, unreadable,
};
use notchbook::sheets::SheetPaper;
use notchbook::source::{BookletFolder, Folder, Sources, Span};
use notchbook::typeset::{Paper, Press};

use super::chapter::{Block, MARK};

/// The folder that a case is written into; messages name it.
const HOME: &str = "pouch";

/// A finding, and where its mark belongs.
pub struct Found {
    /// The check.
    pub code: &'static str,
    /// Its level.
    pub level: Level,
    /// The fact.
    pub message: String,
    /// The act.
    pub hint: String,
    /// Whether a waiver took it away.
    pub waived: bool,
    /// The file, from the folder that holds the booklet.
    pub file: String,
    /// The line, from 1.
    pub line: usize,
    /// The lines that mark it in a case.
    pub mark: Vec<String>,
}

/// What compiling a case came to.
pub struct Outcome {
    /// Every finding, waived ones too, in the order of the report.
    pub found: Vec<Found>,
    /// For each block: the file's path as findings name it, and for each of its lines on disk the
    /// line of the block (from 1), 0 where it is the base's.
    places: Vec<(String, Vec<usize>)>,
}

/// The base booklet's files: path and text.
pub fn base() -> BTreeMap<String, String> {
    let root = tests().join("checks/_base");
    [
        "booklet.yaml",
        "make.md",
        "figures/sew.svg",
        "figures/press.svg",
    ]
    .into_iter()
    .map(|name| {
        (
            name.to_owned(),
            std::fs::read_to_string(root.join(name)).expect("a file of the base booklet"),
        )
    })
    .collect()
}

/// The folder `tests`.
pub fn tests() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests")
}

/// Writes `blocks` over the base booklet and compiles it. A booklet that brings templates of its
/// own is also set, since only that can show what is wrong with them.
pub fn run(blocks: &[&Block]) -> Outcome {
    let sets = blocks
        .iter()
        .any(|block| block.file.starts_with("templates/"));
    let (found, places) = written(blocks, |compiled| {
        let mut found = list(&compiled.report, compiled);
        if sets && compiled.report.errors() == 0 {
            found.extend(list(&set(compiled), compiled));
        }
        found
    });
    let mut outcome = Outcome { found, places };
    outcome.found.extend(for_a_shop(blocks));
    outcome
}

/// What publishing finds: for a booklet with a word on its shop, one that was published before, or a manifest.
fn for_a_shop(blocks: &[&Block]) -> Vec<Found> {
    let shop = |block: &&&Block| block.text.iter().any(|line| line.starts_with("shop:"));
    let before: Vec<Block> = blocks
        .iter()
        .filter_map(|block| block.published())
        .collect();
    let manifest = blocks.iter().find(|block| block.file == "manifest.json");
    if before.is_empty() && manifest.is_none() && !blocks.iter().any(|block| shop(&block)) {
        return Vec::new();
    }
    let earlier = (!before.is_empty()).then(|| {
        let blocks: Vec<&Block> = before.iter().collect();
        written(&blocks, issued).0
    });
    let look = |compiled: &Workshop| {
        let Some(draft) = compiled.draft().filter(|_| compiled.report.errors() == 0) else {
            return Vec::new();
        };
        let mut sources = compiled.sources.clone();
        let mut findings = Findings::default();
        let new = issued(compiled);
        if let Some(manifest) = earlier {
            let earlier = [Earlier {
                place: "published/pouch/1.0.0".into(),
                manifest,
            }];
            findings.extend(not_raised(draft.facts.edition.span, &new, &earlier));
        }
        if let Some(block) = manifest {
            let file = sources.add("pouch/manifest.json", "");
            if let Err(fault) = read(&block.text.join("\n")) {
                findings.push(unreadable(Span::new(file, 0..0), "manifest.json", &fault));
            }
        }
        let plain = Plain {
            book: &new.all,
            house: &new.words,
        };
        let text = shop_text(&plain, &Included::default()).text();
        findings.extend(text_length(&draft.facts, &text));
        let press = Press::new(&compiled.house);
        let printed = press.print(&compiled.sheaf(&new.all, Paper::A4));
        let bytes = printed.map_or(0, |printed| printed.pdf.len());
        // A file of its own size would be another with each change of a template.
        let bytes = if bytes > 20_000 { 30_000 } else { bytes };
        findings.extend(file_sizes(
            &draft.facts,
            [("pouch-all-a4.pdf", bytes)].into_iter(),
        ));
        let report = findings.report(&sources, compiled.sizes.len(), &[], &unused_waiver);
        let all = report.findings.iter();
        all.map(|finding| found_in(finding, None, &sources, &compiled.sizes))
            .collect()
    };
    written(blocks, look).0
}

/// The manifest of a case.
fn issued(compiled: &Workshop) -> Manifest {
    compiled.manifest(&[], &[]).expect("facts to work with")
}

/// What `look` makes of the booklet that `blocks` over the base booklet come to.
pub fn with_compiled<R>(blocks: &[&Block], look: impl FnOnce(&Workshop) -> R) -> R {
    written(blocks, look).0
}

fn written<R>(
    blocks: &[&Block],
    look: impl FnOnce(&Workshop) -> R,
) -> (R, Vec<(String, Vec<usize>)>) {
    let folder = tempfile::tempdir().expect("a folder of our own");
    let home = folder.path().join(HOME);
    let base = base();
    let mut files: BTreeMap<String, Vec<u8>> = base
        .iter()
        .map(|(name, text)| (name.clone(), text.clone().into_bytes()))
        .collect();
    let mut places = Vec::new();
    for block in blocks {
        let (lines, bytes) = laid(block, base.get(&block.file).map(String::as_str));
        places.push((String::new(), lines));
        files.insert(block.file.clone(), bytes);
    }
    for (name, bytes) in &files {
        let path = home.join(name);
        std::fs::create_dir_all(path.parent().expect("a folder above the file")).expect("a folder");
        std::fs::write(path, bytes).expect("a file of the case");
    }
    let opened = Folder::open(folder.path()).expect("the folder of the case");
    for (place, block) in places.iter_mut().zip(blocks) {
        place.0 = opened.show(&Path::new(HOME).join(&block.file));
    }
    let booklet = BookletFolder {
        name: HOME.into(),
        path: HOME.into(),
    };
    let made = look(&Workshop::open(&opened, &booklet, Reach::Checks));
    (made, places)
}

/// A block as it is written to disk, and whose line each line is.
fn laid(block: &Block, base: Option<&str>) -> (Vec<usize>, Vec<u8>) {
    if block.hex {
        let digits = |pair: &str| u8::from_str_radix(pair, 16).expect("two hexadecimal digits");
        let bytes = block
            .text
            .iter()
            .flat_map(|line| line.split_whitespace())
            .map(digits)
            .collect();
        return ((1..=block.text.len()).collect(), bytes);
    }
    let own = block.text.iter().map(String::as_str).zip(1..);
    let lines: Vec<(&str, usize)> = match base.filter(|_| block.over) {
        None => own.collect(),
        Some(base) if block.file.ends_with(".yaml") => facts_over(base, &own.collect::<Vec<_>>()),
        Some(base) => base
            .lines()
            .chain([""])
            .map(|line| (line, 0))
            .chain(own)
            .collect(),
    };
    let text: String = lines.iter().map(|(line, _)| format!("{line}\n")).collect();
    (lines.iter().map(|(_, at)| *at).collect(), text.into_bytes())
}

/// Facts laid over the base's: a key takes the place of the base's, except that a key with its
/// entries on lines of their own keeps those entries of the base that it does not name.
fn facts_over<'a>(base: &'a str, own: &[(&'a str, usize)]) -> Vec<(&'a str, usize)> {
    let mut lines: Vec<(&str, usize)> = Vec::new();
    let mut entries: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    let (mut top, mut inner) = ("", "");
    for line in base.lines() {
        (top, inner) = key(line, "").map_or((top, inner), |top| (top, ""));
        inner = key(line, "  ").unwrap_or(inner);
        if !own.iter().any(|(line, _)| key(line, "") == Some(top)) {
            lines.push((line, 0));
        } else if !inner.is_empty() && !names(own, top, inner) {
            entries.entry(top).or_default().push(line);
        }
    }
    for (line, at) in own {
        lines.push((line, *at));
        if let Some(key) = key(line, "").filter(|_| line.ends_with(':')) {
            lines.extend(
                entries
                    .remove(key)
                    .unwrap_or_default()
                    .into_iter()
                    .map(|line| (line, 0)),
            );
        }
    }
    lines
}

/// The key that a line with this indent opens.
fn key<'a>(line: &'a str, indent: &str) -> Option<&'a str> {
    let rest = line.strip_prefix(indent)?;
    let opens = rest.starts_with(|letter: char| letter.is_ascii_alphanumeric());
    opens.then(|| rest.split(':').next().unwrap_or(""))
}

/// Whether facts name an entry below a key.
fn names(own: &[(&str, usize)], top: &str, entry: &str) -> bool {
    let mut inside = "";
    own.iter().any(|(line, _)| {
        inside = key(line, "").unwrap_or(inside);
        inside == top && key(line, "  ") == Some(entry)
    })
}

/// What the typesetter makes of every size.
fn set(compiled: &Workshop) -> Report {
    let press = Press::new(&compiled.house);
    let mut findings = Findings::default();
    for edition in compiled.editions() {
        let sheaf = compiled.sheaf(&compiled.book(edition, SheetPaper::A4), Paper::A4);
        match press.print(&sheaf) {
            Ok(printed) => {
                let warnings = printed.warnings.iter();
                findings.extend(
                    warnings.filter_map(|fault| compiled.press_warning(fault, &sheaf.origins)),
                );
            }
            Err(faults) => {
                let size = Some(edition.size());
                let faults = faults.iter();
                findings.extend(
                    faults.filter_map(|fault| compiled.press_finding(fault, &sheaf.origins, size)),
                );
            }
        }
    }
    findings.report(&compiled.sources, compiled.sizes.len(), &[], &unused_waiver)
}

fn list(report: &Report, compiled: &Workshop) -> Vec<Found> {
    let stands = report
        .findings
        .iter()
        .map(|finding| found(finding, None, compiled));
    let waived = report
        .waived
        .iter()
        .map(|waived| found(&waived.finding, Some(&waived.reason), compiled));
    stands.chain(waived).collect()
}

fn found(finding: &Finding, reason: Option<&str>, compiled: &Workshop) -> Found {
    found_in(finding, reason, &compiled.sources, &compiled.sizes)
}

fn found_in(finding: &Finding, reason: Option<&str>, sources: &Sources, sizes: &[String]) -> Found {
    Found {
        code: finding.code(),
        level: finding.level(),
        message: finding.message.clone(),
        hint: finding.hint.clone(),
        waived: reason.is_some(),
        file: sources.file(finding.span.file).path.clone(),
        line: sources.place(finding.span).line,
        mark: mark(finding, reason, sources, sizes),
    }
}

/// The marked lines of a finding: the fault, what differs by size, the places it names, the act.
fn mark(
    finding: &Finding,
    reason: Option<&str>,
    sources: &Sources,
    sizes: &[String],
) -> Vec<String> {
    let place = sources.place(finding.span);
    let same_line = place.line == place.end_line;
    let at = if same_line && place.column > MARK.len() && place.end_column > place.column {
        let space = " ".repeat(place.column - 1 - MARK.len());
        format!(
            "{MARK}{space}{}",
            "^".repeat(place.end_column - place.column)
        )
    } else if same_line {
        format!("{MARK}@{}..{}", place.column, place.end_column)
    } else {
        format!(
            "{MARK}@{}..+{}:{}",
            place.column,
            place.end_line - place.line,
            place.end_column
        )
    };
    let name = |index: usize| sizes.get(index).map_or("?", String::as_str);
    let names: Vec<&str> = finding
        .sizes
        .iter()
        .map(|(index, _)| name(*index))
        .collect();
    let inside = if names.is_empty() {
        String::new()
    } else {
        format!(" in {}", names.join(", "))
    };
    let waived = if reason.is_some() { " waived" } else { "" };
    let mut lines = vec![format!(
        "{at}{waived} {}{inside}: {}",
        finding.code(),
        finding.message
    )];
    let details = finding
        .sizes
        .iter()
        .filter(|(_, detail)| !detail.is_empty());
    lines.extend(details.map(|(index, detail)| format!("{MARK} {}: {detail}", name(*index))));
    for (span, label) in &finding.notes {
        let text = sources.file(span.file).text.get(span.range()).unwrap_or("");
        lines.push(format!(
            "{MARK} see “{}”: {label}",
            text.lines().next().unwrap_or("")
        ));
    }
    match reason {
        Some(reason) => lines.push(format!("{MARK} because: {reason}")),
        None => lines.push(format!("{MARK} do: {}", finding.hint)),
    }
    lines
}

impl Outcome {
    /// Whether a check found something that stands.
    pub fn fires(&self, code: &str) -> bool {
        self.found
            .iter()
            .any(|found| found.code == code && !found.waived)
    }

    /// Whether a check found nothing at all, waived or not.
    pub fn silent(&self, code: &str) -> bool {
        self.found.iter().all(|found| found.code != code)
    }

    /// The blocks with the marks that belong there, and the findings that lie in none of them.
    pub fn marked(&self, blocks: &[Block]) -> (Vec<Block>, Vec<&Found>) {
        let mut marked: Vec<Block> = blocks.iter().map(Block::bare).collect();
        let mut strays = Vec::new();
        for found in &self.found {
            let line_in = |lines: &[usize]| match lines.get(found.line - 1) {
                Some(0) => None,
                Some(line) => Some(*line),
                // The place after the last line counts as the last line.
                None => Some(lines.last().copied().unwrap_or(0)),
            };
            let homes = self.places.iter().take(blocks.len()).enumerate();
            let home = homes
                .filter(|(_, (file, _))| *file == found.file)
                .find_map(|(at, (_, lines))| Some((at, line_in(lines)?)));
            match home {
                Some((at, line)) => marked[at].marks[line].extend(found.mark.iter().cloned()),
                None => strays.push(found),
            }
        }
        (marked, strays)
    }
}

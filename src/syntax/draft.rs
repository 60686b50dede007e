//! A booklet's folder as a [`Draft`]: the facts, then every part in its order.

use std::path::{Path, PathBuf};

use super::fields::Fields;
use super::{crowd, facts, fields, help, offers, outlines, part, shop, waive, yaml};
use crate::diag::Findings;
use crate::faults::{FILE_EMPTY, FILE_UNREADABLE};
use crate::limits::{PARTS, TEXT};
use crate::model::{Draft, HouseWords, Part, Question, Text};
use crate::source::{BookletFolder, FileId, Folder, ReadFault, Sources, Span};

/// What came of reading a booklet.
#[derive(Debug)]
pub struct Reading {
    /// Every text read, for the places of findings.
    pub sources: Sources,
    /// The booklet; `None` when there were no facts to work with.
    pub draft: Option<Draft>,
    /// What is wrong with the texts.
    pub findings: Findings,
}

/// Reads a booklet: `booklet.yaml`, and the parts that it lists.
pub fn read_booklet(folder: &Folder, booklet: &BookletFolder) -> Reading {
    let mut reading = Reading { sources: Sources::default(), draft: None, findings: Findings::default() };
    let path = booklet.path.join("booklet.yaml");
    let Some((file, text)) = open(folder, &path, None, &mut reading) else { return reading };
    let source = Text { span: Span::new(file, 0..text.len()), text, verbatim: true };
    let Some(root) = yaml::parse(&source, &mut reading.findings) else { return reading };
    // Blank, or nothing but comments.
    if matches!(root.value, yaml::Value::Empty) {
        reading.findings.push(
            FILE_EMPTY
                .at(Span::new(file, 0..0), "the facts are empty")
                .hint("`notchbook new NAME` makes a small booklet to start from"),
        );
        return reading;
    }
    let Some((facts, record)) = facts::read(&root, &mut reading.findings) else { return reading };
    if !crowd::facts(&facts, &mut reading.findings) {
        return reading;
    }
    let mut waivers = match record.get("waive") {
        Some(node) => waive::read_list(node, &root, &mut reading.findings),
        None => Vec::new(),
    };
    let mut parts = read_parts(folder, booklet, &facts.sizes, &record, &mut waivers, &mut reading);
    let help = read_help(folder, booklet, &facts.sizes, &record, &mut waivers, &mut reading);
    let offers = offers::gather(&mut parts, &mut reading.findings);
    let whole = !reading.findings.iter().any(|finding| finding.check.unread);
    if whole {
        shop::look_at_steps(&facts.shop, &parts, &mut reading.findings);
    }
    let outlines = outlines::read(folder, booklet, &facts, &mut reading.sources, &mut reading.findings);
    let (name, folder) = (booklet.name.clone(), booklet.path.clone());
    // The words of the house are laid beside it once they are read.
    let house = HouseWords::default();
    let draft = Draft { name, folder, file, facts, parts, offers, help, outlines, whole, house, waivers };
    // Nothing is reckoned with more than anybody can mean.
    reading.draft = crowd::draft(&draft, &mut reading.findings).then_some(draft);
    reading
}

fn read_parts(
    folder: &Folder,
    booklet: &BookletFolder,
    sizes: &[crate::model::Size],
    record: &Fields<'_>,
    waivers: &mut Vec<crate::diag::Waiver>,
    reading: &mut Reading,
) -> Vec<Part> {
    let mut parts = Vec::new();
    let Some(node) = record.need("parts", "[make.md]", &mut reading.findings) else { return parts };
    let entries = facts::parts(node, sizes, &mut reading.findings);
    if let Some(entry) = entries.get(PARTS.most) {
        crowd::tell(PARTS, entry.file.span, &mut reading.findings);
    }
    let mut letters = 0;
    for entry in entries.into_iter().take(PARTS.most) {
        let path: PathBuf = booklet.path.join(Path::new(&entry.file.text));
        let shown = folder.show(&path);
        let known = reading.sources.by_path(&shown);
        let opened = match known {
            // The same part listed twice, each time with its own parameters, is one text.
            Some(file) => Some((file, reading.sources.file(file).text.clone())),
            None => open(folder, &path, Some(entry.file.span), reading),
        };
        if let Some((file, text)) = opened {
            letters += text.len();
            if letters > TEXT.most {
                crowd::tell(TEXT, entry.file.span, &mut reading.findings);
                break;
            }
            let from = Path::new(&shown).parent().unwrap_or(Path::new(""));
            let read = part::read(file, from, &text, entry.params, sizes, waivers, &mut reading.findings);
            parts.extend(read.into_iter().map(|part| only_for(part, entry.sizes.as_ref())));
        }
    }
    parts
}

fn read_help(
    folder: &Folder,
    booklet: &BookletFolder,
    sizes: &[crate::model::Size],
    record: &Fields<'_>,
    waivers: &mut Vec<crate::diag::Waiver>,
    reading: &mut Reading,
) -> Vec<Question> {
    let Some(named) = record.get("help").and_then(|node| fields::text(node, "`help`", &mut reading.findings)) else {
        return Vec::new();
    };
    let path = booklet.path.join(Path::new(&named.text));
    let Some((file, text)) = open(folder, &path, Some(named.span), reading) else { return Vec::new() };
    help::read(file, &text, sizes, waivers, &mut reading.findings)
}

/// A part as the list of parts keeps it to some sizes, beside what its own heading says.
fn only_for(mut part: Part, listed: Option<&Vec<usize>>) -> Part {
    let Some(listed) = listed else { return part };
    part.sizes = Some(match part.sizes {
        Some(own) => own.into_iter().filter(|size| listed.contains(size)).collect(),
        None => listed.clone(),
    });
    part
}

/// Reads a text file; a fault is a finding at `mention`, or at the file itself.
fn open(folder: &Folder, path: &Path, mention: Option<Span>, reading: &mut Reading) -> Option<(FileId, String)> {
    let shown = folder.show(path);
    match folder.text(path) {
        Ok(text) => Some((reading.sources.add(shown, text.clone()), text)),
        Err(fault) => {
            let message = format!("`{shown}` {}", fault.message());
            let mut hint = fault.hint();
            if fault == ReadFault::LeadsOut && mention.is_some() {
                hint = "copy the file into the folder, or run the command in the folder that holds both".into();
            }
            let span = mention.unwrap_or_else(|| Span::new(reading.sources.add(shown, ""), 0..0));
            reading.findings.push(FILE_UNREADABLE.at(span, message).hint(hint));
            None
        }
    }
}

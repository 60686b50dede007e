//! A part: one Markdown file, split at its headings into parts and steps.

use std::path::Path;

use pulldown_cmark::{CowStr, Event, HeadingLevel, Tag};

use super::headings::{conditions, crowded_headings, find, heading_end, heads, line_end};
use super::markdown::{open, read_value};
use super::reader::{Reader, Room};
use super::walk::Builder;
use crate::diag::{Findings, Waiver};
use crate::faults::{FOR_UNREADABLE, HEADING_SKIPS, WORK_UNREADABLE};
use crate::model::{Handed, Inline, Moment, Name, Part, Size, Stake, Step, Text, Work, read_moment};
use crate::source::{FileId, Span};

/// Reads a file of parts and steps.
pub(super) fn read(
    file: FileId,
    folder: &Path,
    text: &str,
    params: Handed,
    all_sizes: &[Size],
    waivers: &mut Vec<Waiver>,
    findings: &mut Findings,
) -> Vec<Part> {
    let source = Text { text: text.to_owned(), span: Span::new(file, 0..text.len()), verbatim: true };
    let (mut reader, pieces) = open(&source, all_sizes, Room::Part, findings);
    crowded_headings(&source, &mut reader);
    let heads = heads(&pieces);
    let first = heads.first().copied().unwrap_or(pieces.len());
    if first > 0 {
        let (_, range) = &pieces[0];
        let line = line_end(text, range.start);
        reader.findings.push(
            HEADING_SKIPS
                .at(source.at(range.start..line), "these words stand before the part has a heading")
                .hint("begin the file with the part's heading: `# The zip`"),
        );
        Builder::new(&mut reader, &pieces[..first]).blocks();
    } else if text.trim().is_empty() {
        reader.findings.push(
            HEADING_SKIPS
                .at(source.at(0..0), "this part is empty")
                .hint("begin it with a heading, `# The zip`, and steps, `## Sew the zip {#sew-zip}`"),
        );
    }
    let mut parts: Vec<Part> = Vec::new();
    for (index, &start) in heads.iter().enumerate() {
        let end = heads.get(index + 1).copied().unwrap_or(pieces.len());
        let (event, range) = &pieces[start];
        let Event::Start(Tag::Heading { level, id, attrs, classes }) = event else { continue };
        let body_start = heading_end(&pieces, start);
        let head = source.at(range.start..line_end(text, range.start));
        let scope_end = pieces.get(end).map_or(text.len(), |(_, next)| next.start);
        let scope = source.at(range.start..scope_end);
        reader.works.clear();
        let title = Builder::new(&mut reader, &pieces[start + 1..body_start]).inlines();
        let body = Builder::new(&mut reader, &pieces[body_start..end]).blocks();
        let works = noted(&mut reader);
        let id = id.as_ref().map(|id| Name { text: id.to_string(), span: find(text, head, &format!("#{id}"), 1) });
        let sizes = conditions(text, head, attrs, classes, &BRACES, &mut reader);
        let stake = stake(text, head, attrs, &mut reader);
        let watch = watch(text, head, attrs, &mut reader);
        if *level == HeadingLevel::H1 {
            for work in works {
                reader.findings.push(
                    WORK_UNREADABLE
                        .at(work.span, "this work stands in no step")
                        .hint("put it below a step's heading: `## Sew the zip {#sew-zip}`"),
                );
            }
            parts.push(Part {
                file,
                folder: folder.to_path_buf(),
                id,
                title,
                span: head,
                sizes,
                stake,
                watch,
                offer: None,
                intro: body,
                steps: Vec::new(),
                params: params.clone(),
            });
        } else {
            let step = Step { id, title, span: head, scope, sizes, stake, watch, offer: None, body, works };
            match parts.last_mut() {
                Some(part) => part.steps.push(step),
                None => {
                    reader.findings.push(
                        HEADING_SKIPS
                            .at(head, "this step stands in no part")
                            .hint("write the part's heading above it: `# The zip`"),
                    );
                    parts.push(Part {
                        file,
                        folder: folder.to_path_buf(),
                        id: None,
                        title: vec![Inline::Text(Text { text: "…".into(), span: head, verbatim: false })],
                        span: head,
                        sizes: None,
                        stake: None,
                        watch: None,
                        offer: None,
                        intro: Vec::new(),
                        steps: vec![step],
                        params: params.clone(),
                    });
                }
            }
        }
    }
    reader.finish();
    let scopes: Vec<Span> = parts.iter().flat_map(|part| &part.steps).map(|step| step.scope).collect();
    for note in std::mem::take(&mut reader.waivers) {
        let scope = scopes.iter().find(|scope| scope.holds(note.span)).copied().unwrap_or(source.span);
        waivers.push(Waiver { check: note.check, reason: note.reason, scope, span: note.span });
    }
    parts
}

/// The facts of a step, their notes read as prose.
fn noted(reader: &mut Reader<'_>) -> Vec<Work> {
    let works = std::mem::take(&mut reader.works);
    let prose = |text: Option<Text>, reader: &mut Reader<'_>| {
        text.map(|text| read_value(&text, reader.sizes, Room::Cell, reader.findings)).unwrap_or_default()
    };
    works.into_iter().map(|(work, note)| Work { note: prose(note, reader), ..work }).collect()
}

/// When a heading says that it is shown in the video.
fn watch(
    text: &str,
    head: Span,
    attrs: &[(CowStr<'_>, Option<CowStr<'_>>)],
    reader: &mut Reader<'_>,
) -> Option<Moment> {
    let (_, value) = attrs.iter().find(|(key, _)| &**key == "watch")?;
    let value = value.as_deref().unwrap_or("");
    let span = if value.is_empty() { head } else { find(text, head, value, 0) };
    let found = read_moment(value);
    if found.is_none() {
        reader.findings.push(
            FOR_UNREADABLE
                .at(span, format!("`watch={value}` is no time in a video"))
                .hint("write minutes and seconds, `watch=10:05`, or hours before them, `watch=1:02:30`"),
        );
    }
    found.map(|seconds| Moment { seconds, span })
}

/// What may stand beside `for=` in the braces of a part's or a step's heading.
const BRACES: [&str; 4] = ["watch", "optional", "or", "of"];

/// The words in a heading's braces that leave something to the maker.
const STAKES: [&str; 3] = ["optional", "or", "of"];

/// What a heading leaves to the maker; faults in the form are findings that show the right one.
fn stake(text: &str, head: Span, attrs: &[(CowStr<'_>, Option<CowStr<'_>>)], reader: &mut Reader<'_>) -> Option<Stake> {
    let said: Vec<(&str, &str)> = attrs
        .iter()
        .filter(|(key, _)| STAKES.contains(&&**key))
        .map(|(key, value)| (&**key, value.as_deref().unwrap_or("")))
        .collect();
    let is_name = |name: &str| !name.is_empty() && name.chars().all(|one| one.is_alphanumeric() || "-_".contains(one));
    let name = |name: &str| Name { text: name.to_owned(), span: find(text, head, name, 0) };
    match said.as_slice() {
        [] => None,
        [("optional", "")] => Some(Stake::Optional),
        [("or", choice)] if is_name(choice) => Some(Stake::Way(name(choice))),
        [("of", id)] if is_name(id) => Some(Stake::Of(name(id))),
        _ => {
            let line = &text[head.range()];
            let braces = line.rfind('{').map_or(head, |at| head.part(at..line.len()));
            reader.findings.push(FOR_UNREADABLE.at(braces, "this heading's braces cannot be read").hint(
                "write one of `{#pull optional}`, `{#fused or=wadding}`, where `wadding` names the choice, and \
                     `{#trim of=pull}`, where `pull` is the id of another heading",
            ));
            None
        }
    }
}

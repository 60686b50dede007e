//! What reading one text of Markdown needs at hand, and what it gathers beside the prose: footnotes,
//! named addresses, waivers and work.

use std::collections::BTreeMap;
use std::ops::Range;

use pulldown_cmark::{Event, Tag, TagEnd};

use super::events::Piece;
use super::waive::WaiverNote;
use super::work::Noted;
use crate::diag::Findings;
use crate::faults::MARKUP_NOT_PRINTED;
use crate::model::{Block, Size, Text};
use crate::source::Span;

/// Where a text is printed, and so what it may hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Room {
    /// A part: everything.
    Part,
    /// A page of the facts: no diagrams.
    Page,
    /// The answer to a question: no diagrams, and no work.
    Answer,
    /// A cell of a table, or beside a word explained: paragraphs, lists, quotations and code.
    Cell,
}

impl Room {
    /// Where that is, behind what cannot stand there.
    pub fn called(self) -> &'static str {
        match self {
            Room::Answer => "an answer",
            Room::Part | Room::Page | Room::Cell => "the facts",
        }
    }
}

/// What is known of a text, and gathered from it.
pub(super) struct Reader<'a> {
    /// The text with its place.
    pub source: &'a Text,
    /// The booklet's sizes.
    pub sizes: &'a [Size],
    /// Where it is printed.
    pub room: Room,
    /// Where faults go.
    pub findings: &'a mut Findings,
    /// The brace groups of the text.
    pub groups: Vec<Range<usize>>,
    /// Where the text holds code.
    pub code: Vec<Range<usize>>,
    /// The footnotes of the text, by their marks.
    pub footnotes: BTreeMap<String, Footnote>,
    /// The named addresses of the text (`[name]: https://…`), by their names as Markdown compares them.
    pub addresses: BTreeMap<String, Address>,
    /// Footnotes and addresses as a text, so that the words of a choice can name them.
    pub definitions: String,
    /// The waivers met in comments.
    pub waivers: Vec<WaiverNote>,
    /// The work facts met.
    pub works: Vec<Noted>,
}

/// A footnote: read when it is first named.
pub(super) struct Footnote {
    /// Its first line.
    pub span: Span,
    /// How far it was read.
    pub state: NoteState,
}

/// How far a footnote was read.
pub(super) enum NoteState {
    /// Not at all: nothing has named it.
    Idle(Vec<Piece>),
    /// It is being read.
    Open,
    /// What it says.
    Read(Vec<Block>),
}

/// A named address.
pub(super) struct Address {
    /// Its line.
    pub span: Span,
    /// Whether a link or a picture uses it.
    pub used: bool,
}

impl<'a> Reader<'a> {
    /// A reader of a text without footnotes and addresses yet.
    pub fn new(
        source: &'a Text,
        sizes: &'a [Size],
        room: Room,
        findings: &'a mut Findings,
        groups: Vec<Range<usize>>,
        code: Vec<Range<usize>>,
    ) -> Reader<'a> {
        Reader {
            source,
            sizes,
            room,
            findings,
            groups,
            code,
            footnotes: BTreeMap::new(),
            addresses: BTreeMap::new(),
            definitions: String::new(),
            waivers: Vec::new(),
            works: Vec::new(),
        }
    }

    /// The first line of a range of the text.
    pub fn line(&self, range: &Range<usize>) -> Span {
        let text = &self.source.text[range.clone()];
        let line = text.lines().next().unwrap_or("").trim_end();
        self.source.at(range.start..range.start + line.len())
    }

    /// Takes the footnotes out of the events; one that is explained twice is a finding.
    pub fn take_footnotes(&mut self, pieces: Vec<Piece>) -> Vec<Piece> {
        let mut rest = Vec::with_capacity(pieces.len());
        let mut open: Vec<(String, Span, Vec<Piece>)> = Vec::new();
        for piece in pieces {
            match &piece.0 {
                Event::Start(Tag::FootnoteDefinition(label)) => {
                    open.push((label.to_string(), self.line(&piece.1), Vec::new()));
                }
                Event::End(TagEnd::FootnoteDefinition) => {
                    if let Some((label, span, inner)) = open.pop() {
                        self.note(label, span, inner);
                    }
                }
                _ => match open.last_mut() {
                    Some((_, _, inner)) => inner.push(piece),
                    None => rest.push(piece),
                },
            }
        }
        rest
    }

    fn note(&mut self, label: String, span: Span, pieces: Vec<Piece>) {
        if let Some(first) = self.footnotes.get(&label) {
            let finding = MARKUP_NOT_PRINTED
                .at(span, format!("the footnote `[^{label}]` is explained twice, and only the first is printed"))
                .hint("give one of the two another mark, or put both texts into one")
                .note(first.span, "the first one");
            self.findings.push(finding);
            return;
        }
        self.definitions.push_str(&format!("\n\n[^{label}]: x"));
        self.footnotes.insert(label, Footnote { span, state: NoteState::Idle(pieces) });
    }

    /// Takes down the named addresses: the lines that no event stands for. One that is written twice
    /// is a finding.
    pub fn take_addresses(&mut self, pieces: &[Piece]) {
        let covered = covered(pieces);
        let mut start = 0;
        let text = self.source.text.as_str();
        for line in text.split_inclusive('\n') {
            let line_start = start;
            start += line.len();
            let Some((at, name, end)) = address(line) else { continue };
            let at = line_start + at;
            if covered.iter().any(|range| range.contains(&at)) {
                continue;
            }
            let span = self.source.at(at..line_start + end);
            if let Some(first) = self.addresses.get(&name) {
                let finding = MARKUP_NOT_PRINTED
                    .at(span, "this address has the name of another one, and is not used")
                    .hint("give it a name of its own, or take the line out")
                    .note(first.span, "the first one");
                self.findings.push(finding);
                continue;
            }
            self.definitions.push_str(&format!("\n\n{}", &text[at..line_start + end]));
            self.addresses.insert(name, Address { span, used: false });
        }
    }

    /// Reports footnotes and addresses that nothing has named.
    pub fn finish(&mut self) {
        for note in self.footnotes.values().filter(|note| matches!(note.state, NoteState::Idle(_))) {
            self.findings.push(
                MARKUP_NOT_PRINTED
                    .at(note.span, "nothing sends to this footnote, so it is not printed")
                    .hint("put its mark, such as `[^1]`, behind the words that it explains, or take it out"),
            );
        }
        for address in self.addresses.values().filter(|address| !address.used) {
            self.findings.push(
                MARKUP_NOT_PRINTED
                    .at(address.span, "Markdown reads this line as the address of a link, and no link uses it")
                    .hint(
                        "write `[words][name]` where the link belongs; to have the line printed, put `\\` before its `[`",
                    ),
            );
        }
    }
}

/// A name as Markdown compares it: without regard to capitals and to how wide its spaces are.
pub(super) fn compared(name: &str) -> String {
    name.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase()
}

/// Where a line that may be an address begins, its name, and where it ends.
fn address(line: &str) -> Option<(usize, String, usize)> {
    let at = line.find('[')?;
    let before = &line[..at];
    let rest = &line[at + 1..];
    let marks = before.chars().all(|letter| letter.is_ascii_digit() || " \t>-*+.)".contains(letter));
    let name = &rest[..rest.find("]:")?];
    let right = marks && !name.starts_with('^') && !name.contains('[') && !name.trim().is_empty();
    right.then(|| (at, compared(name), line.trim_end().len()))
}

/// The bytes that events other than mere containers stand for.
fn covered(pieces: &[Piece]) -> Vec<Range<usize>> {
    let contains = |event: &Event<'_>| {
        matches!(
            event,
            Event::Start(Tag::List(_) | Tag::Item | Tag::BlockQuote(_) | Tag::FootnoteDefinition(_)) | Event::End(_)
        )
    };
    let mut found: Vec<Range<usize>> = Vec::new();
    for (_, range) in pieces.iter().filter(|(event, _)| !contains(event)) {
        match found.last_mut() {
            Some(last) if range.start <= last.end => last.end = last.end.max(range.end),
            _ => found.push(range.clone()),
        }
    }
    found
}

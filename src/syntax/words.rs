//! The words inside a line of Markdown, with brace groups set back where they stood: what is
//! emphasised, linked or drawn, and marks that would be printed as they stand.

use std::ops::Range;

use pulldown_cmark::{Event, LinkType, Tag, TagEnd};

use super::braces::{self, Group};
use super::events::Piece;
use super::reader::{NoteState, compared};
use super::walk::{Builder, is_inline};
use super::{events, links};
use crate::diag::did_you_mean;
use crate::faults::{MARKUP_NOT_PRINTED, REFERENCE_BROKEN};
use crate::model::{Brace, Branch, Figure, Inline, Reference, Text};
use crate::source::Span;

impl Builder<'_, '_, '_> {
    /// Words up to the end of the enclosing element, which is consumed.
    pub(super) fn inlines(&mut self) -> Vec<Inline> {
        let content = self.run();
        links::unread(&content, self.reader.findings);
        if matches!(self.pieces.get(self.at), Some((Event::End(_), _))) {
            self.at += 1;
        }
        content
    }

    /// Words up to the next thing that is no part of a line.
    pub(super) fn run(&mut self) -> Vec<Inline> {
        let mut content = Vec::new();
        while let Some((event, range)) = self.pieces.get(self.at) {
            match event {
                Event::Text(words) => {
                    self.at += 1;
                    self.text(words, range.clone(), &mut content);
                }
                Event::Code(words) => {
                    self.at += 1;
                    content.push(Inline::Code(self.run_of_code(words, range.clone())));
                }
                Event::SoftBreak => {
                    self.at += 1;
                    content.push(self.plain(" ", range.clone()));
                }
                Event::HardBreak => {
                    self.at += 1;
                    content.push(Inline::Break);
                }
                Event::FootnoteReference(label) => {
                    self.at += 1;
                    content.extend(self.footnote(label, range.clone()));
                }
                Event::InlineHtml(_) => {
                    self.at += 1;
                    self.html(range.clone());
                }
                Event::TaskListMarker(_) => {
                    self.at += 1;
                    self.no_room("a box to tick", range);
                }
                Event::Start(tag) if is_inline(tag) => {
                    self.at += 1;
                    let inline = self.inline(tag, range.clone());
                    content.push(inline);
                }
                _ => break,
            }
        }
        content
    }

    fn inline(&mut self, tag: &Tag<'static>, range: Range<usize>) -> Inline {
        match tag {
            Tag::Strong => Inline::Strong(self.inlines()),
            Tag::Link { link_type, dest_url, title, id } => {
                self.use_address(id);
                self.title(title, &range);
                let content = self.inlines();
                let written = links::target(&self.reader.source.text[range.clone()]);
                let span = self.reader.source.at(range);
                match links::reference(written.as_deref().unwrap_or(dest_url)) {
                    Some((kind, target)) => Inline::Reference(Reference { kind, target, content, span }),
                    None => self.link(*link_type, dest_url, content, span),
                }
            }
            Tag::Image { dest_url, title, id, .. } => {
                self.use_address(id);
                self.title(title, &range);
                let alt = self.inlines();
                let path = self.destination(dest_url, range.clone());
                Inline::Figure(Figure { path, alt, span: self.reader.source.at(range) })
            }
            _ => Inline::Emphasis(self.inlines()),
        }
    }

    fn link(&mut self, kind: LinkType, url: &str, content: Vec<Inline>, span: Span) -> Inline {
        let url = if kind == LinkType::Email { format!("mailto:{url}") } else { url.to_owned() };
        let known = ["https://", "http://", "mailto:"].iter().any(|scheme| url.starts_with(scheme));
        if !known {
            let prefix = url.split(':').next().unwrap_or("");
            let prefixes = ["piece", "notion", "fabric", "figure", "term"];
            self.reader.findings.push(
                REFERENCE_BROKEN.at( span, format!("`{url}` leads nowhere"))
                    .hint(did_you_mean(prefix, prefixes, "write `#id` for a step, or `piece:`, `notion:`, `fabric:`, `figure:` or `term:` and a name, or a whole address that begins with https://")),
            );
        }
        Inline::Link(Text { text: url, span, verbatim: false }, content)
    }

    fn use_address(&mut self, id: &str) {
        if let Some(address) = self.reader.addresses.get_mut(&compared(id)) {
            address.used = true;
        }
    }

    /// Words in quotes behind an address show where a page is read on a screen, and nowhere on paper.
    fn title(&mut self, title: &str, range: &Range<usize>) {
        if title.is_empty() {
            return;
        }
        let whole = &self.reader.source.text[range.clone()];
        let at = whole.rfind(title).map_or(range.clone(), |at| range.start + at..range.start + at + title.len());
        self.reader.findings.push(
            MARKUP_NOT_PRINTED
                .at(self.reader.source.at(at), format!("the title “{title}” behind the address is not printed"))
                .hint("write it among the words, and take it out here"),
        );
    }

    /// The text of a footnote; one that leads back to itself is a finding.
    fn footnote(&mut self, label: &str, range: Range<usize>) -> Option<Inline> {
        let note = self.reader.footnotes.get_mut(label)?;
        let pieces = match std::mem::replace(&mut note.state, NoteState::Open) {
            NoteState::Read(blocks) => {
                note.state = NoteState::Read(blocks.clone());
                return Some(Inline::Footnote(blocks));
            }
            NoteState::Open => {
                self.reader.findings.push(
                    MARKUP_NOT_PRINTED
                        .at(self.reader.source.at(range), format!("the footnote `[^{label}]` leads back to itself"))
                        .hint("take this mark out"),
                );
                return None;
            }
            NoteState::Idle(pieces) => pieces,
        };
        // The note stands in the text itself, even where a choice names it.
        let groups = std::mem::take(&mut self.reader.groups);
        self.reader.groups = braces::find(&self.reader.source.text, &self.reader.code).0;
        let blocks = Builder::new(self.reader, &pieces).blocks();
        self.reader.groups = groups;
        if let Some(note) = self.reader.footnotes.get_mut(label) {
            note.state = NoteState::Read(blocks.clone());
        }
        Some(Inline::Footnote(blocks))
    }

    fn run_of_code(&self, words: &str, range: Range<usize>) -> Text {
        let source = self.reader.source;
        let whole = &source.text[range.clone()];
        let ticks = whole.len() - whole.trim_start_matches('`').len();
        let inner = range.start + ticks..(range.start + ticks + words.len()).min(range.end);
        if source.text.get(inner.clone()) == Some(words) {
            return Text { text: words.to_owned(), span: source.at(inner), verbatim: source.verbatim };
        }
        Text { text: words.to_owned(), span: source.at(range), verbatim: false }
    }

    /// The path of a picture as it stands in the source, braces and all.
    fn destination(&self, parsed: &str, range: Range<usize>) -> Text {
        let whole = &self.reader.source.text[range.clone()];
        let at = whole.rfind("](").map(|at| at + 2);
        if let Some(start) = at {
            let rest = &whole[start..];
            let end = rest.find([')', ' ', '"']).unwrap_or(rest.len());
            let path = &rest[..end];
            if path.len() == parsed.len() || path.contains('{') {
                let span = self.reader.source.at(range.start + start..range.start + start + end);
                return Text { text: path.to_owned(), span, verbatim: self.reader.source.verbatim };
            }
        }
        Text { text: parsed.to_owned(), span: self.reader.source.at(range), verbatim: false }
    }

    /// `[!WARNIG]` and `[^1]` without its note are printed as they stand, which nobody wants.
    fn unread_marks(&mut self, range: &Range<usize>) {
        let line = &self.reader.source.text[range.start..];
        let line = &line[..line.find('\n').unwrap_or(line.len())];
        let close = line.find(']').map_or(line.len(), |at| at + 1);
        // Behind a backslash it is meant.
        if self.reader.source.text[..range.start].ends_with('\\') {
            return;
        }
        let (message, hint) = if let Some(word) = line.strip_prefix("[!") {
            let word: String = word.chars().take_while(|letter| letter.is_alphabetic()).collect();
            let kinds = ["NOTE", "TIP", "IMPORTANT", "WARNING", "CAUTION"];
            match kinds.contains(&word.to_uppercase().as_str()) {
                true => (
                    format!("`[!{word}]` opens no notice here"),
                    format!("begin a line with `> [!{word}]` alone, and the words on the line below it with `>`"),
                ),
                false => (format!("`[!{word}]` is no kind of notice"), did_you_mean(&word, kinds, "")),
            }
        } else if line.starts_with("[^") {
            let mark = &line[..close];
            (format!("the footnote `{mark}` has no text"), format!("add a line of its own: `{mark}: the text`"))
        } else {
            return;
        };
        let span = self.reader.source.at(range.start..range.start + close);
        self.reader.findings.push(MARKUP_NOT_PRINTED.at(span, message).hint(hint));
    }

    /// Plain words, with the brace groups among them read.
    fn text(&mut self, words: &str, range: Range<usize>, content: &mut Vec<Inline>) {
        if words.starts_with('[') {
            self.unread_marks(&range);
        }
        if words.len() != range.len() {
            content.push(self.plain(words, range));
            return;
        }
        let mut at = range.start;
        // The groups stand in the order of the text: a long one is not walked anew for every run.
        let first = self.reader.groups.partition_point(|group| group.start < range.start);
        let inside: Vec<Range<usize>> =
            self.reader.groups[first..].iter().take_while(|group| group.end <= range.end).cloned().collect();
        for group in inside {
            self.verbatim(at..group.start, content);
            at = group.end;
            let brace = self.brace(group);
            content.push(Inline::Brace(brace));
        }
        self.verbatim(at..range.end, content);
    }

    fn plain(&self, words: &str, range: Range<usize>) -> Inline {
        Inline::Text(Text { text: words.to_owned(), span: self.reader.source.at(range), verbatim: false })
    }

    /// Words that stand in the source letter for letter; joined to such words just before them.
    fn verbatim(&self, range: Range<usize>, content: &mut Vec<Inline>) {
        if range.is_empty() {
            return;
        }
        let words = &self.reader.source.text[range.clone()];
        if words.contains('\n') {
            // Only the lines of a choice stand in one run; those of a quotation carry their marks along.
            let lines = words.lines().map(|line| line.trim_start().strip_prefix('>').unwrap_or(line));
            let joined = lines.collect::<Vec<_>>().join(" ").replace("  ", " ");
            return content.push(self.plain(&joined, range));
        }
        let span = self.reader.source.at(range);
        if let Some(Inline::Text(before)) = content.last_mut()
            && before.verbatim
            && before.span.end == span.start
        {
            before.text.push_str(words);
            before.span.end = span.end;
            return;
        }
        let verbatim = self.reader.source.verbatim;
        content.push(Inline::Text(Text { text: words.to_owned(), span, verbatim }));
    }

    fn brace(&mut self, group: Range<usize>) -> Brace {
        let reader = &mut *self.reader;
        let mut desk = braces::Desk { source: reader.source, sizes: reader.sizes, findings: reader.findings };
        match braces::read(&mut desk, group) {
            Group::Whole(brace) => brace,
            Group::Choice(branches, span) => {
                let branches =
                    branches.into_iter().map(|(sizes, words)| Branch { sizes, content: self.branch(words) }).collect();
                Brace::Choice { branches, span }
            }
        }
    }

    /// The branch of a choice as words in a line.
    fn branch(&mut self, range: Range<usize>) -> Vec<Inline> {
        let words = &self.reader.source.text[range.clone()];
        let start = range.start + (words.len() - words.trim_start().len());
        let words = words.trim();
        if words.is_empty() {
            return Vec::new();
        }
        // A forced line end is kept where the lines are still one paragraph with it.
        let lines = [join_lines(words, true), join_lines(words, false)];
        let paragraph = |(pieces, _): &(Vec<Piece>, _)| {
            let ends = pieces.iter().position(|(event, _)| matches!(event, Event::End(TagEnd::Paragraph)));
            ends.is_some_and(|at| at + 1 == pieces.len())
        };
        let [kept, joined] = lines.map(|line| self.line_events(&line, start));
        let (pieces, groups) = if paragraph(&kept) { kept } else { joined };
        let outer = std::mem::replace(&mut self.reader.groups, groups);
        let content = Builder { reader: self.reader, pieces: &pieces, at: 1 }.inlines();
        self.reader.groups = outer;
        content
    }

    /// The events and brace groups of words in a line, by their places in the source. A full stop before
    /// them keeps `1.` or `-` from beginning a list.
    fn line_events(&self, words: &str, start: usize) -> (Vec<Piece>, Vec<Range<usize>>) {
        let line = format!(".{words}");
        let code = events::code(&line);
        let groups = braces::find(&line, &code).0;
        let text = format!("{}{}", braces::hide(&line, &groups), self.reader.definitions);
        let place = |range: Range<usize>| range.start + start - 1..range.end + start - 1;
        let mut pieces = Vec::new();
        for (event, range) in events::read(&text, &code) {
            match event {
                _ if range.start >= line.len() => break,
                Event::Text(words) if range.start == 0 => {
                    if words.len() > 1 {
                        pieces.push((Event::Text(words[1..].to_owned().into()), place(1..range.end)));
                    }
                }
                event => pieces.push((event, place(range))),
            }
        }
        (pieces, groups.into_iter().map(place).collect())
    }
}

/// Lines as one, of the same length in bytes; a choice that runs over lines of a quotation carries
/// their marks along. `breaks` keeps forced line ends.
fn join_lines(words: &str, breaks: bool) -> String {
    let mut joined = String::with_capacity(words.len());
    for (at, line) in words.split_inclusive('\n').enumerate() {
        let mark = line.trim_start().starts_with('>').then(|| line.find('>')).flatten().filter(|_| at > 0);
        let body = line.trim_end_matches(['\n', '\r']);
        let end = line.len() - body.len();
        joined.push_str(&match mark {
            Some(mark) => format!("{} {}", &body[..mark], &body[mark + 1..]),
            None => body.to_owned(),
        });
        let forced = breaks && (body.ends_with('\\') || body.ends_with("  "));
        joined.push_str(if forced { &line[line.len() - end..] } else { &"  "[..end.min(2)] });
    }
    joined
}

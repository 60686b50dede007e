//! The words inside a line of Markdown, with brace groups set back where they stood: what is
//! emphasised, linked or drawn, and marks that would be printed as they stand.

use std::ops::Range;

use pulldown_cmark::{Event, LinkType, Tag};

use super::prose::Builder;
use super::{braces, links};
use crate::diag::did_you_mean;
use crate::faults::{MARKUP_NOT_PRINTED, REFERENCE_BROKEN};
use crate::model::{Figure, Inline, Reference, Text};
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
                    let whole = &self.reader.source.text[range.clone()];
                    let inner = whole.trim_matches('`');
                    let same = inner.len() == whole.len() - 2 && inner.len() == words.len();
                    // The end of a line is a space there (CommonMark 0.31, 6.1).
                    content.push(Inline::Code(if same { inner.replace('\n', " ") } else { words.to_string() }));
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
                    let blocks = self.reader.footnotes.get(label.as_ref()).cloned().unwrap_or_default();
                    content.push(Inline::Footnote(blocks));
                }
                Event::InlineHtml(_) => {
                    self.at += 1;
                    self.html(range.clone());
                }
                Event::TaskListMarker(_) => self.at += 1,
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
            Tag::Link { link_type, dest_url, .. } => {
                let content = self.inlines();
                let written = links::target(&self.reader.source.text[range.clone()]);
                let span = self.reader.source.at(range);
                match links::reference(written.as_deref().unwrap_or(dest_url)) {
                    Some((kind, target)) => Inline::Reference(Reference { kind, target, content, span }),
                    None => self.link(*link_type, dest_url, content, span),
                }
            }
            Tag::Image { dest_url, .. } => {
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
        Inline::Link(url, content)
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
        let (message, hint) = if let Some(word) = line.strip_prefix("[!") {
            let word: String = word.chars().take_while(|letter| letter.is_alphabetic()).collect();
            let kinds = ["NOTE", "TIP", "IMPORTANT", "WARNING", "CAUTION"];
            (format!("`[!{word}]` is no kind of notice"), did_you_mean(&word, kinds, ""))
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
            let brace = braces::read(self.reader, group);
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
}

/// Whether an element stands inside a line.
pub(super) fn is_inline(tag: &Tag<'_>) -> bool {
    matches!(tag, Tag::Emphasis | Tag::Strong | Tag::Strikethrough | Tag::Link { .. } | Tag::Image { .. })
}

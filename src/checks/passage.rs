//! The words of a step as one reads them in one size: passages, sentences, words, figures and references, each
//! with its place.

use crate::model::{
    Block, Brace, Branch, Expression, Filter, Inline, Reference, ReferenceKind, Step, Text, Vocabulary, is_for,
};
use crate::source::Span;

/// One word, figure or reference.
#[derive(Debug, Clone)]
pub(super) struct Token<'a> {
    /// The word as written; empty for a figure in braces, and for a reference in the usual words.
    pub raw: String,
    /// The same in lower case.
    pub word: String,
    /// Its place.
    pub span: Span,
    /// What stands in the braces, and how it is printed.
    pub brace: Option<(&'a Expression, Option<&'a Filter>)>,
    /// The reference that it is, or is a word of.
    pub leads: Option<&'a Reference>,
    /// What stands between the token before and this one: letters that are no words, such as ", ".
    pub gap: String,
}

/// Where a passage stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Stands {
    /// In the heading of a step.
    Title,
    /// In its words.
    Body,
    /// In the description of a picture.
    Alt,
}

/// A paragraph, a cell, a heading or a description.
#[derive(Debug, Clone)]
pub(super) struct Passage<'a> {
    /// Its words in their order.
    pub tokens: Vec<Token<'a>>,
    /// The letters behind the last word.
    pub tail: String,
    /// Where it stands.
    pub stands: Stands,
    /// Whether it is a box to tick, which looks back at what was told.
    pub ticks: bool,
}

impl Passage<'_> {
    /// Whether some of its words point to another step, whose work is not that of this one.
    pub fn points_away(tokens: &[Token<'_>]) -> bool {
        tokens.iter().filter_map(|token| token.leads).any(|leads| leads.kind == ReferenceKind::Step)
    }

    /// Its sentences, each the tokens up to a full stop.
    pub fn sentences(&self) -> Vec<&[Token<'_>]> {
        let mut sentences = Vec::new();
        let mut from = 0;
        for at in 1..self.tokens.len() {
            let gap = self.tokens[at].gap.as_str();
            let ends = gap.starts_with(['.', '!', '?', ';', ':']) || gap.starts_with(").");
            if ends && gap.contains(char::is_whitespace) {
                sentences.push(&self.tokens[from..at]);
                from = at;
            }
        }
        sentences.push(&self.tokens[from..]);
        sentences
    }
}

/// Whether a phrase in lower case begins at `at`.
pub(super) fn says(tokens: &[Token<'_>], at: usize, phrase: &str) -> bool {
    // Most phrases begin with another word.
    let rest = tokens.get(at).and_then(|token| phrase.strip_prefix(token.word.as_str()));
    if !rest.is_some_and(|rest| rest.is_empty() || rest.starts_with(' ')) {
        return false;
    }
    let mut count = 0;
    let all = phrase.split(' ').enumerate().all(|(offset, word)| {
        count = offset;
        tokens.get(at + offset).is_some_and(|token| {
            token.word == word
                && (offset == 0 || token.gap.chars().all(|letter| letter.is_whitespace() || letter == '-'))
        })
    });
    all && at + count < tokens.len()
}

/// How many words a phrase has.
pub(super) fn length(phrase: &str) -> usize {
    phrase.split(' ').count()
}

/// The first phrase of a list that begins at `at`.
pub(super) fn one_of<'p>(tokens: &[Token<'_>], at: usize, phrases: &'p [String]) -> Option<&'p str> {
    phrases.iter().map(String::as_str).filter(|phrase| says(tokens, at, phrase)).max_by_key(|phrase| length(phrase))
}

/// Whether a phrase of a list stands anywhere.
pub(super) fn any_of(tokens: &[Token<'_>], phrases: &[String]) -> bool {
    (0..tokens.len()).any(|at| one_of(tokens, at, phrases).is_some())
}

/// Some tokens as they are written, figures and bare references left out.
pub(super) fn spoken(tokens: &[Token<'_>]) -> String {
    let words: Vec<&str> = tokens.iter().map(|token| token.raw.as_str()).filter(|word| !word.is_empty()).collect();
    words.join(" ")
}

/// The place of some tokens: from the first to the last where they stand in one file.
pub(super) fn place(tokens: &[Token<'_>]) -> Option<Span> {
    let (first, last) = (tokens.first()?.span, tokens.last()?.span);
    let one = first.file == last.file && first.range().start <= last.range().end;
    Some(if one { Span::new(first.file, first.range().start..last.range().end) } else { first })
}

/// A word without the ending of its plural, which is enough to tell one name from another.
pub(super) fn stem(word: &str) -> &str {
    let word = word.strip_suffix("’s").or(word.strip_suffix("'s")).unwrap_or(word);
    match word {
        _ if word.ends_with("ss") || word.len() < 4 => word,
        _ if word.ends_with("ches") || word.ends_with("shes") || word.ends_with("xes") || word.ends_with("sses") => {
            &word[..word.len() - 2]
        }
        _ => word.strip_suffix('s').unwrap_or(word),
    }
}

/// The words of a name, without the endings of their plural.
pub(super) fn name_words(name: &str) -> Vec<String> {
    let name = name.to_lowercase();
    let words = name.split(|letter: char| !letter.is_alphanumeric() && letter != '’' && letter != '\'');
    words.filter(|word| !word.is_empty()).map(|word| stem(word).to_owned()).collect()
}

/// The number that a word or a figure says.
pub(super) fn number(token: &Token<'_>, vocabulary: &Vocabulary) -> Option<u32> {
    vocabulary.numbers.get(&token.word).copied().or_else(|| token.word.parse().ok())
}

/// Every passage of a step in one size; of all sizes where there is none, with every way of a choice.
pub(super) fn passages(step: &Step, size: Option<usize>) -> Vec<Passage<'_>> {
    let mut reader = Reader { size, ticks: false, found: Vec::new() };
    reader.passage(&step.title, Stands::Title);
    reader.blocks(&step.body);
    reader.found
}

/// The passages of prose that stands in no step.
pub(super) fn of_blocks(blocks: &[Block], size: Option<usize>) -> Vec<Passage<'_>> {
    let mut reader = Reader { size, ticks: false, found: Vec::new() };
    reader.blocks(blocks);
    reader.found
}

/// A text that is no prose, such as a name, as a passage.
pub(super) fn of_text(text: &Text) -> Passage<'_> {
    let mut tokens = Vec::new();
    let mut gap = String::new();
    words(text, None, &mut gap, &mut tokens);
    Passage { tokens, tail: gap, stands: Stands::Body, ticks: false }
}

struct Reader<'a> {
    size: Option<usize>,
    ticks: bool,
    found: Vec<Passage<'a>>,
}

impl<'a> Reader<'a> {
    fn blocks(&mut self, blocks: &'a [Block]) {
        for block in blocks {
            match block {
                Block::Paragraph(content) | Block::Heading(_, content, _) => self.passage(content, Stands::Body),
                Block::List(_, items) => {
                    for item in items {
                        let own = self.ticks;
                        self.ticks |= item.task;
                        self.blocks(&item.content);
                        self.ticks = own;
                    }
                }
                Block::Quote(content) | Block::Notice(_, content) => self.blocks(content),
                Block::Table(table) => {
                    let cells = table.header.iter().chain(table.rows.iter().flatten());
                    cells.for_each(|cell| self.passage(cell, Stands::Body));
                }
                Block::Figure(figure) => self.passage(&figure.alt, Stands::Alt),
                Block::Code(_) | Block::Rule => {}
            }
        }
    }

    fn passage(&mut self, content: &'a [Inline], stands: Stands) {
        let mut run = Run {
            size: self.size,
            stands,
            tokens: Vec::new(),
            gap: String::new(),
            notes: Vec::new(),
            apart: Vec::new(),
        };
        run.inlines(content, None);
        let Run { tokens, gap, notes, apart, .. } = run;
        self.found.push(Passage { tokens, tail: gap, stands, ticks: self.ticks });
        notes.into_iter().for_each(|blocks| self.blocks(blocks));
        apart.into_iter().for_each(|(content, stands)| self.passage(content, stands));
    }
}

struct Run<'a> {
    size: Option<usize>,
    stands: Stands,
    tokens: Vec<Token<'a>>,
    gap: String,
    notes: Vec<&'a [Block]>,
    /// What is no part of the sentence that it stands in.
    apart: Vec<(&'a [Inline], Stands)>,
}

impl<'a> Run<'a> {
    fn inlines(&mut self, content: &'a [Inline], leads: Option<&'a Reference>) {
        for inline in content {
            match inline {
                Inline::Text(text) => words(text, leads, &mut self.gap, &mut self.tokens),
                Inline::Strong(inner) | Inline::Emphasis(inner) | Inline::Link(_, inner) => self.inlines(inner, leads),
                Inline::Code(text) => self.bare(text.span, None, None),
                Inline::Brace(Brace::Print { value, filter, span }) => {
                    self.bare(*span, Some((value, filter.as_ref())), leads);
                }
                Inline::Brace(Brace::Choice { branches, .. }) => {
                    let size = self.size;
                    let takes = |branch: &&Branch| size.is_none_or(|size| is_for(branch.sizes.as_ref(), size));
                    let mut taken = branches.iter().filter(takes);
                    if let Some(branch) = taken.next() {
                        self.inlines(&branch.content, leads);
                    }
                    if size.is_none() {
                        self.apart.extend(taken.map(|branch| (branch.content.as_slice(), self.stands)));
                    }
                }
                Inline::Brace(Brace::Broken) => self.gap.push('…'),
                Inline::Reference(reference) if reference.content.is_empty() => {
                    self.bare(reference.span, None, Some(reference));
                    // A term is printed as it is called.
                    if let Some(last) = self.tokens.last_mut().filter(|_| reference.kind == ReferenceKind::Term) {
                        last.raw = reference.target.clone();
                        last.word = reference.target.to_lowercase();
                    }
                }
                Inline::Reference(reference) => self.inlines(&reference.content, Some(reference)),
                Inline::Figure(figure) => self.apart.push((&figure.alt, Stands::Alt)),
                Inline::Break => self.gap.push('\n'),
                Inline::Footnote(blocks) => self.notes.push(blocks),
            }
        }
    }

    fn bare(&mut self, span: Span, brace: Option<(&'a Expression, Option<&'a Filter>)>, leads: Option<&'a Reference>) {
        let gap = std::mem::take(&mut self.gap);
        self.tokens.push(Token { raw: String::new(), word: String::new(), span, brace, leads, gap });
    }
}

/// Words with letters between them, such as an apostrophe, are one.
fn words<'a>(text: &Text, leads: Option<&'a Reference>, gap: &mut String, tokens: &mut Vec<Token<'a>>) {
    let letters: Vec<(usize, char)> = text.text.char_indices().collect();
    let mut at = 0;
    while at < letters.len() {
        let (from, letter) = letters[at];
        if !letter.is_alphanumeric() {
            gap.push(letter);
            at += 1;
            continue;
        }
        let mut end = at + 1;
        while let Some((_, letter)) = letters.get(end) {
            let inside = matches!(letter, '\'' | '’' | '.' | ',' | '/')
                && letters.get(end + 1).is_some_and(|(_, next)| match letter {
                    '\'' | '’' => next.is_alphabetic(),
                    _ => next.is_ascii_digit() && letters[end - 1].1.is_ascii_digit(),
                });
            if !letter.is_alphanumeric() && !inside {
                break;
            }
            end += 1;
        }
        let to = letters.get(end).map_or(text.text.len(), |(byte, _)| *byte);
        let raw = text.text[from..to].to_owned();
        let word = raw.to_lowercase();
        let span = text.at(from..to);
        tokens.push(Token { raw, word, span, brace: None, leads, gap: std::mem::take(gap) });
        at = end;
    }
}

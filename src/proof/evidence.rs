//! What a proof is made from, and how its places and sizes are told.

use crate::book::{Amount, Book, HouseWords, Plain, Value};
use crate::checks::{Ran, Unchecked};
use crate::diag::{Report, Waiver};
use crate::figure::Figures;
use crate::manifest::Manifest;
use crate::model::{Draft, Vocabulary};
use crate::resolve::{Edition, Ids};
use crate::source::{Sources, Span};

/// A booklet after all its stages.
pub struct Evidence<'a> {
    /// As it is written.
    pub draft: &'a Draft,
    /// Every text that was read.
    pub sources: &'a Sources,
    /// Every size, worked out.
    pub editions: &'a [Edition<'a>],
    /// The book of each size; in the order of the editions.
    pub books: &'a [Book],
    /// The book of all sizes.
    pub all: &'a Book,
    /// The words of the house.
    pub words: &'a HouseWords,
    /// What the words of its language mean.
    pub vocabulary: &'a Vocabulary,
    /// The diagrams.
    pub figures: &'a Figures,
    /// Every waiver, each once.
    pub waivers: Vec<&'a Waiver>,
    /// What was found.
    pub report: &'a Report,
    /// What no check looked at.
    pub unchecked: &'a [Unchecked],
    /// What each check looked at.
    pub ran: &'a [Ran],
    /// The edition before, and this one, where they are held against each other.
    pub since: Option<(&'a Manifest, &'a Manifest)>,
}

impl<'a> Evidence<'a> {
    /// The book of all sizes in plain words.
    pub(super) fn plain(&self) -> Plain<'a> {
        Plain { book: self.all, house: self.words }
    }

    /// A word of the house.
    pub(super) fn word(&self, key: &str) -> String {
        self.plain().word(key, &[])
    }

    /// A figure as it is printed.
    pub(super) fn amount(&self, amount: &Amount) -> String {
        self.plain().amount(amount)
    }

    /// The figure of a value in the book of one size.
    pub(super) fn value(&self, value: &Value) -> Option<String> {
        match value {
            Value::Same(amount) => Some(self.amount(amount)),
            Value::Each(each) => each.first().map(|one| self.amount(&one.amount)),
        }
    }

    /// A file and a line, from the booklet's folder.
    pub(super) fn place(&self, span: Span) -> String {
        let path = self.file(span);
        let line = self.sources.place(span).line;
        // What could not be read has no lines.
        match self.sources.file(span.file).text.is_empty() {
            true => path.to_owned(),
            false => format!("{path}:{line}"),
        }
    }

    /// A file, from the booklet's folder.
    pub(super) fn file(&self, span: Span) -> &'a str {
        self.short(&self.sources.file(span.file).path)
    }

    /// A path from the booklet's folder.
    pub(super) fn short<'p>(&self, path: &'p str) -> &'p str {
        let facts = &self.sources.file(self.draft.file).path;
        let home = facts.rfind('/').map_or("", |end| &facts[..=end]);
        path.strip_prefix(home).unwrap_or(path)
    }

    /// The names of sizes; none where they are all.
    pub(super) fn sizes(&self, sizes: &[usize]) -> Vec<String> {
        let all = self.all.sizes.len();
        if sizes.len() >= all { Vec::new() } else { sizes.iter().map(|size| self.plain().size(*size)).collect() }
    }

    /// How many sizes there are.
    pub(super) fn count(&self) -> usize {
        self.all.sizes.len()
    }

    /// The stable ids of parts and steps.
    pub(super) fn ids(&self) -> Ids {
        Ids::of(self.draft)
    }
}

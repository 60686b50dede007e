//! The words: parts, steps, and prose as a tree.

use super::size::is_for;
use super::text::{Expression, Text};
use crate::source::Span;

/// A block of prose.
#[derive(Debug, Clone)]
pub enum Block {
    /// A paragraph.
    Paragraph(Vec<Inline>),
    /// A heading below a step: its level, its words, its place.
    Heading(u8, Vec<Inline>, Span),
    /// A list; the first number of an ordered one.
    List(Option<u64>, Vec<ListItem>),
    /// A quotation.
    Quote(Vec<Block>),
    /// A notice.
    Notice(NoticeKind, Vec<Block>),
    /// Words to be set as they are.
    Code(Text),
    /// A line across.
    Rule,
    /// A table.
    Table(Table),
    /// A diagram or picture that stands by itself.
    Figure(Figure),
}

/// An item of a list.
#[derive(Debug, Clone)]
pub struct ListItem {
    /// Whether it is a box to tick.
    pub task: bool,
    /// What it says.
    pub content: Vec<Block>,
}

/// A table.
#[derive(Debug, Clone)]
pub struct Table {
    /// One for each column.
    pub columns: Vec<Alignment>,
    /// The first row.
    pub header: Vec<Vec<Inline>>,
    /// The others.
    pub rows: Vec<Vec<Vec<Inline>>>,
}

/// How a column is set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Alignment {
    /// Not stated.
    None,
    /// Left.
    Left,
    /// Centre.
    Center,
    /// Right.
    Right,
}

/// What sort of notice.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoticeKind {
    /// Worth knowing.
    Note,
    /// A help.
    Tip,
    /// Not to be missed.
    Important,
    /// Something may go wrong.
    Warning,
    /// Someone may be hurt.
    Caution,
}

/// A diagram in the words.
#[derive(Debug, Clone)]
pub struct Figure {
    /// The path as written; may hold `{size}`.
    pub path: Text,
    /// What it shows, in words.
    pub alt: Vec<Inline>,
    /// The whole mention.
    pub span: Span,
}

/// A run of prose.
#[derive(Debug, Clone)]
pub enum Inline {
    /// Plain words.
    Text(Text),
    /// Strong words.
    Strong(Vec<Inline>),
    /// Words with emphasis.
    Emphasis(Vec<Inline>),
    /// Words set as they are.
    Code(Text),
    /// A figure or a choice by size.
    Brace(Brace),
    /// A reference inside the booklet.
    Reference(Reference),
    /// A link to elsewhere: its address, which is printed too, and its words.
    Link(Text, Vec<Inline>),
    /// A picture in the midst of words, which is reported and not printed.
    Figure(Figure),
    /// A forced line end.
    Break,
    /// A footnote.
    Footnote(Vec<Block>),
}

/// What stands in braces.
#[derive(Debug, Clone)]
pub enum Brace {
    /// A value, worked out and printed.
    Print {
        /// What to work out.
        value: Expression,
        /// How to print it.
        filter: Option<Filter>,
        /// The braces and all between.
        span: Span,
    },
    /// One thing for some sizes, another for others.
    Choice {
        /// The branches, in the order written.
        branches: Vec<Branch>,
        /// The braces and all between.
        span: Span,
    },
    /// Braces that could not be read; reported already.
    Broken,
}

/// One branch of a choice.
#[derive(Debug, Clone)]
pub struct Branch {
    /// The sizes (by their place in `sizes`); `None` for `else`.
    pub sizes: Option<Vec<usize>>,
    /// What is printed for them.
    pub content: Vec<Inline>,
}

/// How a value in braces is printed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Filter {
    /// `words`, `first`, `second`, or a unit.
    pub name: String,
    /// Its place.
    pub span: Span,
}

/// A reference inside the booklet.
#[derive(Debug, Clone)]
pub struct Reference {
    /// What it leads to.
    pub kind: ReferenceKind,
    /// The id that it names.
    pub target: String,
    /// The words that the author gave it; empty for the usual ones.
    pub content: Vec<Inline>,
    /// The whole mention.
    pub span: Span,
}

/// What a reference leads to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum ReferenceKind {
    /// A step or a part: `#id`.
    Step,
    /// A piece: `piece:id`.
    Piece,
    /// A notion: `notion:id`.
    Notion,
    /// A fabric: `fabric:id`.
    Fabric,
    /// The diagram of a step: `figure:id`.
    Figure,
    /// A term of the trade: `term:word`.
    Term,
}

impl ReferenceKind {
    /// The word before the colon; empty for a step.
    pub fn prefix(self) -> &'static str {
        match self {
            ReferenceKind::Step => "",
            ReferenceKind::Piece => "piece",
            ReferenceKind::Notion => "notion",
            ReferenceKind::Fabric => "fabric",
            ReferenceKind::Figure => "figure",
            ReferenceKind::Term => "term",
        }
    }
}

impl Block {
    /// Calls `see` with every run of prose below this block, footnotes and branches included.
    pub fn each_inline<'a>(&'a self, see: &mut dyn FnMut(&'a Inline)) {
        self.each_inline_for(None, see);
    }

    /// The same, in choices only the branch that `size` takes, or all of them when there is no size.
    pub fn each_inline_for<'a>(&'a self, size: Option<usize>, see: &mut dyn FnMut(&'a Inline)) {
        match self {
            Block::Paragraph(content) | Block::Heading(_, content, _) => Inline::walk_for(content, size, see),
            Block::List(_, items) => {
                items.iter().flat_map(|item| &item.content).for_each(|block| block.each_inline_for(size, see));
            }
            Block::Quote(content) | Block::Notice(_, content) => {
                content.iter().for_each(|block| block.each_inline_for(size, see));
            }
            Block::Table(table) => {
                let cells = table.header.iter().chain(table.rows.iter().flatten());
                cells.for_each(|cell| Inline::walk_for(cell, size, see));
            }
            Block::Figure(figure) => Inline::walk_for(&figure.alt, size, see),
            Block::Code(_) | Block::Rule => {}
        }
    }

    /// Calls `see` with every text below this block that is printed, footnotes, branches, code and
    /// addresses included.
    pub fn each_text<'a>(&'a self, see: &mut dyn FnMut(PrintedText<'a>)) {
        match self {
            Block::Code(text) => see(PrintedText::Set(text)),
            Block::Paragraph(content) | Block::Heading(_, content, _) => Inline::each_text(content, see),
            Block::List(_, items) => {
                items.iter().flat_map(|item| &item.content).for_each(|block| block.each_text(see));
            }
            Block::Quote(content) | Block::Notice(_, content) => {
                content.iter().for_each(|block| block.each_text(see));
            }
            Block::Table(table) => {
                let cells = table.header.iter().chain(table.rows.iter().flatten());
                cells.for_each(|cell| Inline::each_text(cell, see));
            }
            Block::Figure(figure) => Inline::each_text(&figure.alt, see),
            Block::Rule => {}
        }
    }

    /// Calls `see` with every figure that stands by itself below this block.
    pub fn each_figure<'a>(&'a self, see: &mut dyn FnMut(&'a Figure)) {
        match self {
            Block::Figure(figure) => see(figure),
            Block::List(_, items) => {
                items.iter().flat_map(|item| &item.content).for_each(|block| block.each_figure(see));
            }
            Block::Quote(content) | Block::Notice(_, content) => {
                content.iter().for_each(|block| block.each_figure(see));
            }
            _ => {}
        }
    }
}

/// A text that is printed.
#[derive(Debug, Clone, Copy)]
pub enum PrintedText<'a> {
    /// Words.
    Words(&'a Text),
    /// Code or an address, set as it is.
    Set(&'a Text),
}

impl Inline {
    /// Whether it leads to a notion, or prints a figure of it.
    pub fn mentions_notion(&self, id: &str) -> bool {
        match self {
            Inline::Reference(reference) => reference.kind == ReferenceKind::Notion && reference.target == id,
            Inline::Brace(Brace::Print { value, .. }) => {
                let owner = format!("{id}.");
                value.formula.names().iter().any(|(name, _)| name.starts_with(&owner))
            }
            _ => false,
        }
    }

    /// Calls `see` with every text in `content` that is printed.
    pub fn each_text<'a>(content: &'a [Inline], see: &mut dyn FnMut(PrintedText<'a>)) {
        for inline in content {
            match inline {
                Inline::Text(text) => see(PrintedText::Words(text)),
                Inline::Code(text) => see(PrintedText::Set(text)),
                Inline::Link(address, inner) => {
                    see(PrintedText::Set(address));
                    Inline::each_text(inner, see);
                }
                Inline::Strong(inner) | Inline::Emphasis(inner) => Inline::each_text(inner, see),
                Inline::Reference(reference) => Inline::each_text(&reference.content, see),
                Inline::Brace(Brace::Choice { branches, .. }) => {
                    branches.iter().for_each(|branch| Inline::each_text(&branch.content, see));
                }
                Inline::Footnote(blocks) => blocks.iter().for_each(|block| block.each_text(see)),
                Inline::Figure(figure) => Inline::each_text(&figure.alt, see),
                Inline::Brace(_) | Inline::Break => {}
            }
        }
    }

    /// Calls `see` with every run in `content`, outer before inner.
    pub fn walk<'a>(content: &'a [Inline], see: &mut dyn FnMut(&'a Inline)) {
        Inline::walk_for(content, None, see);
    }

    /// The same, in choices only the branch that `size` takes, or all of them when there is no size.
    pub fn walk_for<'a>(content: &'a [Inline], size: Option<usize>, see: &mut dyn FnMut(&'a Inline)) {
        for inline in content {
            see(inline);
            match inline {
                Inline::Strong(inner) | Inline::Emphasis(inner) | Inline::Link(_, inner) => {
                    Inline::walk_for(inner, size, see);
                }
                Inline::Reference(reference) => Inline::walk_for(&reference.content, size, see),
                Inline::Brace(Brace::Choice { branches, .. }) => {
                    let takes = |branch: &&Branch| size.is_none_or(|size| is_for(branch.sizes.as_ref(), size));
                    let most = if size.is_some() { 1 } else { branches.len() };
                    let taken = branches.iter().filter(takes).take(most);
                    taken.for_each(|branch| Inline::walk_for(&branch.content, size, see));
                }
                Inline::Footnote(blocks) => blocks.iter().for_each(|block| block.each_inline_for(size, see)),
                Inline::Figure(figure) => Inline::walk_for(&figure.alt, size, see),
                Inline::Text(_) | Inline::Code(_) | Inline::Brace(_) | Inline::Break => {}
            }
        }
    }
}

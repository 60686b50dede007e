//! Prose of one size, ready to be set: the same tree for the page, the web and the shop.

use serde::Serialize;

use super::shown::Shown;
use crate::source::Span;

/// A block.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "lowercase")]
#[allow(missing_docs, reason = "the fields say what they hold")]
pub enum Block {
    Paragraph { content: Vec<Inline> },
    Heading { level: u8, content: Vec<Inline> },
    List { ordered: bool, start: u64, items: Vec<Vec<Block>> },
    Tasks { items: Vec<ListItem> },
    Quote { content: Vec<Block> },
    Notice { notice: &'static str, content: Vec<Block> },
    Code { text: String },
    Rule,
    Table { align: Vec<&'static str>, header: Vec<Vec<Inline>>, rows: Vec<Vec<Vec<Inline>>> },
    Figure(FigureUse),
}

/// A box to tick and what it stands before.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ListItem {
    /// What is to be true.
    pub content: Vec<Block>,
}

/// A diagram on the page.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FigureUse {
    /// The diagram's path from the folder that the command was given, `{size}` filled in.
    pub path: String,
    /// What tells it from the same diagram with other parameters.
    pub key: String,
    /// What it shows, in words.
    pub alt: Vec<Inline>,
    /// Where it is mentioned.
    #[serde(skip)]
    pub span: Span,
}

/// A reference to something in the booklet.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Pointer {
    /// What it leads to; `None` where it leads nowhere, which has been reported.
    pub to: Option<Aim>,
    /// The id of that thing.
    pub id: String,
    /// The author's own words; empty for the usual ones.
    pub content: Vec<Inline>,
    /// The name that the usual words hold; for a step its number, for a part its heading.
    pub name: String,
}

/// What a reference leads to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[allow(missing_docs, reason = "the names say it")]
pub enum Aim {
    Step,
    Part,
    Figure,
    Piece,
    Notion,
    Fabric,
    Term,
}

/// A run of words.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "lowercase")]
#[allow(missing_docs, reason = "the fields say what they hold")]
pub enum Inline {
    Text {
        text: String,
    },
    Strong {
        content: Vec<Inline>,
    },
    Emphasis {
        content: Vec<Inline>,
    },
    Code {
        text: String,
    },
    Value {
        value: Shown,
    },
    /// What a choice by size comes to in this size.
    Choice {
        /// Which of its branches it is, from 0.
        branch: usize,
        content: Vec<Inline>,
    },
    Reference(Pointer),
    Link {
        url: String,
        content: Vec<Inline>,
    },
    Break,
    Footnote {
        content: Vec<Block>,
    },
}

impl Block {
    /// Calls `see` with every diagram in or below these blocks.
    pub fn each_figure<'a>(blocks: &'a [Block], see: &mut dyn FnMut(&'a FigureUse)) {
        for block in blocks {
            match block {
                Block::Figure(figure) => see(figure),
                Block::List { items, .. } => items.iter().for_each(|item| Block::each_figure(item, see)),
                Block::Tasks { items } => items.iter().for_each(|item| Block::each_figure(&item.content, see)),
                Block::Quote { content } | Block::Notice { content, .. } => Block::each_figure(content, see),
                _ => {}
            }
        }
    }
}

impl Inline {
    /// The words without marks, values written out.
    pub fn plain(content: &[Inline]) -> String {
        content
            .iter()
            .map(|inline| match inline {
                Inline::Text { text } | Inline::Code { text } => text.clone(),
                Inline::Reference(pointer) if pointer.content.is_empty() => pointer.name.clone(),
                Inline::Reference(pointer) => Inline::plain(&pointer.content),
                Inline::Strong { content }
                | Inline::Emphasis { content }
                | Inline::Choice { content, .. }
                | Inline::Link { content, .. } => Inline::plain(content),
                Inline::Value { value } => value.to_string(),
                Inline::Break => " ".into(),
                Inline::Footnote { .. } => String::new(),
            })
            .collect()
    }
}

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
    pub alt: String,
    /// Where it is mentioned.
    #[serde(skip)]
    pub span: Span,
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
        content: Vec<Inline>,
    },
    Reference {
        to: Option<String>,
        text: String,
    },
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

    /// Blocks as words in a line, for cells of tables: each block begins a line, an item of a list
    /// carries its mark, and no word is lost. Diagrams, which no cell may hold, are left out.
    pub fn as_line(blocks: &[Block]) -> Vec<Inline> {
        let mut line = Vec::new();
        for block in blocks {
            for part in block.lines() {
                if !line.is_empty() && !part.is_empty() {
                    line.push(Inline::Break);
                }
                line.extend(part);
            }
        }
        line
    }

    fn lines(&self) -> Vec<Vec<Inline>> {
        let item = |mark: String, content: &[Block]| {
            let mut line = vec![Inline::Text { text: mark }];
            line.extend(Block::as_line(content));
            line
        };
        match self {
            Block::Paragraph { content } => vec![content.clone()],
            Block::Heading { content, .. } => vec![vec![Inline::Strong { content: content.clone() }]],
            Block::List { ordered, start, items } => {
                let mark = |number| if *ordered { format!("{number}. ") } else { "• ".to_owned() };
                items.iter().zip(*start..).map(|(content, number)| item(mark(number), content)).collect()
            }
            Block::Tasks { items } => items.iter().map(|one| item("• ".into(), &one.content)).collect(),
            Block::Quote { content } => vec![vec![Inline::Emphasis { content: Block::as_line(content) }]],
            Block::Notice { content, .. } => vec![Block::as_line(content)],
            Block::Code { text } => text.lines().map(|line| vec![Inline::Code { text: line.to_owned() }]).collect(),
            Block::Table { header, rows, .. } => {
                let comma = Inline::Text { text: ", ".into() };
                std::iter::once(header).chain(rows).map(|row| row.join(&comma)).collect()
            }
            Block::Rule | Block::Figure(_) => Vec::new(),
        }
    }
}

impl Inline {
    /// The words without marks, values written out.
    pub fn plain(content: &[Inline]) -> String {
        content
            .iter()
            .map(|inline| match inline {
                Inline::Text { text } | Inline::Code { text } | Inline::Reference { text, .. } => text.clone(),
                Inline::Strong { content }
                | Inline::Emphasis { content }
                | Inline::Choice { content }
                | Inline::Link { content, .. } => Inline::plain(content),
                Inline::Value { value } => value.to_string(),
                Inline::Break => " ".into(),
                Inline::Footnote { .. } => String::new(),
            })
            .collect()
    }
}

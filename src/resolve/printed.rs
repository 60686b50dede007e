//! Prose of one size, ready to be set: the same tree for the page, the web and the shop.

use serde::Serialize;

use super::figures::Figures;

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
    /// The diagram's path from the booklet's folder, `{size}` filled in.
    pub path: String,
    /// What it shows, in words.
    pub alt: String,
    /// Its width as drawn, in mm; set once the diagram is bound.
    pub width: f64,
    /// Its height as drawn, in mm.
    pub height: f64,
}


/// A run of words.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "lowercase")]
#[allow(missing_docs, reason = "the fields say what they hold")]
pub enum Inline {
    Text { text: String },
    Strong { content: Vec<Inline> },
    Emphasis { content: Vec<Inline> },
    Code { text: String },
    Value { value: Figures },
    Reference { to: Option<String>, text: String },
    Link { url: String, content: Vec<Inline> },
    Break,
    Footnote { content: Vec<Block> },
}

impl Inline {
    /// The words without marks, values written out.
    pub fn plain(content: &[Inline]) -> String {
        content
            .iter()
            .map(|inline| match inline {
                Inline::Text { text } | Inline::Code { text } | Inline::Reference { text, .. } => text.clone(),
                Inline::Strong { content } | Inline::Emphasis { content } | Inline::Link { content, .. } => {
                    Inline::plain(content)
                }
                Inline::Value { value } => value.to_string(),
                Inline::Break => " ".into(),
                Inline::Footnote { .. } => String::new(),
            })
            .collect()
    }
}

//! The words of a book without their looks: as a text file, a list or a comparison says them.

use std::collections::BTreeMap;

use super::amount::{Amount, Value, Written};
use super::prose::{Aim, Block, Inline, Reference};
use super::volume::Book;

/// The words of the house by their keys; some hold `{places}` to fill.
pub type HouseWords = BTreeMap<String, String>;

/// A book as it is told in plain words.
#[derive(Clone, Copy)]
pub struct Plain<'a> {
    /// The book.
    pub book: &'a Book,
    /// The words that its keys stand for.
    pub house: &'a HouseWords,
}

impl Plain<'_> {
    /// A word of the house with its places filled; the key itself where the house has no word for it.
    pub fn word(&self, key: &str, places: &[(&str, &str)]) -> String {
        let mut rest = self.house.get(key).map_or(key, String::as_str);
        let mut filled = String::new();
        // What is filled in is never filled again.
        while let Some(open) = rest.find('{') {
            let Some(close) = rest[open..].find('}').map(|close| open + close) else { break };
            filled.push_str(&rest[..open]);
            match places.iter().find(|(name, _)| *name == &rest[open + 1..close]) {
                Some((_, words)) => filled.push_str(words),
                None => filled.push_str(&rest[open..=close]),
            }
            rest = &rest[close + 1..];
        }
        filled + rest
    }

    /// Names one after the other, the last behind a word.
    pub fn listed(&self, names: &[String]) -> String {
        match names {
            [] => String::new(),
            [only] => only.clone(),
            [first @ .., last] => format!("{} {} {last}", first.join(", "), self.word("and", &[])),
        }
    }

    fn written(&self, written: &Written) -> String {
        let unit = self.house.get(&format!("unit_{}", written.unit)).unwrap_or(&written.unit);
        let number = written.number.replace('\u{a0}', " ");
        match unit.as_str() {
            "" => number,
            "°" | "″" | "\"" => format!("{number}{unit}"),
            _ => format!("{number} {unit}"),
        }
    }

    /// A figure in both systems: `20 cm (7 7/8 in)`.
    pub fn amount(&self, amount: &Amount) -> String {
        let first = self.written(&amount.first);
        match &amount.second {
            Some(second) => format!("{first} ({})", self.written(second)),
            None => first,
        }
    }

    /// A figure, or that of each size with the size's name before it.
    pub fn value(&self, value: &Value) -> String {
        match value {
            Value::Same(amount) => self.amount(amount),
            Value::Each(each) => {
                let each = each.iter().map(|one| format!("{} {}", self.size(one.size), self.amount(&one.amount)));
                each.collect::<Vec<_>>().join(", ")
            }
        }
    }

    /// The name of a size; with the thing that it is a size of, where the pattern is for several.
    pub fn size(&self, size: usize) -> String {
        let name = self.book.sizes.get(size).map_or("", |size| size.name.as_str());
        match self.book.views.iter().find(|view| view.sizes.contains(&size)) {
            Some(view) if self.book.views.len() > 1 && view.name != name => format!("{} {name}", view.name),
            _ => name.to_owned(),
        }
    }

    /// The names of some sizes; the word for all where they are all that there are.
    pub fn sizes(&self, sizes: &[usize]) -> String {
        match sizes.len() == self.book.sizes.len() && sizes.len() > 1 {
            true => self.word("all_sizes", &[]),
            false => self.listed(&sizes.iter().map(|size| self.size(*size)).collect::<Vec<_>>()),
        }
    }

    /// Running words.
    pub fn inlines(&self, content: &[Inline]) -> String {
        content.iter().map(|inline| self.inline(inline)).collect()
    }

    fn inline(&self, inline: &Inline) -> String {
        match inline {
            Inline::Text { text } | Inline::Code { text } => text.clone(),
            Inline::Strong { content } | Inline::Emphasis { content } | Inline::Choice { content, .. } => {
                self.inlines(content)
            }
            Inline::Value { value } => self.value(value),
            Inline::BySize { branches } => {
                let branch =
                    |sizes: &[usize], content: &[Inline]| format!("{}: {}", self.sizes(sizes), self.inlines(content));
                let branches = branches.iter().map(|one| branch(&one.sizes, &one.content));
                branches.collect::<Vec<_>>().join("; ")
            }
            Inline::Reference(reference) => self.reference(reference),
            Inline::Link { url, content } => {
                let words = self.inlines(content);
                let address = url.strip_prefix("mailto:").unwrap_or(url);
                if words == address || words.is_empty() { address.to_owned() } else { format!("{words} ({address})") }
            }
            Inline::Break => "\n".to_owned(),
            Inline::Footnote { content } => format!(" ({})", self.blocks(content).join(" ")),
        }
    }

    fn reference(&self, reference: &Reference) -> String {
        if !reference.content.is_empty() {
            return self.inlines(&reference.content);
        }
        let steps = || self.book.parts.iter().flat_map(|part| &part.steps);
        match reference.to {
            Aim::Step => {
                let number = steps().find(|step| step.id == reference.id).map(|step| step.number.to_string());
                number.map_or_else(|| reference.id.clone(), |number| self.word("step", &[("n", &number)]))
            }
            Aim::Part => {
                let part = self.book.parts.iter().find(|part| part.id == reference.id);
                part.map_or_else(|| reference.id.clone(), |part| self.inlines(&part.title))
            }
            _ if reference.name.is_empty() => reference.id.clone(),
            _ => reference.name.clone(),
        }
    }

    /// Blocks as lines: a paragraph is one, an item of a list another, with a dash before it.
    pub fn blocks(&self, blocks: &[Block]) -> Vec<String> {
        blocks.iter().flat_map(|block| self.block(block)).collect()
    }

    fn block(&self, block: &Block) -> Vec<String> {
        match block {
            Block::Paragraph { content } | Block::Heading { content, .. } => vec![self.inlines(content)],
            Block::List { items, .. } | Block::Tasks { items } => {
                items.iter().map(|item| format!("- {}", self.blocks(item).join(" "))).collect()
            }
            Block::Quote { content } => self.blocks(content),
            Block::Notice { notice, content } => {
                let name = self.word(&format!("{notice:?}").to_lowercase(), &[]);
                vec![format!("{name}: {}", self.blocks(content).join(" "))]
            }
            Block::Code { text } => text.lines().map(str::to_owned).collect(),
            Block::Rule => Vec::new(),
            Block::Table { header, rows, .. } => {
                let row = |cells: &Vec<Vec<Inline>>| {
                    cells.iter().map(|cell| self.inlines(cell)).collect::<Vec<_>>().join(" | ")
                };
                std::iter::once(header).chain(rows).map(row).collect()
            }
            Block::Figure(picture) => vec![self.inlines(&picture.alt)],
            Block::BySize { branches } => {
                let line = |(sizes, line): (&[usize], String)| format!("{}: {line}", self.sizes(sizes));
                let each = branches.iter().map(|one| (one.sizes.as_slice(), self.blocks(&one.content).join(" ")));
                each.map(line).collect()
            }
        }
    }
}

/// Every run of words in blocks, in order, however deep.
pub fn in_blocks<'a>(blocks: &'a [Block], see: &mut dyn FnMut(&'a Inline)) {
    for block in blocks {
        match block {
            Block::Paragraph { content } | Block::Heading { content, .. } => each_inline(content, see),
            Block::List { items, .. } | Block::Tasks { items } => items.iter().for_each(|item| in_blocks(item, see)),
            Block::Quote { content } | Block::Notice { content, .. } => in_blocks(content, see),
            Block::Table { header, rows, .. } => {
                std::iter::once(header).chain(rows).flatten().for_each(|cell| each_inline(cell, see));
            }
            Block::Figure(picture) => each_inline(&picture.alt, see),
            Block::BySize { branches } => branches.iter().for_each(|one| in_blocks(&one.content, see)),
            Block::Code { .. } | Block::Rule => {}
        }
    }
}

/// Every run of words, those inside others behind them.
pub fn each_inline<'a>(content: &'a [Inline], see: &mut dyn FnMut(&'a Inline)) {
    for inline in content {
        see(inline);
        match inline {
            Inline::Strong { content }
            | Inline::Emphasis { content }
            | Inline::Choice { content, .. }
            | Inline::Link { content, .. } => each_inline(content, see),
            Inline::Reference(reference) => each_inline(&reference.content, see),
            Inline::BySize { branches } => branches.iter().for_each(|one| each_inline(&one.content, see)),
            Inline::Footnote { content } => in_blocks(content, see),
            Inline::Text { .. } | Inline::Code { .. } | Inline::Value { .. } | Inline::Break => {}
        }
    }
}

/// The figures in blocks, in order.
pub fn amounts_in(blocks: &[Block]) -> Vec<&Amount> {
    let mut found = Vec::new();
    in_blocks(blocks, &mut |inline| {
        if let Inline::Value { value } = inline {
            match value {
                Value::Same(amount) => found.push(amount),
                Value::Each(each) => found.extend(each.iter().map(|one| &one.amount)),
            }
        }
    });
    found
}

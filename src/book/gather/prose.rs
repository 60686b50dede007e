//! Prose of one size as prose of the book.

use super::gatherer::Gatherer;
use crate::book::amount::Value;
use crate::book::prose::{Aim, Block, Inline, Notice, Picture, Reference, Side, View};
use crate::resolve;

impl Gatherer<'_> {
    /// Blocks; the diagrams among them belong to `owner`, the id of a step or a part.
    pub fn blocks(&mut self, blocks: &[resolve::Block], owner: &str) -> Vec<Block> {
        blocks.iter().filter_map(|block| self.block(block, owner)).collect()
    }

    fn block(&mut self, block: &resolve::Block, owner: &str) -> Option<Block> {
        Some(match block {
            resolve::Block::Paragraph { content } => Block::Paragraph { content: self.inlines(content, owner) },
            resolve::Block::Heading { level, content } => {
                Block::Heading { level: *level, content: self.inlines(content, owner) }
            }
            resolve::Block::List { ordered, start, items } => Block::List {
                ordered: *ordered,
                start: *start,
                items: items.iter().map(|item| self.blocks(item, owner)).collect(),
            },
            resolve::Block::Tasks { items } => {
                Block::Tasks { items: items.iter().map(|item| self.blocks(&item.content, owner)).collect() }
            }
            resolve::Block::Quote { content } => Block::Quote { content: self.blocks(content, owner) },
            resolve::Block::Notice { notice, content } => {
                Block::Notice { notice: self::notice(notice), content: self.blocks(content, owner) }
            }
            resolve::Block::Code { text } => Block::Code { text: text.clone() },
            resolve::Block::Rule => Block::Rule,
            resolve::Block::Table { align, header, rows } => Block::Table {
                align: align.iter().map(|side| self::side(side)).collect(),
                header: header.iter().map(|cell| self.inlines(cell, owner)).collect(),
                rows: rows.iter().map(|row| row.iter().map(|cell| self.inlines(cell, owner)).collect()).collect(),
            },
            resolve::Block::Figure(figure) => Block::Figure(self.picture(figure, owner)?),
        })
    }

    /// A diagram where it is shown; `None` when it could not be drawn, which has been reported.
    pub fn picture(&mut self, figure: &resolve::FigureUse, owner: &str) -> Option<Picture> {
        let bound = self.supplies.figures.get(self.size, &figure.key)?;
        let place = self.pictures_of.entry(owner.to_owned()).or_insert(0);
        *place += 1;
        let id = if *place == 1 { owner.to_owned() } else { format!("{owner}-{place}") };
        let drawing = format!("figures/{id}");
        let origin = (!figure.path.starts_with(crate::figure::DRAW)).then(|| bound.path.clone());
        self.draw(&drawing, &bound.svg, (bound.width, bound.height), origin);
        let alt = self.inlines(&figure.alt, owner);
        Some(Picture { id, alt, views: vec![View { sizes: vec![self.size], drawing }], notes: Vec::new() })
    }

    /// Runs of words.
    pub fn inlines(&mut self, content: &[resolve::Inline], owner: &str) -> Vec<Inline> {
        content.iter().map(|inline| self.inline(inline, owner)).collect()
    }

    fn inline(&mut self, inline: &resolve::Inline, owner: &str) -> Inline {
        match inline {
            resolve::Inline::Text { text } => Inline::text(text.clone()),
            resolve::Inline::Strong { content } => Inline::Strong { content: self.inlines(content, owner) },
            resolve::Inline::Emphasis { content } => Inline::Emphasis { content: self.inlines(content, owner) },
            resolve::Inline::Code { text } => Inline::Code { text: text.clone() },
            resolve::Inline::Value { value } => Inline::Value { value: Value::of(value) },
            resolve::Inline::Choice { branch, content } => {
                Inline::Choice { branch: *branch, content: self.inlines(content, owner) }
            }
            resolve::Inline::Reference(pointer) => self.reference(pointer, owner),
            resolve::Inline::Link { url, content } => {
                Inline::Link { url: url.clone(), content: self.inlines(content, owner) }
            }
            resolve::Inline::Break => Inline::Break,
            resolve::Inline::Footnote { content } => Inline::Footnote { content: self.blocks(content, owner) },
        }
    }

    fn reference(&mut self, pointer: &resolve::Pointer, owner: &str) -> Inline {
        let content = self.inlines(&pointer.content, owner);
        let Some(to) = pointer.to else { return Inline::text(pointer.name.clone()) };
        let (to, id) = match to {
            resolve::Aim::Step => (Aim::Step, pointer.id.clone()),
            resolve::Aim::Part => (Aim::Part, pointer.id.clone()),
            resolve::Aim::Figure => (Aim::Figure, pointer.id.clone()),
            resolve::Aim::Piece => (Aim::Piece, pointer.id.clone()),
            resolve::Aim::Notion => (Aim::Notion, pointer.id.clone()),
            resolve::Aim::Fabric => (Aim::Fabric, pointer.id.clone()),
            resolve::Aim::Term => (Aim::Term, resolve::slug(&pointer.id, "term")),
        };
        // A step's number and a part's heading are found where they stand, since they may change when
        // sizes are laid over one another.
        let name = match to {
            Aim::Step | Aim::Figure => String::new(),
            _ => pointer.name.clone(),
        };
        Inline::Reference(Reference { to, id, content, name })
    }
}

fn notice(name: &str) -> Notice {
    match name {
        "tip" => Notice::Tip,
        "important" => Notice::Important,
        "warning" => Notice::Warning,
        "caution" => Notice::Caution,
        _ => Notice::Note,
    }
}

fn side(name: &str) -> Side {
    match name {
        "left" => Side::Left,
        "center" => Side::Center,
        "right" => Side::Right,
        _ => Side::None,
    }
}

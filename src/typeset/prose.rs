//! Prose of a book as the templates walk it: figures formed into rows, references led to labels.

use serde_json::{Value as Json, json};

use super::setter::{Setter, path};
use crate::book::{Aim, Amount, Block, Inline, Picture, Reference, Value, Written};

impl Setter<'_> {
    pub fn blocks(&self, blocks: &[Block]) -> Json {
        blocks.iter().map(|block| self.block(block)).collect()
    }

    fn block(&self, block: &Block) -> Json {
        match block {
            Block::Paragraph { content } => json!({ "kind": "paragraph", "content": self.inlines(content) }),
            Block::Heading { level, content } => {
                json!({ "kind": "heading", "level": level, "content": self.inlines(content) })
            }
            Block::List { ordered, start, items } => {
                let items: Vec<Json> = items.iter().map(|item| self.blocks(item)).collect();
                json!({ "kind": "list", "ordered": ordered, "start": start, "items": items })
            }
            Block::Tasks { items } => {
                let items: Vec<Json> = items.iter().map(|item| self.blocks(item)).collect();
                json!({ "kind": "tasks", "items": items })
            }
            Block::Quote { content } => json!({ "kind": "quote", "content": self.blocks(content) }),
            Block::Notice { notice, content } => {
                json!({ "kind": "notice", "notice": notice, "content": self.blocks(content) })
            }
            Block::Code { text } => json!({ "kind": "code", "text": text }),
            Block::Rule => json!({ "kind": "rule" }),
            Block::Table { align, header, rows } => {
                let cells = |row: &Vec<Vec<Inline>>| row.iter().map(|cell| self.inlines(cell)).collect::<Vec<_>>();
                let rows: Vec<Vec<Json>> = rows.iter().map(cells).collect();
                json!({ "kind": "table", "align": align, "header": cells(header), "rows": rows })
            }
            Block::Figure(picture) => self.picture(picture),
            Block::BySize { branches } => {
                let branches: Vec<Json> = branches
                    .iter()
                    .filter(|branch| branch.sizes.iter().any(|size| self.shows(*size)))
                    .map(|branch| {
                        let own = self.within(&branch.sizes);
                        json!({ "sizes": self.names(&branch.sizes), "content": own.blocks(&branch.content) })
                    })
                    .collect();
                json!({ "kind": "by_size", "branches": branches })
            }
        }
    }

    /// A diagram with the paths of its drawings.
    pub fn picture(&self, picture: &Picture) -> Json {
        let views: Vec<Json> = picture
            .views
            .iter()
            .map(|view| {
                let drawing = self.book.drawings.get(&view.drawing);
                json!({
                    "path": path(&view.drawing),
                    "width": drawing.map_or(0.0, |drawing| drawing.width),
                    "height": drawing.map_or(0.0, |drawing| drawing.height),
                    "sizes": self.names(&view.sizes),
                })
            })
            .collect();
        let notes: Vec<Json> = picture
            .notes
            .iter()
            .map(|note| {
                let each = note.each.iter().map(|(sizes, words)| json!({ "sizes": self.names(sizes), "words": words }));
                json!({ "letter": note.letter, "each": each.collect::<Vec<_>>() })
            })
            .collect();
        json!({
            "kind": "figure",
            "id": picture.id,
            "alt": self.inlines(&picture.alt),
            "views": views,
            "notes": notes,
        })
    }

    pub fn inlines(&self, content: &[Inline]) -> Json {
        content.iter().map(|inline| self.inline(inline)).collect()
    }

    fn inline(&self, inline: &Inline) -> Json {
        match inline {
            Inline::Text { text } => json!({ "kind": "text", "text": text }),
            Inline::Strong { content } => json!({ "kind": "strong", "content": self.inlines(content) }),
            Inline::Emphasis { content } => json!({ "kind": "emphasis", "content": self.inlines(content) }),
            Inline::Code { text } => json!({ "kind": "code", "text": text }),
            Inline::Value { value: Value::Each(each) } => {
                let own = each.iter().filter(|one| self.shows(one.size)).cloned().collect();
                json!({ "kind": "value", "value": self::value(&Value::Each(own)) })
            }
            Inline::Value { value } => json!({ "kind": "value", "value": self::value(value) }),
            Inline::Choice { content, .. } => json!({ "kind": "choice", "content": self.inlines(content) }),
            Inline::BySize { branches } => {
                let branches: Vec<Json> = branches
                    .iter()
                    .filter(|branch| branch.sizes.iter().any(|size| self.shows(*size)))
                    .map(|branch| {
                        let own = self.within(&branch.sizes);
                        json!({ "sizes": self.names(&branch.sizes), "content": own.inlines(&branch.content) })
                    })
                    .collect();
                // One branch for all that is shown here needs no names.
                match branches.as_slice() {
                    [only] if only["sizes"] == json!([]) => json!({ "kind": "choice", "content": only["content"] }),
                    _ => json!({ "kind": "by_size", "branches": branches }),
                }
            }
            Inline::Reference(reference) => self.reference(reference),
            Inline::Link { url, content } => json!({ "kind": "link", "url": url, "content": self.inlines(content) }),
            Inline::Break => json!({ "kind": "break" }),
            Inline::Footnote { content } => json!({ "kind": "footnote", "content": self.blocks(content) }),
        }
    }

    fn reference(&self, reference: &Reference) -> Json {
        let (label, number) = match reference.to {
            Aim::Step => (format!("step-{}", reference.id), self.number(&reference.id)),
            Aim::Figure => (format!("figure-{}", reference.id), self.number(&reference.id)),
            Aim::Part => (format!("part-{}", reference.id), None),
            Aim::Piece => (format!("piece-{}", reference.id), self.piece_number(&reference.id)),
            Aim::Notion => (format!("notion-{}", reference.id), None),
            Aim::Fabric => (format!("fabric-{}", reference.id), None),
            Aim::Term => (format!("term-{}", reference.id), None),
        };
        json!({
            "kind": "reference",
            "to": label,
            "aim": reference.to,
            "number": number,
            "name": reference.name,
            "content": self.inlines(&reference.content),
        })
    }

    /// The number of a piece on layouts and sheets; `None` where it is not drawn.
    fn piece_number(&self, id: &str) -> Option<usize> {
        self.book.pieces.pieces.iter().find(|piece| piece.id == id).map(|piece| piece.number)
    }

    /// A step's number; `None` when the book has no such step.
    fn number(&self, id: &str) -> Option<usize> {
        let mut steps = self.book.parts.iter().flat_map(|part| &part.steps);
        steps.find(|step| step.id == id).map(|step| step.number)
    }
}

/// A figure in running words: both systems, those of several sizes in a row.
pub(super) fn value(value: &Value) -> Json {
    match value {
        Value::Same(amount) => self::amount(amount),
        Value::Each(amounts) => {
            let amounts: Vec<&Amount> = amounts.iter().map(|one| &one.amount).collect();
            let firsts: Vec<&Written> = amounts.iter().map(|amount| &amount.first).collect();
            let seconds: Option<Vec<&Written>> = amounts.iter().map(|amount| amount.second.as_ref()).collect();
            json!({ "first": row(&firsts), "second": seconds.map(|figures| row(&figures)), "row": true })
        }
    }
}

/// One quantity in both systems.
pub(super) fn amount(amount: &Amount) -> Json {
    json!({ "first": amount.first, "second": amount.second })
}

/// `20 (26, 32)` and their unit; each with its own where the units differ. Figures that are the same
/// stand once.
fn row(figures: &[&Written]) -> Json {
    if figures.iter().all(|one| one == &figures[0]) {
        return json!(figures[0]);
    }
    let one_unit = figures.iter().all(|one| one.unit == figures[0].unit);
    let number = |figure: &&Written| match one_unit {
        true => figure.number.clone(),
        false => format!("{}\u{a0}{}", figure.number, figure.unit),
    };
    let rest: Vec<String> = figures[1..].iter().map(number).collect();
    let unit = if one_unit { figures[0].unit.as_str() } else { "" };
    json!({ "number": format!("{} ({})", number(&figures[0]), rest.join(", ")), "unit": unit })
}

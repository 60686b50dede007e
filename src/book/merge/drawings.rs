//! The drawings of all sizes: one for all where they can be laid over one another, each size's own
//! where they cannot; none is ever left out.

use std::collections::BTreeMap;

use super::order::alike;
use crate::book::prose::{Block, Inline, LabelWords, Picture, View};
use crate::book::thing::MADE_UP;
use crate::book::volume::{Book, Drawing};
use crate::figure::LabelNote;

/// Lays drawings of several sizes over one another; `None` where they cannot be.
pub(super) type Over<'a> = &'a dyn Fn(&[&Drawing]) -> Option<(Drawing, Vec<LabelNote>)>;

/// Gives the merged book its drawings: those of its diagrams, and those that its lists name.
pub(super) fn adopt(book: &mut Book, books: &[Book], over: Over<'_>) {
    let views = book.views.iter().map(|view| view.sizes.clone()).collect();
    let mut adopter = Adopter { books, views, over, drawings: BTreeMap::new() };
    for part in &mut book.parts {
        adopter.blocks(&mut part.intro);
        for step in &mut part.steps {
            step.figure.iter_mut().for_each(|picture| adopter.picture(picture));
            adopter.blocks(&mut step.body);
        }
    }
    for blocks in [&mut book.read_first, &mut book.care, &mut book.terms] {
        adopter.blocks(blocks);
    }
    for entry in &book.key {
        adopter.own(None, &entry.drawing, &entry.drawing);
    }
    for code in book.film.iter().filter_map(|film| film.code.as_ref()) {
        adopter.own(None, code, code);
    }
    for piece in &book.pieces.pieces {
        adopter.own(Some(piece.size), &piece.drawing, &piece.drawing);
        // Sizes are drawn to scales of their own: here one holds for all.
        let own = books.iter().find(|book| book.shown == [piece.size]).map_or(1, |book| book.pieces.scale);
        if let Some(drawing) = adopter.drawings.get_mut(&piece.drawing) {
            let larger = f64::from(own) / f64::from(book.pieces.scale.max(1));
            let size = (drawing.width * larger, drawing.height * larger);
            *drawing = Drawing::new(std::mem::take(&mut drawing.svg), size, drawing.origin.take());
        }
    }
    let states = book.parts.iter_mut().flat_map(|part| &mut part.state);
    for thing in book.things.iter_mut().chain(&mut book.cover_drawn).chain(states) {
        // Without figures, which are those of one size.
        let name = format!("{}-{}", thing.drawing, thing.size);
        let of = if thing.drawing == MADE_UP[0] { MADE_UP[1] } else { &thing.drawing };
        adopter.own(Some(thing.size), of, &name);
        thing.drawing = name;
    }
    for layout in &mut book.layouts {
        let name = format!("{}-{}", layout.drawing, layout.size);
        adopter.own(Some(layout.size), &layout.drawing, &name);
        layout.drawing = name;
    }
    book.drawings.append(&mut adopter.drawings);
}

/// A drawing, and the sizes that it shows.
type Sized = (Vec<usize>, Drawing);

struct Adopter<'a> {
    books: &'a [Book],
    /// The sizes of each thing; none where there is one alone.
    views: Vec<Vec<usize>>,
    over: Over<'a>,
    drawings: BTreeMap<String, Drawing>,
}

impl Adopter<'_> {
    fn of(&self, size: usize, name: &str) -> Option<&Drawing> {
        self.books.iter().find(|book| book.shown == [size])?.drawings.get(name)
    }

    /// A drawing of one size, or of the first size that has it, under a name in the merged book.
    fn own(&mut self, size: Option<usize>, name: &str, to: &str) {
        let found = match size {
            Some(size) => self.of(size, name),
            None => self.books.iter().find_map(|book| book.drawings.get(name)),
        };
        if let Some(drawing) = found.cloned() {
            self.drawings.insert(to.to_owned(), drawing);
        }
    }

    fn picture(&mut self, picture: &mut Picture) {
        self.inlines(&mut picture.alt);
        let mut groups: Vec<(Vec<usize>, Drawing)> = Vec::new();
        for view in &picture.views {
            let Some(drawing) = view.sizes.first().and_then(|size| self.of(*size, &view.drawing)).cloned() else {
                continue;
            };
            match groups.iter_mut().find(|(_, known)| known.svg == drawing.svg) {
                Some((sizes, _)) => sizes.extend(&view.sizes),
                None => groups.push((view.sizes.clone(), drawing)),
            }
        }
        let mut notes: Vec<LabelWords> = Vec::new();
        groups = self.by_view(groups).into_iter().flat_map(|own| self.laid_over(own, &mut notes)).collect();
        picture.notes = notes;
        let base = picture.views.first().map_or_else(String::new, |view| view.drawing.clone());
        let alone = groups.len() == 1;
        picture.views = groups
            .into_iter()
            .map(|(sizes, drawing)| {
                let size = sizes.first().copied().unwrap_or(0);
                let mut name = if alone { base.clone() } else { format!("{base}-{size}") };
                // Two diagrams of one id in different sizes are two drawings.
                while self.drawings.get(&name).is_some_and(|known| *known != drawing) {
                    name.push('+');
                }
                self.drawings.insert(name.clone(), drawing);
                View { sizes, drawing: name }
            })
            .collect();
    }

    /// Drawings of one thing in several sizes, thing by thing; one that is equal in several stands with the first.
    fn by_view(&self, groups: Vec<Sized>) -> Vec<Vec<Sized>> {
        let view = |size: usize| self.views.iter().position(|sizes| sizes.contains(&size));
        let mut parts: Vec<(Option<usize>, Vec<Sized>)> = Vec::new();
        for group in groups {
            let own = group.0.first().and_then(|size| view(*size));
            match parts.iter_mut().find(|(known, _)| *known == own) {
                Some((_, part)) => part.push(group),
                None => parts.push((own, vec![group])),
            }
        }
        parts.into_iter().map(|(_, part)| part).collect()
    }

    /// Drawings laid over one another as one, where they can be.
    fn laid_over(&self, groups: Vec<Sized>, notes: &mut Vec<LabelWords>) -> Vec<Sized> {
        // Drawings that their author made for each size are not one drawing in several sizes.
        let one_origin = groups.iter().all(|(_, drawing)| drawing.origin == groups[0].1.origin);
        if groups.len() < 2 || !one_origin {
            return groups;
        }
        let drawings: Vec<&Drawing> = groups.iter().map(|(_, drawing)| drawing).collect();
        let Some((one, found)) = (self.over)(&drawings) else { return groups };
        for LabelNote { letter, words } in found {
            let own = groups.iter().map(|(sizes, _)| sizes.clone()).zip(words);
            let each = alike(&own.collect::<Vec<_>>());
            // A letter in the diagram of another thing has its words below the same one.
            match notes.iter_mut().find(|known| known.letter == letter) {
                Some(known) => known.each.extend(each),
                None => notes.push(LabelWords { letter, each }),
            }
        }
        vec![(groups.iter().flat_map(|(sizes, _)| sizes.iter().copied()).collect(), one)]
    }

    fn blocks(&mut self, blocks: &mut [Block]) {
        for block in blocks {
            match block {
                Block::Figure(picture) => self.picture(picture),
                Block::List { items, .. } | Block::Tasks { items } => {
                    items.iter_mut().for_each(|item| self.blocks(item));
                }
                Block::Quote { content } | Block::Notice { content, .. } => self.blocks(content),
                Block::BySize { branches } => branches.iter_mut().for_each(|branch| self.blocks(&mut branch.content)),
                Block::Paragraph { content } | Block::Heading { content, .. } => self.inlines(content),
                Block::Table { .. } | Block::Code { .. } | Block::Rule => {}
            }
        }
    }

    fn inlines(&mut self, content: &mut [Inline]) {
        for inline in content {
            match inline {
                Inline::Footnote { content } => self.blocks(content),
                Inline::Strong { content }
                | Inline::Emphasis { content }
                | Inline::Choice { content, .. }
                | Inline::Link { content, .. } => self.inlines(content),
                Inline::Reference(reference) => self.inlines(&mut reference.content),
                Inline::BySize { branches } => branches.iter_mut().for_each(|branch| self.inlines(&mut branch.content)),
                Inline::Text { .. } | Inline::Code { .. } | Inline::Value { .. } | Inline::Break => {}
            }
        }
    }
}

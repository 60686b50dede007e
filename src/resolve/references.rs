//! Where the references of one size lead, and what those things are called.

use super::printed::Aim;
use crate::diag::in_sentence;
use crate::model::{Draft, ReferenceKind, is_for};

/// Where references of one size lead.
pub(super) struct Ends {
    size: usize,
    steps: Vec<(String, Option<usize>, bool)>,
    parts: Vec<(String, bool, String)>,
}

impl Ends {
    pub fn gather(draft: &Draft, size: usize) -> Ends {
        let mut ends = Ends { size, steps: Vec::new(), parts: Vec::new() };
        let mut number = 0;
        for part in &draft.parts {
            let part_here = is_for(part.sizes.as_ref(), size);
            if let Some(id) = &part.id {
                ends.parts.push((id.text.clone(), part_here, crate::syntax::plain_inline(&part.title)));
            }
            for step in &part.steps {
                let here = part_here && is_for(step.sizes.as_ref(), size);
                number += usize::from(here);
                let mut figure = false;
                step.body.iter().for_each(|block| block.each_figure(&mut |_| figure = true));
                if let Some(id) = &step.id {
                    ends.steps.push((id.text.clone(), here.then_some(number), figure));
                }
            }
        }
        ends
    }

    /// What a reference leads to, that thing's id, and its name; `Err(true)` when the target is left
    /// out in this size, `Err(false)` when there is none at all.
    pub fn find(&self, kind: ReferenceKind, id: &str, draft: &Draft) -> Result<(Aim, String, String), bool> {
        let facts = &draft.facts;
        match kind {
            ReferenceKind::Step => {
                if let Some((_, number, _)) = self.steps.iter().find(|(known, ..)| known == id) {
                    let number = number.ok_or(true)?;
                    return Ok((Aim::Step, id.to_owned(), number.to_string()));
                }
                let (_, here, title) = self.parts.iter().find(|(known, ..)| known == id).ok_or(false)?;
                if *here { Ok((Aim::Part, id.to_owned(), title.clone())) } else { Err(true) }
            }
            ReferenceKind::Figure => {
                let step = self.steps.iter().find(|(known, _, figure)| known == id && *figure);
                let (_, number, _) = step.ok_or(false)?;
                let number = number.ok_or(true)?;
                Ok((Aim::Figure, id.to_owned(), number.to_string()))
            }
            ReferenceKind::Piece => {
                let piece =
                    facts.pieces.iter().find(|piece| piece.id.text == id || piece.copies().any(|copy| copy.text == id));
                let piece = piece.ok_or(false)?;
                left_out(piece.sizes.as_ref(), self.size)?;
                let name = if piece.id.text == id { in_sentence(&piece.name.text) } else { id.replace('_', " ") };
                Ok((Aim::Piece, piece.id.text.clone(), name))
            }
            ReferenceKind::Notion => {
                let notion = facts.notions.iter().find(|notion| notion.id.text == id).ok_or(false)?;
                left_out(notion.sizes.as_ref(), self.size)?;
                Ok((Aim::Notion, id.to_owned(), in_sentence(&notion.name.text)))
            }
            ReferenceKind::Fabric => {
                let fabric = facts.fabrics.iter().find(|fabric| fabric.id.text == id).ok_or(false)?;
                left_out(fabric.sizes.as_ref(), self.size)?;
                Ok((Aim::Fabric, id.to_owned(), in_sentence(&fabric.name.text)))
            }
            ReferenceKind::Term => {
                let word = facts.words.iter().find(|word| word.term.text == id).ok_or(false)?;
                Ok((Aim::Term, id.to_owned(), word.term.text.clone()))
            }
        }
    }

    /// The ids that a reference of a kind could have named.
    pub fn names(&self, kind: ReferenceKind, draft: &Draft) -> Vec<String> {
        let facts = &draft.facts;
        match kind {
            ReferenceKind::Step => {
                let steps = self.steps.iter().map(|(id, ..)| id.clone());
                steps.chain(self.parts.iter().map(|(id, ..)| id.clone())).collect()
            }
            ReferenceKind::Figure => {
                self.steps.iter().filter(|(_, _, figure)| *figure).map(|(id, ..)| id.clone()).collect()
            }
            ReferenceKind::Piece => {
                let copies = facts.pieces.iter().flat_map(|piece| piece.copies());
                facts.pieces.iter().map(|piece| &piece.id).chain(copies).map(|name| name.text.clone()).collect()
            }
            ReferenceKind::Notion => facts.notions.iter().map(|notion| notion.id.text.clone()).collect(),
            ReferenceKind::Fabric => facts.fabrics.iter().map(|fabric| fabric.id.text.clone()).collect(),
            ReferenceKind::Term => facts.words.iter().map(|word| word.term.text.clone()).collect(),
        }
    }
}

/// `Err(true)` when something is not for a size.
fn left_out(sizes: Option<&Vec<usize>>, size: usize) -> Result<(), bool> {
    if is_for(sizes, size) { Ok(()) } else { Err(true) }
}

//! Where the references of one size lead, and what those things are called.

use super::printed::Aim;
use super::stable::Ids;
use crate::diag::in_sentence;
use crate::model::{Draft, Piece, ReferenceKind, is_for};

/// Where references of one size lead.
pub(super) struct Ends {
    size: usize,
    steps: Vec<StepEnd>,
    parts: Vec<PartEnd>,
}

/// A step that can be referred to.
struct StepEnd {
    /// The place of its part under `parts:`.
    part: usize,
    /// Its place in that part.
    at: usize,
    /// The id as written, and the one that no other step has.
    written: String,
    id: String,
    /// `None` where this size leaves it out.
    number: Option<usize>,
    figure: bool,
}

/// A part that can be referred to.
struct PartEnd {
    at: usize,
    written: String,
    id: String,
    here: bool,
    title: String,
}

impl Ends {
    pub fn gather(draft: &Draft, size: usize) -> Ends {
        let ids = Ids::of(draft);
        let mut ends = Ends { size, steps: Vec::new(), parts: Vec::new() };
        let mut number = 0;
        for (at, part) in draft.parts.iter().enumerate() {
            let part_here = is_for(part.sizes.as_ref(), size);
            if let Some(id) = &part.id {
                let (written, id) = (id.text.clone(), ids.part(at).to_owned());
                let title = crate::syntax::plain_inline(&part.title);
                ends.parts.push(PartEnd { at, written, id, here: part_here, title });
            }
            for (step_at, step) in part.steps.iter().enumerate() {
                let here = part_here && is_for(step.sizes.as_ref(), size);
                number += usize::from(here);
                let mut figure = false;
                step.body.iter().for_each(|block| block.each_figure(&mut |_| figure = true));
                if let Some(id) = &step.id {
                    let (written, id) = (id.text.clone(), ids.step(at, step_at).to_owned());
                    let number = here.then_some(number);
                    ends.steps.push(StepEnd { part: at, at: step_at, written, id, number, figure });
                }
            }
        }
        ends
    }

    /// What a reference leads to, that thing's id, and its name; `Err(true)` when the target is left
    /// out in this size, `Err(false)` when there is none at all. `from` is the part in which the reference
    /// stands: where a shared part is listed twice, each of its uses refers to its own steps, and others to those of
    /// the use that this size has.
    pub fn find(
        &self,
        kind: ReferenceKind,
        id: &str,
        draft: &Draft,
        from: Option<usize>,
    ) -> Result<(Aim, String, String), bool> {
        let facts = &draft.facts;
        let step = || self.step(id, from);
        match kind {
            ReferenceKind::Step => {
                if let Some(step) = step() {
                    let number = step.number.ok_or(true)?;
                    return Ok((Aim::Step, step.id.clone(), number.to_string()));
                }
                let named = || self.parts.iter().filter(|part| part.written == id);
                let here = || named().find(|part| part.here);
                let part = named().find(|part| Some(part.at) == from).or_else(here).or_else(|| named().next());
                let part = part.ok_or(false)?;
                if part.here { Ok((Aim::Part, part.id.clone(), part.title.clone())) } else { Err(true) }
            }
            ReferenceKind::Figure => {
                let step = step().filter(|step| step.figure).ok_or(false)?;
                let number = step.number.ok_or(true)?;
                Ok((Aim::Figure, step.id.clone(), number.to_string()))
            }
            ReferenceKind::Piece => {
                let own =
                    |piece: &&Piece| piece.id.text == id || piece.copies_in(self.size).any(|copy| copy.text == id);
                let here = facts.pieces.iter().filter(|piece| is_for(piece.sizes.as_ref(), self.size)).find(own);
                let elsewhere = |piece: &Piece| piece.id.text == id || piece.copies().any(|copy| copy.text == id);
                let piece = here.ok_or_else(|| facts.pieces.iter().any(elsewhere))?;
                let name = if piece.id.text == id { in_sentence(&piece.name.text) } else { piece.copy_called(id) };
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
                left_out(word.sizes.as_ref(), self.size)?;
                Ok((Aim::Term, id.to_owned(), word.term.text.clone()))
            }
        }
    }

    fn step(&self, id: &str, from: Option<usize>) -> Option<&StepEnd> {
        let named = || self.steps.iter().filter(|step| step.written == id);
        let here = || named().find(|step| step.number.is_some());
        let own = |step: &&StepEnd| Some(step.part) == from;
        let both = named().find(|step| own(step) && step.number.is_some());
        both.or_else(|| named().find(own)).or_else(here).or_else(|| named().next())
    }

    /// The step of an id: the place of its part, its own place there, and whether this size has it; `None` where no step
    /// has the id.
    pub fn step_at(&self, id: &str) -> Option<(usize, usize, bool)> {
        self.step(id, None).map(|step| (step.part, step.at, step.number.is_some()))
    }

    /// The ids that a reference of a kind could have named.
    pub fn names(&self, kind: ReferenceKind, draft: &Draft) -> Vec<String> {
        let facts = &draft.facts;
        match kind {
            ReferenceKind::Step => {
                let steps = self.steps.iter().map(|step| step.written.clone());
                steps.chain(self.parts.iter().map(|part| part.written.clone())).collect()
            }
            ReferenceKind::Figure => {
                self.steps.iter().filter(|step| step.figure).map(|step| step.written.clone()).collect()
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

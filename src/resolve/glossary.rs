//! The words that a size explains: those that it uses, and those that no size does, since an author wants them read.

use std::cell::OnceCell;
use std::collections::BTreeSet;

use crate::model::{Block, Draft, Inline, ReferenceKind, Word, is_for};

/// The words that one size explains, each with its place in the facts.
pub(super) fn glossary(draft: &Draft, size: usize) -> Vec<(usize, &Word)> {
    let facts = &draft.facts;
    let has = |word: &Word, size: usize| is_for(word.sizes.as_ref(), size);
    let own = used(draft, size);
    // Most booklets use all in every size, and then nobody asks what the others use.
    let others: OnceCell<BTreeSet<usize>> = OnceCell::new();
    let elsewhere = || {
        let other = (0..facts.sizes.len()).filter(|other| *other != size);
        other.flat_map(|other| used(draft, other)).collect()
    };
    let wanted = |(at, word): &(usize, &Word)| {
        has(word, size) && (own.contains(at) || !others.get_or_init(elsewhere).contains(at))
    };
    facts.words.iter().enumerate().filter(wanted).collect()
}

/// The places of the words that one size uses.
fn used(draft: &Draft, size: usize) -> BTreeSet<usize> {
    let facts = &draft.facts;
    let mut heard = Heard { size, text: String::new(), terms: BTreeSet::new() };
    let prose = [&facts.time, &facts.read_first, &facts.care, &facts.terms].into_iter().flatten();
    prose.for_each(|block| heard.block(block));
    let cautions = facts.cautions.iter().filter(|caution| is_for(caution.sizes.as_ref(), size));
    cautions.flat_map(|caution| &caution.content).for_each(|block| heard.block(block));
    let fabrics = facts.fabrics.iter().map(|one| (&one.sizes, &one.note));
    let notions = facts.notions.iter().map(|one| (&one.sizes, &one.note));
    let other_cloth = facts.fabrics.iter().map(|one| (&one.sizes, &one.sourcing.instead));
    let other_notions = facts.notions.iter().map(|one| (&one.sizes, &one.sourcing.instead));
    let pieces = facts.pieces.iter().map(|one| (&one.sizes, &one.note));
    let notes = fabrics
        .chain(notions)
        .chain(other_cloth)
        .chain(other_notions)
        .chain(pieces)
        .filter(|(sizes, _)| is_for(sizes.as_ref(), size));
    notes.flat_map(|(_, note)| note).for_each(|block| heard.block(block));
    for part in draft.parts.iter().filter(|part| is_for(part.sizes.as_ref(), size)) {
        heard.inlines(&part.title);
        part.intro.iter().for_each(|block| heard.block(block));
        for step in part.steps.iter().filter(|step| is_for(step.sizes.as_ref(), size)) {
            heard.inlines(&step.title);
            step.body.iter().for_each(|block| heard.block(block));
            for work in &step.works {
                heard.say(work.verb.word());
                work.words.iter().for_each(|words| heard.say(&words.text));
                work.note.iter().for_each(|block| heard.block(block));
            }
        }
    }
    for question in draft.help.iter().filter(|question| is_for(question.sizes.as_ref(), size)) {
        heard.inlines(&question.title);
        question.answer.iter().for_each(|block| heard.block(block));
    }
    heard.used(&facts.words)
}

/// Everything that one size says, in small letters, and the words that it leads to.
struct Heard {
    size: usize,
    text: String,
    terms: BTreeSet<String>,
}

impl Heard {
    fn say(&mut self, words: &str) {
        self.text.push_str(&words.to_lowercase());
        self.text.push('\n');
    }

    fn block(&mut self, block: &Block) {
        let size = self.size;
        block.each_inline_for(Some(size), &mut |inline| self.inline(inline));
    }

    fn inlines(&mut self, content: &[Inline]) {
        let size = self.size;
        Inline::walk_for(content, Some(size), &mut |inline| self.inline(inline));
    }

    fn inline(&mut self, inline: &Inline) {
        match inline {
            Inline::Text(text) => self.say(&text.text),
            Inline::Reference(reference) if reference.kind == ReferenceKind::Term => {
                self.terms.insert(reference.target.clone());
            }
            _ => {}
        }
    }

    /// The words that are used, and those that their meanings use.
    fn used(mut self, words: &[Word]) -> BTreeSet<usize> {
        let mut used = BTreeSet::new();
        loop {
            let uses = |word: &Word| {
                self.terms.contains(&word.term.text) || self.text.contains(&word.term.text.to_lowercase())
            };
            let own = words.iter().enumerate().filter(|(_, word)| is_for(word.sizes.as_ref(), self.size));
            let new: Vec<usize> = own.filter(|(at, word)| !used.contains(at) && uses(word)).map(|(at, _)| at).collect();
            if new.is_empty() {
                return used;
            }
            for at in new {
                used.insert(at);
                words[at].meaning.iter().for_each(|block| self.block(block));
            }
        }
    }
}

//! A step or a choice puts one child's size with the adults', apart from the other children's, and does not say why.
//!
//! ## Why it matters
//! What is safe for one child is asked for all. Where the words for adults reach one of the children's sizes, most often
//! its name was forgotten.
//!
//! ## Wrong
//! ```yaml
//! sizes:
//!   tiny: {name: Tiny, wearer: child}
//!   small: {name: Small, wearer: child}
//!   large: {name: Large, wearer: adult}
//! measurements:
//!   seam: 1 cm (3/8 in)
//!   width: [15 cm (5 7/8 in), 17 cm (6 3/4 in), 20 cm (7 7/8 in)]
//!   height: [12 cm (4 3/4 in), 13 cm (5 1/8 in), 15 cm (5 7/8 in)]
//! fabrics:
//!   outer: {name: Cotton, widths: [110 cm]}
//! ```
//! ````md
//! ## Look it over {#look-over}
//!
//! {tiny: Cut the threads short. | else: Leave the threads as they are.}
//! ````
//!
//! ## Right
//! ```yaml
//! sizes:
//!   tiny: {name: Tiny, wearer: child}
//!   small: {name: Small, wearer: child}
//!   large: {name: Large, wearer: adult}
//! measurements:
//!   seam: 1 cm (3/8 in)
//!   width: [15 cm (5 7/8 in), 17 cm (6 3/4 in), 20 cm (7 7/8 in)]
//!   height: [12 cm (4 3/4 in), 13 cm (5 1/8 in), 15 cm (5 7/8 in)]
//! fabrics:
//!   outer: {name: Cotton, widths: [110 cm]}
//! ```
//! ````md
//! ## Look it over {#look-over}
//!
//! {tiny, small: Cut the threads short. | else: Leave the threads as they are.}
//! ````
//!
//! ## Limits
//! Looks at `for=` of steps, and at choices of two branches in the words and in diagrams, in booklets (or views) with sizes for children and
//! for adults: children on both sides, adults on one. Choices of figures or of a word for a number alone are passed over.
//! Where it is meant, a waiver says why.

use super::judge::{Judge, Subject};
use super::passage::{Stands, of_text, passages, place};
use super::said::each_prose;
use crate::diag::{Check, Findings, Group};
use crate::model::{Block, Brace, Branch, Inline, PrintedText, Size, Vocabulary, Wearer, by_view, is_for};
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("children-divided", Group::Words, include_str!("children_divided.rs")).waivable(),
    run,
);

/// Looks at all steps and all choices.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let (sizes, vocabulary) = (&subject.draft.facts.sizes, subject.vocabulary);
    let children = sizes.iter().filter(|size| size.wearer == Wearer::Child).count();
    if children < 2 || children == sizes.len() {
        return;
    }
    let mut tell = |span: Span, child: usize, what: &str| {
        let name = &sizes[child].name;
        findings.push(
            CHECK
                .at(span, format!("{what} “{name}” is put with the sizes for adults, apart from the other children's"))
                .hint(format!(
                    "name `{}` with the other children's sizes, or waive it and say why",
                    sizes[child].id.text
                ))
                .in_size(child, ""),
        );
    };
    for (_, step) in subject.draft.steps() {
        let Some(child) = step.sizes.as_ref().and_then(|own| divided(sizes, &|size| own.contains(&size))) else {
            continue;
        };
        let title = passages(step, None).into_iter().find(|passage| passage.stands == Stands::Title);
        if let Some(span) = title.and_then(|title| place(&title.tokens)) {
            tell(span, child, "in this step");
        }
    }
    for (branches, span) in &subject.figures.choices {
        if let [one, _] = branches.as_slice()
            && let Some(child) = divided(sizes, &|size| is_for(one.as_ref(), size))
        {
            tell(*span, child, "by this choice in a drawing");
        }
    }
    each_prose(subject.draft, &mut |blocks| choices(blocks, sizes, vocabulary, &mut tell));
    for (_, step) in subject.draft.steps() {
        of_line(&step.title, sizes, vocabulary, &mut tell);
    }
}

/// The child's size that stands with the adults', where a part of the sizes divides the children of one view.
fn divided(sizes: &[Size], takes: &dyn Fn(usize) -> bool) -> Option<usize> {
    by_view(sizes).into_iter().find_map(|view| {
        let (children, adults): (Vec<usize>, Vec<usize>) =
            view.into_iter().partition(|size| sizes[*size].wearer == Wearer::Child);
        let first = takes(*adults.first()?);
        let (with, apart): (Vec<usize>, Vec<usize>) = children.into_iter().partition(|child| takes(*child) == first);
        let one = adults.iter().all(|adult| takes(*adult) == first);
        with.first().copied().filter(|_| one && !apart.is_empty())
    })
}

fn choices(blocks: &[Block], sizes: &[Size], vocabulary: &Vocabulary, tell: &mut dyn FnMut(Span, usize, &str)) {
    for block in blocks {
        block.each_inline(&mut |inline| of_one(inline, sizes, vocabulary, tell));
    }
}

fn of_line(content: &[Inline], sizes: &[Size], vocabulary: &Vocabulary, tell: &mut dyn FnMut(Span, usize, &str)) {
    Inline::walk(content, &mut |inline| of_one(inline, sizes, vocabulary, tell));
}

fn of_one(inline: &Inline, sizes: &[Size], vocabulary: &Vocabulary, tell: &mut dyn FnMut(Span, usize, &str)) {
    let Inline::Brace(Brace::Choice { branches, span }) = inline else { return };
    let [one, other] = branches.as_slice() else { return };
    let first = |size: usize| is_for(one.sizes.as_ref(), size);
    if !says_more(one, vocabulary) && !says_more(other, vocabulary) {
        return;
    }
    if let Some(child) = divided(sizes, &first) {
        tell(*span, child, "by this choice");
    }
}

/// Whether a branch says more than a number.
fn says_more(branch: &Branch, vocabulary: &Vocabulary) -> bool {
    let mut more = false;
    Inline::each_text(&branch.content, &mut |printed| {
        if let PrintedText::Words(text) = printed {
            let words = of_text(text).tokens;
            let counts = |word: &String| vocabulary.numbers.contains_key(word) || vocabulary.times.contains(word);
            more |= words.iter().any(|token| token.word.chars().any(char::is_alphabetic) && !counts(&token.word));
        }
    });
    more
}

//! A step does something that can hurt, and neither the step nor the booklet says a word of caution about it.
//!
//! ## Why it matters
//! The usual caution at the front speaks of machines, irons and blades. A cord for a small child, a loose bead or a flame
//! at the end of a ribbon needs its own word, at the very step where the maker has it in hand.
//!
//! ## Wrong
//! ````md
//! ## Seal the ends {#seal}
//!
//! Melt the ends of a ribbon over a candle.
//! ````
//!
//! ## Right
//! ````md
//! ## Seal the ends {#seal}
//!
//! Melt the ends of a ribbon over a candle.
//!
//! > [!CAUTION]
//! > Flames and molten ribbon burn. Keep water by, and nothing else that burns.
//! ````
//!
//! ## Limits
//! Looks at flames, hot glue, solvents and the like in the words of steps; and in sizes with `wearer: child` at buttons,
//! beads, snaps, bells, cords, ribbons, glass and filling where a step sews them on, sets them or puts them in. A notice
//! of the kinds warning, caution and important in the step counts, a sentence of the step that warns, and `cautions:` or
//! `read_first:` that name the thing. What is filled for a child, and what is tied at a neck in a booklet that has sizes for
//! children, is cautioned about at its own step. The words stand in `templates/needs-en.json`. English booklets alone. That nothing
//! is found never means that a thing is safe.

use super::house_words_english::is_english;
use super::judge::{Judge, Subject};
use super::needed::says;
use super::passage::{Stands, passages, place};
use super::said::{Sentence, sentences};
use crate::diag::{Check, Finding, Findings, Group, Home};
use crate::model::{Kind, NoticeKind, Notion, Size, Verb, Wearer, is_for};
use crate::resolve::{CopyId, Edition, EditionStep, EditionWork};
use crate::source::Span;
use crate::syntax::{Danger, Harm};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("caution-missing", Group::Words, include_str!("caution_missing.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at every step of every size; each thing once.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    if !is_english(&subject.draft.facts.language.text) {
        return;
    }
    let harm = &subject.needs.harm;
    for edition in subject.editions {
        let child = edition.size_facts().wearer == Wearer::Child;
        let mut told: Vec<String> = Vec::new();
        for step in edition.steps() {
            let words = sentences(&step.step.body, Some(edition.size()));
            for (span, what, danger) in
                hot(&words, harm).into_iter().chain(loose(edition, step, harm).filter(|_| child))
            {
                let warned = warns(&words, harm) || warns_in_facts(edition, danger);
                if warned || told.contains(&what) {
                    continue;
                }
                findings.push(
                    CHECK
                        .at(span, format!("no caution is given about {what}: {}", danger.because))
                        .hint(
                            "add a notice to the step, `> [!CAUTION]`, that says what can happen and how it is avoided",
                        )
                        .in_size(edition.size(), ""),
                );
                told.push(what);
            }
            if !warns(&words, harm) {
                findings.extend(at_its_step(subject, edition, step, child));
            }
        }
    }
}

/// What needs its caution at the very step: what is tied at a neck, where children have a size too, and the filling of
/// what a child will have.
fn at_its_step(subject: &Subject<'_>, edition: &Edition<'_>, step: &EditionStep<'_>, child: bool) -> Option<Finding> {
    let harm = &subject.needs.harm;
    let sizes = &subject.draft.facts.sizes;
    let near = |size: &&Size| size.wearer == Wearer::Child && size.shares_view(edition.size_facts());
    let children = sizes.iter().any(|size| near(&size));
    let tied = |work: &EditionWork<'_>| {
        let copies: Vec<CopyId> = work.touched().filter_map(|touched| touched.copy()).collect();
        let neck = |copy: &CopyId| super::cord_at_neck::is_neck_tie(edition, *copy, harm);
        let to = |copy: &CopyId| !super::cord_at_neck::is_tie(edition, *copy, harm);
        work.verb.lasts() && copies.iter().any(neck) && copies.iter().any(to)
    };
    let (what, because) = if children && step.works.iter().any(tied) {
        ("what is tied or strapped at the neck", "a child can be caught and strangled by it")
    } else if child && step.works.iter().any(|work| work.verb == Verb::Stuff) {
        (
            "the filling and what may be left in it",
            "a child can swallow what comes out of a seam, and a pin can hurt it",
        )
    } else {
        return None;
    };
    let title =
        passages(step.step, Some(edition.size())).into_iter().find(|passage| passage.stands == Stands::Title)?;
    let message = format!("this step gives no caution about {what}: {because}");
    let finding = CHECK.at(place(&title.tokens)?, message);
    Some(
        finding
            .hint("add a notice to the step, `> [!CAUTION]`, that says what can happen and how it is avoided")
            .in_size(edition.size(), ""),
    )
}

/// What burns or poisons, by the words of a step.
fn hot<'h>(words: &[Sentence<'_>], harm: &'h Harm) -> Vec<(Span, String, &'h Danger)> {
    let mut found = Vec::new();
    for danger in harm.dangers.iter().filter(|danger| danger.in_words) {
        let sentence = words.iter().find(|sentence| sentence.notice.is_none() && says(&sentence.text, &danger.names));
        let Some(sentence) = sentence.filter(|sentence| !says(&sentence.text, &harm.denials)) else { continue };
        found.extend(sentence.place().map(|span| (span, danger.called.clone(), danger)));
    }
    found
}

/// What a child can swallow or be caught by, by the notions that a step works with.
fn loose<'h>(
    edition: &Edition<'_>,
    step: &EditionStep<'_>,
    harm: &'h Harm,
) -> impl Iterator<Item = (Span, String, &'h Danger)> {
    let mut found = Vec::new();
    for work in &step.works {
        if matches!(work.verb, Verb::Cut | Verb::Press | Verb::Open | Verb::Mark | Verb::Pin | Verb::Turn) {
            continue;
        }
        for target in work.named() {
            let Some(notion) = target.notion() else { continue };
            let notion = &edition.draft.facts.notions[notion];
            if let Some(danger) =
                harm.dangers.iter().filter(|danger| !danger.in_words).find(|danger| is_one(notion, danger))
            {
                found.push((work.work.verb_span, format!("“{}”", notion.name.text), danger));
            }
        }
    }
    found.into_iter()
}

fn is_one(notion: &Notion, danger: &Danger) -> bool {
    let kind = match notion.kind {
        Kind::Button => "button",
        Kind::Filling => "filling",
        _ => "",
    };
    danger.kinds.iter().any(|own| own == kind) || says(&notion.name.text, &danger.names)
}

/// Whether a step warns, by a notice or in a sentence.
fn warns(words: &[Sentence<'_>], harm: &Harm) -> bool {
    let notice = |kind: NoticeKind| matches!(kind, NoticeKind::Warning | NoticeKind::Caution | NoticeKind::Important);
    words.iter().any(|sentence| sentence.notice.is_some_and(notice) || says(&sentence.text, &harm.warnings))
}

/// Whether the booklet's own cautions name the danger.
fn warns_in_facts(edition: &Edition<'_>, danger: &Danger) -> bool {
    let facts = &edition.draft.facts;
    let here = facts.cautions.iter().filter(|caution| is_for(caution.sizes.as_ref(), edition.size()));
    let blocks = here.map(|caution| &caution.content).chain([&facts.read_first]);
    let own = blocks.flat_map(|blocks| sentences(blocks, Some(edition.size())));
    own.into_iter().any(|sentence| says(&sentence.text, &danger.names) || says(&sentence.text, &danger.told_as))
}

//! A notion is on the list of what to buy, and no step mentions it.
//!
//! ## Why it matters
//! The maker buys something that she then has no use for; or the step that needs it has lost its
//! mention.
//!
//! ## Wrong
//! ```yaml
//! notions:
//!   button: {name: Button, count: 1}
//! ```
//!
//! ## Right
//! ```yaml
//! notions:
//!   button: {name: Button, count: 1}
//! ```
//! ````md
//! ## Sew on the button {#button}
//!
//! ```work
//! - attach: [button, front]
//!   by: hand
//! ```
//!
//! Sew on the button by hand.
//! ````
//!
//! ## Limits
//! A mention in work counts, as does `[](notion:button)`, or a figure of it such as `{zip.length}`,
//! in the words of a part or step that the size has; of a choice by size, only the branch that it
//! takes; for stuffing by its `amount` only work does. A plain word does not: the booklet cannot know what it means. A notion of the kind
//! `thread` is used by any seam.

use super::judge::Judge;
use super::left_out::step_of_others;
use crate::diag::{Check, Finding, Findings, Group, Home};
use crate::model::{Kind, NotionFigure, is_for};
use crate::resolve::{Edition, NotionId};

/// The check.
pub(super) static CHECK: Judge = Judge::edition(
    &Check::warning("notion-unused", Group::Work, include_str!("notion_unused.rs")).waivable_in(Home::Anywhere),
    run,
);

/// Looks at every notion of one size, in work and in words.
pub(super) fn run(edition: &Edition<'_>, findings: &mut Findings) {
    if !edition.draft.whole {
        return;
    }
    let size = edition.size();
    for (at, notion) in NotionId::each(&edition.draft.facts.notions) {
        let id = notion.id.text.as_str();
        if !is_for(notion.sizes.as_ref(), size) || edition.without.leaves(&notion.id) {
            continue;
        }
        let worked = edition
            .steps()
            .flat_map(|step| &step.works)
            .flat_map(|work| work.named())
            .any(|target| target.notion() == Some(at));
        // What is cut from it is a piece, which has a check of its own.
        let cut =
            edition.draft.facts.pieces.iter().any(|piece| piece.tape.as_ref().is_some_and(|tape| tape.text == id));
        let sewn = edition.steps().flat_map(|step| &step.works).any(|work| work.verb.stitches());
        if notion.kind == Kind::Thread && sewn {
            continue;
        }
        let mut told = false;
        for part in &edition.parts {
            let steps = part.steps.iter().flat_map(|step| &step.step.body);
            part.part.intro.iter().chain(steps).for_each(|block| {
                block.each_inline_for(Some(size), &mut |inline| told |= inline.mentions_notion(id));
            });
        }
        // Words alone stuff nothing; a pad may be laid in.
        let stuffing = notion.kind == Kind::Filling && notion.figures.contains_key(&NotionFigure::Amount);
        let told = told && !stuffing;
        if worked || told || cut {
            continue;
        }
        let finding = match stuffing {
            true => CHECK.at(notion.id.span, format!("no step stuffs anything with `{id}`")).hint(format!(
                "name it in a step's work, such as `- stuff: [{id}, body_front]`, or take it off the list"
            )),
            false => CHECK
                .at(notion.id.span, format!("no step mentions `{id}`"))
                .hint(format!("name it in a step's work or words, `[](notion:{id})`, or take it off the list")),
        };
        let finding = match step_of_others(edition, &|name| name == id) {
            // The row says for whom it is, and so does the step: one of them is wrong.
            Some(step) if notion.sizes.is_some() => {
                Finding { span: step, ..finding }.note(notion.id.span, "for this size too")
            }
            Some(step) => finding.note(step, "the step that uses it is for other sizes"),
            None => finding,
        };
        findings.push(finding.in_size(size, ""));
    }
}

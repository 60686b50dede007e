//! What a maker may leave out and choose among in one size: what each alone needs, and the ways through the booklet.

use std::collections::BTreeSet;

use super::cast::CopyId;
use super::edition::Edition;
use super::ids::{NotionId, PieceId};
use super::target::Touched;
use super::without::{Without, rivals};
use crate::model::Verb;

/// One way through a booklet.
#[derive(Debug, Clone)]
pub struct Way {
    /// The offers that it leaves out.
    pub out: BTreeSet<usize>,
    /// What makes it another than the first, as findings tell it; empty for the first, in which all is done that may
    /// be, the first way of each choice.
    pub told: String,
}

/// The ways through a booklet in one size, each thing left out or chosen by itself; none where nothing is left to the
/// maker.
pub fn ways(edition: &Edition<'_>) -> Vec<Way> {
    let offers = &edition.draft.offers;
    let present = edition.offered();
    if present.is_empty() {
        return Vec::new();
    }
    let usual = rivals(offers, &present, None);
    let mut ways = vec![Way { out: usual.clone(), told: String::new() }];
    let options: BTreeSet<usize> = present.iter().copied().filter(|offer| offers[*offer].choice.is_none()).collect();
    for option in &options {
        let out = usual.iter().chain([option]).copied().collect();
        ways.push(Way { out, told: format!("if the maker leaves out `{}`", offers[*option].id.text) });
    }
    if options.len() > 1 {
        let out = usual.union(&options).copied().collect();
        ways.push(Way { out, told: "if the maker leaves out all that is optional".to_owned() });
    }
    for way in &usual {
        let out = rivals(offers, &present, Some(*way));
        ways.push(Way { out, told: format!("if the maker chooses `{}`", offers[*way].id.text) });
    }
    ways
}

/// What nothing needs but what is left out.
pub fn without(edition: &Edition<'_>, out: BTreeSet<usize>) -> Without {
    let facts = &edition.draft.facts;
    let mut names = BTreeSet::new();
    let is_out = |need: &BTreeSet<usize>| !need.is_empty() && need.iter().all(|offer| out.contains(offer));
    let left: BTreeSet<CopyId> =
        edition.cast.copies().map(|(copy, _)| copy).filter(|copy| is_out(&needed_by(edition, *copy))).collect();
    names.extend(left.iter().map(|copy| edition.cast[*copy].name.clone()));
    for (piece, written) in PieceId::each(&facts.pieces) {
        let mut copies = edition.cast.of_piece(piece).peekable();
        if copies.peek().is_some() && copies.all(|copy| left.contains(&copy)) {
            names.insert(written.id.text.clone());
        }
    }
    for (notion, written) in NotionId::each(&facts.notions) {
        let cut: Vec<&str> = facts
            .pieces
            .iter()
            .filter(|piece| piece.tape.as_ref().is_some_and(|tape| tape.text == written.id.text))
            .map(|piece| piece.id.text.as_str())
            .collect();
        let need = notion_needed_by(edition, notion);
        let by_cuts = !cut.is_empty() && cut.iter().all(|piece| names.contains(*piece));
        if is_out(&need) && cut.is_empty()
            || by_cuts && (need.is_empty() || is_out(&need)) && !is_plain(edition, notion)
        {
            names.insert(written.id.text.clone());
        }
    }
    Without { offers: out, names }
}

/// The offers whose steps alone do something with a copy; none where others do, or every way of a choice does.
pub fn needed_by(edition: &Edition<'_>, copy: CopyId) -> BTreeSet<usize> {
    let uses = edition.steps().filter(|step| {
        let works = step.works.iter().filter(|work| work.verb != Verb::Cut);
        works.flat_map(|work| work.named()).flat_map(|target| &target.touched).any(|one| one.copy() == Some(copy))
    });
    alone(edition, uses.map(|step| step.step.offer).collect())
}

/// The offers whose steps alone use a notion: by their work, or where no work names it, by their words.
pub fn notion_needed_by(edition: &Edition<'_>, notion: NotionId) -> BTreeSet<usize> {
    alone(edition, notion_users(edition, notion))
}

/// Whether a step that nobody leaves out uses a notion.
fn is_plain(edition: &Edition<'_>, notion: NotionId) -> bool {
    notion_users(edition, notion).contains(&None)
}

fn notion_users(edition: &Edition<'_>, notion: NotionId) -> BTreeSet<Option<usize>> {
    let is_it = |one: &Touched| matches!(one, Touched::Notion(own) | Touched::ZipEdge(own, _) if *own == notion);
    let worked = edition
        .steps()
        .filter(|step| step.works.iter().flat_map(|work| work.named()).flat_map(|target| &target.touched).any(is_it));
    let users: BTreeSet<Option<usize>> = worked.map(|step| step.step.offer).collect();
    if !users.is_empty() {
        return users;
    }
    let id = &edition.draft.facts.notions[notion].id.text;
    let mut told = BTreeSet::new();
    for part in &edition.parts {
        let intro = (part.part.offer, &part.part.intro);
        let steps = part.steps.iter().map(|step| (step.step.offer, &step.step.body));
        for (offer, blocks) in [intro].into_iter().chain(steps) {
            for block in blocks {
                block.each_inline_for(Some(edition.size()), &mut |inline| {
                    if inline.mentions_notion(id) {
                        told.insert(offer);
                    }
                });
            }
        }
    }
    told
}

/// The offers among users, where nothing else is and no choice has them all.
fn alone(edition: &Edition<'_>, users: BTreeSet<Option<usize>>) -> BTreeSet<usize> {
    let Some(own) = users.into_iter().collect::<Option<BTreeSet<usize>>>() else { return BTreeSet::new() };
    let offers = &edition.draft.offers;
    let present = edition.offered();
    let whole = |offer: &usize| {
        let choice = &offers[*offer].choice;
        choice.is_some()
            && present.iter().filter(|other| offers[**other].choice == *choice).all(|one| own.contains(one))
    };
    if own.iter().any(whole) { BTreeSet::new() } else { own }
}

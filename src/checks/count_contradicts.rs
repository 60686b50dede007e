//! The words say another number of pieces than the step cuts, or of things than it sews on.
//!
//! ## Why it matters
//! "Cut two" beside a table that says four: one of them is wrong, and the maker finds out when a piece is
//! missing.
//!
//! ## Wrong
//! ````md
//! ## Make the tabs {#tabs}
//!
//! ```work
//! - cut: tab
//! - press: [tab_one, tab_two]
//! ```
//!
//! Cut three tabs and press them.
//! ````
//! ```yaml
//! pieces:
//!   tab: {name: Tab, outline: {rectangle: [5 cm, 5 cm]}, raw: all, cut: {outer: [tab_one, tab_two]}}
//! ```
//!
//! ## Right
//! ````md
//! ## Make the tabs {#tabs}
//!
//! ```work
//! - cut: tab
//! - press: [tab_one, tab_two]
//! ```
//!
//! Cut two tabs and press them.
//! ````
//! ```yaml
//! pieces:
//!   tab: {name: Tab, outline: {rectangle: [5 cm, 5 cm]}, raw: all, cut: {outer: [tab_one, tab_two]}}
//! ```
//!
//! ## Limits
//! Only in the sentences of a step that cuts, with a number before the last word of a piece's name; any number is
//! right that comes of the copies of one fabric or of some of them together. Buttons and the like are counted
//! where the step sews them on. "Pairs", "sets" and "each" are passed over.

use std::collections::BTreeSet;

use super::judge::{Judge, Subject};
use super::passage::{Passage, Stands, any_of, place};
use super::printed_words::each_step;
use super::spoken_names::{Counted, Spoken, counted};
use crate::diag::{Check, Finding, Findings, Group, Home};
use crate::model::{Verb, Vocabulary};
use crate::resolve::{Edition, EditionStep, PieceId, Touched};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("count-contradicts", Group::Words, include_str!("count_contradicts.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let vocabulary = subject.vocabulary;
    each_step(subject, &mut |edition, step, passages| {
        for passage in passages.iter().filter(|passage| passage.stands == Stands::Body) {
            pieces(edition, step, passage, vocabulary, findings);
            notions(edition, step, passage, vocabulary, findings);
        }
    });
}

fn pieces(
    edition: &Edition<'_>,
    step: &EditionStep<'_>,
    passage: &Passage<'_>,
    vocabulary: &Vocabulary,
    findings: &mut Findings,
) {
    let cut = cut_here(edition, step);
    let Some(verbs) = vocabulary.verbs.get(Verb::Cut.word()).filter(|_| !cut.is_empty()) else { return };
    let names: Vec<(PieceId, Spoken)> = cut.iter().map(|(piece, _)| (*piece, name(edition, *piece))).collect();
    for sentence in passage.sentences() {
        if !any_of(sentence, verbs) {
            continue;
        }
        let is_noun = |word: &str| names.iter().any(|(_, name)| name.head() == word);
        for said in counted(sentence, vocabulary, &is_noun) {
            let meant = meant(&names, &said);
            let of: Vec<&(PieceId, Vec<u32>)> = cut.iter().filter(|(piece, _)| meant.contains(piece)).collect();
            let numbers: Vec<u32> = of.iter().flat_map(|(_, counts)| counts.iter().copied()).collect();
            let told = numbers.iter().sum::<u32>();
            if !sums(&numbers).contains(&said.count)
                && let Some(finding) = finding(&said, &told.to_string(), "cuts")
            {
                findings.push(finding.in_size(edition.size(), ""));
            }
        }
    }
}

/// The pieces that a step cuts, each with the number of its copies from each fabric.
fn cut_here(edition: &Edition<'_>, step: &EditionStep<'_>) -> Vec<(PieceId, Vec<u32>)> {
    let works = step.works.iter().filter(|work| work.verb == Verb::Cut);
    let copies: BTreeSet<_> =
        works.flat_map(|work| work.targets.iter().flat_map(|target| &target.touched)).filter_map(Touched::copy).collect();
    let pieces: BTreeSet<PieceId> = copies.iter().map(|copy| edition.cast[*copy].piece).collect();
    let of = |piece: PieceId| {
        let mine: Vec<_> = copies.iter().filter(|copy| edition.cast[**copy].piece == piece).collect();
        let fabrics: BTreeSet<_> = mine.iter().map(|copy| edition.cast[**copy].fabric).collect();
        let count = |fabric: &_| mine.iter().filter(|copy| edition.cast[***copy].fabric == *fabric).count();
        fabrics.iter().filter_map(|fabric| u32::try_from(count(fabric)).ok()).collect::<Vec<u32>>()
    };
    pieces.into_iter().map(|piece| (piece, of(piece))).collect()
}

fn name(edition: &Edition<'_>, piece: PieceId) -> Spoken {
    Spoken::of(&edition.draft.facts.pieces[piece].name.text)
}

/// The pieces that a noun may mean: those that have most of its words.
fn meant(names: &[(PieceId, Spoken)], said: &Counted<'_>) -> Vec<PieceId> {
    let shared = |name: &Spoken| said.noun.iter().filter(|token| name.has(&token.word)).count();
    let head = |name: &Spoken| said.noun.last().is_some_and(|token| name.has(&token.word));
    let most = names.iter().filter(|(_, name)| head(name)).map(|(_, name)| shared(name)).max().unwrap_or(0);
    names.iter().filter(|(_, name)| head(name) && shared(name) == most).map(|(piece, _)| *piece).collect()
}

/// Every number that some of these come to together.
fn sums(numbers: &[u32]) -> BTreeSet<u32> {
    let mut sums = BTreeSet::from([0]);
    for number in numbers.iter().take(12) {
        let more: Vec<u32> = sums.iter().map(|sum| sum + number).collect();
        sums.extend(more);
    }
    sums.remove(&0);
    sums
}

fn notions(
    edition: &Edition<'_>,
    step: &EditionStep<'_>,
    passage: &Passage<'_>,
    vocabulary: &Vocabulary,
    findings: &mut Findings,
) {
    for row in &edition.notions {
        let facts = &edition.draft.facts.notions[row.notion];
        let here: Vec<u32> = step.works.iter().filter(|work| touches(work, row.notion)).filter_map(|work| work.count).collect();
        let bought = row.count;
        let (false, Some(bought)) = (here.is_empty(), bought) else { continue };
        let name = Spoken::of(&facts.name.text);
        for sentence in passage.sentences() {
            for said in counted(sentence, vocabulary, &|word| name.head() == word) {
                let right = said.count == bought || sums(&here).contains(&said.count) || said.count == 1;
                if !right && let Some(finding) = finding(&said, &here.iter().sum::<u32>().to_string(), "sews on") {
                    findings.push(finding.in_size(edition.size(), ""));
                }
            }
        }
    }
}

fn touches(work: &crate::resolve::EditionWork<'_>, notion: crate::resolve::NotionId) -> bool {
    work.targets.iter().any(|target| target.notion() == Some(notion))
}

fn finding(said: &Counted<'_>, true_one: &str, does: &str) -> Option<Finding> {
    let words: Vec<&str> = said.all.iter().map(|token| token.raw.as_str()).collect();
    let words = words.join(" ");
    let message = format!("“{words}”, but the step {does} {true_one}");
    let finding = CHECK.at(place(said.all)?, message);
    Some(finding.hint("mend the number in the words, or the number of copies in the facts"))
}

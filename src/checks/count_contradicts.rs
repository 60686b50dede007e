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
//! where the step sews them on. In sentences that cut nothing a number is wrong that is larger than all copies of the pieces that
//! its words name. "Pairs", "sets" and "each" are passed over.

use std::collections::BTreeSet;

use super::judge::{Judge, Subject};
use super::passage::{Passage, Stands, Token, any_of, number, one_of, place, spoken};
use super::printed_words::each_step;
use super::spoken_names::{Counted, Spoken, counted};
use crate::diag::{Check, Finding, Findings, Group, Home};
use crate::model::{ReferenceKind, Verb, Vocabulary};
use crate::resolve::{Edition, EditionStep, EditionWork, FabricId, NotionId, PieceId, Touched};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("count-contradicts", Group::Words, include_str!("count_contradicts.rs")).waivable_in(Home::Words),
    run,
);

const HINT: &str = "mend the number in the words, or the number of copies in the facts";

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let vocabulary = subject.vocabulary;
    each_step(subject, &mut |edition, step, passages| {
        for passage in passages.iter().filter(|passage| passage.stands == Stands::Body) {
            pieces(edition, step, passage, vocabulary, findings);
            notions(edition, step, passage, vocabulary, findings);
            all_of_them(edition, step, passage, vocabulary, findings);
            finished(edition, step, passage, vocabulary, findings);
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
        referred(edition, sentence, &cut, vocabulary, findings);
        for said in counted(sentence, vocabulary, &is_noun) {
            let meant = meant(&names, &said);
            let from = fabric(edition, sentence, said.all, vocabulary);
            let of = cut.iter().filter(|(piece, _)| meant.contains(piece)).flat_map(|(_, counts)| counts);
            let of: Vec<&(Option<FabricId>, u32)> = of.collect();
            let named = of.iter().any(|(fabric, _)| from.is_some() && *fabric == from);
            let numbers: Vec<u32> =
                of.iter().filter(|(fabric, _)| !named || *fabric == from).map(|(_, count)| *count).collect();
            let told = numbers.iter().sum::<u32>();
            if !sums(&numbers).contains(&said.count)
                && let Some(finding) = finding(&said, &told.to_string(), "cuts")
            {
                findings.push(finding.in_size(edition.size(), ""));
            }
        }
    }
}

/// "Three strips" where no step cuts more than two: in a sentence that cuts nothing, what the words after the number narrow
/// the pieces down to.
fn finished(
    edition: &Edition<'_>,
    step: &EditionStep<'_>,
    passage: &Passage<'_>,
    vocabulary: &Vocabulary,
    findings: &mut Findings,
) {
    if Passage::points_away(&passage.tokens) {
        return;
    }
    let cuts = step.works.iter().any(|work| work.verb == Verb::Cut);
    let verbs = vocabulary.verbs.get(Verb::Cut.word()).filter(|_| cuts);
    let facts = &edition.draft.facts;
    let pieces = PieceId::each(&facts.pieces).map(|(piece, _)| piece);
    let names: Vec<(PieceId, Spoken, u32)> = pieces
        .map(|piece| {
            let copies = u32::try_from(edition.cast.of_piece(piece).count()).unwrap_or(u32::MAX);
            (piece, name(edition, piece), copies)
        })
        .filter(|(_, _, copies)| *copies > 0)
        .collect();
    let sentences = passage.sentences().into_iter();
    for sentence in sentences.filter(|sentence| verbs.is_none_or(|verbs| !any_of(sentence, verbs))) {
        let is_noun = |word: &str| {
            names.iter().any(|(_, name, _)| name.head() == word)
                && !vocabulary.edge_words.iter().any(|edge| super::passage::stem(edge) == word)
        };
        for said in counted(sentence, vocabulary, &is_noun) {
            let Some(end) = sentence.iter().position(|token| std::ptr::eq(token, &said.all[said.all.len() - 1])) else {
                continue;
            };
            let rest = &sentence[end + 1..];
            // "Of one length" counts nothing.
            let counts = |token: &Token<'_>| number(token, vocabulary).is_some_and(|count| count != 1);
            let next = rest.iter().position(counts).unwrap_or(rest.len());
            let around: Vec<Token<'_>> = said.noun.iter().chain(&rest[..next]).cloned().collect();
            let of: Vec<&(PieceId, Spoken, u32)> =
                names.iter().filter(|(_, name, _)| said.noun.last().is_some_and(|noun| name.has(&noun.word))).collect();
            // "Four wadding panels" are those of the wadding.
            let cloth = named(edition, said.noun);
            let of_cloth = |piece: PieceId| {
                let copies = edition.cast.of_piece(piece).filter(|copy| edition.cast[*copy].fabric == cloth);
                u32::try_from(copies.count()).unwrap_or(u32::MAX)
            };
            let of: Vec<(PieceId, Spoken, u32)> = of
                .into_iter()
                .map(|(piece, name, all)| (*piece, name.clone(), if cloth.is_some() { of_cloth(*piece) } else { *all }))
                .collect();
            let narrowed: Vec<u32> =
                of.iter().filter(|(_, name, _)| name.all_in(&around)).map(|(_, _, copies)| *copies).collect();
            let most: u32 = match narrowed.is_empty() {
                true => of.iter().map(|(_, _, copies)| *copies).sum(),
                false => narrowed.iter().sum(),
            };
            if said.count > most
                && most > 0
                && let Some(span) = place(said.all)
            {
                let message = format!("“{}”, but {most} are cut in all", spoken(said.all));
                findings.push(CHECK.at(span, message).hint(HINT).in_size(edition.size(), ""));
            }
        }
    }
}

/// A piece with the number of its copies from each fabric.
type Cut = (PieceId, Vec<(Option<FabricId>, u32)>);

/// A number right before a reference: "three [](piece:back)".
fn referred(
    edition: &Edition<'_>,
    sentence: &[Token<'_>],
    cut: &[Cut],
    vocabulary: &Vocabulary,
    findings: &mut Findings,
) {
    for (at, token) in sentence.iter().enumerate() {
        let Some(count) = number(token, vocabulary) else { continue };
        // "Two pieces for the back".
        let rest = sentence[at + 1..].iter().take(4).take_while(|next| {
            next.gap == " "
                && number(next, vocabulary).is_none()
                && !vocabulary.edge_words.contains(&next.word)
                && (next.word == "of" || !vocabulary.pairs.contains(&next.word))
        });
        let near = rest.enumerate().find_map(|(far, next)| Some((far, next.leads?)));
        let Some((far, reference)) = near.filter(|(_, leads)| leads.kind == ReferenceKind::Piece) else { continue };
        let pair = &sentence[at..at + far + 2];
        let is = |piece: PieceId| edition.draft.facts.pieces[piece].id.text == reference.target;
        let Some((_, copies)) = cut.iter().find(|(piece, _)| is(*piece)) else { continue };
        let from = fabric(edition, sentence, pair, vocabulary);
        let named = copies.iter().any(|(fabric, _)| from.is_some() && *fabric == from);
        let numbers: Vec<u32> =
            copies.iter().filter(|(fabric, _)| !named || *fabric == from).map(|(_, count)| *count).collect();
        if !sums(&numbers).contains(&count)
            && let Some(span) = place(pair)
        {
            let told = numbers.iter().sum::<u32>();
            let message = format!("“{}” of `{}`, but the step cuts {told}", pair[0].raw, reference.target);
            findings.push(CHECK.at(span, message).hint(HINT).in_size(edition.size(), ""));
        }
    }
}

/// The one fabric that is named near a number: behind it, up to the next number; else anywhere in a sentence
/// with a single number.
fn fabric(
    edition: &Edition<'_>,
    sentence: &[Token<'_>],
    said: &[Token<'_>],
    vocabulary: &Vocabulary,
) -> Option<FabricId> {
    let end = sentence.iter().position(|token| std::ptr::eq(token, &said[said.len() - 1]))? + 1;
    let rest = &sentence[end..];
    let next = rest.iter().position(|token| number(token, vocabulary).is_some());
    let numbers = sentence.iter().filter(|token| number(token, vocabulary).is_some()).count();
    let near = named(edition, said).or_else(|| named(edition, &rest[..next.unwrap_or(rest.len())]));
    if near.is_some() || numbers > 1 { near } else { named(edition, sentence) }
}

/// The one fabric that some words name, by a reference, by all its name, or by a word that no other fabric's
/// name has.
fn named(edition: &Edition<'_>, tokens: &[Token<'_>]) -> Option<FabricId> {
    let facts = &edition.draft.facts;
    let names: Vec<(FabricId, Spoken)> =
        FabricId::each(&facts.fabrics).map(|(id, fabric)| (id, Spoken::of(&fabric.name.text))).collect();
    let mut named: BTreeSet<FabricId> = BTreeSet::new();
    for token in tokens {
        match token.leads {
            Some(leads) if leads.kind == ReferenceKind::Fabric => {
                named.extend(names.iter().map(|(id, _)| *id).filter(|id| facts.fabrics[*id].id.text == leads.target));
            }
            _ if token.word.is_empty() => {}
            _ => {
                let of: Vec<&(FabricId, Spoken)> = names.iter().filter(|(_, name)| name.has(&token.word)).collect();
                let mut whole = of.iter().filter(|(_, name)| name.all_in(tokens));
                match (&of[..], whole.next(), whole.next()) {
                    ([(id, _)], ..) | (_, Some((id, _)), None) => {
                        named.insert(*id);
                    }
                    _ => {}
                }
            }
        }
    }
    let only = named.iter().next().copied();
    only.filter(|_| named.len() == 1)
}

/// The pieces that a step cuts.
fn cut_here(edition: &Edition<'_>, step: &EditionStep<'_>) -> Vec<Cut> {
    let works = step.works.iter().filter(|work| work.verb == Verb::Cut);
    let copies: BTreeSet<_> = works
        .flat_map(|work| work.targets.iter().flat_map(|target| &target.touched))
        .filter_map(Touched::copy)
        .collect();
    let pieces: BTreeSet<PieceId> = copies.iter().map(|copy| edition.cast[*copy].piece).collect();
    let of = |piece: PieceId| {
        let mine: Vec<_> = copies.iter().filter(|copy| edition.cast[**copy].piece == piece).collect();
        let fabrics: BTreeSet<_> = mine.iter().map(|copy| edition.cast[**copy].fabric).collect();
        let count = |fabric: &_| mine.iter().filter(|copy| edition.cast[***copy].fabric == *fabric).count();
        fabrics.iter().filter_map(|fabric| Some((*fabric, u32::try_from(count(fabric)).ok()?))).collect::<Vec<_>>()
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
        let here: Vec<u32> =
            step.works.iter().filter(|work| touches(work, row.notion)).filter_map(|work| work.count).collect();
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

/// "Turn all four": as many works, names or copies as the verb has in the step.
fn all_of_them(
    edition: &Edition<'_>,
    step: &EditionStep<'_>,
    passage: &Passage<'_>,
    vocabulary: &Vocabulary,
    findings: &mut Findings,
) {
    // What is done "as in" another step may be done to more.
    let end = if Passage::points_away(&passage.tokens) { 0 } else { passage.tokens.len() };
    for at in 0..end {
        let [all, count, ..] = &passage.tokens[at + 1..] else { break };
        let Some(count_of) = number(count, vocabulary).filter(|_| vocabulary.counted_all.contains(&all.word)) else {
            continue;
        };
        let verbs = vocabulary.verbs.iter().filter(|(_, forms)| one_of(&passage.tokens, at, forms).is_some());
        let verbs: Vec<&str> = verbs.map(|(verb, _)| verb.as_str()).collect();
        let works: Vec<&EditionWork<'_>> = step.works.iter().filter(|work| verbs.contains(&work.verb.word())).collect();
        let next = passage.tokens.get(at + 3);
        // "All four sides" are sides of what is touched.
        let of_sides = next
            .is_some_and(|next| next.gap == " " && (vocabulary.edge_words.contains(&next.word) || next.word == "of"));
        if works.is_empty() || of_sides {
            continue;
        }
        let targets = || works.iter().flat_map(|work| &work.targets);
        let copies: BTreeSet<_> = targets().flat_map(|target| &target.touched).filter_map(Touched::copy).collect();
        let touched: BTreeSet<_> = targets().flat_map(|target| target.touched.iter().copied()).collect();
        let right = [works.len(), targets().count(), copies.len(), touched.len()];
        if !right.iter().any(|one| u32::try_from(*one) == Ok(count_of))
            && let Some(span) = place(&passage.tokens[at + 1..=at + 2])
        {
            let message = format!("“all {}”, but the work of the step names {}", count.raw, copies.len());
            findings.push(CHECK.at(span, message).hint(HINT).in_size(edition.size(), ""));
        }
    }
}

fn touches(work: &EditionWork<'_>, notion: NotionId) -> bool {
    work.targets.iter().any(|target| target.notion() == Some(notion))
}

fn finding(said: &Counted<'_>, true_one: &str, does: &str) -> Option<Finding> {
    let words = spoken(said.all);
    let message = format!("“{words}”, but the step {does} {true_one}");
    let finding = CHECK.at(place(said.all)?, message);
    Some(finding.hint(HINT))
}

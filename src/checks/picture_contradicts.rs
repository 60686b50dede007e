//! The description of a picture contradicts the words of its step.
//!
//! ## Why it matters
//! A maker who cannot see the picture has the description, and one who can looks at the picture first. "Glue side
//! up" there and "glue side down" in the words ruins an iron.
//!
//! ## Wrong
//! ````md
//! ## Press the pouch {#press-pouch}
//!
//! Lay the pouch with its zip face down, and press it.
//!
//! ![The pouch with its zip face up](figures/press.svg)
//! ````
//!
//! ## Right
//! ````md
//! ## Press the pouch {#press-pouch}
//!
//! Lay the pouch with its zip face down, and press it.
//!
//! ![The pouch with its zip face down](figures/press.svg)
//! ````
//!
//! ## Limits
//! Compares left and right, top and bottom, inner and outer before the same noun, the sides that face each
//! other, up or out behind the same noun, which way a thing points, and which of two lies on the other; where they differ,
//! the picture's own words and classes, or the work of other steps, tell which of the two is wrong. The description of a
//! drawing that is made from the work (`draw:work`) is held against that work too: right or wrong sides together, and pieces
//! that neither it nor the work before has to do with. The opposites stand in `templates/vocabulary-en.json`. Silent where the
//! words say both, or turn the thing over.

use std::collections::BTreeSet;

use super::direction_contradicts::{Pole, poles};
use super::judge::{Judge, Subject};
use super::passage::{Passage, Stands, Token, place, spoken, stem};
use super::picture_layers::{by_the_work, layers, turned_over};
use super::printed_words::each_step;
use super::spoken_names::{Spoken, called};
use crate::diag::{Check, Findings, Group, Home};
use crate::figure::DRAW;
use crate::model::{Verb, Vocabulary};
use crate::resolve::{CopyId, Edition, EditionStep, Touched};
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("picture-contradicts", Group::Figures, include_str!("picture_contradicts.rs"))
        .waivable_in(Home::Words),
    run,
);

/// A claim: which pair, which of the two, of what, and where.
struct Claim<'t> {
    pole: Pole<'t>,
    of: String,
    words: &'t [Token<'t>],
}

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    each_step(subject, &mut |edition, step, passages| {
        let names = names(edition);
        let claims = |alt: bool| -> Vec<Claim<'_>> {
            let of = passages.iter().filter(|passage| (passage.stands == Stands::Alt) == alt);
            of.flat_map(|passage| claims(passage, &names, subject.vocabulary)).collect()
        };
        let (told, shown) = (claims(false), claims(true));
        let drawn = drawn(subject, edition, step);
        in_the_picture(&told, &shown, &drawn, subject.vocabulary, &mut |span, message| {
            let finding = CHECK.at(span, message).hint("look at the picture, and mend the one that is wrong");
            findings.push(finding.in_size(edition.size(), ""));
        });
        for (own, others) in [(&told, &shown), (&shown, &told)] {
            lost(own, others, &mut |span, message| {
                let finding = CHECK.at(span, message).hint("look at the picture, and mend the one that is wrong");
                findings.push(finding.in_size(edition.size(), ""));
            });
        }
        layers(passages, subject.vocabulary, &mut |span, message| {
            let finding = CHECK.at(span, message).hint("look at the picture, and mend the one that is wrong");
            findings.push(finding.in_size(edition.size(), ""));
        });
        by_the_work(edition, step, passages, subject.vocabulary, &mut |span, message| {
            let finding =
                CHECK.at(span, message).hint("describe what the work of the step does, which is what is drawn");
            findings.push(finding.in_size(edition.size(), ""));
        });
        swapped(subject, edition, step, findings);
        // Once it is turned, the picture shows it as it lies then.
        if turned_over(passages, subject.vocabulary) {
            return;
        }
        for claim in &shown {
            let same = |other: &Claim<'_>, side: usize| {
                other.pole.pair == claim.pole.pair && other.of == claim.of && other.pole.side == side
            };
            let against = told.iter().find(|other| same(other, 1 - claim.pole.side));
            // "Both backs" are each of them.
            let both = shown_of_both(passages, claim, subject.vocabulary);
            let also =
                told.iter().chain(&shown).any(|other| same(other, claim.pole.side) && !std::ptr::eq(other, claim));
            let (Some(against), false) = (against, also && !both) else { continue };
            let (Some(alt), Some(words)) = (place(claim.words), place(against.words)) else { continue };
            // The picture itself tells which of the two is wrong.
            let seen = elsewhere(edition, step, passages, claim, subject.vocabulary);
            let seen = seen.or_else(|| drawn.says(&claim.pole, subject.vocabulary));
            let message =
                format!("the description says “{}”, and the words “{}”", spoken(claim.words), spoken(against.words));
            let (at, other, which) = match seen.or((both && also).then_some(claim.pole.side)) {
                Some(side) if side == claim.pole.side => (words, alt, "the description"),
                _ => (alt, words, "the words"),
            };
            findings.push(
                CHECK
                    .at(at, message)
                    .hint("look at the picture, and mend the one that is wrong")
                    .note(other, which)
                    .in_size(edition.size(), ""),
            );
        }
    });
}

/// Whether a description says something of both of a thing.
fn shown_of_both(passages: &[Passage<'_>], claim: &Claim<'_>, vocabulary: &Vocabulary) -> bool {
    passages.iter().filter(|passage| passage.stands == Stands::Alt).any(|passage| {
        let at = passage.tokens.iter().position(|token| std::ptr::eq(token, &claim.words[0]));
        at.and_then(|at| at.checked_sub(1)).is_some_and(|at| vocabulary.both.contains(&passage.tokens[at].word))
    })
}

/// A step shows the picture that bears the name of another step, which shows a picture with another name.
fn swapped(subject: &Subject<'_>, edition: &Edition<'_>, step: &EditionStep<'_>, findings: &mut Findings) {
    let stem = |path: &str| {
        let file = path.rsplit('/').next().unwrap_or("");
        file.split_once('.').map_or(String::new(), |(stem, _)| stem.to_owned())
    };
    let named = |other: &EditionStep<'_>| other.step.id.as_ref().map_or(String::new(), |id| id.text.clone());
    let shows = |other: &EditionStep<'_>| other.figure.as_ref().map_or(String::new(), |figure| stem(&figure.path));
    let (own, shown) = (named(step), shows(step));
    if shown.is_empty() || shown == own {
        return;
    }
    let owner = subject.editions.iter().find(|other| other.size() == edition.size());
    let owner = owner.and_then(|edition| edition.steps().find(|other| named(other) == shown));
    let Some(owner) = owner.filter(|owner| !shows(owner).is_empty() && shows(owner) != shown) else { return };
    let Some(figure) = &step.figure else { return };
    let message = format!("this picture bears the name of step {}, which shows another one", owner.number);
    let finding = CHECK.at(figure.span, message).hint("see whether two pictures changed places");
    findings.push(finding.in_size(edition.size(), ""));
}

/// Where the description tells one of a thing on each side, and the words, as often, both on one: the one that they turn
/// round. The same the other way about.
fn lost(told: &[Claim<'_>], shown: &[Claim<'_>], tell: &mut dyn FnMut(Span, String)) {
    for (at, claim) in told.iter().enumerate() {
        let alike = |other: &&Claim<'_>| other.pole.pair == claim.pole.pair && other.of == claim.of;
        let first = !told[..at].iter().any(|other| alike(&other));
        let (words, picture): (Vec<&Claim<'_>>, Vec<&Claim<'_>>) =
            (told.iter().filter(alike).collect(), shown.iter().filter(alike).collect());
        let one_side = words.iter().all(|other| other.pole.side == claim.pole.side);
        let both = picture.iter().any(|other| other.pole.side != picture[0].pole.side);
        if !first || claim.of.is_empty() || words.len() < 2 || words.len() != picture.len() || !one_side || !both {
            continue;
        }
        let wrong = words.iter().zip(&picture).find(|(word, shown)| word.pole.side != shown.pole.side);
        let Some((word, shown)) = wrong else { continue };
        if let Some(span) = place(word.words) {
            let (word, shown) = (spoken(word.words), spoken(shown.words));
            tell(
                span,
                format!("“{word}” is said twice, and words and description do not agree: the other says “{shown}”"),
            );
        }
    }
}

/// Which side is the true one, by more than the two: where the description tells one thing on each side and the words tell
/// two on one, the words lost it; and where the work of other steps lays a thing that the words name at one side.
fn elsewhere(
    edition: &Edition<'_>,
    step: &EditionStep<'_>,
    passages: &[Passage<'_>],
    claim: &Claim<'_>,
    vocabulary: &Vocabulary,
) -> Option<usize> {
    let body = || passages.iter().filter(|passage| passage.stands == Stands::Body);
    let named = |name: &Spoken| body().any(|passage| name.all_in(&passage.tokens));
    let sides = vocabulary.opposites.get(claim.pole.pair)?;
    if sides.iter().all(|own| vocabulary.lies_up.iter().flatten().any(|word| own.contains(word))) {
        let of_the_work = step.figure.as_ref().is_some_and(|figure| figure.path.starts_with(DRAW));
        return of_the_work.then(|| laid_by_the_work(edition, step, claim, vocabulary))?;
    }
    let works = edition.steps().filter(|other| other.number != step.number).flat_map(|other| &other.works);
    let mut found = BTreeSet::new();
    for work in works.filter(|work| work.verb != Verb::Cut) {
        let copies: BTreeSet<CopyId> = work.touched().filter_map(|touched| touched.copy()).collect();
        if copies.len() < 2 || !copies.iter().all(|copy| named(&Spoken::of(&edition.copy_name(*copy)))) {
            continue;
        }
        for touched in work.touched() {
            let Touched::Edge(copy, edge) = touched else { continue };
            let name = edition.edge(copy, edge).map_or("", |edge| edge.name.as_str());
            let side = sides.iter().position(|words| name.split('_').any(|word| words.iter().any(|own| own == word)));
            found.extend(side);
        }
    }
    found.iter().next().copied().filter(|_| found.len() == 1)
}

/// A seam lays the piece that is named first right side up, and the last one on it, wrong side up.
fn laid_by_the_work(
    edition: &Edition<'_>,
    step: &EditionStep<'_>,
    claim: &Claim<'_>,
    vocabulary: &Vocabulary,
) -> Option<usize> {
    let is = |touched: Option<&Touched>| {
        let copy = touched.and_then(Touched::copy);
        copy.is_some_and(|copy| Spoken::of(&edition.copy_name(copy)).has(&claim.of))
    };
    let sewn = step.works.iter().filter(|work| work.verb == Verb::Sew && !work.work.wrong_sides);
    let mut sides = sewn.filter_map(|work| {
        let (first, last) = (work.targets.first()?, work.targets.last()?);
        match (is(first.touched.first()), is(last.touched.first())) {
            (true, false) => Some(true),
            (false, true) => Some(false),
            _ => None,
        }
    });
    let up = sides.next()?;
    let right =
        vocabulary.opposites[claim.pole.pair].iter().position(|words| words.contains(&vocabulary.lies_up[1][0]))?;
    sides.all(|other| other == up).then_some(if up { right } else { 1 - right })
}

/// Claims that the words in a picture turn round: "pad up" beside "pad down".
fn in_the_picture(
    told: &[Claim<'_>],
    shown: &[Claim<'_>],
    drawn: &Drawn,
    vocabulary: &Vocabulary,
    tell: &mut dyn FnMut(Span, String),
) {
    for claim in told.iter().filter(|claim| !claim.of.is_empty() && claim.pole.tokens.len() == 1) {
        let pair = &vocabulary.opposites[claim.pole.pair];
        let before = vocabulary.before_nouns.contains(pair);
        let says = |side: usize| {
            pair[side].iter().any(|word| {
                let phrase = if before { format!(" {word} {} ", claim.of) } else { format!(" {} {word} ", claim.of) };
                drawn.words.contains(&phrase)
            })
        };
        let alike = |other: &&Claim<'_>| other.pole.pair == claim.pole.pair && other.of == claim.of;
        // What the description contradicts is told already.
        let told_before = shown.iter().any(|other| alike(&other));
        let both = told.iter().any(|other| alike(&other) && other.pole.side != claim.pole.side);
        if says(1 - claim.pole.side)
            && !says(claim.pole.side)
            && !told_before
            && !both
            && let Some(span) = place(claim.words)
        {
            let other = pair[1 - claim.pole.side].first().map_or("", String::as_str);
            tell(span, format!("the words say “{}”, and the picture says “{other}”", spoken(claim.words)));
        }
    }
}

/// What the pictures of a step show: the classes in use, and the words in them.
struct Drawn {
    classes: Vec<&'static str>,
    words: String,
}

fn drawn(subject: &Subject<'_>, edition: &Edition<'_>, step: &EditionStep<'_>) -> Drawn {
    let figure = step.figure.as_ref().and_then(|figure| subject.figures.get(edition.size(), &figure.key));
    let words = figure.map_or(String::new(), |figure| format!(" {} ", words_in(&figure.svg)));
    Drawn { classes: figure.map_or(Vec::new(), |figure| figure.classes.clone()), words }
}

/// The words that stand in a drawing, in lower case.
fn words_in(svg: &str) -> String {
    let mut words = String::new();
    for element in svg.split("<text").skip(1) {
        let inside = element.split("</text").next().unwrap_or("");
        let texts = inside.split('>').skip(1).map(|part| part.split('<').next().unwrap_or(""));
        texts.for_each(|text| {
            words.push_str(text);
            words.push(' ');
        });
    }
    words.to_lowercase().replace(|letter: char| !letter.is_alphanumeric(), " ")
}

impl Drawn {
    /// Which of two opposites it shows; `None` where it shows neither or both.
    fn says(&self, pole: &Pole<'_>, vocabulary: &Vocabulary) -> Option<usize> {
        let sides = &vocabulary.opposites[pole.pair];
        let shows = |side: usize| {
            sides[side].iter().any(|phrase| {
                let class = phrase.strip_suffix(" up").map(|phrase| phrase.replace(' ', "-"));
                self.words.contains(&format!(" {phrase} "))
                    || class.is_some_and(|class| self.classes.contains(&class.as_str()))
            })
        };
        match (shows(0), shows(1)) {
            (true, false) => Some(0),
            (false, true) => Some(1),
            _ => None,
        }
    }
}

/// The last words of all names: what a sentence may speak of.
fn names(edition: &Edition<'_>) -> Vec<Spoken> {
    let facts = &edition.draft.facts;
    let copies =
        edition.cast.copies().flat_map(|(copy, _)| [called(edition, copy), Spoken::of(&edition.copy_name(copy))]);
    let pieces = facts.pieces.iter().map(|piece| Spoken::of(&piece.name.text));
    let fabrics = facts.fabrics.iter().map(|fabric| Spoken::of(&fabric.name.text));
    let notions = facts.notions.iter().map(|notion| Spoken::of(&notion.name.text));
    copies.chain(pieces).chain(fabrics).chain(notions).collect()
}

fn claims<'t>(passage: &'t Passage<'_>, names: &[Spoken], vocabulary: &Vocabulary) -> Vec<Claim<'t>> {
    let is_name = |word: &str| !word.is_empty() && names.iter().any(|name| name.head() == stem(word));
    let is_noun = |word: &str| is_name(word) || vocabulary.edge_words.iter().any(|edge| edge == word);
    let mut found = Vec::new();
    for sentence in passage.sentences() {
        for pole in poles(sentence, vocabulary) {
            let Some(at) = sentence.iter().position(|token| std::ptr::eq(token, &pole.tokens[0])) else { continue };
            let end = at + pole.tokens.len();
            if vocabulary.before_nouns.contains(&vocabulary.opposites[pole.pair]) {
                // "The left-hand edge" is the left one.
                let hand = sentence.get(end).is_some_and(|next| next.gap == "-");
                let end = end + usize::from(hand);
                let joined = |next: &usize| sentence[*next].gap == " " && !sentence[*next].word.is_empty();
                // "The right-hand side edge" is an edge.
                let twice = |next: usize| {
                    let edge =
                        |at: usize| sentence.get(at).is_some_and(|token| vocabulary.edge_words.contains(&token.word));
                    edge(next) && edge(next + 1) && joined(&(next + 1))
                };
                let noun = (end < sentence.len()).then(|| end + usize::from(twice(end))).filter(joined);
                // "The right side" is one of the cloth.
                let of_cloth = |noun: &usize| {
                    !hand
                        && vocabulary.opposites[pole.pair] == vocabulary.left_right
                        && vocabulary.side.contains(&sentence[*noun].word)
                };
                if let Some(noun) = noun.filter(|noun| is_noun(&sentence[*noun].word) && !of_cloth(noun)) {
                    let of = stem(&sentence[noun].word).to_owned();
                    found.push(Claim { pole, of, words: &sentence[at..=noun] });
                }
                continue;
            }
            let phrase: Vec<&str> = pole.tokens.iter().map(|token| token.word.as_str()).collect();
            let phrase = phrase.join(" ");
            if vocabulary.own_side.contains(&phrase) {
                found.push(Claim { of: String::new(), words: pole.tokens, pole });
                continue;
            }
            // Of one word it is said of what stands right before it, "pad up"; of more, of what was named last,
            // "the strip wrong side up".
            let before = match pole.tokens.len() {
                1 => at.checked_sub(1).filter(|before| {
                    let word = &sentence[*before].word;
                    (is_name(word) || vocabulary.points.contains(word)) && sentence[at].gap == " "
                }),
                _ => sentence[..at].iter().rposition(|token| is_name(&token.word)),
            };
            if let Some(noun) = before.or((pole.tokens.len() > 1).then_some(at)) {
                let points = |word: &String| vocabulary.points.contains(word);
                let of = before.map_or(String::new(), |noun| match &sentence[noun].word {
                    word if points(word) => vocabulary.points[0].clone(),
                    word => stem(word).to_owned(),
                });
                found.push(Claim { of, words: &sentence[noun..end], pole });
            }
        }
    }
    found
}

//! The words of a size for a child advise what a child can choke on, be cut by or be caught in.
//!
//! ## Why it matters
//! One sentence is enough: "whoever is in a hurry sews a button on instead". It contradicts the cautions of the booklet, and
//! a maker in a hurry follows it.
//!
//! ## Wrong
//! ```yaml
//! sizes:
//!   small: {name: Small, wearer: child}
//!   large: {name: Large, wearer: adult}
//! ```
//! ````md
//! ## Look it over {#look-over}
//!
//! Cut the threads. Sew a bead to the end of the zip.
//! ````
//!
//! ## Right
//! ```yaml
//! sizes:
//!   small: {name: Small, wearer: child}
//!   large: {name: Large, wearer: adult}
//! ```
//! ````md
//! ## Look it over {#look-over}
//!
//! Cut the threads. Sew no bead to the end of the zip.
//! ````
//!
//! ## Limits
//! Looks in all words of a size with `wearer: child` for buttons, beads, glass, cords, wire and the like that something is to
//! be done with and that are neither on the lists of that size nor its pieces; for cords and straps that are to be made
//! longer; for what is hung round a neck; and in the steps for what the cautions of that size forbid. Sentences that forbid,
//! ask or warn are passed over. The words stand in `templates/needs-en.json`. English booklets alone. That nothing is found
//! never means that a thing is safe.

use super::house_words_english::is_english;
use super::judge::{Judge, Subject};
use super::needed::{phrase_at, says, stems, words};
use super::passage::{Passage, Token, of_blocks, place, spoken};
use super::printed_words::each_step;
use crate::diag::{Check, Finding, Findings, Group};
use crate::model::{Notion, Wearer, is_for};
use crate::resolve::Edition;
use crate::syntax::Harm;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("child-harm-advised", Group::Words, include_str!("child_harm_advised.rs")).waivable(),
    run,
);

/// Looks at all words of every size for a child, and at what is said of a child in those of the others.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    if !is_english(&subject.draft.facts.language.text) {
        return;
    }
    let harm = &subject.needs.harm;
    let known: Vec<Known> = subject.editions.iter().map(|edition| Known::of(edition, harm)).collect();
    for (edition, known) in subject.editions.iter().zip(&known) {
        findings.extend(known.bought(edition));
        around(edition).iter().for_each(|passage| look(edition, passage, known, false, harm, findings));
    }
    each_step(subject, &mut |edition, _, passages| {
        let at = subject.editions.iter().position(|own| own.size() == edition.size());
        let Some(known) = at.map(|at| &known[at]) else { return };
        passages.iter().for_each(|passage| look(edition, passage, known, true, harm, findings));
    });
}

/// What a size has on its lists and forbids in its cautions.
struct Known {
    child: bool,
    /// The words of the names of notions and pieces.
    listed: Vec<Vec<String>>,
    /// What the cautions and the words at the front say not to take.
    forbidden: Vec<String>,
    /// What they say must not be there at all.
    never: Vec<String>,
    /// Whether something is tied at the neck.
    tied: bool,
}

impl Known {
    fn of(edition: &Edition<'_>, harm: &Harm) -> Known {
        let facts = &edition.draft.facts;
        let here = |sizes: &Option<Vec<usize>>| is_for(sizes.as_ref(), edition.size());
        let notions = facts.notions.iter().filter(|one| here(&one.sizes)).map(|one| &one.name.text);
        let pieces = facts.pieces.iter().filter(|one| here(&one.sizes)).map(|one| &one.name.text);
        let listed: Vec<Vec<String>> = notions.chain(pieces).map(|name| words(name)).collect();
        let mut known = Known {
            child: edition.size_facts().wearer == Wearer::Child,
            forbidden: Vec::new(),
            never: Vec::new(),
            tied: super::cord_at_neck::is_tied(edition, harm),
            listed,
        };
        if known.child {
            let cautions = facts.cautions.iter().filter(|one| here(&one.sizes)).map(|one| &one.content);
            for passage in
                cautions.chain([&facts.read_first]).flat_map(|blocks| of_blocks(blocks, Some(edition.size())))
            {
                passage.sentences().into_iter().for_each(|sentence| known.forbids(&stems(sentence), harm));
            }
        }
        known
    }

    /// Takes in what stands behind the first word that forbids.
    fn forbids(&mut self, text: &[String], harm: &Harm) {
        let Some(first) = (0..text.len()).find(|at| phrase_at(text, *at, &harm.forbids) > 0) else { return };
        for at in first..text.len() {
            let count = harmful(text, at, harm).max(phrase_at(text, at, &harm.ties));
            let name = text[at..at + count].join(" ");
            let never = says(&text.join(" "), &harm.never_adds) && !says(&text.join(" "), &harm.of_ones_own);
            if count > 0 && never && !self.never.contains(&name) {
                self.never.push(name.clone());
            }
            if count > 0 && !self.lists(&name) && !self.forbidden.contains(&name) {
                self.forbidden.push(name);
            }
        }
    }

    /// What is on the list of notions, though a caution says that it must not be there.
    fn bought(&self, edition: &Edition<'_>) -> Option<Finding> {
        let here = |one: &&Notion| is_for(one.sizes.as_ref(), edition.size());
        let mut own = edition.draft.facts.notions.iter().filter(here);
        let notion = own.find(|one| says(&one.name.text, &self.never))?;
        Some(
            CHECK
                .at(
                    notion.id.span,
                    format!("“{}” is bought for this size, and its cautions forbid it", notion.name.text),
                )
                .hint("take it from the list, or mend the caution")
                .in_size(edition.size(), ""),
        )
    }

    fn lists(&self, name: &str) -> bool {
        let name = words(name);
        self.listed.iter().any(|own| own.windows(name.len()).any(|some| some == name))
    }
}

/// Whether what stands at `at` is a part of a phrase that means something else.
fn is_harmless(text: &[String], at: usize, harm: &Harm) -> bool {
    let behind = at.checked_sub(1).is_some_and(|before| phrase_at(text, before, &harm.harmless) > 1);
    behind || phrase_at(text, at, &harm.harmless) > 0
}

/// How many words at `at` name what can harm a child.
fn harmful(text: &[String], at: usize, harm: &Harm) -> usize {
    if is_harmless(text, at, harm) {
        return 0;
    }
    let loose = harm.dangers.iter().filter(|danger| !danger.in_words);
    let longest = loose.map(|danger| phrase_at(text, at, &danger.names)).max().unwrap_or(0);
    longest.max(phrase_at(text, at, &harm.hazards_for_a_child))
}

/// The words of a size outside its steps.
fn around<'a>(edition: &Edition<'a>) -> Vec<Passage<'a>> {
    let facts = &edition.draft.facts;
    let size = Some(edition.size());
    let here = |sizes: &Option<Vec<usize>>| is_for(sizes.as_ref(), edition.size());
    let fabrics = facts.fabrics.iter().filter(|one| here(&one.sizes)).map(|one| &one.note);
    let notions = facts.notions.iter().filter(|one| here(&one.sizes)).map(|one| &one.note);
    let other_cloth = facts.fabrics.iter().filter(|one| here(&one.sizes)).map(|one| &one.sourcing.instead);
    let other_notions = facts.notions.iter().filter(|one| here(&one.sizes)).map(|one| &one.sourcing.instead);
    let pieces = facts.pieces.iter().filter(|one| here(&one.sizes)).map(|one| &one.note);
    let cautions = facts.cautions.iter().filter(|one| here(&one.sizes)).map(|one| &one.content);
    let intros = edition.parts.iter().map(|part| &part.part.intro);
    let help = edition.draft.help.iter().filter(|one| here(&one.sizes)).map(|one| &one.answer);
    let all = fabrics
        .chain(notions)
        .chain(other_cloth)
        .chain(other_notions)
        .chain(pieces)
        .chain(cautions)
        .chain(intros)
        .chain(help)
        .chain([&facts.read_first, &facts.care]);
    all.flat_map(|blocks| of_blocks(blocks, size)).collect()
}

fn look(
    edition: &Edition<'_>,
    passage: &Passage<'_>,
    known: &Known,
    in_step: bool,
    harm: &Harm,
    findings: &mut Findings,
) {
    for sentence in passage.sentences() {
        let text = stems(sentence);
        if let Some((from, to)) = lengthened(&text, harm).filter(|_| known.child && known.tied)
            && let Some(span) = place(&sentence[from..to])
        {
            let words = spoken(&sentence[from..to]);
            findings.push(
                CHECK
                    .at(span, format!("“{words}”: what is tied at a child's neck becomes long enough to catch"))
                    .hint("forbid it: “do not …”")
                    .in_size(edition.size(), ""),
            );
        }
        if says(&text.join(" "), &harm.no_advice) || says(&text.join(" "), &harm.warnings) {
            continue;
        }
        let mut tell = |from: usize, to: usize, why: &str, hint: &str| {
            let Some(span) = place(&sentence[from..to]) else { return };
            let message = format!("“{}”: {why}", spoken(&sentence[from..to]));
            findings.push(CHECK.at(span, message).hint(hint).in_size(edition.size(), ""));
        };
        if let Some((from, to)) = hung(&text, harm).filter(|_| known.child || says(&text.join(" "), &harm.child)) {
            tell(from, to, "what hangs round a child's neck can strangle", "leave it out, or forbid it");
        }
        if !known.child {
            continue;
        }
        match advised(&text, sentence, known, harm) {
            Some((from, to)) => tell(
                from,
                to,
                "a child can choke on it, be cut by it or be caught in it, and it is not on the lists of this size",
                "forbid it, or list it and say how it is made fast, with a caution at the step",
            ),
            None if in_step => {
                for (from, to) in forbidden(&text, known, harm) {
                    tell(from, to, "the cautions of this size forbid it", "name what is meant, or mend the caution");
                }
            }
            None => {}
        }
    }
}

/// "Sews a button on": a verb and what harms, not far behind it; or "glass beads give".
fn advised(text: &[String], sentence: &[Token<'_>], known: &Known, harm: &Harm) -> Option<(usize, usize)> {
    (0..text.len()).find_map(|at| {
        let count = harmful(text, at, harm);
        let unlisted = count > 0 && !known.lists(&text[at..at + count].join(" ")) && sentence[at].leads.is_none();
        let verb = |near: &usize| phrase_at(text, *near, &harm.advises) > 0;
        let before = (at.saturating_sub(FAR)..at).rev().find(verb);
        let gives = text.get(at + count).is_some_and(|next| next == "give");
        let from = before.or(gives.then_some(at)).filter(|_| unlisted)?;
        Some((from, at + count + usize::from(gives && before.is_none())))
    })
}

/// How many words may stand between a verb and what it is done with.
const FAR: usize = 7;

/// A thing that the cautions forbid, with a word before it that takes it for given.
fn forbidden(text: &[String], known: &Known, harm: &Harm) -> Vec<(usize, usize)> {
    let is = |at: &usize| phrase_at(text, *at, &known.forbidden) > 0 && !is_harmless(text, *at, harm);
    let given = |at: &usize| *at > 0 && phrase_at(text, at - 1, &harm.articles) > 0;
    (0..text.len()).filter(is).filter(given).map(|at| (at - 1, at + phrase_at(text, at, &known.forbidden))).collect()
}

/// "Hang the bag round the neck".
fn hung(text: &[String], harm: &Harm) -> Option<(usize, usize)> {
    let around = (0..text.len()).find(|at| {
        let behind = *at + 1 + usize::from(text.get(at + 1).is_some_and(|next| harm.articles.contains(next)));
        harm.around.contains(&text[*at]) && text.get(behind).is_some_and(|next| harm.neck.contains(next))
    })?;
    let from = (around.saturating_sub(FAR)..around).rev().find(|at| harm.hung.contains(&text[*at]))?;
    let to = (around..text.len()).find(|at| harm.neck.contains(&text[*at]))?;
    Some((from, to + 1))
}

/// "Lengthen these straps".
fn lengthened(text: &[String], harm: &Harm) -> Option<(usize, usize)> {
    // Forbidden right before it; what the rest of the sentence forbids is something else.
    let forbidden = |at: usize| says(&text[at.saturating_sub(4)..at].join(" "), &harm.no_advice);
    let from = (0..text.len()).find(|at| harm.lengthens.contains(&text[*at]) && !forbidden(*at))?;
    let to = (from + 1..text.len().min(from + 5)).find(|at| phrase_at(text, *at, &harm.cords) > 0)?;
    Some((from, to + 1))
}

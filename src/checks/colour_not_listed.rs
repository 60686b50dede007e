//! The words give a thing a colour that the list does not.
//!
//! ## Why it matters
//! "Sew it with the red thread", where the list has one reel to match the fabric: the maker looks for a second
//! reel.
//!
//! ## Wrong
//! ````md
//! ## Mend a stitch {#mend}
//!
//! Sew over it with the red thread.
//! ````
//!
//! ## Right
//! ````md
//! ## Mend a stitch {#mend}
//!
//! Sew over it with the thread.
//! ````
//!
//! ## Limits
//! Looks for the colours in `templates/vocabulary-en.json` before the last word of the name of a notion or a
//! fabric, or a word of its name in the files, and before "one"; silent where the name or the note of one such thing names that colour.

use super::judge::{Judge, Subject};
use super::passage::{Stands, Token, of_blocks, of_text, place, stem};
use super::printed_words::each_step;
use super::spoken_names::Spoken;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{Block, Name, Text};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("colour-not-listed", Group::Words, include_str!("colour_not_listed.rs")).waivable_in(Home::Words),
    run,
);

/// A thing on the lists: the words that name it, and all words that tell of it.
struct Listed {
    names: Vec<String>,
    words: Vec<String>,
}

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let facts = &subject.draft.facts;
    let fabrics = facts.fabrics.iter().map(|fabric| listed(&fabric.id, &fabric.name, &fabric.note));
    let listed: Vec<Listed> =
        fabrics.chain(facts.notions.iter().map(|notion| listed(&notion.id, &notion.name, &notion.note))).collect();
    let vocabulary = subject.vocabulary;
    each_step(subject, &mut |edition, _, passages| {
        for passage in passages.iter().filter(|passage| passage.stands == Stands::Body) {
            for pair in passage.tokens.windows(2) {
                let [colour, noun] = pair else { continue };
                if noun.gap != " " || !vocabulary.colours.contains(&colour.word) {
                    continue;
                }
                let tells = |thing: &&Listed| thing.words.contains(&colour.word);
                // "The red one" may be any of them.
                let stands_in = vocabulary.stands_in.contains(&noun.word);
                let mut same =
                    listed.iter().filter(|thing| stands_in || thing.names.contains(&stem(&noun.word).to_owned()));
                let known = same.clone().next().is_some();
                if !known || same.any(|thing| tells(&thing)) {
                    continue;
                }
                if let Some(span) = place(pair) {
                    let what = if stands_in { "thing" } else { noun.word.as_str() };
                    findings.push(
                        CHECK
                            .at(span, format!("no {what} on the list is {}", colour.word))
                            .hint("add it to the list with its colour, or name what is listed")
                            .in_size(edition.size(), ""),
                    );
                }
            }
        }
    });
}

fn listed(id: &Name, name: &Text, note: &[Block]) -> Listed {
    let words = |tokens: &[Token<'_>]| -> Vec<String> { tokens.iter().map(|token| token.word.clone()).collect() };
    let mut told = words(&of_text(name).tokens);
    of_blocks(note, None).iter().for_each(|passage| told.extend(words(&passage.tokens)));
    let own = id.text.split('_').map(str::to_owned);
    Listed { names: own.chain([Spoken::of(&name.text).head().to_owned()]).collect(), words: told }
}

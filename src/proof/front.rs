//! The words that stand in no step: before and behind the steps, at the head of parts, and names and notes in lists.

use super::evidence::Evidence;
use super::numbers::{Bit, bits};
use super::passages::{Passage, Reader};
use super::record::Passages;
use super::row::{Origin, Reading, Row, Run, Sentence};
use super::sentences::{BySize, sentences};
use crate::model::{Block, Facts, Text};
use crate::resolve::{Block as Printed, Edition, FrontMatter, Scope};

/// Words of the facts: the key of their name, and where they stand in a size.
type Front = (&'static str, fn(&Facts) -> &[Block], fn(&FrontMatter) -> &[Printed]);

/// Every sentence outside the steps that holds a figure, by where it stands.
pub(super) fn front(evidence: &Evidence<'_>) -> Vec<Passages> {
    let mut found = vec![names(evidence)];
    let whole: [Front; 3] = [
        ("read_first", |facts| &facts.read_first, |front| &front.read_first),
        ("care", |facts| &facts.care, |front| &front.care),
        ("terms", |facts| &facts.terms, |front| &front.terms),
    ];
    for (key, written, printed) in whole {
        let own = each(evidence, |edition| {
            read(evidence, edition, &[(written(&evidence.draft.facts), printed(&edition.front))])
        });
        found.push(Passages { name: evidence.word(key), sentences: sentences(evidence, &own) });
    }
    let facts = &evidence.draft.facts;
    let cautions = each(evidence, |edition| {
        let own = edition.front.cautions.iter();
        let own: Vec<_> =
            own.map(|(at, printed)| (facts.cautions[*at].content.as_slice(), printed.as_slice())).collect();
        read(evidence, edition, &own)
    });
    found.push(Passages { name: evidence.word("cautions"), sentences: sentences(evidence, &cautions) });
    found.push(Passages { name: evidence.word("proof_notes"), sentences: sentences(evidence, &notes(evidence)) });
    for part in &evidence.draft.parts {
        let own = each(evidence, |edition| {
            let Some(own) = edition.parts.iter().find(|own| std::ptr::eq(own.part, part)) else { return Vec::new() };
            let scope = Scope {
                values: &edition.values,
                params: part.params.of(edition.size()),
                folder: &part.folder,
                step: None,
            };
            let mut reader = Reader::new(evidence, edition, scope);
            reader.title(&part.title, &own.title, "heading");
            reader.prose(&part.intro, &own.intro);
            reader.passages()
        });
        let name = evidence
            .all
            .parts
            .iter()
            .find(|own| evidence.draft.parts.get(own.at).is_some_and(|known| std::ptr::eq(known, part)));
        let name = name
            .map_or_else(|| evidence.sources.text(part.span).to_owned(), |own| evidence.plain().inlines(&own.title));
        found.push(Passages { name, sentences: sentences(evidence, &own) });
    }
    let words = each(evidence, |edition| {
        let own = edition.front.words.iter();
        let own: Vec<_> =
            own.map(|(at, _, printed)| (facts.words[*at].meaning.as_slice(), printed.as_slice())).collect();
        read(evidence, edition, &own)
    });
    found.push(Passages { name: evidence.word("words"), sentences: sentences(evidence, &words) });
    let record = each(evidence, |edition| {
        let both = facts.editions.iter().zip(&edition.front.editions);
        let own: Vec<_> =
            both.map(|(written, (.., printed))| (written.changes.as_slice(), printed.as_slice())).collect();
        read(evidence, edition, &own)
    });
    found.push(Passages { name: evidence.word("editions"), sentences: sentences(evidence, &record) });
    found.retain(|passages| !passages.sentences.is_empty());
    found
}

/// Notes on fabrics, notions and pieces, and what serves in their place.
fn notes(evidence: &Evidence<'_>) -> BySize {
    let facts = &evidence.draft.facts;
    each(evidence, |edition| {
        let mut own: Vec<(&[Block], &[Printed])> = Vec::new();
        for row in &edition.fabrics {
            let fabric = &facts.fabrics[row.fabric];
            own.push((&fabric.note, &row.note));
            own.push((&fabric.sourcing.instead, &row.instead));
        }
        for row in &edition.notions {
            let notion = &facts.notions[row.notion];
            own.push((&notion.note, &row.note));
            own.push((&notion.sourcing.instead, &row.instead));
        }
        for row in &edition.cuts {
            own.push((&facts.pieces[row.piece].note, &row.note));
        }
        read(evidence, edition, &own)
    })
}

/// What each size reads.
fn each(evidence: &Evidence<'_>, read: impl Fn(&Edition<'_>) -> Vec<Passage>) -> BySize {
    let mut found: BySize = vec![None; evidence.count()];
    for edition in evidence.editions {
        if let Some(place) = found.get_mut(edition.size()) {
            *place = Some(read(edition));
        }
    }
    found
}

fn read(evidence: &Evidence<'_>, edition: &Edition<'_>, blocks: &[(&[Block], &[Printed])]) -> Vec<Passage> {
    let mut found: Vec<Passage> = Vec::new();
    for (written, printed) in blocks {
        let mut reader = Reader::new(evidence, edition, Scope::plain(&edition.values));
        reader.prose(written, printed);
        // A piece that is cut from two cloths has one note.
        found.extend(
            reader
                .passages()
                .into_iter()
                .filter(|one| found.iter().all(|known| known.key != one.key))
                .collect::<Vec<_>>(),
        );
    }
    found
}

/// Names and lines of plain words in which a figure is typed.
fn names(evidence: &Evidence<'_>) -> Passages {
    let facts = &evidence.draft.facts;
    let mut texts: Vec<&Text> = vec![&facts.title];
    texts.extend([&facts.skill, &facts.summary, &facts.style.cover_alt].into_iter().flatten());
    for fabric in &facts.fabrics {
        texts.push(&fabric.name);
        texts.extend(&fabric.sourcing.search);
    }
    for notion in &facts.notions {
        texts.push(&notion.name);
        texts.extend(&notion.plural);
        texts.extend(&notion.sourcing.search);
    }
    for piece in &facts.pieces {
        texts.push(&piece.name);
        texts.extend(piece.copy_names.iter().chain(&piece.edge_names).map(|(_, called)| called));
    }
    texts.extend(facts.tools.iter().map(|tool| &tool.name));
    texts.extend(facts.body.iter().map(|row| &row.name));
    texts.extend(facts.finished.iter().map(|row| &row.name));
    texts.extend(evidence.draft.steps().flat_map(|(_, step)| step.works.iter().flat_map(|work| &work.words)));
    let sentences = texts.into_iter().filter_map(|text| name(evidence, text)).collect();
    Passages { name: evidence.word("proof_names"), sentences }
}

fn name(evidence: &Evidence<'_>, text: &Text) -> Option<Sentence> {
    let place = evidence.place(text.span);
    let mut words = Vec::new();
    let mut rows = Vec::new();
    for bit in bits(&text.text, evidence.vocabulary) {
        match bit {
            Bit::Words(range) => words.push(Run { text: text.text[range].to_owned(), mark: String::new() }),
            Bit::Number(range, written) => {
                let mark = char::from(b'a' + u8::try_from(rows.len() % 26).unwrap_or(0)).to_string();
                let number = text.text[range].to_owned();
                let cells = vec![Some(number.clone()); evidence.count()];
                let from = vec![Origin { how: "typed", text: String::new(), place: place.clone() }];
                words.push(Run { text: number, mark: mark.clone() });
                rows.push(Row { mark, typed: true, ..Row::new(written, cells, from) });
            }
        }
    }
    if rows.is_empty() {
        return None;
    }
    Some(Sentence { kind: "name", place, readings: vec![Reading { sizes: Vec::new(), words, rows }] })
}

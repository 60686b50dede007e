//! Passages of all sizes laid side by side: each sentence that holds a figure, with its value in every size.

use super::evidence::Evidence;
use super::origin::merged;
use super::passages::{Figure, Passage, Told};
use super::row::{Reading, Row, Run, Sentence};
use super::sheet::Telling;

/// What each size reads of one thing; `None` where it does not have it.
pub(super) type BySize = Vec<Option<Vec<Passage>>>;

/// Every sentence in which some size reads a figure.
pub(super) fn sentences(evidence: &Evidence<'_>, by_size: &BySize) -> Vec<Sentence> {
    let mut found = Vec::new();
    for key in keys(by_size) {
        let own: Vec<Option<&Passage>> = by_size.iter().map(|read| of_key(read.as_deref(), key)).collect();
        let split: Vec<Option<Vec<Vec<&Told>>>> =
            own.iter().map(|passage| passage.map(|passage| split(&passage.told))).collect();
        let mut counts = split.iter().flatten().map(Vec::len);
        let count = counts.next().unwrap_or(0);
        let kind = own.iter().flatten().next().map_or("sentence", |passage| passage.kind);
        if counts.all(|other| other == count) {
            for at in 0..count {
                let told = split.iter().map(|own| own.as_ref().map(|own| own[at].clone())).collect();
                found.extend(sentence(evidence, kind, told));
            }
        } else {
            // Where a choice holds a sentence more, the passage is read as a whole.
            let told = own.iter().map(|passage| passage.map(|passage| passage.told.iter().collect())).collect();
            found.extend(sentence(evidence, kind, told));
        }
    }
    found
}

/// The words of something as sizes read them: once where they differ in figures alone.
pub(super) fn tellings(evidence: &Evidence<'_>, by_size: &BySize) -> Vec<Telling> {
    let said: Vec<Option<String>> = by_size
        .iter()
        .map(|read| {
            let read = read.as_ref()?;
            Some(
                read.iter()
                    .map(|passage| shape(&passage.told.iter().collect::<Vec<_>>()))
                    .collect::<Vec<_>>()
                    .join("\n"),
            )
        })
        .collect();
    groups(&said)
        .into_iter()
        .filter_map(|sizes| {
            let first = *sizes.first()?;
            let line = |passage: &Passage| {
                let words: String = passage.told.iter().map(|told| told.text.as_str()).collect();
                format!("{}{}", passage.sign, words.trim())
            };
            let body = by_size[first].as_ref()?.iter().filter(|passage| passage.kind != "alt");
            let lines = body.skip_while(|passage| passage.kind == "heading").map(line).collect();
            let differs = sizes.len() > 1 && by_size[first].as_ref()?.iter().any(has_figure);
            let of = differs.then(|| evidence.plain().size(first));
            Some(Telling { sizes: evidence.sizes(&sizes), of, lines })
        })
        .collect()
}

fn has_figure(passage: &Passage) -> bool {
    passage.told.iter().any(|told| told.figure.as_ref().is_some_and(|figure| !figure.typed))
}

/// The passages of all sizes, each once, in the order of the first that has them.
fn keys(by_size: &BySize) -> Vec<usize> {
    let mut keys: Vec<usize> = Vec::new();
    for read in by_size.iter().flatten() {
        let mut after = 0;
        for passage in read {
            match keys.iter().position(|key| *key == passage.key) {
                Some(at) => after = at + 1,
                None => {
                    keys.insert(after, passage.key);
                    after += 1;
                }
            }
        }
    }
    keys
}

fn of_key(read: Option<&[Passage]>, key: usize) -> Option<&Passage> {
    read?.iter().find(|passage| passage.key == key)
}

/// A passage in sentences; words are cut where one ends.
fn split(told: &[Told]) -> Vec<Vec<&Told>> {
    let mut sentences: Vec<Vec<&Told>> = vec![Vec::new()];
    for (at, run) in told.iter().enumerate() {
        let before = at.checked_sub(1).and_then(|at| told.get(at)).filter(|before| before.figure.is_none());
        let gap =
            |before: &Told| before.text.ends_with(char::is_whitespace) || run.text.starts_with(char::is_whitespace);
        if before.is_some_and(|before| ends(&before.text) && gap(before)) && !sentences.last().is_none_or(Vec::is_empty)
        {
            sentences.push(Vec::new());
        }
        if let Some(last) = sentences.last_mut() {
            last.push(run);
        }
    }
    sentences.retain(|sentence| !sentence.is_empty());
    sentences
}

fn ends(text: &str) -> bool {
    text.trim_end().ends_with(['.', '!', '?'])
}

/// A sentence by its words, with a sign for each figure.
fn shape(told: &[&Told]) -> String {
    let mut shape = String::new();
    for run in told {
        match &run.figure {
            Some(figure) if !figure.typed => shape.push_str(&format!("\u{1}{:?}\u{1}", figure.span)),
            _ => shape.push_str(&run.text),
        }
    }
    shape
}

/// Sizes that say the same, in their order.
pub(super) fn groups<T: PartialEq>(said: &[Option<T>]) -> Vec<Vec<usize>> {
    let mut groups: Vec<Vec<usize>> = Vec::new();
    for (size, own) in said.iter().enumerate() {
        if own.is_none() {
            continue;
        }
        match groups.iter_mut().find(|group| said[group[0]] == *own) {
            Some(group) => group.push(size),
            None => groups.push(vec![size]),
        }
    }
    groups
}

fn sentence(evidence: &Evidence<'_>, kind: &'static str, told: Vec<Option<Vec<&Told>>>) -> Option<Sentence> {
    let has = told.iter().flatten().flatten().any(|run| run.figure.is_some());
    let first = told.iter().flatten().flatten().next()?;
    if !has {
        return None;
    }
    let place = evidence.place(first.span);
    let shapes: Vec<Option<String>> = told.iter().map(|told| told.as_ref().map(|told| shape(told))).collect();
    let mut marks = marks();
    let readings = groups(&shapes).into_iter().map(|sizes| reading(evidence, &told, &sizes, &mut marks)).collect();
    Some(Sentence { kind, place, readings })
}

fn reading(
    evidence: &Evidence<'_>,
    told: &[Option<Vec<&Told>>],
    sizes: &[usize],
    marks: &mut impl Iterator<Item = String>,
) -> Reading {
    let lead = sizes.first().and_then(|size| told[*size].as_ref());
    let mut words: Vec<Run> = Vec::new();
    let mut rows = Vec::new();
    for (at, run) in lead.into_iter().flatten().enumerate() {
        let Some(figure) = &run.figure else {
            match words.last_mut().filter(|last| last.mark.is_empty()) {
                Some(last) => last.text.push_str(&run.text),
                None => words.push(Run { text: run.text.clone(), mark: String::new() }),
            }
            continue;
        };
        let mark = marks.next().unwrap_or_default();
        words.push(Run { text: run.text.clone(), mark: mark.clone() });
        let same =
            |size: usize| -> Option<&Told> { sizes.contains(&size).then(|| told[size].as_ref()?.get(at).copied())? };
        let cells = (0..told.len()).map(|size| same(size).map(|run| run.text.clone())).collect();
        let from = |run: &Told| run.figure.as_ref().map(|figure: &Figure| figure.from.clone());
        let from = merged((0..told.len()).filter_map(|size| same(size).and_then(from)));
        rows.push(Row { mark, typed: figure.typed, ..Row::new(figure.written.clone(), cells, from) });
    }
    if let Some(first) = words.first_mut() {
        first.text = first.text.trim_start().to_owned();
    }
    Reading { sizes: evidence.sizes(sizes), words, rows }
}

/// a, b, … z, a2, b2, …
fn marks() -> impl Iterator<Item = String> {
    (1..).flat_map(|round| {
        ('a'..='z').map(move |letter| if round == 1 { letter.to_string() } else { format!("{letter}{round}") })
    })
}

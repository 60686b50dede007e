//! The pictures of a step in three sizes, and the labels in them in every size.

use std::collections::BTreeMap;

use super::evidence::Evidence;
use super::numbers::{Bit, bits};
use super::origin::{Tracer, merged};
use super::row::{Origin, Reading, Row, Run, Sentence};
use super::sheet::{PictureRow, PictureView};
use super::work::InSize;
use crate::figure::{BoundFigure, DRAW, labels as labels_of, printed_labels};
use crate::model::{Brace, Expression, Inline, Step, Text, is_for};
use crate::resolve::{Block, FigureUse, Inline as Printed};
use crate::source::Span;

/// Every diagram that a step shows in one size, the first one first.
fn shown<'b>(own: &InSize<'b>) -> Vec<&'b FigureUse> {
    let mut found: Vec<&FigureUse> = own.step.figure.iter().collect();
    Block::each_figure(&own.step.body, &mut |figure| found.push(figure));
    found
}

/// How many diagrams a step shows at the most.
fn count(sized: &[Option<InSize<'_>>]) -> usize {
    sized.iter().flatten().map(|own| shown(own).len()).max().unwrap_or(0)
}

/// The pictures of a step: of the smallest size that has it, the middle one and the largest.
pub(super) fn pictures(
    evidence: &Evidence<'_>,
    id: &str,
    sized: &[Option<InSize<'_>>],
    files: &mut BTreeMap<String, Vec<u8>>,
) -> Vec<PictureRow> {
    let own: Vec<&InSize<'_>> = sized.iter().flatten().collect();
    let mut wanted = vec![0, own.len() / 2, own.len().saturating_sub(1)];
    wanted.dedup();
    let mut rows = Vec::new();
    for at in 0..count(sized) {
        let mut views: Vec<(Vec<usize>, &BoundFigure)> = Vec::new();
        let mut alt = String::new();
        let mut place = String::new();
        for own in wanted.iter().filter_map(|at| own.get(*at)) {
            let size = own.edition.size();
            let Some(figure) = shown(own).get(at).copied() else { continue };
            if alt.is_empty() {
                alt = Printed::plain(&figure.alt).replace('\u{a0}', " ");
            }
            let Some(bound) = evidence.figures.get(size, &figure.key) else { continue };
            if place.is_empty() && !figure.path.starts_with(DRAW) {
                place = evidence.short(&bound.path).to_owned();
            }
            match views.iter_mut().find(|(_, known)| known.svg == bound.svg) {
                Some((sizes, _)) => sizes.push(size),
                None => views.push((vec![size], bound)),
            }
        }
        let plain = evidence.plain();
        let views = views
            .into_iter()
            .map(|(sizes, bound)| {
                let path = format!("/proof/{id}-{}-{}.svg", at + 1, sizes[0] + 1);
                files.insert(path.clone(), bound.svg.clone().into_bytes());
                let names: Vec<String> = sizes.iter().map(|size| plain.size(*size)).collect();
                let thousandths = |length: f64| (length * 1000.0).round() / 1000.0;
                let (width, height) = (thousandths(bound.width), thousandths(bound.height));
                PictureView { sizes: plain.listed(&names), path, width, height }
            })
            .collect();
        rows.push(PictureRow { alt, place, views });
    }
    rows
}

/// The labels of a step's pictures that hold a figure, with their words in every size.
pub(super) fn labels<'b>(evidence: &'b Evidence<'_>, step: &Step, sized: &[Option<InSize<'b>>]) -> Vec<Sentence> {
    let mut found = Vec::new();
    for at in 0..count(sized) {
        let figure = |own: &Option<InSize<'b>>| {
            let own = (*own)?;
            let figure = shown(&own).get(at).copied()?;
            let bound = evidence.figures.get(own.edition.size(), &figure.key)?;
            Some((own, figure, printed_labels(&bound.svg)))
        };
        let own: Vec<_> = sized.iter().map(figure).collect();
        let Some((_, first, _)) = own.iter().flatten().next() else { continue };
        let drawn = first.path.starts_with(DRAW);
        let most = own.iter().flatten().map(|(.., labels)| labels.len()).max().unwrap_or(0);
        for label in 0..most {
            let cells: Vec<Option<String>> =
                own.iter().map(|one| one.as_ref().and_then(|(.., labels)| labels.get(label).cloned())).collect();
            let holds =
                |words: &String| bits(words, evidence.vocabulary).iter().any(|bit| matches!(bit, Bit::Number(..)));
            if !cells.iter().flatten().any(holds) {
                continue;
            }
            let each = own.iter().flatten().map(|(own, figure, labels)| match drawn {
                true => vec![Origin { how: "drawn", text: String::new(), place: evidence.place(step.span) }],
                false => written(evidence, own, figure, (label, labels.len())),
            });
            let from = merged(each);
            let typed = from.iter().all(|origin| origin.how == "typed");
            let place = from.first().map_or_else(String::new, |origin| origin.place.clone());
            let words = cells.iter().flatten().next().cloned().unwrap_or_default();
            let name = from.first().map_or(&words, |origin| if origin.text.is_empty() { &words } else { &origin.text });
            let row = Row { mark: "a".to_owned(), typed, ..Row::new(name.clone(), cells, from) };
            let words = vec![Run { text: words, mark: "a".to_owned() }];
            found.push(Sentence {
                kind: "label",
                place,
                readings: vec![Reading { sizes: Vec::new(), words, rows: vec![row] }],
            });
        }
    }
    found
}

/// What an author wrote behind a label, by its place among all labels; the file alone where those are not as many.
fn written(evidence: &Evidence<'_>, own: &InSize<'_>, figure: &FigureUse, (at, of): (usize, usize)) -> Vec<Origin> {
    let size = own.edition.size();
    let bound = evidence.figures.get(size, &figure.key);
    let Some(file) = bound.and_then(|bound| evidence.sources.by_path(&bound.path)) else {
        return Vec::new();
    };
    let text = evidence.sources.file(file).text.clone();
    let whole = Span::new(file, 0..text.len());
    let text = Text { text, span: whole, verbatim: true };
    let all = labels_of(&text, &evidence.draft.facts.sizes);
    let Some(label) = all.get(at).filter(|_| all.len() == of) else {
        return vec![Origin { how: "figure", text: String::new(), place: evidence.file(whole).to_owned() }];
    };
    let mut printed: Vec<(&Expression, Span)> = Vec::new();
    in_braces(label, size, &mut printed);
    if printed.is_empty() {
        let span = label.iter().find_map(|inline| match inline {
            Inline::Text(text) if !text.text.trim().is_empty() => Some(text.span),
            _ => None,
        });
        return vec![Origin { how: "typed", text: String::new(), place: evidence.place(span.unwrap_or(whole)) }];
    }
    let scope = own.scope();
    let tracer = Tracer { evidence, edition: own.edition, scope: &scope };
    merged(printed.into_iter().map(|(formula, span)| tracer.printed("braces", formula, span)))
}

/// The formulas that a label prints in one size.
fn in_braces<'b>(label: &'b [Inline], size: usize, found: &mut Vec<(&'b Expression, Span)>) {
    for inline in label {
        match inline {
            Inline::Brace(Brace::Print { value, span, .. }) => found.push((value, *span)),
            Inline::Brace(Brace::Choice { branches, .. }) => {
                let taken = branches.iter().find(|branch| is_for(branch.sizes.as_ref(), size));
                taken.iter().for_each(|branch| in_braces(&branch.content, size, found));
            }
            _ => {}
        }
    }
}

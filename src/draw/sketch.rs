//! A drawn step handed to its author: the same drawing with its classes, and formulas for what is a figure of the
//! facts, so that she can go on by hand.
//!
//! Every formula is proved before it is written: worked out in the drawing's own words it prints, or draws, what stood
//! there.

use std::ops::Range;

use super::formulas::{Formulas, figure_at};
use super::rewritten::{dimension, outline};
use crate::figure::Figures;
use crate::resolve::{Edition, EditionStep, Inline, slug};
use crate::source::Span;

/// A drawn step as a file of its author's.
#[derive(Debug, Clone)]
pub struct Sketch {
    /// What the file is called: the step's id, or its heading.
    pub name: String,
    /// The drawing.
    pub svg: String,
    /// Where the step asks for its drawing.
    pub mention: Span,
}

/// The drawn steps of one size, in their order.
pub fn sketches(edition: &Edition<'_>, figures: &Figures) -> Vec<Sketch> {
    let mut found: Vec<Sketch> = Vec::new();
    for (mention, scope) in edition.figure_uses() {
        let drawn = figures.get(edition.size(), &mention.key).and_then(|figure| figure.drawn.as_deref());
        let step = scope.step.and_then(|step| edition.steps().find(|known| std::ptr::eq(known.step, step)));
        let (Some(drawn), Some(step)) = (drawn, step) else { continue };
        let formulas = Formulas::of(edition, &scope, step);
        let name = name(step, &found);
        found.push(Sketch { name, svg: handed(drawn, &formulas), mention: mention.span });
    }
    found
}

/// A name that no other drawing of the size has.
fn name(step: &EditionStep<'_>, others: &[Sketch]) -> String {
    let own = match &step.step.id {
        Some(id) => id.text.clone(),
        None => slug(&Inline::plain(&step.title), "step"),
    };
    let again = (2..).map(|at| format!("{own}-{at}"));
    let free = |name: &String| !others.iter().any(|other| other.name == *name);
    std::iter::once(own.clone()).chain(again).find(free).unwrap_or(own)
}

/// A drawing with formulas in its words, and in the lines that are as long as they.
fn handed(drawn: &str, formulas: &Formulas<'_, '_>) -> String {
    let mut changes: Vec<(Range<usize>, String)> = Vec::new();
    let mut told: Vec<usize> = Vec::new();
    let Ok(document) = roxmltree::Document::parse(drawn) else { return drawn.to_owned() };
    for node in document.descendants().filter(|node| node.is_text()) {
        let Some(label) = node.ancestors().find(|above| above.tag_name().name() == "text") else { continue };
        let lines = label.descendants().filter(|line| line.is_text()).map(|line| &drawn[line.range()]);
        let label = lines.collect::<Vec<_>>().join(" ");
        let range = node.range();
        changes.push((range.clone(), words(&drawn[range], &label, formulas, &mut told)));
    }
    let scale = document.root_element().attribute("data-scale").and_then(|scale| scale.strip_prefix("1:"));
    let scale: f64 = scale.and_then(|scale| scale.parse().ok()).unwrap_or(1.0);
    for node in document.descendants().filter(|node| node.is_element()) {
        let written = match node.attribute("class") {
            Some("dimension") => dimension(node, &formulas.lengths(&told, scale)),
            Some(_) if node.tag_name().name() == "path" => outline(node, &formulas.of_pieces(scale)),
            _ => None,
        };
        changes.extend(written.map(|written| (node.range(), written)));
    }
    changes.sort_by_key(|(range, _)| range.start);
    let (mut out, mut at) = (String::new(), 0);
    for (range, written) in changes {
        out.push_str(&drawn[at..range.start]);
        out.push_str(&written);
        at = range.end;
    }
    out.push_str(&drawn[at..]);
    out
}

/// A line of a label with its figures as formulas; `told` takes which.
fn words(written: &str, label: &str, formulas: &Formulas<'_, '_>, told: &mut Vec<usize>) -> String {
    let mut out = String::new();
    let mut rest = written;
    let mut before = None;
    while let Some(letter) = rest.chars().next() {
        if let Some(figure) = figure_at(rest, before) {
            let (long, brace) = formulas.brace(rest, figure, label, told);
            out.push_str(&brace);
            before = rest[..long].chars().next_back();
            rest = &rest[long..];
            continue;
        }
        // A brace of the author's own names means itself.
        if matches!(letter, '{' | '}') {
            out.push('\\');
        }
        out.push(letter);
        before = Some(letter);
        rest = &rest[letter.len_utf8()..];
    }
    out
}

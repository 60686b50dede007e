//! The words that stand in a diagram: as the author wrote them, for the checks of words; label by label with their
//! braces; and as they are printed.

use std::ops::Range;

use super::markup::{is_drawn_text, parse};
use crate::diag::Findings;
use crate::model::{Brace, Inline, Size, Text};
use crate::syntax::{brace_groups, read_brace};

/// The words that are drawn: those outside braces, and those that a choice by size prints.
pub(super) fn words(document: &roxmltree::Document<'_>, text: &Text, sizes: &[Size]) -> Vec<Text> {
    let mut words = Vec::new();
    for node in document.descendants().filter(|node| is_drawn_text(*node)) {
        let range = node.range();
        // Braces that are never closed are told where the drawing is bound.
        let groups = brace_groups(&text.text[range.clone()]).unwrap_or_default();
        let mut at = range.start;
        for group in groups {
            let group = range.start + group.start..range.start + group.end;
            words.push(run(text, at..group.start));
            at = group.end;
            // So is what cannot be read inside them.
            let brace = read_brace(text, group, sizes, &mut Findings::default());
            chosen(&brace, &mut words);
        }
        words.push(run(text, at..range.end));
    }
    words.retain(|run| !run.text.trim().is_empty());
    words
}

/// The labels of a drawing as its author wrote them, words and braces, in their order; none where it cannot be read.
pub fn labels(text: &Text, sizes: &[Size]) -> Vec<Vec<Inline>> {
    let Ok(document) = parse(&text.text) else { return Vec::new() };
    let label = |range: Range<usize>| {
        let mut label = Vec::new();
        let mut at = range.start;
        for group in brace_groups(&text.text[range.clone()]).unwrap_or_default() {
            let group = range.start + group.start..range.start + group.end;
            label.push(Inline::Text(run(text, at..group.start)));
            at = group.end;
            label.push(Inline::Brace(read_brace(text, group, sizes, &mut Findings::default())));
        }
        label.push(Inline::Text(run(text, at..range.end)));
        label
    };
    let drawn = document.descendants().filter(|node| is_drawn_text(*node) && !is_blank(*node));
    drawn.map(|node| label(node.range())).collect()
}

/// The labels of a drawing as they are printed, in their order; none where it cannot be read.
pub fn printed_labels(svg: &str) -> Vec<String> {
    let Ok(document) = parse(svg) else { return Vec::new() };
    let drawn = document.descendants().filter(|node| is_drawn_text(*node) && !is_blank(*node));
    drawn.filter_map(|node| node.text().map(|text| text.split_whitespace().collect::<Vec<_>>().join(" "))).collect()
}

fn is_blank(node: roxmltree::Node<'_, '_>) -> bool {
    node.text().is_none_or(|text| text.trim().is_empty())
}

fn chosen(brace: &Brace, words: &mut Vec<Text>) {
    let Brace::Choice { branches, .. } = brace else { return };
    for inline in branches.iter().flat_map(|branch| &branch.content) {
        match inline {
            Inline::Text(text) => words.push(spoken(text.clone())),
            Inline::Brace(brace) => chosen(brace, words),
            _ => {}
        }
    }
}

fn run(text: &Text, range: Range<usize>) -> Text {
    spoken(Text { text: text.text[range.clone()].to_owned(), span: text.at(range), verbatim: true })
}

/// Words with XML's entities read for what they say.
fn spoken(text: Text) -> Text {
    if !text.text.contains('&') {
        return text;
    }
    let wrapped = format!("<words>{}</words>", text.text);
    match parse(&wrapped) {
        Ok(document) => {
            let words = document.root_element().text().unwrap_or("").to_owned();
            Text { text: words, verbatim: false, ..text }
        }
        Err(_) => text,
    }
}

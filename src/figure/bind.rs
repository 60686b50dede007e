//! Formulas in a diagram worked out for one size.
//!
//! In an attribute a length becomes a number in the drawing's own units at the drawing's scale; in
//! text a value is written as the booklet prints it. Every byte of the bound text leads back to the
//! author's.

use std::ops::Range;

use super::drawing::Drawing;
use super::markup::escape;
use super::numbers;
use crate::diag::Findings;
use crate::faults::{CHOICE_NOT_COVERED, FIGURE_FORMULA, NUMBER_TOO_LARGE};
use crate::measure::Dimension;
use crate::model::{Brace, Expression, Filter, Inline, Show, Size};
use crate::resolve::{Said, Scope, Uses, handed_words, say};
use crate::source::Span;
use crate::syntax::{brace_groups, read_brace};

/// The bound text and the way back.
#[derive(Debug, Clone, Default)]
pub(super) struct Bound {
    pub text: String,
    /// Where each run of the bound text begins, and which bytes of the author's text it came from.
    runs: Vec<(usize, Range<usize>)>,
}

impl Bound {
    fn push(&mut self, words: &str, from: Range<usize>) {
        self.runs.push((self.text.len(), from));
        self.text.push_str(words);
    }

    /// Markup between formulas, in which `\{` and `\}` stand for braces.
    fn plain(&mut self, source: &str, range: Range<usize>) {
        let mut at = range.start;
        let escapes = source[range.clone()].match_indices(['{', '}']).map(|(brace, _)| range.start + brace);
        for brace in escapes.filter(|brace| source[range.start..*brace].ends_with('\\')) {
            self.push(&source[at..brace - 1], at..brace - 1);
            at = brace;
        }
        self.push(&source[at..range.end], at..range.end);
    }

    /// The author's bytes behind a range of the bound text.
    pub fn source(&self, range: Range<usize>) -> Range<usize> {
        let start = self.one(range.start);
        let end = self.one(range.end.saturating_sub(1).max(range.start));
        start.start..end.end.max(start.start)
    }

    fn one(&self, at: usize) -> Range<usize> {
        let index = self.runs.partition_point(|(start, _)| *start <= at).saturating_sub(1);
        let Some((start, from)) = self.runs.get(index) else { return 0..0 };
        let end = self.runs.get(index + 1).map_or(self.text.len(), |(next, _)| *next);
        if end - start == from.len() {
            let byte = from.start + (at - start).min(from.len());
            byte..(byte + 1).min(from.end.max(byte))
        } else {
            from.clone()
        }
    }
}

/// Binds a diagram to the size of `scope`; `None` when a formula could not be worked out, which is
/// reported here or where the names that it leans on are defined.
pub(super) fn bind(
    drawing: &Drawing,
    scope: &Scope<'_>,
    sizes: &[Size],
    show: &Show,
    findings: &mut Findings,
    uses: &mut Uses,
) -> Option<Bound> {
    let source = drawing.text.text.as_str();
    let mut bound = Bound::default();
    let mut whole = true;
    let mut binder = Binder { drawing, scope, sizes, show, findings, uses };
    let mut at = 0;
    for (place, text) in drawing.places.iter().cloned() {
        let groups = match brace_groups(&source[place.clone()]) {
            Ok(groups) => groups,
            Err(open) => {
                let span = drawing.text.at(place.start + open..place.start + open + 1);
                binder.findings.push(
                    FIGURE_FORMULA
                        .at(span, "this brace is never closed")
                        .hint("close it with `}`, or write `\\{` for a brace"),
                );
                whole = false;
                continue;
            }
        };
        bound.push(&source[at..place.start], at..place.start);
        at = place.start;
        for group in groups {
            let range = place.start + group.start..place.start + group.end;
            bound.plain(source, at..range.start);
            match binder.group(range.clone(), text) {
                Some(words) => bound.push(&words, range.clone()),
                None => whole = false,
            }
            at = range.end;
        }
        bound.plain(source, at..place.end);
        at = place.end;
    }
    bound.push(&source[at..], at..source.len());
    whole.then_some(bound)
}

struct Binder<'a, 'b> {
    drawing: &'a Drawing,
    scope: &'a Scope<'b>,
    sizes: &'a [Size],
    show: &'a Show,
    findings: &'a mut Findings,
    uses: &'a mut Uses,
}

impl Binder<'_, '_> {
    fn group(&mut self, range: Range<usize>, text: bool) -> Option<String> {
        let brace = read_brace(&self.drawing.text, range, self.sizes, self.findings);
        self.brace(&brace, text)
    }

    fn brace(&mut self, brace: &Brace, text: bool) -> Option<String> {
        match brace {
            Brace::Broken => None,
            Brace::Choice { branches, span } => {
                let size = self.scope.values.size();
                let branch =
                    branches.iter().find(|branch| branch.sizes.as_ref().is_none_or(|sizes| sizes.contains(&size)));
                match branch {
                    Some(branch) => self.content(&branch.content, text),
                    None => {
                        self.findings.push(
                            CHOICE_NOT_COVERED
                                .at(*span, "this choice says nothing for some sizes")
                                .hint("add a branch for each size that is left, or end with `else: …`")
                                .in_size(size, ""),
                        );
                        None
                    }
                }
            }
            Brace::Print { value, filter, .. } if text => self.spoken(value, filter.as_ref()),
            Brace::Print { value, filter, span } => self.drawn(value, filter.as_ref(), *span),
        }
    }

    /// The words of a branch; what stands between its braces is markup of the author's own.
    fn content(&mut self, content: &[Inline], text: bool) -> Option<String> {
        let mut words = String::new();
        for inline in content {
            match inline {
                Inline::Text(run) => words.push_str(&run.text.replace("\\{", "{").replace("\\}", "}")),
                Inline::Brace(brace) => words.push_str(&self.brace(brace, text)?),
                // Nothing else is read where a text is no Markdown.
                _ => {}
            }
        }
        Some(words)
    }

    /// A value among words, as the booklet prints it.
    fn spoken(&mut self, value: &Expression, filter: Option<&Filter>) -> Option<String> {
        let size = self.sizes.get(self.scope.values.size()).filter(|_| value.formula.text.trim() == "size");
        if let Some(size) = size {
            return Some(escape(&size.name));
        }
        Some(escape(&match say(self.scope, value, filter, None, self.show, (self.findings, self.uses))? {
            Said::Figures(figures) => numbers::spoken(&figures),
            Said::Words(words) => words,
        }))
    }

    /// A value in an attribute, at the drawing's scale.
    fn drawn(&mut self, value: &Expression, filter: Option<&Filter>, span: Span) -> Option<String> {
        if let Some(filter) = filter {
            self.findings.push(
                FIGURE_FORMULA
                    .at(filter.span, "a bar has no meaning in an attribute, where a length is drawn and not printed")
                    .hint(format!("take `| {}` out", filter.name)),
            );
            return None;
        }
        self.uses.read(value, self.scope);
        if let Some(words) = handed_words(self.scope, value) {
            return Some(escape(words));
        }
        let worked = self.scope.work_out(value, self.findings)?;
        self.number(worked, span)
    }

    fn number(&mut self, worked: crate::resolve::Worked, span: Span) -> Option<String> {
        let quantity = worked.quantity;
        match quantity.dimension {
            Dimension::Length => {
                let drawn = quantity.value.checked_div(self.drawing.scale(self.scope.values.size()));
                let Some(drawn) = drawn.and_then(|drawn| drawn.checked_div(self.drawing.unit)) else {
                    self.findings.push(
                        NUMBER_TOO_LARGE
                            .at(span, "this length is too large, or too finely divided, to be drawn at this scale")
                            .hint("use smaller numbers, or round a part of the formula: round(x, 1 mm)")
                            .in_size(self.scope.values.size(), ""),
                    );
                    return None;
                };
                Some(numbers::decimal(drawn))
            }
            Dimension::Count | Dimension::Angle => Some(numbers::decimal(quantity.value)),
            other => {
                self.findings.push(
                    FIGURE_FORMULA
                        .at(span, format!("{} cannot be drawn", other.name()))
                        .hint("an attribute takes a length, an angle or a plain number")
                        .in_size(self.scope.values.size(), ""),
                );
                None
            }
        }
    }
}

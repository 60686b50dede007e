//! Formulas in a diagram worked out for one size.
//!
//! In an attribute a length becomes a number in the drawing's own units at the drawing's scale; in
//! text a value is written as the booklet prints it. Every byte of the bound text leads back to the
//! author's.

use std::ops::Range;

use roxmltree::{Document, Node};

use super::drawing::Drawing;
use super::markup::escape;
use super::numbers;
use crate::diag::Findings;
use crate::faults::{CHOICE_NOT_COVERED, FIGURE_FORMULA, NUMBER_TOO_LARGE};
use crate::measure::{Dimension, Unit};
use crate::model::{Brace, Inline, Show, Size};
use crate::resolve::{Scope, Shown, Uses};
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
    let document = Document::parse(source).ok()?;
    let mut places: Vec<(Range<usize>, bool)> = Vec::new();
    for node in document.descendants() {
        if node.is_element() {
            places.extend(node.attributes().map(|attribute| (attribute.range_value(), false)));
        } else if node.is_text() && prints(node) {
            places.push((node.range(), true));
        }
    }
    places.retain(|(range, _)| source[range.clone()].contains('{'));
    places.sort_by_key(|(range, _)| range.start);
    let mut binder = Binder { drawing, scope, sizes, show, findings, uses };
    let mut at = 0;
    for (place, text) in places {
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
        for group in groups {
            let range = place.start + group.start..place.start + group.end;
            bound.push(&source[at..range.start], at..range.start);
            match binder.group(range.clone(), text) {
                Some(words) => bound.push(&words, range.clone()),
                None => whole = false,
            }
            at = range.end;
        }
    }
    bound.push(&source[at..], at..source.len());
    whole.then_some(bound)
}

/// Text in `<style>` holds braces of its own; titles and descriptions are not drawn.
fn prints(node: Node<'_, '_>) -> bool {
    node.parent().is_some_and(|parent| matches!(parent.tag_name().name(), "text" | "tspan" | "textPath"))
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
            Brace::Print { value, filter, span } => {
                let filter = filter.as_ref().map(|filter| filter.name.as_str());
                if text && value.formula.text.trim() == "size" {
                    return self.sizes.get(self.scope.values.size()).map(|size| escape(&size.name));
                }
                if let Some(param) = self.scope.param_of(value)
                    && param.expression.is_none()
                {
                    return Some(escape(&param.text.text));
                }
                match text {
                    true => self.uses.print(value, filter.is_none(), self.scope),
                    false => self.uses.read(value, self.scope),
                }
                let worked = self.scope.work_out(value, self.findings)?;
                if text {
                    let figures = self.scope.figures(value, worked, self.show);
                    return Some(escape(&self.printed(figures, worked, filter)));
                }
                self.number(worked, *span)
            }
        }
    }

    fn content(&mut self, content: &[Inline], text: bool) -> Option<String> {
        let mut words = String::new();
        for inline in content {
            match inline {
                Inline::Text(run) => words.push_str(&run.text),
                Inline::Brace(brace) => words.push_str(&self.brace(brace, text)?),
                _ => {}
            }
        }
        Some(words)
    }

    fn printed(&self, figures: Shown, worked: crate::resolve::Worked, filter: Option<&str>) -> String {
        match filter {
            None => numbers::spoken(&figures),
            Some("first") => numbers::spoken(&Shown { second: None, ..figures }),
            Some("second") => {
                let first = figures.second.unwrap_or(figures.first);
                numbers::spoken(&Shown { exact: figures.exact, first, second: None })
            }
            Some("words") => {
                crate::measure::in_words(worked.quantity.value).unwrap_or_else(|| numbers::spoken(&figures))
            }
            Some(unit) => {
                let in_unit = Unit::parse(unit).and_then(|unit| Shown::in_unit(&worked, unit, self.show));
                numbers::spoken(&in_unit.unwrap_or(figures))
            }
        }
    }

    fn number(&mut self, worked: crate::resolve::Worked, span: Span) -> Option<String> {
        let quantity = worked.quantity;
        match quantity.dimension {
            Dimension::Length => {
                let drawn = quantity.value.checked_div(self.drawing.scale);
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

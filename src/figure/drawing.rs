//! A diagram as the author drew it: what does not hang on the size, checked once.

use super::inspect::{self, Page};
use super::{bounds, label, markup};
use crate::diag::{Check, Finding, Findings, Waiver, did_you_mean};
use crate::faults::{FIGURE_FORMULA, FIGURE_NOT_DRAWABLE};
use crate::measure::{Exact, ratio};
use crate::model::{Brace, Branch, Inline, Size, Text};
use crate::source::{FileId, Sources, Span};
use crate::syntax::{brace_groups, read_brace};

/// A diagram's text and what its root states.
#[derive(Debug, Clone)]
pub struct Drawing {
    /// The file.
    pub file: FileId,
    /// Its text with its place.
    pub text: Text,
    /// The root's start tag.
    pub root: Span,
    /// How many millimetres of cloth one millimetre on paper stands for, by size: the first that names the size, or
    /// none, holds.
    scales: Vec<(Option<Vec<usize>>, Exact)>,
    /// How many millimetres on paper one unit of the drawing is.
    pub unit: Exact,
    /// Where it holds braces, in order; `true` for words that are drawn, `false` for attributes.
    pub(super) places: Vec<(std::ops::Range<usize>, bool)>,
    /// The words in it that stand outside formulas.
    pub words: Vec<Text>,
    /// What the author waived for the whole file.
    pub waivers: Vec<Waiver>,
    /// What was found in it before any size was bound, and where: not told again for each size.
    pub(super) told: Vec<(&'static Check, Span)>,
}

impl Drawing {
    /// Reads a diagram; `None` when it cannot be drawn at all, which is a finding.
    pub fn read(
        file: FileId,
        sources: &Sources,
        families: &[String],
        sizes: &[Size],
        findings: &mut Findings,
    ) -> Option<Drawing> {
        let whole = sources.file(file).text.clone();
        let span = Span::new(file, 0..whole.len());
        let text = Text { text: whole, span, verbatim: true };
        let document = match markup::parse(&text.text) {
            Ok(document) => document,
            Err(error) => {
                findings.push(unreadable(&error, &text));
                return None;
            }
        };
        if let Some(refused) = bounds::refused(&document, &text.text, false) {
            findings.push(FIGURE_NOT_DRAWABLE.at(text.at(refused.range), refused.message).hint(refused.hint));
            return None;
        }
        let root = document.root_element();
        let page = Page { text: &text.text, place: &|range| text.at(range), whole: text.span, bound: false };
        let start = page.start_tag(root);
        if root.tag_name().name() != "svg" || root.tag_name().namespace() != Some("http://www.w3.org/2000/svg") {
            findings.push(FIGURE_NOT_DRAWABLE.at(start, "this file is no SVG drawing").hint(
                "begin it with `<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 76 50\" width=\"76mm\">`",
            ));
            return None;
        }
        let mut drawing = Drawing {
            file,
            root: start,
            scales: Vec::new(),
            unit: Exact::ONE,
            places: markup::places(&document, &text.text),
            words: label::words(&document, &text, sizes),
            waivers: Vec::new(),
            told: Vec::new(),
            text: text.clone(),
        };
        let framed = drawing.read_root(root, sizes, findings);
        let mut own = Findings::default();
        let found = inspect::inspect(&document, &page, families, &mut own);
        drawing.told = own.iter().map(|finding| (finding.check, finding.span)).collect();
        drawing.waivers = found.waivers;
        findings.extend(own.iter().cloned());
        (framed && !found.undrawable).then_some(drawing)
    }

    /// The formulas that it prints in one system alone; faults of its braces are told where it is bound.
    pub(super) fn systems(&self, sizes: &[Size]) -> Vec<(String, String, Span)> {
        let mut found = Vec::new();
        for (place, _) in self.places.iter().filter(|(_, words)| *words) {
            let groups = brace_groups(&self.text.text[place.clone()]).unwrap_or_default();
            for group in groups {
                let range = place.start + group.start..place.start + group.end;
                let brace = read_brace(&self.text, range, sizes, &mut Findings::default());
                if let Brace::Print { value, filter: Some(filter), span } = brace {
                    found.push((filter.name, value.source.text.trim().to_owned(), span));
                }
            }
        }
        found
    }

    /// The choices by size in its words and attributes: the sizes of each branch, and the place.
    pub(super) fn choices(&self, sizes: &[Size]) -> Vec<(Vec<Option<Vec<usize>>>, Span)> {
        let mut found = Vec::new();
        for (place, _) in &self.places {
            for group in brace_groups(&self.text.text[place.clone()]).unwrap_or_default() {
                let range = place.start + group.start..place.start + group.end;
                let brace = read_brace(&self.text, range, sizes, &mut Findings::default());
                if let Brace::Choice { branches, span } = brace {
                    found.push((branches.into_iter().map(|branch| branch.sizes).collect(), span));
                }
            }
        }
        found
    }

    /// Takes down scale and unit; whether the root says how large the drawing is.
    fn read_root(&mut self, root: roxmltree::Node<'_, '_>, sizes: &[Size], findings: &mut Findings) -> bool {
        let Some(view) = root.attribute_node("viewBox") else {
            findings.push(
                FIGURE_NOT_DRAWABLE
                    .at(self.root, "this drawing has no viewBox, so it has no size")
                    .hint("add `viewBox=\"0 0 WIDTH HEIGHT\"` with its size in units of the drawing"),
            );
            return false;
        };
        let wide = view.value().split([' ', ',']).filter(|part| !part.is_empty()).nth(2).and_then(exact);
        let width = root.attribute("width").and_then(paper_length);
        if let (Some(wide), Some(width)) = (wide, width)
            && let Some(unit) = width.checked_div(wide).filter(|unit| unit.is_positive())
        {
            self.unit = unit;
        }
        if let Some(scale) = root.attribute_node("data-scale") {
            match self.read_scales(scale, sizes) {
                Some(scales) => self.scales = scales,
                None => findings.push(
                    FIGURE_FORMULA
                        .at(self.text.at(scale.range_value()), format!("`{}` is no scale", scale.value()))
                        .hint(did_you_mean(
                            scale.value(),
                            ["1:1", "1:2", "1:4", "1:5", "1:10"],
                            "write it as `1:5`: one on paper for five on the cloth; or one for each size: `{small: 1:4 | else: 1:5}`",
                        )),
                ),
            }
        }
        true
    }
}

impl Drawing {
    /// How many millimetres of cloth one millimetre on paper stands for in a size; 1 where the drawing does not say.
    pub fn scale(&self, size: usize) -> Exact {
        let own = self.scales.iter().find(|(sizes, _)| sizes.as_ref().is_none_or(|sizes| sizes.contains(&size)));
        own.map_or(Exact::ONE, |(_, scale)| *scale)
    }

    /// One scale, or a choice of scales by size. Faults of the choice itself are told where it is bound.
    fn read_scales(
        &self,
        scale: roxmltree::Attribute<'_, '_>,
        sizes: &[Size],
    ) -> Option<Vec<(Option<Vec<usize>>, Exact)>> {
        let written = scale.value().trim();
        if !written.starts_with('{') {
            return Some(vec![(None, read_scale(written)?)]);
        }
        let range = scale.range_value();
        let start = range.start + self.text.text[range.clone()].find('{')?;
        let Brace::Choice { branches, .. } =
            read_brace(&self.text, start..start + written.len(), sizes, &mut Findings::default())
        else {
            return None;
        };
        let one = |branch: Branch| match branch.content.as_slice() {
            [Inline::Text(words)] => Some((branch.sizes, read_scale(&words.text)?)),
            _ => None,
        };
        branches.into_iter().map(one).collect()
    }
}

fn unreadable(error: &markup::Complaint, text: &Text) -> Finding {
    let start = error.at;
    let end = text.text[start..].find('\n').map_or(text.text.len(), |end| start + end);
    FIGURE_NOT_DRAWABLE
        .at(text.at(start..end), format!("the drawing cannot be read here: {}", error.words))
        .hint("open it in the program that made it and save it again as plain SVG, or mend the tag")
}

/// `76mm`, `7.6cm`, `3in`; `None` for other units, which say nothing of paper.
fn paper_length(written: &str) -> Option<Exact> {
    let written = written.trim();
    let (number, factor) = [("mm", Exact::ONE), ("cm", Exact::from_integer(10)), ("in", Exact::of::<254, 10>())]
        .into_iter()
        .find_map(|(unit, factor)| Some((written.strip_suffix(unit)?, factor)))?;
    exact(number.trim())?.checked_mul(factor)
}

fn read_scale(written: &str) -> Option<Exact> {
    let (paper, cloth) = written.split_once(':')?;
    let (paper, cloth) = (exact(paper.trim())?, exact(cloth.trim())?);
    if paper.is_positive() && cloth.is_positive() { cloth.checked_div(paper) } else { None }
}

/// A plain decimal number.
fn exact(written: &str) -> Option<Exact> {
    let (whole, part) = written.split_once('.').unwrap_or((written, ""));
    if part.len() > 9 || whole.len() > 9 || !part.chars().all(|digit| digit.is_ascii_digit()) {
        return None;
    }
    let digits: i128 = format!("{whole}{part}").parse().ok()?;
    ratio(digits, 10i128.pow(u32::try_from(part.len()).ok()?))
}

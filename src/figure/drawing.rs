//! A diagram as the author drew it: what does not hang on the size, checked once.

use crate::diag::{Finding, Findings, Waiver, did_you_mean};
use crate::faults::{FIGURE_FORMULA, FIGURE_NOT_DRAWABLE};
use crate::measure::{Exact, ratio};
use crate::model::Text;
use crate::source::{FileId, Sources, Span};

use super::{classes, inspect};

/// A diagram's text and what its root states.
#[derive(Debug, Clone)]
pub struct Drawing {
    /// The file.
    pub file: FileId,
    /// Its text with its place.
    pub text: Text,
    /// The root's start tag.
    pub root: Span,
    /// How many millimetres of cloth one millimetre on paper stands for.
    pub scale: Exact,
    /// How many millimetres on paper one unit of the drawing is.
    pub unit: Exact,
    /// The classes in use, in the order of the house.
    pub classes: Vec<&'static str>,
    /// The symbols in use.
    pub symbols: Vec<&'static str>,
    /// What the author waived for the whole file.
    pub waivers: Vec<Waiver>,
}

impl Drawing {
    /// Reads a diagram; `None` when it cannot be drawn at all, which is a finding.
    pub fn read(file: FileId, sources: &Sources, families: &[String], findings: &mut Findings) -> Option<Drawing> {
        let whole = sources.file(file).text.clone();
        let span = Span::new(file, 0..whole.len());
        let text = Text { text: whole, span, verbatim: true };
        let options = roxmltree::ParsingOptions { allow_dtd: false, nodes_limit: 200_000, ..Default::default() };
        let document = match roxmltree::Document::parse_with_options(&text.text, options) {
            Ok(document) => document,
            Err(error) => {
                findings.push(unreadable(&error, &text));
                return None;
            }
        };
        let root = document.root_element();
        let start = start_tag(&text, root.range().start);
        if root.tag_name().name() != "svg" || root.tag_name().namespace() != Some("http://www.w3.org/2000/svg") {
            findings.push(FIGURE_NOT_DRAWABLE.at(start, "this file is no SVG drawing").hint(
                "begin it with `<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 76 50\" width=\"76mm\">`",
            ));
            return None;
        }
        let mut drawing = Drawing {
            file,
            root: start,
            scale: Exact::ONE,
            unit: Exact::ONE,
            classes: Vec::new(),
            symbols: Vec::new(),
            waivers: Vec::new(),
            text: text.clone(),
        };
        let before = findings.iter().count();
        drawing.read_root(root, findings);
        let found = inspect::inspect(&document, &text, families, findings);
        drawing.classes =
            classes::CLASSES.iter().map(|class| class.name).filter(|name| found.classes.contains(*name)).collect();
        drawing.symbols =
            classes::SYMBOLS.iter().map(|(name, _)| *name).filter(|name| found.symbols.contains(*name)).collect();
        drawing.waivers = found.waivers;
        let fatal = findings.iter().skip(before).any(|finding| finding.check == &FIGURE_NOT_DRAWABLE);
        (!fatal).then_some(drawing)
    }

    fn read_root(&mut self, root: roxmltree::Node<'_, '_>, findings: &mut Findings) {
        let Some(view) = root.attribute_node("viewBox") else {
            findings.push(
                FIGURE_NOT_DRAWABLE
                    .at(self.root, "this drawing has no viewBox, so it has no size")
                    .hint("add `viewBox=\"0 0 WIDTH HEIGHT\"` with its size in units of the drawing"),
            );
            return;
        };
        let wide = view.value().split([' ', ',']).filter(|part| !part.is_empty()).nth(2).and_then(exact);
        let width = root.attribute("width").and_then(paper_length);
        if let (Some(wide), Some(width)) = (wide, width)
            && let Some(unit) = width.checked_div(wide).filter(|unit| unit.is_positive())
        {
            self.unit = unit;
        }
        if let Some(scale) = root.attribute_node("data-scale") {
            match read_scale(scale.value()) {
                Some(scale) => self.scale = scale,
                None => findings.push(
                    FIGURE_FORMULA
                        .at(self.text.at(scale.range_value()), format!("`{}` is no scale", scale.value()))
                        .hint(did_you_mean(
                            scale.value(),
                            ["1:1", "1:2", "1:4", "1:5", "1:10"],
                            "write it as `1:5`: one on paper for five on the cloth",
                        )),
                ),
            }
        }
    }
}

fn unreadable(error: &roxmltree::Error, text: &Text) -> Finding {
    let place = error.pos();
    let line: usize = text.text.split_inclusive('\n').take(place.row.saturating_sub(1) as usize).map(str::len).sum();
    let rest = &text.text[line.min(text.text.len())..];
    let at: usize = rest.chars().take(place.col.saturating_sub(1) as usize).map(char::len_utf8).sum();
    let start = (line + at).min(text.text.len());
    let end = text.text[start..].find('\n').map_or(text.text.len(), |end| start + end);
    let words = error.to_string();
    let words = words.split(" at ").next().unwrap_or("").to_owned();
    FIGURE_NOT_DRAWABLE
        .at(text.at(start..end), format!("the drawing cannot be read here: {words}"))
        .hint("open it in the program that made it and save it again as plain SVG, or mend the tag")
}

/// The tag that starts at a byte, from `<` to `>`.
pub(super) fn start_tag(text: &Text, start: usize) -> Span {
    text.at(start..start + tag_length(&text.text[start..]))
}

/// How long the tag at the start of `rest` is: `>` may stand inside quotes.
pub(super) fn tag_length(rest: &str) -> usize {
    let mut quote = None;
    for (at, letter) in rest.char_indices() {
        match (quote, letter) {
            (None, '>') => return at + 1,
            (None, '"' | '\'') => quote = Some(letter),
            (Some(open), letter) if open == letter => quote = None,
            _ => {}
        }
    }
    rest.len()
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

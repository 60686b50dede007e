//! A walk over a diagram for what may not stand in it, and for the classes and symbols in use.

use std::collections::BTreeSet;

use roxmltree::{Attribute, Document, Node};

use super::classes::{CLASSES, SYMBOLS, class};
use super::drawing::start_tag;
use crate::diag::{Finding, Findings, Waiver, did_you_mean};
use crate::faults::{CLASS_UNKNOWN, FIGURE_NOT_DRAWABLE, FONT_NOT_BUNDLED, OUTSIDE_LINK, SCRIPT_IN_FIGURE};
use crate::model::Text;

/// The most bytes of a picture inside a diagram, as written.
const PICTURE_LIMIT: usize = 300_000;

/// What was met.
#[derive(Debug, Default)]
pub(super) struct Found {
    pub classes: BTreeSet<String>,
    pub symbols: BTreeSet<String>,
    pub waivers: Vec<Waiver>,
}

/// Walks over every element.
pub(super) fn inspect(document: &Document<'_>, text: &Text, families: &[String], findings: &mut Findings) -> Found {
    let mut found = Found::default();
    let ids: BTreeSet<&str> = document.descendants().filter_map(|node| node.attribute("id")).collect();
    for node in document.descendants() {
        if node.is_comment() {
            let span = text.at(node.range());
            if let Some(waiver) = crate::syntax::comment_waiver(node.text().unwrap_or(""), span) {
                found.waivers.push(Waiver { scope: text.span, ..waiver });
            }
        }
        if !node.is_element() {
            continue;
        }
        element(node, text, findings);
        for attribute in node.attributes() {
            let mut look = Look { text, families, ids: &ids, found: &mut found, findings };
            look.attribute(node, attribute);
        }
        if node.tag_name().name() == "style" {
            let css = node.text().unwrap_or("");
            let range = node.first_child().map_or(node.range(), |child| child.range());
            style_sheet(css, range.start, text, families, findings);
        }
    }
    found
}

fn element(node: Node<'_, '_>, text: &Text, findings: &mut Findings) {
    let span = start_tag(text, node.range().start);
    match node.tag_name().name() {
        "script" => findings.push(
            SCRIPT_IN_FIGURE
                .at(span, "a diagram may hold no script")
                .hint("take the `<script>` out: a printed page runs nothing"),
        ),
        "foreignObject" | "iframe" | "audio" | "video" | "animate" | "animateTransform" | "animateMotion" | "set" => {
            let name = node.tag_name().name();
            findings.push(
                FIGURE_NOT_DRAWABLE
                    .at(span, format!("`<{name}>` cannot be printed"))
                    .hint("draw it with shapes and text, or take it out"),
            );
        }
        _ => {}
    }
}

struct Look<'a> {
    text: &'a Text,
    families: &'a [String],
    ids: &'a BTreeSet<&'a str>,
    found: &'a mut Found,
    findings: &'a mut Findings,
}

impl Look<'_> {
    fn attribute(&mut self, node: Node<'_, '_>, attribute: Attribute<'_, '_>) {
        let value = attribute.value();
        let range = attribute.range_value();
        let name = attribute.name();
        match name {
            "href" => self.href(node, value, range),
            "class" => self.class(value, range),
            "font-family" => font_family(value, range.start, self.text, self.families, self.findings),
            "style" => {
                style_sheet(value, range.start, self.text, self.families, self.findings);
            }
            _ if name.len() > 2 && name.starts_with("on") => self.findings.push(
                SCRIPT_IN_FIGURE
                    .at(self.text.at(attribute.range()), "a diagram may hold no script")
                    .hint(format!("take `{name}` out: a printed page runs nothing")),
            ),
            _ => {
                if let Some(at) = outside_url(value) {
                    self.findings.push(outside(self.text, range.start + at.start..range.start + at.end));
                }
            }
        }
    }

    fn href(&mut self, node: Node<'_, '_>, value: &str, range: std::ops::Range<usize>) {
        let span = self.text.at(range.clone());
        if let Some(id) = value.strip_prefix('#') {
            if let Some((symbol, _)) = SYMBOLS.iter().find(|(symbol, _)| *symbol == id) {
                self.found.symbols.insert((*symbol).to_owned());
            } else if !self.ids.contains(id) && !id.starts_with("nb-") {
                let names = SYMBOLS.iter().map(|(symbol, _)| *symbol).chain(self.ids.iter().copied());
                let symbols: Vec<&str> = SYMBOLS.iter().map(|(symbol, _)| *symbol).collect();
                self.findings.push(
                    FIGURE_NOT_DRAWABLE
                        .at(span, format!("nothing in this drawing and no symbol is called `{id}`"))
                        .hint(did_you_mean(id, names, &format!("the symbols are: {}", symbols.join(", ")))),
                );
            }
            return;
        }
        if value.starts_with("data:image/") {
            if value.len() > PICTURE_LIMIT {
                self.findings.push(
                    FIGURE_NOT_DRAWABLE
                        .at(span, format!("this picture is too large for a diagram ({} kB)", value.len() / 1000))
                        .hint(format!("save it smaller, under {} kB, or draw it with shapes", PICTURE_LIMIT / 1000)),
                );
            }
            return;
        }
        if node.tag_name().name() == "a"
            || node.tag_name().name() == "image"
            || node.tag_name().name() == "use"
            || value.contains(':')
        {
            self.findings.push(outside(self.text, range));
        }
    }

    fn class(&mut self, value: &str, range: std::ops::Range<usize>) {
        let mut at = 0;
        // Of a choice by size, the classes count and the rest is left to the formula's own reader.
        let mut depth = 0usize;
        for word in value.split([' ', '\n', '\t']) {
            let start = range.start + at;
            at += word.len() + 1;
            let chosen = depth > 0 || word.contains('{');
            depth = (depth + word.matches('{').count()).saturating_sub(word.matches('}').count());
            match class(word.trim_matches(['{', '}'])) {
                Some(class) => {
                    self.found.classes.insert(class.name.to_owned());
                }
                None if chosen || word.is_empty() => {}
                None => self.findings.push(
                    CLASS_UNKNOWN
                        .at(self.text.at(start..start + word.len()), format!("the house style has no class `{word}`"))
                        .hint(did_you_mean(
                            word,
                            CLASSES.iter().map(|class| class.name),
                            &format!(
                                "its classes are: {}",
                                CLASSES.iter().map(|class| class.name).collect::<Vec<_>>().join(", ")
                            ),
                        )),
                ),
            }
        }
    }
}

fn outside(text: &Text, range: std::ops::Range<usize>) -> Finding {
    OUTSIDE_LINK
        .at(text.at(range), "a diagram may not reach outside its own file")
        .hint("take the link out, or draw what it leads to in this file")
}

/// `url(…)` to anything but a part of the same drawing, or a whole address.
fn outside_url(value: &str) -> Option<std::ops::Range<usize>> {
    let mut from = 0;
    while let Some(at) = value[from..].find("url(") {
        let start = from + at + 4;
        let end = value[start..].find(')').map_or(value.len(), |end| start + end);
        let target = value[start..end].trim_matches([' ', '"', '\'']);
        if !target.starts_with('#') && !target.starts_with("data:") {
            return Some(start..end);
        }
        from = end;
    }
    None
}

fn style_sheet(css: &str, offset: usize, text: &Text, families: &[String], findings: &mut Findings) {
    if let Some(at) = outside_url(css) {
        findings.push(outside(text, offset + at.start..offset + at.end));
    }
    if let Some(at) = css.find("@import") {
        let end = css[at..].find(';').map_or(css.len(), |end| at + end);
        findings.push(outside(text, offset + at..offset + end));
    }
    let mut from = 0;
    while let Some(at) = css[from..].find("font-family") {
        let after = from + at + "font-family".len();
        let Some(colon) = css[after..].find(':') else { break };
        let start = after + colon + 1;
        let end = css[start..].find([';', '}']).map_or(css.len(), |end| start + end);
        font_family(&css[start..end], offset + start, text, families, findings);
        from = end;
    }
}

fn font_family(value: &str, offset: usize, text: &Text, families: &[String], findings: &mut Findings) {
    let mut at = 0;
    for part in value.split(',') {
        let name = part.trim().trim_matches(['"', '\'']).trim();
        let start = offset + at + part.find(name).unwrap_or(0);
        at += part.len() + 1;
        let known = families.iter().any(|family| family.eq_ignore_ascii_case(name));
        if name.is_empty() || known || matches!(name, "sans-serif" | "inherit") {
            continue;
        }
        findings.push(
            FONT_NOT_BUNDLED
                .at(text.at(start..start + name.len()), format!("the font “{name}” is not bundled with the booklet"))
                .hint(did_you_mean(
                    name,
                    families.iter().map(String::as_str),
                    &format!(
                        "write `{}`, or put the font's file into the booklet's folder `fonts`",
                        families.first().map_or("sans-serif", String::as_str)
                    ),
                )),
        );
    }
}

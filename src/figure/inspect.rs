//! A walk over a diagram for what may not stand in it, and for the classes and symbols in use.

use std::collections::BTreeSet;
use std::ops::Range;

use roxmltree::{Attribute, Document, Node};

use super::classes::{CLASSES, SYMBOLS, class};
use super::markup::tag_length;
use super::measure_tree::Locate;
use crate::diag::{Findings, Waiver, did_you_mean};
use crate::faults::{CLASS_UNKNOWN, FIGURE_NOT_DRAWABLE, FONT_NOT_BUNDLED, OUTSIDE_LINK, SCRIPT_IN_FIGURE};
use crate::source::Span;

/// The most bytes of a picture inside a diagram, as written.
const PICTURE_LIMIT: usize = 300_000;

/// A drawing's text, and how its places lead to the author's file.
pub(super) struct Page<'a> {
    /// The text that was parsed.
    pub text: &'a str,
    /// Where a range of it stands.
    pub place: &'a Locate<'a>,
    /// All of the author's text.
    pub whole: Span,
    /// Whether formulas are worked out. Before, what holds braces is left alone: what it will say is
    /// looked at when they are.
    pub bound: bool,
}

impl Page<'_> {
    fn at(&self, range: Range<usize>) -> Span {
        (self.place)(range)
    }

    /// The start tag of an element.
    pub fn start_tag(&self, node: Node<'_, '_>) -> Span {
        let start = node.range().start;
        self.at(start..start + tag_length(&self.text[start..]))
    }
}

/// What was met.
#[derive(Debug, Default)]
pub(super) struct Found {
    pub classes: BTreeSet<String>,
    pub symbols: BTreeSet<String>,
    pub waivers: Vec<Waiver>,
    /// Whether it holds anything that cannot be drawn.
    pub undrawable: bool,
}

/// Walks over every element.
pub(super) fn inspect(document: &Document<'_>, page: &Page<'_>, families: &[String], findings: &mut Findings) -> Found {
    let mut found = Found::default();
    let ids: BTreeSet<&str> = document.descendants().filter_map(|node| node.attribute("id")).collect();
    let mut look = Look { page, families, ids: &ids, found: &mut found, findings };
    for node in document.descendants() {
        if node.is_comment() {
            let span = page.at(node.range());
            if let Some(waiver) = crate::syntax::comment_waiver(node.text().unwrap_or(""), span) {
                look.found.waivers.push(Waiver { scope: page.whole, ..waiver });
            }
        }
        if !node.is_element() {
            continue;
        }
        look.element(node);
        for attribute in node.attributes().filter(|one| page.bound || !one.value().contains('{')) {
            look.attribute(node, attribute);
        }
        if node.tag_name().name() == "style" {
            let css = node.text().unwrap_or("");
            let range = node.first_child().map_or(node.range(), |child| child.range());
            look.style_sheet(css, range.start);
        }
    }
    found
}

struct Look<'a> {
    page: &'a Page<'a>,
    families: &'a [String],
    ids: &'a BTreeSet<&'a str>,
    found: &'a mut Found,
    findings: &'a mut Findings,
}

impl Look<'_> {
    fn undrawable(&mut self, span: Span, message: String, hint: &str) {
        self.found.undrawable = true;
        self.findings.push(FIGURE_NOT_DRAWABLE.at(span, message).hint(hint));
    }

    fn element(&mut self, node: Node<'_, '_>) {
        let name = node.tag_name().name();
        match name {
            "script" => self.findings.push(
                SCRIPT_IN_FIGURE
                    .at(self.page.start_tag(node), "a diagram may hold no script")
                    .hint("take the `<script>` out: a printed page runs nothing"),
            ),
            "foreignObject" | "iframe" | "audio" | "video" | "animate" | "animateTransform" | "animateMotion"
            | "set" => {
                let hint = "draw it with shapes and text, or take it out";
                self.undrawable(self.page.start_tag(node), format!("`<{name}>` cannot be printed"), hint);
            }
            _ => {}
        }
    }

    fn attribute(&mut self, node: Node<'_, '_>, attribute: Attribute<'_, '_>) {
        let value = attribute.value();
        let range = attribute.range_value();
        let name = attribute.name();
        match name {
            "href" => self.href(node, value, range),
            "class" => self.class(value, range),
            "font-family" => self.font_family(value, range.start),
            "style" => self.style_sheet(value, range.start),
            _ if name.len() > 2 && name.starts_with("on") => self.findings.push(
                SCRIPT_IN_FIGURE
                    .at(self.page.at(attribute.range()), "a diagram may hold no script")
                    .hint(format!("take `{name}` out: a printed page runs nothing")),
            ),
            _ => {
                if let Some(at) = outside_url(value) {
                    self.outside(range.start + at.start..range.start + at.end);
                }
            }
        }
    }

    fn href(&mut self, node: Node<'_, '_>, value: &str, range: Range<usize>) {
        let span = self.page.at(range.clone());
        if let Some(id) = value.strip_prefix('#') {
            if let Some((symbol, _)) = SYMBOLS.iter().find(|(symbol, _)| *symbol == id) {
                self.found.symbols.insert((*symbol).to_owned());
            } else if !self.ids.contains(id) && !id.starts_with("nb-") {
                let names = SYMBOLS.iter().map(|(symbol, _)| *symbol).chain(self.ids.iter().copied());
                let symbols: Vec<&str> = SYMBOLS.iter().map(|(symbol, _)| *symbol).collect();
                let hint = did_you_mean(id, names, &format!("the symbols are: {}", symbols.join(", ")));
                let message = format!("nothing in this drawing and no symbol is called `{id}`");
                self.undrawable(span, message, &hint);
            }
            return;
        }
        if value.starts_with("data:image/") {
            if value.len() > PICTURE_LIMIT {
                let message = format!("this picture is too large for a diagram ({} kB)", value.len() / 1000);
                let hint = format!("save it smaller, under {} kB, or draw it with shapes", PICTURE_LIMIT / 1000);
                self.undrawable(span, message, &hint);
            }
            return;
        }
        if matches!(node.tag_name().name(), "a" | "image" | "use") || value.contains(':') {
            self.outside(range);
        }
    }

    fn class(&mut self, value: &str, range: Range<usize>) {
        let names = || CLASSES.iter().map(|class| class.name);
        let mut at = 0;
        for word in value.split([' ', '\n', '\t']) {
            let start = range.start + at;
            at += word.len() + 1;
            match class(word) {
                Some(class) => {
                    self.found.classes.insert(class.name.to_owned());
                }
                None if word.is_empty() => {}
                None => {
                    let all = format!("its classes are: {}", names().collect::<Vec<_>>().join(", "));
                    self.findings.push(
                        CLASS_UNKNOWN
                            .at(
                                self.page.at(start..start + word.len()),
                                format!("the house style has no class `{word}`"),
                            )
                            .hint(did_you_mean(word, names(), &all)),
                    );
                }
            }
        }
    }

    fn outside(&mut self, range: Range<usize>) {
        self.findings.push(
            OUTSIDE_LINK
                .at(self.page.at(range), "a diagram may not reach outside its own file")
                .hint("take the link out, or draw what it leads to in this file"),
        );
    }

    fn style_sheet(&mut self, css: &str, offset: usize) {
        if let Some(at) = outside_url(css) {
            self.outside(offset + at.start..offset + at.end);
        }
        if let Some(at) = css.find("@import") {
            let end = css[at..].find(';').map_or(css.len(), |end| at + end);
            self.outside(offset + at..offset + end);
        }
        let mut from = 0;
        while let Some(at) = css[from..].find("font-family") {
            let after = from + at + "font-family".len();
            let Some(colon) = css[after..].find(':') else { break };
            let start = after + colon + 1;
            let end = css[start..].find([';', '}']).map_or(css.len(), |end| start + end);
            self.font_family(&css[start..end], offset + start);
            from = end;
        }
    }

    fn font_family(&mut self, value: &str, offset: usize) {
        let mut at = 0;
        for part in value.split(',') {
            let name = part.trim().trim_matches(['"', '\'']).trim();
            let start = offset + at + part.find(name).unwrap_or(0);
            at += part.len() + 1;
            let known = self.families.iter().any(|family| family.eq_ignore_ascii_case(name));
            if name.is_empty() || known || matches!(name, "sans-serif" | "inherit") {
                continue;
            }
            let first = self.families.first().map_or("sans-serif", String::as_str);
            let otherwise = format!("write `{first}`, or put the font's file into the booklet's folder `fonts`");
            self.findings.push(
                FONT_NOT_BUNDLED
                    .at(
                        self.page.at(start..start + name.len()),
                        format!("the font “{name}” is not bundled with the booklet"),
                    )
                    .hint(did_you_mean(name, self.families.iter().map(String::as_str), &otherwise)),
            );
        }
    }
}

/// `url(…)` to anything but a part of the same drawing, or a whole address.
fn outside_url(value: &str) -> Option<Range<usize>> {
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

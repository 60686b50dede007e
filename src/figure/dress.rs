//! The house style put on a drawing: the style sheet, the patterns, the symbols.

use super::markup::tag_length;
use crate::measure::{Exact, to_f64};
use crate::source::House;

/// The style sheet in the booklet's accent colour, and the definitions, as they stand in a drawing.
pub struct Dresser {
    style: String,
    definitions: String,
    /// What a label that is only measured needs of both.
    of_labels: String,
}

impl Dresser {
    /// The house's style in an accent colour (`#rrggbb`).
    pub fn new(house: &House, accent: &str) -> Dresser {
        let css = house.template("figures.css").replace("ACCENT", accent);
        let style = format!("<style>{css}</style>");
        let definitions = format!("<defs>{}</defs>", definitions(house.template("symbols.svg")));
        let own = rules_of("label", &css);
        let of_labels = match own.contains("url(") {
            true => format!("{style}{definitions}"),
            false => format!("<style>{own}</style>"),
        };
        Dresser { style, definitions, of_labels }
    }

    /// A drawing from its root's start tag and what stands inside it.
    pub fn dress(&self, root: &str, inside: &str) -> String {
        self.dress_text(&format!("{root}{inside}</svg>"), root.len())
    }

    /// A drawing that holds a label and nothing else, and is measured, not shown: a style sheet takes longer to read
    /// than a word.
    pub(super) fn dress_label(&self, root: &str, label: &str) -> String {
        format!("{root}{}{label}</svg>", self.of_labels)
    }

    /// A whole drawing, whose root's start tag ends at byte `end`.
    pub(super) fn dress_text(&self, text: &str, end: usize) -> String {
        let (before, after) = text.split_at(end);
        // An empty drawing (`<svg … />`) has nowhere to put them, and needs none.
        if before.ends_with("/>") {
            return text.to_owned();
        }
        format!("{before}{}{}{after}", self.style, self.definitions)
    }
}

/// A drawing with both sides on paper stated where the author left one out: the viewBox is then taken in
/// the drawing's unit, and its proportion is kept. Gives the text and where its root's start tag ends.
pub(super) fn with_paper_size(text: &str, root: roxmltree::Node<'_, '_>, unit: Exact) -> (String, usize) {
    let start = root.range().start;
    let end = start + tag_length(&text[start..]);
    let view = root.attribute("viewBox").and_then(|view| view.parse::<svgtypes::ViewBox>().ok());
    // A viewBox that is missing or cannot be read is told before anything is dressed.
    let Some(view) = view else { return (text.to_owned(), end) };
    let unit = to_f64(unit);
    let mut sides = String::new();
    for (side, length) in [("width", view.w), ("height", view.h)] {
        if root.attribute(side).is_none() {
            sides.push_str(&format!(" {side}=\"{:.4}mm\"", length * unit));
        }
    }
    let close = if text[..end].ends_with("/>") { end - 2 } else { end - 1 };
    (format!("{}{sides}{}", &text[..close], &text[close..]), end + sides.len())
}

/// The style sheet without the rules that are for other classes alone; all of it where that cannot be told at a glance.
fn rules_of(class: &str, css: &str) -> String {
    let (mut bare, mut rest) = (String::new(), css);
    while let Some((before, comment)) = rest.split_once("/*") {
        bare.push_str(before);
        rest = comment.split_once("*/").map_or("", |(_, after)| after);
    }
    bare.push_str(rest);
    let rules = || bare.split_inclusive('}');
    let quoted = |rule: &str| rule.matches(['"', '\'']).count() % 2 == 1;
    if bare.contains(['@', '\\']) || rules().any(quoted) {
        return css.to_owned();
    }
    let own = format!(".{class}");
    let other = |rule: &&str| {
        let selector = rule.split('{').next().unwrap_or("");
        selector.contains('.') && !selector.contains(&own) && !selector.contains([',', ':', '['])
    };
    rules().filter(|rule| !other(rule)).collect()
}

/// What stands inside `<defs>` of the symbol sheet.
fn definitions(sheet: &str) -> &str {
    let start = sheet.find("<defs>").map_or(0, |at| at + "<defs>".len());
    let end = sheet.rfind("</defs>").unwrap_or(sheet.len());
    sheet.get(start..end).unwrap_or("")
}

//! The house style put on a drawing: the style sheet, the patterns, the symbols.

use crate::source::House;

/// The style sheet in the booklet's accent colour, and the definitions, as they stand in a drawing.
pub struct Dresser {
    style: String,
    definitions: String,
}

impl Dresser {
    /// The house's style in an accent colour (`#rrggbb`).
    pub fn new(house: &House, accent: &str) -> Dresser {
        let css = house.template("figures.css").replace("ACCENT", accent);
        Dresser {
            style: format!("<style>{css}</style>"),
            definitions: format!("<defs>{}</defs>", definitions(house.template("symbols.svg"))),
        }
    }

    /// A drawing from its root's start tag and what stands inside it.
    pub fn dress(&self, root: &str, inside: &str) -> String {
        self.dress_text(&format!("{root}{inside}</svg>"), root.len())
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

/// What stands inside `<defs>` of the symbol sheet.
fn definitions(sheet: &str) -> &str {
    let start = sheet.find("<defs>").map_or(0, |at| at + "<defs>".len());
    let end = sheet.rfind("</defs>").unwrap_or(sheet.len());
    sheet.get(start..end).unwrap_or("")
}

//! The house style put on a bound diagram: the style sheet, the patterns, the symbols.

use crate::source::House;

/// The style sheet in the booklet's accent colour, and the definitions, as they stand in a drawing.
pub(super) struct Wardrobe {
    style: String,
    definitions: String,
}

impl Wardrobe {
    /// The house's style in an accent colour (`#rrggbb`).
    pub fn new(house: &House, accent: &str) -> Wardrobe {
        let css = house.template("figures.css").replace("ACCENT", accent);
        Wardrobe {
            style: format!("<style>{css}</style>"),
            definitions: format!("<defs>{}</defs>", definitions(house.template("symbols.svg"))),
        }
    }

    /// Puts both after the root's start tag, which ends at byte `end`.
    pub fn dress(&self, text: &str, end: usize) -> String {
        let (before, after) = text.split_at(end);
        // An empty drawing (`<svg … />`) has nowhere to put them, and needs none.
        if before.ends_with("/>") {
            return text.to_owned();
        }
        format!("{before}{}{}{after}", self.style, self.definitions)
    }
}

/// The house style for later stages that draw.
pub struct Dresser(Wardrobe);

impl Dresser {
    /// The house's style in an accent colour (`#rrggbb`).
    pub fn new(house: &House, accent: &str) -> Dresser {
        Dresser(Wardrobe::new(house, accent))
    }

    /// A drawing from its root's start tag and what stands inside it.
    pub fn dress(&self, root: &str, inside: &str) -> String {
        self.0.dress(&format!("{root}{inside}</svg>"), root.len())
    }
}

/// What stands inside `<defs>` of the symbol sheet.
fn definitions(sheet: &str) -> &str {
    let start = sheet.find("<defs>").map_or(0, |at| at + "<defs>".len());
    let end = sheet.rfind("</defs>").unwrap_or(sheet.len());
    sheet.get(start..end).unwrap_or("")
}

//! The house's own templates and fonts, built into the program; a booklet's own go first.

use std::path::Path;
use std::sync::Arc;

use super::{BookletFolder, Folder};

/// A file of the house or of a booklet.
#[derive(Debug, Clone)]
pub struct Asset {
    /// Its name, such as `booklet.typ`.
    pub name: String,
    /// Its bytes.
    pub bytes: Arc<[u8]>,
    /// Its path as people see it, when the booklet brought it; `None` for the house's own.
    pub own: Option<String>,
}

impl Asset {
    /// The text; empty when it is none.
    pub fn text(&self) -> &str {
        std::str::from_utf8(&self.bytes).unwrap_or("")
    }
}

/// Templates and fonts for one booklet.
#[derive(Debug, Clone)]
pub struct House {
    /// Typst templates, the diagrams' style and symbols, the words of the house.
    pub templates: Vec<Asset>,
    /// Font files, in a fixed order.
    pub fonts: Vec<Asset>,
}

macro_rules! built_in {
    ($folder:literal: $($name:literal),+ $(,)?) => {
        &[$(($name, include_bytes!(concat!("../../", $folder, "/", $name)).as_slice())),+]
    };
}

const TEMPLATES: &[(&str, &[u8])] = built_in!("templates":
    "back.typ", "before.typ", "booklet.typ", "cover.typ", "cutting.typ", "house.typ", "marks.typ", "page.typ",
    "prose.typ", "sheets.typ", "step.typ", "tables.typ", "values.typ",
    "figures.css", "symbols.svg", "labels-en.json",
);

const FONTS: &[(&str, &[u8])] = built_in!("fonts":
    "NotoSans-Regular.ttf", "NotoSans-Italic.ttf", "NotoSans-SemiBold.ttf",
    "NotoSans-SemiBoldItalic.ttf", "NotoSans-Bold.ttf",
);

impl House {
    /// The house's own files.
    pub fn plain() -> House {
        let assets = |files: &[(&str, &[u8])]| {
            files
                .iter()
                .map(|(name, bytes)| Asset { name: (*name).to_owned(), bytes: Arc::from(*bytes), own: None })
                .collect()
        };
        House { templates: assets(TEMPLATES), fonts: assets(FONTS) }
    }

    /// The house's files, with those of the booklet's folders `templates` and `fonts` before them.
    pub fn of(folder: &Folder, booklet: &BookletFolder) -> House {
        let mut house = House::plain();
        let own = |kind: &str, endings: &[&str]| -> Vec<Asset> {
            let path = booklet.path.join(kind);
            let names = folder.list(&path);
            let wanted = |name: &String| endings.iter().any(|ending| name.ends_with(ending));
            names.into_iter().filter(wanted).filter_map(|name| read(folder, &path, name)).collect()
        };
        for asset in own("templates", &[".typ", ".css", ".svg", ".json"]) {
            house.templates.retain(|known| known.name != asset.name);
            house.templates.push(asset);
        }
        let mut fonts = own("fonts", &[".ttf", ".otf"]);
        fonts.append(&mut house.fonts);
        house.fonts = fonts;
        house
    }

    /// A template by its name; empty when there is none.
    pub fn template(&self, name: &str) -> &str {
        self.templates.iter().find(|asset| asset.name == name).map_or("", Asset::text)
    }
}

fn read(folder: &Folder, path: &Path, name: String) -> Option<Asset> {
    let path = path.join(&name);
    let bytes = folder.picture(&path).ok()?;
    Some(Asset { own: Some(folder.show(&path)), bytes: Arc::from(bytes), name })
}

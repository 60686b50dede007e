//! The house's own templates and fonts, built into the program; a booklet's own go first.

use std::path::Path;
use std::sync::Arc;

use super::folder::Folder;
use super::read_fault::ReadFault;
use super::shelf::BookletFolder;

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
    "back.typ", "before.typ", "booklet.typ", "cover.typ", "cutting.typ", "errata.typ", "house.typ", "marks.typ", "page.typ",
    "prose.typ", "sheets.typ", "step.typ", "tables.typ", "thing.typ", "values.typ",
    "page.html", "page-section.html", "page-step.html", "page-tables.html", "page-words.html", "page.css", "page.js",
    "proof.typ", "proof.html", "proof-rows.html", "proof.css", "proof.js",
    "figures.css", "symbols.svg", "labels-en.json", "needs-en.json", "vocabulary-en.json",
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

    /// The house's files, with those of the booklet's folders `templates` and `fonts` before them; and
    /// those of its files that cannot be used.
    pub fn of(folder: &Folder, booklet: &BookletFolder) -> (House, Vec<AssetFault>) {
        let mut house = House::plain();
        let mut faults = Vec::new();
        let mut own = |kind: &str, endings: &[&str], other: &[&str], refuse: fn(String) -> AssetFault| -> Vec<Asset> {
            let path = booklet.path.join(kind);
            let mut assets = Vec::new();
            for name in folder.list(&path) {
                let ends = |endings: &[&str]| endings.iter().any(|ending| name.to_lowercase().ends_with(ending));
                let shown = folder.show(&path.join(&name));
                if ends(other) {
                    faults.push(refuse(shown));
                } else if ends(endings) {
                    match read(folder, &path, name) {
                        Ok(asset) => assets.push(asset),
                        Err(fault) => faults.push(AssetFault::read(shown, &fault)),
                    }
                }
            }
            assets
        };
        let (templates, mut fonts) = (
            own("templates", &[".typ", ".css", ".svg", ".json", ".html"], &[".js", ".mjs"], AssetFault::script),
            own("fonts", &[".ttf", ".otf"], &[".ttc", ".otc", ".woff", ".woff2"], AssetFault::font),
        );
        for asset in templates {
            match std::str::from_utf8(&asset.bytes) {
                Ok(_) => {
                    house.templates.retain(|known| known.name != asset.name);
                    house.templates.push(asset);
                }
                Err(error) => {
                    let fault = ReadFault::NotUtf8(error.valid_up_to());
                    faults.push(AssetFault::read(asset.own.unwrap_or(asset.name), &fault));
                }
            }
        }
        fonts.append(&mut house.fonts);
        house.fonts = fonts;
        (house, faults)
    }

    /// A template by its name; empty when there is none.
    pub fn template(&self, name: &str) -> &str {
        self.templates.iter().find(|asset| asset.name == name).map_or("", Asset::text)
    }
}

/// A file of the booklet's folders `templates` and `fonts` that cannot be used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AssetFault {
    /// Its path as people see it.
    pub path: String,
    /// What is wrong, in a sentence.
    pub message: String,
    /// What to do.
    pub hint: String,
}

impl AssetFault {
    fn read(path: String, fault: &ReadFault) -> AssetFault {
        AssetFault { message: format!("`{path}` {}", fault.message()), hint: fault.hint(), path }
    }

    fn font(path: String) -> AssetFault {
        let message = format!("`{path}` is a font of a kind that cannot be used");
        AssetFault { path, message, hint: "save it as a single font, with the ending .ttf or .otf".into() }
    }

    fn script(path: String) -> AssetFault {
        let message = format!("`{path}` is a script, and a booklet runs none");
        AssetFault { path, message, hint: "take it out: the page's look is in its .html and .css templates".into() }
    }
}

fn read(folder: &Folder, path: &Path, name: String) -> Result<Asset, ReadFault> {
    let path = path.join(&name);
    let bytes = folder.picture(&path)?;
    Ok(Asset { own: Some(folder.show(&path)), bytes: Arc::from(bytes), name })
}

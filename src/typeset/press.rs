//! One edition on one paper, set and written as PDF.

use std::collections::BTreeMap;

use serde_json::{Value, json};
use typst::diag::{Severity, SourceDiagnostic};
use typst::foundations::Smart;
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};

use super::data::Sheaf;
pub use super::fault::PressFault;
use super::finish::finish;
use super::fold::{fold, sides};
use super::world::{Desk, Shop};
use crate::figure::Letters;
use crate::sheets::{Note, NoteSort, SheetSet};
use crate::source::{House, Sum};

/// A booklet as printed.
#[derive(Debug, Clone)]
pub struct Printed {
    /// The file.
    pub pdf: Vec<u8>,
    /// How many pages it has.
    pub pages: usize,
    /// What the typesetter grumbles at.
    pub warnings: Vec<PressFault>,
}

/// The typesetter with templates and fonts laid out; may be shared by threads.
pub struct Press {
    shop: Shop,
    letters: Letters,
}

impl Press {
    /// Lays out templates and fonts.
    pub fn new(house: &House) -> Press {
        Press { shop: Shop::new(house), letters: Letters::new(house) }
    }

    /// The checksum of templates and fonts, to which that of what they set is added.
    pub(super) fn shop_sum(&self) -> Sum {
        self.shop.sum.clone()
    }

    /// Sets one edition, and writes nothing.
    pub(super) fn document(&self, sheaf: &Sheaf) -> Result<PagedDocument, Vec<PressFault>> {
        let mut files = sheaf.files.clone();
        files.insert("/data.json".into(), sheaf.data.to_string().into_bytes());
        let desk = Desk::new(&self.shop, "/booklet.typ", self.drawn(files));
        let desk = desk.ok_or_else(|| vec![PressFault::plain("there is no template")])?;
        let set = typst::compile::<PagedDocument>(&desk);
        set.output.map_err(|errors| errors.iter().map(|one| PressFault::of(one, &desk)).collect())
    }

    /// Sets and writes one edition.
    pub fn print(&self, sheaf: &Sheaf) -> Result<Printed, Vec<PressFault>> {
        let mut files = sheaf.files.clone();
        files.insert("/data.json".into(), sheaf.data.to_string().into_bytes());
        let Some(sheet) = sheaf.paper.folded_sheet() else { return self.set("/booklet.typ", files, true) };
        let mut printed = self.set("/booklet.typ", files, false)?;
        printed.pdf = fold(&printed.pdf, sheet).map_err(|message| vec![PressFault::plain(message)])?;
        printed.pages = sides(printed.pages).len();
        Ok(printed)
    }

    /// Sets and writes drawings as large as their pages. `about` holds the title, the designer, the
    /// language and the date of the edition, as the data of an edition has them.
    pub fn print_sheets(&self, sheets: &SheetSet, about: &Value) -> Result<Printed, Vec<PressFault>> {
        let mut files = BTreeMap::new();
        let mut pages = Vec::new();
        for (at, page) in sheets.pages.iter().enumerate() {
            let path = format!("/sheets/{at}.svg");
            let note = |note: &Note| {
                let sort = match note.sort {
                    NoteSort::Name => "name",
                    NoteSort::Heading => "heading",
                    NoteSort::Prose => "prose",
                };
                json!({ "x": note.at.0, "y": note.at.1, "text": note.text, "size": note.size, "sort": sort })
            };
            let notes: Vec<Value> = page.notes.iter().map(note).collect();
            pages.push(json!({ "path": path, "name": page.name, "alt": page.alt, "notes": notes }));
            files.insert(path, page.svg.clone().into_bytes());
        }
        let mut data = about.clone();
        data["width"] = json!(sheets.size.0);
        data["height"] = json!(sheets.size.1);
        data["pages"] = json!(pages);
        files.insert("/data.json".into(), data.to_string().into_bytes());
        self.set("/sheets.typ", files, true)
    }

    /// The files of a document with drawings as they are painted here: letter by letter.
    fn drawn(&self, mut files: BTreeMap<String, Vec<u8>>) -> BTreeMap<String, Vec<u8>> {
        for (_, bytes) in files.iter_mut().filter(|(path, _)| path.ends_with(".svg")) {
            let made = std::str::from_utf8(bytes).ok().map(|svg| self.letters.edges_beneath(svg));
            if let Some(made) = made {
                *bytes = made.into_bytes();
            }
        }
        files
    }

    /// Sets and writes a document that is no booklet: the template of that name, which walks `data` and finds `files`.
    pub fn print_document(
        &self,
        name: &str,
        data: &Value,
        files: &BTreeMap<String, Vec<u8>>,
    ) -> Result<Printed, Vec<PressFault>> {
        let mut files = files.clone();
        files.insert("/data.json".into(), data.to_string().into_bytes());
        self.set(&format!("/{name}.typ"), files, true)
    }

    /// Sets one document; tagged for PDF/UA-1 (ISO 14289-1), unless its pages are to be laid on sheets.
    pub(super) fn set(
        &self,
        main: &str,
        files: BTreeMap<String, Vec<u8>>,
        tagged: bool,
    ) -> Result<Printed, Vec<PressFault>> {
        let desk = Desk::new(&self.shop, main, self.drawn(files))
            .ok_or_else(|| vec![PressFault::plain("there is no template")])?;
        let faults = |found: &[SourceDiagnostic]| -> Vec<PressFault> {
            found.iter().map(|one| PressFault::of(one, &desk)).collect()
        };
        let set = typst::compile::<PagedDocument>(&desk);
        let document = set.output.map_err(|errors| faults(&errors))?;
        let standards = PdfStandards::new(if tagged { &[PdfStandard::Ua_1] } else { &[] })
            .map_err(|error| vec![PressFault::plain(error.message().to_string())])?;
        let options = PdfOptions {
            ident: Smart::Auto,
            creator: Smart::Custom(Some(concat!("notchbook ", env!("CARGO_PKG_VERSION")).to_owned())),
            standards,
            tagged,
            ..PdfOptions::default()
        };
        let pdf = typst_pdf::pdf(&document, &options).map_err(|errors| faults(&errors))?;
        let pdf = finish(&pdf).map_err(|message| vec![PressFault::plain(message)])?;
        let grumbles: Vec<SourceDiagnostic> =
            set.warnings.iter().filter(|one| one.severity == Severity::Warning).cloned().collect();
        Ok(Printed { pdf, pages: document.pages().len(), warnings: faults(&grumbles) })
    }
}

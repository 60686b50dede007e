//! One edition on one paper, set and written as PDF.

use typst::diag::{Severity, SourceDiagnostic};
use typst::foundations::Smart;
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};

pub use super::fault::PressFault;
use super::data::Sheaf;
use super::finish::finish;
use super::paper::Paper;
use super::world::{Desk, Shop};
use crate::source::House;

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
}

impl Press {
    /// Lays out templates and fonts.
    pub fn new(house: &House) -> Press {
        Press { shop: Shop::new(house) }
    }

    /// Sets and writes one edition: tagged, for PDF/UA-1 (ISO 14289-1).
    pub fn print(&self, sheaf: &Sheaf, paper: Paper) -> Result<Printed, Vec<PressFault>> {
        let mut files = sheaf.files.clone();
        files.insert("/data.json".into(), sheaf.for_paper(paper));
        let desk = Desk::new(&self.shop, files).ok_or_else(|| vec![PressFault::plain("there is no template")])?;
        let faults = |found: &[SourceDiagnostic]| -> Vec<PressFault> {
            found.iter().map(|one| PressFault::of(one, &desk)).collect()
        };
        let set = typst::compile::<PagedDocument>(&desk);
        let document = set.output.map_err(|errors| faults(&errors))?;
        let standards = PdfStandards::new(&[PdfStandard::Ua_1])
            .map_err(|error| vec![PressFault::plain(error.message().to_string())])?;
        let options = PdfOptions {
            ident: Smart::Auto,
            creator: Smart::Custom(Some(concat!("notchbook ", env!("CARGO_PKG_VERSION")).to_owned())),
            standards,
            ..PdfOptions::default()
        };
        let pdf = typst_pdf::pdf(&document, &options).map_err(|errors| faults(&errors))?;
        let pdf = finish(&pdf).map_err(|message| vec![PressFault::plain(message)])?;
        let grumbles: Vec<SourceDiagnostic> =
            set.warnings.iter().filter(|one| one.severity == Severity::Warning).cloned().collect();
        Ok(Printed { pdf, pages: document.pages().len(), warnings: faults(&grumbles) })
    }
}

//! The proof of a finished workshop, and its two files.

use serde_json::Value as Json;
use sha2::{Digest, Sha256};

use super::workshop::Workshop;
use crate::diag::{Findings, Waiver};
use crate::manifest::Manifest;
use crate::proof::{Evidence, Proof, proof};
use crate::sheets::SheetPaper;
use crate::syntax;
use crate::typeset::{Paper, Press, PressFault, Printed};
use crate::web::{Document, document};

/// What the house calls its templates.
const NAME: &str = "proof";

impl Workshop {
    /// Everything that an editor looks at; with an older edition and this one, what has changed as well. `None` where there
    /// are no facts to work with.
    pub fn proof(&self, since: Option<(&Manifest, &Manifest)>) -> Option<Proof> {
        let draft = self.draft()?;
        let (books, all) = self.books(SheetPaper::A4)?;
        // What is wrong with the vocabulary has been told.
        let mut unheard = Findings::default();
        let vocabulary = syntax::read_vocabulary(&self.house, &draft.facts.language.text, &self.sources, &mut unheard);
        let mut waivers: Vec<&Waiver> = Vec::new();
        for waiver in draft.waivers.iter().chain(&self.figures.waivers) {
            if !waivers.contains(&waiver) {
                waivers.push(waiver);
            }
        }
        Some(proof(&Evidence {
            draft,
            sources: &self.sources,
            editions: self.editions(),
            books: &books,
            all: &all,
            words: &self.house_words(),
            vocabulary: &vocabulary,
            figures: &self.figures,
            waivers,
            report: &self.report,
            unchecked: &self.unchecked,
            ran: &self.ran,
            since,
        }))
    }

    /// The proof as one file of HTML.
    ///
    /// # Errors
    /// When a template, the house's or the booklet's own, cannot be used.
    pub fn proof_page(&self, proof: &Proof) -> Result<String, PressFault> {
        let data = proof.data();
        // What was ticked in another proof is not ticked in this one.
        let told = Sha256::digest(data.to_string().as_bytes());
        let told: String = told.iter().take(8).map(|byte| format!("{byte:02x}")).collect();
        let kept = format!("{} {} {told}", proof.record.booklet, proof.record.edition);
        let wanted = Document { name: NAME, kept: &kept, data: &data, files: &proof.files };
        document(&wanted, &self.house, &self.labels.words).map_err(|fault| PressFault {
            message: fault.message,
            hint: String::new(),
            place: fault.place.map(|(template, bytes)| (format!("/{template}"), bytes)),
        })
    }

    /// The proof as a PDF.
    ///
    /// # Errors
    /// What the typesetter complains of.
    pub fn proof_pdf(&self, press: &Press, proof: &Proof, paper: Paper) -> Result<Printed, Vec<PressFault>> {
        let mut data = proof.data();
        data["paper"] = paper.described();
        data["labels"] = Json::Object(self.labels.words.clone());
        press.print_document(NAME, &data, &proof.files)
    }
}

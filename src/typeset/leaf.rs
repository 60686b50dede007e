//! A page of plain words as PDF.

use std::collections::BTreeMap;

use serde_json::{Value as Json, json};

use super::fault::PressFault;
use super::press::{Press, Printed};
use crate::book::{Book, Leaf, Line};

impl Press {
    /// Sets and writes a page of plain words that goes with a book.
    ///
    /// # Errors
    /// What the typesetter complains of.
    pub fn print_leaf(&self, leaf: &Leaf, book: &Book) -> Result<Printed, Vec<PressFault>> {
        let line = |line: &Line| -> Json {
            let (kind, words) = match line {
                Line::Title(words) => ("title", words),
                Line::Heading(words) => ("heading", words),
                Line::Words(words) => ("words", words),
                Line::Item(words) => ("item", words),
                Line::Below(words) => ("below", words),
            };
            json!({ "kind": kind, "words": words })
        };
        let title = leaf.lines().iter().find_map(|line| match line {
            Line::Title(words) => Some(words.as_str()),
            _ => None,
        });
        let data = json!({
            "title": title.unwrap_or(&book.title),
            "designer": book.designer,
            "language": book.language,
            "date_iso": book.date,
            "accent": book.accent,
            "lines": leaf.lines().iter().map(line).collect::<Vec<_>>(),
        });
        self.print_document("errata", &data, &BTreeMap::new())
    }
}

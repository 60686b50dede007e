//! What the typesetter complains of, led back to the author's files.

use std::collections::BTreeMap;

use super::workshop::Workshop;
use crate::diag::Finding;
use crate::faults::{TYPESETTING_DOUBTFUL, TYPESETTING_FAILED};
use crate::source::Span;
use crate::typeset::PressFault;

impl Workshop {
    /// A fault of the typesetter as a finding at the author's file: the diagram or template it
    /// complains of, or, when it names neither, the first template of the booklet's own, or the booklet's title.
    pub fn press_finding(
        &self,
        fault: &PressFault,
        origins: &BTreeMap<String, String>,
        size: Option<usize>,
    ) -> Option<Finding> {
        let title = self.draft()?.facts.title.span;
        let own = self.house.templates.iter().find_map(|asset| self.sources.by_path(asset.own.as_ref()?));
        let unplaced = own.map_or(title, |file| Span::new(file, 0..0));
        let span = self.press_place(fault, origins).unwrap_or(unplaced);
        let hint = if fault.hint.is_empty() {
            "take out what was changed last and build again; a booklet's own template or picture is the likeliest cause"
        } else {
            &fault.hint
        };
        let finding = TYPESETTING_FAILED.at(span, format!("the page cannot be set: {}", fault.message)).hint(hint);
        Some(match size {
            Some(size) => finding.in_size(size, ""),
            None => finding,
        })
    }

    /// What the typesetter warns of in a file of the booklet's own; `None` for the house's files.
    pub fn press_warning(&self, fault: &PressFault, origins: &BTreeMap<String, String>) -> Option<Finding> {
        let span = self.press_place(fault, origins)?;
        let hint = if fault.hint.is_empty() { "mend it in the booklet's own template" } else { &fault.hint };
        Some(TYPESETTING_DOUBTFUL.at(span, format!("the typesetter warns: {}", fault.message)).hint(hint))
    }

    /// The author's file behind a fault of the typesetter; `None` when there is none.
    fn press_place(&self, fault: &PressFault, origins: &BTreeMap<String, String>) -> Option<Span> {
        let (path, range) = fault.place.as_ref()?;
        if let Some(file) = origins.get(path).and_then(|path| self.sources.by_path(path)) {
            let end = self.sources.file(file).text.find('>').map_or(0, |at| at + 1);
            return Some(Span::new(file, 0..end));
        }
        let own = self.house.templates.iter().find(|asset| format!("/{}", asset.name) == *path)?;
        Some(Span::new(self.sources.by_path(own.own.as_ref()?)?, range.clone()))
    }
}

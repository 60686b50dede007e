//! The pages of verbs, from the files that define them.

use super::chapter::Chapter;
use super::page::ManualPage;
use crate::construct::{VERBS, VerbEntry};

/// The pages of all verbs.
pub(super) fn pages() -> Vec<ManualPage> {
    VERBS.iter().map(|entry| verb(entry)).collect()
}

fn verb(entry: &VerbEntry) -> ManualPage {
    let page = entry.page();
    ManualPage {
        name: entry.verb.word().to_owned(),
        sort: "a verb of work".to_owned(),
        chapter: Chapter::Verbs,
        section: String::new(),
        summary: page.summary,
        text: page.text,
    }
}

//! The pages of keys and of kinds, from the files beside their readers.

use super::chapter::Chapter;
use super::markdown::{first_paragraph, under};
use super::page::ManualPage;
use crate::syntax::{RECORDS, Record};

/// The pages of all keys.
pub(super) fn pages() -> Vec<ManualPage> {
    RECORDS.iter().flat_map(of_record).collect()
}

fn of_record(record: &Record) -> Vec<ManualPage> {
    let records = under(record.page, "# ");
    let Some((_, body)) = records.into_iter().find(|(heading, _)| heading == record.what) else { return Vec::new() };
    let (chapter, sort) = match record.what {
        "a kind of notion" => (Chapter::Notions, record.what.to_owned()),
        what => (Chapter::Keys, format!("a key of {what}")),
    };
    let page = |(name, text): (String, String)| ManualPage {
        name,
        sort: sort.clone(),
        chapter,
        section: if chapter == Chapter::Keys { sort.replacen("a key of", "Keys of", 1) } else { String::new() },
        summary: first_paragraph(&text),
        text,
    };
    under(&body, "## ").into_iter().map(page).collect()
}

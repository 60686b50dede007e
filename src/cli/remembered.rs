//! A run that would do what an earlier one did, of the very same files, is told again and not done again.

use std::path::Path;

use serde::{Deserialize, Serialize};

use crate::out::{self, Cache, OutFault};
use crate::source::{Folder, Look, Sum};

/// What an earlier run looked at, made and told.
#[derive(Debug, Serialize, Deserialize)]
pub(super) struct Record {
    /// All that it looked at, and what it saw.
    pub looks: Vec<(Look, String)>,
    /// What it told, a paragraph each, colours included.
    pub told: Vec<String>,
    /// The files that it put in their place, and their checksums.
    pub files: Vec<(String, String)>,
}

/// Where the record of a run lies: by all that the run was asked for.
pub(super) fn key(program: &str, asked: &[&str]) -> String {
    asked.iter().fold(Sum::new().with("a run").with(program), |sum, part| sum.with(part)).finish()
}

/// The record of a run that would do the same again: all that it looked at is as it was, and so is all that it made.
///
/// # Errors
/// When the folder of what it made cannot be read.
pub(super) fn recall(
    cache: &Cache,
    key: &str,
    folder: &Folder,
    made: &Path,
) -> Result<Option<Record>, OutFault> {
    let record = cache.recall(key).and_then(|bytes| serde_json::from_slice::<Record>(&bytes).ok());
    let Some(record) = record.filter(|record| folder.is_still(&record.looks)) else { return Ok(None) };
    Ok(out::stands(made, &record.files)?.then_some(record))
}

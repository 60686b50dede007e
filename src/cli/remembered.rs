//! A build that would do what an earlier one did, of the very same files, is told again and not done again.

use std::path::Path;

use serde::{Deserialize, Serialize};

use super::Refusal;
use super::kept::Kept;
use crate::out;
use crate::source::{BookletFolder, Folder, Look, Sum};

/// What a build made, and how it told of it.
#[derive(Debug, Default, Serialize, Deserialize)]
pub(super) struct Made {
    /// What it told, a paragraph each, colours included.
    pub told: Vec<String>,
    /// The files that it put in their place, from the booklet's folder of files, and their checksums.
    pub files: Vec<(String, String)>,
}

/// What an earlier build looked at and made.
#[derive(Debug, Serialize, Deserialize)]
struct Record {
    /// All that it looked at, and what it saw.
    looks: Vec<(Look, String)>,
    made: Made,
}

/// Builds as they were asked for.
pub(super) struct Memory<'a> {
    /// The cache that their records lie in.
    pub kept: &'a Kept,
    /// All that a build was asked for, the look of what it tells included.
    pub asked: String,
    /// Where its folders go.
    pub out: &'a Path,
}

impl Memory<'_> {
    /// What an earlier build made of a booklet, where another would make the very same: all that it looked at is as it
    /// was, and all that it made stands in its place.
    ///
    /// # Errors
    /// When the folder of what it made cannot be read.
    pub fn recall(&self, folder: &Folder, booklet: &BookletFolder) -> Result<Option<Made>, Refusal> {
        let bytes = self.kept.recall(&self.made_of(folder, booklet));
        // What cannot be read is of another time, and is made anew.
        let record = bytes.and_then(|bytes| serde_json::from_slice::<Record>(&bytes).ok());
        let Some(record) = record.filter(|record| folder.is_still(&record.looks)) else { return Ok(None) };
        let stands = out::stands(&self.out.join(&booklet.name), &record.made.files)?;
        Ok(stands.then_some(record.made))
    }

    /// Keeps what a build made, and what it looked at.
    pub fn keep(&self, folder: &Folder, booklet: &BookletFolder, looks: Vec<(Look, String)>, made: Made) {
        self.kept.keep_record(&self.made_of(folder, booklet), &Record { looks, made });
    }

    fn made_of(&self, folder: &Folder, booklet: &BookletFolder) -> String {
        let root = folder.root().to_string_lossy();
        let sum = Sum::new().with("a build").with(&self.asked).with(root.as_bytes());
        sum.with(folder.shown().to_string_lossy().as_bytes()).with(booklet.path.to_string_lossy().as_bytes()).finish()
    }
}

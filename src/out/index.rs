//! The list of what this program made in a folder, with a checksum of each file: what is not in it is not touched.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use serde::{Deserialize, Serialize};

use super::fault::{OutFault, unread};
use super::file::{NewFile, Origin};
use crate::source::sha256;

/// What the list is called.
pub(super) const NAME: &str = ".notchbook-made.json";

/// A file of the list.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub(super) struct Entry {
    pub sha256: String,
    #[serde(flatten)]
    pub origin: Origin,
}

/// The list.
#[derive(Debug, Default, Serialize, Deserialize)]
pub(super) struct Index {
    /// The program that wrote it.
    made_by: String,
    files: BTreeMap<String, Entry>,
}

impl Index {
    /// The list in a folder; empty where there is none.
    pub fn read(folder: &Path) -> Result<Index, OutFault> {
        let place = folder.join(NAME);
        let text = match fs::read_to_string(&place) {
            Ok(text) => text,
            Err(error) if error.kind() == std::io::ErrorKind::NotFound => return Ok(Index::default()),
            Err(error) => return Err(unread(&place, &error.to_string())),
        };
        serde_json::from_str(&text).map_err(|error| {
            let fact = format!("`{}` is damaged: {error}", place.display());
            OutFault::new(fact, "take the whole folder away, or name another with --out")
        })
    }

    /// The list of new files.
    pub fn of(files: &[NewFile]) -> Index {
        let entry =
            |file: &NewFile| (file.path.clone(), Entry { sha256: sha256(&file.bytes), origin: file.origin.clone() });
        let made_by = concat!("notchbook ", env!("CARGO_PKG_VERSION")).to_owned();
        Index { made_by, files: files.iter().map(entry).collect() }
    }

    /// Takes over the entries of files that stay.
    pub fn keep(&mut self, old: &Index, kept: &[String]) {
        let stays = kept.iter().filter_map(|path| Some((path.clone(), old.entry(path)?.clone())));
        self.files.extend(stays);
    }

    pub fn entry(&self, path: &str) -> Option<&Entry> {
        self.files.get(path)
    }

    /// As it is written, with a line end.
    pub fn to_json(&self) -> String {
        serde_json::to_string_pretty(self).unwrap_or_default() + "\n"
    }
}

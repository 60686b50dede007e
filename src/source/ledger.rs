//! What a run looked at in a folder, so that a later one can tell whether all of it is still as it was.

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::{Arc, Mutex, PoisonError};

use serde::{Deserialize, Serialize};

use super::read_fault::ReadFault;
use super::sum::{Sum, sha256};

/// What was looked for.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Look {
    /// A file with at most so many bytes.
    File {
        /// The way to it from the folder.
        path: String,
        /// The most bytes that were let in.
        most: u64,
    },
    /// The names of the files in a folder.
    List {
        /// The way to it from the folder.
        path: String,
    },
    /// The names of the folders in the folder itself.
    Folders,
}

/// All that was looked at, with a checksum of what was seen; copies of it are one and the same.
#[derive(Debug, Clone, Default)]
pub struct Ledger(Arc<Mutex<BTreeMap<Look, String>>>);

impl Ledger {
    /// What was looked at until now, and what was seen.
    pub fn looks(&self) -> Vec<(Look, String)> {
        let looks = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        looks.iter().map(|(look, saw)| (look.clone(), saw.clone())).collect()
    }

    pub(super) fn file(&self, path: &Path, most: u64, seen: &Result<Vec<u8>, ReadFault>) {
        self.write(Look::File { path: text(path), most }, saw_file(seen));
    }

    pub(super) fn list(&self, path: &Path, names: &[String]) {
        self.write(Look::List { path: text(path) }, saw_names(names));
    }

    pub(super) fn folders(&self, names: &[String]) {
        self.write(Look::Folders, saw_names(names));
    }

    /// A file that changes while a run looks at it twice is written down with neither: no later run then takes it for
    /// unchanged.
    fn write(&self, look: Look, saw: String) {
        let mut looks = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let known = looks.entry(look).or_insert_with(|| saw.clone());
        if *known != saw {
            known.clear();
        }
    }
}

/// A path as it is written down; one that is no text comes out as it never is asked for, and is looked at anew.
fn text(path: &Path) -> String {
    path.to_string_lossy().into_owned()
}

pub(super) fn saw_file(seen: &Result<Vec<u8>, ReadFault>) -> String {
    match seen {
        Ok(bytes) => sha256(bytes),
        Err(fault) => format!("it {}", fault.message()),
    }
}

pub(super) fn saw_names(names: &[String]) -> String {
    let mut sum = Sum::new();
    names.iter().for_each(|name| sum.take(name));
    sum.finish()
}

//! What was made once and is kept for the next run: safe to delete, and never trusted unseen.
//!
//! An entry is named by the checksum of all that it was made from, the program's own build included, and begins with the
//! checksum of what it holds: one that is damaged is made anew. It is written beside its place and put there in one step,
//! so that two programs at once do no harm.

use std::fs::{self, File};
use std::io::Write;
use std::path::{Path, PathBuf};
use std::time::UNIX_EPOCH;

use super::fault::{OutFault, unread, unwritten};
use crate::source::sha256;

/// The most bytes that are kept; what was made longest ago goes first.
const MOST: u64 = 1_000_000_000;
/// How many letters the checksum of an entry has.
const SUM: usize = 64;

/// A folder of entries.
#[derive(Debug, Clone)]
pub struct Cache {
    folder: PathBuf,
}

/// What tells this build of the program from any other: its version, and the size and the time of its file.
pub fn program() -> String {
    let file = std::env::current_exe().and_then(fs::metadata);
    let of = file.map(|about| {
        let time = about.modified().ok().and_then(|time| time.duration_since(UNIX_EPOCH).ok());
        format!("{} {}", about.len(), time.map_or(0, |time| time.as_nanos()))
    });
    format!("notchbook {} {}", env!("CARGO_PKG_VERSION"), of.unwrap_or_default())
}

impl Cache {
    /// The cache in a folder, which need not be there yet.
    pub fn at(folder: &Path) -> Cache {
        Cache { folder: folder.to_path_buf() }
    }

    /// What is kept under a key; `None` where nothing is, or where it is damaged.
    pub fn recall(&self, key: &str) -> Option<Vec<u8>> {
        let place = self.place(key);
        let mut bytes = fs::read(&place).ok()?;
        if bytes.len() < SUM {
            return None;
        }
        let held = bytes.split_off(SUM);
        if sha256(&held).as_bytes() != bytes {
            return None;
        }
        Some(held)
    }

    /// Keeps bytes under a key.
    ///
    /// # Errors
    /// When the folder cannot be written.
    pub fn keep(&self, key: &str, bytes: &[u8]) -> Result<(), OutFault> {
        let place = self.place(key);
        let above = place.parent().unwrap_or(&self.folder);
        fs::create_dir_all(above).map_err(|error| unwritten(above, &error))?;
        let mut file = tempfile::NamedTempFile::new_in(above).map_err(|error| unwritten(above, &error))?;
        // Held as long as it is written: what nobody holds was left by a run that was stopped.
        file.as_file().lock().map_err(|error| unwritten(above, &error))?;
        let written = file.write_all(sha256(bytes).as_bytes()).and_then(|()| file.write_all(bytes));
        written.map_err(|error| unwritten(&place, &error))?;
        file.persist(&place).map_err(|error| unwritten(&place, &error.error))?;
        Ok(())
    }

    /// Takes out what runs that were stopped left, and what was made longest ago, until what stays is no more than is
    /// kept.
    ///
    /// # Errors
    /// When the folder cannot be read.
    pub fn trim(&self) -> Result<(), OutFault> {
        if self.folder.symlink_metadata().is_err() {
            return Ok(());
        }
        let mut entries = Vec::new();
        for entry in walkdir::WalkDir::new(&self.folder).min_depth(2).max_depth(2) {
            let entry = entry.map_err(|error| unread(&self.folder, &error.to_string()))?;
            if is_left(entry.path()) {
                // Where it cannot be removed, the next run does it.
                let _ = fs::remove_file(entry.path());
                continue;
            }
            // Another program may have taken it out in this moment.
            if let Ok(about) = entry.metadata() {
                entries.push((about.modified().unwrap_or(UNIX_EPOCH), about.len(), entry.into_path()));
            }
        }
        let mut all: u64 = entries.iter().map(|(_, size, _)| size).sum();
        entries.sort();
        for (_, size, place) in entries {
            if all <= MOST {
                break;
            }
            if fs::remove_file(&place).is_ok() {
                all -= size;
            }
        }
        Ok(())
    }

    /// Where an entry lies. Entries are shared out among folders, as some systems are slow where many files lie in one.
    fn place(&self, key: &str) -> PathBuf {
        let (first, rest) = key.split_at_checked(2).unwrap_or(("00", key));
        self.folder.join(first).join(rest)
    }
}

/// Whether a file was begun by a run that was stopped: it is no entry, and nobody holds it.
fn is_left(place: &Path) -> bool {
    let name = place.file_name().and_then(|name| name.to_str()).unwrap_or_default();
    let is_entry = name.len() == SUM - 2 && name.bytes().all(|byte| byte.is_ascii_hexdigit());
    !is_entry && File::open(place).is_ok_and(|file| file.try_lock().is_ok())
}

//! A folder beside the place of an edition in which it is written whole; and what runs that were stopped left of theirs.

use std::fs::{self, File, OpenOptions, TryLockError};
use std::io::Write;
use std::path::{Path, PathBuf};

use super::fault::{OutFault, unread, unwritten};

/// What all of this program's own files and folders beside an edition begin with.
pub(super) const OWN: &str = ".notchbook-";
/// What the name of a lock ends with: its folder is in use as long as it is held.
const LOCK: &str = ".lock";

/// A folder that is being written.
pub(super) struct Stage {
    pub folder: PathBuf,
    lock: PathBuf,
    /// Held until the run ends, however it ends.
    held: File,
}

impl Stage {
    /// Makes an empty folder in `home`.
    pub fn open(home: &Path) -> Result<Stage, OutFault> {
        let mut builder = tempfile::Builder::new();
        builder.prefix(OWN).suffix(LOCK);
        let lock = builder.tempfile_in(home).map_err(|error| unwritten(home, &error))?;
        let (held, lock) = lock.keep().map_err(|error| unwritten(home, &error.error))?;
        held.lock().map_err(|error| unwritten(&lock, &error))?;
        let folder = lock.with_extension("");
        fs::create_dir(&folder).map_err(|error| unwritten(&folder, &error))?;
        Ok(Stage { folder, lock, held })
    }

    /// Writes a file, to the disk itself.
    pub fn write(&self, path: &str, bytes: &[u8]) -> Result<(), OutFault> {
        let place = self.place(path)?;
        let written = OpenOptions::new().write(true).create_new(true).open(&place).and_then(|mut file| {
            file.write_all(bytes)?;
            file.sync_all()
        });
        written.map_err(|error| unwritten(&place, &error))
    }

    /// Takes a file of the old folder over: the same file under a second name, or a copy where the disk knows no such
    /// thing.
    pub fn keep(&self, old: &Path, path: &str) -> Result<(), OutFault> {
        let place = self.place(path)?;
        let from = old.join(path);
        if fs::hard_link(&from, &place).is_err() {
            fs::copy(&from, &place).map_err(|error| unwritten(&place, &error))?;
            let copy = File::open(&place).and_then(|file| file.sync_all());
            copy.map_err(|error| unwritten(&place, &error))?;
        }
        Ok(())
    }

    fn place(&self, path: &str) -> Result<PathBuf, OutFault> {
        let place = self.folder.join(path);
        let above = place.parent().unwrap_or(&self.folder);
        fs::create_dir_all(above).map_err(|error| unwritten(above, &error))?;
        Ok(place)
    }

    /// Brings the folders themselves to the disk.
    pub fn settle(&self) -> Result<(), OutFault> {
        for entry in walkdir::WalkDir::new(&self.folder) {
            let entry = entry.map_err(|error| unread(&self.folder, &error.to_string()))?;
            if entry.file_type().is_dir() {
                sync(entry.path())?;
            }
        }
        Ok(())
    }
}

impl Drop for Stage {
    /// Takes away what is left of the stage: nothing, or the old edition once the two are exchanged. Where that cannot
    /// be done the next run does it.
    fn drop(&mut self) {
        if remove(&self.folder).is_ok() {
            let _ = fs::remove_file(&self.lock);
        }
        let _ = self.held.unlock();
    }
}

/// Brings a folder's list of files to the disk; some systems cannot open a folder, and need not.
pub(super) fn sync(folder: &Path) -> Result<(), OutFault> {
    match File::open(folder) {
        Ok(opened) if cfg!(unix) => opened.sync_all().map_err(|error| unwritten(folder, &error)),
        _ => Ok(()),
    }
}

fn remove(folder: &Path) -> std::io::Result<()> {
    match fs::remove_dir_all(folder) {
        Err(error) if error.kind() != std::io::ErrorKind::NotFound => Err(error),
        _ => Ok(()),
    }
}

/// Takes away what runs that were stopped left in `home`. What a run that goes on still writes is left alone.
pub(super) fn sweep(home: &Path) -> Result<(), OutFault> {
    let entries = fs::read_dir(home).map_err(|error| unread(home, &error.to_string()))?;
    for entry in entries {
        let path = entry.map_err(|error| unread(home, &error.to_string()))?.path();
        let name = path.file_name().and_then(|name| name.to_str()).unwrap_or_default();
        if !name.starts_with(OWN) || !name.ends_with(LOCK) {
            continue;
        }
        let Ok(lock) = File::open(&path) else { continue };
        match lock.try_lock() {
            Ok(()) => {
                let folder = path.with_extension("");
                remove(&folder).map_err(|error| unwritten(&folder, &error))?;
                fs::remove_file(&path).map_err(|error| unwritten(&path, &error))?;
            }
            Err(TryLockError::WouldBlock) => {}
            Err(TryLockError::Error(error)) => return Err(unwritten(&path, &error)),
        }
    }
    Ok(())
}

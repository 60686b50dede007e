//! The step in which a new folder takes the place of the old one.
//!
//! Where the system can exchange two names at once, that is the step. Elsewhere a journal says what is under way, and
//! the next run ends it.

use std::fs::{self, File, TryLockError};
use std::io::ErrorKind;
use std::path::{Path, PathBuf};

use super::fault::{OutFault, unread, unwritten};
use super::stage::{OWN, Stage, sync};

/// What the journal of a folder's exchange is called, before the folder's name.
const JOURNAL: &str = "journal-";

/// Puts a stage in the place of the folder `name` in `home`; what stood there is where the stage was.
pub(super) fn exchange(home: &Path, stage: Stage, name: &str) -> Result<(), OutFault> {
    let place = home.join(name);
    if place.symlink_metadata().is_err() {
        fs::rename(&stage.folder, &place).map_err(|error| unwritten(&place, &error))?;
    } else if !at_once(&stage.folder, &place).map_err(|error| unwritten(&place, &error))? {
        in_steps(home, &stage, name)?;
    }
    sync(home)
}

/// Gives a stage the name `name` in `home`, where nothing has it yet; never in the place of something else.
pub(super) fn place(home: &Path, stage: &Stage, name: &str) -> Result<(), OutFault> {
    let place = home.join(name);
    let stands =
        || OutFault::new(format!("`{}` is there already", place.display()), "move it elsewhere, or take another name");
    match fresh(&stage.folder, &place) {
        Err(error) if error.kind() == ErrorKind::AlreadyExists => return Err(stands()),
        moved => moved.map_err(|error| unwritten(&place, &error))?,
    }
    sync(home)
}

/// Renames a folder to a name that nothing has, in one step where the system can look and rename at once.
#[cfg(any(target_os = "linux", target_os = "android", target_vendor = "apple"))]
fn fresh(from: &Path, to: &Path) -> std::io::Result<()> {
    use rustix::fs::{CWD, RenameFlags, renameat_with};
    use rustix::io::Errno;
    match renameat_with(CWD, from, CWD, to, RenameFlags::NOREPLACE) {
        Err(Errno::NOSYS | Errno::INVAL | Errno::NOTSUP) => looked(from, to),
        moved => Ok(moved?),
    }
}

#[cfg(not(any(target_os = "linux", target_os = "android", target_vendor = "apple")))]
fn fresh(from: &Path, to: &Path) -> std::io::Result<()> {
    looked(from, to)
}

/// The same in two steps: no system puts a folder in the place of one that holds anything.
fn looked(from: &Path, to: &Path) -> std::io::Result<()> {
    match to.symlink_metadata() {
        Ok(_) => Err(ErrorKind::AlreadyExists.into()),
        Err(_) => fs::rename(from, to),
    }
}

/// Exchanges two names in one step; false where the system cannot.
#[cfg(any(target_os = "linux", target_os = "android", target_vendor = "apple"))]
fn at_once(one: &Path, other: &Path) -> std::io::Result<bool> {
    use rustix::fs::{CWD, RenameFlags, renameat_with};
    use rustix::io::Errno;
    match renameat_with(CWD, one, CWD, other, RenameFlags::EXCHANGE) {
        Ok(()) => Ok(true),
        Err(Errno::NOSYS | Errno::INVAL | Errno::NOTSUP) => Ok(false),
        Err(error) => Err(error.into()),
    }
}

#[cfg(not(any(target_os = "linux", target_os = "android", target_vendor = "apple")))]
fn at_once(_: &Path, _: &Path) -> std::io::Result<bool> {
    Ok(false)
}

/// The same in three steps, which [`finish`] ends where they were broken off.
fn in_steps(home: &Path, stage: &Stage, name: &str) -> Result<(), OutFault> {
    let (journal, new) = (home.join(format!("{OWN}{JOURNAL}{name}")), waiting(home, name));
    // Nobody else ends it as long as this is held.
    let held = File::create(&journal).map_err(|error| unwritten(&journal, &error))?;
    held.lock().map_err(|error| unwritten(&journal, &error))?;
    sync(home)?;
    // The stage moves away from its lock, so that nobody sweeps it while it waits; the journal is there before, so that
    // it is never forgotten.
    fs::rename(&stage.folder, &new).map_err(|error| unwritten(&new, &error))?;
    sync(home)?;
    end(home, name, &journal)
}

/// What the new folder is called while it waits for its place.
fn waiting(home: &Path, name: &str) -> PathBuf {
    home.join(format!("{OWN}new-{name}"))
}

/// Ends exchanges that were broken off: once the new folder waits beside its journal, it is what is meant. What a run
/// that goes on has under way is left alone.
pub(super) fn finish(home: &Path) -> Result<(), OutFault> {
    let entries = fs::read_dir(home).map_err(|error| unread(home, &error.to_string()))?;
    for entry in entries {
        let journal = entry.map_err(|error| unread(home, &error.to_string()))?.path();
        let file = journal.file_name().and_then(|name| name.to_str()).unwrap_or_default();
        let Some(name) = file.strip_prefix(OWN).and_then(|name| name.strip_prefix(JOURNAL)) else { continue };
        let held = match File::open(&journal) {
            Ok(held) => held,
            Err(error) if error.kind() == ErrorKind::NotFound => continue,
            Err(error) => return Err(unread(&journal, &error.to_string())),
        };
        match held.try_lock() {
            Ok(()) => end(home, name, &journal)?,
            Err(TryLockError::WouldBlock) => {}
            Err(TryLockError::Error(error)) => return Err(unwritten(&journal, &error)),
        }
    }
    Ok(())
}

/// Puts the new folder that waits in its place, if there is one, and takes the journal away.
fn end(home: &Path, name: &str, journal: &Path) -> Result<(), OutFault> {
    let (place, new) = (home.join(name), waiting(home, name));
    if new.is_dir() {
        if place.symlink_metadata().is_ok() {
            fs::remove_dir_all(&place).map_err(|error| unwritten(&place, &error))?;
        }
        fs::rename(&new, &place).map_err(|error| unwritten(&place, &error))?;
        sync(home)?;
    }
    match fs::remove_file(journal) {
        Err(error) if error.kind() != ErrorKind::NotFound => Err(unwritten(journal, &error)),
        _ => Ok(()),
    }
}

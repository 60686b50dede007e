//! All the files of a folder that a run makes, put in its place at once: the old folder or the new one is there,
//! whatever happens in between.
//!
//! The new folder is written whole beside the old one, brought to the disk, and the two are exchanged in one step.

mod cache;
mod exchange;
mod fault;
mod file;
mod index;
mod stage;

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

pub use cache::{Cache, program};
pub use fault::OutFault;
use fault::{unread, unwritten};
pub use file::{NewFile, Origin};
use index::{Entry, Index};
use stage::Stage;

use crate::source::sha256;

/// Puts files into `folder`. What an earlier run made and this one does not goes where it has the origin of one that
/// is made now, or belongs to what `known` does not hold any more: a size that is gone. All else in the folder stays.
/// Gives what was taken out.
///
/// # Errors
/// When the folder or a file in it is none of this program's making and would be replaced, leads elsewhere, or cannot be
/// written. Nothing is changed then.
pub fn put(folder: &Path, files: &[NewFile], known: &BTreeSet<String>) -> Result<Vec<String>, OutFault> {
    let (home, name) = home(folder)?;
    exchange::finish(&home)?;
    stage::sweep(&home)?;
    let old = Index::read(folder)?;
    let standing = standing(folder)?;
    let new: BTreeMap<&str, &NewFile> = files.iter().map(|file| (file.path.as_str(), file)).collect();
    let mut kept = Vec::new();
    let mut gone = Vec::new();
    for path in &standing {
        let entry = old.entry(path);
        if let Some(file) = new.get(path.as_str()) {
            ours(folder, path, entry, &file.bytes)?;
        } else if entry.is_some_and(|entry| is_over(entry, files, known)) {
            ours(folder, path, entry, &[])?;
            gone.push(path.clone());
        } else {
            kept.push(path.clone());
        }
    }
    in_the_way(folder, &standing, &new)?;
    let stage = Stage::open(&home)?;
    for path in &kept {
        stage.keep(folder, path)?;
    }
    for file in files {
        stage.write(&file.path, &file.bytes)?;
    }
    let mut index = Index::of(files);
    index.keep(&old, &kept);
    stage.write(index::NAME, index.to_json().as_bytes())?;
    stage.settle()?;
    exchange::exchange(&home, stage, &name)?;
    Ok(gone)
}

/// Whether a folder holds some files, each as it is, and nothing else. What runs that were stopped left beside it is
/// taken away.
///
/// # Errors
/// When the folder or a file in it cannot be read.
pub fn holds(folder: &Path, files: &[NewFile]) -> Result<bool, OutFault> {
    let (home, _) = home(folder)?;
    exchange::finish(&home)?;
    stage::sweep(&home)?;
    let names: BTreeSet<&str> = files.iter().map(|file| file.path.as_str()).collect();
    if !standing(folder)?.iter().map(String::as_str).eq(names) {
        return Ok(false);
    }
    for file in files {
        let place = folder.join(&file.path);
        if fs::read(&place).map_err(|error| unread(&place, &error.to_string()))? != file.bytes {
            return Ok(false);
        }
    }
    Ok(true)
}

/// Whether a folder holds some files of this program's, by their paths and checksums, as an earlier run put them there.
///
/// # Errors
/// When the folder or a file in it cannot be read.
pub fn stands(folder: &Path, files: &[(String, String)]) -> Result<bool, OutFault> {
    let (home, _) = home(folder)?;
    exchange::finish(&home)?;
    stage::sweep(&home)?;
    let index = Index::read(folder)?;
    for (path, sum) in files {
        let place = folder.join(path);
        let is_listed = index.entry(path).is_some_and(|entry| entry.sha256 == *sum);
        let is_plain = place.symlink_metadata().is_ok_and(|about| about.is_file());
        if !is_listed || !is_plain || fs::read(&place).map_or(true, |bytes| sha256(&bytes) != *sum) {
            return Ok(false);
        }
    }
    Ok(true)
}

/// Puts files into a folder that is not there yet.
///
/// # Errors
/// When there is something in its place, or it cannot be written.
pub fn put_new(folder: &Path, files: &[NewFile]) -> Result<(), OutFault> {
    let (home, name) = home(folder)?;
    exchange::finish(&home)?;
    stage::sweep(&home)?;
    let stage = Stage::open(&home)?;
    for file in files {
        stage.write(&file.path, &file.bytes)?;
    }
    stage.settle()?;
    exchange::place(&home, &stage, &name)
}

/// The folder that holds the edition's, made where it is not there; and the edition's name in it.
fn home(folder: &Path) -> Result<(PathBuf, String), OutFault> {
    let home = folder.parent().filter(|home| !home.as_os_str().is_empty()).unwrap_or(Path::new("."));
    fs::create_dir_all(home).map_err(|error| unwritten(home, &error))?;
    let name = folder.file_name().and_then(|name| name.to_str()).unwrap_or_default().to_owned();
    match folder.symlink_metadata() {
        Ok(about) if !about.is_dir() => Err(OutFault::new(
            format!("`{}` is no folder of this program's making, and may lead elsewhere", folder.display()),
            "take it away, or name another folder with --out",
        )),
        _ => Ok((home.to_path_buf(), name)),
    }
}

/// Every file below a folder, by its path from it; none where the folder is not there.
fn standing(folder: &Path) -> Result<Vec<String>, OutFault> {
    let mut found = Vec::new();
    if folder.symlink_metadata().is_err() {
        return Ok(found);
    }
    for entry in walkdir::WalkDir::new(folder).min_depth(1).sort_by_file_name() {
        let entry = entry.map_err(|error| unread(folder, &error.to_string()))?;
        let path = entry.path().strip_prefix(folder).unwrap_or(entry.path());
        let Some(path) = path.to_str().map(|path| path.replace('\\', "/")) else {
            return Err(unread(entry.path(), "its name is no text"));
        };
        let kind = entry.file_type();
        if !kind.is_dir() && !kind.is_file() {
            return Err(OutFault::new(
                format!("`{}` is a link or a device, and none of this program's making", entry.path().display()),
                "move it elsewhere, or name another folder with --out",
            ));
        }
        if kind.is_file() && path != index::NAME {
            found.push(path);
        }
    }
    Ok(found)
}

/// Whether a file of an earlier run has had its day.
fn is_over(entry: &Entry, files: &[NewFile], known: &BTreeSet<String>) -> bool {
    !known.contains(&entry.origin.of) || files.iter().any(|file| file.origin == entry.origin)
}

/// Makes sure that a file which is to go, or to be replaced by `bytes`, is as this program wrote it.
fn ours(folder: &Path, path: &str, entry: Option<&Entry>, bytes: &[u8]) -> Result<(), OutFault> {
    let place = folder.join(path);
    let stands = fs::read(&place).map_err(|error| unread(&place, &error.to_string()))?;
    if stands == bytes || entry.is_some_and(|entry| entry.sha256 == sha256(&stands)) {
        return Ok(());
    }
    let fact = match entry {
        Some(_) => format!("`{}` was changed after this program wrote it, and would be lost", place.display()),
        None => format!("`{}` was not made by this program, and would be replaced", place.display()),
    };
    Err(OutFault::new(fact, "move it elsewhere, or name another folder with --out"))
}

/// Makes sure that no folder stands where a file is to go, and no file where a folder is.
fn in_the_way(folder: &Path, standing: &[String], new: &BTreeMap<&str, &NewFile>) -> Result<(), OutFault> {
    let refusal = |path: &str, is: &str| {
        let fact = format!("`{}` is {is}, and stands where one of the files is to go", folder.join(path).display());
        Err(OutFault::new(fact, "move it elsewhere, or name another folder with --out"))
    };
    for path in new.keys() {
        if folder.join(path).is_dir() {
            return refusal(path, "a folder");
        }
        let above = Path::new(path)
            .ancestors()
            .skip(1)
            .filter_map(Path::to_str)
            .find(|above| standing.iter().any(|one| one == above));
        if let Some(above) = above {
            return refusal(above, "a file");
        }
    }
    Ok(())
}

//! A folder that may be read, and nothing beyond it.

use std::collections::BTreeMap;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::ledger::{Ledger, Look, saw_file, saw_names};
use super::read_fault::ReadFault;
use crate::limits::MANIFEST;

/// The folder that a command was given.
#[derive(Debug, Clone)]
pub struct Folder {
    root: PathBuf,
    shown: PathBuf,
    unsaved: Arc<BTreeMap<String, String>>,
    /// Where all that is looked at is written down; `None` where nobody asks.
    ledger: Option<Ledger>,
}

impl Folder {
    /// The most bytes of a text file: far above any booklet, far below what would stall a parser.
    pub const TEXT_LIMIT: u64 = 2_000_000;
    /// The most bytes of a picture or font.
    pub const PICTURE_LIMIT: u64 = 20_000_000;

    /// Opens a folder; fails when it is missing, no folder, or may not be read.
    pub fn open(path: &Path) -> Result<Folder, ReadFault> {
        let root = path.canonicalize().map_err(fault)?;
        if !root.is_dir() {
            return Err(ReadFault::NotAFile);
        }
        fs::read_dir(&root).map_err(fault)?;
        Ok(Folder { root, shown: path.to_path_buf(), unsaved: Arc::default(), ledger: None })
    }

    /// The same folder, in which all that is looked at is written down.
    pub fn recording(&self) -> (Folder, Ledger) {
        let ledger = Ledger::default();
        (Folder { ledger: Some(ledger.clone()), ..self.clone() }, ledger)
    }

    /// Whether all that was looked at is as it was.
    pub fn is_still(&self, looks: &[(Look, String)]) -> bool {
        looks.iter().all(|(look, saw)| {
            let now = match look {
                Look::File { path, most } => saw_file(&self.look(Path::new(path), *most)),
                Look::List { path } => saw_names(&self.names(Path::new(path))),
                Look::Folders => saw_names(&self.own_folders()),
            };
            now == *saw
        })
    }

    /// The same folder with some texts as an editor holds them, by their paths from the folder: they go
    /// before what is on the disk.
    pub fn with_unsaved(&self, texts: impl IntoIterator<Item = (PathBuf, String)>) -> Folder {
        let unsaved = texts.into_iter().map(|(path, text)| (self.show(&path), text)).collect();
        Folder { unsaved: Arc::new(unsaved), ..self.clone() }
    }

    /// The folder itself, links followed.
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// The folder as the user named it.
    pub fn shown(&self) -> &Path {
        &self.shown
    }

    /// `relative` (from the folder) as it is shown to people, with `/` between names.
    pub fn show(&self, relative: &Path) -> String {
        let mut tidy = PathBuf::new();
        for part in relative.components() {
            match part {
                std::path::Component::ParentDir if tidy.file_name().is_some() => {
                    tidy.pop();
                }
                std::path::Component::CurDir => {}
                other => tidy.push(other),
            }
        }
        tidy.to_string_lossy().replace('\\', "/")
    }

    /// Reads a text file by its path from the folder.
    pub fn text(&self, relative: &Path) -> Result<String, ReadFault> {
        if let Some(text) = self.unsaved.get(&self.show(relative)) {
            let size = text.len() as u64;
            return if size > Folder::TEXT_LIMIT { Err(ReadFault::TooLarge(size)) } else { Ok(text.clone()) };
        }
        let bytes = self.bytes(relative, Folder::TEXT_LIMIT)?;
        let text = String::from_utf8(bytes).map_err(|error| ReadFault::NotUtf8(error.utf8_error().valid_up_to()))?;
        let text = text.strip_prefix('\u{feff}').map_or_else(|| text.clone(), str::to_owned);
        Ok(with_lines(text))
    }

    /// Reads a picture or a font by its path from the folder.
    pub fn picture(&self, relative: &Path) -> Result<Vec<u8>, ReadFault> {
        self.bytes(relative, Folder::PICTURE_LIMIT)
    }

    /// Reads a text that this program wrote and that is larger than what people write, by its path from the folder.
    pub fn long_text(&self, relative: &Path) -> Result<String, ReadFault> {
        let bytes = self.bytes(relative, MANIFEST.most as u64)?;
        String::from_utf8(bytes).map_err(|error| ReadFault::NotUtf8(error.utf8_error().valid_up_to()))
    }

    /// The names of the folders in it, sorted.
    pub fn folders(&self) -> Vec<String> {
        let names = self.own_folders();
        if let Some(ledger) = &self.ledger {
            ledger.folders(&names);
        }
        names
    }

    fn own_folders(&self) -> Vec<String> {
        let entries = walkdir::WalkDir::new(&self.root).min_depth(1).max_depth(1).sort_by_file_name();
        let folders = entries.into_iter().filter_map(Result::ok).filter(|entry| entry.file_type().is_dir());
        folders.filter_map(|entry| entry.file_name().to_str().map(str::to_owned)).collect()
    }

    /// The names of the files in a sub-folder, and of links, which are followed when they are read;
    /// sorted; empty when there is no such folder inside.
    pub fn list(&self, relative: &Path) -> Vec<String> {
        let names = self.names(relative);
        if let Some(ledger) = &self.ledger {
            ledger.list(relative, &names);
        }
        names
    }

    fn names(&self, relative: &Path) -> Vec<String> {
        let Ok(inside) = self.inside(relative) else { return Vec::new() };
        let mut names: Vec<String> = walkdir::WalkDir::new(inside)
            .min_depth(1)
            .max_depth(1)
            .into_iter()
            .filter_map(Result::ok)
            .filter(|entry| !entry.file_type().is_dir())
            .filter_map(|entry| entry.file_name().to_str().map(str::to_owned))
            .collect();
        names.sort();
        names
    }

    fn bytes(&self, relative: &Path, limit: u64) -> Result<Vec<u8>, ReadFault> {
        let seen = self.look(relative, limit);
        if let Some(ledger) = &self.ledger {
            ledger.file(relative, limit, &seen);
        }
        seen
    }

    fn look(&self, relative: &Path, limit: u64) -> Result<Vec<u8>, ReadFault> {
        let path = self.inside(relative)?;
        let about = fs::metadata(&path).map_err(fault)?;
        if !about.is_file() {
            return Err(ReadFault::NotAFile);
        }
        if about.len() > limit {
            return Err(ReadFault::TooLarge(about.len()));
        }
        fs::read(&path).map_err(fault)
    }

    fn inside(&self, relative: &Path) -> Result<PathBuf, ReadFault> {
        let wanted = self.root.join(relative);
        // A path that leads out is refused even where nothing stands at its end, so that no
        // message tells what exists elsewhere on the machine.
        let tidy = self.show(relative);
        if relative.is_absolute() || tidy == ".." || tidy.starts_with("../") {
            return Err(ReadFault::LeadsOut);
        }
        let path = wanted.canonicalize().map_err(fault)?;
        if path.starts_with(&self.root) { Ok(path) } else { Err(ReadFault::LeadsOut) }
    }
}

/// Lines that a carriage return alone ends, as some old programs write them, ended as others are; no byte moves.
fn with_lines(text: String) -> String {
    let mut bytes = text.into_bytes();
    for at in 0..bytes.len() {
        if bytes[at] == b'\r' && bytes.get(at + 1) != Some(&b'\n') {
            bytes[at] = b'\n';
        }
    }
    // One letter of ASCII took the place of another.
    String::from_utf8(bytes).unwrap_or_default()
}

fn fault(error: io::Error) -> ReadFault {
    match error.kind() {
        io::ErrorKind::NotFound => ReadFault::Missing,
        io::ErrorKind::PermissionDenied => ReadFault::Denied,
        io::ErrorKind::NotADirectory => ReadFault::Missing,
        _ => ReadFault::Other(error.to_string()),
    }
}

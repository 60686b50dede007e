//! Booklets are found by walking a folder: each folder that holds a `booklet.yaml` is one.

use std::path::{Path, PathBuf};

use super::folder::Folder;

/// A booklet's folder.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BookletFolder {
    /// The folder's name: what commands and output files call the booklet.
    pub name: String,
    /// The way to it from the folder that the command was given; empty when it is that folder.
    pub path: PathBuf,
}

/// All booklets in `folder`, sorted by path, and the folders that could not be looked into (with
/// the system's words).
///
/// Links are not followed; folders named with a leading `.`, and the output folder `out`, are
/// passed over. A booklet's own folder is not searched for more booklets.
pub fn find_booklets(folder: &Folder) -> (Vec<BookletFolder>, Vec<(String, String)>) {
    let mut found: Vec<BookletFolder> = Vec::new();
    let mut refused = Vec::new();
    let mut walk = walkdir::WalkDir::new(folder.root()).sort_by_file_name().max_depth(12).into_iter();
    while let Some(entry) = walk.next() {
        let entry = match entry {
            Ok(entry) => entry,
            Err(error) => {
                let path = error.path().unwrap_or(Path::new("")).to_path_buf();
                let shown = path.strip_prefix(folder.root()).unwrap_or(&path).to_string_lossy().into_owned();
                let words = error.io_error().map_or_else(|| error.to_string(), ToString::to_string);
                refused.push((shown, words));
                continue;
            }
        };
        if !entry.file_type().is_dir() {
            continue;
        }
        let name = entry.file_name().to_string_lossy();
        if entry.depth() > 0 && (name.starts_with('.') || name == "out" || name == "target") {
            walk.skip_current_dir();
            continue;
        }
        if entry.path().join("booklet.yaml").symlink_metadata().is_ok() {
            let path = entry.path().strip_prefix(folder.root()).unwrap_or(Path::new("")).to_path_buf();
            found.push(BookletFolder { name: name.into_owned(), path });
            walk.skip_current_dir();
        }
    }
    (found, refused)
}

//! The tables of edits, and a booklet with one of them made.

use std::path::{Path, PathBuf};

use serde::Deserialize;

/// One seeded fault, or one harmless edit.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Entry {
    /// Its name.
    pub id: String,
    /// The demo booklet.
    pub booklet: String,
    /// The file in it.
    #[serde(default)]
    pub file: String,
    /// What stands there once.
    #[serde(default)]
    pub find: String,
    /// What takes its place.
    #[serde(default)]
    pub put: String,
    /// Several edits in place of one.
    #[serde(default)]
    pub edits: Vec<Edit>,
    /// The line at which an editor wants to be told, as it reads after the edit.
    #[serde(default)]
    pub at: String,
    /// Its file, where it is not the edited one.
    #[serde(default)]
    pub at_file: String,
    /// The family of faults, from 1.
    #[serde(default)]
    pub family: u8,
    /// 3: cloth or a person is harmed; 2: the maker is stuck; 1: it looks careless.
    #[serde(default)]
    pub harm: u8,
    /// Why it is a fault, or none.
    #[serde(default)]
    #[allow(dead_code, reason = "for those who read the table")]
    pub why: String,
    /// Whether nothing is wrong with it.
    #[serde(default)]
    pub harmless: bool,
}

/// A replacement in one file.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Edit {
    /// The file.
    pub file: String,
    /// What stands there once.
    pub find: String,
    /// What takes its place.
    pub put: String,
}

/// Every entry of every table in a folder.
pub fn entries(folder: &Path) -> Vec<Entry> {
    let mut files: Vec<PathBuf> = std::fs::read_dir(folder)
        .expect("the folder of the tables")
        .map(|entry| entry.expect("an entry of the folder").path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "yaml"))
        .collect();
    files.sort();
    let read = |path: &PathBuf| -> Vec<Entry> {
        let text = std::fs::read_to_string(path).expect("a table");
        serde_yaml::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
    };
    files.iter().flat_map(read).collect()
}

/// A demo with nothing edited.
pub fn plain(booklet: &str) -> Entry {
    Entry {
        id: booklet.to_owned(),
        booklet: booklet.to_owned(),
        file: String::new(),
        find: String::new(),
        put: String::new(),
        edits: Vec::new(),
        at: String::new(),
        at_file: String::new(),
        family: 0,
        harm: 0,
        why: String::new(),
        harmless: true,
    }
}

impl Entry {
    /// Its replacements.
    pub fn replacements(&self) -> Vec<Edit> {
        if !self.edits.is_empty() || self.find.is_empty() {
            return self.edits.clone();
        }
        vec![Edit {
            file: self.file.clone(),
            find: self.find.clone(),
            put: self.put.clone(),
        }]
    }

    /// The edited files: path within the folder of booklets, and text.
    pub fn texts(&self, booklets: &Path) -> Vec<(PathBuf, String)> {
        let mut texts: Vec<(PathBuf, String)> = Vec::new();
        for edit in self.replacements() {
            // A shared part or a picture of one is named from the folder of all booklets.
            let path = normal(&Path::new(&self.booklet).join(&edit.file));
            let at = texts
                .iter()
                .position(|(known, _)| *known == path)
                .unwrap_or_else(|| {
                    let text = std::fs::read_to_string(booklets.join(&path))
                        .unwrap_or_else(|error| panic!("{}: {}: {error}", self.id, path.display()));
                    texts.push((path.clone(), text));
                    texts.len() - 1
                });
            let text = &mut texts[at].1;
            let find = edit.find.trim_end_matches('\n');
            assert_eq!(
                text.matches(find).count(),
                1,
                "{}: what is edited stands once in {}",
                self.id,
                edit.file
            );
            *text = text.replacen(find, edit.put.trim_end_matches('\n'), 1);
        }
        texts
    }

    /// The same edits, and no expectations left in the booklet: every line keeps its place.
    pub fn without_expectations(&self, texts: &mut Vec<(PathBuf, String)>, booklets: &Path) {
        let path = normal(&Path::new(&self.booklet).join("booklet.yaml"));
        if !texts.iter().any(|(known, _)| *known == path) {
            let text = std::fs::read_to_string(booklets.join(&path)).expect("the facts of a demo");
            texts.push((path.clone(), text));
        }
        for (_, text) in texts.iter_mut().filter(|(known, _)| *known == path) {
            let mut inside = false;
            let kept = text.split('\n').map(|line| {
                let indented = line.starts_with([' ', '#', '\t']) || line.is_empty();
                inside = line.starts_with("expect:") || (inside && indented);
                if inside { "" } else { line }
            });
            *text = kept.collect::<Vec<_>>().join("\n");
        }
    }

    /// The file of the line at which an editor wants to be told.
    pub fn told_in(&self) -> PathBuf {
        let file = [&self.at_file, &self.file]
            .into_iter()
            .find(|file| !file.is_empty());
        let file = file.cloned().unwrap_or_else(|| {
            self.edits
                .first()
                .map_or(String::new(), |edit| edit.file.clone())
        });
        normal(&Path::new(&self.booklet).join(file))
    }
}

/// A path without `..`.
fn normal(path: &Path) -> PathBuf {
    let mut parts: Vec<std::ffi::OsString> = Vec::new();
    for part in path.components() {
        match part {
            std::path::Component::ParentDir => {
                parts.pop();
            }
            part => parts.push(part.as_os_str().to_owned()),
        }
    }
    parts.iter().collect()
}

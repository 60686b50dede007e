//! A folder with one small booklet, and the program run in it.

use std::collections::BTreeMap;
use std::fs;
use std::path::PathBuf;
use std::process::Command;

/// The folder; taken away when it is dropped.
pub struct Shop {
    folder: tempfile::TempDir,
}

/// Whether the tracer is here; says what is not tried without it.
pub fn has_tracer(untried: &str) -> bool {
    let has = Command::new("strace").arg("-V").output().is_ok();
    if !has {
        println!("there is no strace here: {untried}");
    }
    has
}

impl Shop {
    pub fn open() -> Shop {
        let shop = Shop {
            folder: tempfile::tempdir().expect("a folder"),
        };
        shop.told(&["new", "tide-pouch"], 0);
        shop
    }

    pub fn path(&self, path: &str) -> PathBuf {
        self.folder.path().join(path)
    }

    pub fn command(&self, arguments: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_notchbook"));
        command.args(arguments).current_dir(self.folder.path());
        command
    }

    /// A build of the booklet under the tracer, which is asked for more.
    pub fn traced(&self, more: &[&str]) -> Command {
        let mut command = Command::new("strace");
        command.args(["-f", "-qq"]).args(more);
        command
            .arg(env!("CARGO_BIN_EXE_notchbook"))
            .args(["build", "tide-pouch"])
            .current_dir(self.path(""));
        command
    }

    pub fn told(&self, arguments: &[&str], exit: i32) -> String {
        let output = self.command(arguments).output().expect("the program runs");
        let told = [output.stdout, output.stderr]
            .map(|bytes| String::from_utf8_lossy(&bytes).into_owned())
            .concat();
        assert_eq!(output.status.code(), Some(exit), "{arguments:?}: {told}");
        told
    }

    /// Builds the booklet, and hands back what is told.
    pub fn build(&self, more: &[&str]) -> String {
        self.told(&[&["build", "tide-pouch"], more].concat(), 0)
    }

    /// Draws the diagrams, and hands back what is told.
    pub fn figures(&self) -> String {
        self.told(&["figures", "tide-pouch"], 0)
    }

    /// What is told where a command cannot be carried out.
    pub fn refused(&self, arguments: &[&str]) -> String {
        self.told(arguments, 2)
    }

    /// Writes a file, and the folders above it.
    pub fn write(&self, path: &str, text: &str) {
        let place = self.path(path);
        fs::create_dir_all(place.parent().expect("a folder")).expect("a folder");
        fs::write(place, text).expect("a file");
    }

    pub fn text(&self, path: &str) -> String {
        fs::read_to_string(self.path(path)).expect("a text")
    }

    /// Puts other words into the facts.
    pub fn change(&self, find: &str, put: &str) {
        let facts = self.text("tide-pouch/booklet.yaml");
        assert!(facts.contains(find), "{find}");
        self.write("tide-pouch/booklet.yaml", &facts.replace(find, put));
    }

    /// What stands in a folder, by name.
    pub fn names(&self, path: &str) -> Vec<String> {
        let entries = fs::read_dir(self.path(path)).expect("a folder");
        let mut names: Vec<String> = entries
            .map(|entry| {
                entry
                    .expect("an entry")
                    .file_name()
                    .to_string_lossy()
                    .into_owned()
            })
            .collect();
        names.sort();
        names
    }

    /// Throws the cache away.
    pub fn forget(&self) {
        let cache = self.path("out/.notchbook-cache");
        if cache.exists() {
            fs::remove_dir_all(cache).expect("a cache");
        }
    }

    /// The entries of the cache.
    pub fn entries(&self) -> Vec<PathBuf> {
        let files = walkdir::WalkDir::new(self.path("out/.notchbook-cache")).sort_by_file_name();
        let files = files.into_iter().map(|entry| entry.expect("an entry"));
        files
            .filter(|entry| entry.file_type().is_file())
            .map(walkdir::DirEntry::into_path)
            .collect()
    }

    /// What lies in the cache and is no entry: those are called by the rest of a checksum.
    pub fn unfinished(&self) -> Vec<PathBuf> {
        let mut files = self.entries();
        files.retain(|path| path.file_name().is_none_or(|name| name.len() != 62));
        files
    }

    /// Every file below the folder of the edition, with what it holds.
    pub fn edition(&self) -> BTreeMap<String, Vec<u8>> {
        let folder = self.path("out/tide-pouch");
        let files = walkdir::WalkDir::new(&folder)
            .into_iter()
            .map(|entry| entry.expect("an entry"));
        files
            .filter(|entry| entry.file_type().is_file())
            .map(|entry| {
                let name = entry
                    .path()
                    .strip_prefix(&folder)
                    .expect("below it")
                    .to_string_lossy()
                    .into_owned();
                (name, fs::read(entry.path()).expect("a file"))
            })
            .collect()
    }
}

//! Booklets compiled and printed in-process, for tests that look at what came out.

use std::path::Path;

use notchbook::pipeline::{Reach, Workshop};
use notchbook::source::{BookletFolder, Folder, find_booklets};
use notchbook::typeset::{Paper, Press};

/// The project's folder.
pub fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// A booklet compiled, its cloth laid as it is printed.
#[allow(
    dead_code,
    reason = "not every test that shares this file compiles booklets"
)]
fn compiled(folder: &Folder, booklet: &BookletFolder) -> Workshop {
    let mut workshop = Workshop::open(folder, booklet, Reach::Checks);
    workshop.lay_cloth_well();
    workshop
}

/// Compiles each demo booklet in turn and hands it over with its name.
#[allow(
    dead_code,
    reason = "not every test that shares this file looks at all booklets"
)]
pub fn demos(mut see: impl FnMut(&str, &Workshop)) {
    let folder = Folder::open(&root().join("booklets")).expect("the demo booklets");
    let (booklets, refused) = find_booklets(&folder);
    assert!(
        refused.is_empty() && booklets.len() >= 3,
        "{refused:?} {booklets:?}"
    );
    for booklet in &booklets {
        see(&booklet.name, &compiled(&folder, booklet));
    }
}

/// Compiles one demo booklet.
#[allow(
    dead_code,
    reason = "not every test that shares this file looks at one booklet alone"
)]
pub fn demo<R>(name: &str, then: impl FnOnce(&Workshop) -> R) -> R {
    let folder = Folder::open(&root().join("booklets")).expect("the demo booklets");
    let booklet = BookletFolder {
        name: name.into(),
        path: name.into(),
    };
    then(&compiled(&folder, &booklet))
}

/// Writes files into a folder of their own and compiles them as a booklet.
#[allow(
    dead_code,
    reason = "not every test that shares this file writes booklets"
)]
pub fn written<R>(files: &[(&str, &str)], then: impl FnOnce(&Workshop) -> R) -> R {
    let home = tempfile::tempdir().expect("a folder of our own");
    for (name, text) in files {
        let path = home.path().join("pouch").join(name);
        std::fs::create_dir_all(path.parent().expect("a folder above the file")).expect("a folder");
        std::fs::write(path, text).expect("a file");
    }
    let folder = Folder::open(home.path()).expect("the folder just made");
    let booklet = BookletFolder {
        name: "pouch".into(),
        path: "pouch".into(),
    };
    then(&compiled(&folder, &booklet))
}

/// Holds rows to a recorded table; `NOTCHBOOK_BLESS=1` records them anew, once somebody has looked at what they count.
#[allow(
    dead_code,
    reason = "not every test that shares this file records tables"
)]
pub fn recorded(table: &str, rows: &[String], look_at: &str) {
    let place = root().join(table);
    let found = format!("{}\n", rows.join("\n"));
    if std::env::var_os("NOTCHBOOK_BLESS").is_some_and(|value| value == "1") {
        std::fs::write(&place, &found).expect("the recorded table");
    }
    let known = std::fs::read_to_string(&place).expect("the recorded table");
    let only = |one: &str, other: &str, sign: &str| -> Vec<String> {
        let rows = one
            .lines()
            .filter(|row| !other.lines().any(|own| own == *row));
        rows.map(|row| format!("{sign} {row}")).collect()
    };
    let changed = [only(&known, &found, "-"), only(&found, &known, "+")].concat();
    assert!(
        changed.is_empty(),
        "\n{}\nlook at {look_at}, then record them with NOTCHBOOK_BLESS=1\n",
        changed.join("\n")
    );
}

/// Sets and prints one size; fails with what the typesetter says.
#[allow(dead_code, reason = "not every test that shares this file prints")]
pub fn print(compiled: &Workshop, size: usize, paper: Paper) -> Vec<u8> {
    let sheaf = compiled.sheaf(
        &compiled.book(&compiled.editions()[size], paper.of_sheets()),
        paper,
    );
    match Press::new(&compiled.house).print(&sheaf) {
        Ok(printed) => printed.pdf,
        Err(faults) => panic!("{faults:?}"),
    }
}

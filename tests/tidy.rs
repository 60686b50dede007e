//! The order of the house, held by a test: which stage may import which, who may print, read and
//! write, and that nothing stands in two places and differs. Every failure says what to do.

#[path = "tidy/circles.rs"]
mod circles;
#[path = "tidy/house.rs"]
mod house;
#[path = "tidy/rust.rs"]
mod rust;

use std::collections::BTreeSet;
use std::path::Path;

use rust::{SourceFile, files, rust_files};

/// The stages in the order in which data goes through them: each may import itself and those
/// before it. One that is not there yet is passed over.
const STAGES: &[&str] = &[
    "limits",
    "source",
    "diag",
    "faults",
    "measure",
    "geometry",
    "model",
    "syntax",
    "resolve",
    "construct",
    "figure",
    "draw",
    "nest",
    "cloth",
    "sheets",
    "checks",
    "manual",
    "book",
    "typeset",
    "web",
    "manifest",
    "errata",
    "proof",
    "publish",
    "out",
    "pipeline",
    "cli",
];

/// The most lines of a file in `src`.
const LONGEST: usize = 400;

/// What may stand at the top of the project, beside what `.gitignore` names.
const TOP: &[&str] = &[
    "Cargo.toml",
    "Cargo.lock",
    "README.md",
    "DEVELOPERS.md",
    "LICENSE",
    ".gitignore",
    ".ci",
    "src",
    "templates",
    "booklets",
    "tests",
    "fonts",
];

/// What may stand there and need not.
const TOP_MAYBE: &[&str] = &["benches", ".git"];

/// Words of code that only some stages may use.
struct Only {
    /// The words.
    words: &'static [&'static str],
    /// The stages that may use them; none at all means nobody.
    stages: &'static [&'static str],
    /// What to do instead.
    act: &'static str,
}

const ONLY: &[Only] = &[
    Only {
        words: &[
            ".unwrap()",
            ".expect(",
            "panic!",
            "todo!",
            "unimplemented!",
            "unreachable!",
        ],
        stages: &[],
        act: "hand back a finding, an Option or a Result: what comes from outside must never stop the program",
    },
    Only {
        words: &["unsafe"],
        stages: &[],
        act: "write it without: unsafe code is forbidden",
    },
    Only {
        words: &["::*;"],
        stages: &[],
        act: "name what is imported, so that imports show direction",
    },
    Only {
        words: &[
            "println!",
            "eprintln!",
            "print!",
            "eprint!",
            "dbg!",
            "stdout()",
            "stderr()",
        ],
        stages: &["cli"],
        act: "hand the words back: only src/cli prints",
    },
    Only {
        words: &[
            "fs::read",
            "fs::read_to_string",
            "fs::read_dir",
            "fs::metadata",
            "File::open",
            "WalkDir",
            "walkdir",
        ],
        stages: &["source", "out"],
        act: "ask source::Folder for it: only src/source reads the disk, and never outside the given folder",
    },
    Only {
        words: &[
            "fs::write",
            "File::create",
            "create_dir",
            "create_dir_all",
            "fs::rename",
            "fs::copy",
            "remove_file",
            "remove_dir_all",
            "tempfile",
        ],
        stages: &["out"],
        act: "hand the bytes to out::put: only src/out writes files, all of an edition or none",
    },
    Only {
        words: &["usvg", "resvg"],
        stages: &["figure"],
        act: "let src/figure do it: no other stage knows SVG libraries",
    },
    Only {
        words: &["qrcode"],
        stages: &["figure"],
        act: "let src/figure do it: no other stage draws squares of dots",
    },
    Only {
        words: &["typst", "typst_layout", "typst_pdf", "typst_render"],
        stages: &["typeset"],
        act: "let src/typeset do it: no other stage knows Typst",
    },
    Only {
        words: &["SystemTime", "Instant::now"],
        stages: &["cli"],
        act: "take the time out: the same booklet gives the same bytes",
    },
];

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn sources() -> Vec<SourceFile> {
    rust_files(root(), "src")
}

fn settle(wrong: Vec<String>) {
    assert!(wrong.is_empty(), "\n{}\n", wrong.join("\n"));
}

#[test]
fn imports_run_from_later_stages_to_earlier_ones() {
    let place = |stage: &str| STAGES.iter().position(|known| *known == stage);
    let mut wrong = Vec::new();
    for file in sources()
        .iter()
        .filter(|file| !matches!(file.path.as_str(), "src/lib.rs" | "src/main.rs"))
    {
        let stage = file.stage();
        let Some(own) = place(stage) else {
            wrong.push(format!(
                "{}: the stage `{stage}` is in no order: add it to STAGES in tests/tidy.rs",
                file.path
            ));
            continue;
        };
        for (name, line) in file.imports() {
            let Some(other) = place(&name) else { continue };
            if other > own {
                let path = &file.path;
                wrong.push(format!("{path}:{line}: `{stage}` comes before `{name}` and may not import it: move what is shared to the earlier stage"));
            }
        }
        let too_far = "super::".repeat(file.supers() + 1);
        for line in file.lines_with(&too_far) {
            wrong.push(format!(
                "{}:{line}: this leaves the stage: write `crate::`, which shows the direction",
                file.path
            ));
        }
    }
    settle(wrong);
}

#[test]
fn the_map_names_every_stage() {
    let map = std::fs::read_to_string(root().join("src/lib.rs")).expect("src/lib.rs");
    let stages: BTreeSet<String> = sources()
        .iter()
        .map(|file| file.stage().to_owned())
        .collect();
    let missing = stages
        .iter()
        .filter(|stage| !matches!(stage.as_str(), "lib" | "main"));
    let missing = missing.filter(|stage| !map.contains(&format!("[`{stage}`]")));
    settle(
        missing
            .map(|stage| {
                format!(
                    "src/lib.rs: the map does not name `{stage}`: add a line that says what it does"
                )
            })
            .collect(),
    );
}

#[test]
fn files_are_short_and_say_why_they_exist() {
    let mut wrong = Vec::new();
    for file in rust_files(root(), "src")
        .iter()
        .chain(&rust_files(root(), "tests"))
    {
        if !file.text.starts_with("//! ") {
            wrong.push(format!(
                "{}: begin it with a line `//! …` that says why it exists",
                file.path
            ));
        }
        let lines = file.text.lines().count();
        if file.path.starts_with("src/") && lines > LONGEST {
            wrong.push(format!(
                "{}: {lines} lines, more than {LONGEST}: split it where its parts have names",
                file.path
            ));
        }
    }
    settle(wrong);
}

#[test]
fn each_stage_keeps_to_its_own_work() {
    let mut wrong = Vec::new();
    for file in &sources() {
        for rule in ONLY
            .iter()
            .filter(|rule| !rule.stages.contains(&file.stage()))
        {
            for word in rule.words {
                let lines = file.lines_with(word);
                wrong.extend(
                    lines
                        .iter()
                        .map(|line| format!("{}:{line}: `{word}`: {}", file.path, rule.act)),
                );
            }
        }
    }
    settle(wrong);
}

#[test]
fn the_top_level_holds_what_it_should() {
    let ignored = std::fs::read_to_string(root().join(".gitignore")).expect(".gitignore");
    let ignored: Vec<&str> = ignored.lines().map(|line| line.trim_matches('/')).collect();
    let mut wrong = Vec::new();
    for entry in std::fs::read_dir(root()).expect("the project's folder") {
        let name = entry
            .expect("an entry")
            .file_name()
            .to_string_lossy()
            .into_owned();
        if ![TOP, TOP_MAYBE, &ignored]
            .iter()
            .any(|known| known.contains(&name.as_str()))
        {
            wrong.push(format!("{name}: move it below src, templates, booklets, tests, fonts or .ci: the top level is fixed"));
        }
    }
    let missing = TOP.iter().filter(|name| !root().join(name).exists());
    wrong
        .extend(missing.map(|name| format!("{name}: it is missing at the top level: put it back")));
    settle(wrong);
}

/// Written in two halves, so that this file does not find itself.
const MACHINES: &[&str] = &[
    concat!("/ho", "me/"),
    concat!("/Us", "ers/"),
    concat!("/ro", "ot/"),
    concat!("/wo", "rk/"),
    concat!("/t", "mp/"),
    concat!("C:", "\\"),
];
const NOTES: &[&str] = &[
    concat!("TO", "DO"),
    concat!("FIX", "ME"),
    concat!("XX", "X"),
];

#[test]
fn no_file_knows_a_machine_or_leaves_a_note() {
    let folders = ["src", "templates", "booklets", "tests", "benches", ".ci"];
    let mut paths: Vec<String> = folders
        .iter()
        .flat_map(|folder| files(root(), folder))
        .collect();
    paths.extend(["Cargo.toml", "README.md", "DEVELOPERS.md", ".gitignore"].map(str::to_owned));
    let mut wrong = Vec::new();
    for path in paths {
        // Pictures and fonts are no text.
        let Ok(text) = std::fs::read_to_string(root().join(&path)) else {
            continue;
        };
        for (line, number) in text.lines().zip(1..) {
            for word in MACHINES.iter().filter(|word| line.contains(**word)) {
                wrong.push(format!("{path}:{number}: `{word}` is the path of one machine: name it from the project's folder"));
            }
            for word in NOTES.iter().filter(|word| line.contains(**word)) {
                wrong.push(format!(
                    "{path}:{number}: `{word}`: do it, or take the note out"
                ));
            }
        }
    }
    settle(wrong);
}

#[test]
fn every_page_of_a_check_is_in_the_table() {
    let table =
        std::fs::read_to_string(root().join("src/checks/table.rs")).expect("the table of checks");
    let pages = files(root(), "src/checks")
        .into_iter()
        .filter(|path| path.ends_with(".md"));
    let stray = pages.filter(|path| !table.contains(path.trim_start_matches("src/checks/")));
    settle(
        stray
            .map(|path| {
                format!(
                    "{path}: no line of src/checks/table.rs names it: add one, or take the page out"
                )
            })
            .collect(),
    );
}

//! The tour of README.md walked literally in an empty folder: each command as it stands there, and what
//! it prints.

use std::path::Path;
use std::process::Command;

/// What the reader changes in `booklet.yaml` at a point of the tour: before it, and after.
const CHANGES: &[(usize, &str, &str)] = &[
    (4, "width: [15 cm (5 7/8 in)", "width: [16 cm (5 7/8 in)"),
    (5, "width: [16 cm (5 7/8 in)", "width: [16 cm (6 1/4 in)"),
];

/// A command of the tour.
struct Call {
    point: usize,
    words: Vec<String>,
    prints: String,
}

/// The commands of the numbered points below the heading, each with the lines that stand below it.
fn calls(readme: &str) -> Vec<Call> {
    let start = readme.find("## From nothing to a booklet").expect("a tour");
    let tour = &readme[start..];
    let tour = &tour[..tour[3..].find("\n## ").map_or(tour.len(), |end| end + 3)];
    let (mut point, mut inside) = (0, false);
    let mut calls: Vec<Call> = Vec::new();
    for line in tour.lines() {
        let number = line.split(". ").next().and_then(|word| word.parse().ok());
        point = number.unwrap_or(point);
        let line = line.strip_prefix("   ").unwrap_or(line);
        if line.starts_with("```") {
            inside = line == "```console";
        } else if let Some(words) = line.strip_prefix("$ notchbook ").filter(|_| inside) {
            let words = words.split_whitespace().map(str::to_owned).collect();
            calls.push(Call {
                point,
                words,
                prints: String::new(),
            });
        } else if let Some(call) = calls.last_mut().filter(|_| inside) {
            call.prints.push_str(line);
            call.prints.push('\n');
        }
    }
    calls
}

fn change(folder: &Path, from: &str, to: &str) {
    let path = folder.join("tide-pouch/booklet.yaml");
    let text = std::fs::read_to_string(&path).expect("the facts of the tour");
    assert!(text.contains(from), "the facts do not say `{from}`");
    std::fs::write(path, text.replace(from, to)).expect("writable facts");
}

#[test]
fn the_tour_is_as_it_is_told() {
    let readme = crate::readme();
    let calls = calls(&readme);
    assert!(calls.len() >= 7, "only {} commands", calls.len());
    let home = tempfile::tempdir().expect("an empty folder");
    let mut changes = CHANGES.iter().peekable();
    let mut wrong = Vec::new();
    for call in &calls {
        while let Some((_, from, to)) = changes.next_if(|change| change.0 <= call.point) {
            change(home.path(), from, to);
        }
        let made = Command::new(env!("CARGO_BIN_EXE_notchbook"))
            .args(&call.words)
            .current_dir(home.path())
            .output()
            .expect("the program");
        let printed = String::from_utf8(made.stdout).expect("words");
        // A figure and its unit hang together on the screen; README.md has plain spaces.
        let printed = printed.replace("\u{a0}", " ");
        let words = call.words.join(" ");
        if printed.is_empty() {
            let why = String::from_utf8_lossy(&made.stderr);
            wrong.push(format!("`notchbook {words}` prints nothing: {why}"));
        } else if !call.prints.is_empty() && printed.trim_end() != call.prints.trim_end() {
            wrong.push(format!("`notchbook {words}` prints:\n{printed}"));
        }
    }
    assert!(wrong.is_empty(), "\n{}\n", wrong.join("\n"));
    assert!(changes.next().is_none(), "a change that no point makes");
    let pdf = home.path().join("out/tide-pouch/tide-pouch-small-a4.pdf");
    assert!(pdf.exists(), "the tour does not make {}", pdf.display());
}

/// The names of all files below a folder.
fn names(folder: &Path) -> Vec<String> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).expect("a folder") {
        let path = entry.expect("an entry").path();
        // So is what is kept for the next run.
        if path.ends_with(".notchbook-cache") {
            continue;
        }
        match path.is_dir() {
            true => found.extend(names(&path)),
            // The list of what was made is for the program.
            false
                if path
                    .file_name()
                    .is_some_and(|name| name == ".notchbook-made.json") => {}
            false => found.extend(
                path.file_name()
                    .map(|name| name.to_string_lossy().into_owned()),
            ),
        }
    }
    found.sort();
    found
}

#[test]
fn a_build_of_sizes_alone_makes_neither_booklets_nor_sheets_of_several() {
    let home = tempfile::tempdir().expect("an empty folder");
    for words in [&["new", "tide-pouch"][..], &["build", "--only-sizes"]] {
        let made = Command::new(env!("CARGO_BIN_EXE_notchbook"))
            .args(words)
            .current_dir(home.path())
            .output()
            .expect("the program");
        assert!(made.status.success(), "{words:?}: {made:?}");
    }
    assert_eq!(
        names(&home.path().join("out")),
        [
            "tide-pouch-large-a4.pdf",
            "tide-pouch-large-sheets-a4.pdf",
            "tide-pouch-small-a4.pdf",
            "tide-pouch-small-sheets-a4.pdf",
        ]
    );
}

//! No two files of a folder lean on each other: what one file names of another, followed from file to
//! file, never comes back to where it began.

use std::collections::{BTreeMap, BTreeSet};

use crate::rust::SourceFile;
use crate::{settle, sources};

/// A module by the names on the way to it, from the crate.
type Module = Vec<String>;

fn module(file: &SourceFile) -> Module {
    let below = file.path.trim_start_matches("src/").trim_end_matches(".rs");
    let mut names: Module = below.split('/').map(str::to_owned).collect();
    if names.last().is_some_and(|name| name == "mod") {
        names.pop();
    }
    names
}

/// Every path in the code of a file, groups opened: `super::{a, b::c}` is `super::a` and `super::b::c`.
fn paths(code: &str) -> Vec<String> {
    let mut found = Vec::new();
    let letter = |letter: char| letter.is_alphanumeric() || letter == '_';
    // `pub(in crate::book)` says who may see a thing, and names nothing.
    let begins = |at: usize| {
        !code[..at].ends_with(|before: char| letter(before) || before == ':')
            && !code[..at].ends_with("(in ")
    };
    for start in ["crate::", "super::", "self::"] {
        for (at, _) in code.match_indices(start).filter(|(at, _)| begins(*at)) {
            open(&code[at..], String::new(), &mut found);
        }
    }
    // A `mod.rs` hands on what its children hold: `pub use child::Thing`.
    for (at, _) in code.match_indices("use ").filter(|(at, _)| begins(*at)) {
        open(&code[at + 4..], "self::".to_owned(), &mut found);
    }
    found
}

/// Takes down the path that a text begins with, behind what stands before it; gives what is left.
fn open<'c>(code: &'c str, before: String, found: &mut Vec<String>) -> &'c str {
    let code = code.trim_start();
    let end = code
        .find(|letter: char| !(letter.is_alphanumeric() || letter == '_' || letter == ':'))
        .unwrap_or(code.len());
    let path = format!("{before}{}", &code[..end]);
    let mut rest = &code[end..];
    if !(path.ends_with("::") && rest.starts_with('{')) {
        found.push(path);
        return rest;
    }
    loop {
        rest = open(&rest[1..], path.clone(), found).trim_start();
        if !rest.starts_with(',') {
            return rest.strip_prefix('}').unwrap_or(rest);
        }
    }
}

/// The module of the same crate that a path leads to; `None` when it leads elsewhere.
fn end(path: &str, own: &Module, is_folder: bool, known: &BTreeSet<Module>) -> Option<Module> {
    let mut names = path.split("::").peekable();
    let mut at: Module = match *names.peek()? {
        "crate" => Vec::new(),
        _ => own.clone(),
    };
    while let Some(word @ ("crate" | "self" | "super")) = names.peek().copied() {
        if word == "super" {
            at.pop();
        } else if word == "self" && !is_folder {
            return None;
        }
        names.next();
    }
    for name in names {
        let next: Module = at.iter().cloned().chain([name.to_owned()]).collect();
        if !known.contains(&next) {
            break;
        }
        at = next;
    }
    (known.contains(&at) && at != *own).then_some(at)
}

/// What each module names of its own folder below `src`.
fn names(files: &[SourceFile]) -> BTreeMap<Module, BTreeSet<Module>> {
    let known: BTreeSet<Module> = files.iter().map(module).collect();
    files
        .iter()
        .map(|file| {
            let own = module(file);
            let is_folder = file.path.ends_with("/mod.rs");
            let ends = paths(&file.code)
                .into_iter()
                .filter_map(|path| end(&path, &own, is_folder, &known))
                .filter(|other| other.first() == own.first())
                .collect();
            (own, ends)
        })
        .collect()
}

/// A way from a module back to itself, if there is one.
fn circle(start: &Module, names: &BTreeMap<Module, BTreeSet<Module>>) -> Option<Vec<Module>> {
    let mut ways: Vec<Vec<Module>> = vec![vec![start.clone()]];
    let mut seen: BTreeSet<Module> = BTreeSet::new();
    while let Some(way) = ways.pop() {
        for next in way
            .last()
            .and_then(|last| names.get(last))
            .into_iter()
            .flatten()
        {
            if next == start {
                return Some(way);
            }
            if seen.insert(next.clone()) {
                ways.push(way.iter().cloned().chain([next.clone()]).collect());
            }
        }
    }
    None
}

fn circles(files: &[SourceFile]) -> Vec<String> {
    let names = names(files);
    let mut told: BTreeSet<BTreeSet<Module>> = BTreeSet::new();
    names
        .keys()
        .filter_map(|start| circle(start, &names))
        .filter(|way| told.insert(way.iter().cloned().collect()))
        .map(|way| {
            let words: Vec<String> = way.iter().map(|module| module.join("/")).collect();
            format!(
                "src: {} lean on each other in a circle: move what both need into a file of its own",
                words.join(" → ")
            )
        })
        .collect()
}

#[test]
fn no_files_of_a_folder_lean_on_each_other_in_a_circle() {
    settle(circles(&sources()));
}

fn planted(files: &[(&str, &str)]) -> Vec<String> {
    let file = |(path, code): &(&str, &str)| SourceFile {
        path: (*path).to_owned(),
        text: String::new(),
        code: (*code).to_owned(),
    };
    circles(&files.iter().map(file).collect::<Vec<_>>())
}

#[test]
fn a_planted_circle_is_seen() {
    let two = [
        ("src/a/mod.rs", "mod one; mod two; pub use one::One;"),
        ("src/a/one.rs", "use super::two::{Two, other};"),
        ("src/a/two.rs", "fn f() -> crate::a::one::One {}"),
    ];
    assert_eq!(planted(&two).len(), 1, "{:?}", planted(&two));
    let through_the_folder = [
        ("src/a/mod.rs", "mod one; pub use one::{One, more::Else};"),
        ("src/a/one.rs", "use super::Shared;"),
    ];
    assert_eq!(planted(&through_the_folder).len(), 1);
    let none = [
        (
            "src/a/mod.rs",
            "mod one; mod two; pub use one::One; pub use two::Two;",
        ),
        ("src/a/one.rs", "use super::two::Two; use crate::b::Thing;"),
        ("src/a/two.rs", "struct Two;"),
        ("src/b/mod.rs", "use crate::a::One;"),
    ];
    assert_eq!(planted(&none), Vec::<String>::new());
}

//! README.md tells the truth: its examples are one booklet that checks clean, and its lists are
//! those of the program.

#[path = "outside/bench.rs"]
mod bench;
#[path = "readme/tour.rs"]
mod tour;

use std::collections::{BTreeMap, BTreeSet};
use std::process::Command;

use bench::{print, root, written};
use notchbook::figure::{CLASSES, SYMBOLS};
use notchbook::measure::Unit;
use notchbook::model::{KINDS, NotionFigure, Verb};
use notchbook::typeset::Paper;

fn readme() -> String {
    std::fs::read_to_string(root().join("README.md")).expect("README.md")
}

/// The fenced examples that name a file, put together file by file.
fn booklet(readme: &str) -> BTreeMap<String, String> {
    let mut files: BTreeMap<String, String> = BTreeMap::new();
    let mut lines = readme.lines();
    while let Some(line) = lines.next() {
        let fence: String = line.chars().take_while(|letter| *letter == '`').collect();
        let Some((_, name)) = line[fence.len()..]
            .split_once(' ')
            .filter(|_| fence.len() >= 3)
        else {
            continue;
        };
        let text = files.entry(name.to_owned()).or_default();
        for line in lines.by_ref().take_while(|line| *line != fence) {
            text.push_str(line);
            text.push('\n');
        }
    }
    files
}

/// The words in code marks behind a mark in the text, up to an empty line.
fn listed<'a>(readme: &'a str, from: &str) -> BTreeSet<&'a str> {
    let start = readme
        .find(from)
        .unwrap_or_else(|| panic!("README.md no longer says “{from}”"));
    let rest = &readme[start..];
    let rest = &rest[..rest.find("\n\n").unwrap_or(rest.len())];
    rest.split('`').skip(1).step_by(2).collect()
}

/// The files of the booklet that stands beside the first, in a folder of its own.
const BESIDE: &str = "../shelf-caddy/";

#[test]
fn the_pattern_of_two_things_is_a_booklet_that_checks_clean() {
    let files = booklet(&readme());
    let own = files
        .iter()
        .filter_map(|(name, text)| Some((name.strip_prefix(BESIDE)?, text.as_str())));
    let files: Vec<(&str, &str)> = own.collect();
    assert_eq!(files.len(), 5, "its files: {files:?}");
    written(&files, |compiled| {
        let terminal = notchbook::diag::Terminal::new(false);
        let shown = |finding| terminal.show(finding, &compiled.sources, &compiled.sizes);
        let findings: Vec<String> = compiled.report.findings.iter().map(shown).collect();
        assert!(findings.is_empty(), "\n{}", findings.join("\n"));
        assert!(compiled.report.waived.is_empty());
        assert_eq!(compiled.sizes, ["short", "tall", "deep"]);
    });
}

#[test]
fn the_examples_are_one_booklet_that_checks_clean() {
    let readme = readme();
    let mut files = booklet(&readme);
    files.retain(|name, _| !name.starts_with(BESIDE));
    assert!(
        files.len() >= 5,
        "the examples name only {:?}",
        files.keys()
    );
    let files: Vec<(&str, &str)> = files
        .iter()
        .map(|(name, text)| (name.as_str(), text.as_str()))
        .collect();
    written(&files, |compiled| {
        let terminal = notchbook::diag::Terminal::new(false);
        let shown = |finding| terminal.show(finding, &compiled.sources, &compiled.sizes);
        let findings: Vec<String> = compiled.report.findings.iter().map(shown).collect();
        assert!(findings.is_empty(), "\n{}", findings.join("\n"));
        let waived: Vec<&str> = compiled
            .report
            .waived
            .iter()
            .map(|waived| waived.finding.code())
            .collect();
        assert_eq!(
            waived,
            ["loose-measurement", "unused-measurement"],
            "what the examples waive"
        );
        for size in 0..compiled.sizes.len() {
            assert!(print(compiled, size, Paper::A4).starts_with(b"%PDF"));
        }
    });
}

#[test]
fn the_lists_are_those_of_the_program() {
    let readme = readme();
    for kind in KINDS.iter().filter(|kind| kind.word != "other") {
        let row = readme
            .lines()
            .find(|line| line.starts_with(&format!("| `{}` | ", kind.word)))
            .unwrap_or_else(|| panic!("README.md has no line for the kind `{}`", kind.word));
        let figures: Vec<&str> = row
            .rsplit('|')
            .nth(1)
            .unwrap_or("")
            .split_whitespace()
            .collect();
        let takes: Vec<String> = kind
            .takes
            .iter()
            .map(|figure| format!("`{}`", figure.word()))
            .collect();
        assert_eq!(figures, takes, "the figures of the kind `{}`", kind.word);
    }
    let other = KINDS.last().expect("a kind");
    assert_eq!(
        other.takes.len(),
        NotionFigure::ALL.len(),
        "anything else takes every figure"
    );
    for unit in listed(&readme, "Units are, of length,") {
        assert!(Unit::parse(unit).is_some(), "`{unit}` is no unit");
    }
    let verbs = listed(&readme, "**Work.**");
    let missing: Vec<_> = Verb::ALL
        .iter()
        .filter(|(verb, _)| !verbs.contains(verb))
        .collect();
    assert!(missing.is_empty(), "README.md does not name {missing:?}");
    let drawn = listed(&readme, "Any SVG.");
    let classes = CLASSES.iter().map(|class| class.name);
    for name in classes.chain(SYMBOLS.iter().map(|(name, _)| *name)) {
        assert!(
            drawn.contains(name),
            "README.md does not name the class or symbol `{name}`"
        );
    }
}

#[test]
fn the_commands_are_those_of_the_program() {
    let readme = readme();
    let help = Command::new(env!("CARGO_BIN_EXE_notchbook"))
        .arg("--help")
        .output()
        .expect("the program");
    let help = String::from_utf8(help.stdout).expect("words");
    let commands = help
        .lines()
        .skip_while(|line| !line.starts_with("Commands:"))
        .skip(1);
    let commands: BTreeSet<&str> = commands
        .take_while(|line| line.starts_with("  "))
        // A long description goes on in a line that is set further in.
        .filter(|line| !line.starts_with("   "))
        .filter_map(|line| line.split_whitespace().next())
        .filter(|command| *command != "help")
        .collect();
    let told: BTreeSet<&str> = readme
        .lines()
        .filter_map(|line| line.strip_prefix("| `notchbook "))
        .filter_map(|line| line.split([' ', '`']).next())
        .collect();
    assert_eq!(
        told, commands,
        "the table of commands in README.md, and the program's own"
    );
}

/// Whoever follows README.md does what `.ci/run` does.
#[test]
fn the_first_commands_are_those_that_are_tried_on_every_change() {
    let run = std::fs::read_to_string(root().join(".ci/run")).expect(".ci/run");
    for command in ["cargo run -- build", "cargo test"] {
        assert!(
            readme().lines().any(|line| line == command),
            "README.md does not say `{command}`"
        );
        assert!(
            run.lines().any(|line| line == command),
            ".ci/run does not run `{command}`"
        );
    }
}

#[test]
fn the_table_of_limits_is_the_programs() {
    let readme = readme();
    let rows: Vec<String> = notchbook::limits::ALL
        .iter()
        .map(|limit| {
            format!(
                "| {} | {} |",
                limit.what,
                notchbook::limits::thousands(limit.most)
            )
        })
        .collect();
    assert!(
        readme.contains(&format!(
            "| there may be | at the most |\n| --- | --- |\n{}\n\n",
            rows.join("\n")
        )),
        "the README's table of limits is to hold:\n{}",
        rows.join("\n")
    );
}

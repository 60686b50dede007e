//! The manual tells the truth: each word has its page, every example checks clean, and the reference
//! pages are what the pages come to.
//!
//! `NOTCHBOOK_BLESS=1` rewrites the reference pages.

#[path = "outside/bench.rs"]
mod bench;
#[path = "manual/starter.rs"]
mod starter;

use std::collections::BTreeSet;

use bench::{root, written};
use notchbook::diag::Terminal;
use notchbook::manual::{Chapter, ManualPage, find, pages, reference};
use notchbook::syntax::RECORDS;

/// Fails with all that is wrong, or passes when nothing is.
#[track_caller]
fn settle(wrong: &[String]) {
    assert!(wrong.is_empty(), "\n{}\n", wrong.join("\n"));
}

#[test]
fn the_reference_pages_are_up_to_date() {
    let folder = root().join("src/manual/pages");
    let blessing = std::env::var_os("NOTCHBOOK_BLESS").is_some_and(|value| value == "1");
    let mut wrong = Vec::new();
    let mut names = BTreeSet::new();
    for chapter in Chapter::ALL {
        let name = format!("{}.md", chapter.name());
        let (path, wanted) = (folder.join(&name), reference(*chapter));
        if blessing {
            std::fs::create_dir_all(&folder).expect("the folder of the pages");
            std::fs::write(&path, &wanted).expect("a writable reference page");
        }
        if std::fs::read_to_string(&path).unwrap_or_default() != wanted {
            wrong.push(format!(
                "src/manual/pages/{name}: it is not what the pages come to: NOTCHBOOK_BLESS=1 rewrites it"
            ));
        }
        names.insert(name);
    }
    for entry in std::fs::read_dir(&folder).expect("the folder of the pages") {
        let name = entry.expect("an entry").file_name().into_string();
        let name = name.expect("a name in letters");
        if !names.contains(&name) {
            wrong.push(format!(
                "src/manual/pages/{name}: no chapter is called so: take it out"
            ));
        }
    }
    settle(&wrong);
}

#[test]
fn every_key_has_its_page_and_no_page_is_left_over() {
    let mut wrong = Vec::new();
    for record in RECORDS {
        let mut inside = "";
        let mut told = Vec::new();
        let mut fence = "";
        for line in record.page.lines() {
            let ticks = &line[..line.len() - line.trim_start_matches('`').len()];
            if fence.is_empty() && ticks.len() >= 3 {
                fence = ticks;
            } else if line == fence {
                fence = "";
            } else if let Some(heading) = line.strip_prefix("# ").filter(|_| fence.is_empty()) {
                inside = heading;
                if !RECORDS.iter().any(|known| known.what == heading) {
                    wrong.push(format!(
                        "{}: no record is called “{heading}”: take it out, or name it in src/syntax/keys.rs",
                        record.file
                    ));
                }
            } else if fence.is_empty() && inside == record.what {
                told.extend(line.strip_prefix("## "));
            }
        }
        for key in record.keys.iter().filter(|key| !told.contains(key)) {
            wrong.push(format!(
                "{}: {} has a key `{key}`, which is not explained: add `## {key}` below `# {}`",
                record.file, record.what, record.what
            ));
        }
        for key in told.iter().filter(|key| !record.keys.contains(key)) {
            wrong.push(format!(
                "{}: `{key}` is explained, and {} has no such key: take it out",
                record.file, record.what
            ));
        }
    }
    settle(&wrong);
}

/// The readers open records by the name that messages use; each must be in the table of the manual.
#[test]
fn every_record_that_is_read_is_in_the_table() {
    let mut wrong = Vec::new();
    for entry in std::fs::read_dir(root().join("src/syntax")).expect("the readers") {
        let path = entry.expect("an entry").path();
        if path.extension().is_none_or(|ending| ending != "rs") || path.ends_with("fields.rs") {
            continue;
        }
        let text = std::fs::read_to_string(&path).expect("a reader");
        for call in text.split("Fields::open").skip(1) {
            let call = call.split("findings)").next().unwrap_or("");
            // What a record needs stands in brackets before its name.
            let call = call.rsplit("],").next().unwrap_or("");
            let Some(what) = call.split('"').nth(1) else {
                continue;
            };
            if !RECORDS.iter().any(|record| record.what == what) {
                wrong.push(format!(
                    "{}: the manual does not know the record “{what}”: add it to RECORDS in src/syntax/keys.rs",
                    path.display()
                ));
            }
        }
    }
    settle(&wrong);
}

#[test]
fn every_page_is_found_and_opens_with_one_short_paragraph() {
    let mut wrong = Vec::new();
    for page in pages() {
        let mut say = |fault: &str| wrong.push(format!("{} ({}): {fault}", page.name, page.sort));
        if !find(&page.name).contains(&page) {
            say("it is not found by its name");
        }
        if page.summary.is_empty() || page.summary.chars().count() > 200 {
            say("it does not open with one short paragraph");
        }
    }
    settle(&wrong);
}

#[test]
fn every_example_checks_clean() {
    let mut wrong = Vec::new();
    for page in pages() {
        // The examples of checks are held by the tests of the checks.
        if page.chapter == Chapter::Checks {
            continue;
        }
        let needs_one = page.chapter != Chapter::Units;
        match starter::with_examples(&page.text) {
            Ok(Some(files)) => wrong.extend(findings(&page, &files)),
            Ok(None) if needs_one => {
                wrong.push(format!("{} ({}): it has no example", page.name, page.sort))
            }
            Ok(None) => {}
            Err(fault) => wrong.push(format!("{} ({}): {fault}", page.name, page.sort)),
        }
    }
    settle(&wrong);
}

/// What is found in the booklet that a page's examples come to.
fn findings(page: &ManualPage, files: &[(String, String)]) -> Vec<String> {
    let files: Vec<(&str, &str)> = files
        .iter()
        .map(|(name, text)| (name.as_str(), text.as_str()))
        .collect();
    let terminal = Terminal::new(false);
    written(&files, |compiled| {
        let found = compiled.report.findings.iter().map(|finding| {
            let shown = terminal.show(finding, &compiled.sources, &compiled.sizes);
            format!("{} ({}):\n{shown}", page.name, page.sort)
        });
        found.collect()
    })
}

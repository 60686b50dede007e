//! Every check held to its cases in `tests/checks/`, to its page and to its line in the table.
//!
//! `NOTCHBOOK_BLESS=1` rewrites the marks in the cases.

#[path = "checks/huge.rs"]
mod huge;
#[path = "checks/stitches.rs"]
mod stitches;
mod support;
#[path = "checks/verbs.rs"]
mod verbs;

use std::sync::LazyLock;

use notchbook::checks::{CHECKS, by_code};
use support::booklet::{Outcome, run, tests};
use support::chapter::{Block, Chapter};

/// Every chapter, and what compiling each of its cases came to.
static RAN: LazyLock<Vec<(Chapter, Vec<Outcome>)>> = LazyLock::new(|| {
    let mut paths: Vec<_> = std::fs::read_dir(tests().join("checks"))
        .expect("the folder of the cases")
        .map(|entry| entry.expect("an entry of the folder").path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "md"))
        .collect();
    paths.sort();
    let chapters = paths.iter().map(|path| Chapter::read(path));
    chapters
        .map(|chapter| {
            let outcomes = chapter
                .cases
                .iter()
                .map(|case| {
                    let brought = |file: &str| case.blocks.iter().any(|block| block.file == file);
                    let common = chapter.common.iter().filter(|block| !brought(&block.file));
                    run(&case.blocks.iter().chain(common).collect::<Vec<_>>())
                })
                .collect();
            (chapter, outcomes)
        })
        .collect()
});

fn blessing() -> bool {
    std::env::var_os("NOTCHBOOK_BLESS").is_some_and(|value| value == "1")
}

/// Fails with all that is wrong, or passes when nothing is.
#[track_caller]
fn settle(wrong: &[String]) {
    assert!(wrong.is_empty(), "\n{}\n", wrong.join("\n"));
}

#[test]
fn the_base_booklet_is_clean() {
    let wrong: Vec<String> = run(&[])
        .found
        .iter()
        .map(|found| format!("{}: {}", found.file, found.mark.join("\n")))
        .collect();
    settle(&wrong);
}

#[test]
fn cases_find_what_they_mark_and_nothing_else() {
    let mut wrong = Vec::new();
    for (chapter, outcomes) in RAN.iter() {
        let mut rewritten = Vec::new();
        for (case, outcome) in chapter.cases.iter().zip(outcomes) {
            let (marked, strays) = outcome.marked(&case.blocks);
            let differs = case
                .blocks
                .iter()
                .zip(&marked)
                .any(|(block, found)| block.marks != found.marks);
            let mut report = String::new();
            if differs && !blessing() {
                let blocks = case.blocks.iter().zip(&marked);
                report.extend(blocks.map(|(block, found)| block.compare(found)));
            }
            for stray in strays {
                report.push_str(&format!(
                    "+ {}:{}: {}\n  (the case does not give this place: give the file, or mend the case)\n",
                    stray.file,
                    stray.line,
                    stray.mark.join("\n    ")
                ));
            }
            if !report.is_empty() {
                wrong.push(format!(
                    "{}, “{}”:\n{report}",
                    chapter.path.display(),
                    case.name
                ));
            }
            rewritten.push(marked);
        }
        if blessing() {
            chapter.rewrite(&rewritten);
        }
    }
    settle(&wrong);
}

#[test]
fn every_check_has_a_case_that_fires_one_that_is_silent_and_one_that_is_waived() {
    let mut wrong = Vec::new();
    for check in CHECKS {
        let Some((chapter, outcomes)) = RAN.iter().find(|(chapter, _)| chapter.code == check.code)
        else {
            wrong.push(format!(
                "{}: there is no tests/checks/{}.md",
                check.code, check.code
            ));
            continue;
        };
        if !outcomes.iter().any(|outcome| outcome.fires(check.code)) {
            wrong.push(format!(
                "{}: no case in which it finds something",
                check.code
            ));
        }
        if !outcomes.iter().any(|outcome| outcome.silent(check.code)) {
            wrong.push(format!("{}: no case in which it is silent", check.code));
        }
        let meant = chapter
            .cases
            .iter()
            .zip(outcomes)
            .filter(|(case, _)| case.name.starts_with("silent"));
        wrong.extend(
            meant
                .filter(|(_, outcome)| outcome.fires(check.code))
                .map(|(case, _)| format!("{}: “{}” is not silent", check.code, case.name)),
        );
        let waived = outcomes.iter().any(|outcome| {
            outcome
                .found
                .iter()
                .any(|found| found.code == check.code && found.waived)
        });
        if check.waivable && !waived {
            wrong.push(format!(
                "{}: it may be waived, and no case waives it",
                check.code
            ));
        }
    }
    let strangers = RAN
        .iter()
        .filter(|(chapter, _)| by_code(&chapter.code).is_none());
    wrong.extend(strangers.map(|(chapter, _)| format!("{}: there is no such check", chapter.code)));
    settle(&wrong);
}

/// A block with a waiver of the whole file's, or of each of its steps'.
fn waiving(block: &Block, code: &str) -> Block {
    let comment = format!("<!-- waive {code}: it is meant so -->");
    let mut text = Vec::new();
    let mut fence = String::new();
    for line in &block.text {
        text.push(line.clone());
        let ticks: String = line.chars().take_while(|letter| *letter == '`').collect();
        if ticks.len() >= 3 {
            fence = if fence.is_empty() {
                ticks
            } else {
                String::new()
            };
        }
        let heading = line.starts_with("## ") && fence.is_empty();
        if heading || line.starts_with("<svg ") {
            text.extend([String::new(), comment.clone(), String::new()]);
        }
    }
    if block.file == "booklet.yaml" && text.iter().all(|line| !line.starts_with("waive:")) {
        text.push("waive:".to_owned());
        text.push(format!("  - {{check: {code}, because: it is meant so}}"));
    }
    Block::of_page(&block.file, block.over, &text.join("\n"))
}

#[test]
fn a_waiver_counts_where_the_page_says() {
    let mut wrong = Vec::new();
    for check in CHECKS.iter().filter(|check| check.waivable) {
        let page = check.explanation();
        let mut tried = false;
        for (chapter, outcomes) in RAN.iter().filter(|(chapter, _)| chapter.code == check.code) {
            for (case, outcome) in chapter.cases.iter().zip(outcomes) {
                let own = outcome
                    .found
                    .iter()
                    .filter(|found| found.code == check.code);
                let Some(found) = own.clone().find(|found| !found.waived) else {
                    continue;
                };
                let advice = match found.file.ends_with(".yaml") {
                    true => format!(
                        "- in booklet.yaml, under `waive:`: `{{check: {}, ",
                        check.code
                    ),
                    false => format!("- in words and diagrams: `<!-- waive {}: ", check.code),
                };
                if !page.contains(&advice) {
                    wrong.push(format!(
                        "{}, “{}”: found in {}, where its page waives nothing",
                        check.code, case.name, found.file
                    ));
                    continue;
                }
                let brought = |file: &str| case.blocks.iter().any(|block| block.file == file);
                let common = chapter.common.iter().filter(|block| !brought(&block.file));
                let blocks: Vec<&Block> = case.blocks.iter().chain(common).collect();
                let name = found
                    .file
                    .rsplit_once("pouch/")
                    .map_or("", |(_, name)| name);
                if tried || !blocks.iter().any(|block| block.file == name) {
                    continue;
                }
                tried = true;
                let blocks: Vec<Block> = blocks
                    .iter()
                    .map(|block| {
                        if block.file == name {
                            waiving(block, check.code)
                        } else {
                            block.bare()
                        }
                    })
                    .collect();
                let again = run(&blocks.iter().collect::<Vec<_>>());
                let waived = again.found.iter().any(|one| {
                    one.code == check.code && one.message == found.message && one.waived
                });
                if !waived {
                    wrong.push(format!(
                        "{}, “{}”: a waiver in {name} takes nothing away",
                        check.code, case.name
                    ));
                }
            }
        }
        if !tried {
            wrong.push(format!(
                "{}: no case in which its waiver can be tried",
                check.code
            ));
        }
    }
    settle(&wrong);
}

#[test]
fn findings_have_a_check_its_level_a_fact_and_an_act() {
    let mut wrong = Vec::new();
    for (chapter, outcomes) in RAN.iter() {
        for found in outcomes.iter().flat_map(|outcome| &outcome.found) {
            let told = format!("{}: {}: {}", chapter.code, found.code, found.message);
            match by_code(found.code) {
                None => wrong.push(format!("{told}\n  is in no table")),
                Some(check) if check.level != found.level => {
                    wrong.push(format!("{told}\n  has another level in the table"))
                }
                Some(check) if found.waived && !check.waivable => {
                    wrong.push(format!("{told}\n  may not be waived"))
                }
                Some(_) => {}
            }
            if found.message.is_empty()
                || found.message.ends_with('.')
                || found.message.contains('\n')
            {
                wrong.push(format!(
                    "{told}\n  is no fact on one line without a full stop"
                ));
            }
            if found.hint.is_empty() || found.hint.ends_with('.') || found.hint.contains('\n') {
                wrong.push(format!(
                    "{told}\n  has no act on one line without a full stop: {}",
                    found.hint
                ));
            }
        }
    }
    settle(&wrong);
}

/// The lines of a page under a heading; none when there is no such heading.
fn section<'a>(page: &'a str, heading: &str) -> Vec<&'a str> {
    let mut fence = "";
    let mut inside = false;
    let mut lines = Vec::new();
    for line in page.lines() {
        let ticks = &line[..line.len() - line.trim_start_matches('`').len()];
        if fence.is_empty() && ticks.len() >= 3 {
            fence = ticks;
        } else if line == fence {
            fence = "";
        } else if let Some(name) = line.strip_prefix("## ").filter(|_| fence.is_empty()) {
            inside = name == heading;
            continue;
        }
        if inside && !(lines.is_empty() && line.is_empty()) {
            lines.push(line);
        }
    }
    lines
}

/// The examples of a section as files of a booklet: facts and words are laid over the base's.
fn examples(section: &[&str]) -> Vec<Block> {
    let mut blocks = Vec::new();
    let mut lines = section.iter().copied();
    while let Some(line) = lines.next() {
        let fence: String = line.chars().take_while(|letter| *letter == '`').collect();
        if fence.len() < 3 {
            continue;
        }
        let text: Vec<&str> = lines.by_ref().take_while(|line| *line != fence).collect();
        let text = text.join("\n");
        blocks.push(match &line[fence.len()..] {
            "yaml" => Block::of_page("booklet.yaml", text.lines().any(|line| line.contains(": ") || line.ends_with(':')), &text),
            "yaml published" => Block::of_page("published/booklet.yaml", true, &text),
            "json" => Block::of_page("manifest.json", false, &text),
            "md help.md" => Block::of_page("help.md", false, &text),
            "md" => Block::of_page("make.md", !text.starts_with("# "), &text),
            "svg" if text.starts_with("<svg") => Block::of_page("figures/sew.svg", false, &text),
            "svg" => {
                let root = r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 76 44" width="76mm" data-scale="1:5">"#;
                Block::of_page("figures/sew.svg", false, &format!("{root}\n{text}\n</svg>"))
            }
            "typ" if text.starts_with("#set document") => Block::of_page("templates/booklet.typ", false, &text),
            "typ" => Block::of_page("templates/step.typ", false, &text),
            other => panic!("an example of the kind `{other}`"),
        });
    }
    blocks
}

#[test]
fn every_page_has_its_sections_and_examples_that_tell_the_truth() {
    let mut wrong = Vec::new();
    for check in CHECKS {
        let page = check.page();
        let mut say = |fault: &str| wrong.push(format!("{}: {fault}", check.code));
        if !page.summary.ends_with('.') || page.summary.len() > 120 {
            say("the page does not open with one short sentence");
        }
        if section(&page.text, "Why it matters").is_empty() {
            say("the page does not say why it matters");
        }
        let lines = page.text.lines().count();
        if lines > 60 {
            say(&format!("the page has {lines} lines"));
        }
        for (heading, fires) in [("Wrong", true), ("Right", false)] {
            let blocks = examples(&section(&page.text, heading));
            if blocks.is_empty() || blocks.iter().any(|block| block.text.is_empty()) {
                say(&format!("no example under “{heading}”"));
                continue;
            }
            let outcome = run(&blocks.iter().collect::<Vec<_>>());
            if fires && !outcome.fires(check.code) {
                say("the wrong example is not found to be wrong; what is found is:");
            }
            let untrue = fires && !outcome.fires(check.code);
            for found in outcome
                .found
                .iter()
                .filter(|found| untrue || !(fires || found.waived))
            {
                say(&format!("under “{heading}”: {}", found.mark.join("\n    ")));
            }
        }
    }
    settle(&wrong);
}

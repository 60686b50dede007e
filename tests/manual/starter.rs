//! The examples of a page laid over the small booklet that `notchbook new` makes.
//!
//! Facts (`yaml`) take the place of the keys that they name, however deep. A `work` block is a step of
//! its own before the sewing, or, with the name of a step behind it (`work sew`), the work of that step.
//! Words (`md`) are steps at the end, or, with `help.md` behind, the file of questions. `svg` is drawn in the diagram of the sewing, or stands in the file
//! that is named behind it; `formula` holds an expectation a line.

use std::collections::BTreeMap;

use crate::bench::root;

const FILES: &[&str] = &[
    "booklet.yaml",
    "make.md",
    "figures/cut.svg",
    "figures/sew.svg",
    "figures/turn.svg",
];

/// The files of the starter with a page's examples laid over them; none when the page has none.
pub fn with_examples(page: &str) -> Result<Option<Vec<(String, String)>>, String> {
    let mut files: BTreeMap<String, String> = FILES
        .iter()
        .map(|name| {
            let path = root().join("templates/starter").join(name);
            let text = std::fs::read_to_string(path).expect("a file of the starter");
            ((*name).to_owned(), text)
        })
        .collect();
    let examples = fenced(page);
    if examples.is_empty() {
        return Ok(None);
    }
    for (info, text) in examples {
        let (sort, name) = info.split_once(' ').unwrap_or((info, ""));
        match (sort, name) {
            ("yaml", _) => change(&mut files, "booklet.yaml", |old| facts_over(old, text)),
            ("formula", _) => change(&mut files, "booklet.yaml", |old| {
                let lines = text.lines().map(|line| format!("  - that: \"{line}\"\n"));
                facts_over(old, &format!("expect:\n{}", lines.collect::<String>()))
            }),
            ("work", "") => change(&mut files, "make.md", |old| {
                let told = gap_told(text);
                let step = format!("## Try it {{#try}}\n\n```work\n{text}```\n\nDo it.{told}\n\n");
                let at = old.find("## Sew the sides").expect("the sewing");
                format!("{}{step}{}", &old[..at], &old[at..])
            }),
            ("work", step) => change(&mut files, "make.md", |old| working(old, step, text)),
            ("md", "help.md") => {
                files.insert(name.to_owned(), text.to_owned());
            }
            ("md", _) => change(&mut files, "make.md", |old| format!("{old}\n{text}")),
            ("svg", "") => change(&mut files, "figures/sew.svg", |_| {
                let open = r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 76 44" width="76mm" data-scale="1:5">"#;
                format!("{open}\n{text}</svg>\n")
            }),
            ("svg", file) => {
                files.insert(file.to_owned(), text.to_owned());
            }
            _ => return Err(format!("an example of the kind `{info}`")),
        }
    }
    Ok(Some(files.into_iter().collect()))
}

fn change(files: &mut BTreeMap<String, String>, name: &str, new: impl FnOnce(&str) -> String) {
    let file = files.get_mut(name).expect("a file of the starter");
    *file = new(file);
}

/// The fenced examples of a page: what stands behind the fence, and the text.
fn fenced(page: &str) -> Vec<(&str, &str)> {
    let mut found = Vec::new();
    let mut rest = page;
    while let Some(start) = rest.find("```") {
        let length = rest[start..].chars().take_while(|c| *c == '`').count();
        let fence = &rest[start..start + length];
        let after = &rest[start + length..];
        let (info, body) = after.split_once('\n').expect("a line behind the fence");
        let end = body.find(&format!("{fence}\n")).or_else(|| {
            let end = body.len().checked_sub(length)?;
            body.ends_with(fence).then_some(end)
        });
        let end = end.expect("a closing fence");
        found.push((info, &body[..end]));
        rest = &body[end + length..];
    }
    found
}

/// The words with another work block in the step of this id.
fn working(words: &str, step: &str, work: &str) -> String {
    let at = words.find(&format!("{{#{step}}}")).expect("the step");
    let open = at + words[at..].find("```work\n").expect("its work") + "```work\n".len();
    let close = open + words[open..].find("```").expect("the end of its work");
    let told = gap_told(work);
    format!(
        "{}{work}```\n{told}\n{}",
        &words[..open],
        &words[close + 3..]
    )
}

/// What the words of a step say of a gap that its work leaves.
fn gap_told(work: &str) -> &'static str {
    if work.contains("leave:") {
        "\nLeave a gap.\n"
    } else {
        ""
    }
}

/// A key with the lines below it.
struct Entry<'a> {
    key: &'a str,
    first: &'a str,
    below: Vec<&'a str>,
}

/// Facts laid over others: a key with keys of its own is laid over the same key, any other takes its place.
fn facts_over(old: &str, new: &str) -> String {
    over(
        &old.lines().collect::<Vec<_>>(),
        &new.lines().collect::<Vec<_>>(),
    )
    .iter()
    .map(|line| format!("{line}\n"))
    .collect()
}

fn over<'a>(old: &[&'a str], new: &[&'a str]) -> Vec<&'a str> {
    let (old, mut new) = (entries(old), entries(new));
    let mut lines = Vec::new();
    for entry in old {
        match new.iter().position(|other| other.key == entry.key) {
            None => lines.extend([vec![entry.first], entry.below].concat()),
            Some(at) => {
                let other = new.remove(at);
                lines.push(other.first);
                if keyed(&entry) && keyed(&other) {
                    lines.extend(over(&entry.below, &other.below));
                } else {
                    lines.extend(other.below);
                }
            }
        }
    }
    for entry in new {
        lines.push(entry.first);
        lines.extend(entry.below);
    }
    lines
}

fn indent(line: &str) -> usize {
    line.len() - line.trim_start().len()
}

fn keyed(entry: &Entry<'_>) -> bool {
    entry
        .below
        .first()
        .is_some_and(|line| !line.trim_start().starts_with('-'))
}

fn entries<'a>(lines: &[&'a str]) -> Vec<Entry<'a>> {
    let told = |line: &&&str| !line.trim().is_empty() && !line.trim_start().starts_with('#');
    let mut entries: Vec<Entry<'a>> = Vec::new();
    let level = lines.iter().find(told).map_or(0, |line| indent(line));
    for line in lines.iter().filter(told) {
        if indent(line) == level {
            let key = line.trim().split(':').next().unwrap_or("");
            entries.push(Entry {
                key,
                first: line,
                below: Vec::new(),
            });
        } else if let Some(entry) = entries.last_mut() {
            entry.below.push(line);
        }
    }
    entries
}

//! Diagrams of all sizes as one: the shape of the middle size, the words of all.

use serde_json::Value;

use super::data::Sheaf;
use crate::figure::escape;

/// Puts one drawing for all sizes in the place of each diagram of the first; a diagram whose words
/// cannot be laid over one another is taken out, rather than tell one size's figures to all.
pub(super) fn merge_drawings(sheaf: &mut Sheaf, sizes: &[&Sheaf], fits: &dyn Fn(&str) -> bool) {
    let origins = sheaf.origins.clone();
    for (path, origin) in origins {
        // The same drawing has another number in a size that leaves a step out.
        let found: Vec<(&String, &Vec<u8>)> = sizes
            .iter()
            .filter_map(|one| {
                let own = one.origins.iter().find(|(_, other)| **other == origin).map(|(own, _)| own)?;
                Some((own, one.files.get(own)?))
            })
            .collect();
        let texts: Vec<&str> = found.iter().filter_map(|(_, bytes)| std::str::from_utf8(bytes).ok()).collect();
        let row = merged(&texts, &in_a_row).filter(|svg| fits(svg));
        // Rows that are too long for their labels are left to the words of the step.
        match row.or_else(|| merged(&texts, &by_size)) {
            Some(svg) => {
                sheaf.files.insert(path.clone(), svg.into_bytes());
            }
            None => {
                take_out(&mut sheaf.data, &path);
                sheaf.files.remove(&path);
            }
        }
    }
    // Steps that the first size leaves out bring their diagrams along.
    adopt(sheaf, sizes);
}

/// The drawing of the middle size with the words of all sizes; `None` when they do not match.
fn merged(texts: &[&str], label: &dyn Fn(&[&str]) -> String) -> Option<String> {
    let middle = *texts.get(texts.len() / 2)?;
    if texts.iter().all(|text| *text == middle) {
        return Some(middle.to_owned());
    }
    let documents: Vec<roxmltree::Document<'_>> =
        texts.iter().map(|text| roxmltree::Document::parse(text).ok()).collect::<Option<_>>()?;
    let words: Vec<Vec<(std::ops::Range<usize>, String)>> = documents
        .iter()
        .map(|document| {
            document
                .descendants()
                .filter(|node| {
                    node.is_text()
                        && node.parent().is_some_and(|parent| matches!(parent.tag_name().name(), "text" | "tspan"))
                })
                .map(|node| (node.range(), node.text().unwrap_or("").to_owned()))
                .collect()
        })
        .collect();
    let own = &words[texts.len() / 2];
    if words.iter().any(|other| other.len() != own.len()) {
        return None;
    }
    let mut svg = String::new();
    let mut at = 0;
    for (index, (range, _)) in own.iter().enumerate() {
        let row: Vec<&str> = words.iter().map(|other| other[index].1.as_str()).collect();
        svg.push_str(&middle[at..range.start]);
        svg.push_str(&escape(&label(&row)));
        at = range.end;
    }
    svg.push_str(&middle[at..]);
    Some(svg)
}

/// A label that says where to look.
fn by_size(all: &[&str]) -> String {
    match all {
        [first, rest @ ..] if rest.iter().any(|one| one != first) => "by size".to_owned(),
        _ => in_a_row(all),
    }
}

/// Words that differ in figures alone, in a row: "cut 20 (26, 32) cm". The second system's figures in
/// brackets are left out where they differ: a label has no room for both.
pub(super) fn in_a_row(all: &[&str]) -> String {
    let Some(first) = all.first() else { return String::new() };
    if all.iter().all(|one| one == first) {
        return (*first).to_owned();
    }
    let plain: Vec<String> = all.iter().map(|one| without_brackets(one)).collect();
    let letters: Vec<Vec<char>> = plain.iter().map(|one| one.chars().collect()).collect();
    let shortest = letters.iter().map(Vec::len).min().unwrap_or(0);
    let figure =
        |letter: char| letter.is_ascii_digit() || matches!(letter, '.' | '/' | '⁄') || "½¼¾⅛⅜⅝⅞⅓⅔".contains(letter);
    let same = |at: usize| letters.iter().all(|one| one[at] == letters[0][at]);
    let same_back =
        |at: usize| letters.iter().all(|one| one[one.len() - 1 - at] == letters[0][letters[0].len() - 1 - at]);
    let mut start = (0..shortest).take_while(|at| same(*at)).count();
    while start > 0 && figure(letters[0][start - 1]) {
        start -= 1;
    }
    let mut end = (0..shortest - start).take_while(|at| same_back(*at)).count();
    while end > 0 && figure(letters[0][letters[0].len() - end]) {
        end -= 1;
    }
    let text = |letters: &[char]| letters.iter().collect::<String>();
    let middles: Vec<String> = letters.iter().map(|one| text(&one[start..one.len() - end])).collect();
    let before = text(&letters[0][..start]);
    let after = text(&letters[0][letters[0].len() - end..]);
    format!("{before}{} ({}){after}", middles[0], middles[1..].join(", "))
}

/// `20 cm (7⅞ in)` without its brackets.
fn without_brackets(words: &str) -> String {
    let mut out = String::new();
    let mut rest = words;
    while let Some(open) = rest.find('(') {
        let Some(close) = rest[open..].find(')') else { break };
        let inside = &rest[open + 1..open + close];
        let measure = inside.starts_with(|letter: char| letter.is_ascii_digit() || "½¼¾⅛⅜⅝⅞⅓⅔¹²³⁵⁷".contains(letter));
        if measure {
            out.push_str(rest[..open].trim_end());
        } else {
            out.push_str(&rest[..open + close + 1]);
        }
        rest = &rest[open + close + 1..];
    }
    out.push_str(rest);
    out
}

/// Takes a diagram out wherever it is shown.
fn take_out(data: &mut Value, path: &str) {
    match data {
        Value::Array(items) => {
            items.retain(|item| item["path"].as_str() != Some(path) || item["kind"].as_str() != Some("figure"));
            items.iter_mut().for_each(|item| take_out(item, path));
        }
        Value::Object(fields) => {
            for (_, value) in fields.iter_mut() {
                if value["kind"].as_str() == Some("figure") && value["path"].as_str() == Some(path) {
                    *value = Value::Null;
                } else {
                    take_out(value, path);
                }
            }
        }
        _ => {}
    }
}

/// Files of later sizes that the merged data name and the first size does not have. Sizes number
/// their diagrams by themselves, so that such a file gets a name of its own.
fn adopt(sheaf: &mut Sheaf, sizes: &[&Sheaf]) {
    let steps: Vec<(String, usize)> = sizes
        .iter()
        .enumerate()
        .skip(1)
        .flat_map(|(size, one)| {
            let parts = one.data["parts"].as_array().cloned().unwrap_or_default();
            let steps = parts.into_iter().flat_map(|part| part["steps"].as_array().cloned().unwrap_or_default());
            steps
                .filter_map(|step| step["id"].as_str().map(str::to_owned))
                .map(move |id| (id, size))
                .collect::<Vec<_>>()
        })
        .collect();
    let first: Vec<String> = sizes
        .first()
        .and_then(|one| one.data["parts"].as_array())
        .into_iter()
        .flatten()
        .flat_map(|part| part["steps"].as_array().into_iter().flatten())
        .filter_map(|step| step["id"].as_str().map(str::to_owned))
        .collect();
    let mut moved = Vec::new();
    for part in sheaf.data["parts"].as_array_mut().into_iter().flatten() {
        for step in part["steps"].as_array_mut().into_iter().flatten() {
            let Some(id) = step["id"].as_str().map(str::to_owned) else { continue };
            if first.contains(&id) {
                continue;
            }
            let Some((_, size)) = steps.iter().find(|(known, _)| *known == id) else { continue };
            rename(step, *size, &mut moved);
        }
    }
    for (size, from, to) in moved {
        if let Some(bytes) = sizes[size].files.get(&from) {
            sheaf.files.insert(to.clone(), bytes.clone());
        }
        if let Some(origin) = sizes[size].origins.get(&from) {
            sheaf.origins.insert(to, origin.clone());
        }
    }
}

fn rename(value: &mut Value, size: usize, moved: &mut Vec<(usize, String, String)>) {
    match value {
        Value::Array(items) => items.iter_mut().for_each(|item| rename(item, size, moved)),
        Value::Object(fields) => {
            if fields.get("kind").and_then(Value::as_str) == Some("figure")
                && let Some(Value::String(path)) = fields.get_mut("path")
            {
                let to = path.replacen("/figures/", &format!("/figures/{size}-"), 1);
                moved.push((size, path.clone(), to.clone()));
                *path = to;
            }
            fields.values_mut().for_each(|value| rename(value, size, moved));
        }
        _ => {}
    }
}

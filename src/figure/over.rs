//! One diagram of several sizes as one drawing: the shape of the middle size, the words of all.

use std::ops::Range;

use roxmltree::{Document, Node};

use super::markup::escape;
use super::studio::Studio;

/// The drawing of the middle size with the words of all sizes: figures in a row, such as
/// `20 (26, 32) cm`, or where a row is too long for its label, a word that says where to look. `None`
/// where the drawings have other labels, or where those would reach over the frame.
pub fn lay_over(drawings: &[&str], studio: &Studio) -> Option<String> {
    let row = merged(drawings, &in_a_row).filter(|svg| studio.keeps_inside(svg));
    // Rows that are too long for their labels are left to the words of the step.
    row.or_else(|| merged(drawings, &by_size).filter(|svg| studio.keeps_inside(svg)))
}

/// A label: the lines that it stands in, each with its place in the drawing.
type Label = Vec<(Range<usize>, String)>;

fn merged(texts: &[&str], words_of: &dyn Fn(&[&str]) -> String) -> Option<String> {
    let middle = *texts.get(texts.len() / 2)?;
    let labels: Vec<Vec<Label>> = texts.iter().map(|text| labels(text)).collect::<Option<_>>()?;
    let own = &labels[texts.len() / 2];
    if labels.iter().any(|other| other.len() != own.len()) {
        return None;
    }
    let mut svg = String::new();
    let mut at = 0;
    for (index, lines) in own.iter().enumerate() {
        let all: Vec<String> = labels.iter().map(|other| whole(&other[index])).collect();
        if all.iter().all(|one| *one == all[0]) {
            continue;
        }
        let all: Vec<&str> = all.iter().map(String::as_str).collect();
        for ((range, _), words) in lines.iter().zip(parted(&words_of(&all), lines.len())) {
            svg.push_str(&middle[at..range.start]);
            svg.push_str(&escape(&words));
            at = range.end;
        }
    }
    svg.push_str(&middle[at..]);
    Some(svg)
}

/// The words of a label, however its lines are broken.
fn whole(label: &Label) -> String {
    label.iter().map(|(_, words)| words.as_str()).collect::<Vec<_>>().join(" ")
}

/// Words in a number of lines of nearly one length.
fn parted(words: &str, count: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut rest: Vec<&str> = words.split(' ').collect();
    for left in (1..=count).rev() {
        let room = rest.join(" ").chars().count().div_ceil(left);
        let mut line = String::new();
        while let Some(word) = rest.first() {
            if left > 1 && !line.is_empty() && line.chars().count() + word.chars().count() / 2 > room {
                break;
            }
            if !line.is_empty() {
                line.push(' ');
            }
            line.push_str(word);
            rest.remove(0);
        }
        lines.push(line);
    }
    lines
}

/// The labels of a drawing in their order; one that is empty in a size counts too.
fn labels(text: &str) -> Option<Vec<Label>> {
    let document = Document::parse(text).ok()?;
    let texts = document.descendants().filter(|node| node.is_element() && node.tag_name().name() == "text");
    Some(texts.map(label).collect())
}

fn label(text: Node<'_, '_>) -> Label {
    let leaves =
        text.descendants().filter(|node| node.is_element() && !node.children().any(|child| child.is_element()));
    leaves
        .map(|leaf| {
            let words: String = leaf.children().filter(Node::is_text).filter_map(|node| node.text()).collect();
            let inside = match (leaf.first_child(), leaf.last_child()) {
                (Some(first), Some(last)) => first.range().start..last.range().end,
                // An element without anything inside has no place for words.
                _ => leaf.range().end..leaf.range().end,
            };
            (inside, words)
        })
        .collect()
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
fn in_a_row(all: &[&str]) -> String {
    let Some(first) = all.first() else { return String::new() };
    if all.iter().all(|one| one == first) {
        return (*first).to_owned();
    }
    let plain: Vec<String> = all.iter().map(|one| without_brackets(one)).collect();
    let letters: Vec<Vec<char>> = plain.iter().map(|one| one.chars().collect()).collect();
    let shortest = letters.iter().map(Vec::len).min().unwrap_or(0);
    let same = |at: usize| letters.iter().all(|one| one[at] == letters[0][at]);
    let same_back =
        |at: usize| letters.iter().all(|one| one[one.len() - 1 - at] == letters[0][letters[0].len() - 1 - at]);
    let mut start = (0..shortest).take_while(|at| same(*at)).count();
    while start > 0 && is_figure(letters[0][start - 1]) {
        start -= 1;
    }
    let mut end = (0..shortest - start).take_while(|at| same_back(*at)).count();
    while end > 0 && is_figure(letters[0][letters[0].len() - end]) {
        end -= 1;
    }
    let text = |letters: &[char]| letters.iter().collect::<String>();
    let middles: Vec<String> = letters.iter().map(|one| text(&one[start..one.len() - end])).collect();
    let before = text(&letters[0][..start]);
    let after = text(&letters[0][letters[0].len() - end..]);
    format!("{before}{} ({}){after}", middles[0], middles[1..].join(", "))
}

fn is_figure(letter: char) -> bool {
    letter.is_ascii_digit() || matches!(letter, '.' | '/' | '⁄') || "½¼¾⅛⅜⅝⅞⅓⅔".contains(letter)
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

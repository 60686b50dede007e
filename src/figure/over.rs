//! One diagram of several sizes as one drawing: the shape of the middle size, the words of all.

use std::ops::Range;

use roxmltree::{Document, Node};

use super::markup::escape;
use super::studio::Studio;

/// A drawing that stands for several.
pub struct LaidOver {
    /// The drawing of the middle size with the words of all.
    pub svg: String,
    /// The words that its labels had no room for, by the letters that stand in their places.
    pub notes: Vec<LabelNote>,
}

/// What a letter in a drawing stands for.
pub struct LabelNote {
    /// The letter.
    pub letter: char,
    /// The words of each drawing, in their order.
    pub words: Vec<String>,
}

/// Lays drawings of several sizes over one another. Figures that differ stand in a row,
/// `20 (26, 32) cm`; where a row would reach over the frame, or words differ in more than figures, a
/// letter stands in the label's place. `None` where the drawings have other labels or, in an author's own,
/// show other things.
pub fn lay_over(drawings: &[&str], by_author: bool, studio: &Studio) -> Option<LaidOver> {
    if by_author && !drawings.windows(2).all(|two| skeleton(two[0]) == skeleton(two[1])) {
        return None;
    }
    let labels: Vec<Vec<Label>> = drawings.iter().map(|drawing| labels(drawing)).collect::<Option<_>>()?;
    let middle = drawings.len() / 2;
    let (base, own) = (*drawings.get(middle)?, labels.get(middle)?);
    if labels.iter().any(|other| other.len() != own.len()) {
        return None;
    }
    let differing: Vec<(usize, Vec<&str>)> = (0..own.len())
        .map(|at| (at, labels.iter().map(|other| other[at].words.as_str()).collect::<Vec<_>>()))
        .filter(|(_, all)| all.iter().any(|one| *one != all[0]))
        .collect();
    // Rows first; where one of them reaches over the frame, letters throughout.
    let rows = |all: &[&str]| in_a_row(all);
    with_words(base, own, &differing, &rows)
        .filter(|laid| studio.keeps_inside(&laid.svg))
        .or_else(|| with_words(base, own, &differing, &|_| None))
}

/// The drawing with a row in place of each label that has one, and a letter in place of each that has not;
/// `None` where there are more of those than letters.
fn with_words(
    base: &str,
    labels: &[Label],
    differing: &[(usize, Vec<&str>)],
    row: &dyn Fn(&[&str]) -> Option<String>,
) -> Option<LaidOver> {
    let mut letters = 'a'..='z';
    let (mut words, mut notes) = (Vec::new(), Vec::new());
    for (at, all) in differing {
        if let Some(row) = row(all) {
            words.push((*at, row));
            continue;
        }
        let letter = letters.next()?;
        words.push((*at, letter.to_string()));
        notes.push(LabelNote { letter, words: all.iter().map(|one| (*one).to_owned()).collect() });
    }
    Some(LaidOver { svg: relabelled(base, labels, &words), notes })
}

/// A label: its words, and where they stand in the drawing, line by line.
struct Label {
    words: String,
    lines: Vec<Range<usize>>,
}

/// A drawing with other words in some of its labels.
fn relabelled(base: &str, labels: &[Label], words: &[(usize, String)]) -> String {
    let mut svg = String::new();
    let mut at = 0;
    for (index, words) in words {
        let lines = &labels[*index].lines;
        for (range, words) in lines.iter().zip(parted(words, lines.len())) {
            svg.push_str(&base[at..range.start]);
            svg.push_str(&escape(&words));
            at = range.end;
        }
    }
    svg.push_str(&base[at..]);
    svg
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

/// What a drawing shows, whatever its size: its elements with their classes, and which are hidden.
fn skeleton(text: &str) -> Option<Vec<Vec<String>>> {
    let document = Document::parse(text).ok()?;
    let shown = ["class", "display", "visibility", "opacity", "href"];
    let element = |node: Node<'_, '_>| {
        let own = |name: &&str| node.attribute(*name).unwrap_or_default().to_owned();
        std::iter::once(node.tag_name().name().to_owned()).chain(shown.iter().map(own)).collect()
    };
    Some(document.descendants().filter(Node::is_element).map(element).collect())
}

/// The labels of a drawing in their order; one that is empty in a size counts too.
fn labels(text: &str) -> Option<Vec<Label>> {
    let document = Document::parse(text).ok()?;
    let texts = document.descendants().filter(|node| node.is_element() && node.tag_name().name() == "text");
    Some(texts.map(label).collect())
}

/// Lines that stand each in an element of their own are kept apart; words with elements among them are
/// one run.
fn label(text: Node<'_, '_>) -> Label {
    let said = |node: Node<'_, '_>| -> String {
        node.descendants().filter(Node::is_text).filter_map(|node| node.text()).collect()
    };
    let lines: Vec<Node<'_, '_>> = text.children().filter(Node::is_element).collect();
    let loose = text.children().any(|node| node.is_text() && node.text().is_some_and(|words| !words.trim().is_empty()));
    let plain = |line: &Node<'_, '_>| !line.children().any(|child| child.is_element());
    let lines = if lines.is_empty() || loose || !lines.iter().all(plain) { vec![text] } else { lines };
    let words: Vec<String> = lines.iter().map(|line| said(*line)).collect();
    let inside = |node: &Node<'_, '_>| match (node.first_child(), node.last_child()) {
        (Some(first), Some(last)) => first.range().start..last.range().end,
        // An element without anything inside has no place for words.
        _ => node.range().end..node.range().end,
    };
    Label { words: words.join(" "), lines: lines.iter().map(inside).collect() }
}

/// Words that differ in figures alone, each figure in a row: "cut 20 (26, 32) cm (8 (10¼, 12½) in)". `None`
/// where they differ in more.
fn in_a_row(all: &[&str]) -> Option<String> {
    let runs: Vec<Vec<(bool, String)>> = all.iter().map(|one| runs(one)).collect();
    let first = runs.first()?;
    let alike = |other: &Vec<(bool, String)>| {
        other.len() == first.len()
            && other.iter().zip(first).all(|(one, two)| one.0 == two.0 && (one.0 || one.1 == two.1))
    };
    if !runs.iter().all(alike) {
        return None;
    }
    let row = |at: usize| {
        let figures: Vec<&str> = runs.iter().map(|one| one[at].1.as_str()).collect();
        match figures.iter().all(|figure| *figure == figures[0]) {
            true => figures[0].to_owned(),
            false => format!("{} ({})", figures[0], figures[1..].join(", ")),
        }
    };
    Some((0..first.len()).map(row).collect())
}

/// Runs of figures (`true`) and of other letters.
fn runs(words: &str) -> Vec<(bool, String)> {
    let mut runs: Vec<(bool, String)> = Vec::new();
    for letter in words.chars() {
        let figure = is_figure(letter);
        match runs.last_mut() {
            Some((known, run)) if *known == figure => run.push(letter),
            _ => runs.push((figure, letter.to_string())),
        }
    }
    runs
}

fn is_figure(letter: char) -> bool {
    letter.is_ascii_digit() || matches!(letter, '.' | '/' | '⁄') || "½¼¾⅛⅜⅝⅞⅓⅔⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉".contains(letter)
}

//! What is cut from each fabric: how many, or which copies; and what copies and edges are called on the page.

use super::expression::parse_expression;
use super::fields;
use super::sizes::{named, names};
use super::yaml::{Node, Value};
use crate::diag::Findings;
use crate::faults::{DUPLICATE_KEY, VALUE_UNREADABLE};
use crate::model::{Cut, CutCopies, Name, Piece, Size, Text};

/// Names in the files with those on the page.
pub(super) type Names = Vec<(Name, Text)>;

const HOW: &str = "write how many (`2`, or a formula), name each copy (`[front, back]`), or say what each is called (`{left: Left front}`)";

/// Which sizes cut so, `None` for all, and how many or which copies.
type Share = (Option<Vec<usize>>, CutCopies);

/// Reads the record `cut:` of a piece, and the names on the page that it gives to copies.
pub(super) fn read(node: &Node, sizes: &[Size], findings: &mut Findings) -> (Vec<Cut>, Names) {
    let (mut cuts, mut called) = (Vec::new(), Names::new());
    for (key, node) in fields::named(node, "what is cut from each fabric", findings) {
        let fabric = fields::name(key, findings);
        let (own, names) = of_one(&fabric, node, sizes, findings);
        cuts.extend(own);
        called.extend(names);
    }
    (cuts, called)
}

/// What is cut in every size, or, where a record names sizes and views, in each of them.
fn shares(node: &Node, sizes: &[Size], called: &mut Names, findings: &mut Findings) -> Vec<Share> {
    let known = names(sizes);
    let is_known = |key: &Text| known.contains(&key.text.as_str());
    let entries = match &node.value {
        Value::Map(entries) if !entries.is_empty() && entries.iter().all(|(key, _)| is_known(key)) => entries,
        _ => return copies(node, called, findings).map(|copies| (None, copies)).into_iter().collect(),
    };
    let mut shares: Vec<Share> = Vec::new();
    for (key, node) in entries {
        let Some(places) = named(&key.text, key.span, sizes, findings) else { continue };
        let taken = |at: &&usize| shares.iter().any(|(own, _)| own.as_ref().is_some_and(|own| own.contains(at)));
        if let Some(twice) = places.iter().find(taken) {
            let message = format!("`{}` says a second time what {} cuts", key.text, sizes[*twice].id.text);
            findings.push(DUPLICATE_KEY.at(key.span, message).hint("name each size once, by itself or by its view"));
            continue;
        }
        shares.extend(copies(node, called, findings).map(|copies| (Some(places), copies)));
    }
    shares
}

/// What is cut of one piece from one thing, and the names on the page that it gives to copies.
pub(super) fn of_one(from: &Name, node: &Node, sizes: &[Size], findings: &mut Findings) -> (Vec<Cut>, Names) {
    let mut called = Names::new();
    let shares = shares(node, sizes, &mut called, findings).into_iter();
    (shares.map(|(sizes, copies)| Cut { fabric: from.clone(), copies, sizes }).collect(), called)
}

fn copies(node: &Node, called: &mut Names, findings: &mut Findings) -> Option<CutCopies> {
    match &node.value {
        Value::List(items) if items.is_empty() => {
            findings.push(
                VALUE_UNREADABLE
                    .at(node.span, "this list names no copy, so nothing is cut")
                    .hint("name each copy (`[front, back]`), or write how many (`2`)"),
            );
            None
        }
        Value::List(items) => {
            let texts = items.iter().filter_map(|item| fields::text(item, "a copy's name", findings));
            let texts: Vec<Text> = texts.collect();
            Some(CutCopies::Named(texts.iter().map(|text| fields::name(text, findings)).collect()))
        }
        Value::Map(_) => {
            let entries = fields::named(node, "copies with their names", findings);
            called.extend(page_names(node, "copies with their names", findings));
            // A copy whose name on the page cannot be read is cut all the same.
            Some(CutCopies::Named(entries.into_iter().map(|(key, _)| bare(key)).collect()))
        }
        Value::Scalar(text) => match text.text.parse::<u32>() {
            Ok(count) if count > 0 => Some(CutCopies::Count(count)),
            _ if text.text.chars().all(|letter| letter.is_ascii_lowercase() || letter == '_') => {
                Some(CutCopies::Named(vec![fields::name(text, findings)]))
            }
            // A number that is none, such as `2.5`, and plain words are told here.
            _ if text.text.chars().any(char::is_alphabetic) && text.text.contains(['(', '+', '-', '*', '/']) => {
                parse_expression(text, findings).map(|formula| CutCopies::Reckoned(Box::new(formula)))
            }
            _ => {
                let finding = VALUE_UNREADABLE.at(text.span, format!("`{}` is no number of pieces", text.text));
                findings.push(finding.hint(HOW));
                None
            }
        },
        Value::Empty => {
            findings.push(VALUE_UNREADABLE.at(node.span, "a number of pieces cannot be nothing").hint(HOW));
            None
        }
    }
}

/// A single name that is a measurement's is a number of pieces by that formula, and no copy's name.
pub(super) fn reckon(pieces: &mut [Piece], measurements: &[Name], findings: &mut Findings) {
    for cut in pieces.iter_mut().flat_map(|piece| &mut piece.cut) {
        let CutCopies::Named(names) = &cut.copies else { continue };
        let [name] = names.as_slice() else { continue };
        if measurements.iter().any(|known| known.text == name.text) {
            let text = Text { text: name.text.clone(), span: name.span, verbatim: false };
            if let Some(formula) = parse_expression(&text, findings) {
                cut.copies = CutCopies::Reckoned(Box::new(formula));
            }
        }
    }
}

/// Names of edges.
pub(super) fn edges(node: &Node, findings: &mut Findings) -> Vec<Name> {
    let texts = fields::list(node).into_iter().filter_map(|item| fields::text(item, "a raw edge", findings));
    texts.collect::<Vec<Text>>().iter().map(|text| fields::name(text, findings)).collect()
}

/// Names in the files and, behind each, the one on the page.
pub(super) fn page_names(node: &Node, what: &str, findings: &mut Findings) -> Names {
    let entries = fields::named(node, what, findings);
    let named = entries.into_iter().filter_map(|(key, node)| {
        let name = fields::name(key, findings);
        let called = fields::text(node, &format!("the name of `{}` on the page", key.text), findings)?;
        Some((name, called))
    });
    named.collect()
}

/// A name that has been read before, with what is wrong with it.
fn bare(key: &Text) -> Name {
    Name { text: key.text.clone(), span: key.span }
}

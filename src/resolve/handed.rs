//! What a shared part was handed, as its words print it: names of pieces and edges by their names on the page.

use super::ids::ZipEdge;
use super::names::NameKind;
use super::spoken;
use super::values::Values;
use super::within;
use crate::diag::{Finding, Findings, did_you_mean, listed};
use crate::faults::UNKNOWN_NAME;
use crate::model::Param;

/// The words that are printed; `None` for a name behind whose dot nothing stands that there is, which is a finding:
/// it would be printed as it was typed.
pub(super) fn spoken(values: &Values<'_>, param: &Param, words: &str, findings: &mut Findings) -> Option<String> {
    let names: Vec<&str> = words.split(',').map(str::trim).collect();
    if !names.iter().all(|name| is_name(name)) {
        return Some(words.to_owned());
    }
    let mut said = Vec::new();
    for name in names {
        match fault(values, param, name) {
            Some(finding) => {
                findings.push(finding);
                return None;
            }
            None if values.catalogue.get(name.split('.').next().unwrap_or(name)).is_some() => {
                let (owner, part) = spoken::name(&values.draft.facts, values.catalogue, name);
                said.push(spoken::joined(&owner, &part));
            }
            // A word of one's own.
            None => said.push(name.to_owned()),
        }
    }
    Some(listed(&said))
}

/// Whether words are written like a name of the facts.
fn is_name(words: &str) -> bool {
    let sign = |letter: char| letter.is_ascii_lowercase() || letter.is_ascii_digit() || matches!(letter, '_' | '.');
    !words.is_empty() && words.chars().all(sign) && !words.starts_with('.') && !words.ends_with('.')
}

/// What is wrong with a dotted name.
fn fault(values: &Values<'_>, param: &Param, name: &str) -> Option<Finding> {
    let (owner, own) = name.split_once('.')?;
    let text = &param.text.text;
    let at = text.find(name).unwrap_or(0);
    let finding = |message: String, hint: String| {
        let span = param.text.at(at..at + name.len());
        Some(UNKNOWN_NAME.at(span, message).hint(hint).in_size(values.size(), ""))
    };
    match values.catalogue.get(owner) {
        Some(NameKind::Piece(piece) | NameKind::Copy(piece)) => {
            let shape = values.whole(piece)?;
            let facts = &values.draft.facts.pieces[piece];
            let edge = shape.edges().iter().any(|edge| edge.name == own || edge.drawn == own);
            if edge || within::named(facts, own).is_some() {
                return None;
            }
            let known: Vec<&str> = shape.edges().iter().map(|edge| edge.name.as_str()).collect();
            let otherwise = format!("the edges of `{}` are: {}", facts.id.text, known.join(", "));
            let hint = did_you_mean(own, known.iter().copied(), &otherwise);
            finding(
                format!("`{}` has no edge `{own}`, and its name would be printed as it stands", facts.id.text),
                hint,
            )
        }
        Some(NameKind::Notion(_)) if ZipEdge::parse(own).is_some() => None,
        _ => {
            let all = values.catalogue.all();
            let hint =
                did_you_mean(owner, all, "hand over an edge or a formula of names that there are, or plain words");
            finding(format!("nothing is called `{name}`, and it would be printed as it stands"), hint)
        }
    }
}

//! What each fabric and notion is made of: as its author says, or by its name.

use super::fields::Fields;
use super::needs::Needs;
use super::phrases::{holds, plain_words};
use crate::diag::{Findings, did_you_mean};
use crate::faults::VALUE_UNREADABLE;
use crate::model::{Facts, Kind, Matter};

/// The key `look:`; a finding where it is no material.
pub(super) fn look(record: &Fields<'_>, findings: &mut Findings) -> Option<Matter> {
    let text = record.text("look", findings)?;
    let found = Matter::parse(&text.text);
    if found.is_none() {
        let words: Vec<&str> = Matter::ALL.iter().map(|(word, _)| *word).collect();
        findings.push(
            VALUE_UNREADABLE.at(text.span, format!("nothing is drawn as `{}`", text.text)).hint(did_you_mean(
                &text.text,
                words.iter().copied(),
                &format!("write one of: {}", words.join(", ")),
            )),
        );
    }
    found
}

/// Goes by the names of what says nothing itself. What is bought by its length is never lining or fur, and cloth is
/// never a band.
pub fn tell_materials(facts: &mut Facts, needs: &Needs) {
    for fabric in facts.fabrics.iter_mut().filter(|fabric| fabric.look.is_none() && fabric.from.is_none()) {
        let words = format!("{} {}", fabric.id.text, fabric.name.text);
        let is_cloth = |matter: Matter| !matches!(matter, Matter::Webbing | Matter::Elastic | Matter::HookLoop);
        fabric.look = by_name(&words, needs, is_cloth);
    }
    for notion in facts.notions.iter_mut().filter(|notion| notion.look.is_none()) {
        let words = format!("{} {}", notion.id.text, notion.name.text);
        let is_bought = |matter: Matter| !matches!(matter, Matter::Lining | Matter::Fur | Matter::Felt);
        notion.look = match notion.kind {
            Kind::Elastic => Some(Matter::Elastic),
            Kind::Tape => by_name(&words, needs, is_bought).or(Some(Matter::Webbing)),
            _ => by_name(&words, needs, is_bought),
        };
    }
}

/// The first material of the list, as far as it comes into question, that a name speaks of.
fn by_name(name: &str, needs: &Needs, may_be: impl Fn(Matter) -> bool) -> Option<Matter> {
    let name = plain_words(name);
    let says = |phrases: &[String]| phrases.iter().any(|phrase| holds(&name, &plain_words(phrase)));
    let known = needs.looks.iter().filter(|look| says(&look.names) && !says(&look.not));
    known.filter_map(|look| Matter::parse(&look.look)).find(|matter| may_be(*matter))
}

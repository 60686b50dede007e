//! What headings leave to the maker, led together: options, and choices with their ways.

use crate::diag::{Findings, did_you_mean};
use crate::faults::OPTION_UNCLEAR;
use crate::model::{Name, Offer, Part, Stake};
use crate::source::Span;

/// Finds what is offered, and tells each part and step to which of it it belongs.
pub(super) fn gather(parts: &mut [Part], findings: &mut Findings) -> Vec<Offer> {
    let mut offers = Vec::new();
    for part in parts.iter_mut() {
        part.offer = opened(part.stake.as_ref(), part.id.as_ref(), part.span, &mut offers, findings);
        for step in &mut part.steps {
            if part.stake.is_some() && step.stake.take().is_some() {
                findings.push(
                    OPTION_UNCLEAR
                        .at(step.span, "this step stands in a part that is left to the maker as a whole")
                        .hint("take `optional`, `or=` and `of=` out here, or say it of the steps alone and not of the part"),
                );
            }
            step.offer = opened(step.stake.as_ref(), step.id.as_ref(), step.span, &mut offers, findings).or(part.offer);
        }
    }
    lone_ways(&offers, findings);
    let found = |stake: &Option<Stake>, findings: &mut Findings| match stake {
        Some(Stake::Of(id)) => belongs(id, &offers, findings),
        _ => None,
    };
    for part in parts.iter_mut() {
        part.offer = part.offer.or(found(&part.stake, findings));
        for step in &mut part.steps {
            step.offer = step.offer.or(found(&step.stake, findings)).or(part.offer);
        }
    }
    offers
}

/// The offer that a heading makes, by its place; `None` where it makes none.
fn opened(
    stake: Option<&Stake>,
    id: Option<&Name>,
    heading: Span,
    offers: &mut Vec<Offer>,
    findings: &mut Findings,
) -> Option<usize> {
    let choice = match stake? {
        Stake::Optional => None,
        Stake::Way(choice) => Some(choice.text.clone()),
        Stake::Of(_) => return None,
    };
    let Some(id) = id else {
        findings.push(
            OPTION_UNCLEAR
                .at(heading, "what is left to the maker has no id")
                .hint("write one, such as `{#pull optional}`, so that its list can be told from the others"),
        );
        return None;
    };
    if let Some(known) = offers.iter().position(|offer| offer.id.text == id.text) {
        return Some(known);
    }
    offers.push(Offer { id: id.clone(), choice });
    Some(offers.len() - 1)
}

/// A choice has two ways or more.
fn lone_ways(offers: &[Offer], findings: &mut Findings) {
    for offer in offers {
        let Some(choice) = &offer.choice else { continue };
        if !offers.iter().any(|other| other.is_rival(offer)) {
            let others = offers.iter().filter_map(|other| other.choice.as_deref()).filter(|other| other != choice);
            let otherwise = format!("write `or={choice}` behind the heading of the other way too, or `optional` here");
            findings.push(
                OPTION_UNCLEAR
                    .at(offer.id.span, format!("`{choice}` is a choice with one way alone"))
                    .hint(did_you_mean(choice, others, &otherwise)),
            );
        }
    }
}

fn belongs(id: &Name, offers: &[Offer], findings: &mut Findings) -> Option<usize> {
    let found = offers.iter().position(|offer| offer.id.text == id.text);
    if found.is_none() {
        let known = offers.iter().map(|offer| offer.id.text.as_str());
        findings.push(
            OPTION_UNCLEAR
                .at(id.span, format!("no heading called `{}` is optional or one of several ways", id.text))
                .hint(did_you_mean(&id.text, known, "name the id of a heading with `optional` or `or=` in its braces")),
        );
    }
    found
}

//! What a booklet hands to a shared part: one thing for every size, or a record by view or size.

use super::fields;
use super::sizes::{named, names};
use super::yaml::{Node, Value};
use crate::diag::Findings;
use crate::faults::{DUPLICATE_KEY, SIZE_MISSING};
use crate::model::{Handed, Name, Param, Size, Text, is_for};

/// What a thing is called in messages.
const WHAT: &str = "what is handed to a part";

/// Reads the record `with:` of a part that is for some sizes, `None` for all.
pub(super) fn read(node: &Node, only: Option<&Vec<usize>>, sizes: &[Size], findings: &mut Findings) -> Handed {
    let mut by_size: Vec<Vec<Param>> = vec![Vec::new(); sizes.len()];
    for (key, node) in fields::named(node, WHAT, findings) {
        let name = fields::name(key, findings);
        for (at, text) in choice(&name, node, only, sizes, findings).into_iter().enumerate() {
            let Some(text) = text else { continue };
            let expression = super::work::param_formula(&text);
            by_size[at].push(Param { name: name.clone(), text, expression });
        }
    }
    Handed::new(by_size)
}

/// What is handed under one name in each size.
fn choice(
    name: &Name,
    node: &Node,
    only: Option<&Vec<usize>>,
    sizes: &[Size],
    findings: &mut Findings,
) -> Vec<Option<Text>> {
    let mut each: Vec<Option<Text>> = vec![None; sizes.len()];
    let known = names(sizes);
    let by_name = |entries: &[(Text, Node)]| entries.iter().any(|(key, _)| known.contains(&key.text.as_str()));
    let entries = match &node.value {
        Value::Map(entries) if by_name(entries) => entries,
        _ => return vec![fields::text(node, WHAT, findings); sizes.len()],
    };
    let mut covered = vec![false; sizes.len()];
    for (key, node) in entries {
        let Some(places) = named(&key.text, key.span, sizes, findings) else { continue };
        if let Some(twice) = places.iter().find(|at| covered[**at]) {
            let message = format!("`{}` hands {} a second thing", key.text, sizes[*twice].id.text);
            let hint = "name each size once, by itself or by its view";
            findings.push(DUPLICATE_KEY.at(key.span, message).hint(hint));
        }
        let text = fields::text(node, WHAT, findings);
        for at in places {
            covered[at] = true;
            each[at].clone_from(&text);
        }
    }
    let missing = (0..sizes.len()).filter(|at| is_for(only, *at) && !covered[*at]);
    let missing: Vec<&str> = missing.map(|at| sizes[at].id.text.as_str()).collect();
    if let Some(first) = missing.first() {
        findings.push(
            SIZE_MISSING
                .at(node.span, format!("`{}` is handed nothing for {}", name.text, missing.join(" and ")))
                .hint(format!("add `{first}: …`, by the name of a size or of its view")),
        );
    }
    each
}

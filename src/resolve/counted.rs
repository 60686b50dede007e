//! How many buttons, holes or fasteners a work fact sets, and with which notion.

use std::collections::BTreeMap;

use super::cast::CopyId;
use super::scope::Scope;
use super::target::{Resolver, Target, Touched};
use super::uses::Told;
use super::within::Inside;
use crate::diag::{Finding, Findings};
use crate::faults::{VALUE_UNREADABLE, WORK_UNREADABLE};
use crate::model::{Expression, Verb, Work};

/// A fact that does not say with what it is done.
pub(super) fn without_notion(work: &Work) -> Finding {
    let (word, example) = match work.verb {
        Verb::Button => ("button", "[buttons, front]"),
        Verb::Fasten => ("fasten", "[snaps, front]"),
        Verb::Stuff => ("stuff", "[filling, body]"),
        _ => ("insert", "[elastic, front.top]"),
    };
    WORK_UNREADABLE
        .at(work.verb_span, format!("this `{word}` names no notion"))
        .hint(format!("name what it is done with, and where: `- {word}: {example}`; it stands under `notions:`"))
        .everywhere()
}

/// How many places the marks tell that a fact names; a `count` that says otherwise is a finding.
pub(super) fn told_by_marks(
    work: &Work,
    count: Option<u32>,
    targets: &[Target],
    resolver: &Resolver<'_>,
    findings: &mut Findings,
) -> Option<u32> {
    let Some(marked) = marked(work.verb, targets, resolver).filter(|_| work.verb.counts()) else { return count };
    if let (Some(count), Some(formula)) = (count.filter(|count| *count != marked), &work.count) {
        findings.push(
            VALUE_UNREADABLE
                .at(formula.span(), format!("`count` is {count}, and the marks show {marked}"))
                .hint("take `count:` out, since the marks tell how many, or mend the marks")
                .in_size(resolver.values.size(), ""),
        );
    }
    Some(marked)
}

/// The places that marks show, of a fastener those of one side; `None` where something else is named.
fn marked(verb: Verb, targets: &[Target], resolver: &Resolver<'_>) -> Option<u32> {
    let mut of_copies: BTreeMap<CopyId, u32> = BTreeMap::new();
    for touched in targets.iter().filter(|target| target.notion().is_none()).flat_map(|target| &target.touched) {
        let Touched::Inside(copy, Inside::Mark(at)) = touched else { return None };
        let mark = resolver.values.marks(resolver.cast[*copy].piece).get(*at)?.as_ref()?;
        let places = u32::try_from(mark.places().len()).ok().filter(|places| *places > 0)?;
        let sum = of_copies.entry(*copy).or_default();
        *sum = sum.checked_add(places)?;
    }
    match verb {
        Verb::Fasten => of_copies.into_values().max(),
        _ => of_copies.into_values().try_fold(0, u32::checked_add).filter(|sum| *sum > 0),
    }
}

/// A number of things that a work fact sets; one that is not whole is a finding.
pub(super) fn count(formula: &Expression, scope: &Scope<'_>, told: &mut Told) -> Option<u32> {
    told.uses.read(formula, scope);
    let worked = scope.work_out_fact(formula, &mut told.findings)?;
    let whole = worked.whole();
    if whole.is_none() {
        let finding = VALUE_UNREADABLE.at(formula.span(), "`count` is a whole number above nothing");
        let hint = "write how many, or name the notion's: `count: buttons.count`";
        told.findings.push(finding.hint(hint).in_size(scope.values.size(), ""));
    }
    whole
}

//! What the checks said: findings that stand, waivers with their reasons, what nobody looked at; and the steps by checks
//! by sizes.

use super::evidence::Evidence;
use super::record::{CheckGroup, CheckRow, FindingRow, MatrixRow, Rest, UncheckedRow, Verdict, WaiverRow};
use crate::checks::{Looked, Ran, by_code};
use crate::diag::{Finding, Group, Level};
use crate::model::{Part, Step, is_for};
use crate::resolve::Block;
use crate::source::Span;

/// A finding as it is shown.
fn row(evidence: &Evidence<'_>, finding: &Finding) -> FindingRow {
    let sizes: Vec<usize> = finding.sizes.iter().map(|(size, _)| *size).collect();
    let detail = |(size, detail): &(usize, String)| format!("{}: {detail}", evidence.plain().size(*size));
    let excerpt = evidence.sources.text(finding.span).split_whitespace().collect::<Vec<_>>().join(" ");
    let note = |(span, words): &(Span, String)| format!("{words}: {}", evidence.place(*span));
    FindingRow {
        level: match finding.level() {
            Level::Error => "proof_error",
            Level::Warning => "proof_warning",
        },
        code: finding.code(),
        message: finding.message.clone(),
        hint: finding.hint.clone(),
        details: finding.sizes.iter().filter(|(_, detail)| !detail.is_empty()).map(detail).collect(),
        sizes: if sizes.is_empty() { Vec::new() } else { evidence.sizes(&sizes) },
        place: evidence.place(finding.span),
        notes: finding.notes.iter().map(note).collect(),
        excerpt: shortened(&excerpt),
    }
}

/// How many letters of what is at fault are quoted.
const QUOTED: usize = 160;

fn shortened(words: &str) -> String {
    match words.char_indices().nth(QUOTED) {
        Some((end, _)) => format!("{}…", &words[..end]),
        None => words.to_owned(),
    }
}

/// What stands.
pub(super) fn findings(evidence: &Evidence<'_>) -> Vec<FindingRow> {
    evidence.report.findings.iter().map(|finding| row(evidence, finding)).collect()
}

/// Every waiver, with what it took away.
pub(super) fn waivers(evidence: &Evidence<'_>) -> Vec<WaiverRow> {
    let all = evidence.waivers.iter().map(|waiver| {
        let takes = |waived: &&crate::diag::Waived| {
            waived.finding.code() == waiver.check
                && waiver.scope.holds(waived.finding.span)
                && waived.reason == waiver.reason
        };
        let taken = evidence.report.waived.iter().filter(takes);
        WaiverRow {
            code: waiver.check.clone(),
            about: by_code(&waiver.check).map_or_else(String::new, |check| check.page().summary),
            reason: waiver.reason.clone(),
            place: evidence.place(waiver.span),
            findings: taken.map(|waived| row(evidence, &waived.finding)).collect(),
        }
    });
    all.collect()
}

/// What no check looked at.
pub(super) fn unchecked(evidence: &Evidence<'_>) -> Vec<UncheckedRow> {
    let list = evidence.unchecked.iter();
    list.map(|one| UncheckedRow { what: one.what.clone(), place: evidence.place(one.span) }).collect()
}

/// What a check came to in one size, of those findings that `here` lets through.
fn verdict(evidence: &Evidence<'_>, ran: &Ran, size: usize, here: &dyn Fn(&Finding) -> bool) -> Verdict {
    let of = |finding: &Finding| {
        let sized = finding.sizes.is_empty() || finding.sizes.iter().any(|(own, _)| *own == size);
        sized && finding.code() == ran.check.code && here(finding)
    };
    Verdict {
        found: evidence.report.findings.iter().filter(|finding| of(finding)).count(),
        waived: evidence.report.waived.iter().filter(|waived| of(&waived.finding)).count(),
        looked: ran.looked.looked(),
    }
}

/// Every check with what it came to in each size.
pub(super) fn checks(evidence: &Evidence<'_>) -> Vec<CheckGroup> {
    let group = |group: &Group| {
        let own = evidence.ran.iter().filter(|ran| ran.check.group == *group);
        let check = |ran: &Ran| CheckRow {
            code: ran.check.code,
            about: ran.check.page().summary,
            looked: key(ran.looked),
            cells: (0..evidence.count()).map(|size| Some(verdict(evidence, ran, size, &|_| true))).collect(),
        };
        CheckGroup { name: format!("proof_group_{}", group.name().to_lowercase()), checks: own.map(check).collect() }
    };
    let groups: Vec<CheckGroup> = Group::ALL.iter().map(group).collect();
    groups.into_iter().filter(|group| !group.checks.is_empty()).collect()
}

/// The key of what a check looked at.
fn key(looked: Looked) -> &'static str {
    match looked {
        Looked::Reading => "proof_looked_reading",
        Looked::Booklet => "proof_looked_booklet",
        Looked::Sizes => "proof_looked_sizes",
        Looked::Play => "proof_looked_play",
        Looked::NotPlayed => "proof_looked_not_played",
        Looked::NotMade => "proof_looked_not_made",
    }
}

/// The facts, each part and each step by checks by sizes.
pub(super) fn matrix(evidence: &Evidence<'_>) -> Vec<MatrixRow> {
    let every: Vec<usize> = (0..evidence.count()).collect();
    let facts = evidence.draft.file;
    let mut rows = vec![matrix_row(evidence, evidence.word("proof_facts"), Span::new(facts, 0..0), &every, &|span| {
        span.file == facts
    })];
    for part in &evidence.draft.parts {
        let of_part: Vec<usize> = every.iter().copied().filter(|size| is_for(part.sizes.as_ref(), *size)).collect();
        let name = evidence.sources.text(part.span).to_owned();
        let name = told_part(evidence, part).unwrap_or(name);
        let in_steps = |span: Span| part.steps.iter().any(|step| is_in(evidence, part, step, span));
        rows.push(matrix_row(evidence, name, part.span, &of_part, &|span| span.file == part.file && !in_steps(span)));
        for step in &part.steps {
            let has: Vec<usize> = of_part.iter().copied().filter(|size| is_for(step.sizes.as_ref(), *size)).collect();
            let name = told_step(evidence, step).unwrap_or_else(|| evidence.sources.text(step.span).to_owned());
            rows.push(matrix_row(evidence, name, step.span, &has, &|span| is_in(evidence, part, step, span)));
        }
    }
    let known = |span: Span| {
        span.file == facts
            || evidence.draft.steps().any(|(part, step)| span.file == part.file || is_in(evidence, part, step, span))
    };
    let elsewhere =
        matrix_row(evidence, evidence.word("proof_elsewhere"), Span::new(facts, 0..0), &every, &|span| !known(span));
    // Templates, fonts and pictures of no step have a row where something was found there.
    if !elsewhere.checks.is_empty() {
        rows.push(MatrixRow { place: String::new(), ..elsewhere });
    }
    rows
}

fn told_part(evidence: &Evidence<'_>, part: &Part) -> Option<String> {
    let at = evidence.draft.parts.iter().position(|known| std::ptr::eq(known, part))?;
    let own = evidence.all.parts.iter().find(|own| own.at == at)?;
    Some(evidence.plain().inlines(&own.title))
}

fn told_step(evidence: &Evidence<'_>, step: &Step) -> Option<String> {
    let own = |(part, known): (usize, usize)| {
        let part = evidence.all.parts.iter().find(|own| own.at == part)?;
        part.steps.iter().find(|own| own.at == known)
    };
    let mut places =
        evidence.draft.parts.iter().enumerate().filter_map(|(at, part)| {
            part.steps.iter().position(|known| std::ptr::eq(known, step)).map(|step| (at, step))
        });
    let step = own(places.next()?)?;
    let plain = evidence.plain();
    Some(plain.word("errata_step", &[("n", &step.number.to_string()), ("title", &plain.inlines(&step.title))]))
}

/// Whether a place belongs to a step: in its words, or in a drawing that it shows.
fn is_in(evidence: &Evidence<'_>, part: &Part, step: &Step, span: Span) -> bool {
    if span.file == part.file {
        return step.scope.holds(span) || step.span.holds(span);
    }
    let path = &evidence.sources.file(span.file).path;
    evidence.editions.iter().any(|edition| {
        let Some(own) = edition.steps().find(|own| std::ptr::eq(own.step, step)) else { return false };
        let mut shows = false;
        let mut see = |key: &str| {
            let bound = evidence.figures.get(edition.size(), key);
            shows |= bound.is_some_and(|bound| bound.path == *path);
        };
        own.figure.iter().for_each(|figure| see(&figure.key));
        Block::each_figure(&own.body, &mut |figure| see(&figure.key));
        shows
    })
}

fn matrix_row(
    evidence: &Evidence<'_>,
    name: String,
    span: Span,
    sizes: &[usize],
    here: &dyn Fn(Span) -> bool,
) -> MatrixRow {
    // Of a check that told something here, the place of its finding is what counts.
    let mut told: Vec<&str> = Vec::new();
    let found = evidence.report.findings.iter().chain(evidence.report.waived.iter().map(|waived| &waived.finding));
    for finding in found.filter(|finding| here(finding.span)) {
        if !told.contains(&finding.code()) {
            told.push(finding.code());
        }
    }
    let within = |finding: &Finding| here(finding.span);
    let of_size = |ran: &Ran, size: usize| sizes.contains(&size).then(|| verdict(evidence, ran, size, &within));
    let rows = evidence.ran.iter().filter(|ran| told.contains(&ran.check.code)).map(|ran| CheckRow {
        code: ran.check.code,
        about: String::new(),
        looked: key(ran.looked),
        cells: (0..evidence.count()).map(|size| of_size(ran, size)).collect(),
    });
    let rest = |size: usize| {
        let others = || evidence.ran.iter().filter(|ran| !told.contains(&ran.check.code));
        sizes.contains(&size).then(|| Rest {
            silent: others().filter(|ran| ran.looked.looked()).count(),
            unrun: others().filter(|ran| !ran.looked.looked()).count(),
        })
    };
    let checks = rows.collect();
    MatrixRow { name, place: evidence.place(span), checks, rest: (0..evidence.count()).map(rest).collect() }
}

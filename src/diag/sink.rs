//! Where findings meet: waivers are applied, sizes merged, the whole sorted by place.

use std::collections::HashMap;

use super::finding::Finding;
use super::level::Level;
use crate::source::{Sources, Span};

/// An author's word that a finding in one place is meant, with the reason.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Waiver {
    /// The check that is waived.
    pub check: String,
    /// Why; empty when the author gave none.
    pub reason: String,
    /// Where it holds: findings whose place lies inside.
    pub scope: Span,
    /// The waiver itself.
    pub span: Span,
}

/// A finding that a waiver took away, for the editor's report.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Waived {
    /// The finding.
    pub finding: Finding,
    /// The author's reason.
    pub reason: String,
}

/// Findings as they come in.
#[derive(Debug, Clone, Default)]
pub struct Findings {
    found: Vec<Finding>,
}

/// Findings as they are shown.
#[derive(Debug, Clone, Default)]
pub struct Report {
    /// What stands, sorted by file and place.
    pub findings: Vec<Finding>,
    /// What was waived with a reason.
    pub waived: Vec<Waived>,
}

impl Report {
    /// How many findings stop the build.
    pub fn errors(&self) -> usize {
        self.findings.iter().filter(|finding| finding.level() == Level::Error).count()
    }

    /// How many findings are warnings.
    pub fn warnings(&self) -> usize {
        self.findings.len() - self.errors()
    }
}

impl Findings {
    /// Takes in one finding.
    pub fn push(&mut self, finding: Finding) {
        self.found.push(finding);
    }

    /// Takes in the findings of another stage or size.
    pub fn extend(&mut self, others: impl IntoIterator<Item = Finding>) {
        self.found.extend(others);
    }

    /// Takes in what a stage found beside its result, which is handed on.
    pub fn keep<T>(&mut self, (result, found): (T, Findings)) -> T {
        self.found.extend(found.found);
        result
    }

    /// Whether any finding so far stops the build.
    pub fn has_errors(&self) -> bool {
        self.found.iter().any(|finding| finding.level() == Level::Error)
    }

    /// The findings so far, in the order in which they came.
    pub fn iter(&self) -> impl Iterator<Item = &Finding> {
        self.found.iter()
    }

    /// Merges sizes, applies the waivers, checks the waivers themselves, and sorts.
    ///
    /// `size_count` sizes having the same fault is a fault of all: its list of sizes is emptied,
    /// unless the sizes differ in detail. `unused` says what is wrong with a waiver that took nothing
    /// away, if anything is.
    pub fn report(
        self,
        sources: &Sources,
        size_count: usize,
        waivers: &[Waiver],
        unused: &dyn Fn(&Waiver) -> Option<Finding>,
    ) -> Report {
        let mut merged = merge(self.found);
        for finding in &mut merged {
            let Some((_, detail)) = finding.sizes.first().cloned() else { continue };
            let alike = finding.sizes.iter().all(|(_, other)| *other == detail);
            if finding.sizes.len() == size_count && alike {
                finding.sizes.clear();
                if !detail.is_empty() {
                    finding.message = format!("{}: {detail}", finding.message);
                }
            }
        }
        let mut used = vec![false; waivers.len()];
        let mut by_check: HashMap<&str, Vec<usize>> = HashMap::new();
        for (at, waiver) in waivers.iter().enumerate() {
            by_check.entry(&waiver.check).or_default().push(at);
        }
        let mut report = Report::default();
        for finding in merged {
            let of_check = by_check.get(finding.code()).map_or(&[][..], Vec::as_slice);
            let waiver = of_check.iter().copied().find(|waiver| {
                let waiver = &waivers[*waiver];
                waiver.scope.holds(finding.span) && !waiver.reason.is_empty() && finding.check.waivable
            });
            match waiver {
                Some(index) => {
                    used[index] = true;
                    let reason = waivers[index].reason.clone();
                    report.waived.push(Waived { finding, reason });
                }
                None => report.findings.push(finding),
            }
        }
        // With an error nothing is built, so that nothing is missed that may follow from it.
        if report.findings.iter().any(|finding| finding.level() == Level::Error && !finding.follows) {
            report.findings.retain(|finding| !finding.follows);
        }
        for (waiver, used) in waivers.iter().zip(used) {
            if !used {
                report.findings.extend(unused(waiver));
            }
        }
        let order = |finding: &Finding| {
            (sources.file(finding.span.file).path.clone(), finding.span.start, finding.span.end, finding.code())
        };
        report.findings.sort_by_cached_key(order);
        report.waived.sort_by_cached_key(|waived| order(&waived.finding));
        report
    }
}

impl IntoIterator for Findings {
    type Item = Finding;
    type IntoIter = std::vec::IntoIter<Finding>;

    fn into_iter(self) -> Self::IntoIter {
        self.found.into_iter()
    }
}

fn merge(found: Vec<Finding>) -> Vec<Finding> {
    let check = |finding: &Finding| std::ptr::from_ref(finding.check).addr();
    // The places in `merged`, so that each finding is held against its like alone.
    let mut known: HashMap<(usize, Option<Span>, String, bool), usize> = HashMap::new();
    let mut of_sizes: HashMap<(usize, Span), Vec<usize>> = HashMap::new();
    let mut merged: Vec<Finding> = Vec::with_capacity(found.len());
    for finding in found {
        let place = (!finding.everywhere).then_some(finding.span);
        let alike = (check(&finding), place, finding.message.clone(), finding.sizes.is_empty());
        if let Some(twin) = known.get(&alike) {
            absorb(&mut merged[*twin], finding);
            continue;
        }
        let beside = of_sizes.entry((check(&finding), finding.span)).or_default();
        if let Some(twin) = beside.iter().find(|other| same_place_other_sizes(&merged[**other], &finding)) {
            tell_by_size(&mut merged[*twin], finding);
        } else {
            known.insert(alike, merged.len());
            if !finding.sizes.is_empty() {
                beside.push(merged.len());
            }
            merged.push(finding);
        }
    }
    merged
}

/// At one place the sizes may differ in their figures alone: one fault, told size by size.
fn same_place_other_sizes(one: &Finding, other: &Finding) -> bool {
    !one.sizes.is_empty()
        && !other.sizes.is_empty()
        && !one.sizes.iter().any(|(size, _)| other.sizes.iter().any(|(own, _)| own == size))
}

fn absorb(twin: &mut Finding, finding: Finding) {
    if twin.span != finding.span && !twin.notes.iter().any(|(span, _)| *span == finding.span) {
        twin.notes.push((finding.span, "and here".into()));
    }
    for (size, detail) in finding.sizes {
        if !twin.sizes.iter().any(|(known, _)| *known == size) {
            twin.sizes.push((size, detail));
        }
    }
    twin.sizes.sort();
    for note in finding.notes {
        if !twin.notes.contains(&note) {
            twin.notes.push(note);
        }
    }
}

fn tell_by_size(twin: &mut Finding, finding: Finding) {
    let told = |sizes: &[(usize, String)], message: &str| -> Vec<(usize, String)> {
        let words = |detail: &String| if detail.is_empty() { message.to_owned() } else { detail.clone() };
        sizes.iter().map(|(size, detail)| (*size, words(detail))).collect()
    };
    twin.sizes = told(&twin.sizes, &twin.message);
    twin.sizes.extend(told(&finding.sizes, &finding.message));
    twin.sizes.sort();
}

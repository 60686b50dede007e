//! Runs the checks of the table: over the booklet, over each size, over each way through it.

use super::judge::{Run, Subject};
use super::table::CHECKS;
use crate::construct::History;
use crate::diag::{Finding, Findings};
use crate::resolve::Edition;

/// Runs every check that runs by itself.
pub fn run_all(subject: &Subject<'_>, findings: &mut Findings) {
    // With a length or a size that cannot be read, a play would find faults that are none.
    let broken = findings.iter().any(|finding| finding.check.breaking);
    let played = subject.draft.whole && !broken;
    for judge in CHECKS {
        match judge.run {
            Run::Elsewhere => {}
            Run::Booklet(run) => run(subject, findings),
            Run::Edition(run) => each_size(subject, findings, &|edition, _, found| run(edition, found)),
            // Steps that could not be read would be missed at every turn.
            Run::Construction(_) if !played => {}
            Run::Construction(run) => each_size(subject, findings, &run),
        }
    }
}

/// Looks at every size, and where something is left to the maker, at every way through it.
fn each_size(subject: &Subject<'_>, findings: &mut Findings, look: &dyn Fn(&Edition<'_>, &History, &mut Findings)) {
    for ((edition, history), ways) in subject.editions.iter().zip(subject.histories).zip(subject.ways) {
        if ways.is_empty() {
            look(edition, history, findings);
        }
        let mut told: Vec<Finding> = Vec::new();
        for way in ways {
            let mut found = Findings::default();
            look(&way.edition, &way.history, &mut found);
            // What holds on an earlier way is told there.
            let fresh: Vec<Finding> = found.into_iter().filter(|finding| !told.contains(finding)).collect();
            told.extend(fresh.iter().cloned());
            findings.extend(fresh.into_iter().map(|finding| match way.told.is_empty() {
                true => finding,
                false => finding.only(&way.told),
            }));
        }
    }
}

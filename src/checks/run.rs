//! Runs the checks of the table: over the booklet, over each size, over each way through it; and notes of each whether
//! it was run, and over what.

use super::judge::{Run, Subject};
use super::table::CHECKS;
use crate::construct::History;
use crate::diag::{Check, Finding, Findings};
use crate::faults;
use crate::resolve::Edition;

/// What a check looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Looked {
    /// What was read, worked out and drawn: its fault is met there.
    Reading,
    /// The whole booklet, once.
    Booklet,
    /// Each size.
    Sizes,
    /// The steps of each size, as they were played.
    Play,
    /// Nothing, since figures or words are broken that the steps are played with.
    NotPlayed,
    /// Nothing: its fault is met where files are set or published.
    NotMade,
}

impl Looked {
    /// Whether it looked at anything.
    pub fn looked(self) -> bool {
        !matches!(self, Looked::NotPlayed | Looked::NotMade)
    }
}

/// A check and what became of it.
#[derive(Debug, Clone, Copy)]
pub struct Ran {
    /// The check.
    pub check: &'static Check,
    /// What it looked at.
    pub looked: Looked,
}

/// The faults that are met only where files are set or published.
static OF_FILES: [&Check; 6] = [
    &faults::TYPESETTING_FAILED,
    &faults::TYPESETTING_DOUBTFUL,
    &faults::SHOP_TEXT_TOO_LONG,
    &faults::FILE_TOO_LARGE,
    &faults::EDITION_NOT_RAISED,
    &faults::MANIFEST_UNREADABLE,
];

/// Runs every check that runs by itself, and tells of all what they looked at.
pub fn run_all(subject: &Subject<'_>, findings: &mut Findings) -> Vec<Ran> {
    // With a length or a size that cannot be read, a play would find faults that are none.
    let broken = findings.iter().any(|finding| finding.check.breaking);
    let played = subject.draft.whole && !broken;
    let mut ran = Vec::with_capacity(CHECKS.len());
    for judge in CHECKS {
        let looked = match judge.run {
            Run::Elsewhere if OF_FILES.contains(&judge.check) => Looked::NotMade,
            Run::Elsewhere => Looked::Reading,
            Run::Booklet(run) => {
                run(subject, findings);
                Looked::Booklet
            }
            Run::Edition(run) => {
                each_size(subject, findings, &|edition, _, found| run(edition, found));
                Looked::Sizes
            }
            // Steps that could not be read would be missed at every turn.
            Run::Construction(_) if !played => Looked::NotPlayed,
            Run::Construction(run) => {
                each_size(subject, findings, &run);
                Looked::Play
            }
        };
        ran.push(Ran { check: judge.check, looked });
    }
    ran
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

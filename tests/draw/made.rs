//! Booklets of one drawn step, written for a test.

use notchbook::pipeline::Workshop;

use crate::bench::written;
use crate::{Drawing, drawn};

/// A step `it` drawn from its work, behind the cutting of all and other work.
pub fn step(facts: &str, before: &str, work: &str, then: impl FnOnce(&Workshop)) {
    spoken(facts, before, work, &[], then);
}

/// The same with more files of the booklet.
pub fn spoken(
    facts: &str,
    before: &str,
    work: &str,
    more: &[(&str, &str)],
    then: impl FnOnce(&Workshop),
) {
    let make = format!(
        "# Make it\n\n## Cut {{#cut}}\n\n```work\n- cut: all\n{before}\n```\n\nCut.\n\n## Do it {{#it}}\n\n```work\n{work}\n```\n\nDo it.\n\n![What is done](draw:work)\n"
    );
    let files = [("booklet.yaml", facts), ("make.md", &make)];
    written(&[&files, more].concat(), then);
}

/// What is said of steps that cannot be drawn.
pub fn refused(compiled: &Workshop) -> Vec<&str> {
    let found = compiled.report.findings.iter();
    found
        .filter(|finding| finding.code() == "figure-not-drawable")
        .map(|finding| finding.message.as_str())
        .collect()
}

/// The same step, which must be drawn, in every size.
pub fn seen(
    facts: &str,
    before: &str,
    work: &str,
    mut then: impl FnMut(&Workshop, usize, &Drawing),
) {
    step(facts, before, work, |compiled| {
        assert_eq!(refused(compiled), [""; 0], "{work}");
        for size in 0..compiled.sizes.len() {
            then(compiled, size, &Drawing::read(drawn(compiled, size, "it")));
        }
    });
}

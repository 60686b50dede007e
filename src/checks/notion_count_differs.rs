//! More or fewer buttons or fasteners are bought than the steps use.
//!
//! ## Why it matters
//! The maker stands before the last buttonhole without a button, or pays for some that she has no use for.
//!
//! ## Wrong
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   buttons: {kind: button, name: Flat button, size: 18 mm (11/16 in), count: 4}
//! ```
//! ````md
//! ## Sew the buttons on {#buttons}
//!
//! ```work
//! - {button: [buttons, front], count: 5, by: hand}
//! ```
//!
//! Sew the buttons on.
//! ````
//!
//! ## Right
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   buttons: {kind: button, name: Flat button, size: 18 mm (11/16 in), count: 5}
//! ```
//! ````md
//! ## Sew the buttons on {#buttons}
//!
//! ```work
//! - {button: [buttons, front], count: buttons.count, by: hand}
//! ```
//!
//! Sew the buttons on.
//! ````
//!
//! ## Limits
//! Adds up what `button` and `fasten` say by marks or `count:` in each size. Where one of them tells no number, or
//! another verb uses the notion too, nothing is added up. A fastener whose two halves are set by facts of
//! their own counts once. A spare one is waived at the notion.

use super::judge::Judge;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::Verb;
use crate::resolve::{Edition, NotionId};

/// The check.
pub(super) static CHECK: Judge = Judge::edition(
    &Check::warning("notion-count-differs", Group::Work, include_str!("notion_count_differs.rs"))
        .waivable_in(Home::Facts),
    run,
);

/// Holds what is bought of every notion against what the steps of one size use.
pub(super) fn run(edition: &Edition<'_>, findings: &mut Findings) {
    if !edition.draft.whole {
        return;
    }
    for row in &edition.notions {
        let (Some(bought), Some((used, halves))) = (row.count, used(edition, row.notion)) else { continue };
        if used == bought || (halves && bought.checked_mul(2) == Some(used)) {
            continue;
        }
        let notion = &edition.draft.facts.notions[row.notion];
        findings.push(
            CHECK
                .at(notion.id.span, format!("the steps use another number of `{}` than is bought", notion.id.text))
                .hint(format!(
                    "make them the same: name `{}.count` in the work; a spare one is waived here",
                    notion.id.text
                ))
                .in_size(edition.size(), format!("{bought} bought, {used} used")),
        );
    }
}

/// Fasteners that have no second half (common practice, no source).
const WHOLE: [&str; 6] = ["ring", "slider", "eyelet", "rivet", "grommet", "stopper"];

/// How many of a notion the steps use, and whether several facts set it, each perhaps one half; `None` where
/// that is not known.
fn used(edition: &Edition<'_>, notion: NotionId) -> Option<(u32, bool)> {
    let works = edition.steps().flat_map(|step| &step.works);
    let works: Vec<_> = works.filter(|work| work.targets.iter().any(|one| one.notion() == Some(notion))).collect();
    let mut sum: u32 = 0;
    for work in &works {
        let sets = matches!(work.verb, Verb::Button | Verb::Fasten);
        sum = sum.checked_add(work.count.filter(|_| sets)?)?;
    }
    let name = edition.draft.facts.notions[notion].name.text.to_lowercase();
    let whole = name
        .split(|letter: char| !letter.is_alphanumeric())
        .any(|word| WHOLE.iter().any(|known| word == *known || word.strip_suffix('s') == Some(known)));
    let halves = works.len() > 1 && !whole && works.iter().all(|work| work.verb == Verb::Fasten);
    (!works.is_empty()).then_some((sum, halves))
}

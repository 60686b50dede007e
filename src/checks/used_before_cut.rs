//! A piece is used before the step that cuts it, or before the cloth for it is made.
//!
//! ## Why it matters
//! The maker is told to press or sew a piece that still lies uncut in the cloth.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   tab: {outline: {rectangle: [5 cm, 5 cm]}, raw: all, cut: {outer: [tab_one, tab_two]}}
//! ```
//! ````md
//! ## Make the tabs {#tabs}
//!
//! ```work
//! - press: tab
//! - cut: tab
//! ```
//!
//! Cut the tabs and press them.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   tab: {outline: {rectangle: [5 cm, 5 cm]}, raw: all, cut: {outer: [tab_one, tab_two]}}
//! ```
//! ````md
//! ## Make the tabs {#tabs}
//!
//! ```work
//! - cut: tab
//! - press: tab
//! ```
//!
//! Cut the tabs and press them.
//! ````
//!
//! ## Limits
//! Goes through the steps of each size in their order. A fabric that is made `from:` a piece counts
//! as made once that piece is quilted. A piece that is never cut is told by `piece-not-cut`.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, listed};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge =
    Judge::construction(&Check::error("used-before-cut", Group::Work, include_str!("used_before_cut.rs")), run);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        match fault {
            Fault::UsedBeforeCut { copies, used, cut } => findings.push(
                CHECK
                    .at(used.verb, format!("{} used before being cut", are(copies)))
                    .hint(format!("cut first: move the step that cuts before step {}, or this one after it", used.step))
                    .note(cut.verb, format!("cut only here, in step {}", cut.step))
                    .in_size(edition.size(), ""),
            ),
            Fault::ClothNotMade { piece, fabric, cut, made } => {
                let facts = &edition.draft.facts;
                let (piece, fabric) = (&facts.pieces[*piece].id.text, &facts.fabrics[*fabric].id.text);
                let finding = CHECK.at(cut.verb, format!("`{piece}` is cut from `{fabric}`, which is not made yet"));
                let finding = match made {
                    Some(made) => finding
                        .hint(format!("cut it after step {}, which makes the cloth", made.step))
                        .note(made.verb, format!("made only here, in step {}", made.step)),
                    None => finding.hint("add the step that quilts the piece this cloth is made from"),
                };
                findings.push(finding.in_size(edition.size(), ""));
            }
            _ => {}
        }
    }
}

/// "`front` is", "`strip` and `tab` are".
fn are(names: &[String]) -> String {
    let quoted: Vec<String> = names.iter().map(|name| format!("`{name}`")).collect();
    format!("{} {}", listed(&quoted), if quoted.len() > 1 { "are" } else { "is" })
}

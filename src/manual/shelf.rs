//! All pages, found by name and listed by chapter.

use super::chapter::Chapter;
use super::markdown::under;
use super::page::ManualPage;
use super::{diagrams, formulas, keys, work};
use crate::checks::{CHECKS, Judge};
use crate::diag::Group;
use crate::measure::Unit;

/// Every page, chapter by chapter.
pub fn pages() -> Vec<ManualPage> {
    let mut pages = work::pages();
    pages.extend(keys::pages());
    pages.extend(formulas::functions());
    pages.extend(formulas::units());
    pages.extend(diagrams::pages());
    pages.extend(checks());
    pages.sort_by_key(|page| page.chapter);
    pages
}

/// The pages of a word, in the order of the chapters; empty when there is none. A unit is known by each of
/// its spellings; a colon behind a key is no part of it, and a capital does no harm.
pub fn find(word: &str) -> Vec<ManualPage> {
    let word = word.trim().trim_end_matches(':');
    let symbol: Option<&'static str> = Unit::parse(word).map(Unit::symbol);
    let pages = pages();
    let named = |name: &str| pages.iter().filter(|page| page.name == name).cloned().collect::<Vec<_>>();
    let found = named(symbol.unwrap_or(word));
    if found.is_empty() { named(&word.to_lowercase()) } else { found }
}

/// The pages of the checks, group by group.
fn checks() -> Vec<ManualPage> {
    let mut checks: Vec<_> = CHECKS.iter().collect();
    checks.sort_by_key(|check| Group::ALL.iter().position(|group| *group == check.group));
    let page = |check: &&Judge| ManualPage {
        name: check.code.to_owned(),
        sort: "a check".to_owned(),
        chapter: Chapter::Checks,
        section: check.group.name().to_owned(),
        summary: format!("{} ({})", check.page().summary, check.level.word()),
        text: under(&check.explanation(), "# ").into_iter().map(|(_, text)| text).collect(),
    };
    checks.iter().map(page).collect()
}

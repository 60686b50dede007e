//! What keeps an edition from being published.

use std::cmp::Ordering;

use crate::checks::{by_number, same};
use crate::diag::{Finding, Findings};
use crate::errata::{compare, next_edition};
use crate::faults::{EDITION_NOT_RAISED, FILE_TOO_LARGE, MANIFEST_UNREADABLE, SHOP_TEXT_TOO_LONG};
use crate::limits::thousands;
use crate::manifest::{Manifest, ManifestFault};
use crate::model::{Facts, Shop};
use crate::source::Span;

/// An edition that was published before.
pub struct Earlier {
    /// Where it lies, as it is shown to people.
    pub place: String,
    /// What it holds.
    pub manifest: Manifest,
}

/// Whether the shop's text has more letters than it may.
pub fn text_length(facts: &Facts, text: &str) -> Option<Finding> {
    let (most, span) = facts.shop.letters.unwrap_or((Shop::LETTERS, facts.title.span));
    let letters = text.trim_end().chars().count();
    let fact = format!("the text for the shop has {} letters: {} are the most", thousands(letters), thousands(most));
    let act = "shorten the summary and the names of what is needed, or raise `letters:` where the shop takes more";
    (letters > most).then(|| SHOP_TEXT_TOO_LONG.at(span, fact).hint(act))
}

/// Whether any file is larger than it may be.
pub fn file_sizes<'a>(facts: &Facts, files: impl Iterator<Item = (&'a str, usize)>) -> Findings {
    let (most, span) = facts.shop.largest.unwrap_or((Shop::LARGEST, facts.title.span));
    let mut findings = Findings::default();
    for (path, bytes) in files.filter(|(_, bytes)| *bytes as u64 > most) {
        let fact = format!("`{path}` has {} bytes: {} are the most", thousands(bytes), thousands(most as usize));
        let act = "save the cover and the logo smaller, or raise `largest:` where the shop takes more";
        findings.push(FILE_TOO_LARGE.at(span, fact).hint(act));
    }
    findings
}

/// Whether an edition must bear a higher number than it does.
pub fn not_raised(edition: Span, new: &Manifest, earlier: &[Earlier]) -> Option<Finding> {
    let own = new.all.edition.as_str();
    // What was published under this very number is told first.
    let twin = earlier.iter().find(|one| same(own, &one.manifest.all.edition) && one.manifest != *new);
    let above = |one: &&Earlier| by_number(own, &one.manifest.all.edition) == Some(Ordering::Less);
    let fact = |one: &Earlier| {
        let other = &one.manifest.all.edition;
        match same(own, other) {
            true => format!("edition {other} was published as `{}`, and what it holds has changed", one.place),
            false => format!("edition {own} is older than edition {other}, which was published as `{}`", one.place),
        }
    };
    // Of several newer ones the newest is held against.
    let newest = earlier.iter().filter(above).max_by(|one, other| {
        by_number(&one.manifest.all.edition, &other.manifest.all.edition).unwrap_or(Ordering::Equal)
    });
    let one = newest.or(twin)?;
    let next = next_edition(&compare(&one.manifest, new)).map_or_else(String::new, |next| format!(" to {next}"));
    let act = format!(
        "raise `edition:`{next}, and say under `editions:` what has changed; `notchbook errata` writes the line"
    );
    Some(EDITION_NOT_RAISED.at(edition, fact(one)).hint(act))
}

/// A manifest that cannot be read, at its file.
pub fn unreadable(file: Span, place: &str, fault: &ManifestFault) -> Finding {
    MANIFEST_UNREADABLE.at(file, format!("`{place}` cannot be read: {}", fault.fact)).hint(&fault.act)
}

/// A manifest that is of another booklet; `None` where it is of the same.
pub fn not_of_this(file: Span, place: &str, booklet: &str, manifest: &Manifest) -> Option<Finding> {
    let fact = format!("`{place}` is of the booklet `{}`, not of `{booklet}`", manifest.booklet);
    let act = "name two editions of one booklet";
    (manifest.booklet != booklet).then(|| MANIFEST_UNREADABLE.at(file, fact).hint(act))
}

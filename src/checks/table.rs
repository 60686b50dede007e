//! The table of checks.

use std::collections::BTreeSet;

use crate::construct::History;
use crate::diag::{Findings, Level};
use crate::figure::Figures;
use crate::model::Draft;
use crate::resolve::{Catalogue, Edition};
use crate::sheets::{ClothFault, ClothLayout};

use super::allowance_differs;
use super::allowance_missing;
use super::alt_missing;
use super::amount_too_small;
use super::both_systems_disagree;
use super::boxed_before_sewn;
use super::closed_zip_before_turning;
use super::contrast_too_low;
use super::cut_count_differs;
use super::edge_left_raw;
use super::edge_unknown;
use super::edition_not_recorded;
use super::expectation_fails;
use super::finished_size_differs;
use super::fused_after_sewn;
use super::gap_not_closed;
use super::gap_not_left;
use super::grain_off_piece;
use super::heading_skips;
use super::id_twice;
use super::letter_not_in_font;
use super::loose_measurement;
use super::not_graded;
use super::not_pressed;
use super::notches_differ;
use super::notion_unused;
use super::page::Page;
use super::piece_not_cut;
use super::piece_too_wide;
use super::piece_unused;
use super::pinned_after_sewn;
use super::rounding_does_not_close;
use super::seam_lengths_differ;
use super::step_empty;
use super::stitch_missing;
use super::topstitched_before_sewn;
use super::unused_measurement;
use super::used_before_cut;

/// What a check looks at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Group {
    /// `booklet.yaml`: values, formulas, sizes.
    Facts,
    /// Prose, references, headings.
    Words,
    /// What the steps do.
    Work,
    /// Diagrams.
    Figures,
    /// The page and the sheets.
    Print,
    /// Waivers themselves.
    Waivers,
}

impl Group {
    /// All groups, in the order of the reference page.
    pub const ALL: &'static [Group] =
        &[Group::Facts, Group::Words, Group::Work, Group::Figures, Group::Print, Group::Waivers];

    /// Its name in the reference page.
    pub fn name(self) -> &'static str {
        match self {
            Group::Facts => "Facts",
            Group::Words => "Words",
            Group::Work => "Work",
            Group::Figures => "Figures",
            Group::Print => "Print",
            Group::Waivers => "Waivers",
        }
    }
}

/// Everything that checks of a whole booklet may look at.
pub struct Subject<'a> {
    /// The booklet as written.
    pub draft: &'a Draft,
    /// Its names.
    pub catalogue: &'a Catalogue,
    /// Every size, worked out.
    pub editions: &'a [Edition<'a>],
    /// Every size, played; in the order of the editions.
    pub histories: &'a [History],
    /// The diagrams.
    pub figures: &'a Figures,
    /// Every letter and sign that the fonts hold.
    pub letters: &'a BTreeSet<char>,
    /// The cloth of every size, laid or too narrow; in the order of the editions.
    pub cloth: &'a [Vec<Result<ClothLayout, Box<ClothFault>>>],
}

/// How a check runs.
#[derive(Clone, Copy)]
pub enum Run {
    /// The fault is met while the booklet is read, worked out, drawn or set.
    Elsewhere,
    /// Once for a booklet.
    Booklet(fn(&Subject<'_>, &mut Findings)),
    /// Once for each size.
    Edition(fn(&Edition<'_>, &mut Findings)),
    /// Once for each size, over the steps as they were played.
    Construction(fn(&Edition<'_>, &History, &mut Findings)),
}

/// One check.
#[derive(Clone, Copy)]
pub struct Check {
    /// Its name in kebab-case: the fault, so that it reads well after "waive".
    pub code: &'static str,
    /// What it looks at.
    pub group: Group,
    /// Whether its findings stop the build.
    pub level: Level,
    /// Whether an author may waive it.
    pub waivable: bool,
    /// How it runs.
    pub run: Run,
    source: &'static str,
}

impl Check {
    /// The page that explains it.
    pub fn page(&self) -> Page {
        Page::of(self.source)
    }
}

macro_rules! check {
    ($file:literal, $code:literal, $group:ident, $level:ident, $waivable:literal, $run:expr) => {
        Check {
            code: $code,
            group: Group::$group,
            level: Level::$level,
            waivable: $waivable,
            run: $run,
            source: include_str!($file),
        }
    };
}

/// Every check, group by group.
#[rustfmt::skip]
pub const CHECKS: &[Check] = &[
    check!("file-unreadable.md", "file-unreadable", Facts, Error, false, Run::Elsewhere),
    check!("file-empty.md", "file-empty", Facts, Error, false, Run::Elsewhere),
    check!("yaml-unreadable.md", "yaml-unreadable", Facts, Error, false, Run::Elsewhere),
    check!("nested-too-deep.md", "nested-too-deep", Facts, Error, false, Run::Elsewhere),
    check!("duplicate-key.md", "duplicate-key", Facts, Error, false, Run::Elsewhere),
    check!("key-unknown.md", "key-unknown", Facts, Error, false, Run::Elsewhere),
    check!("key-missing.md", "key-missing", Facts, Error, false, Run::Elsewhere),
    check!("value-unreadable.md", "value-unreadable", Facts, Error, false, Run::Elsewhere),
    check!("name-twice.md", "name-twice", Facts, Error, false, Run::Elsewhere),
    check!("unknown-name.md", "unknown-name", Facts, Error, false, Run::Elsewhere),
    check!("formula-unreadable.md", "formula-unreadable", Facts, Error, false, Run::Elsewhere),
    check!("unit-mismatch.md", "unit-mismatch", Facts, Error, false, Run::Elsewhere),
    check!("wrong-arguments.md", "wrong-arguments", Facts, Error, false, Run::Elsewhere),
    check!("out-of-range.md", "out-of-range", Facts, Error, false, Run::Elsewhere),
    check!("division-by-zero.md", "division-by-zero", Facts, Error, false, Run::Elsewhere),
    check!("number-too-large.md", "number-too-large", Facts, Error, false, Run::Elsewhere),
    check!("formula-ring.md", "formula-ring", Facts, Error, false, Run::Elsewhere),
    check!("size-missing.md", "size-missing", Facts, Error, false, Run::Elsewhere),
    check!("size-unknown.md", "size-unknown", Facts, Error, false, Run::Elsewhere),
    check!("no-stock-length.md", "no-stock-length", Facts, Error, false, Run::Elsewhere),
    check!("outline-wrong.md", "outline-wrong", Facts, Error, false, Run::Elsewhere),
    check!("notch-off-edge.md", "notch-off-edge", Facts, Error, false, Run::Elsewhere),
    check!("both_systems_disagree.rs", "both-systems-disagree", Facts, Error, true, Run::Edition(both_systems_disagree::run)),
    check!("rounding_does_not_close.rs", "rounding-does-not-close", Facts, Error, true, Run::Edition(rounding_does_not_close::run)),
    check!("expectation_fails.rs", "expectation-fails", Facts, Error, true, Run::Edition(expectation_fails::run)),
    check!("unused_measurement.rs", "unused-measurement", Facts, Warning, true, Run::Booklet(unused_measurement::run)),
    check!("not_graded.rs", "not-graded", Facts, Warning, true, Run::Booklet(not_graded::run)),
    check!("edition_not_recorded.rs", "edition-not-recorded", Facts, Warning, true, Run::Booklet(edition_not_recorded::run)),
    check!("for-unreadable.md", "for-unreadable", Words, Error, false, Run::Elsewhere),
    check!("choice-unreadable.md", "choice-unreadable", Words, Error, false, Run::Elsewhere),
    check!("choice-not-covered.md", "choice-not-covered", Words, Error, false, Run::Elsewhere),
    check!("reference-broken.md", "reference-broken", Words, Error, false, Run::Elsewhere),
    check!("reference-left-out.md", "reference-left-out", Words, Error, false, Run::Elsewhere),
    check!("term-undefined.md", "term-undefined", Words, Error, false, Run::Elsewhere),
    check!("id_twice.rs", "id-twice", Words, Error, false, Run::Booklet(id_twice::run)),
    check!("loose_measurement.rs", "loose-measurement", Words, Error, true, Run::Booklet(loose_measurement::run)),
    check!("alt_missing.rs", "alt-missing", Words, Error, false, Run::Booklet(alt_missing::run)),
    check!("figure-missing.md", "figure-missing", Words, Error, false, Run::Elsewhere),
    check!("figure-misplaced.md", "figure-misplaced", Words, Error, false, Run::Elsewhere),
    check!("markup-not-printed.md", "markup-not-printed", Words, Error, true, Run::Elsewhere),
    check!("step_empty.rs", "step-empty", Words, Error, true, Run::Booklet(step_empty::run)),
    check!("heading_skips.rs", "heading-skips", Words, Error, false, Run::Booklet(heading_skips::run)),
    check!("work-unreadable.md", "work-unreadable", Work, Error, false, Run::Elsewhere),
    check!("allowance_missing.rs", "allowance-missing", Work, Error, true, Run::Booklet(allowance_missing::run)),
    check!("stitch_missing.rs", "stitch-missing", Work, Error, true, Run::Booklet(stitch_missing::run)),
    check!("piece_not_cut.rs", "piece-not-cut", Work, Error, true, Run::Edition(piece_not_cut::run)),
    check!("piece_unused.rs", "piece-unused", Work, Warning, true, Run::Edition(piece_unused::run)),
    check!("notion_unused.rs", "notion-unused", Work, Warning, true, Run::Edition(notion_unused::run)),
    check!("used_before_cut.rs", "used-before-cut", Work, Error, false, Run::Construction(used_before_cut::run)),
    check!("cut_count_differs.rs", "cut-count-differs", Work, Error, false, Run::Construction(cut_count_differs::run)),
    check!("edge_unknown.rs", "edge-unknown", Work, Error, false, Run::Construction(edge_unknown::run)),
    check!("seam_lengths_differ.rs", "seam-lengths-differ", Work, Error, true, Run::Construction(seam_lengths_differ::run)),
    check!("notches_differ.rs", "notches-differ", Work, Error, true, Run::Construction(notches_differ::run)),
    check!("allowance_differs.rs", "allowance-differs", Work, Error, true, Run::Construction(allowance_differs::run)),
    check!("fused_after_sewn.rs", "fused-after-sewn", Work, Error, true, Run::Construction(fused_after_sewn::run)),
    check!("topstitched_before_sewn.rs", "topstitched-before-sewn", Work, Error, true, Run::Construction(topstitched_before_sewn::run)),
    check!("not_pressed.rs", "not-pressed", Work, Warning, true, Run::Construction(not_pressed::run)),
    check!("pinned_after_sewn.rs", "pinned-after-sewn", Work, Error, true, Run::Construction(pinned_after_sewn::run)),
    check!("boxed_before_sewn.rs", "boxed-before-sewn", Work, Error, true, Run::Construction(boxed_before_sewn::run)),
    check!("gap_not_left.rs", "gap-not-left", Work, Error, true, Run::Construction(gap_not_left::run)),
    check!("gap_not_closed.rs", "gap-not-closed", Work, Error, true, Run::Construction(gap_not_closed::run)),
    check!("closed_zip_before_turning.rs", "closed-zip-before-turning", Work, Error, true, Run::Construction(closed_zip_before_turning::run)),
    check!("edge_left_raw.rs", "edge-left-raw", Work, Error, true, Run::Construction(edge_left_raw::run)),
    check!("finished_size_differs.rs", "finished-size-differs", Work, Error, true, Run::Construction(finished_size_differs::run)),
    check!("figure-not-drawable.md", "figure-not-drawable", Figures, Error, false, Run::Elsewhere),
    check!("figure-formula.md", "figure-formula", Figures, Error, false, Run::Elsewhere),
    check!("script-in-figure.md", "script-in-figure", Figures, Error, false, Run::Elsewhere),
    check!("outside-link.md", "outside-link", Figures, Error, false, Run::Elsewhere),
    check!("font-not-bundled.md", "font-not-bundled", Figures, Error, false, Run::Elsewhere),
    check!("class-unknown.md", "class-unknown", Figures, Warning, true, Run::Elsewhere),
    check!("label-too-small.md", "label-too-small", Figures, Error, true, Run::Elsewhere),
    check!("figure-cut-off.md", "figure-cut-off", Figures, Error, true, Run::Elsewhere),
    check!("figure-too-wide.md", "figure-too-wide", Figures, Error, true, Run::Elsewhere),
    check!("letter_not_in_font.rs", "letter-not-in-font", Print, Error, false, Run::Booklet(letter_not_in_font::run)),
    check!("piece_too_wide.rs", "piece-too-wide", Print, Error, true, Run::Booklet(piece_too_wide::run)),
    check!("amount_too_small.rs", "amount-too-small", Print, Error, true, Run::Booklet(amount_too_small::run)),
    check!("grain_off_piece.rs", "grain-off-piece", Print, Warning, true, Run::Edition(grain_off_piece::run)),
    check!("contrast_too_low.rs", "contrast-too-low", Print, Error, true, Run::Booklet(contrast_too_low::run)),
    check!("typesetting-failed.md", "typesetting-failed", Print, Error, false, Run::Elsewhere),
    check!("waiver-unused.md", "waiver-unused", Waivers, Warning, false, Run::Elsewhere),
    check!("waiver-without-reason.md", "waiver-without-reason", Waivers, Error, false, Run::Elsewhere),
];

/// The check of that name.
pub fn by_code(code: &str) -> Option<&'static Check> {
    CHECKS.iter().find(|check| check.code == code)
}

/// Whether a check may be waived; `None` when there is no such check.
pub fn waivable(code: &str) -> Option<bool> {
    by_code(code).map(|check| check.waivable)
}

/// Faults of values that the steps are played with.
const BREAKING: &[&str] = &[
    "unknown-name",
    "unit-mismatch",
    "formula-unreadable",
    "formula-ring",
    "wrong-arguments",
    "out-of-range",
    "division-by-zero",
    "number-too-large",
    "no-stock-length",
    "size-missing",
    "size-unknown",
    "value-unreadable",
    "key-missing",
    "outline-wrong",
    "for-unreadable",
    "choice-unreadable",
];

/// Runs every check that runs by itself.
pub fn run_all(subject: &Subject<'_>, findings: &mut Findings) {
    // With a length or a size that cannot be read, a play would find faults that are none.
    let broken = findings.iter().any(|finding| BREAKING.contains(&finding.code));
    for check in CHECKS {
        match check.run {
            Run::Elsewhere => {}
            Run::Booklet(run) => run(subject, findings),
            Run::Edition(run) => subject.editions.iter().for_each(|edition| run(edition, findings)),
            // Steps that could not be read would be missed at every turn.
            Run::Construction(_) if !subject.draft.whole || broken => {}
            Run::Construction(run) => {
                let played = subject.editions.iter().zip(subject.histories);
                played.for_each(|(edition, history)| run(edition, history, findings));
            }
        }
    }
}

impl Check {
    /// The page with its name, its level and how it is waived: what `explain` prints.
    pub fn explanation(&self) -> String {
        let stops = match self.level {
            Level::Error => "An error: it stops the build.",
            Level::Warning => "A warning: the build goes on, unless `--deny warnings` is given.",
        };
        let waived = if self.waivable {
            format!(
                " Where it is meant, waive it and say why:\n\n\
                 - in words and diagrams: `<!-- waive {0}: the reason -->`\n\
                 - in booklet.yaml, under `waive:`: `{{check: {0}, at: the.key, because: the reason}}`",
                self.code
            )
        } else {
            " It cannot be waived.".to_owned()
        };
        format!("# {}\n\n{}\n\n{stops}{waived}\n", self.code, self.page().text.trim_end())
    }
}

/// The reference of all checks, as Markdown.
pub fn reference() -> String {
    let mut text =
        String::from("# The checks\n\nMade by `notchbook explain --all` from the pages of the checks themselves.\n");
    for group in Group::ALL {
        text.push_str(&format!("\n## {}\n", group.name()));
        for check in CHECKS.iter().filter(|check| check.group == *group) {
            let page = deeper(&check.explanation());
            text.push_str(&format!("\n{}\n", page.trim_end()));
        }
    }
    text
}

/// A page two levels down: its headings follow suit, `#` in its examples stays.
fn deeper(page: &str) -> String {
    let mut fence: Option<&str> = None;
    let mut lines = Vec::new();
    for line in page.lines() {
        let ticks = &line[..line.len() - line.trim_start_matches('`').len()];
        let heading = fence.is_none() && line.trim_start_matches('#').starts_with(' ') && line.starts_with('#');
        match fence {
            None if ticks.len() >= 3 => fence = Some(ticks),
            Some(open) if line == open => fence = None,
            _ => {}
        }
        lines.push(if heading { format!("##{line}") } else { line.to_owned() });
    }
    lines.join("\n")
}

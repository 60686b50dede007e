//! A temperature, or how long to press, is one that no iron and no wash has.
//!
//! ## Why it matters
//! An iron at 1500 °C is a slip that everybody sees; a wash at 400 °F, or ten minutes under the iron, is done by
//! somebody who trusts the booklet.
//!
//! ## Wrong
//! ```yaml
//! care: Wash at {150 °C} and dry flat.
//! ```
//!
//! ## Right
//! ```yaml
//! care: Wash at {40 °C} and dry flat.
//! ```
//!
//! ## Limits
//! A sentence that speaks of washing may say up to 95 °C, one of an iron, of pressing or fusing from 80 to 230 °C and up to
//! 60 s, unless it speaks of cooling or waiting; anything else from 0 to 250 °C. The care symbols of ISO 3758 end at 95 °C
//! and 200 °C (from memory), the rest is common practice, no source. Looks at figures in braces, and at measurements whose
//! name speaks of one of these. English words alone.

use super::house_words_english::is_english;
use super::judge::{Judge, Subject};
use super::said::{Sentence, each_prose, sentences};
use super::words::length_of;
use crate::diag::{Check, Finding, Findings, Group};
use crate::measure::{Dimension, Exact};
use crate::model::Expression;
use crate::resolve::{Edition, Worked};

/// The check.
pub(super) static CHECK: Judge =
    Judge::booklet(&Check::error("heat-unusual", Group::Facts, include_str!("heat_unusual.rs")).waivable(), run);

/// Looks at the figures of all sentences, and at the measurements.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    if !is_english(&subject.draft.facts.language.text) {
        return;
    }
    for edition in subject.editions {
        each_prose(subject.draft, &mut |blocks| {
            for sentence in sentences(blocks, Some(edition.size())) {
                findings.extend(in_sentence(edition, &sentence));
            }
        });
        for measurement in &subject.draft.facts.measurements {
            let Some(formula) = measurement.value.get(edition.size()) else { continue };
            let words = measurement.name.text.replace('_', " ");
            findings.extend(fault(edition, formula, edition.values.get(&measurement.name.text), &words));
        }
    }
}

fn in_sentence(edition: &Edition<'_>, sentence: &Sentence<'_>) -> Vec<Finding> {
    let figure = |(_, formula): &(usize, &Expression)| {
        // What stands under a name is looked at where it is stated.
        formula.formula.as_measure()?;
        fault(edition, formula, edition.values.quiet(formula), &sentence.text)
    };
    sentence.figures.iter().filter_map(figure).collect()
}

fn fault(edition: &Edition<'_>, formula: &Expression, worked: Option<Worked>, words: &str) -> Option<Finding> {
    let worked = worked?;
    let words = words.to_lowercase();
    let speaks = |of: &[&str]| of.iter().any(|stem| has_word(&words, stem));
    let (irons, washes) = (speaks(IRON), speaks(WASH));
    let (least, most, of) = match worked.quantity.dimension {
        Dimension::Temperature if irons && !washes => (80, 230, "an iron"),
        Dimension::Temperature if washes && !irons => (0, 95, "a wash"),
        Dimension::Temperature => (0, 250, "cloth"),
        Dimension::Time if irons && !washes && !speaks(WAIT) => (0, 60, "one place under an iron"),
        _ => return None,
    };
    let (least, most) = (Exact::from_integer(least), Exact::from_integer(most));
    if (least..=most).contains(&worked.quantity.value) {
        return None;
    }
    let hint = match of {
        "a wash" => "write the temperature that the cloth bears, such as `{40 °C}`",
        "an iron" => "write the temperature that the cloth bears, such as `{150 °C}`",
        "cloth" => "see whether the unit and the figure are right, such as `{40 °C}`",
        _ => "see whether the unit is right, such as `{10 s}`",
    };
    let told = format!("{} is out of the question for {of}", length_of(edition, worked));
    Some(CHECK.at(formula.span(), told).hint(hint).in_size(edition.size(), ""))
}

/// Whether a word of the text begins so.
fn has_word(text: &str, stem: &str) -> bool {
    text.split(|letter: char| !letter.is_alphanumeric()).any(|word| word.starts_with(stem))
}

const IRON: &[&str] = &["iron", "press", "fuse", "fusing"];
const WASH: &[&str] = &["wash", "launder", "rinse", "soak"];
const WAIT: &[&str] = &["cool", "wait", "rest", "dry", "leave", "heat", "warm", "let", "soak", "about"];

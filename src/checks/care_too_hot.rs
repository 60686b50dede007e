//! The care tells to wash the thing in a way that one of its materials does not stand.
//!
//! ## Why it matters
//! The maker washes as the booklet says. One wash too hot, and the lining has shrunk, the wool has felted, or the filling
//! is a lump.
//!
//! ## Wrong
//! ```yaml
//! care: Wash at {60 °C} and dry flat.
//! fabrics:
//!   outer: {name: Wool, widths: [110 cm], amount: [20 cm, 25 cm]}
//! ```
//!
//! ## Right
//! ```yaml
//! care: Wash at {30 °C} and dry flat.
//! fabrics:
//!   outer: {name: Wool, widths: [110 cm], amount: [20 cm, 25 cm]}
//! ```
//!
//! ## Limits
//! Holds the temperature of a wash, and words such as boil and tumble dry, against what the notes of fabrics and notions say
//! of washing, and against the hottest wash that their materials commonly stand (common practice, no source; the table is
//! in `templates/needs-en.json`). A blend goes by its most delicate fibre. English booklets alone.

use super::house_words_english::is_english;
use super::judge::{Judge, Subject};
use super::needed::says;
use super::said::{Sentence, sentences};
use super::words::length_of;
use crate::diag::{Check, Finding, Findings, Group, Home};
use crate::measure::{Dimension, Exact, Quantity};
use crate::model::{Block, Name, Text, is_for};
use crate::resolve::{Edition, Worked};
use crate::source::Span;
use crate::syntax::Harm;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("care-too-hot", Group::Facts, include_str!("care_too_hot.rs")).waivable_in(Home::Facts),
    run,
);

/// A thing that is washed with the rest.
struct Washed<'a> {
    id: &'a Name,
    name: &'a Text,
    note: &'a [Block],
}

/// Holds every sentence of the care against every material of a size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let facts = &subject.draft.facts;
    if !is_english(&facts.language.text) {
        return;
    }
    let harm = &subject.needs.harm;
    for edition in subject.editions {
        let here = |sizes: &Option<Vec<usize>>| is_for(sizes.as_ref(), edition.size());
        let fabrics = facts.fabrics.iter().filter(|one| here(&one.sizes));
        let fabrics = fabrics.map(|one| Washed { id: &one.id, name: &one.name, note: &one.note });
        let notions = facts.notions.iter().filter(|one| here(&one.sizes));
        let notions = notions.map(|one| Washed { id: &one.id, name: &one.name, note: &one.note });
        let washed: Vec<Washed<'_>> = fabrics.chain(notions).collect();
        for sentence in sentences(&facts.care, Some(edition.size())) {
            if says(&sentence.text, &harm.denials) {
                continue;
            }
            findings.extend(washed.iter().filter_map(|one| fault(edition, &sentence, one, harm)));
        }
    }
}

fn fault(edition: &Edition<'_>, care: &Sentence<'_>, washed: &Washed<'_>, harm: &Harm) -> Option<Finding> {
    let note = sentences(washed.note, Some(edition.size()));
    let name = &washed.name.text;
    let figure = care.figures.first().map(|(_, formula)| formula.span());
    let words = care.place().or(figure);
    let finding = |place: Option<Span>, what: String| {
        let place = place?;
        Some(
            CHECK
                .at(place, what)
                .hint("write the care that all materials stand, or choose another material")
                .note(washed.id.span, "this material")
                .in_size(edition.size(), ""),
        )
    };
    let washes = says(&care.text, &harm.wash);
    let forbids = note.iter().any(|sentence| says(&sentence.text, &harm.never_wash));
    if washes && forbids {
        return finding(words, format!("the care washes what “{name}” says is not to be washed"));
    }
    let material = harm.materials.iter().find(|material| says(name, &material.names));
    let dry = says(&care.text, &harm.tumble);
    let no_dry = note.iter().any(|sentence| says(&sentence.text, &harm.never_tumble));
    if dry && (no_dry || material.is_some_and(|material| !material.tumble)) {
        return finding(words, format!("the care dries by machine, which “{name}” does not stand"));
    }
    let hottest = heat(edition, care).or(says(&care.text, &harm.boil).then_some(Exact::from_integer(95)))?;
    let stated =
        note.iter().filter(|sentence| says(&sentence.text, &harm.wash)).filter_map(|one| heat(edition, one)).min();
    let most = stated.or(material.map(|material| Exact::from_integer(material.wash)))?;
    if !washes || hottest <= most {
        return None;
    }
    let told = |value| {
        length_of(edition, Worked { quantity: Quantity { value, dimension: Dimension::Temperature }, stated: None })
    };
    finding(
        figure.or(words),
        format!("the care washes at {}, and “{name}” stands {} at most", told(hottest), told(most)),
    )
}

/// The highest temperature that a sentence states, in °C.
fn heat(edition: &Edition<'_>, sentence: &Sentence<'_>) -> Option<Exact> {
    let worked = sentence.figures.iter().filter_map(|(_, formula)| edition.values.quiet(formula));
    let heats = worked.filter(|worked| worked.quantity.dimension == Dimension::Temperature);
    heats.map(|worked| worked.quantity.value).max()
}

//! The steps: which there are, in what order, at what allowance, and the figures in their words.

use super::change::Matter;
use super::differ::{Differ, paired};
use super::lists::{Pair, prose, prose_but};
use crate::book::{Amount, Book, Part, SeamFact, Step, Value, amounts_in};

/// Holds the answers of two books against each other: of words alone nothing is told.
pub(super) fn answers(differ: &mut Differ<'_>) {
    differ.section = 5;
    let (old, new) = (differ.old.book, differ.new.book);
    for pair in paired(&old.help, &new.help, |question| question.id.clone()) {
        if let (Some(before), Some(after)) = pair {
            let what = differ.word("errata_answer", &[("title", &differ.new.inlines(&after.title))]);
            prose(differ, &what, amounts_in(&before.answer), amounts_in(&after.answer), Matter::Read);
        }
    }
}

/// Holds all steps of two books against each other.
pub(super) fn steps(differ: &mut Differ<'_>) {
    differ.section = 4;
    let (old, new) = (differ.old.book, differ.new.book);
    for (before, after) in paired(&old.parts, &new.parts, |part: &Part| part.id.clone()) {
        if let (Some(before), Some(after)) = (before, after) {
            let what = differ.new.inlines(&after.title);
            prose(differ, &what, amounts_in(&before.intro), amounts_in(&after.intro), Matter::Sew);
        }
    }
    let (before, after) = (all(old), all(new));
    for (before, after) in paired(&before, &after, |step| step.id.clone()) {
        match (before, after) {
            (Some(before), Some(after)) => step(differ, before, after),
            (None, Some(after)) => {
                let what = named(differ, after);
                differ.tell(&what, "errata_added", &[], Matter::Sew);
            }
            (Some(before), None) => {
                let places = [("n", before.number.to_string()), ("title", differ.old.inlines(&before.title))];
                let places: Vec<(&str, &str)> = places.iter().map(|(name, words)| (*name, words.as_str())).collect();
                let what = differ.word("errata_step", &places);
                differ.tell(&what, "errata_gone", &[], Matter::Sew);
            }
            (None, None) => {}
        }
    }
    order(differ, &before, &after);
}

fn all(book: &Book) -> Vec<&Step> {
    book.parts.iter().flat_map(|part| &part.steps).collect()
}

fn named(differ: &Differ<'_>, step: &Step) -> String {
    let title = differ.new.inlines(&step.title);
    differ.word("errata_step", &[("n", &step.number.to_string()), ("title", &title)])
}

/// Whether steps that both editions have come in another order, or bear other numbers.
fn order(differ: &mut Differ<'_>, old: &[&Step], new: &[&Step]) {
    let common = |list: &[&Step], other: &[&Step]| -> Vec<String> {
        let known: std::collections::BTreeSet<&str> = other.iter().map(|step| step.id.as_str()).collect();
        list.iter().map(|step| step.id.clone()).filter(|id| known.contains(id.as_str())).collect()
    };
    let (before, after) = (common(old, new), common(new, old));
    let moved = before.iter().zip(&after).find(|(one, other)| one != other).map(|(_, id)| id);
    if let Some(step) = moved.and_then(|id| new.iter().find(|step| step.id == *id)) {
        let what = named(differ, step);
        differ.tell(&what, "errata_order", &[], Matter::Sew);
        return;
    }
    let renumbered = new.iter().find(|step| old.iter().any(|other| other.id == step.id && other.number != step.number));
    if let Some(step) = renumbered {
        let what = named(differ, step);
        differ.tell(&what, "errata_numbers", &[("n", &step.number.to_string())], Matter::Read);
    }
}

fn step(differ: &mut Differ<'_>, before: &Step, after: &Step) {
    let what = named(differ, after);
    let same = |(one, other): (&SeamFact, &SeamFact)| one.verb == other.verb && one.what == other.what;
    let aligned = before.seam.len() == after.seam.len() && before.seam.iter().zip(&after.seam).all(same);
    let mut told: Vec<Pair<'_>> = Vec::new();
    if aligned {
        for (before, after) in before.seam.iter().zip(&after.seam) {
            fact(differ, &what, before, after);
            let both = FIGURES.iter().filter_map(|(_, figure)| one(figure(before)).zip(one(figure(after))));
            told.extend(both);
        }
    } else {
        differ.tell(&what, "errata_otherwise", &[], Matter::Sew);
    }
    let figures = (amounts_in(&before.body), amounts_in(&after.body));
    let matter = if after.seam.iter().any(|fact| fact.verb == "cut") { Matter::Cut } else { Matter::Sew };
    prose_but(differ, &what, figures, matter, told);
}

/// A figure of a fact of work: the key of its word, and where it stands.
type Figure = (&'static str, fn(&SeamFact) -> &Option<Value>);

const FIGURES: &[Figure] = &[
    ("errata_allowance", |fact| &fact.allowance),
    ("errata_stitch", |fact| &fact.stitch),
    ("errata_leave", |fact| &fact.leave),
    ("errata_ease", |fact| &fact.ease),
    ("errata_gather", |fact| &fact.gather),
    ("errata_apart", |fact| &fact.gap),
    ("errata_up", |fact| &fact.up),
    ("errata_lap", |fact| &fact.lap),
    ("errata_count", |fact| &fact.count),
];

fn fact(differ: &mut Differ<'_>, step: &str, before: &SeamFact, after: &SeamFact) {
    let done: Vec<String> = after.what.iter().flatten().map(|done| done.name.clone()).collect();
    let work = format!("{} {}", differ.word(&format!("verb_{}", after.verb), &[]), differ.new.listed(&done));
    let work = differ.word("errata_of", &[("name", step), ("figure", work.trim())]);
    for (key, figure) in FIGURES {
        let what = differ.of(&work, key);
        differ.figure(&what, one(figure(before)), one(figure(after)), Matter::Sew);
    }
    // How it is done, but for words that say the same in another way.
    let how = |fact: &SeamFact| {
        let places: Vec<_> = fact.places.iter().map(|place| (&place.role, &place.point, &place.from)).collect();
        let words = (&fact.caught, &fact.together, &fact.around, &fact.finish, &fact.leave_for);
        format!("{:?}", (words, fact.ends_in, fact.by_hand, places))
    };
    if how(before) != how(after) {
        differ.tell(&work, "errata_otherwise", &[], Matter::Sew);
        return;
    }
    for (before, after) in before.places.iter().zip(&after.places) {
        let what = differ.of(&work, "errata_place");
        differ.figure(&what, one(&before.far), one(&after.far), Matter::Sew);
    }
}

/// The figure of a value in the book of one size.
fn one(value: &Option<Value>) -> Option<&Amount> {
    match value.as_ref()? {
        Value::Same(amount) => Some(amount),
        Value::Each(each) => each.first().map(|one| &one.amount),
    }
}

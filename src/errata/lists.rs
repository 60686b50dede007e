//! The tables before the steps: the body, the finished thing, what is bought, what is cut.

use super::change::Matter;
use super::differ::{Differ, paired};
use crate::book::{Amount, CutList, CutRow, FabricNeed, MeasureRow, NotionAmount, NotionNeed, WidthNeed, amounts_in};

/// Holds all tables of two books against each other.
pub(super) fn lists(differ: &mut Differ<'_>) {
    let (old, new) = (differ.old.book, differ.new.book);
    front(differ);
    differ.section = 1;
    measures(differ, &old.body, &new.body);
    let rows = |book: &crate::book::Book| book.finished.iter().map(|row| row.measure.clone()).collect::<Vec<_>>();
    measures(differ, &rows(old), &rows(new));
    differ.section = 2;
    fabrics(differ, &old.fabrics, &new.fabrics);
    notions(differ, &old.notions, &new.notions);
    tools(differ);
    differ.section = 3;
    cuts(differ, &old.cuts, &new.cuts);
    for (before, after) in paired(&old.offers, &new.offers, |offer| offer.id.clone()) {
        // An offer that comes or goes comes or goes with its step.
        let (Some(before), Some(after)) = (before, after) else { continue };
        fabrics(differ, &before.fabrics, &after.fabrics);
        notions(differ, &before.notions, &after.notions);
        cuts(differ, &before.cuts, &after.cuts);
    }
}

/// The figures of what is read first, the cautions and the terms.
fn front(differ: &mut Differ<'_>) {
    differ.section = 0;
    let (old, new) = (differ.old.book, differ.new.book);
    let what = differ.word("read_first", &[]);
    prose(differ, &what, amounts_in(&old.read_first), amounts_in(&new.read_first), Matter::Read);
    let said = |plain: crate::book::Plain<'_>| -> Vec<String> {
        plain.book.cautions.iter().map(|caution| plain.blocks(&caution.content).join(" ")).collect()
    };
    let (before, after) = (said(differ.old), said(differ.new));
    if after.len() > before.len() {
        let what = differ.word("cautions", &[]);
        for caution in after.iter().filter(|caution| !before.contains(caution)) {
            differ.words(&what, None, Some(caution.trim_end_matches('.').to_owned()), Matter::Read);
        }
    }
    if differ.old.blocks(&old.terms) != differ.new.blocks(&new.terms) {
        let what = differ.word("terms", &[]);
        differ.tell(&what, "errata_otherwise", &[], Matter::Read);
    }
}

/// The figures of a text, which stand in an order.
pub(super) fn prose(differ: &mut Differ<'_>, what: &str, old: Vec<&Amount>, new: Vec<&Amount>, matter: Matter) {
    prose_but(differ, what, (old, new), matter, Vec::new());
}

/// A figure before, and now.
pub(super) type Pair<'a> = (&'a Amount, &'a Amount);

/// The same without what was told already.
pub(super) fn prose_but<'a>(
    differ: &mut Differ<'_>,
    what: &str,
    (old, new): (Vec<&'a Amount>, Vec<&'a Amount>),
    matter: Matter,
    mut told: Vec<Pair<'a>>,
) {
    if old.len() != new.len() {
        return differ.tell(what, "errata_otherwise", &[], matter);
    }
    for (before, after) in old.into_iter().zip(new) {
        // A figure that is said twice is told once.
        if before != after && !told.contains(&(before, after)) {
            told.push((before, after));
            differ.figure(what, Some(before), Some(after), matter);
        }
    }
}

fn only<T>(list: &[Option<T>]) -> Option<&T> {
    list.first().and_then(Option::as_ref)
}

fn measures(differ: &mut Differ<'_>, old: &[MeasureRow], new: &[MeasureRow]) {
    for (before, after) in paired(old, new, |row| row.name.clone()) {
        let Some(name) = after.or(before).map(|row| row.name.as_str()) else { continue };
        let (before, after) = (before.and_then(|row| only(&row.values)), after.and_then(|row| only(&row.values)));
        differ.figure(name, before, after, Matter::Read);
    }
}

fn fabrics(differ: &mut Differ<'_>, old: &[FabricNeed], new: &[FabricNeed]) {
    for (before, after) in paired(old, new, |fabric| fabric.id.clone()) {
        let Some(name) = after.or(before).map(|fabric| fabric.name.clone()) else { continue };
        match (before, after) {
            (Some(before), Some(after)) => {
                let wide =
                    |width: &WidthNeed| width.width.as_ref().map_or_else(String::new, |one| differ.new.value(one));
                let pairs = paired(&before.widths, &after.widths, wide);
                for (before, after) in pairs {
                    let width = after.or(before).and_then(|one| one.width.as_ref()).map(|one| differ.new.value(one));
                    let what = match width {
                        Some(width) => differ.word("errata_fabric", &[("name", &name), ("width", &width)]),
                        None => name.clone(),
                    };
                    let amount = |need: Option<&WidthNeed>| need.and_then(|need| only(&need.amounts).cloned());
                    let (before, after) = (amount(before), amount(after));
                    differ.figure(&what, before.as_ref(), after.as_ref(), Matter::Buy);
                }
            }
            (None, _) => differ.tell(&name, "errata_added", &[], Matter::Buy),
            (_, None) => differ.tell(&name, "errata_gone", &[], Matter::Buy),
        }
    }
}

fn notions(differ: &mut Differ<'_>, old: &[NotionNeed], new: &[NotionNeed]) {
    for (before, after) in paired(old, new, |notion| notion.id.clone()) {
        let Some(name) = after.or(before).map(|notion| notion.name.clone()) else { continue };
        let need = |notion: Option<&NotionNeed>| notion.and_then(|notion| only(&notion.amounts).cloned());
        match (need(before), need(after)) {
            (Some(before), Some(after)) => notion(differ, &name, &before, &after),
            (None, Some(_)) => differ.tell(&name, "errata_added", &[], Matter::Buy),
            (Some(_), None) => differ.tell(&name, "errata_gone", &[], Matter::Buy),
            (None, None) => {}
        }
    }
}

fn notion(differ: &mut Differ<'_>, name: &str, before: &NotionAmount, after: &NotionAmount) {
    let figures: [(&str, &Option<Amount>, &Option<Amount>); 4] = [
        ("errata_length", &before.length, &after.length),
        ("errata_amount", &before.amount, &after.amount),
        ("errata_width", &before.width, &after.width),
        ("errata_size", &before.size, &after.size),
    ];
    for (figure, before, after) in figures {
        let what = differ.of(name, figure);
        differ.figure(&what, before.as_ref(), after.as_ref(), Matter::Buy);
    }
    let what = differ.of(name, "errata_count");
    let count = |count: Option<u32>| count.map(|count| count.to_string());
    differ.words(&what, count(before.count), count(after.count), Matter::Buy);
}

fn tools(differ: &mut Differ<'_>) {
    let (old, new) = (&differ.old.book.tools, &differ.new.book.tools);
    for (before, after) in paired(old, new, |tool| tool.name.clone()) {
        match (before, after) {
            (None, Some(tool)) => differ.tell(&tool.name, "errata_added", &[], Matter::Read),
            (Some(tool), None) => differ.tell(&tool.name, "errata_gone", &[], Matter::Read),
            _ => {}
        }
    }
}

fn cuts(differ: &mut Differ<'_>, old: &[CutList], new: &[CutList]) {
    for (before, after) in paired(old, new, |list| list.id.clone()) {
        let Some(cloth) = after.or(before).map(|list| list.name.clone()) else { continue };
        let rows = |list: Option<&CutList>| list.map_or_else(Vec::new, |list| list.rows.clone());
        let (before, after) = (rows(before), rows(after));
        for (before, after) in paired(&before, &after, |row| row.id.clone()) {
            let Some(name) = after.or(before).map(|row| row.name.as_str()) else { continue };
            let what = differ.word("errata_piece_of", &[("name", name), ("cloth", &cloth)]);
            match (before, after) {
                (Some(before), Some(after)) => row(differ, &what, before, after),
                (None, _) => differ.tell(&what, "errata_added", &[], Matter::Cut),
                (_, None) => differ.tell(&what, "errata_gone", &[], Matter::Read),
            }
        }
    }
}

fn row(differ: &mut Differ<'_>, what: &str, before: &CutRow, after: &CutRow) {
    if before.count != after.count {
        let what = differ.of(what, "errata_count");
        differ.words(&what, Some(before.count.to_string()), Some(after.count.to_string()), Matter::Cut);
    }
    let how = |row: &CutRow| (row.fold, row.opened, row.mirrored, row.by_ruler, row.single_layer);
    if how(before) != how(after) {
        differ.tell(what, "errata_otherwise", &[], Matter::Cut);
    }
    let (old, new) = (only(&before.dimensions), only(&after.dimensions));
    if old != new {
        let said = |plain: crate::book::Plain<'_>, pair: Option<&(Amount, Amount)>| {
            pair.map(|(width, height)| format!("{} × {}", plain.amount(width), plain.amount(height)))
        };
        let (old, new) = (said(differ.old, old), said(differ.new, new));
        if old != new {
            differ.resized.insert(after.id.clone());
        }
        differ.words(what, old, new, Matter::Cut);
    }
}

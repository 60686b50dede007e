//! The text for the shop: what a buyer gets, in which sizes, what she needs, and for whom it is.

use crate::book::{Amount, Block, FabricNeed, Leaf, NotionAmount, NotionNeed, Plain};

/// What lies in the folder, by its names on the page.
#[derive(Debug, Clone, Default)]
pub struct Included {
    /// The papers of the booklets, and which booklets there are.
    pub booklets: (Vec<String>, Vec<String>),
    /// The papers of the pattern sheets, and which sets there are.
    pub sheets: (Vec<String>, Vec<String>),
    /// Whether there is a page for a screen.
    pub page: bool,
}

/// Writes the text out of the book of all sizes.
pub fn shop_text(plain: &Plain<'_>, included: &Included) -> Leaf {
    let book = plain.book;
    let mut leaf = Leaf::default();
    leaf.title(&book.title);
    leaf.words(book.summary.clone().unwrap_or_default());
    let by = [("designer", book.designer.as_str()), ("edition", &book.edition)];
    leaf.words(plain.word("shop_by", &by));
    leaf.heading(plain.word("shop_included", &[]));
    for (key, (papers, sets)) in [("shop_booklets", &included.booklets), ("shop_sheets", &included.sheets)] {
        if !sets.is_empty() {
            leaf.item(plain.word(key, &[("papers", &plain.listed(papers)), ("sets", &sets.join(", "))]));
        }
    }
    if included.page {
        leaf.item(plain.word("shop_page", &[]));
    }
    leaf.heading(plain.word("sizes_column", &[]));
    for size in &book.shown {
        leaf.item(plain.size(*size));
    }
    measurements(plain, &mut leaf);
    needs(plain, &mut leaf);
    if let Some(skill) = &book.skill {
        leaf.heading(plain.word("skill", &[]));
        leaf.words(skill);
    }
    if !book.time.is_empty() {
        leaf.heading(plain.word("time", &[]));
        plain.blocks(&book.time).into_iter().for_each(|line| leaf.words(line));
    }
    leaf.heading(plain.word("shop_language", &[]));
    let key = format!("language_{}", book.language.split('-').next().unwrap_or_default());
    let language = plain.word(&key, &[]);
    leaf.words(if language == key { book.language.clone() } else { language });
    if book.child_caution {
        leaf.heading(plain.word("cautions", &[]));
        leaf.words(plain.word("child_caution", &[]));
    }
    leaf
}

fn measurements(plain: &Plain<'_>, leaf: &mut Leaf) {
    let book = plain.book;
    let finished = book.finished.iter().map(|row| &row.measure);
    for (key, rows) in [("body", book.body.iter().collect::<Vec<_>>()), ("finished", finished.collect())] {
        if !rows.is_empty() {
            leaf.heading(plain.word(key, &[]));
        }
        for row in rows {
            let figures = by_size(plain, &row.values, |amount| plain.amount(amount));
            leaf.item(plain.word("shop_measured", &[("name", &row.name), ("figures", &figures)]));
        }
    }
}

fn needs(plain: &Plain<'_>, leaf: &mut Leaf) {
    let book = plain.book;
    leaf.heading(plain.word("needs", &[]));
    book.fabrics.iter().for_each(|one| fabric(plain, one, leaf));
    book.notions.iter().for_each(|one| notion(plain, one, leaf));
    book.tools.iter().for_each(|tool| leaf.item(&tool.name));
}

fn fabric(plain: &Plain<'_>, fabric: &FabricNeed, leaf: &mut Leaf) {
    let mut bought = false;
    for need in &fabric.widths {
        // Cloth that the maker makes herself is not bought.
        if need.amounts.iter().all(Option::is_none) {
            continue;
        }
        bought = true;
        let figures = by_size(plain, &need.amounts, |amount: &Amount| plain.amount(amount));
        leaf.item(match &need.width {
            Some(width) => {
                let places = [("name", fabric.name.as_str()), ("width", &plain.value(width)), ("figures", &figures)];
                plain.word("shop_wide", &places)
            }
            None => plain.word("shop_measured", &[("name", &fabric.name), ("figures", &figures)]),
        });
    }
    if bought {
        sourcing(plain, &fabric.search, &fabric.instead, leaf);
    }
}

/// What a shop knows something by, and what serves where it cannot be had: below its line.
fn sourcing(plain: &Plain<'_>, search: &[String], instead: &[Block], leaf: &mut Leaf) {
    if !search.is_empty() {
        leaf.below(plain.word("shop_search", &[("list", &search.join("; "))]));
    }
    let instead = plain.blocks(instead);
    let item = |line: &String| line.strip_prefix("- ").unwrap_or(line).to_owned();
    for line in instead.iter().map(item) {
        leaf.below(plain.word("shop_instead", &[("words", &line)]));
    }
}

fn notion(plain: &Plain<'_>, notion: &NotionNeed, leaf: &mut Leaf) {
    let told = |need: &NotionAmount| {
        let count = need.count.map(|count| count.to_string());
        let length = need.length.as_ref().map(|one| plain.word("shop_length", &[("length", &plain.amount(one))]));
        let width = need.width.as_ref().map(|one| plain.word("shop_across", &[("width", &plain.amount(one))]));
        let rest = [&need.amount, &need.size].into_iter().flatten().map(|one| plain.amount(one));
        count.into_iter().chain(length).chain(width).chain(rest).collect::<Vec<_>>().join(", ")
    };
    let figures = by_size(plain, &notion.amounts, told);
    let name = notion.name.as_str();
    leaf.item(match figures.is_empty() {
        true => name.to_owned(),
        false => plain.word("shop_measured", &[("name", name), ("figures", &figures)]),
    });
    sourcing(plain, &notion.search, &notion.instead, leaf);
}

/// What each size has, once where all have the same.
fn by_size<T>(plain: &Plain<'_>, each: &[Option<T>], told: impl Fn(&T) -> String) -> String {
    let told: Vec<Option<String>> = each.iter().map(|one| one.as_ref().map(&told)).collect();
    if let Some(Some(first)) = told.first()
        && told.iter().all(|one| one.as_ref() == Some(first))
    {
        return first.clone();
    }
    let sized = plain.book.shown.iter().zip(told);
    let sized = sized.filter_map(|(size, told)| told.map(|told| format!("{} {told}", plain.size(*size))));
    sized.map(|told| told.trim_end().to_owned()).collect::<Vec<_>>().join("; ")
}

//! The house's own files held to the tables that name them.

use std::collections::BTreeSet;

use notchbook::figure::{CLASSES, SYMBOLS};
use notchbook::model::Verb;
use notchbook::source::House;

use crate::rust::files;
use crate::{root, settle};

/// The words behind `mark` in a text, up to the first letter that no name has.
fn named<'a>(text: &'a str, mark: &'a str) -> BTreeSet<&'a str> {
    let end = |rest: &str| {
        rest.find(|letter: char| !(letter.is_ascii_alphanumeric() || letter == '-'))
            .unwrap_or(rest.len())
    };
    text.match_indices(mark)
        .map(|(at, _)| &text[at + mark.len()..])
        .map(|rest| &rest[..end(rest)])
        .collect()
}

/// A style sheet or drawing without its comments.
fn without_comments(text: &str, open: &str, close: &str) -> String {
    let mut out = String::new();
    let mut rest = text;
    while let Some(at) = rest.find(open) {
        out.push_str(&rest[..at]);
        rest = rest[at..]
            .find(close)
            .map_or("", |end| &rest[at + end + close.len()..]);
    }
    out + rest
}

#[test]
fn every_class_has_a_style_and_every_symbol_a_drawing() {
    let house = House::plain();
    let css = without_comments(house.template("figures.css"), "/*", "*/");
    // Numbers such as `.3` have a dot too; a class begins with a letter.
    let styled: BTreeSet<&str> = named(&css, ".")
        .into_iter()
        .filter(|name| name.starts_with(|letter: char| letter.is_ascii_lowercase()))
        .collect();
    let symbols = without_comments(house.template("symbols.svg"), "<!--", "-->");
    let drawn = named(&symbols, "<symbol id=\"");
    let classes: BTreeSet<&str> = CLASSES.iter().map(|class| class.name).collect();
    let known: BTreeSet<&str> = SYMBOLS.iter().map(|(name, _)| *name).collect();
    let mut wrong = Vec::new();
    for name in classes.difference(&styled) {
        wrong.push(format!(
            "templates/figures.css: no style for the class `{name}`: add `.{name} {{ … }}`"
        ));
    }
    for name in styled
        .difference(&classes)
        .filter(|name| !name.starts_with("nb-"))
    {
        wrong.push(format!("src/figure/classes.rs: the style sheet has a class `{name}` that the table does not: add it to CLASSES, or call it `nb-{name}`"));
    }
    for name in known.difference(&drawn) {
        wrong.push(format!("templates/symbols.svg: no drawing of the symbol `{name}`: add `<symbol id=\"{name}\" viewBox=\"0 0 10 10\">`"));
    }
    for name in drawn.difference(&known) {
        wrong.push(format!("src/figure/classes.rs: the symbol `{name}` is drawn and not in the table: add it to SYMBOLS with its meaning"));
    }
    let tools = named(&symbols, "id=\"nb-");
    let used = named(&css, "url(#nb-");
    wrong.extend(used.difference(&tools).map(|name| {
        format!(
            "templates/symbols.svg: the style sheet uses `nb-{name}`, which is not drawn: add it"
        )
    }));
    settle(wrong);
}

/// Files of the folder that hold no verb.
const NO_VERBS: &[&str] = &["mod", "entry"];

#[test]
fn every_verb_has_a_file_of_its_own_and_every_file_a_verb() {
    let own: BTreeSet<String> = files(root(), "src/construct/verbs")
        .iter()
        .filter_map(|path| Some(path.strip_suffix(".rs")?.rsplit_once('/')?.1.to_owned()))
        .filter(|name| !NO_VERBS.contains(&name.as_str()))
        .collect();
    let words: BTreeSet<String> = Verb::ALL
        .iter()
        .map(|(word, _)| (*word).to_owned())
        .collect();
    let mut wrong = Vec::new();
    wrong.extend(words.difference(&own).map(|word| {
        format!("src/construct/verbs/{word}.rs: it is not there: write the verb's page and play")
    }));
    wrong.extend(own.difference(&words).map(|name| {
        format!("src/construct/verbs/{name}.rs: no line of src/model/verb.rs names it: add one, or take the file out")
    }));
    settle(wrong);
}

#[test]
fn templates_and_fonts_on_disk_are_those_built_in() {
    let house = House::plain();
    let mut wrong = Vec::new();
    for (folder, assets, ending) in [
        ("templates", &house.templates, ""),
        ("fonts", &house.fonts, ".ttf"),
    ] {
        let built: BTreeSet<String> = assets
            .iter()
            .map(|asset| format!("{folder}/{}", asset.name))
            .collect();
        let own: BTreeSet<String> = files(root(), folder)
            .into_iter()
            .filter(|path| path.ends_with(ending) && path.matches('/').count() == 1)
            .collect();
        wrong.extend(own.difference(&built).map(|path| {
            format!("{path}: it is not built in: name it in src/source/house.rs, or take it out")
        }));
        wrong.extend(built.difference(&own).map(|path| {
            format!("{path}: src/source/house.rs names it, and it is not there: put it back")
        }));
    }
    settle(wrong);
}

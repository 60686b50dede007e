//! The pages of classes and symbols, from their tables.

use super::chapter::Chapter;
use super::page::ManualPage;
use crate::figure::{CLASSES, Class, SYMBOLS};

/// The pages of all classes and symbols.
pub(super) fn pages() -> Vec<ManualPage> {
    CLASSES.iter().map(class).chain(SYMBOLS.iter().map(symbol)).collect()
}

fn page(name: &str, sort: &str, section: &str, meaning: &str, example: &str) -> ManualPage {
    let key = match meaning {
        "" => String::from("It has no line in the key to the diagrams."),
        meaning => format!("The key to the diagrams says: {meaning}."),
    };
    ManualPage {
        name: name.to_owned(),
        sort: sort.to_owned(),
        chapter: Chapter::Diagrams,
        section: section.to_owned(),
        summary: if meaning.is_empty() { "words in a diagram".to_owned() } else { meaning.to_owned() },
        text: format!("{key}\n\n```svg\n{example}\n```\n"),
    }
}

fn class(class: &Class) -> ManualPage {
    let example = match class.sample {
        "" => format!(r#"<text class="{}" x="5" y="20">Top</text>"#, class.name),
        sample => sample.replace("CLASS", class.name),
    };
    page(class.name, "a class of diagrams", "Classes", class.meaning, &example)
}

fn symbol(symbol: &(&str, &str)) -> ManualPage {
    let (name, meaning) = symbol;
    let example = format!(r##"<use href="#{name}" x="5" y="5" width="10" height="10"/>"##);
    page(name, "a symbol of diagrams", "Symbols", meaning, &example)
}

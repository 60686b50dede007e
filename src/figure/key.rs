//! The key to the diagrams: made from the classes and symbols that a size's diagrams use.

use std::collections::BTreeMap;

use super::classes::{CLASSES, SYMBOLS};
use super::dress::Dresser;
use super::figures::Figures;

/// One entry of the key.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KeyEntry {
    /// The class or symbol.
    pub class: &'static str,
    /// What it means.
    pub name: &'static str,
    /// A sample, as a drawing.
    pub swatch: String,
}

/// The entries for one size, in the order of the house.
pub fn key(figures: &Figures, size: usize) -> Vec<KeyEntry> {
    let used: Vec<_> = figures.of_size(size).map(|(_, figure)| figure).collect();
    let classes = CLASSES
        .iter()
        .filter(|class| !class.meaning.is_empty() && used.iter().any(|figure| figure.classes.contains(&class.name)))
        .map(|class| (class.name, class.meaning));
    // The pin is a class and a symbol: one entry tells both.
    let symbols = SYMBOLS
        .iter()
        .filter(|(name, _)| used.iter().any(|figure| figure.symbols.contains(name)))
        .filter(|(name, _)| !used.iter().any(|figure| figure.classes.contains(name)))
        .copied();
    classes
        .chain(symbols)
        .map(|(class, name)| KeyEntry { class, name, swatch: figures.samples.get(class).cloned().unwrap_or_default() })
        .collect()
}

/// All that the key may name, classes before symbols, in the order of the house.
pub fn key_order() -> Vec<&'static str> {
    CLASSES.iter().map(|class| class.name).chain(SYMBOLS.iter().map(|(name, _)| *name)).collect()
}

/// Samples of every class and symbol in the booklet's style.
pub(super) fn samples(dresser: &Dresser) -> BTreeMap<&'static str, String> {
    let root = r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 12 8" width="12mm" height="8mm">"#;
    let drawn = |inside: &str| dresser.dress(root, inside);
    let symbols = SYMBOLS
        .iter()
        .map(|(name, _)| (*name, drawn(&format!(r##"<use href="#{name}" x="2" y="0" width="8" height="8"/>"##))));
    let classes = CLASSES
        .iter()
        .filter(|class| !class.sample.is_empty())
        .map(|class| (class.name, drawn(&class.sample.replace("CLASS", class.name))));
    symbols.chain(classes).collect()
}

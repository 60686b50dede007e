//! Size names: those that a booklet has, and lists of them wherever they are written.

use super::fields::{self, Fields};
use super::yaml::{Node, Value};
use crate::diag::{Finding, Findings, did_you_mean};
use crate::faults::{KEY_MISSING, SIZE_UNKNOWN, VALUE_UNREADABLE};
use crate::model::{Size, Wearer};
use crate::source::Span;

/// The keys of a size.
pub(super) const KEYS: &[&str] = &["name", "wearer"];

/// The sizes of `booklet.yaml`.
pub(super) fn read(node: &Node, findings: &mut Findings) -> Vec<Size> {
    let mut sizes = Vec::new();
    for (key, node) in fields::named(node, "sizes", findings) {
        let id = fields::size_name(key, findings);
        let (name, wearer_said) = match &node.value {
            Value::Map(_) => match Fields::open_needing(&["name"], node, "a size", KEYS, findings) {
                Some(record) => {
                    let name = record.need_text("name", "Small", findings);
                    (name, record.get("wearer").and_then(|node| Some((wearer(node, findings)?, node.span))))
                }
                None => (None, None),
            },
            _ => (fields::text(node, "a size's name", findings), None),
        };
        let (name, name_at) = name.map_or_else(|| (id.text.clone(), id.span), |name| (name.text, name.span));
        let (wearer, wearer_at) = wearer_said.map_or((Wearer::Adult, None), |(wearer, at)| (wearer, Some(at)));
        sizes.push(Size { id, name, name_at, wearer, wearer_at, view: None });
    }
    if sizes.is_empty() {
        findings.push(
            KEY_MISSING.at(node.span, "the booklet has no sizes").hint("name at least one: `sizes: {one: One size}`"),
        );
    }
    sizes
}

fn wearer(node: &Node, findings: &mut Findings) -> Option<Wearer> {
    let text = fields::text(node, "`wearer`", findings)?;
    match text.text.as_str() {
        "child" => Some(Wearer::Child),
        "adult" => Some(Wearer::Adult),
        other => {
            findings.push(
                VALUE_UNREADABLE
                    .at(text.span, format!("`{other}` is no kind of wearer"))
                    .hint("write `wearer: child` or `wearer: adult`"),
            );
            None
        }
    }
}

/// The place of a size in `sizes`; an unknown one is a finding.
pub(super) fn index(word: &str, span: Span, sizes: &[Size], findings: &mut Findings) -> Option<usize> {
    let found = sizes.iter().position(|size| size.id.text == word);
    if found.is_none() {
        findings.push(unknown(word, span, sizes));
    }
    found
}

/// The places in `sizes` of a size, or of all that a view has; an unknown name is a finding.
pub(super) fn named(word: &str, span: Span, sizes: &[Size], findings: &mut Findings) -> Option<Vec<usize>> {
    let own = |size: &Size| size.id.text == word;
    let of_view = |size: &Size| size.view.as_ref().is_some_and(|view| view.id.text == word);
    let places = |is: &dyn Fn(&Size) -> bool| -> Vec<usize> {
        sizes.iter().enumerate().filter(|(_, size)| is(size)).map(|(at, _)| at).collect()
    };
    let found = if sizes.iter().any(of_view) { places(&of_view) } else { places(&own) };
    if found.is_empty() {
        findings.push(unknown(word, span, sizes));
        return None;
    }
    Some(found)
}

/// The names that sizes and views have.
pub(super) fn names(sizes: &[Size]) -> Vec<&str> {
    let views = sizes.iter().filter_map(|size| size.view.as_ref()).map(|view| view.id.text.as_str());
    let mut names: Vec<&str> = Vec::new();
    for name in sizes.iter().map(|size| size.id.text.as_str()).chain(views) {
        if !names.contains(&name) {
            names.push(name);
        }
    }
    names
}

/// The finding for a size that the booklet does not have.
pub(super) fn unknown(word: &str, span: Span, sizes: &[Size]) -> Finding {
    let names = names(sizes);
    let both = if sizes.iter().any(|size| size.view.is_some()) { "sizes and views" } else { "sizes" };
    let otherwise = format!("its {both} are: {}", names.join(", "));
    let message = match both {
        "sizes" => format!("the booklet has no size `{word}`"),
        _ => format!("the booklet has no size and no view `{word}`"),
    };
    SIZE_UNKNOWN.at(span, message).hint(did_you_mean(word, names.iter().copied(), &otherwise))
}

/// The key `for:` of a record: a list of sizes and views; `None` when it is absent.
pub(super) fn only_for(record: &Fields<'_>, sizes: &[Size], findings: &mut Findings) -> Option<Vec<usize>> {
    let node = record.get("for")?;
    let mut found = Vec::new();
    for item in fields::list(node) {
        let Some(text) = fields::text(item, "a size", findings) else { continue };
        let mut at = 0;
        for word in text.text.split(',') {
            let start = at + (word.len() - word.trim_start().len());
            at += word.len() + 1;
            let word = word.trim();
            found.extend(named(word, text.at(start..start + word.len()), sizes, findings).unwrap_or_default());
        }
    }
    Some(found)
}

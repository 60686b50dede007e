//! The words of the house, with a booklet's own laid over them.

use std::ops::Range;

use serde_json::{Map, Value};

use crate::diag::{Findings, did_you_mean, listed};
use crate::faults::{DUPLICATE_KEY, FILE_UNREADABLE, KEY_MISSING, KEY_UNKNOWN, VALUE_UNREADABLE};
use crate::model::{HouseWords, Text};
use crate::source::{FileId, House, Sources, Span};

/// The file that holds them.
const FILE: &str = "labels-en.json";

/// The words that templates print.
#[derive(Debug, Clone, Default)]
pub struct Labels {
    /// By their names.
    pub words: Map<String, Value>,
    /// Those that the booklet brought, each at its place.
    pub own: Vec<Text>,
}

impl Labels {
    /// The words alone, for drawings.
    pub fn plain(&self) -> HouseWords {
        let words = self.words.iter().filter_map(|(name, words)| Some((name.clone(), words.as_str()?.to_owned())));
        HouseWords::of(words)
    }
}

/// Reads the words of the house; what is wrong with a booklet's own is a finding, and the house's word
/// stands in for one that is not there.
pub fn read_labels(house: &House, sources: &Sources, findings: &mut Findings) -> Labels {
    let words = match serde_json::from_str(House::plain().template(FILE)) {
        Ok(Value::Object(words)) => words,
        // The house's own file is held to its keys by a test.
        _ => Map::new(),
    };
    let mut labels = Labels { words, own: Vec::new() };
    let own = house.templates.iter().find(|asset| asset.name == FILE).and_then(|asset| asset.own.as_ref());
    let Some(file) = own.and_then(|path| sources.by_path(path)) else { return labels };
    let text = sources.file(file).text.as_str();
    let Some(own) = parse(text, file, findings) else { return labels };
    let missing: Vec<&str> = labels.words.keys().map(String::as_str).filter(|key| !own.contains_key(*key)).collect();
    if let Some(first) = missing.first() {
        let more = if missing.len() > 1 { format!(", and {} more", missing.len() - 1) } else { String::new() };
        findings.push(
            KEY_MISSING
                .at(Span::new(file, 0..text.len().min(1)), format!("the words of the house leave out `{first}`{more}"))
                .hint(format!("add a line for each of them, such as {}", quoted(&missing[..missing.len().min(3)]))),
        );
    }
    let shelf = Shelf { text, file };
    for (key, value) in &own {
        shelf.take(key, value, &mut labels, findings);
    }
    labels
}

fn parse(text: &str, file: FileId, findings: &mut Findings) -> Option<Map<String, Value>> {
    let error = match serde_json::from_str(text) {
        Ok(Value::Object(words)) => return Some(words),
        Ok(_) => {
            findings.push(
                FILE_UNREADABLE
                    .at(
                        Span::new(file, 0..text.len().min(1)),
                        "the words of the house are names with words behind them",
                    )
                    .hint("write them as `{\"size\": \"Size\", …}`"),
            );
            return None;
        }
        Err(error) => error,
    };
    let line: usize = text.split_inclusive('\n').take(error.line().saturating_sub(1)).map(str::len).sum();
    let mut at = (line + error.column().saturating_sub(1)).min(text.len());
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    let end = text[at..].find('\n').map_or(text.len(), |end| at + end);
    let words = error.to_string();
    let words = words.split(" at line ").next().unwrap_or("");
    findings.push(
        FILE_UNREADABLE
            .at(Span::new(file, at..end), format!("the words of the house cannot be read here: {words}"))
            .hint("write each as `\"name\": \"words\"`, with a comma between two"),
    );
    None
}

/// A booklet's own file.
struct Shelf<'a> {
    text: &'a str,
    file: FileId,
}

impl Shelf<'_> {
    fn take(&self, key: &str, value: &Value, labels: &mut Labels, findings: &mut Findings) {
        let places = self.places(key);
        let at = |range: &Range<usize>| Span::new(self.file, range.clone());
        let span = places.first().map_or(Span::new(self.file, 0..0), at);
        if let Some(second) = places.get(1) {
            findings.push(
                DUPLICATE_KEY
                    .at(at(second), format!("`{key}` is written twice"))
                    .hint("take one of the two out")
                    .note(span, "the first one"),
            );
        }
        let Some(usual) = labels.words.get(key).and_then(Value::as_str) else {
            let names: Vec<&str> = labels.words.keys().map(String::as_str).collect();
            findings.push(KEY_UNKNOWN.at(span, format!("the house has no words called `{key}`")).hint(did_you_mean(
                key,
                names,
                "take the line out",
            )));
            return;
        };
        let Some(words) = value.as_str() else {
            findings.push(
                VALUE_UNREADABLE
                    .at(span, format!("`{key}` has no words behind it"))
                    .hint(format!("write them in double quotes, such as `\"{usual}\"`")),
            );
            return;
        };
        let known = fillings(usual);
        if let Some(filling) = fillings(words).into_iter().find(|filling| !known.contains(filling)) {
            findings.push(KEY_UNKNOWN.at(span, format!("nothing is filled in for `{filling}` in `{key}`")).hint(
                match known.is_empty() {
                    true => "take the braces out".to_owned(),
                    false => format!("what can be filled in is {}", quoted(&known)),
                },
            ));
        }
        let text = Text { text: words.to_owned(), span, verbatim: false };
        labels.own.push(self.words(words, places.last()).unwrap_or(text));
        labels.words.insert(key.to_owned(), Value::String(words.to_owned()));
    }

    /// Where a name stands, without its quotes.
    fn places(&self, key: &str) -> Vec<Range<usize>> {
        let quoted = Value::from(key).to_string();
        let places = self.text.match_indices(&quoted);
        let names = places.filter(|(at, _)| self.text[at + quoted.len()..].trim_start().starts_with(':'));
        names.map(|(at, _)| at + 1..at + quoted.len() - 1).collect()
    }

    /// The words behind a name, where they stand letter for letter.
    fn words(&self, words: &str, name: Option<&Range<usize>>) -> Option<Text> {
        let after = name?.end + 1;
        let open = after + self.text.get(after..)?.find('"')? + 1;
        let range = open..open + words.len();
        let same = self.text.get(range.clone()) == Some(words);
        same.then(|| Text { text: words.to_owned(), span: Span::new(self.file, range), verbatim: true })
    }
}

/// What is filled into words: `{n}`.
fn fillings(words: &str) -> Vec<&str> {
    let opens = words.match_indices('{').map(|(at, _)| &words[at..]);
    opens.filter_map(|rest| rest.find('}').map(|end| &rest[..=end])).collect()
}

fn quoted(names: &[&str]) -> String {
    listed(&names.iter().map(|name| format!("`{name}`")).collect::<Vec<_>>())
}

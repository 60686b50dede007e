//! The vocabulary of the booklet's language: the house's, or the booklet's own in its place.

use crate::diag::Findings;
use crate::faults::FILE_UNREADABLE;
use crate::model::Vocabulary;
use crate::source::{House, Sources, Span};

/// Reads the vocabulary of a language, such as `en-GB`; empty where the house has none for it, so that no word
/// is misread by another language's. A booklet's own file that cannot be read is a finding.
pub fn read_vocabulary(house: &House, language: &str, sources: &Sources, findings: &mut Findings) -> Vocabulary {
    let main = language.split('-').next().unwrap_or("").to_lowercase();
    let file = format!("vocabulary-{main}.json");
    let Some(asset) = house.templates.iter().find(|asset| asset.name == file) else { return Vocabulary::default() };
    match serde_json::from_str(asset.text()) {
        Ok(vocabulary) => vocabulary,
        Err(error) => {
            if let Some(file) = asset.own.as_ref().and_then(|path| sources.by_path(path)) {
                let text = sources.file(file).text.as_str();
                let start: usize = text.split_inclusive('\n').take(error.line().saturating_sub(1)).map(str::len).sum();
                let end = text[start.min(text.len())..].find('\n').map_or(text.len(), |end| start + end);
                let words = error.to_string();
                let words = words.split(" at line ").next().unwrap_or("");
                let span = Span::new(file, start.min(end)..end);
                findings.push(
                    FILE_UNREADABLE
                        .at(span, format!("the vocabulary cannot be read here: {words}"))
                        .hint("begin with a copy of the house's own and change words in it"),
                );
            }
            Vocabulary::default()
        }
    }
}

//! Names as they stand in the middle of a sentence.

/// A name in the middle of a sentence; an abbreviation such as "PUL fabric" keeps its capitals.
pub fn lower(name: &str) -> String {
    let mut letters = name.chars();
    let first = letters.next();
    let second = letters.clone().next();
    match first {
        Some(first) if !second.is_some_and(char::is_uppercase) => first.to_lowercase().chain(letters).collect(),
        _ => name.to_owned(),
    }
}

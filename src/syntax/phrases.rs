//! Words as the lists of the house hold them: small letters, without an ending for many.

/// Small letters without an ending for many, so that "needles" is "needle".
pub fn plain_words(text: &str) -> Vec<String> {
    let plain = text.to_lowercase().replace(['\'', '’'], "");
    let parts = plain.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty());
    parts.map(single).collect()
}

/// One word without an ending for many.
pub fn single(word: &str) -> String {
    let many = word.len() > 3 && word.ends_with('s') && !word.ends_with("ss");
    word[..word.len() - usize::from(many)].to_owned()
}

/// Whether the words of a phrase stand in a text, side by side.
pub fn holds(text: &[String], phrase: &[String]) -> bool {
    !phrase.is_empty() && text.windows(phrase.len()).any(|some| some == phrase)
}

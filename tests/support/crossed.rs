//! The words of the house crossed out, so that what a drawing still says in English was not taken from them.

use std::path::Path;

/// A booklet's own file of words: every letter an x, but for what is filled in.
pub fn labels() -> String {
    let house = Path::new(env!("CARGO_MANIFEST_DIR")).join("templates/labels-en.json");
    let house = std::fs::read_to_string(house).expect("the words");
    let house: serde_json::Map<String, serde_json::Value> =
        serde_json::from_str(&house).expect("words");
    let own: serde_json::Map<String, serde_json::Value> = house
        .iter()
        .map(|(name, words)| {
            let words = words.as_str().expect("words");
            (name.clone(), crossed_out(words).into())
        })
        .collect();
    serde_json::to_string_pretty(&own).expect("a file")
}

fn crossed_out(words: &str) -> String {
    let mut inside = false;
    let cross = |letter: char| {
        inside = match letter {
            '{' => true,
            '}' => false,
            _ => inside,
        };
        match letter {
            _ if inside => letter,
            letter if letter.is_alphabetic() => 'x',
            letter => letter,
        }
    };
    words.chars().map(cross).collect()
}

/// Words of small letters that are neither crossed out nor units.
pub fn english(text: &str) -> Vec<String> {
    let words = text.split(|letter: char| !letter.is_alphabetic());
    let small = words.filter(|word| word.chars().any(char::is_lowercase));
    small
        .filter(|word| !["cm", "mm", "m", "in", "yd"].contains(word))
        .filter(|word| word.chars().any(|letter| letter != 'x'))
        .map(str::to_owned)
        .collect()
}

/// Each text of a drawing.
pub fn texts(svg: &str) -> Vec<String> {
    let document = roxmltree::Document::parse(svg).expect("a drawing");
    let texts = document
        .descendants()
        .filter(|node| node.is_element() && node.tag_name().name() == "text");
    texts
        .map(|node| {
            let words = node.descendants().filter(|one| one.is_text());
            let words: Vec<&str> = words.filter_map(|one| one.text()).collect();
            words.join(" ")
        })
        .collect()
}

//! Letters that deceive the eye, made visible wherever an author's words are shown.
//!
//! Control codes can move a terminal's cursor or hide a line; marks of direction can turn words round; signs of no
//! width can make two names look alike.

use std::borrow::Cow;

/// Whether a letter is not seen, or moves what is seen. Ends of lines and tabs are not meant.
pub fn is_hidden(letter: char) -> bool {
    matches!(letter,
        '\0'..='\u{8}' | '\u{b}' | '\u{c}' | '\u{e}'..='\u{1f}' | '\u{7f}'..='\u{9f}'
        // Marks of direction: Unicode Standard Annex 9, section 2.
        | '\u{61c}' | '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}'
        // Signs of no width, of which the joiners (U+200C and U+200D) are judged by their neighbours.
        | '\u{200b}' | '\u{2060}'..='\u{2065}' | '\u{206a}'..='\u{206f}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}'
        | '\u{180e}' | '\u{3164}' | '\u{ffa0}' | '\u{115f}' | '\u{1160}'
        // Lines and paragraphs that only some programs end.
        | '\u{2028}' | '\u{2029}'
        // Tags: Unicode Standard, section 23.9.
        | '\u{e0000}'..='\u{e007f}')
}

/// Words with each hidden letter as a visible mark: `␛` for an escape code, `‹U+202E›` for what has no sign.
pub fn visible(words: &str) -> Cow<'_, str> {
    if !words.contains(|letter| is_hidden(letter) || letter == '\r') {
        return Cow::Borrowed(words);
    }
    let mut shown = String::with_capacity(words.len() + 16);
    let mut letters = words.chars().peekable();
    while let Some(letter) = letters.next() {
        // At the end of a line a carriage return is half of what ends it; elsewhere it goes back over the line.
        let back = letter == '\r' && !matches!(letters.peek(), None | Some('\n'));
        match letter {
            letter if !back && !is_hidden(letter) => shown.push(letter),
            // Control Pictures, U+2400: each stands for the code of its place in the block.
            '\0'..='\u{1f}' => shown.extend(char::from_u32(0x2400 + u32::from(letter))),
            '\u{7f}' => shown.push('\u{2421}'),
            letter => shown.push_str(&format!("‹U+{:04X}›", u32::from(letter))),
        }
    }
    Cow::Owned(shown)
}

/// A line of JSON in which each hidden letter is written by its number (RFC 8259, section 7).
pub(super) fn visible_json(json: &str) -> String {
    let mut shown = String::with_capacity(json.len());
    for letter in json.chars() {
        if !is_hidden(letter) {
            shown.push(letter);
            continue;
        }
        for unit in letter.encode_utf16(&mut [0; 2]) {
            shown.push_str(&format!("\\u{unit:04x}"));
        }
    }
    shown
}

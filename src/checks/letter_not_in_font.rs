//! A letter or a sign stands in none of the bundled fonts, so that it cannot be printed.
//!
//! ## Why it matters
//!
//! The page would show an empty box, and a reader's program that speaks the booklet would stumble. Emoji and
//! signs pasted from a web page are the usual cause.
//!
//! ## Wrong
//!
//! ```md
//! ## Wind the bobbin {#bobbin}
//!
//! Wind the bobbin 🧵 first.
//! ```
//!
//! ## Right
//!
//! ```md
//! ## Wind the bobbin {#bobbin}
//!
//! Wind the bobbin first.
//! ```
//!
//! ## Limits
//!
//! A font in the booklet's own folder `fonts` counts as bundled.

use super::judge::{Judge, Subject};
use super::written::each_text;
use crate::diag::{Check, Findings, Group};

/// The check.
pub(super) static CHECK: Judge =
    Judge::booklet(&Check::error("letter-not-in-font", Group::Print, include_str!("letter_not_in_font.rs")), run);

/// Looks at every printed text.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    each_text(subject, &mut |text, _| {
        let missing = text.text.char_indices().find(|(_, letter)| !is_printed(*letter, subject));
        let Some((at, letter)) = missing else { return };
        let shown = if letter.is_control() { format!("U+{:04X}", letter as u32) } else { letter.to_string() };
        findings.push(
            CHECK
                .at(
                    text.at(at..at + letter.len_utf8()),
                    format!("“{shown}” stands in no bundled font, so it cannot be printed"),
                )
                .hint("write it in words, or put a font that has it into the booklet's folder `fonts`"),
        );
    });
}

/// White space is not drawn; joiners and selectors only steer their neighbours.
fn is_printed(letter: char, subject: &Subject<'_>) -> bool {
    let steers = matches!(letter, '\u{200b}'..='\u{200f}' | '\u{2060}' | '\u{feff}' | '\u{ad}');
    letter.is_whitespace() || steers || subject.letters.contains(&letter)
}

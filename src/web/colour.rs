//! The booklet's colour on a dark page.

use crate::checks::contrast;

/// The paper of the dark page, as the style sheet has it.
const DARK: [u8; 3] = [0x15, 0x19, 0x1a];
/// The least contrast of words (WCAG 2.2, success criterion 1.4.3).
const LEAST: f64 = 4.5;

/// The same hue, lightened until it can be read on dark paper; a colour that cannot be read stays as it is.
pub(super) fn on_dark(accent: &str) -> String {
    let digits = accent.strip_prefix('#').unwrap_or(accent);
    let part = |at: usize| digits.get(at..at + 2).and_then(|two| u8::from_str_radix(two, 16).ok());
    let (Some(red), Some(green), Some(blue)) = (part(0), part(2), part(4)) else { return accent.to_owned() };
    let mut colour = [red, green, blue];
    while contrast(colour, DARK) < LEAST {
        colour = colour.map(|part| part.saturating_add((255 - part) / 16 + 1));
    }
    format!("#{:02x}{:02x}{:02x}", colour[0], colour[1], colour[2])
}

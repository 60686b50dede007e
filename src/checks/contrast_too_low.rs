//! The booklet's accent colour is too pale to read on paper.
//!
//! ## Why it matters
//! Headings and step numbers are set in this colour. A pale one fades on a home printer, and for
//! many eyes it is not there at all.
//!
//! ## Wrong
//! ```yaml
//! style: {accent: "#7fc4d0"}
//! ```
//!
//! ## Right
//! ```yaml
//! style: {accent: "#1f5f6b"}
//! ```
//!
//! ## Limits
//! Measures the colour against white paper and asks for 4.5 to 1 (WCAG 2.2, success criterion
//! 1.4.3). The colours of your own templates and pictures are not looked at.

use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group, Home};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("contrast-too-low", Group::Print, include_str!("contrast_too_low.rs")).waivable_in(Home::Facts),
    run,
);

/// The least contrast of text against its ground (WCAG 2.2, success criterion 1.4.3).
pub const LEAST: f64 = 4.5;

/// Looks at the accent against white paper.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let accent = &subject.draft.facts.style.accent;
    let Some(colour) = parse(&accent.text) else { return };
    let contrast = contrast(colour, [255, 255, 255]);
    if contrast < LEAST {
        findings.push(
            CHECK.at(accent.span, format!("this colour has a contrast of {contrast:.2} to 1 against paper")).hint(
                format!("take a darker one, of at least {LEAST} to 1 (WCAG 2.2): for example `{}`", darker(colour)),
            ),
        );
    }
}

/// `#rrggbb`.
fn parse(written: &str) -> Option<[u8; 3]> {
    let hex = written.strip_prefix('#').filter(|hex| hex.len() == 6)?;
    let part = |at: usize| u8::from_str_radix(hex.get(at..at + 2)?, 16).ok();
    Some([part(0)?, part(2)?, part(4)?])
}

/// Contrast ratio of two sRGB colours, 1 to 21 (WCAG 2.2, "contrast ratio").
pub fn contrast(one: [u8; 3], other: [u8; 3]) -> f64 {
    let (one, other) = (luminance(one), luminance(other));
    (one.max(other) + 0.05) / (one.min(other) + 0.05)
}

/// Relative luminance of an sRGB colour, 0 to 1 (WCAG 2.2, "relative luminance").
pub fn luminance(colour: [u8; 3]) -> f64 {
    let linear = |part: u8| {
        let part = f64::from(part) / 255.0;
        if part <= 0.04045 { part / 12.92 } else { ((part + 0.055) / 1.055).powf(2.4) }
    };
    0.2126 * linear(colour[0]) + 0.7152 * linear(colour[1]) + 0.0722 * linear(colour[2])
}

/// The same hue, darkened until it can be read.
fn darker(mut colour: [u8; 3]) -> String {
    while contrast(colour, [255, 255, 255]) < LEAST {
        colour = colour.map(|part| part.saturating_sub(part / 20 + 1));
    }
    format!("#{:02x}{:02x}{:02x}", colour[0], colour[1], colour[2])
}

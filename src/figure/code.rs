//! An address as a square of dots that a camera reads (ISO/IEC 18004).

use qrcode::{Color, EcLevel, QrCode};

/// The side of one dot on paper, in mm: a phone reads half a millimetre from a hand's breadth (common practice, no source).
const DOT: f64 = 0.6;
/// The white around, in dots (ISO/IEC 18004, 5.3.8).
const QUIET: usize = 4;

/// The drawing and the length of its side in mm; `None` where the words are too long for one.
pub fn code(words: &str) -> Option<(String, f64)> {
    let code = QrCode::with_error_correction_level(words.as_bytes(), EcLevel::M).ok()?;
    let width = code.width();
    let side = width + 2 * QUIET;
    let mut path = String::new();
    for (at, colour) in code.to_colors().into_iter().enumerate() {
        if colour == Color::Dark {
            path.push_str(&format!("M{} {}h1v1h-1z", at % width + QUIET, at / width + QUIET));
        }
    }
    let length = side as f64 * DOT;
    let svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {side} {side}\" width=\"{length:.1}mm\" height=\"{length:.1}mm\">\
         <rect width=\"{side}\" height=\"{side}\" fill=\"#fff\"/><path d=\"{path}\" fill=\"#000\"/></svg>"
    );
    Some((svg, length))
}

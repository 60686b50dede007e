//! The video that goes with a booklet, and the times at which its parts and steps are shown.

use super::text::Text;
use crate::source::Span;

/// A video that makers watch while they sew.
#[derive(Debug, Clone)]
pub struct Video {
    /// Where it is.
    pub url: Text,
    /// How long it is; `None` where that is not stated.
    pub length: Option<Moment>,
    /// What it opens with, before the first part; `None` where the first part opens it.
    pub opening: Option<Text>,
}

/// A time in a video.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Moment {
    /// Seconds from its beginning.
    pub seconds: u32,
    /// Where it is written.
    pub span: Span,
}

/// Reads `10:05` or `1:02:30` as seconds; `None` for anything else.
pub fn read_moment(text: &str) -> Option<u32> {
    let parts: Vec<&str> = text.split(':').collect();
    if !(2..=3).contains(&parts.len()) {
        return None;
    }
    let mut seconds = 0u32;
    for (at, part) in parts.iter().enumerate() {
        let whole = (1..=2).contains(&part.len()) && part.bytes().all(|byte| byte.is_ascii_digit());
        let number: u32 = part.parse().ok().filter(|_| whole && (at == 0 || part.len() == 2))?;
        if at > 0 && number > 59 {
            return None;
        }
        seconds = seconds * 60 + number;
    }
    Some(seconds)
}

/// Seconds as players write them: `10:05`, `1:02:30`.
pub fn written_moment(seconds: u32) -> String {
    let (hours, minutes, rest) = (seconds / 3600, seconds / 60 % 60, seconds % 60);
    if hours > 0 { format!("{hours}:{minutes:02}:{rest:02}") } else { format!("{minutes}:{rest:02}") }
}

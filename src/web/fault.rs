//! What a template of the page cannot do, led back to its line.

use std::error::Error as _;
use std::ops::Range;

/// A complaint of the page's templates.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PageFault {
    /// The fact, in a sentence.
    pub message: String,
    /// The template, and the bytes at fault; `None` when the fault has no place.
    pub place: Option<(String, Range<usize>)>,
}

impl PageFault {
    pub(super) fn of(error: &minijinja::Error) -> PageFault {
        // The innermost cause names the template in which it happened.
        let mut inner = error;
        while let Some(cause) = inner.source().and_then(|cause| cause.downcast_ref::<minijinja::Error>()) {
            inner = cause;
        }
        let message = match inner.detail() {
            Some(detail) => format!("{}: {detail}", inner.kind()),
            None => inner.kind().to_string(),
        };
        let place = inner.name().map(|name| (name.to_owned(), inner.range().unwrap_or(0..0)));
        PageFault { message, place }
    }
}

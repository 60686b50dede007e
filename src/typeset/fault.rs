//! What Typst complains of, led back to a file that someone wrote.

use typst::WorldExt;
use typst::diag::SourceDiagnostic;

use super::world::Desk;

/// A complaint of the typesetter.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PressFault {
    /// The fact, in the typesetter's words.
    pub message: String,
    /// What it suggests; may be empty.
    pub hint: String,
    /// The path at which the templates found the file, and the bytes at fault; `None` when the fault
    /// has no place.
    pub place: Option<(String, std::ops::Range<usize>)>,
}

impl PressFault {
    pub(super) fn of(diagnostic: &SourceDiagnostic, desk: &Desk<'_>) -> PressFault {
        let place = diagnostic.span.id().map(|id| {
            let range = desk.range(diagnostic.span).unwrap_or(0..0);
            (id.get().vpath().get_with_slash().to_owned(), range)
        });
        let hints: Vec<String> = diagnostic.hints.iter().map(|hint| hint.v.to_string()).collect();
        PressFault { message: diagnostic.message.to_string(), hint: hints.join("; "), place }
    }

    pub(super) fn plain(message: impl Into<String>) -> PressFault {
        PressFault { message: message.into(), hint: String::new(), place: None }
    }
}

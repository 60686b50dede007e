//! One finding.

use super::check::Check;
use super::level::Level;
use crate::source::Span;

impl Check {
    /// A finding at a place: the fact, in one sentence without a full stop.
    pub fn at(&'static self, span: Span, message: impl Into<String>) -> Finding {
        Finding::new(self, span, message.into())
    }
}

/// A fault at a place: the fact, the act, and the sizes that have it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Finding {
    /// The check that found it.
    pub check: &'static Check,
    /// The fact, in one sentence without a full stop.
    pub message: String,
    /// The act: what to write instead.
    pub hint: String,
    /// The characters at fault.
    pub span: Span,
    /// What the marked characters are; may be empty.
    pub label: String,
    /// Other places that matter, each with what it is.
    pub notes: Vec<(Span, String)>,
    /// Sizes (by their place in `sizes`) that have the fault, with what differs by size (may be
    /// empty); none at all when the fault does not hang on the size.
    pub sizes: Vec<(usize, String)>,
    /// Whether the same message at other places is the same fault, told once with all its places.
    pub everywhere: bool,
    /// Whether it is told only where no error stands that it may follow from.
    pub follows: bool,
}

impl Finding {
    pub(super) fn new(check: &'static Check, span: Span, message: String) -> Finding {
        Finding {
            check,
            message,
            hint: String::new(),
            span,
            label: String::new(),
            notes: Vec::new(),
            sizes: Vec::new(),
            everywhere: false,
            follows: false,
        }
    }

    /// The check's name, in kebab-case.
    pub fn code(&self) -> &'static str {
        self.check.code
    }

    /// Whether it stops the build.
    pub fn level(&self) -> Level {
        self.check.level
    }

    /// Says what to do about it.
    pub fn hint(mut self, hint: impl Into<String>) -> Finding {
        self.hint = hint.into();
        self
    }

    /// Says what the marked characters are.
    pub fn label(mut self, label: impl Into<String>) -> Finding {
        self.label = label.into();
        self
    }

    /// Says that the same message at other places is this very fault, to be told once.
    pub fn everywhere(mut self) -> Finding {
        self.everywhere = true;
        self
    }

    /// Says that it holds in one case alone: "if the maker leaves out `pull`".
    pub fn only(mut self, case: &str) -> Finding {
        self.message = format!("{case}: {}", self.message);
        self
    }

    /// Says that it most likely follows from an error, and need not be told beside one that stands.
    pub fn follows(mut self) -> Finding {
        self.follows = true;
        self
    }

    /// Points at another place that matters.
    pub fn note(mut self, span: Span, label: impl Into<String>) -> Finding {
        self.notes.push((span, label.into()));
        self
    }

    /// Says that the fault is one of the size at `index`; findings that are otherwise the same
    /// become one. `detail` is what differs by size, such as a length; it may be empty.
    pub fn in_size(mut self, index: usize, detail: impl Into<String>) -> Finding {
        self.sizes.push((index, detail.into()));
        self
    }
}

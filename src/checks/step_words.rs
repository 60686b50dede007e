//! The words of every step of every size, read once for all checks that look at them.

use std::cell::OnceCell;

use super::passage::Passage;

/// The passages of every step, size by size and step by step; none until they are first asked for.
#[derive(Default)]
pub struct StepWords<'a>(OnceCell<Vec<Vec<Passage<'a>>>>);

impl<'a> StepWords<'a> {
    /// The passages, read by `read` the first time.
    pub(super) fn or_read(&self, read: impl FnOnce() -> Vec<Vec<Passage<'a>>>) -> &[Vec<Passage<'a>>] {
        self.0.get_or_init(read)
    }
}

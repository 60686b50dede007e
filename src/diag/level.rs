//! How grave a finding is.

/// Whether a finding stops the build.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// The booklet is wrong or cannot be made: nothing is built.
    Error,
    /// Worth a look; the build goes on unless `--deny warnings` is given.
    Warning,
}

impl Level {
    /// The word that people and programs read.
    pub fn word(self) -> &'static str {
        match self {
            Level::Error => "error",
            Level::Warning => "warning",
        }
    }
}

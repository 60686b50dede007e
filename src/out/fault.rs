//! Why files could not be put in their place.

use std::path::Path;

/// The fact and the act.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OutFault {
    /// What is wrong, without a full stop.
    pub fact: String,
    /// What to do, without a full stop.
    pub act: String,
}

impl OutFault {
    pub(super) fn new(fact: impl Into<String>, act: impl Into<String>) -> OutFault {
        OutFault { fact: fact.into(), act: act.into() }
    }
}

pub(super) fn unwritten(place: &Path, error: &std::io::Error) -> OutFault {
    OutFault::new(format!("`{}` cannot be written: {error}", place.display()), act_on(error))
}

pub(super) fn unread(place: &Path, words: &str) -> OutFault {
    OutFault::new(format!("`{}` cannot be read: {words}", place.display()), "see whether you may read it")
}

/// What helps against a fault of writing: not every one is mended by another folder.
fn act_on(error: &std::io::Error) -> &'static str {
    use std::io::ErrorKind::{PermissionDenied, QuotaExceeded, ReadOnlyFilesystem, StorageFull};
    match error.kind() {
        StorageFull | QuotaExceeded => "make room on the disk; nothing of what was there before is lost",
        PermissionDenied | ReadOnlyFilesystem => "name a folder that you may write to with --out",
        // Too many open files, by its number on every system of the Unix kind.
        _ if error.raw_os_error() == Some(24) => "let the system open more files at once (`ulimit -n`)",
        _ => "see whether the disk is in order, or name another folder with --out",
    }
}

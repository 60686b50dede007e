//! Why a file could not be read, and what to do about it.

/// Why a file could not be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ReadFault {
    /// There is no such file.
    Missing,
    /// The path, or a link on its way, leads out of the folder.
    LeadsOut,
    /// The system refuses.
    Denied,
    /// It is a folder, a device or a pipe.
    NotAFile,
    /// Bytes that are not UTF-8 text; the first of them, counted from 0.
    NotUtf8(usize),
    /// Larger than what a text or a picture may have; its size in bytes.
    TooLarge(u64),
    /// Anything else, in the system's words.
    Other(String),
}

impl ReadFault {
    /// What is the matter, to follow the file's name: "`x.md` …".
    pub fn message(&self) -> String {
        match self {
            ReadFault::Missing => "is not there".into(),
            ReadFault::LeadsOut => "leads out of the folder that the command was given".into(),
            ReadFault::Denied => "may not be read: permission denied".into(),
            ReadFault::NotAFile => "is not a file".into(),
            ReadFault::NotUtf8(at) => format!("is not UTF-8 text (byte {} is not part of a character)", at + 1),
            ReadFault::TooLarge(size) => format!("is too large ({:.1} MB)", *size as f64 / 1e6),
            ReadFault::Other(words) => format!("cannot be read: {words}"),
        }
    }

    /// What to do about it.
    pub fn hint(&self) -> String {
        match self {
            ReadFault::Missing => "check the spelling and the folder, or take the mention out".into(),
            ReadFault::LeadsOut => {
                "copy the file into the folder, or give the command the folder above with --folder".into()
            }
            ReadFault::Denied => "change the file's permissions so that you may read it".into(),
            ReadFault::NotAFile => "name a file, not a folder".into(),
            ReadFault::NotUtf8(_) => "save the file as UTF-8 in your editor (“Save with encoding”)".into(),
            ReadFault::TooLarge(_) => {
                "a text may have up to 2 MB, a picture up to 20 MB: split it, or save it smaller".into()
            }
            ReadFault::Other(_) => "see whether the disk and the file are in order".into(),
        }
    }
}

//! A file that the booklet names cannot be opened or read.
//!
//! ## Why it matters
//! A part that is not read is a part that is not printed: its steps would be missing from every
//! copy, and nobody at the sewing machine could know.
//!
//! ## Wrong
//! ```yaml
//! parts: [make.md, finishing.md]
//! ```
//! …while the folder holds no `finishing.md`.
//!
//! ## Right
//! ```yaml
//! parts: [make.md]
//! ```
//!
//! ## Limits
//! Looks at `booklet.yaml`, at the files under `parts:`, at the logo and the cover picture, and at the
//! booklet's own templates, fonts and words of the house; a diagram that is not there is told by
//! `figure-missing`. A text may have 2 MB and must be saved as UTF-8; a picture may have 20 MB and must
//! be SVG, PNG, JPEG, GIF or WebP; a font is a single one, `.ttf` or `.otf`. Nothing outside the folder
//! that the command was given is read, not even by a link.

use crate::diag::{Check, Group};

/// A file that the booklet names cannot be opened or read.
pub static FILE_UNREADABLE: Check =
    Check::error("file-unreadable", Group::Facts, include_str!("file_unreadable.rs")).unread();

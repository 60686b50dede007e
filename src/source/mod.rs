//! The only reader of the disk: finds the files of a booklet, reads them, and knows what place a byte is.
//!
//! Nothing outside the folder that the command was given is ever read: a path is followed to its
//! end (links and `..` included) before its file is opened, and refused when it ends elsewhere.
//! Nothing here parses.

mod folder;
mod house;
mod ledger;
mod place;
mod read_fault;
mod shelf;
mod sum;

pub use folder::Folder;
pub use house::{Asset, AssetFault, House};
pub use ledger::{Ledger, Look};
pub use place::{FileId, Place, SourceFile, Sources, Span};
pub use read_fault::ReadFault;
pub use shelf::{BookletFolder, find_booklets};
pub use sum::{Sum, sha256};

//! One verb, one file: its page, what it needs, and what it changes; and the table that lists each once.

mod applique;
mod attach;
mod baste;
mod bind;
mod r#box;
mod boxstitch;
mod button;
mod buttonhole;
mod clip;
mod close;
mod cut;
mod dart;
mod easestitch;
mod edgestitch;
mod entry;
mod fasten;
mod finish;
mod fold;
mod fuse;
mod gather;
mod grade;
mod hem;
mod insert;
mod lap;
mod mark;
mod open;
mod pin;
mod pleat;
mod press;
mod put;
mod quilt;
mod sew;
mod slash;
mod staystitch;
mod stuff;
mod topstitch;
mod trim;
mod tuck;
mod turn;
mod understitch;

pub(super) use cut::uncut;
pub use entry::VerbEntry;

use crate::model::{Verb, each_verb};

macro_rules! table {
    ($($name:ident, $file:ident, $word:literal, $thread:ident;)*) => {
        /// Every verb, in the order of the language.
        pub static VERBS: &[&VerbEntry] = &[$(&$file::VERB),*];

        /// What the play knows of a verb.
        pub fn entry(verb: Verb) -> &'static VerbEntry {
            match verb {
                $(Verb::$name => &$file::VERB,)*
            }
        }
    };
}
each_verb!(table);

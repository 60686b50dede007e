//! From text to [`Draft`](crate::model::Draft): YAML, Markdown and work blocks, each with its places.
//!
//! Every reader gives what it could read *and* the findings, and goes on after a fault. Nothing
//! here works a value out.

mod braces;
mod crowd;
mod cut;
mod draft;
mod events;
mod expression;
mod facts;
mod fences;
mod fields;
mod fit;
mod gaps;
mod handed;
mod headings;
mod help;
mod hidden;
mod inside;
mod keys;
mod labels;
mod lengths;
mod links;
mod made_of;
mod markdown;
mod measures;
mod needs;
mod notions;
mod offers;
mod outlines;
mod part;
mod phrases;
mod pieces;
mod places;
mod prose;
mod reader;
mod ruled;
mod sheets;
mod shop;
mod sizes;
mod synonyms;
mod things;
mod together;
mod video;
mod views;
mod vocabulary;
mod waive;
mod walk;
mod words;
mod work;
mod yaml;

pub use draft::{Reading, read_booklet};
pub use expression::{parse_expression, problem_to_finding};
pub use hidden::deceiving;
pub use keys::{RECORDS, Record};
pub use labels::{Labels, read_labels};
pub use made_of::tell_materials;
pub use markdown::{brace_groups, plain_inline, read_brace};
pub use needs::{Danger, Harm, Look, Need, Needs, read_needs};
pub use phrases::{holds, plain_words, single};
pub use vocabulary::read_vocabulary;
pub use waive::comment_waiver;

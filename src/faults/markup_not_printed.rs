//! HTML, or something else in the words, is not printed.
//!
//! ## Why it matters
//! What stands there may vanish from the page. A caution that someone marked with a colour is then
//! printed without it, and a footnote that nothing sends to is not printed at all.
//!
//! ## Wrong
//! ````md
//! ## Look at the seams {#look}
//!
//! Look at <b>every</b> seam.
//! ````
//!
//! ## Right
//! ````md
//! ## Look at the seams {#look}
//!
//! Look at **every** seam.
//! ````
//!
//! ## Limits
//! Comments, `<!-- … -->`, are yours and are passed over. The words between two pieces of HTML in a
//! line are printed; HTML that begins a paragraph is left out with all that is in it. Told here too:
//! a footnote that nothing sends to, that is explained twice or leads back to itself; the address of
//! a link (`[name]: https://…`) that no link uses; a title in quotes behind an address; cells beyond
//! the columns of a table; `[!NOTE]` that opens no notice; and headings, tables, notices, lines
//! across and boxes to tick in a `note:` or in a meaning under `words:`, which hold paragraphs, lists,
//! quotations and code.

use crate::diag::{Check, Group};

/// HTML, or something else in the words, is not printed.
pub static MARKUP_NOT_PRINTED: Check =
    Check::error("markup-not-printed", Group::Words, include_str!("markup_not_printed.rs")).waivable();

//! HTML stands in the words and is not printed.
//!
//! ## Why it matters
//! What stands between the signs may vanish from the page. A caution that someone marked with a
//! colour is then printed without it.
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
//! line are printed; HTML that begins a paragraph is left out with all that is in it.

use crate::diag::{Check, Group};

/// HTML stands in the words and is not printed.
pub static MARKUP_NOT_PRINTED: Check =
    Check::error("markup-not-printed", Group::Words, include_str!("markup_not_printed.rs")).waivable();

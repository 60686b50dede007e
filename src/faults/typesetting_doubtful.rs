//! The typesetter warns of something in a template of the booklet's own.
//!
//! ## Why it matters
//! The page is set all the same, but not as its template says: where a font is not there, another one
//! takes its place.
//!
//! ## Wrong
//! ```typ
//! #set document(title: "Tide Pouch")
//! #set text(font: "Dune")
//! Tide Pouch
//! ```
//! …in a template of the booklet's own, while no file in its folder `fonts` holds that font.
//!
//! ## Right
//! ```yaml
//! style: {accent: "#1f5f6b"}
//! ```
//! …and no template of one's own: the templates of the house are used.
//!
//! ## Limits
//! Found by `build`, not by `check`. The fact is told in the words of the typesetter. A letter that no
//! font holds is told by `letter-not-in-font`.

use crate::diag::{Check, Group};

/// The typesetter warns of something in a template of the booklet's own.
pub static TYPESETTING_DOUBTFUL: Check =
    Check::warning("typesetting-doubtful", Group::Print, include_str!("typesetting_doubtful.rs"));

//! Words of the trade that are no verbs of ours, and what to write instead.

use crate::diag::{is_slip, nearest};
use crate::model::Verb;

/// Words with the way in which the same is said here (common practice, no source).
const SAID: &[(&[&str], &str)] = &[
    (&["overlock", "serge", "overcast", "neaten"], "`finish:` with `by: overlock`"),
    (&["zigzag", "zig-zag"], "`finish:` with `by: zigzag`"),
    (&["pink"], "`finish:` with `by: pinking`"),
    (&["stitch", "seam", "join", "set"], "`sew:`"),
    (&["stay-stitch", "stay_stitch", "stay", "staystitching"], "`staystitch:`"),
    (&["under-stitch", "under_stitch", "understitching"], "`understitch:`"),
    (&["edge-stitch", "edge_stitch"], "`edgestitch:`"),
    (&["top-stitch", "top_stitch", "overstitch"], "`topstitch:`"),
    (&["ease-stitch", "ease_stitch"], "`easestitch:`"),
    (&["ease"], "`easestitch:` for the stitches, and `ease:` below `sew:` for how much"),
    (&["iron", "steam"], "`press:`"),
    (&["interface", "interfacing"], "`fuse:`"),
    (&["tack"], "`baste:`, or `attach:` for a few stitches that stay"),
    (&["slipstitch", "slip-stitch", "slip", "ladderstitch"], "`close:` for a gap or `hem:`, with `by: hand`"),
    (&["push", "drop", "slide", "sleeve", "pull", "draw"], "`put:` with `into:` or `over:`"),
    (&["snip", "notch"], "`clip:`"),
    (&["layer"], "`grade:` for allowances, `baste: […, as one]` for pieces"),
    (&["roll"], "`press:` with words behind, such as `the seam rolled inwards`"),
    (&["overlap"], "`lap:` with `by: 3 cm`"),
    (&["understitched"], "`understitch:`"),
    (&["box-stitch", "box_stitch", "bartack", "bar_tack"], "`boxstitch:`"),
    (&["fill", "pad"], "`stuff:`"),
    (&["catch", "enclose", "trap"], "`catch:` below the seam that holds it"),
    (&["face", "line"], "`sew:` the edges of the facing or the lining to those of the piece"),
    (&["pivot"], "`sew:` with both edges in a row, `[front.side, front.base]`"),
];

/// Words of the trade that lie near a verb and are no slip of the hand.
const NO_SLIPS: &[&str] = &["dart", "loop"];

/// What to write instead of a word that is no verb.
pub(super) fn instead(word: &str) -> String {
    if let Some((_, said)) = SAID.iter().find(|(words, _)| words.contains(&word)) {
        return format!("here that is said with {said}");
    }
    let verbs: Vec<&str> = Verb::ALL.iter().map(|(verb, _)| *verb).collect();
    let slip = nearest(word, verbs.iter().copied()).filter(|verb| is_slip(word, verb) && !NO_SLIPS.contains(&word));
    match slip {
        Some(verb) => format!("did you mean `{verb}`?"),
        None => format!("the verbs are: {}", verbs.join(", ")),
    }
}

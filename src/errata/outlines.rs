//! The outlines of the pieces, edge by edge.

use super::change::Matter;
use super::differ::{Differ, paired};
use crate::manifest::{EdgeRecord, LineRecord, Manifest, OutlineRecord, PieceRecord};

/// Holds the outlines of one size against each other: by its places in the older and the newer edition.
pub(super) fn outlines(differ: &mut Differ<'_>, (old, old_at): (&Manifest, usize), new: &Manifest) {
    differ.section = 3;
    let of = |piece: Option<&PieceRecord>, at: usize| piece.and_then(|piece| piece.outlines.get(at)?.clone());
    for (before, after) in paired(&old.pieces, &new.pieces, |piece| piece.id.clone()) {
        // A piece that comes or goes is told by the list of what is cut.
        let (Some(one), Some(other)) = (of(before, old_at), of(after, differ.size)) else { continue };
        let Some(piece) = after.filter(|_| one != other) else { continue };
        outline(differ, piece, &one, &other);
    }
}

fn outline(differ: &mut Differ<'_>, piece: &PieceRecord, before: &OutlineRecord, after: &OutlineRecord) {
    let pairs = paired(&before.edges, &after.edges, |edge| edge.id.clone());
    let changed = |differs: &dyn Fn(&EdgeRecord, &EdgeRecord) -> bool| -> Vec<String> {
        let edge = |(one, other): &(Option<&EdgeRecord>, Option<&EdgeRecord>)| match (one, other) {
            (Some(one), Some(other)) => differs(one, other).then(|| other.name.clone()),
            (one, other) => other.or(*one).map(|edge| edge.name.clone()),
        };
        pairs.iter().filter_map(edge).collect()
    };
    let name = piece.name.as_str();
    let cut = changed(&|one, other| one.cut != other.cut);
    if !cut.is_empty() {
        // What it measures over all has been told.
        if !differ.resized.contains(&piece.id) {
            let edges = differ.new.listed(&cut);
            let what = differ.word("errata_outline", &[("name", name), ("edges", &edges)]);
            differ.tell(&what, "errata_redrawn", &[], Matter::Cut);
        }
        return;
    }
    let sewn = changed(&|one, other| one.allowance != other.allowance);
    if !sewn.is_empty() {
        let edges = differ.new.listed(&sewn);
        let what = differ.word("errata_sewn", &[("name", name), ("edges", &edges)]);
        differ.tell(&what, "errata_redrawn", &[], Matter::Sew);
    }
    let lines = |outline: &OutlineRecord, of: &dyn Fn(&str) -> bool| -> Vec<LineRecord> {
        outline.lines.iter().filter(|line| of(&line.class)).cloned().collect()
    };
    let grain = |class: &str| class == "nb-grain";
    let marks = |class: &str| !matches!(class, "nb-cut" | "nb-sew" | "nb-fold" | "nb-grain");
    let differs = |of: &dyn Fn(&str) -> bool| lines(before, of) != lines(after, of);
    for (key, differs, matter) in
        [("errata_grain", differs(&grain), Matter::Cut), ("errata_marks", differs(&marks), Matter::Sew)]
    {
        if differs {
            let what = differ.word("errata_piece", &[("name", name)]);
            let what = differ.of(&what, key);
            differ.tell(&what, "errata_redrawn", &[], matter);
        }
    }
}

//! Several things in one pattern: each a named set of sizes.

use super::fields::{self, Fields};
use super::sizes;
use super::things::name_of;
use super::yaml::Node;
use crate::diag::{Findings, did_you_mean};
use crate::faults::{KEY_MISSING, NAME_TWICE, SIZE_MISSING, VALUE_UNREADABLE};
use crate::model::{Booklets, Size, View, by_view};

/// The keys of a view.
pub(super) const KEYS: &[&str] = &["name", "sizes"];

/// Reads the record `views:`, and tells each size what it is a size of.
pub(super) fn read(node: &Node, all: &mut [Size], findings: &mut Findings) {
    let plain = all.to_vec();
    for (key, node) in fields::named(node, "views", findings) {
        let id = fields::size_name(key, findings);
        let Some(record) = Fields::open_needing(&["sizes"], node, "a view", KEYS, findings) else { continue };
        let name = name_of(&record, key, findings);
        let Some(listed) = record.need("sizes", &plain[0].id.text, findings) else { continue };
        if fields::list(listed).is_empty() {
            let finding = KEY_MISSING.at(listed.span, format!("the view `{}` has no sizes", id.text));
            findings.push(finding.hint(format!("name at least one: `sizes: [{}]`", plain[0].id.text)));
        }
        for item in fields::list(listed) {
            let Some(text) = fields::text(item, "a size", findings) else { continue };
            let Some(at) = sizes::index(&text.text, text.span, &plain, findings) else { continue };
            if let Some(view) = &all[at].view {
                let finding =
                    NAME_TWICE.at(text.span, format!("`{}` is already a size of `{}`", text.text, view.id.text));
                findings.push(
                    finding
                        .hint("a size belongs to one view: give the other view a size of its own")
                        .note(view.id.span, "the first one"),
                );
                continue;
            }
            all[at].view = Some(View { id: id.clone(), name: name.clone() });
        }
    }
    told_apart(all, findings);
    let without: Vec<&str> = all.iter().filter(|size| size.view.is_none()).map(|size| size.id.text.as_str()).collect();
    if let Some(first) = without.first() {
        findings.push(
            SIZE_MISSING
                .at(node.span, format!("no view has {}", without.join(" and ")))
                .hint(format!("every size is one of some view: add `{first}` to its `sizes:`")),
        );
    }
}

/// A view may bear the name of a size only where that is all it has.
fn told_apart(all: &[Size], findings: &mut Findings) {
    for own in by_view(all) {
        let Some(view) = &all[own[0]].view else { continue };
        let twin = all.iter().position(|size| size.id.text == view.id.text);
        if let Some(twin) = twin.filter(|twin| own != [*twin]) {
            findings.push(
                NAME_TWICE
                    .at(view.id.span, format!("`{}` is already the name of a size", view.id.text))
                    .hint("give the view a name that no size has; the two may share one where that is its only size")
                    .note(all[twin].id.span, "the size"),
            );
        }
    }
}

/// The words of the list `booklets:`.
const BOOKLETS: &[&str] = &["sizes", "views", "all"];

/// Reads the list `booklets:`; without it there is one for each size, and one of all.
pub(super) fn booklets(node: Option<&Node>, sizes: &[Size], findings: &mut Findings) -> Booklets {
    let usual = Booklets { sizes: true, views: false, all: true };
    let Some(node) = node else { return usual };
    let mut made = Booklets { sizes: false, views: false, all: false };
    for item in fields::list(node) {
        let Some(text) = fields::text(item, "a sort of booklet", findings) else { continue };
        match text.text.as_str() {
            "sizes" => made.sizes = true,
            "all" => made.all = true,
            "views" if sizes.iter().any(|size| size.view.is_some()) => made.views = true,
            "views" => findings.push(
                VALUE_UNREADABLE
                    .at(text.span, "the booklet has no views to make a booklet of each")
                    .hint("name the things that the pattern is for under `views:`, or write `booklets: [sizes, all]`"),
            ),
            word => findings.push(
                VALUE_UNREADABLE.at(text.span, format!("`{word}` is no sort of booklet")).hint(did_you_mean(
                    word,
                    BOOKLETS.iter().copied(),
                    "write some of: sizes, views, all",
                )),
            ),
        }
    }
    if fields::list(node).is_empty() {
        let finding = VALUE_UNREADABLE.at(node.span, "this list names no booklet, so nothing is made");
        findings.push(finding.hint("write some of: sizes, views, all; or take the line out"));
    }
    let none = Booklets { sizes: false, views: false, all: false };
    if made == none { usual } else { made }
}

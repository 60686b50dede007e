//! What a link leads to, and what Markdown would not take for a link.
//!
//! A target with spaces in it, such as `[](term:right sides together)`, is hidden before Markdown is
//! parsed, which knows no such links and would print them as they stand.

use std::ops::Range;

use crate::diag::Findings;
use crate::faults::REFERENCE_BROKEN;
use crate::model::{Inline, ReferenceKind};

/// What a target with spaces may begin with; a file or an address has none.
const PREFIXES: &[&str] = &["term:", "piece:", "notion:", "fabric:", "figure:", "#"];

/// The text with the spaces of such targets filled; of the same length in bytes. `code` is where the
/// text holds code.
pub(super) fn hide(text: &str, code: &[Range<usize>]) -> String {
    let mut bytes = text.as_bytes().to_vec();
    let opens = text.match_indices("](").map(|(at, _)| at + 2);
    let opens = opens.filter(|open| !code.iter().any(|range| range.contains(open)));
    for target in opens.filter_map(|open| Some(open..close(text, open)?)) {
        bytes[target].iter_mut().filter(|byte| byte.is_ascii_whitespace()).for_each(|byte| *byte = b'x');
    }
    String::from_utf8(bytes).unwrap_or_else(|_| text.to_owned())
}

/// The end of a target of ours that begins at `open`; `None` when it is another or never closed.
fn close(text: &str, open: usize) -> Option<usize> {
    let rest = &text[open..];
    let end = rest.find([')', '(', '[', ']', '"', '`', '\\'])?;
    let target = &rest[..end];
    let ours = PREFIXES.iter().any(|prefix| target.starts_with(prefix));
    let one_paragraph = target.split('\n').skip(1).all(|line| !line.trim_matches(['>', ' ', '\t', '\r']).is_empty());
    (ours && one_paragraph && rest[end..].starts_with(')')).then_some(open + end)
}

/// A target as it stands in the source between `](` and `)`, its spaces made one; `None` when it
/// has none.
pub(super) fn target(link: &str) -> Option<String> {
    let (_, target) = link.strip_suffix(')')?.rsplit_once("](")?;
    // A target that runs over lines of a quotation carries their marks along.
    let words: Vec<&str> = target.split_whitespace().filter(|word| *word != ">").collect();
    (words.len() > 1 && PREFIXES.iter().any(|prefix| target.starts_with(prefix))).then(|| words.join(" "))
}

/// Reports links that Markdown did not take for any: they would be printed with all their brackets.
pub(super) fn unread(content: &[Inline], findings: &mut Findings) {
    let mut noted = false;
    for inline in content {
        noted |= matches!(inline, Inline::Footnote(_));
        let Inline::Text(text) = inline else { continue };
        let Some(at) = text.text.find("](").filter(|_| text.verbatim) else { continue };
        let finding = REFERENCE_BROKEN
            .at(text.at(at..at + 2), "this link cannot be read, and would be printed with its brackets");
        findings.push(match noted {
            true => finding.hint("put the mark of the footnote behind the link: among a link's words it cannot stand"),
            false => finding.hint(
                "write `[words](#id)` or `![words](figures/name.svg)`: brackets closed, and no space in the address",
            ),
        });
    }
}

/// The kind and the name of what a link of ours leads to; `None` when it leads into the world.
pub(super) fn reference(url: &str) -> Option<(ReferenceKind, String)> {
    if let Some(id) = url.strip_prefix('#') {
        return Some((ReferenceKind::Step, id.to_owned()));
    }
    let (prefix, id) = url.split_once(':')?;
    let kinds = [
        ReferenceKind::Piece,
        ReferenceKind::Notion,
        ReferenceKind::Fabric,
        ReferenceKind::Figure,
        ReferenceKind::Term,
    ];
    let kind = kinds.into_iter().find(|kind| kind.prefix() == prefix)?;
    Some((kind, id.replace("%20", " ")))
}

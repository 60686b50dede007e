//! Waivers: an author's word that a finding in this place is meant.

use super::fields::{self, Fields};
use super::yaml::Node;
use crate::diag::{Findings, Waiver};
use crate::faults::UNKNOWN_NAME;
use crate::source::Span;

/// The keys of a waiver.
pub(super) const KEYS: &[&str] = &["check", "at", "because"];

/// A waiver in a comment, before it is known which step it stands in.
#[derive(Debug, Clone)]
pub(super) struct WaiverNote {
    /// The check.
    pub check: String,
    /// The reason; empty when there is none.
    pub reason: String,
    /// The comment.
    pub span: Span,
}

/// What a piece of HTML turned out to be.
pub(super) enum Comment {
    /// Remarks of the author's, or white space; the waivers among them.
    Remarks(Vec<WaiverNote>),
    /// A remark without an end.
    Unclosed,
    /// Something that asks to be printed.
    Markup,
}

/// Reads `<!-- waive CHECK: reason -->` and other remarks.
pub(super) fn read_comments(html: &str, span: Span) -> Comment {
    let mut waivers = Vec::new();
    let mut rest = html.trim();
    while let Some(inner) = rest.strip_prefix("<!--") {
        let Some((inner, after)) = inner.split_once("-->") else { return Comment::Unclosed };
        waivers.extend(read(inner, span));
        rest = after.trim_start();
    }
    if rest.is_empty() { Comment::Remarks(waivers) } else { Comment::Markup }
}

/// Reads the inside of a comment; `None` when it is no waiver.
pub(super) fn read(inner: &str, span: Span) -> Option<WaiverNote> {
    let rest = inner.trim().strip_prefix("waive ")?;
    let (check, reason) = rest.split_once(':').unwrap_or((rest, ""));
    let check = check.trim().to_owned();
    Some(WaiverNote { check, reason: reason.trim().to_owned(), span })
}

/// Reads the list `waive:` of `booklet.yaml`: each with `check`, `at` (keys from the top, joined by
/// dots; the whole file when left out) and `because`.
pub(super) fn read_list(node: &Node, root: &Node, findings: &mut Findings) -> Vec<Waiver> {
    let mut waivers = Vec::new();
    for item in fields::list(node) {
        let Some(record) = Fields::open_needing(&["check"], item, "a waiver", KEYS, findings) else {
            continue;
        };
        let Some(check) = record.need_text("check", "unused-measurement", findings) else { continue };
        let reason = record.text("because", findings).map(|text| text.text).unwrap_or_default();
        let scope = match record.text("at", findings) {
            None => Some(root.span),
            Some(at) => {
                let found = descend(root, &at.text);
                if found.is_none() {
                    findings.push(
                        UNKNOWN_NAME
                            .at(at.span, format!("the file has nothing at `{}`", at.text))
                            .hint("write the keys from the top, joined by dots: `measurements.seam`"),
                    );
                }
                found
            }
        };
        if let Some(scope) = scope {
            waivers.push(Waiver { check: check.text, reason, scope, span: item.span });
        }
    }
    waivers
}

/// The span of a key and its value, by the keys from the top.
fn descend(root: &Node, path: &str) -> Option<Span> {
    let mut node = root;
    let mut span = None;
    for key in path.split('.') {
        let super::yaml::Value::Map(entries) = &node.value else { return None };
        let (name, value) = entries.iter().find(|(name, _)| name.text == key)?;
        span = Some(Span { end: value.span.end.max(name.span.end), ..name.span });
        node = value;
    }
    span
}

/// A waiver in a comment of a diagram; its scope is still the comment itself.
pub fn comment_waiver(inner: &str, span: Span) -> Option<Waiver> {
    let note = read(inner, span)?;
    Some(Waiver { check: note.check, reason: note.reason, scope: span, span })
}

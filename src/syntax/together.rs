//! How layers lie to each other, and the ends of a strip, in work facts.

use super::fields;
use super::yaml::Node;
use crate::diag::{Findings, did_you_mean};
use crate::faults::{KEY_UNKNOWN, VALUE_UNREADABLE};
use crate::model::{Text, Together, Verb};

/// Which sides lie on each other: `with: wrong sides together`.
pub(super) fn read(node: &Node, verb: Verb, findings: &mut Findings) -> Option<Together> {
    if !matches!(verb, Verb::Sew | Verb::Baste | Verb::Pin | Verb::Topstitch | Verb::Quilt | Verb::Put) {
        let finding = KEY_UNKNOWN.at(node.span, format!("`{}` takes no `with`", verb.word()));
        findings.push(finding.hint(
            "`with: wrong sides together` stands below `sew`, `baste`, `pin`, `topstitch`, `quilt` and `put`; name all else behind the verb",
        ));
        return None;
    }
    let text = fields::text(node, "`with`", findings)?;
    let found = Together::ALL.iter().find(|(word, _)| *word == text.text.trim()).map(|(_, together)| *together);
    if found.is_none() {
        let words = Together::ALL.iter().map(|(word, _)| *word);
        findings.push(
            VALUE_UNREADABLE.at(text.span, format!("`{}` does not say which sides lie on each other", text.text)).hint(
                did_you_mean(&text.text, words, "write `with: right sides together` or `with: wrong sides together`"),
            ),
        );
    }
    found
}

/// Whether plain words say that wrong sides lie on each other.
pub(super) fn in_words(words: &[Text]) -> bool {
    words.iter().any(|words| words.text.contains("wrong sides together"))
}

/// Whether the ends of a strip are turned in: `ends: in`.
pub(super) fn ends_in(node: &Node, findings: &mut Findings) -> bool {
    let Some(text) = fields::text(node, "`ends`", findings) else { return false };
    let known = matches!(text.text.as_str(), "in" | "raw");
    if !known {
        findings.push(
            VALUE_UNREADABLE
                .at(text.span, format!("`{}` does not say what becomes of the ends of the strip", text.text))
                .hint("write `ends: in` where they are turned in, and leave it out where a seam takes them"),
        );
    }
    text.text == "in"
}

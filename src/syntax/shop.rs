//! What a seller uploads: the record `shop:`.

use super::fields::{self, Fields};
use super::yaml::Node;
use crate::diag::{Findings, did_you_mean};
use crate::faults::{OVER_LIMIT, REFERENCE_BROKEN, VALUE_UNREADABLE};
use crate::limits::PREVIEWS;
use crate::model::{Part, Preview, Shop, Text};

/// The keys of `shop:`.
pub(super) const KEYS: &[&str] = &["preview", "letters", "largest"];

/// Reads the record; what is left out has its usual value.
pub(super) fn read(node: Option<&Node>, findings: &mut Findings) -> Shop {
    let mut shop = Shop::default();
    let Some(node) = node else { return shop };
    let Some(record) = Fields::open(node, "`shop`", KEYS, findings) else { return shop };
    let pages = record.get("preview").map(fields::list).unwrap_or_default();
    if let Some(more) = pages.get(PREVIEWS.most) {
        findings.push(OVER_LIMIT.at(more.span, PREVIEWS.fact()).hint(PREVIEWS.act));
    }
    for item in pages.into_iter().take(PREVIEWS.most) {
        let Some(text) = fields::text(item, "a page to show", findings) else { continue };
        shop.preview.push(match (text.text.as_str(), text.text.parse::<usize>()) {
            ("cover", _) => Preview::Page(1, text.span),
            (_, Ok(page)) if page > 0 => Preview::Page(page, text.span),
            (_, Ok(_)) => {
                unreadable(
                    &text,
                    "is no page: they count from 1",
                    "write `cover`, a number or the id of a step",
                    findings,
                );
                continue;
            }
            _ => Preview::Step(text),
        });
    }
    if let Some(text) = record.text("letters", findings) {
        match text.text.replace(',', "").parse::<usize>() {
            Ok(letters) if letters > 0 => shop.letters = Some((letters, text.span)),
            _ => unreadable(&text, "is no number of letters", "write `letters: 4000`", findings),
        }
    }
    if let Some(text) = record.text("largest", findings) {
        match bytes(&text.text) {
            Some(bytes) => shop.largest = Some((bytes, text.span)),
            None => unreadable(&text, "is no size of a file", "write `largest: 20 MB`, or in kB", findings),
        }
    }
    shop
}

fn unreadable(text: &Text, fault: &str, act: &str, findings: &mut Findings) {
    findings.push(VALUE_UNREADABLE.at(text.span, format!("`{}` {fault}", text.text)).hint(act));
}

/// `20 MB` in bytes; a megabyte has a million (ISO/IEC 80000-13 keeps MiB for the other).
fn bytes(text: &str) -> Option<u64> {
    let (number, unit) = text.trim().split_once(' ')?;
    let each = match unit.trim() {
        "kB" | "KB" => 1_000,
        "MB" => 1_000_000,
        _ => return None,
    };
    number.parse::<u64>().ok().filter(|number| *number > 0)?.checked_mul(each)
}

/// Tells steps to be shown that there are not.
pub(super) fn look_at_steps(shop: &Shop, parts: &[Part], findings: &mut Findings) {
    let steps = || parts.iter().flat_map(|part| &part.steps).filter_map(|step| step.id.as_ref());
    for preview in &shop.preview {
        let Preview::Step(name) = preview else { continue };
        if steps().all(|id| id.text != name.text) {
            let names = steps().map(|id| id.text.as_str());
            let otherwise = "write `cover`, the number of a page or the id of a step, such as `sew` for `{#sew}`";
            findings.push(
                REFERENCE_BROKEN
                    .at(name.span, format!("no step is called `{}`, so its page cannot be shown", name.text))
                    .hint(did_you_mean(&name.text, names, otherwise)),
            );
        }
    }
}

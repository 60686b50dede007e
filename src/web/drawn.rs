//! Drawings and pictures as addresses that hold them whole (RFC 2397), so that the page asks for nothing.

use std::collections::{BTreeMap, BTreeSet};
use std::ops::Range;

use base64::Engine as _;
use base64::prelude::BASE64_STANDARD;
use percent_encoding::{AsciiSet, CONTROLS, utf8_percent_encode};
use serde_json::Value as Json;

/// What could end an address that holds text, or begin a part of it.
const MARKED: &AsciiSet = &CONTROLS.add(b'%').add(b'#').add(b'<').add(b'>').add(b'"').add(b'&').add(b'{').add(b'}');

/// The keys under which the data of a booklet names a file.
const NAMED: [&str; 4] = ["path", "swatch", "logo", "cover"];

/// The data with each file's path led to the file itself.
pub(super) fn with_files(data: &Json, files: &BTreeMap<String, Vec<u8>>) -> Json {
    match data {
        Json::Array(items) => items.iter().map(|item| with_files(item, files)).collect(),
        Json::Object(fields) => {
            let field = |(key, value): (&String, &Json)| {
                let file = value.as_str().filter(|_| NAMED.contains(&key.as_str()));
                let file = file.and_then(|path| Some((path, files.get(path)?)));
                let value = match file {
                    Some((path, bytes)) => Json::String(address(path, bytes)),
                    None => with_files(value, files),
                };
                (key.clone(), value)
            };
            Json::Object(fields.iter().map(field).collect())
        }
        other => other.clone(),
    }
}

/// A file as an address.
fn address(path: &str, bytes: &[u8]) -> String {
    let ending = path.rsplit('.').next().unwrap_or_default();
    match (ending, std::str::from_utf8(bytes)) {
        ("svg", Ok(text)) => format!("data:image/svg+xml,{}", utf8_percent_encode(&slim(text), MARKED)),
        _ => {
            let kind = if ending == "jpg" { "jpeg" } else { ending };
            format!("data:image/{kind};base64,{}", BASE64_STANDARD.encode(bytes))
        }
    }
}

/// A drawing without what no reader of it sees: comments, white space around its lines, and those rules, symbols and
/// patterns of the house that it does not use.
fn slim(text: &str) -> String {
    let mut text = without_comments(text);
    // What only an unused symbol used is unused in its turn.
    while let Some(less) = without_unused(&text) {
        text = less;
    }
    let lines = text.lines().map(str::trim).filter(|line| !line.is_empty());
    // A device that lacks the house's typeface sets letters of the same kind.
    lines.collect::<Vec<_>>().join("\n").replace("font-family: \"Noto Sans\"", "font-family: \"Noto Sans\", sans-serif")
}

const SVG: &str = "http://www.w3.org/2000/svg";

/// A drawing without the definitions and rules that nothing in it uses; `None` where it uses all.
fn without_unused(text: &str) -> Option<String> {
    let tree = roxmltree::Document::parse(text).ok()?;
    let classes: BTreeSet<&str> =
        tree.descendants().filter_map(|node| node.attribute("class")).flat_map(str::split_whitespace).collect();
    let mut unused: Vec<Range<usize>> = Vec::new();
    for node in tree.descendants() {
        if node.is_comment() {
            unused.push(node.range());
        } else if node.has_tag_name((SVG, "style")) {
            let words = node.children().filter(|child| child.is_text());
            words.for_each(|words| unused.extend(rules(text, words.range(), &classes)));
        } else if node.parent().is_some_and(|parent| parent.has_tag_name((SVG, "defs")))
            && node.attribute("id").is_some_and(|id| !is_used(text, &node.range(), id))
        {
            unused.push(node.range());
        }
    }
    if unused.is_empty() {
        return None;
    }
    unused.sort_by_key(|range| (range.start, std::cmp::Reverse(range.end)));
    let mut less = String::with_capacity(text.len());
    let mut at = 0;
    // What lies in something that goes, goes with it.
    for range in unused {
        less.push_str(text.get(at..range.start).unwrap_or_default());
        at = at.max(range.end);
    }
    less.push_str(&text[at..]);
    Some(less)
}

/// The rules of a style sheet that are for one class alone which no shape has.
fn rules(text: &str, sheet: Range<usize>, classes: &BTreeSet<&str>) -> Vec<Range<usize>> {
    let mut found = Vec::new();
    let mut start = sheet.start;
    while let Some(end) = text[start..sheet.end].find('}').map(|at| start + at + 1) {
        let selector = text[start..end].split('{').next().unwrap_or_default().trim();
        let plain = |name: &str| name.bytes().all(|byte| byte.is_ascii_alphanumeric() || byte == b'-');
        if selector.strip_prefix('.').is_some_and(|name| plain(name) && !classes.contains(name)) {
            found.push(start..end);
        }
        start = end;
    }
    found
}

/// Whether a name is used anywhere but in its own definition.
fn is_used(text: &str, own: &Range<usize>, id: &str) -> bool {
    let name = format!("#{id}");
    let ends = |at: usize| {
        let next = text[at + name.len()..].chars().next();
        next.is_none_or(|next| !next.is_alphanumeric() && next != '-' && next != '_')
    };
    text.match_indices(&name).any(|(at, _)| !own.contains(&at) && ends(at))
}

/// A drawing's text without the comments of its style sheet.
fn without_comments(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(start) = rest.find("<style") {
        let end = rest[start..].find("</style>").map_or(rest.len(), |end| start + end);
        out.push_str(&rest[..start]);
        let mut style = &rest[start..end];
        while let Some(open) = style.find("/*") {
            out.push_str(&style[..open]);
            style = style[open..].find("*/").map_or("", |close| &style[open + close + 2..]);
        }
        out.push_str(style);
        rest = &rest[end..];
    }
    out.push_str(rest);
    out
}

//! Drawings and pictures as addresses that hold them whole (RFC 2397), so that the page asks for nothing.

use std::collections::BTreeMap;

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

/// A drawing without what no reader of it sees: comments, white space between its tags and rules, and those symbols
/// and patterns of the house that it does not use.
fn slim(text: &str) -> String {
    let text = without_comments(text);
    let Ok(tree) = roxmltree::Document::parse(&text) else { return text };
    let mut unused: Vec<_> = tree
        .descendants()
        .filter(|node| node.has_tag_name((SVG, "defs")))
        .flat_map(|defs| defs.children())
        .filter(|node| node.attribute("id").is_some_and(|id| !is_used(&text, node.range(), id)))
        .map(|node| node.range())
        .collect();
    unused.sort_by_key(|range| std::cmp::Reverse(range.start));
    let mut slim = text.clone();
    unused.into_iter().for_each(|range| slim.replace_range(range, ""));
    let lines = slim.lines().map(str::trim).filter(|line| !line.is_empty());
    lines.collect::<Vec<_>>().join("\n")
}

const SVG: &str = "http://www.w3.org/2000/svg";

/// Whether a name is used anywhere but in its own definition.
fn is_used(text: &str, own: std::ops::Range<usize>, id: &str) -> bool {
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

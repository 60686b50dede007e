//! The one hand for markup: how a drawing is parsed, words made safe for it, and lines as path data.

use std::ops::Range;

use roxmltree::{Document, Error, Node, ParsingOptions};

/// The most attributes of one element: a parser holds each against every other.
const ATTRIBUTES: usize = 200;

/// Why a drawing cannot be read.
#[derive(Debug)]
pub(super) struct Complaint {
    /// The byte that it is about.
    pub at: usize,
    /// What is wrong, without a place.
    pub words: String,
}

/// Reads a drawing, as the author wrote it or with its formulas worked out.
///
/// # Errors
/// When it is no well-formed XML, brings definitions of its own, has more than 200 000 nodes, or an element of it more
/// than 200 attributes.
pub(super) fn parse(text: &str) -> Result<Document<'_>, Complaint> {
    if let Some(at) = crowded(text) {
        return Err(Complaint { at, words: format!("an element has more than {ATTRIBUTES} attributes") });
    }
    let options = ParsingOptions { allow_dtd: false, nodes_limit: 200_000, ..ParsingOptions::default() };
    Document::parse_with_options(text, options).map_err(|error| {
        let words = error.to_string();
        Complaint { at: complaint_at(text, &error), words: words.split(" at ").next().unwrap_or("").to_owned() }
    })
}

/// Where a tag begins that holds more attributes than any drawing needs.
fn crowded(text: &str) -> Option<usize> {
    let (mut start, mut count) = (0, 0);
    let mut quote = None;
    for (at, letter) in text.bytes().enumerate() {
        match (quote, letter) {
            (None, b'<') => (start, count) = (at, 0),
            (None, b'>') => count = 0,
            (None, b'"' | b'\'') if count > 0 => quote = Some(letter),
            (None, b'=') => count += 1,
            (Some(open), letter) if open == letter => quote = None,
            _ => {}
        }
        if count > ATTRIBUTES {
            return Some(start);
        }
    }
    None
}

/// The byte that a parser's complaint is about.
fn complaint_at(text: &str, error: &Error) -> usize {
    let place = error.pos();
    let line: usize = text.split_inclusive('\n').take(place.row.saturating_sub(1) as usize).map(str::len).sum();
    let rest = text.get(line..).unwrap_or("");
    let at: usize = rest.chars().take(place.col.saturating_sub(1) as usize).map(char::len_utf8).sum();
    (line + at).min(text.len())
}

/// How long the tag at the start of `rest` is: `>` may stand inside quotes.
pub(super) fn tag_length(rest: &str) -> usize {
    let mut quote = None;
    for (at, letter) in rest.char_indices() {
        match (quote, letter) {
            (None, '>') => return at + 1,
            (None, '"' | '\'') => quote = Some(letter),
            (Some(open), letter) if open == letter => quote = None,
            _ => {}
        }
    }
    rest.len()
}

/// Whether a node is words that are drawn: titles, descriptions and style sheets are not.
pub(super) fn is_drawn_text(node: Node<'_, '_>) -> bool {
    let parent = node.parent().map(|parent| parent.tag_name().name());
    let hidden = matches!(parent, Some("title" | "desc" | "style" | "metadata"));
    node.is_text() && !hidden && node.ancestors().skip(1).any(|above| above.tag_name().name() == "text")
}

/// Where a drawing may hold formulas: attributes, and words that are drawn (then `true`), in the order of
/// the text.
pub(super) fn places(document: &Document<'_>, text: &str) -> Vec<(Range<usize>, bool)> {
    let mut places: Vec<(Range<usize>, bool)> = Vec::new();
    for node in document.descendants() {
        places.extend(node.attributes().map(|attribute| (attribute.range_value(), false)));
        places.extend(is_drawn_text(node).then(|| (node.range(), true)));
    }
    places.retain(|(range, _)| text[range.clone()].contains('{'));
    places.sort_by_key(|(range, _)| range.start);
    places
}

/// Words as they may stand in markup, between tags and inside quotes alike.
pub(crate) fn escape(words: &str) -> String {
    let mut out = String::with_capacity(words.len());
    for letter in words.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&apos;"),
            letter => out.push(letter),
        }
    }
    out
}

/// Path data with a thousandth of a millimetre.
pub(crate) fn svg_data(path: &kurbo::BezPath) -> String {
    use kurbo::PathEl::{ClosePath, CurveTo, LineTo, MoveTo, QuadTo};
    let point = |point: kurbo::Point| format!("{} {}", number(point.x), number(point.y));
    path.elements()
        .iter()
        .map(|element| match element {
            MoveTo(to) => format!("M{}", point(*to)),
            LineTo(to) => format!("L{}", point(*to)),
            QuadTo(first, to) => format!("Q{} {}", point(*first), point(*to)),
            CurveTo(first, second, to) => format!("C{} {} {}", point(*first), point(*second), point(*to)),
            ClosePath => "Z".to_owned(),
        })
        .collect::<Vec<_>>()
        .join("")
}

fn number(value: f64) -> String {
    let written = format!("{value:.3}");
    let written = written.trim_end_matches('0').trim_end_matches('.');
    if written == "-0" { "0".to_owned() } else { written.to_owned() }
}

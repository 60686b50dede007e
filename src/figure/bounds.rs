//! What no line drawing needs, and what would stall whoever draws it: found in the markup, before anything is drawn.
//!
//! Filters, and masks or patterns in one another, can ask for any work in a few letters; shapes that are used again can
//! be a hundred million after ten lines. A drawing with any of these is refused whole.

use std::collections::HashMap;
use std::ops::Range;

use roxmltree::{Attribute, Document, Node};

use super::markup::tag_length;
use crate::limits::{DOTS, DRAWN, ELEMENTS, ELEMENTS_DEEP, FIGURE_LETTERS, Limit, PATH_NUMBERS, RULES};

/// A number in a drawing that is further out than this, in the drawing's units, is a slip: paper is 210 mm wide.
const FARTHEST: f64 = 1e6;
/// The least side of a pattern's tile and the least length of a round of dashes, in the drawing's units.
const FINEST: f64 = 0.01;
/// How deep what is used may lie in what uses it, elements in one another counted too.
const DEEPEST: usize = 300;

/// Why a drawing is refused.
#[derive(Debug)]
pub(super) struct Refused {
    /// Where, in the text that was parsed.
    pub range: Range<usize>,
    /// What is wrong.
    pub message: String,
    /// What to do.
    pub hint: String,
}

/// The first reason to refuse a drawing; `bound` says whether its formulas are worked out.
pub(super) fn refused(document: &Document<'_>, text: &str, bound: bool) -> Option<Refused> {
    let mut look = Look { text, bound, count: 0, numbers: 0, letters: 0, rules: 0 };
    let faults = document.descendants().filter(|node| node.is_element() || node.is_text());
    // Told in the order of the drawing; what is drawn again is reckoned when the rest is known to be small.
    faults.into_iter().find_map(|node| look.node(node)).or_else(|| Again::new(document, text).too_much())
}

struct Look<'t> {
    text: &'t str,
    bound: bool,
    count: usize,
    numbers: usize,
    letters: usize,
    rules: usize,
}

impl Look<'_> {
    fn node(&mut self, node: Node<'_, '_>) -> Option<Refused> {
        if node.is_text() {
            return self.words(node);
        }
        self.count += 1;
        if self.count > ELEMENTS.most {
            return Some(over(ELEMENTS, self.tag(node)));
        }
        if node.ancestors().nth(ELEMENTS_DEEP.most).is_some() {
            return Some(over(ELEMENTS_DEEP, self.tag(node)));
        }
        let name = node.tag_name().name();
        if name == "filter" || name.starts_with("fe") && name.get(2..3).is_some_and(|next| next != "t") {
            return Some(plain(self.tag(node), format!("a drawing may hold no filter (`<{name}>`)"), WITHOUT));
        }
        node.attributes().find_map(|attribute| self.attribute(node, attribute))
    }

    fn tag(&self, node: Node<'_, '_>) -> Range<usize> {
        let start = node.range().start;
        start..start + tag_length(&self.text[start..])
    }

    fn words(&mut self, node: Node<'_, '_>) -> Option<Refused> {
        let words = node.text().unwrap_or("");
        if node.parent().is_some_and(|parent| parent.tag_name().name() == "style") {
            self.rules += words.matches('{').count();
            if self.rules > RULES.most {
                return Some(over(RULES, node.range()));
            }
            return filters(words).map(|at| {
                let start = node.range().start + at.start;
                plain(start..start + at.len(), "a drawing may hold no filter".into(), WITHOUT)
            });
        }
        self.letters += words.trim().len();
        (self.letters > FIGURE_LETTERS.most).then(|| over(FIGURE_LETTERS, node.range()))
    }

    fn attribute(&mut self, node: Node<'_, '_>, attribute: Attribute<'_, '_>) -> Option<Refused> {
        let (value, range) = (attribute.value(), attribute.range_value());
        match attribute.name() {
            "filter" | "backdrop-filter" if value != "none" => {
                Some(plain(range, "a drawing may hold no filter".into(), WITHOUT))
            }
            "style" if filters(value).is_some() => Some(plain(range, "a drawing may hold no filter".into(), WITHOUT)),
            "mask" | "clip-path" if in_one_another(node) => Some(plain(
                range,
                "masks and cut-outs may not lie in one another".into(),
                "use one mask or one `clipPath`, and draw the rest with shapes",
            )),
            "fill" | "stroke" | "marker-start" | "marker-mid" | "marker-end"
                if value.contains("url(") && in_one_another(node) =>
            {
                Some(plain(
                    range,
                    "patterns and marks may not be filled with others".into(),
                    "give what lies in a pattern, a mark or a mask a plain colour",
                ))
            }
            "d" | "points" => {
                self.numbers += numbers(value);
                let more = self.numbers > PATH_NUMBERS.most;
                more.then(|| over(PATH_NUMBERS, self.tag(node))).or_else(|| self.far(value, range))
            }
            "stroke-dasharray" if fine(value) => Some(plain(
                range,
                "these dashes are too short to be seen".into(),
                "use a class of the house, or make them 1 mm and longer",
            )),
            "width" | "height" if node.tag_name().name() == "pattern" && fine(value) => Some(plain(
                range,
                "the tile of this pattern is too small to be seen".into(),
                "use a class of the house, or a larger tile",
            )),
            "href" => picture(value).map(|(message, hint)| plain(range, message, hint)),
            "x" | "y" | "x1" | "x2" | "y1" | "y2" | "cx" | "cy" | "r" | "rx" | "ry" | "dx" | "dy" | "width"
            | "height" | "transform" | "patternTransform" | "gradientTransform" | "viewBox" | "font-size"
            | "stroke-width" | "letter-spacing" | "word-spacing" | "textLength" => self.far(value, range),
            _ => None,
        }
    }

    /// Numbers out of all measure; before formulas are worked out only where there are none.
    fn far(&self, value: &str, range: Range<usize>) -> Option<Refused> {
        if !self.bound && value.contains('{') {
            return None;
        }
        let far = each_number(value).find(|number| !number.is_finite() || number.abs() > FARTHEST)?;
        let message = format!("the number {far:e} lies far outside of any paper");
        Some(plain(range, message, "mend it; where a formula stands there, see what it comes to"))
    }
}

const WITHOUT: &str = "draw it with lines and plain fills, which is what prints well";

fn over(limit: Limit, range: Range<usize>) -> Refused {
    Refused { range, message: limit.fact(), hint: limit.act.into() }
}

fn plain(range: Range<usize>, message: String, hint: &str) -> Refused {
    Refused { range, message, hint: hint.into() }
}

/// Where a style asks for a filter.
fn filters(style: &str) -> Option<Range<usize>> {
    let at = style.find("filter").filter(|at| style[at + 6..].trim_start().starts_with(':'))?;
    let none = style[at + 6..].trim_start().trim_start_matches(':').trim_start().starts_with("none");
    (!none).then_some(at..at + 6)
}

/// Whether an element is, or lies in, what is drawn through or repeated.
fn in_one_another(node: Node<'_, '_>) -> bool {
    node.ancestors().any(|above| matches!(above.tag_name().name(), "mask" | "clipPath" | "pattern" | "marker"))
}

/// How many numbers a list holds, at the least.
fn numbers(value: &str) -> usize {
    let mut count = 0;
    let mut inside = false;
    for letter in value.bytes() {
        let part = letter.is_ascii_digit() || letter == b'.';
        count += usize::from(part && !inside);
        inside = part;
    }
    count
}

/// The numbers in a value, whatever stands between them.
fn each_number(value: &str) -> impl Iterator<Item = f64> + '_ {
    let part = |letter: char| letter.is_ascii_digit() || matches!(letter, '.' | 'e' | 'E' | '-' | '+');
    value
        .split(move |letter| !part(letter))
        .filter(|word| word.contains(|letter: char| letter.is_ascii_digit()))
        .filter_map(|word| match word.parse::<f64>() {
            Ok(number) => Some(number),
            // Numbers that stand close together, `1-2`, hold no power of ten unless it is written out.
            Err(_) => word
                .split(['-', '+'])
                .filter_map(|one| one.trim_end_matches(['e', 'E']).parse::<f64>().ok())
                .fold(None, |most: Option<f64>, one| Some(most.map_or(one, |most| most.max(one)))),
        })
}

/// Whether a length, or a round of lengths, is too short to be seen; nothing at all stands for none.
fn fine(value: &str) -> bool {
    let sum: f64 = each_number(value).map(f64::abs).sum();
    sum > 0.0 && sum < FINEST
}

/// What is wrong with a picture in a drawing.
fn picture(value: &str) -> Option<(String, &'static str)> {
    let data = value.strip_prefix("data:image/")?;
    if data.starts_with("svg") {
        return Some(("a drawing may hold no other drawing as a picture".into(), "put its shapes into this drawing"));
    }
    let bytes = decoded(data.split_once("base64,")?.1);
    let size = imagesize::blob_size(&bytes).ok()?;
    let dots = size.width.saturating_mul(size.height);
    (dots > DOTS.most).then(|| (DOTS.fact(), DOTS.act))
}

/// The first bytes of a picture, which tell how large it is (RFC 4648, section 4).
fn decoded(letters: &str) -> Vec<u8> {
    let value = |letter: u8| match letter {
        b'A'..=b'Z' => Some(u32::from(letter - b'A')),
        b'a'..=b'z' => Some(u32::from(letter - b'a') + 26),
        b'0'..=b'9' => Some(u32::from(letter - b'0') + 52),
        b'+' => Some(62),
        b'/' => Some(63),
        _ => None,
    };
    let mut bytes = Vec::new();
    let (mut word, mut bits) = (0u32, 0);
    for six in letters.bytes().filter_map(value) {
        word = (word << 6 | six) & 0x00ff_ffff;
        bits += 6;
        if bits >= 8 {
            bits -= 8;
            bytes.push((word >> bits & 0xff) as u8);
        }
    }
    bytes
}

/// What a drawing comes to with all that is used again drawn out.
struct Again<'d, 'i> {
    document: &'d Document<'i>,
    text: &'d str,
    by_id: HashMap<&'d str, Node<'d, 'i>>,
    /// What each element comes to; `None` while it is being reckoned, so that what draws itself is found.
    known: HashMap<roxmltree::NodeId, Option<usize>>,
}

impl<'d, 'i> Again<'d, 'i> {
    fn new(document: &'d Document<'i>, text: &'d str) -> Self {
        let by_id = document.descendants().filter_map(|node| Some((node.attribute("id")?, node))).collect();
        Again { document, text, by_id, known: HashMap::new() }
    }

    fn too_much(mut self) -> Option<Refused> {
        let root = self.document.root_element();
        let tag = 0..tag_length(self.text).max(1);
        match self.size(root, 0) {
            Some(size) if size <= DRAWN.most => None,
            Some(_) => Some(over(DRAWN, root.range().start..root.range().start + tag.len().min(root.range().len()))),
            None => Some(plain(
                root.range().start..root.range().start + 1,
                "a group of this drawing is used within itself".into(),
                "take the `<use>` out that leads back to what holds it",
            )),
        }
    }

    /// How many shapes an element draws, more than enough where it uses what uses what uses … too often; `None` where it
    /// draws itself.
    fn size(&mut self, node: Node<'d, 'i>, deep: usize) -> Option<usize> {
        if deep > DEEPEST {
            return Some(usize::MAX);
        }
        if let Some(known) = self.known.get(&node.id()) {
            return *known;
        }
        self.known.insert(node.id(), None);
        let mut sum = 1usize;
        for child in node.children().filter(Node::is_element) {
            sum = sum.saturating_add(self.size(child, deep + 1)?);
        }
        if let Some(used) = used(node).and_then(|id| self.by_id.get(id).copied()) {
            sum = sum.saturating_add(self.size(used, deep + 1)?);
        }
        let corners = node.attribute("d").or_else(|| node.attribute("points")).map_or(0, |d| numbers(d) / 2);
        for name in ["marker-start", "marker-mid", "marker-end"] {
            let marker = node.attribute(name).and_then(referred).and_then(|id| self.by_id.get(id).copied());
            if let Some(marker) = marker {
                sum = sum.saturating_add(self.size(marker, deep + 1)?.saturating_mul(corners));
            }
        }
        self.known.insert(node.id(), Some(sum));
        Some(sum)
    }
}

fn used<'d>(node: Node<'d, '_>) -> Option<&'d str> {
    let href = node.attributes().find(|attribute| attribute.name() == "href")?;
    (node.tag_name().name() == "use").then(|| href.value().strip_prefix('#'))?
}

fn referred(value: &str) -> Option<&str> {
    value.trim().strip_prefix("url(#")?.strip_suffix(')')
}

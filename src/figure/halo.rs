//! Words with their white edges beneath them, as shapes of their own.
//!
//! The typesetter paints an SVG's letters one by one, each with its edge, so that the edge of a letter eats into the one
//! before it. Edges that lie below the whole word leave all letters whole.

use std::fmt::Write as _;
use std::ops::Range;
use std::sync::Arc;

use usvg::tiny_skia_path::PathSegment;
use usvg::{Node, Paint, PaintOrder, fontdb};

use super::picture;
use crate::source::House;

/// What the words of a drawing are called while they are looked for.
const NAME: &str = "nb-words-";

/// The typefaces in which words are set.
pub struct Letters {
    database: Arc<fontdb::Database>,
}

impl Letters {
    /// Those of the house or of the booklet.
    pub fn new(house: &House) -> Letters {
        Letters { database: picture::fonts(house).0 }
    }

    /// The drawing with the edges of its words beneath them; as it was where it has none, or cannot be read.
    pub fn edges_beneath(&self, svg: &str) -> String {
        edges_beneath(svg, &self.database)
    }
}

fn edges_beneath(svg: &str, database: &Arc<fontdb::Database>) -> String {
    if !svg.contains("paint-order") {
        return svg.to_owned();
    }
    let Ok(document) = roxmltree::Document::parse(svg) else { return svg.to_owned() };
    let texts: Vec<roxmltree::Node<'_, '_>> =
        document.descendants().filter(|node| node.tag_name().name() == "text").collect();
    // Each is found again by a name of its own, which stands before any other that it has.
    let mut named = Edits::default();
    for (at, text) in texts.iter().enumerate() {
        match text.attribute_node("id") {
            Some(id) => named.put(id.range_value(), format!("{NAME}{at}")),
            None => named.insert(after_name(text), format!(" id=\"{NAME}{at}\"")),
        }
    }
    let Ok(tree) = usvg::Tree::from_str(&named.made(svg), &picture::options(database)) else {
        return svg.to_owned();
    };
    let mut edges = vec![String::new(); texts.len()];
    gather(tree.root(), &mut edges);
    let mut edits = Edits::default();
    for (text, edges) in texts.iter().zip(edges).filter(|(_, edges)| !edges.is_empty()) {
        let moved = text.attribute("transform").map_or(String::new(), |by| format!(" transform=\"{by}\""));
        edits.insert(text.range().start, format!("<g{moved}>{edges}</g>"));
        for words in text.descendants().filter(roxmltree::Node::is_element) {
            match words.attribute_node("style") {
                Some(style) => edits.insert(style.range_value().end, ";stroke:none".to_owned()),
                None => edits.insert(after_name(&words), " style=\"stroke:none\"".to_owned()),
            }
        }
    }
    edits.made(svg)
}

/// The place behind the name of an element.
fn after_name(node: &roxmltree::Node<'_, '_>) -> usize {
    let tag = &node.document().input_text()[node.range()];
    node.range().start + tag.find(|sign: char| sign.is_whitespace() || sign == '/' || sign == '>').unwrap_or(1)
}

/// The edges of the words below a group that lie beneath their letters, by the number in their names.
fn gather(group: &usvg::Group, edges: &mut [String]) {
    for node in group.children() {
        match node {
            Node::Group(inner) => gather(inner, edges),
            Node::Text(text) => {
                let at = text.id().strip_prefix(NAME).and_then(|at| at.parse::<usize>().ok());
                if let Some(own) = at.and_then(|at| edges.get_mut(at)) {
                    text.flattened().children().iter().filter_map(edge).for_each(|edge| own.push_str(&edge));
                }
            }
            Node::Path(_) | Node::Image(_) => {}
        }
    }
}

/// The edge of the letters of one run.
fn edge(letters: &Node) -> Option<String> {
    let Node::Path(path) = letters else { return None };
    let stroke = path.stroke().filter(|_| path.paint_order() == PaintOrder::StrokeAndFill && path.is_visible())?;
    let Paint::Color(colour) = stroke.paint() else { return None };
    let mut data = String::new();
    for segment in path.data().segments() {
        let written = match segment {
            PathSegment::MoveTo(to) => write!(data, "M{:.3} {:.3}", to.x, to.y),
            PathSegment::LineTo(to) => write!(data, "L{:.3} {:.3}", to.x, to.y),
            PathSegment::QuadTo(by, to) => write!(data, "Q{:.3} {:.3} {:.3} {:.3}", by.x, by.y, to.x, to.y),
            PathSegment::CubicTo(one, two, to) => {
                write!(data, "C{:.3} {:.3} {:.3} {:.3} {:.3} {:.3}", one.x, one.y, two.x, two.y, to.x, to.y)
            }
            PathSegment::Close => write!(data, "Z"),
        };
        written.ok()?;
    }
    let usvg::Color { red, green, blue } = *colour;
    let wide = stroke.width().get();
    Some(format!(
        "<path d=\"{data}\" style=\"fill:none;stroke:#{red:02x}{green:02x}{blue:02x};stroke-width:{wide};stroke-linejoin:round\"/>"
    ))
}

/// Changes to a text, in any order, none within another.
#[derive(Default)]
struct Edits(Vec<(Range<usize>, String)>);

impl Edits {
    fn put(&mut self, at: Range<usize>, words: String) {
        self.0.push((at, words));
    }

    fn insert(&mut self, at: usize, words: String) {
        self.put(at..at, words);
    }

    fn made(mut self, text: &str) -> String {
        self.0.sort_by_key(|(at, _)| at.start);
        let mut made = String::with_capacity(text.len() + self.0.iter().map(|(_, words)| words.len()).sum::<usize>());
        let mut from = 0;
        for (at, words) in self.0 {
            made.push_str(&text[from..at.start]);
            made.push_str(&words);
            from = at.end;
        }
        made + &text[from..]
    }
}

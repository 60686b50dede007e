//! How wide words are in the booklet's own style, so that labels can be kept apart and inside the
//! frame.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::sync::Arc;

use usvg::fontdb;

use super::dress::Dresser;
use super::markup::escape;
use super::picture;

/// Height of a label's line over the size of its type, from baseline to baseline.
const LEADING: f64 = 1.27;

/// Measures labels, each only once.
pub(crate) struct Ruler<'a> {
    dresser: &'a Dresser,
    database: &'a Arc<fontdb::Database>,
    known: RefCell<BTreeMap<String, (f64, f64)>>,
}

impl<'a> Ruler<'a> {
    pub(super) fn new(dresser: &'a Dresser, database: &'a Arc<fontdb::Database>) -> Ruler<'a> {
        Ruler { dresser, database, known: RefCell::default() }
    }

    /// The width of a label in mm.
    pub fn width(&self, words: &str) -> f64 {
        self.measure(words).0
    }

    /// The size of a label's type in mm.
    pub fn type_size(&self) -> f64 {
        self.measure("x").1
    }

    /// From one line's baseline to the next, in mm.
    pub fn line(&self) -> f64 {
        self.type_size() * LEADING
    }

    fn measure(&self, words: &str) -> (f64, f64) {
        if let Some(known) = self.known.borrow().get(words) {
            return *known;
        }
        let root = r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 40" width="400mm" height="40mm">"#;
        let label = format!("<text class=\"label\" x=\"10\" y=\"20\">{}</text>", escape(words));
        let dressed = self.dresser.dress_label(root, &label);
        let tree = usvg::Tree::from_str(&dressed, &picture::options(self.database)).ok();
        let measured = tree.as_ref().and_then(|tree| text_in(tree.root()));
        // Words without a single sign that the fonts hold take no room.
        let measured = measured.unwrap_or((0.0, 2.9));
        self.known.borrow_mut().insert(words.to_owned(), measured);
        measured
    }
}

/// Width and type size of the first words of a drawing, in its own units.
fn text_in(group: &usvg::Group) -> Option<(f64, f64)> {
    group.children().iter().find_map(|node| match node {
        usvg::Node::Group(inner) => text_in(inner),
        usvg::Node::Text(text) => {
            let size =
                text.chunks().iter().flat_map(|chunk| chunk.spans()).map(|span| span.font_size().get()).next()?;
            Some((f64::from(text.bounding_box().width()), f64::from(size)))
        }
        _ => None,
    })
}

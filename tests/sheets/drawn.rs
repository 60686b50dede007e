//! A sheet's drawing as another program reads it: stretches by class, words with their places.

use kurbo::{BezPath, PathEl, Point};
use roxmltree::Document;

/// What one page shows, in mm from its upper left corner.
pub struct Drawn {
    /// Width and height of the page.
    pub size: (f64, f64),
    /// Each straight stretch, with the classes of its path.
    pub lines: Vec<(String, Point, Point)>,
    /// Words, with the left end of their base line.
    pub words: Vec<(String, Point)>,
}

impl Drawn {
    pub fn of(svg: &str) -> Drawn {
        let document = Document::parse(svg).expect("a drawing that another library reads");
        let root = document.root_element();
        let number = |text: &str| {
            text.trim_end_matches("mm")
                .parse::<f64>()
                .expect("a number")
        };
        let size = |name: &str| number(root.attribute(name).expect("the size of the page"));
        let size = (size("width"), size("height"));
        // One unit of the drawing is one millimetre of paper.
        let view = root.attribute("viewBox").expect("a view box");
        let view: Vec<f64> = view.split_whitespace().map(number).collect();
        assert_eq!(view, [0.0, 0.0, size.0, size.1]);
        let mut drawn = Drawn {
            size,
            lines: Vec::new(),
            words: Vec::new(),
        };
        for node in root.descendants().filter(|node| node.is_element()) {
            assert!(node.attribute("transform").is_none(), "a hidden scale");
            match node.tag_name().name() {
                "svg" | "style" => {}
                "path" => drawn.path(
                    node.attribute("class").unwrap_or(""),
                    node.attribute("d").expect("path data"),
                ),
                "text" => {
                    let at = |name: &str| number(node.attribute(name).expect("a place"));
                    let words = node.text().unwrap_or("").to_owned();
                    drawn.words.push((words, Point::new(at("x"), at("y"))));
                }
                other => panic!("an element that this reader does not know: {other}"),
            }
        }
        drawn
    }

    fn path(&mut self, class: &str, data: &str) {
        let path = BezPath::from_svg(data).expect("path data");
        let (mut start, mut last) = (Point::ZERO, Point::ZERO);
        for element in path.elements() {
            let to = match *element {
                PathEl::MoveTo(to) => {
                    (start, last) = (to, to);
                    continue;
                }
                PathEl::LineTo(to) => to,
                PathEl::ClosePath => start,
                PathEl::QuadTo(..) | PathEl::CurveTo(..) => {
                    panic!("a curve that was not cut at the window")
                }
            };
            self.lines.push((class.to_owned(), last, to));
            last = to;
        }
    }

    /// The stretches of one class.
    pub fn class<'a>(&'a self, class: &'a str) -> impl Iterator<Item = (Point, Point)> + 'a {
        self.lines
            .iter()
            .filter(move |(own, ..)| own.split(' ').any(|one| one == class))
            .map(|(_, from, to)| (*from, *to))
    }

    /// Whether some words are on the page, just so.
    pub fn says(&self, words: &str) -> bool {
        self.words.iter().any(|(own, _)| own == words)
    }

    /// Whether some words hold these.
    pub fn mentions(&self, words: &str) -> bool {
        self.words.iter().any(|(own, _)| own.contains(words))
    }
}

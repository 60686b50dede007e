//! A PDF as another reader sees it (lopdf): pages, text, dictionaries.

use lopdf::{Dictionary, Document, Object};

/// A booklet as read back.
pub struct Read {
    pub document: Document,
}

impl Read {
    pub fn of(pdf: &[u8]) -> Read {
        Read {
            document: Document::load_mem(pdf).expect("a PDF that another library reads"),
        }
    }

    pub fn catalog(&self) -> &Dictionary {
        self.document.catalog().expect("a catalogue")
    }

    /// What stands under a key, references followed; `None` when nothing does.
    pub fn get<'a>(&'a self, dictionary: &'a Dictionary, key: &str) -> Option<&'a Object> {
        let object = dictionary.get(key.as_bytes()).ok()?;
        self.document
            .dereference(object)
            .ok()
            .map(|(_, object)| object)
    }

    pub fn dictionary<'a>(
        &'a self,
        dictionary: &'a Dictionary,
        key: &str,
    ) -> Option<&'a Dictionary> {
        self.get(dictionary, key)?.as_dict().ok()
    }

    /// A text string (ISO 32000-1, 7.9.2.2).
    pub fn words(&self, dictionary: &Dictionary, key: &str) -> Option<String> {
        lopdf::decode_text_string(self.get(dictionary, key)?).ok()
    }

    pub fn name<'a>(&'a self, dictionary: &'a Dictionary, key: &str) -> Option<&'a [u8]> {
        self.get(dictionary, key)?.as_name().ok()
    }

    /// Width and height of each page, in mm (a point is 1/72 inch, ISO 32000-1, 8.3.2.3).
    pub fn pages(&self) -> Vec<[f64; 2]> {
        let ids = self.document.get_pages();
        ids.values()
            .map(|id| {
                let page = self.document.get_dictionary(*id).expect("a page");
                let media = self
                    .get(page, "MediaBox")
                    .and_then(|media| media.as_array().ok())
                    .expect("a MediaBox");
                let side = |at: usize| f64::from(media[at].as_float().expect("a number"));
                [side(2) - side(0), side(3) - side(1)].map(|points| points * 25.4 / 72.0)
            })
            .collect()
    }

    /// All words, page by page, with single spaces between them.
    pub fn text(&self) -> String {
        let numbers: Vec<u32> = self.document.get_pages().keys().copied().collect();
        let text = self
            .document
            .extract_text(&numbers)
            .expect("text that another library reads");
        let mut words = String::new();
        let lines: Vec<&str> = text.lines().collect();
        let single = |line: &&str| line.chars().count() == 1;
        let mut at = 0;
        while at < lines.len() {
            // Words in diagrams are drawn letter by letter, and come back so.
            let run = lines[at..].iter().take_while(|line| single(line)).count();
            let letters = if run > 3 { run } else { 1 };
            words.extend(lines[at..at + letters].iter().copied());
            words.push(' ');
            at += letters;
        }
        words.split_whitespace().collect::<Vec<_>>().join(" ")
    }

    /// The titles of the bookmarks, in order, each with its depth.
    pub fn bookmarks(&self) -> Vec<(usize, String)> {
        let mut found = Vec::new();
        if let Some(outlines) = self.dictionary(self.catalog(), "Outlines") {
            self.bookmarks_below(outlines, 1, &mut found);
        }
        found
    }

    fn bookmarks_below(&self, parent: &Dictionary, depth: usize, found: &mut Vec<(usize, String)>) {
        let mut next = self.dictionary(parent, "First");
        while let Some(item) = next {
            found.push((
                depth,
                self.words(item, "Title").expect("a bookmark's title"),
            ));
            self.bookmarks_below(item, depth + 1, found);
            next = self.dictionary(item, "Next");
        }
    }

    /// Every dictionary of the file, streams' included.
    pub fn dictionaries(&self) -> impl Iterator<Item = &Dictionary> {
        self.document
            .objects
            .values()
            .filter_map(|object| match object {
                Object::Dictionary(dictionary) => Some(dictionary),
                Object::Stream(stream) => Some(&stream.dict),
                _ => None,
            })
    }
}

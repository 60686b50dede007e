//! How much of anything a booklet may hold: far above what any booklet needs, and low enough that nothing that
//! is sent in can stall the program. Each limit stands here once; the README prints this table.

/// A limit by count.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Limit {
    /// The most that there may be.
    pub most: usize,
    /// What is counted, as people know it, in the plural.
    pub what: &'static str,
    /// What to do where there is more.
    pub act: &'static str,
}

impl Limit {
    const fn new(most: usize, what: &'static str, act: &'static str) -> Limit {
        Limit { most, what, act }
    }

    /// What is wrong where there is more: "more than 200 pieces stand here".
    pub fn fact(&self) -> String {
        format!("there are more than {} {} here", thousands(self.most), self.what)
    }
}

/// Text files, all of a booklet together.
pub const TEXT: Limit =
    Limit::new(8_000_000, "bytes of text in one booklet", "share the pattern out among several booklets");
/// One record of a YAML file.
pub const KEYS: Limit = Limit::new(2_000, "keys in one record", "take out what is not needed");
/// One list of a YAML file.
pub const ENTRIES: Limit = Limit::new(2_000, "entries in one list", "take out what is not needed");
/// One YAML file.
pub const VALUES: Limit = Limit::new(50_000, "values in one file of facts", "take out what is not needed");
/// Sizes of a pattern.
pub const SIZES: Limit = Limit::new(60, "sizes", "share the sizes out among several booklets");
/// Pieces of a pattern.
pub const PIECES: Limit = Limit::new(200, "pieces", "share the pattern out among several booklets");
/// Copies of one piece.
pub const COPIES: Limit = Limit::new(500, "copies of one piece", "check the number");
/// Notches of one piece.
pub const NOTCHES: Limit = Limit::new(200, "notches on one piece", "check the list");
/// Parts of a booklet, one listed again counted again.
pub const PARTS: Limit = Limit::new(100, "parts in one booklet", "check the list under `parts:`");
/// Steps of a booklet.
pub const STEPS: Limit = Limit::new(3_000, "steps in one booklet", "share the work out among several booklets");
/// Questions of a booklet.
pub const QUESTIONS: Limit = Limit::new(500, "questions in one booklet", "keep those that makers ask most");
/// Facts under `work` in one step.
pub const WORKS: Limit = Limit::new(200, "facts of work in one step", "share the work out among several steps");
/// Edges or pieces of one fact of work.
pub const LAYERS: Limit = Limit::new(200, "things in one fact of work", "write several facts");
/// Braces and references of one text.
pub const BRACES: Limit =
    Limit::new(20_000, "braces and references in one part", "share the text out among several files");
/// Choices in one another.
pub const CHOICES_DEEP: Limit = Limit::new(8, "choices in one another", "write the words of each size out");
/// Pictures of one step.
pub const PICTURES: Limit = Limit::new(50, "pictures in one step", "share the step out among several");
/// Columns of a table in the words.
pub const COLUMNS: Limit = Limit::new(40, "columns in one table", "write a table with fewer columns");
/// Waivers of a booklet.
pub const WAIVERS: Limit = Limit::new(1_000, "waivers in one booklet", "mend what is waived");
/// Letters of the words of one size, with all that is handed over put in.
pub const LETTERS: Limit = Limit::new(4_000_000, "letters in the words of one size", "hand over shorter words");
/// Elements of a drawing.
pub const ELEMENTS: Limit = Limit::new(20_000, "elements in one drawing", "draw it with fewer shapes");
/// Elements in one another.
pub const ELEMENTS_DEEP: Limit = Limit::new(100, "elements in one another", "take groups apart that hold one thing");
/// What a drawing comes to with everything that is used again drawn out.
pub const DRAWN: Limit =
    Limit::new(50_000, "shapes in one drawing, what is used again counted again", "draw it with fewer shapes");
/// Numbers in the paths of a drawing.
pub const PATH_NUMBERS: Limit =
    Limit::new(200_000, "numbers in the paths of one drawing", "simplify the lines in a drawing program");
/// Letters that a drawing shows.
pub const FIGURE_LETTERS: Limit =
    Limit::new(20_000, "letters in one drawing", "write what is to be read into the step");
/// Rules of a drawing's style sheet.
pub const RULES: Limit = Limit::new(500, "rules in one style sheet", "use the house's classes");
/// Dots of a picture.
pub const DOTS: Limit =
    Limit::new(25_000_000, "dots in one picture", "save it smaller: 2,000 dots across are enough for a page");
/// Lines and curves of a piece's outline.
pub const SEGMENTS: Limit =
    Limit::new(2_000, "lines and curves in one outline", "simplify the outline in a drawing program");
/// Glyphs of a typeface.
pub const GLYPHS: Limit = Limit::new(30_000, "letters in one typeface", "save the typeface with fewer letters");
/// The manifest of an edition.
pub const MANIFEST: Limit = Limit::new(60_000_000, "bytes in one manifest", "take the manifest as it was published");
/// Pages that are shown in a shop.
pub const PREVIEWS: Limit = Limit::new(20, "pages to show in one shop", "choose those that tell the most");
/// Findings that are shown to people.
pub const SHOWN: Limit = Limit::new(200, "findings shown", "mend these first");
/// Findings that are handed on to programs.
pub const HANDED_ON: Limit = Limit::new(5_000, "findings handed on as JSON", "mend these first");

/// All of them, in the order in which they are printed.
pub const ALL: &[Limit] = &[
    TEXT,
    KEYS,
    ENTRIES,
    VALUES,
    SIZES,
    PIECES,
    COPIES,
    NOTCHES,
    PARTS,
    STEPS,
    QUESTIONS,
    WORKS,
    LAYERS,
    BRACES,
    CHOICES_DEEP,
    PICTURES,
    COLUMNS,
    WAIVERS,
    LETTERS,
    ELEMENTS,
    ELEMENTS_DEEP,
    DRAWN,
    PATH_NUMBERS,
    FIGURE_LETTERS,
    RULES,
    DOTS,
    SEGMENTS,
    GLYPHS,
    MANIFEST,
    PREVIEWS,
    SHOWN,
    HANDED_ON,
];

/// A count with commas between its thousands, as English writes it.
pub fn thousands(number: usize) -> String {
    let digits = number.to_string();
    let mut written = String::new();
    for (at, digit) in digits.chars().enumerate() {
        if at > 0 && (digits.len() - at).is_multiple_of(3) {
            written.push(',');
        }
        written.push(digit);
    }
    written
}

//! What words of a language mean to the checks of words: numbers, opposites, things with two names.

use std::collections::BTreeMap;

use serde::Deserialize;

/// Words of the same meaning.
pub type Words = Vec<String>;
/// Two meanings of which a thing can have only one, or two names for one thing.
pub type Pair = [Words; 2];

/// Groups of phrases of which one each stands in a sentence, in this order. A phrase that ends in a full stop has
/// nothing else behind it.
#[derive(Debug, Clone, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Hazard {
    /// How many words may stand between two of them.
    pub reach: usize,
    /// The groups.
    pub chain: Vec<Words>,
    /// What comes of it, where it is the cloth that is harmed.
    #[serde(default)]
    pub because: String,
}

/// How cloth is laid before the pieces are cut.
#[derive(Debug, Clone, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ClothLies {
    /// To fold it.
    pub fold: Words,
    /// The cloth itself.
    pub cloth: Words,
    /// What may follow it where it is no part of a longer name.
    pub after: Words,
    /// One layer alone.
    pub flat: Words,
    /// A fold from selvedge to selvedge.
    pub across: Words,
    /// How a piece is cut at the fold.
    pub on_fold: Words,
}

/// The words of one language. Phrases are written in lower case, with single spaces.
#[derive(Debug, Clone, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Vocabulary {
    /// Number words and what they count.
    pub numbers: BTreeMap<String, u32>,
    /// Words that count how often.
    pub times: Words,
    /// Words for shares, as in "half an inch".
    pub fractions: Words,
    /// Words that say one thing before a unit: "an inch".
    pub one: Words,
    /// Words between a share and its unit: "of".
    pub small_words: Words,
    /// Units of length, written out or short.
    pub lengths: Words,
    /// Units of an angle, written out.
    pub angles: Words,
    /// How one says that a thing is done as another was.
    pub same_way: Words,
    /// Lines that are sewn along.
    pub lines: Words,
    /// How one sews along lines that were marked.
    pub marked_lines: Words,
    /// Words before what a measurement goes round.
    pub round: Words,
    /// Words that may stand twice in a row.
    pub may_double: Words,
    /// Marks of what is still to be written; those in capitals are looked for in capitals.
    pub unfinished: Words,
    /// Words for what has a number in a booklet.
    pub numbered: Words,
    /// How one points back to a step.
    pub as_before: Words,
    /// The forms of each verb of work that stand in an instruction.
    pub verbs: BTreeMap<String, Words>,
    /// What a thing cannot be both of; longer phrases go before those that they hold.
    pub opposites: Vec<Pair>,
    /// Left and right.
    pub left_right: Pair,
    /// The opposites that are said right before what they are said of.
    pub before_nouns: Vec<Pair>,
    /// Phrases that say themselves what they are said of: "glue side up".
    pub own_side: Words,
    /// Words for the parts of a thing that is sewn.
    pub parts: Words,
    /// The ends at which an edge lies: top and bottom, left and right.
    pub ends: Vec<Pair>,
    /// Words before an end that is said without "edge": "at the".
    pub at_the: Words,
    /// Words between a verb and the edge that it is done to.
    pub before_an_edge: Words,
    /// Words between an edge and the piece that it is of.
    pub of_the: Words,
    /// How a thing is laid at an edge.
    pub level_with: Words,
    /// The forms of verbs that tell what is done.
    pub done: BTreeMap<String, Words>,
    /// Verbs that all fold an edge.
    pub folding: Words,
    /// How a fold says that it goes to the wrong side, and to the right one.
    pub folded_to: Pair,
    /// How a piece lies for the one and for the other.
    pub lies_up: Pair,
    /// Words for what is folded towards the maker.
    pub folded_over: Words,
    /// Words for what is folded away from her.
    pub folded_under: Words,
    /// To turn something, and the other way round: "turn the layers over".
    pub turned_over: Pair,
    /// How two pieces lie on each other: right sides together, and wrong sides.
    pub together: Pair,
    /// Words before a side of the whole thing, "from the front".
    pub seen_from: Words,
    /// Words before the length by which an edge is turned.
    pub by: Words,
    /// Where it is turned to.
    pub turned_to: Words,
    /// Words that have it turned more than once.
    pub again: Words,
    /// Verbs that put a piece before the maker.
    pub lays: Words,
    /// Words between a verb and what it is done to.
    pub articles: Words,
    /// Words before a thing that mean each of its kind.
    pub both: Words,
    /// The article of what is known.
    pub the: Words,
    /// Notions that no booklet has without buying them.
    pub notion_words: Words,
    /// Words between a piece and the cloth that it is cut from.
    pub out_of: Words,
    /// How cloth lies while it is cut.
    #[serde(default)]
    pub cloth_lies: ClothLies,
    /// Sorts of cloth.
    pub cloth_words: Words,
    /// Words for a notch.
    pub notch: Words,
    /// Words before the way that a thing points.
    pub points: Words,
    /// Words between what lies above and what lies below.
    pub upon: Words,
    /// Words for a place on a piece rather than for a piece.
    pub edge_words: Words,
    /// Words for a seam allowance.
    pub allowance: Words,
    /// Words for the length of a stitch.
    pub stitch: Words,
    /// Words for what is left unsewn.
    pub gap: Words,
    /// Words for a width, behind a figure.
    pub wide: Words,
    /// Words for a height or a depth, behind a figure.
    pub tall: Words,
    /// Words that no name of a piece goes over.
    pub ends_a_name: Words,
    /// Words between a length and the piece that has it.
    pub meant_for: Words,
    /// Words for a square, behind a figure.
    pub square: Words,
    /// What stands between a width and a height.
    pub between_sizes: Words,
    /// Names of colours.
    pub colours: Words,
    /// Words that stand in for a thing: "the red one".
    pub stands_in: Words,
    /// The ways to finish an edge, each with the words that tell it.
    pub finishes: BTreeMap<String, Words>,
    /// The steps of a booklet.
    pub steps: Words,
    /// Words before a number that counts all there are.
    pub counted_all: Words,
    /// Words that make a count one of something else.
    pub pairs: Words,
    /// Things with two names.
    pub same_thing: Vec<Pair>,
    /// Words that are spelled in two ways.
    pub spellings: Vec<[String; 2]>,
    /// Tools that are easily forgotten in the list, each with its names.
    pub tools: BTreeMap<String, Words>,
    /// Words before "side" for the side of a cloth that has glue on it.
    pub glue_sides: Words,
    /// Words for a side of cloth.
    pub side: Words,
    /// Up and down, of what a side of cloth faces.
    pub up_down: Pair,
    /// Words between a side and where it faces.
    pub faces: Words,
    /// Words in the names of cloth with glue on it.
    pub glued_cloth: Words,
    /// How one says that a thing lies on the right side of another.
    pub on_right_side: Words,
    /// What hurts, where it is not forbidden: words that follow each other in a sentence.
    pub hazards: Vec<Hazard>,
    /// What hurts, where it is not forbidden.
    pub dangers: Words,
    /// Words that forbid.
    pub forbids: Words,
    /// Words that make a sentence one of several ways.
    pub alternatives: Words,
}

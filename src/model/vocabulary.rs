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
}

/// The words of one language. Phrases are written in lower case, with single spaces.
#[derive(Debug, Clone, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Vocabulary {
    /// Number words and what they count.
    pub numbers: BTreeMap<String, u32>,
    /// Words for shares, as in "half an inch".
    pub fractions: Words,
    /// Words that say one thing before a unit: "an inch".
    pub one: Words,
    /// Words between a share and its unit: "of".
    pub small_words: Words,
    /// Units of length, written out or short.
    pub lengths: Words,
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

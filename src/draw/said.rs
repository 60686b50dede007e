//! The words of a drawing, in the language of the booklet: from the words of the house, as layouts and sheets take theirs.

use super::cloth::Face;
use super::desk::Desk;
use super::page::Page;
use crate::diag::in_sentence;
use crate::figure::numbers;
use crate::model::Verb;
use crate::resolve::{CopyId, NotionId, Worked};

impl Desk<'_, '_> {
    /// The words behind a name, with their `{places}` filled.
    pub fn say(&self, name: &str, places: &[(&str, &str)]) -> String {
        self.edition.draft.house.fill(name, places)
    }

    /// A verb as it stands within a sentence.
    pub fn verb(&self, verb: Verb) -> String {
        in_sentence(&self.say(&format!("verb_{}", verb.word()), &[]))
    }

    /// Names in a row.
    pub fn listed(&self, names: &[String]) -> String {
        self.edition.draft.house.listed(names)
    }

    /// A length as the booklet prints it.
    pub fn spoken(&self, worked: &Worked) -> String {
        numbers::spoken(&self.edition.figures(worked))
    }

    /// How far from an edge, a seam or a rim a row runs: `topstitch 3 mm from the seam`; `from` is the name of the words.
    pub fn row(&self, verb: Verb, from: &str, allowance: &Worked) -> String {
        self.say(from, &[("verb", &self.verb(verb)), ("length", &self.spoken(allowance))])
    }

    /// Says something of several below a drawing; nothing where there are none.
    pub fn tell(&self, page: &mut Page<'_>, words: &str, names: &[String]) {
        let mut told: Vec<String> = Vec::new();
        for name in names {
            if !told.contains(name) {
                told.push(name.clone());
            }
        }
        if !told.is_empty() {
            page.caption(self.say(words, &[("names", &self.listed(&told))]));
        }
    }

    /// A length of words that stand below each other, the figure on a line of its own where they are upright.
    pub fn around(&self, name: &str, length: &str, level: bool) -> Vec<String> {
        if level {
            return vec![self.say(name, &[("length", length)])];
        }
        let broken = self.say(name, &[("length", &format!("\n{length}\n"))]);
        broken.lines().map(str::trim).filter(|line| !line.is_empty()).map(str::to_owned).collect()
    }

    /// What a copy is called: its own name, or its piece's where copies are only counted.
    pub fn name(&self, copy: CopyId) -> String {
        self.edition.copy_name(copy)
    }

    /// A notion's name as it stands within a sentence.
    pub fn notion(&self, notion: NotionId) -> String {
        in_sentence(&self.edition.draft.facts.notions[notion].name.text)
    }

    /// A copy and the side that is up: `front, right side up`.
    pub fn name_and_side(&self, copy: CopyId, face: Face) -> String {
        match self.side(copy, face) {
            side if side.is_empty() => self.name(copy),
            side => self.say("draw_side", &[("name", &self.name(copy)), ("side", &side)]),
        }
    }

    /// A copy of which one sees the outside: `front, right side out`.
    pub fn name_and_out(&self, copy: CopyId, face: Face) -> String {
        let words = match face {
            _ if self.side(copy, face).is_empty() => return self.name(copy),
            Face::Right => "draw_out_right",
            Face::Wrong => "draw_out_wrong",
        };
        self.say(words, &[("name", &self.name(copy))])
    }

    /// A zip with its face up or down.
    pub fn zip_face(&self, face: Face) -> String {
        let words = match face {
            Face::Right => "draw_zip_up",
            Face::Wrong => "draw_zip_down",
        };
        self.say(words, &[])
    }
}

//! Stable ids: what the author called a part or a step, or a name made from its heading, so that it
//! stays the same when other steps come and go.

use std::collections::BTreeSet;

use crate::model::{Draft, Inline, Step};
use crate::syntax::plain_inline;

/// The ids of all parts, steps and questions of a booklet, in every size the same.
pub struct Ids {
    /// For each part its id and those of its steps, by their places as written.
    parts: Vec<(String, Vec<String>)>,
    /// For each question its id.
    questions: Vec<String>,
}

impl Ids {
    /// Gives every part and every step an id of its own. A part that is used a second time has its ids
    /// told from the first by a number.
    pub fn of(draft: &Draft) -> Ids {
        let mut taken: BTreeSet<String> = BTreeSet::new();
        let own = |taken: &mut BTreeSet<String>, id: Option<&String>, title: &[Inline], otherwise: &str| {
            let wanted = id.cloned().unwrap_or_else(|| slug(&plain_inline(title), otherwise));
            let mut id = wanted.clone();
            let mut again = 2;
            while !taken.insert(id.clone()) {
                id = format!("{wanted}-{again}");
                again += 1;
            }
            id
        };
        let parts = draft
            .parts
            .iter()
            .map(|part| {
                let id = own(&mut taken, part.id.as_ref().map(|id| &id.text), &part.title, "part");
                let mut of_step =
                    |step: &Step| own(&mut taken, step.id.as_ref().map(|id| &id.text), &step.title, "step");
                (id, part.steps.iter().map(&mut of_step).collect())
            })
            .collect();
        // They are among their like: a question may be called as its step is.
        let mut asked: BTreeSet<String> = BTreeSet::new();
        let questions = draft.help.iter().map(|question| own(&mut asked, None, &question.title, "question")).collect();
        Ids { parts, questions }
    }

    /// The id of a part, by its place under `parts:`.
    pub fn part(&self, part: usize) -> &str {
        self.parts.get(part).map_or("", |(id, _)| id)
    }

    /// The id of a question, by its place among all.
    pub fn question(&self, question: usize) -> &str {
        self.questions.get(question).map_or("", String::as_str)
    }

    /// The id of a step, by the place of its part and its own place there.
    pub fn step(&self, part: usize, step: usize) -> &str {
        self.parts.get(part).and_then(|(_, steps)| steps.get(step)).map_or("", String::as_str)
    }
}

/// Words as a name: small letters and digits, all else a hyphen.
pub fn slug(words: &str, otherwise: &str) -> String {
    let mut name = String::new();
    for letter in words.chars().flat_map(char::to_lowercase) {
        match letter.is_alphanumeric() {
            true => name.push(letter),
            false if !name.ends_with('-') && !name.is_empty() => name.push('-'),
            false => {}
        }
    }
    let name = name.trim_end_matches('-');
    if name.is_empty() { otherwise.to_owned() } else { name.to_owned() }
}

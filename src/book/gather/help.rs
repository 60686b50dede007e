//! The questions of one size.

use super::gatherer::Gatherer;
use crate::book::help::Question;
use crate::resolve::Answer;

impl Gatherer<'_> {
    /// The questions that the size has.
    pub fn help(&mut self) -> Vec<Question> {
        self.edition.front.help.iter().map(|answer| self.question(answer)).collect()
    }

    fn question(&mut self, answer: &Answer) -> Question {
        let draft = self.edition.draft;
        let own = draft.help[answer.at].sizes.as_ref();
        // A question of a step goes where the step goes.
        let part = answer.step.and_then(|(part, _)| draft.parts.get(part));
        let step = answer.step.and_then(|(_, step)| part?.steps.get(step));
        let limits = [own, part.and_then(|part| part.sizes.as_ref()), step.and_then(|step| step.sizes.as_ref())];
        Question {
            id: self.ids.question(answer.at).to_owned(),
            at: answer.at,
            step: answer.step.map(|(part, step)| self.ids.step(part, step).to_owned()),
            title: self.inlines(&answer.title, "help"),
            answer: self.blocks(&answer.content, "help"),
            sizes: self.written_for(&limits),
        }
    }
}

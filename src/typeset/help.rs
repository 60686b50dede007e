//! The questions of makers on their way to the templates.

use serde_json::{Value as Json, json};

use super::setter::Setter;

impl Setter<'_> {
    /// The questions, those of a step with its number; `null` where a question is a general one.
    pub fn help(&self) -> Vec<Json> {
        let steps = || self.book.parts.iter().flat_map(|part| &part.steps);
        let questions = self.book.help.iter().map(|question| {
            let own = self.within(&question.sizes);
            let step = steps().find(|step| question.step.as_ref() == Some(&step.id));
            // What the step says of its sizes, its question need not say again.
            let told = step.is_some_and(|step| step.sizes == question.sizes);
            json!({
                "id": question.id,
                "step": step.map(|step| json!({ "id": step.id, "number": step.number })),
                "title": own.inlines(&question.title),
                "answer": own.blocks(&question.answer),
                "sizes": self.only(&question.sizes),
                "told": told,
            })
        });
        questions.collect()
    }
}

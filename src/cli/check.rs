//! `check`: everything that is wrong or missing, in every size.

use std::path::Path;

use super::args::{CheckArgs, Form};
use super::{Outcome, Refusal, choose, output};
use crate::pipeline::compile;

pub(super) fn run(folder: Option<&Path>, args: &CheckArgs) -> Result<Outcome, Refusal> {
    let choice = choose::booklets(folder, &args.booklets)?;
    let mut worst = Outcome::Clean;
    for booklet in &choice.booklets {
        let outcome = compile(&choice.folder, booklet, |compiled| {
            output::report(&compiled.report, &compiled, args.format);
            if args.format == Form::People {
                output::verdict(&booklet.name, &compiled, &compiled.report);
            }
            output::outcome(&compiled.report, &args.strictness)
        });
        worst = worst.max(outcome);
    }
    Ok(worst)
}

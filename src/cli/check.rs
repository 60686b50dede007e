//! `check`: everything that is wrong or missing, in every size.

use std::path::Path;

use super::apart::Bounds;
use super::args::{CheckArgs, Form};
use super::{Outcome, Refusal, apart, choose, output};
use crate::pipeline::{Reach, Workshop};

pub(super) fn run(folder: Option<&Path>, args: &CheckArgs, bounds: Bounds) -> Result<Outcome, Refusal> {
    let choice = choose::booklets(folder, &args.booklets)?;
    let mut worst = Outcome::Clean;
    for booklet in choice.booklets.iter().filter(|booklet| !apart::is_of_another(booklet)) {
        if let Some(outcome) = apart::run(&choice.folder, booklet, bounds)? {
            worst = worst.max(outcome);
            continue;
        }
        let workshop = Workshop::open(&choice.folder, booklet, Reach::Checks);
        output::report(&workshop.report, &workshop, args.format);
        if args.format == Form::People {
            output::verdict(&booklet.name, &workshop, &workshop.report);
            output::unchecked(&workshop, args.unchecked);
        }
        worst = worst.max(output::outcome(&workshop.report, &args.strictness));
    }
    Ok(worst)
}

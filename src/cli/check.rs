//! `check`: everything that is wrong or missing, in every size.

use std::path::Path;

use super::apart::Bounds;
use super::args::{CheckArgs, Form};
use super::{Outcome, Refusal, apart, choose, output};
use crate::pipeline::{Reach, Workshop};

pub(super) fn run(folder: Option<&Path>, args: &CheckArgs, bounds: Bounds) -> Result<Outcome, Refusal> {
    let choice = choose::booklets(folder, &args.booklets)?;
    apart::each(&choice, bounds, |booklet| {
        let workshop = Workshop::open(&choice.folder, booklet, Reach::Checks);
        output::report(&workshop.report, &workshop, args.format);
        if args.format == Form::People {
            output::verdict(&booklet.name, &workshop, &workshop.report);
            output::unchecked(&workshop, args.unchecked);
        }
        Ok(output::outcome(&workshop.report, &args.strictness))
    })
}

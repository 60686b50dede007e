//! `explain`: a check's page, the list of checks, or the whole reference.

use super::args::ExplainArgs;
use super::{Outcome, Refusal, output};
use crate::checks::{CHECKS, by_code, reference};
use crate::diag::{Group, did_you_mean};

pub(super) fn run(args: &ExplainArgs) -> Result<Outcome, Refusal> {
    if args.all {
        output::line(reference().trim_end());
        return Ok(Outcome::Clean);
    }
    match &args.code {
        Some(code) => {
            let Some(check) = by_code(code) else {
                let codes = CHECKS.iter().map(|check| check.code);
                return Err(Refusal::new(
                    format!("no check is called `{code}`"),
                    did_you_mean(code, codes, "`notchbook explain` lists them"),
                ));
            };
            output::line(check.explanation().trim_end());
        }
        None => {
            for group in Group::ALL {
                output::line(group.name());
                for check in CHECKS.iter().filter(|check| check.group == *group) {
                    output::line(&format!("  {:<26} {:<8} {}", check.code, check.level.word(), check.page().summary));
                }
                output::line("");
            }
            output::line("`notchbook explain NAME` prints a check's page, with a wrong and a right example.");
        }
    }
    Ok(Outcome::Clean)
}

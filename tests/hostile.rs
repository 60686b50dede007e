//! Files that no author means: whatever a stranger sends is answered with a finding at its place, soon, in little
//! memory, and never with a crash.

#[path = "hostile/cases.rs"]
mod cases;
#[path = "hostile/run.rs"]
mod run;

use std::collections::BTreeMap;
use std::path::Path;

use rayon::iter::{IntoParallelRefIterator, ParallelIterator};
use run::{Outcome, program, run};

#[test]
fn each_hostile_booklet_is_answered() {
    let start = tempfile::tempdir().expect("a folder");
    let made = program(start.path(), &["new", "tide-pouch"]);
    assert_eq!(made.exit, Some(0), "{}", made.told);
    let base = run::read(&start.path().join("tide-pouch"));
    let only = std::env::var("NOTCHBOOK_HOSTILE").unwrap_or_default();
    let cases: Vec<cases::Case> = cases::all()
        .into_iter()
        .filter(|case| case.name.contains(&only))
        .collect();
    let outcomes: Vec<Outcome> = cases.par_iter().map(|case| outcome(case, &base)).collect();
    println!("{:<50}{:>6}{:>9}{:>8}", "case", "exit", "seconds", "MB");
    let mut wrong = Vec::new();
    for (case, outcome) in cases.iter().zip(&outcomes) {
        let exit = outcome
            .exit
            .map_or("none".to_owned(), |code| code.to_string());
        println!(
            "{:<50}{exit:>6}{:>9.2}{:>8.0}",
            case.name, outcome.seconds, outcome.megabytes
        );
        wrong.extend(judge(case, outcome).map(|fault| format!("{}: {fault}", case.name)));
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n\n"));
}

/// What the program makes of a case in a folder of its own.
fn outcome(case: &cases::Case, base: &BTreeMap<String, Vec<u8>>) -> Outcome {
    let mut booklet = cases::Booklet {
        files: base.clone(),
    };
    (case.edit)(&mut booklet);
    let folder = tempfile::tempdir().expect("a folder");
    booklet.write(&folder.path().join("tide-pouch"));
    run(folder.path(), case.args)
}

fn judge(case: &cases::Case, outcome: &Outcome) -> Option<String> {
    let head: String = outcome.told.chars().take(1500).collect();
    match outcome.exit {
        None => Some(format!(
            "did not end by itself ({:.1} s)\n{head}",
            outcome.seconds
        )),
        Some(code) if code != case.exit => Some(format!(
            "ended with {code} and not with {}\n{head}",
            case.exit
        )),
        Some(_) if !outcome.told.contains(case.tells) => {
            Some(format!("does not tell `{}`\n{head}", case.tells))
        }
        Some(_) if outcome.told.contains("panicked") => Some(format!("panicked\n{head}")),
        Some(_) if outcome.told.len() > 2_000_000 => {
            Some(format!("tells {} bytes", outcome.told.len()))
        }
        Some(_) => None,
    }
}

/// The good must not suffer from limits that are meant for the bad.
#[test]
fn a_long_booklet_of_many_sizes_is_untouched() {
    let start = tempfile::tempdir().expect("a folder");
    program(start.path(), &["new", "tide-pouch"]);
    let mut booklet = cases::Booklet {
        files: run::read(&start.path().join("tide-pouch")),
    };
    cases::long(&mut booklet);
    booklet.write(Path::new(&start.path().join("tide-pouch")));
    let outcome = run(start.path(), &["check", "tide-pouch"]);
    println!(
        "1,000 steps in 24 sizes: {:.1} s, {:.0} MB",
        outcome.seconds, outcome.megabytes
    );
    assert_eq!(
        outcome.exit,
        Some(0),
        "{}",
        outcome.told.chars().take(3000).collect::<String>()
    );
}

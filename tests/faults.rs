//! Faults that tired authors make, seeded one at a time in the demo booklets, and edits that harm nothing.
//!
//! The tables in `tests/faults/` say what is edited and at which line an editor wants to be told;
//! `outcomes.csv` records what came of each. `NOTCHBOOK_BLESS=1` records anew; `NOTCHBOOK_EXPECT=no` takes the authors'
//! expectations out of the demos first, prints what is found without them, and records nothing. A fault counts as found at its
//! line, elsewhere (another line tells of it) or missed; findings beyond the one at the line are noise only where
//! they stand in another file or step than the fault and its consequences, so they are counted and not judged.

#[path = "faults/edit.rs"]
mod edit;
#[path = "faults/outcome.rs"]
mod outcome;

use std::collections::BTreeMap;
use std::path::Path;

use edit::{Entry, entries, plain};
use outcome::{Outcome, Told, seed};
use rayon::iter::{IntoParallelRefIterator, ParallelIterator};

fn home() -> &'static Path {
    Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/faults"))
}

/// Whether the demos keep their authors' expectations.
fn expects() -> bool {
    std::env::var_os("NOTCHBOOK_EXPECT").is_none_or(|value| value != "no")
}

fn ran() -> Vec<(Entry, Outcome)> {
    let entries = entries(home());
    let only = std::env::var("NOTCHBOOK_FAULT").unwrap_or_default();
    let chosen: Vec<&Entry> = entries
        .iter()
        .filter(|entry| entry.id.contains(&only))
        .collect();
    let before: BTreeMap<&str, Vec<Told>> = if expects() {
        BTreeMap::new()
    } else {
        chosen
            .iter()
            .map(|entry| (entry.booklet.as_str(), plain(&entry.booklet)))
            .collect::<BTreeMap<_, _>>()
            .into_iter()
            .map(|(booklet, entry)| (booklet, seed(&entry, false, &[]).all))
            .collect()
    };
    let none = Vec::new();
    let outcomes: Vec<Outcome> = chosen
        .par_iter()
        .map(|entry| {
            let before = before.get(entry.booklet.as_str()).unwrap_or(&none);
            seed(entry, expects(), before)
        })
        .collect();
    chosen.into_iter().cloned().zip(outcomes).collect()
}

#[test]
fn seeded_faults_are_found_at_their_line_and_harmless_edits_are_not_blamed() {
    let ran = ran();
    let mut table = String::from("id,family,harm,outcome,checks\n");
    for (entry, outcome) in &ran {
        table.push_str(&format!("{}\n", outcome.row(entry)));
    }
    print(&ran);
    if std::env::var_os("NOTCHBOOK_FAULT").is_some() {
        ran.iter()
            .for_each(|(entry, outcome)| println!("{}", outcome.told(entry)));
        return;
    }
    if !expects() {
        let lost = ran
            .iter()
            .filter(|(entry, outcome)| !entry.harmless && outcome.word() != "line");
        lost.for_each(|(entry, outcome)| println!("{}", outcome.row(entry)));
        return;
    }
    let record = home().join("outcomes.csv");
    if std::env::var_os("NOTCHBOOK_BLESS").is_some_and(|value| value == "1") {
        std::fs::write(&record, &table).expect("the record of outcomes");
    }
    let recorded = std::fs::read_to_string(&record).unwrap_or_default();
    let before: BTreeMap<&str, &str> = recorded
        .lines()
        .filter_map(|line| Some((line.split(',').next()?, line)))
        .collect();
    let differs: Vec<String> = table
        .lines()
        .filter(|line| before.get(line.split(',').next().unwrap_or("")) != Some(line))
        .map(|line| {
            format!(
                "{line}\n  recorded: {}",
                before
                    .get(line.split(',').next().unwrap_or(""))
                    .unwrap_or(&"nothing")
            )
        })
        .collect();
    assert!(
        differs.is_empty() && before.len() == table.lines().count(),
        "\n{}\n",
        differs.join("\n")
    );
    let blamed: Vec<&str> = ran
        .iter()
        .filter(|(entry, outcome)| entry.harmless && !outcome.all.is_empty())
        .map(|(entry, _)| entry.id.as_str())
        .collect();
    assert!(
        blamed.is_empty(),
        "harmless edits are blamed: {}",
        blamed.join(", ")
    );
}

/// The table by family, for people.
fn print(ran: &[(Entry, Outcome)]) {
    let faults: Vec<&(Entry, Outcome)> = ran.iter().filter(|(entry, _)| !entry.harmless).collect();
    println!("family | faults | at the line | elsewhere | missed | missed of harm 3");
    let row = |name: &str, of: &dyn Fn(&Entry) -> bool| {
        let mine: Vec<_> = faults.iter().filter(|(entry, _)| of(entry)).collect();
        let count = |what: &str| {
            mine.iter()
                .filter(|(_, outcome)| outcome.word() == what)
                .count()
        };
        let worst = mine
            .iter()
            .filter(|(entry, outcome)| entry.harm == 3 && outcome.word() == "missed")
            .count();
        println!(
            "{name} | {} | {} | {} | {} | {worst}",
            mine.len(),
            count("line"),
            count("elsewhere"),
            count("missed")
        );
    };
    for family in 1..=8 {
        row(&family.to_string(), &|entry| entry.family == family);
    }
    row("all", &|_| true);
    let harmless: Vec<_> = ran.iter().filter(|(entry, _)| entry.harmless).collect();
    let blamed = harmless
        .iter()
        .filter(|(_, outcome)| !outcome.all.is_empty())
        .count();
    println!("harmless edits: {}, blamed: {blamed}", harmless.len());
}

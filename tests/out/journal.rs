//! Editions put in their place where the system cannot exchange two folders at once: the tracer refuses that call, and
//! kills the build at each step of the journal.

use std::collections::BTreeMap;
use std::fs;
use std::process::{Command, Stdio};

use super::kills::{Change, wanted};
use super::shop::has_tracer;

/// The calls by which the journal is written and ended.
const CALLS: &str = "rename,openat,write,fsync,flock,unlink,unlinkat,rmdir";

/// A build under the tracer, on a system that knows no exchange.
fn build(change: &Change, more: &[&str]) -> Command {
    let calls = format!("trace=renameat2,{CALLS}");
    let refused = ["-e", &calls, "-e", "inject=renameat2:error=ENOSYS"];
    let mut command = change.shop.traced(&[&refused, more].concat());
    command.stdout(Stdio::null());
    command
}

/// The calls from the refused exchange on, each with how many of its sort its thread had made before.
fn steps(change: &Change) -> Vec<(String, usize)> {
    let log = change.shop.path("calls.txt");
    let status = build(change, &["-o", log.to_str().expect("a text")])
        .stderr(Stdio::null())
        .status();
    assert!(status.expect("strace starts").success());
    let told = fs::read_to_string(&log).expect("what was traced");
    fs::remove_file(&log).expect("a file");
    let refused = told
        .lines()
        .find(|line| line.contains("renameat2("))
        .expect("an exchange is tried");
    let thread = refused
        .split_whitespace()
        .next()
        .expect("a number")
        .to_owned();
    let mut counts: BTreeMap<String, usize> = BTreeMap::new();
    let (mut found, mut begun) = (Vec::new(), false);
    let own = told
        .lines()
        .filter(|line| line.split_whitespace().next() == Some(&thread));
    for line in own {
        let call = line
            .split_whitespace()
            .nth(1)
            .and_then(|rest| rest.split_once('('));
        let Some((call, _)) = call else { continue };
        begun |= call == "renameat2";
        let count = counts.entry(call.to_owned()).or_default();
        *count += 1;
        if begun && call != "renameat2" {
            found.push((call.to_owned(), *count));
        }
    }
    found
}

#[test]
fn without_exchange_a_killed_build_is_ended_by_the_next_run() {
    if !has_tracer("a system without exchange was not tried") {
        return;
    }
    let change = Change::open();
    change.shop.change("title: Tide Pouch", "title: Ebb Pouch");
    let steps = steps(&change);
    assert_eq!(change.shop.edition(), change.new);
    assert_eq!(change.shop.names("out"), [".notchbook-cache", "tide-pouch"]);
    // The waiting, the journal, the old away, the new in its place, the journal away.
    let renames = steps.iter().filter(|(call, _)| call == "rename").count();
    assert!(renames == 2 && steps.len() > 8, "{steps:?}");
    let (mut old, mut new) = (0, 0);
    for at in (0..steps.len()).step_by(steps.len().div_ceil(wanted())) {
        let (call, number) = &steps[at];
        change.shop.change("title: Ebb Pouch", "title: Tide Pouch");
        change.shop.build(&[]);
        change.shop.change("title: Tide Pouch", "title: Ebb Pouch");
        let kill = format!("inject={call}:signal=KILL:when={number}");
        let status = build(&change, &["-o", "/dev/null", "-e", &kill])
            .stderr(Stdio::null())
            .status();
        assert!(
            !status.expect("strace starts").success(),
            "not killed at `{call}` number {number}"
        );
        // The next run of any command ends it; this one adds diagrams and builds nothing.
        change.shop.figures();
        let mut stands = change.shop.edition();
        stands.retain(|path, _| !path.starts_with("figures/") && !path.starts_with('.'));
        let is = |edition: &BTreeMap<String, Vec<u8>>| {
            let made = edition.iter().filter(|(path, _)| !path.starts_with('.'));
            made.eq(stands.iter())
        };
        assert!(
            is(&change.old) || is(&change.new),
            "killed at `{call}` number {number}: {:?}",
            stands.keys()
        );
        *(if is(&change.old) { &mut old } else { &mut new }) += 1;
        assert_eq!(
            change.shop.names("out"),
            [".notchbook-cache", "tide-pouch"],
            "killed at `{call}` number {number}: leftovers"
        );
    }
    println!(
        "{} kills: {old} times the old edition, {new} times the new",
        old + new
    );
    assert!(new > 0, "no kill came after the journal");
}

//! Builds that are killed: at moments taken at random, and, where the system's tracer is there, at every call that
//! writes, renames or removes.
//!
//! `NOTCHBOOK_KILLS=200` kills so many of each sort; by default only a few, since each kill costs two builds.

use std::collections::BTreeMap;
use std::process::Stdio;
use std::time::{Duration, Instant};

use super::shop::{Shop, has_tracer};

/// Calls that change what stands on the disk.
const CALLS: &[&str] = &[
    "renameat2",
    "rename",
    "linkat",
    "mkdir",
    "fsync",
    "unlinkat",
    "unlink",
    "openat",
    "write",
    "flock",
];

pub fn wanted() -> usize {
    std::env::var("NOTCHBOOK_KILLS")
        .ok()
        .and_then(|count| count.parse().ok())
        .unwrap_or(8)
}

/// A shop in which an old edition stands and a new one is about to be built; and both editions.
pub struct Change {
    pub shop: Shop,
    pub old: BTreeMap<String, Vec<u8>>,
    pub new: BTreeMap<String, Vec<u8>>,
    seconds: f64,
}

impl Change {
    pub fn open() -> Change {
        let shop = Shop::open();
        // Something of somebody else's, which every edition keeps.
        shop.write("out/tide-pouch/notes.txt", "mine");
        shop.build(&[]);
        shop.change("title: Tide Pouch", "title: Ebb Pouch");
        shop.build(&[]);
        let new = shop.edition();
        shop.change("title: Ebb Pouch", "title: Tide Pouch");
        shop.build(&[]);
        let old = shop.edition();
        assert!(old != new, "the two editions are one");
        // As long as a run takes that finds what it sets in the cache.
        shop.change("title: Tide Pouch", "title: Ebb Pouch");
        let start = Instant::now();
        shop.build(&[]);
        let seconds = start.elapsed().as_secs_f64();
        shop.change("title: Ebb Pouch", "title: Tide Pouch");
        shop.build(&[]);
        Change {
            shop,
            old,
            new,
            seconds,
        }
    }

    /// Holds what stands after a kill against both editions, and what stands after the next run against the new one;
    /// then goes back to the old.
    fn judge(&self, how: &str) {
        let stands = self.shop.edition();
        let whole = stands == self.old || stands == self.new;
        let names: Vec<&String> = stands.keys().collect();
        assert!(
            whole,
            "{how}: neither the old edition nor the new: {names:?}"
        );
        self.shop.build(&[]);
        // Bytes of whole files are no message.
        assert!(
            self.shop.edition() == self.new,
            "{how}: not mended by the next run"
        );
        assert_eq!(
            self.shop.names("out"),
            [".notchbook-cache", "tide-pouch"],
            "{how}: leftovers"
        );
        let unfinished = self.shop.unfinished();
        assert!(
            unfinished.is_empty(),
            "{how}: leftovers in the cache: {unfinished:?}"
        );
        self.shop.change("title: Ebb Pouch", "title: Tide Pouch");
        self.shop.build(&[]);
        assert!(
            self.shop.edition() == self.old,
            "{how}: the old edition does not come back"
        );
    }
}

#[test]
fn a_build_killed_at_any_moment_leaves_the_old_edition_or_the_new() {
    let change = Change::open();
    let count = wanted();
    for kill in 0..count {
        change.shop.change("title: Tide Pouch", "title: Ebb Pouch");
        // Spread over the run, most of them near its end, where files are put in their places.
        let share = 1.0 - (kill as f64 / count as f64).powi(2);
        let mut child = change.shop.command(&["build", "tide-pouch"]);
        let mut child = child
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .expect("the program starts");
        std::thread::sleep(Duration::from_secs_f64(change.seconds * share));
        child.kill().expect("a child");
        child.wait().expect("a child");
        change.judge(&format!("killed at {:.0} % of the time", share * 100.0));
    }
}

#[test]
fn a_build_killed_at_any_call_leaves_the_old_edition_or_the_new() {
    if !has_tracer("kills at calls of the system were not tried") {
        return;
    }
    let change = Change::open();
    let mut kills = 0;
    let mut open: Vec<&str> = CALLS.to_vec();
    let mut told = BTreeMap::new();
    // The first of each call, then the second of each, until no call comes so often.
    for number in 1.. {
        for call in open.clone() {
            if kills >= wanted() {
                break;
            }
            change.shop.change("title: Tide Pouch", "title: Ebb Pouch");
            // Without a cache, so that its own calls are among those that are stopped.
            change.shop.forget();
            let (trace, kill) = (
                format!("trace={call}"),
                format!("inject={call}:signal=KILL:when={number}"),
            );
            let mut command = change
                .shop
                .traced(&["-o", "/dev/null", "-e", &trace, "-e", &kill]);
            command.stdout(Stdio::null()).stderr(Stdio::null());
            if command.status().expect("strace starts").success() {
                open.retain(|one| *one != call);
            } else {
                kills += 1;
                *told.entry(call).or_insert(0) += 1;
            }
            change.judge(&format!("killed at `{call}` number {number}"));
        }
        if open.is_empty() || kills >= wanted() {
            break;
        }
    }
    println!("{kills} kills at calls of the system: {told:?}");
    assert!(
        kills >= wanted().min(20),
        "the tracer killed no more than {kills} builds"
    );
}

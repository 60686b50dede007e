//! The program, run with bounds on time and memory.

use std::collections::BTreeMap;
use std::fs;
use std::io::Read;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

/// The most kilobytes of addresses that the program may take: no measure, but what keeps the machine alive.
const ADDRESSES: u32 = 3_000_000;
/// How long it may take before it is stopped; no measure either.
const PATIENCE: Duration = Duration::from_secs(90);

/// How a run ended.
pub struct Outcome {
    /// The exit code; `None` where it crashed or was stopped.
    pub exit: Option<i32>,
    /// All that it printed.
    pub told: String,
    pub seconds: f64,
    /// The most memory that was seen in use.
    pub megabytes: f64,
}

/// Runs the program in a folder.
pub fn program(folder: &Path, arguments: &[&str]) -> Outcome {
    run(folder, arguments)
}

/// Runs the program in a folder, within bounds.
pub fn run(folder: &Path, arguments: &[&str]) -> Outcome {
    let mut command = Command::new("sh");
    command.args(["-c", &format!("ulimit -v {ADDRESSES}; exec \"$0\" \"$@\"")]);
    command
        .arg(env!("CARGO_BIN_EXE_notchbook"))
        .args(arguments)
        .current_dir(folder);
    let start = Instant::now();
    let mut child = command
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the program starts");
    let (mut out, mut err) = (
        child.stdout.take().expect("piped"),
        child.stderr.take().expect("piped"),
    );
    let readers = [
        std::thread::spawn(move || all(&mut out)),
        std::thread::spawn(move || all(&mut err)),
    ];
    let mut most = 0.0_f64;
    let status = loop {
        most = most.max(megabytes(child.id()));
        match child.try_wait().expect("a child") {
            Some(status) => break Some(status),
            None if start.elapsed() > PATIENCE => {
                child.kill().expect("a child that runs");
                child.wait().expect("a child");
                break None;
            }
            None => std::thread::sleep(Duration::from_millis(3)),
        }
    };
    let seconds = start.elapsed().as_secs_f64();
    let told = readers
        .map(|reader| reader.join().expect("a reader"))
        .concat();
    Outcome {
        exit: status.and_then(|status| status.code()),
        told,
        seconds,
        megabytes: most,
    }
}

fn all(stream: &mut impl Read) -> String {
    let mut bytes = Vec::new();
    stream.read_to_end(&mut bytes).expect("a stream");
    String::from_utf8_lossy(&bytes).into_owned()
}

/// The most memory that a process has held, as far as the system tells.
fn megabytes(process: u32) -> f64 {
    let status = fs::read_to_string(format!("/proc/{process}/status")).unwrap_or_default();
    let line = status
        .lines()
        .find(|line| line.starts_with("VmHWM:"))
        .unwrap_or_default();
    let kilobytes = line
        .split_whitespace()
        .nth(1)
        .and_then(|number| number.parse::<f64>().ok());
    kilobytes.unwrap_or(0.0) / 1000.0
}

/// Every file below a folder, by its path from it.
pub fn read(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let files = walkdir::WalkDir::new(folder)
        .into_iter()
        .map(|entry| entry.expect("an entry"));
    files
        .filter(|entry| entry.file_type().is_file())
        .map(|entry| {
            let path = entry
                .path()
                .strip_prefix(folder)
                .expect("below it")
                .to_string_lossy()
                .into_owned();
            (path, fs::read(entry.path()).expect("a file"))
        })
        .collect()
}

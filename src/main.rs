//! The command line: `notchbook --help` tells what it does.

use std::process::ExitCode;

fn main() -> ExitCode {
    notchbook::cli::run()
}

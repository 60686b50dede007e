//! Checksums, in the form that `sha256sum --check` reads.

use crate::source::sha256;

/// A line for each file, by its path, in their order.
pub fn checksums<'a>(files: impl Iterator<Item = (&'a str, &'a [u8])>) -> String {
    let mut lines: Vec<(&str, String)> = files.map(|(path, bytes)| (path, sha256(bytes))).collect();
    lines.sort_unstable();
    lines.into_iter().map(|(path, sum)| format!("{sum}  {path}\n")).collect()
}

//! What says whether a file is still the same.

use sha2::{Digest, Sha256};

/// SHA-256 (FIPS 180-4) in small hexadecimal digits.
pub fn sha256(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect()
}

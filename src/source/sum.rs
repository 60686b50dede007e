//! What says whether bytes are still the same: checksums of files, and of all that something is made from.

use sha2::{Digest, Sha256};

/// SHA-256 (FIPS 180-4) in small hexadecimal digits.
pub fn sha256(bytes: &[u8]) -> String {
    Sum::digits(Sha256::digest(bytes).as_slice())
}

/// The checksum of several parts in their order. Each goes in behind its length, so that no two lists of parts give the
/// same bytes.
#[derive(Clone, Default)]
pub struct Sum(Sha256);

impl Sum {
    /// Nothing yet.
    pub fn new() -> Sum {
        Sum::default()
    }

    /// With one part more.
    #[must_use]
    pub fn with(mut self, part: impl AsRef<[u8]>) -> Sum {
        self.take(part);
        self
    }

    /// Takes one part more.
    pub fn take(&mut self, part: impl AsRef<[u8]>) {
        let part = part.as_ref();
        self.0.update((part.len() as u64).to_le_bytes());
        self.0.update(part);
    }

    /// In small hexadecimal digits.
    pub fn finish(self) -> String {
        Sum::digits(self.0.finalize().as_slice())
    }

    fn digits(bytes: &[u8]) -> String {
        bytes.iter().map(|byte| format!("{byte:02x}")).collect()
    }
}

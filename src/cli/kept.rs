//! The cache of a run: PDFs that an earlier one set of the very same things, and what it made and told.

use std::path::Path;
use std::sync::{Mutex, PoisonError};

use serde::Serialize;

use super::args::CacheArgs;
use super::{Refusal, output};
use crate::out::{Cache, OutFault, program};
use crate::source::Sum;
use crate::typeset::{PressFault, Printed};

/// Where a cache lies unless another place is named, from the folder of what is made.
const BESIDE: &str = ".notchbook-cache";
/// How many bytes stand before a PDF in its entry: the count of its pages.
const COUNT: usize = size_of::<u64>();

/// The cache of one run.
pub(super) struct Kept {
    cache: Cache,
    program: String,
    /// What first kept an entry from being written.
    fault: Mutex<Option<OutFault>>,
}

impl Kept {
    /// The cache that a command names, or that beside what it makes.
    pub fn new(args: &CacheArgs, out: &Path) -> Kept {
        let folder = args.cache.clone().unwrap_or_else(|| out.join(BESIDE));
        Kept { cache: Cache::at(&folder), program: program(), fault: Mutex::default() }
    }

    /// What is kept under the checksum of what a document is made of, or the document as it is made now. One at which
    /// the typesetter grumbles is made anew each time, so that what it says is told each time.
    pub fn or_made(
        &self,
        made_of: &str,
        make: impl FnOnce() -> Result<Printed, Vec<PressFault>>,
    ) -> Result<Printed, Vec<PressFault>> {
        let key = self.key(made_of);
        if let Some(printed) = self.cache.recall(&key).and_then(opened) {
            return Ok(printed);
        }
        let printed = make()?;
        if printed.warnings.is_empty() {
            self.keep(&key, &closed(&printed));
        }
        Ok(printed)
    }

    /// What is kept of a run under the checksum of what it was asked for.
    pub fn recall(&self, made_of: &str) -> Option<Vec<u8>> {
        self.cache.recall(&self.key(made_of))
    }

    /// Keeps what is to be known of a run.
    pub fn keep_record(&self, made_of: &str, record: &impl Serialize) {
        if let Ok(bytes) = serde_json::to_vec(record) {
            self.keep(&self.key(made_of), &bytes);
        }
    }

    fn key(&self, made_of: &str) -> String {
        Sum::new().with(&self.program).with(made_of).finish()
    }

    fn keep(&self, key: &str, bytes: &[u8]) {
        if let Err(fault) = self.cache.keep(key, bytes) {
            self.fault.lock().unwrap_or_else(PoisonError::into_inner).get_or_insert(fault);
        }
    }

    /// Takes out what is too old, and tells what could not be kept: nothing is lost by it but time.
    pub fn settle(&self) {
        let trimmed = self.cache.trim();
        let fault = self.fault.lock().unwrap_or_else(PoisonError::into_inner).take();
        if let Some(fault) = fault.or(trimmed.err()) {
            let act = "nothing is lost by it but time; name another folder with --cache";
            output::refuse(&Refusal::new(format!("the cache is of no use: {}", fault.fact), act));
        }
    }
}

fn closed(printed: &Printed) -> Vec<u8> {
    [&(printed.pages as u64).to_le_bytes()[..], &printed.pdf].concat()
}

fn opened(entry: Vec<u8>) -> Option<Printed> {
    let (count, pdf) = entry.split_at_checked(COUNT)?;
    let pages = usize::try_from(u64::from_le_bytes(count.try_into().ok()?)).ok()?;
    Some(Printed { pdf: pdf.to_vec(), pages, warnings: Vec::new() })
}

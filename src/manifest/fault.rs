//! Why a text is no manifest that can be read.

/// The fact and the act.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ManifestFault {
    /// What is wrong, without a full stop.
    pub fact: String,
    /// What to do, without a full stop.
    pub act: String,
}

impl ManifestFault {
    pub(super) fn new(fact: impl Into<String>) -> ManifestFault {
        let act = "take the manifest as it was published; one that was edited by hand is none";
        ManifestFault { fact: fact.into(), act: act.to_owned() }
    }

    pub(super) fn act(self, act: &str) -> ManifestFault {
        ManifestFault { act: act.to_owned(), ..self }
    }
}

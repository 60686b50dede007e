//! A share of the booklets, so that several machines make a catalogue together.

use std::str::FromStr;

/// One of several shares.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Share {
    /// Which, from 1.
    number: usize,
    /// Of how many.
    of: usize,
}

impl Share {
    /// Whether a booklet belongs to this share, by its place among all that are asked for. They are dealt out in turn, as
    /// cards are, since neighbours in a catalogue are often alike in length.
    pub fn has(self, place: usize) -> bool {
        place % self.of == self.number - 1
    }
}

impl FromStr for Share {
    type Err = String;

    fn from_str(text: &str) -> Result<Share, String> {
        let number = |digits: &str| digits.parse::<usize>().ok().filter(|number| *number > 0);
        let both = text.split_once('/').and_then(|(which, of)| Some((number(which)?, number(of)?)));
        match both {
            Some((number, of)) if number <= of => Ok(Share { number, of }),
            Some((number, of)) => Err(format!("there is no share {number} of {of}: shares are counted from 1")),
            None => Err("write which share, and of how many: 3/8".to_owned()),
        }
    }
}

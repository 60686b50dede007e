//! The words of the house that stand in drawings: layouts, sheets and their margins.

use std::collections::BTreeMap;

/// Words by their names, in the language of the booklet.
#[derive(Debug, Clone, Default)]
pub struct HouseWords {
    words: BTreeMap<String, String>,
}

/// No words at all, for a set of no sizes.
static NONE: HouseWords = HouseWords { words: BTreeMap::new() };

impl HouseWords {
    /// Words by their names.
    pub fn of(words: impl IntoIterator<Item = (String, String)>) -> HouseWords {
        HouseWords { words: words.into_iter().collect() }
    }

    /// No words.
    pub fn none() -> &'static HouseWords {
        &NONE
    }

    /// The words behind a name; the name itself where there are none.
    pub fn say(&self, name: &str) -> String {
        self.words.get(name).cloned().unwrap_or_else(|| name.to_owned())
    }

    /// Names in a row: `front, back and lining`.
    pub fn listed(&self, names: &[String]) -> String {
        match names {
            [first @ .., last] if !first.is_empty() => format!("{} {} {last}", first.join(", "), self.say("and")),
            names => names.concat(),
        }
    }

    /// The same with its `{places}` filled in.
    pub fn fill(&self, name: &str, places: &[(&str, &str)]) -> String {
        // Each place is filled from the house's words, so that braces in a name stay as they are.
        let mut out = String::new();
        let words = self.say(name);
        let mut rest = words.as_str();
        while let Some((before, after)) = rest.split_once('{') {
            out.push_str(before);
            let filled = after.split_once('}').and_then(|(place, rest)| {
                let (_, words) = places.iter().find(|(name, _)| *name == place)?;
                Some((*words, rest))
            });
            match filled {
                Some((words, after)) => {
                    out.push_str(words);
                    rest = after;
                }
                None => {
                    out.push('{');
                    rest = after;
                }
            }
        }
        out.push_str(rest);
        out
    }
}

//! What each sort of work needs at hand, and by which words makers know it: one file of the house for one language.

use std::collections::BTreeMap;

use serde::Deserialize;

use crate::diag::Findings;
use crate::faults::FILE_UNREADABLE;
use crate::source::{House, Sources, Span};

/// The file that holds them.
const FILE: &str = "needs-en.json";

/// Words of things that are needed, and of what can harm.
#[derive(Debug, Clone, Default, Deserialize)]
pub struct Needs {
    /// Names that stand for all usual tools together.
    pub everything: Vec<String>,
    /// What is needed, by the names that the checks know.
    pub tools: BTreeMap<String, Need>,
    /// How materials are drawn, by the words for them; the first that fits holds.
    #[serde(default)]
    pub looks: Vec<Look>,
    /// Words of what can harm, and of those whom it can harm.
    pub harm: Harm,
}

/// A thing that some work needs.
#[derive(Debug, Clone, Default, Deserialize)]
pub struct Need {
    /// What it is called in a message, with its article.
    pub called: String,
    /// What to write in the list.
    pub write: String,
    /// Words by which it is known.
    pub names: Vec<String>,
    /// Words by which it is known where nothing else stands beside them.
    #[serde(default)]
    pub exactly: Vec<String>,
    /// Words that hold one of the names and mean something else.
    #[serde(default)]
    pub not: Vec<String>,
    /// Words of a work fact that does without it.
    #[serde(default)]
    pub without: Vec<String>,
}

/// A material that is drawn in a way of its own.
#[derive(Debug, Clone, Default, Deserialize)]
pub struct Look {
    /// The material, as `look:` is written.
    pub look: String,
    /// Words by which it is known.
    pub names: Vec<String>,
    /// Words that hold one of the names and mean something else.
    #[serde(default)]
    pub not: Vec<String>,
}

/// Words of what can harm. Each list holds phrases, in small letters and without an ending for many.
#[derive(Debug, Clone, Default, Deserialize)]
pub struct Harm {
    /// Those who are children.
    pub child: Vec<String>,
    /// Words behind an age in months.
    pub ages_months: Vec<String>,
    /// Words behind an age in years.
    pub ages_years: Vec<String>,
    /// Words before an age in years.
    pub ages_before: Vec<String>,
    /// Those who are grown up.
    pub adult: Vec<String>,
    /// Things that are played with.
    pub toy: Vec<String>,
    /// Those who are too small for any toy.
    pub babies: Vec<String>,
    /// How one says for whom a thing is made.
    pub made_for: Vec<String>,
    /// Claims that a denial in their sentence takes back.
    pub claims: Vec<String>,
    /// Claims that hold a denial themselves.
    pub claims_outright: Vec<String>,
    /// Claims once they go on with one of `kept_safe`.
    pub claims_for: Vec<String>,
    /// Words that call a thing safe.
    pub safe: Vec<String>,
    /// Verbs by which a thing is called so.
    pub safe_verbs: Vec<String>,
    /// What follows where a place or a deed is called so, and not the thing.
    pub safe_deeds: Vec<String>,
    /// Those whom a claim may be about.
    pub kept_safe: Vec<String>,
    /// Words by which a sentence denies, asks or forbids.
    pub denials: Vec<String>,
    /// Words for washing.
    pub wash: Vec<String>,
    /// Words for the hottest wash.
    pub boil: Vec<String>,
    /// Words for drying by machine.
    pub tumble: Vec<String>,
    /// Notes of a material that may not be washed.
    pub never_wash: Vec<String>,
    /// Notes of a material that may not be dried by machine.
    pub never_tumble: Vec<String>,
    /// What materials commonly stand; the most delicate first.
    pub materials: Vec<Material>,
    /// Words by which a sentence warns.
    pub warnings: Vec<String>,
    /// What can hurt.
    pub dangers: Vec<Danger>,
    /// Verbs by which a sentence has something done to a thing.
    pub advises: Vec<String>,
    /// Words by which it forbids that, or leaves it to be judged.
    pub no_advice: Vec<String>,
    /// Words behind which stands what is not to be taken.
    pub forbids: Vec<String>,
    /// How a caution says that something is not to be there at all.
    pub never_adds: Vec<String>,
    /// Words that let be what the lists name.
    pub of_ones_own: Vec<String>,
    /// What harms a child, beside what the dangers name.
    pub hazards_for_a_child: Vec<String>,
    /// Phrases that hold such a word and mean something else, "a glass of water".
    pub harmless: Vec<String>,
    /// What is tied.
    pub ties: Vec<String>,
    /// Words that make something longer.
    pub lengthens: Vec<String>,
    /// How a thing comes to hang from the neck.
    pub hung: Vec<String>,
    /// Words between that and the neck.
    pub around: Vec<String>,
    /// Words before a thing that is meant to be there.
    pub articles: Vec<String>,
    /// What ties or catches.
    pub cords: Vec<String>,
    /// Where the neck is.
    pub neck: Vec<String>,
    /// What has such a name and is no cord.
    pub no_cords: Vec<String>,
}

/// A material and the care that it commonly stands.
#[derive(Debug, Clone, Default, Deserialize)]
pub struct Material {
    /// Words by which it is known.
    pub names: Vec<String>,
    /// The hottest wash, in °C.
    pub wash: i64,
    /// Whether it may be dried by machine.
    pub tumble: bool,
}

/// Something that can hurt.
#[derive(Debug, Clone, Default, Deserialize)]
pub struct Danger {
    /// What it is called in a message.
    pub called: String,
    /// Words by which it is known.
    pub names: Vec<String>,
    /// Words by which a caution speaks of it.
    pub told_as: Vec<String>,
    /// Kinds of notions that are such a thing.
    pub kinds: Vec<String>,
    /// Whether it is met in the words of a step, for anybody; otherwise among the notions, for children.
    pub in_words: bool,
    /// What it does.
    pub because: String,
}

/// Reads the words of the house, or the booklet's own; where those cannot be read, that is a finding, and the house's
/// stand in for them.
pub fn read_needs(house: &House, sources: &Sources, findings: &mut Findings) -> Needs {
    let own = house.templates.iter().find(|asset| asset.name == FILE);
    match serde_json::from_str(own.map_or("", |asset| asset.text())) {
        Ok(needs) => {
            let needs: Needs = needs;
            // A booklet's own file that says nothing of looks leaves those of the house.
            let looks = if needs.looks.is_empty() { of_house().looks } else { needs.looks };
            return Needs { looks, ..needs };
        }
        Err(error) => {
            let file = own.and_then(|asset| asset.own.as_ref()).and_then(|path| sources.by_path(path));
            if let Some(file) = file {
                let end = sources.file(file).text.find('\n').unwrap_or(0);
                findings.push(
                    FILE_UNREADABLE
                        .at(Span::new(file, 0..end), format!("the names of tools cannot be read: {error}"))
                        .hint("write them as the house does, or take the file out"),
                );
            }
        }
    }
    of_house()
}

fn of_house() -> Needs {
    // The house's own file is read by every test.
    serde_json::from_str(House::plain().template(FILE)).unwrap_or_default()
}

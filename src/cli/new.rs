//! `new`: a small worked booklet that checks clean, to start from.

use std::path::Path;

use super::args::NewArgs;
use super::{Outcome, Refusal, choose, output};
use crate::out::{self, NewFile, Origin};

const FILES: &[(&str, &str)] = &[
    ("booklet.yaml", include_str!("../../templates/starter/booklet.yaml")),
    ("make.md", include_str!("../../templates/starter/make.md")),
    ("figures/cut.svg", include_str!("../../templates/starter/figures/cut.svg")),
    ("figures/sew.svg", include_str!("../../templates/starter/figures/sew.svg")),
    ("figures/turn.svg", include_str!("../../templates/starter/figures/turn.svg")),
];

pub(super) fn run(folder: Option<&Path>, args: &NewArgs) -> Result<Outcome, Refusal> {
    let name = args.name.as_str();
    let right = |letter: char| letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == '-';
    if !name.starts_with(|letter: char| letter.is_ascii_lowercase()) || !name.chars().all(right) {
        return Err(Refusal::new(
            format!("`{name}` cannot be a booklet's name"),
            "use small letters, digits and hyphens, a letter first: `harbour-bag`",
        ));
    }
    let home = choose::folder(folder)?;
    let place = home.shown().join(name);
    if place.symlink_metadata().is_ok() {
        return Err(Refusal::new(format!("`{}` is there already", place.display()), "take another name"));
    }
    let origin = Origin { kind: "starter".into(), of: name.to_owned() };
    let file = |(path, text): &(&str, &str)| {
        let bytes = text.replace("STARTER", &spoken(name)).into_bytes();
        NewFile { path: (*path).to_owned(), bytes, origin: origin.clone() }
    };
    out::put_new(&place, &FILES.iter().map(file).collect::<Vec<_>>())?;
    for (path, _) in FILES {
        output::line(&place.join(path).display().to_string());
    }
    output::line(&format!("next: `notchbook check {name}`, then `notchbook build {name}`"));
    Ok(Outcome::Clean)
}

/// `harbour-bag` as a title: "Harbour Bag".
fn spoken(name: &str) -> String {
    let words: Vec<String> = name
        .split('-')
        .map(|word| {
            let mut letters = word.chars();
            letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
        })
        .collect();
    words.join(" ")
}

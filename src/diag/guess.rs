//! "Did you mean": the nearest of the names that would have been right.

/// The candidate nearest to `word`, if one is near enough to be a slip of the hand.
pub fn nearest<'a>(word: &str, candidates: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let word_lower = word.to_lowercase();
    let allowed = match word.chars().count() {
        0..=2 => 1,
        3..=5 => 2,
        length => length / 3,
    };
    candidates
        .into_iter()
        .filter(|candidate| *candidate != word)
        .map(|candidate| (strsim::damerau_levenshtein(&word_lower, &candidate.to_lowercase()), candidate))
        .filter(|(distance, _)| *distance <= allowed)
        .min_by(|a, b| a.0.cmp(&b.0).then_with(|| a.1.cmp(b.1)))
        .map(|(_, candidate)| candidate)
}

/// Whether `word` is `meant` with other capitals, or with one letter too many, too few, wrong or out of
/// its place.
pub fn is_slip(word: &str, meant: &str) -> bool {
    strsim::damerau_levenshtein(&word.to_lowercase(), meant) <= 1
}

/// A hint that names the nearest candidate, or lists them all when few, or `otherwise`.
pub fn did_you_mean<'a>(word: &str, candidates: impl IntoIterator<Item = &'a str>, otherwise: &str) -> String {
    let all: Vec<&str> = candidates.into_iter().collect();
    match nearest(word, all.iter().copied()) {
        Some(best) => format!("did you mean `{best}`?"),
        None if otherwise.is_empty() && !all.is_empty() && all.len() <= 12 => {
            format!("write one of: {}", all.join(", "))
        }
        None => otherwise.to_owned(),
    }
}

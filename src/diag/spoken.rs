//! Names inside a sentence: one hand for all stages that tell or print them.

/// `a`, `a and b`, `a, b and c`; empty for none.
pub fn listed<S: AsRef<str>>(names: &[S]) -> String {
    match names {
        [] => String::new(),
        [one] => one.as_ref().to_owned(),
        [before @ .., last] => {
            let before: Vec<&str> = before.iter().map(AsRef::as_ref).collect();
            format!("{} and {}", before.join(", "), last.as_ref())
        }
    }
}

/// A name in the middle of a sentence: "Zip tab" is "zip tab"; an abbreviation such as "PUL fabric" keeps
/// its capitals.
pub fn in_sentence(name: &str) -> String {
    let mut letters = name.chars();
    match letters.next() {
        Some(first) if !letters.clone().next().is_some_and(char::is_uppercase) => {
            first.to_lowercase().chain(letters).collect()
        }
        _ => name.to_owned(),
    }
}

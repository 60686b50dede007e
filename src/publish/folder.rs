//! What the folder of an edition is called.

/// The name of an edition's folder: the edition with nothing in it that a disk or a shop may not take.
pub fn edition_folder(edition: &str) -> String {
    let plain = |letter: char| if letter.is_ascii_alphanumeric() || "-._".contains(letter) { letter } else { '-' };
    let name: String = edition.trim().chars().map(plain).collect();
    // A name that begins with a dot is hidden, and one of dots alone leads elsewhere.
    if name.starts_with(|first: char| first.is_ascii_alphanumeric()) { name } else { format!("edition-{name}") }
}

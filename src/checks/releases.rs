//! Numbers of editions, so that checks of the record can hold one against another.

use std::cmp::Ordering;

/// Which of two editions is the newer by its number; `None` where one of them has none: "Spring" is a name.
pub fn by_number(one: &str, other: &str) -> Option<Ordering> {
    Some(number(one)?.cmp(&number(other)?))
}

/// Whether both are one and the same edition.
pub fn same(one: &str, other: &str) -> bool {
    one.trim() == other.trim() || by_number(one, other) == Some(Ordering::Equal)
}

/// `1.10` as 1 and 10; a nought at the end says nothing.
fn number(text: &str) -> Option<Vec<u64>> {
    let text = text.trim().trim_start_matches(['v', 'V']);
    let mut parts: Vec<u64> = text.split('.').map(|part| part.parse().ok()).collect::<Option<_>>()?;
    while parts.len() > 1 && parts.last() == Some(&0) {
        parts.pop();
    }
    Some(parts)
}

//! A page taken apart: its tags with their attributes, and the words between them.

/// A piece of a page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Bit {
    /// An opening tag and its attributes, as they stand.
    Open(String, Vec<(String, String)>),
    /// A closing tag.
    Close(String),
    /// Words, or the inside of a style sheet or a script.
    Words(String),
}

/// Tags that are never closed.
const VOID: [&str; 5] = ["meta", "img", "input", "br", "hr"];

/// Takes a page apart, and holds it to be well formed: every tag is closed where it was opened.
pub fn bits(page: &str) -> Vec<Bit> {
    let mut rest = page
        .strip_prefix("<!doctype html>\n")
        .expect("a page of HTML");
    let mut bits = Vec::new();
    let mut open: Vec<String> = Vec::new();
    while let Some(at) = rest.find('<') {
        if at > 0 {
            bits.push(Bit::Words(rest[..at].to_owned()));
        }
        let end = end_of_tag(&rest[at..]) + at;
        let tag = &rest[at + 1..end];
        rest = &rest[end + 1..];
        if let Some(name) = tag.strip_prefix('/') {
            assert_eq!(
                open.pop().as_deref(),
                Some(name),
                "closed before: {:?}",
                rest.get(..80)
            );
            bits.push(Bit::Close(name.to_owned()));
            continue;
        }
        let (name, attributes) = read(tag);
        if !VOID.contains(&name.as_str()) {
            open.push(name.clone());
        }
        let raw = matches!(name.as_str(), "style" | "script");
        bits.push(Bit::Open(name.clone(), attributes));
        if raw {
            // Nothing is read as a mark in here but the tag that closes it.
            let end = rest.find(&format!("</{name}")).expect("it is closed");
            bits.push(Bit::Words(rest[..end].to_owned()));
            rest = &rest[end..];
        }
    }
    assert!(open.is_empty(), "left open: {open:?}");
    bits
}

fn end_of_tag(text: &str) -> usize {
    let mut quoted = false;
    for (at, letter) in text.char_indices() {
        match letter {
            '"' => quoted = !quoted,
            '>' if !quoted => return at,
            _ => {}
        }
    }
    panic!("a tag without an end: {:?}", text.get(..80));
}

fn read(tag: &str) -> (String, Vec<(String, String)>) {
    let (name, mut rest) = tag.split_once([' ', '\n']).unwrap_or((tag, ""));
    let mut attributes = Vec::new();
    while let Some((key, after)) = rest.split_once("=\"") {
        let (value, after) = after.split_once('"').expect("a quoted value");
        let mut keys: Vec<&str> = key.split_whitespace().collect();
        let last = keys.pop().expect("the name of an attribute");
        attributes.extend(keys.iter().map(|key| ((*key).to_owned(), String::new())));
        attributes.push((last.to_owned(), plain(value)));
        rest = after;
    }
    let bare = rest.split_whitespace();
    attributes.extend(bare.map(|key| (key.to_owned(), String::new())));
    (name.to_owned(), attributes)
}

/// Words without the marks that escape letters.
pub fn plain(text: &str) -> String {
    let marks = [
        ("&lt;", "<"),
        ("&gt;", ">"),
        ("&quot;", "\""),
        ("&#x27;", "'"),
        ("&#x2f;", "/"),
        ("&nbsp;", "\u{a0}"),
        ("&amp;", "&"),
    ];
    let mut text = text.to_owned();
    for (mark, letter) in marks {
        text = text.replace(mark, letter);
    }
    text
}

/// The value of an attribute.
pub fn attribute<'a>(attributes: &'a [(String, String)], name: &str) -> Option<&'a str> {
    let found = attributes.iter().find(|(key, _)| key == name)?;
    Some(found.1.as_str())
}

/// The bits that are seen when one size is chosen.
pub fn seen(bits: &[Bit], size: &str) -> Vec<Bit> {
    let mut out = Vec::new();
    // How deep in something that another size has alone.
    let mut hidden = 0;
    for bit in bits {
        if let Bit::Open(name, attributes) = bit
            && !VOID.contains(&name.as_str())
        {
            let other = attribute(attributes, "data-for")
                .is_some_and(|own| !own.split(' ').any(|one| one == size));
            if hidden > 0 || other {
                hidden += 1;
                continue;
            }
        }
        match bit {
            Bit::Close(_) if hidden > 0 => hidden -= 1,
            _ if hidden > 0 => {}
            _ => out.push(bit.clone()),
        }
    }
    out
}

/// The words among the bits, and the descriptions of their pictures, with the spaces of plain text.
pub fn words(bits: &[Bit]) -> String {
    let mut out = String::new();
    let mut raw = false;
    for bit in bits {
        match bit {
            Bit::Open(name, attributes) => {
                raw = matches!(name.as_str(), "style" | "script");
                if let Some(alt) = attribute(attributes, "alt") {
                    out.push_str(&format!(" [{alt}] "));
                }
                if !matches!(
                    name.as_str(),
                    "span" | "b" | "strong" | "em" | "a" | "code" | "sup" | "sub"
                ) {
                    out.push(' ');
                }
            }
            Bit::Close(_) => raw = false,
            Bit::Words(words) if !raw => out.push_str(&plain(words)),
            Bit::Words(_) => {}
        }
    }
    out.split_whitespace().collect::<Vec<_>>().join(" ")
}

//! What the page's templates may call: words of the house, lists, figures, and where references lead.

use std::sync::Arc;

use minijinja::value::{Kwargs, Rest, Value};
use minijinja::{Environment, Error, ErrorKind};
use serde_json::{Map, Value as Json};

/// The words of the house, by their names.
type Labels = Arc<Map<String, Json>>;

/// Hands the functions to the templates.
pub(super) fn teach(environment: &mut Environment<'_>, labels: &Map<String, Json>) {
    let labels: Labels = Arc::new(labels.clone());
    let own = Arc::clone(&labels);
    environment.add_function("word", move |key: &str, places: Kwargs| filled(&own, key, &places));
    let own = Arc::clone(&labels);
    environment.add_function("unit", move |unit: &str| unit_word(&own, unit));
    let own = Arc::clone(&labels);
    environment.add_function("listed", move |items: Vec<String>, last: Rest<String>| {
        let last = last.first().cloned().unwrap_or_else(|| label(&own, "and").unwrap_or_default().to_owned());
        listed(&items, &last)
    });
    let own = Arc::clone(&labels);
    environment.add_function("stake_names", move |names: Vec<Value>| stake_names(&own, &names));
    environment.add_function("mail_in", |words: &str| mail_in(words).unwrap_or_default());
    environment.add_function("aim", |to: &str| aim(to));
    environment.add_function("unknown", |what: &str| -> Result<String, Error> {
        Err(Error::new(ErrorKind::InvalidOperation, format!("the templates do not know `{what}`")))
    });
    environment.add_filter("held", |address: &str| held(address));
    environment.add_filter("fractions", |number: &str| Value::from_safe_string(fractions(number)));
}

fn label<'a>(labels: &'a Map<String, Json>, key: &str) -> Option<&'a str> {
    labels.get(key).and_then(Json::as_str)
}

/// A word of the house with its {places} filled by name.
fn filled(labels: &Map<String, Json>, key: &str, places: &Kwargs) -> Result<String, Error> {
    let mut out = label(labels, key)
        .ok_or_else(|| Error::new(ErrorKind::InvalidOperation, format!("the house has no word `{key}`")))?
        .to_owned();
    for name in places.args() {
        out = out.replace(&format!("{{{name}}}"), &places.get::<Value>(name)?.to_string());
    }
    places.assert_all_used()?;
    Ok(out)
}

/// A unit's sign, or the word of the house behind its key.
fn unit_word(labels: &Map<String, Json>, unit: &str) -> String {
    label(labels, &format!("unit_{unit}")).unwrap_or(unit).to_owned()
}

/// `a`, `a and b`, `a, b and c`.
fn listed(items: &[String], last: &str) -> String {
    match items {
        [] => String::new(),
        [only] => only.clone(),
        [before @ .., end] => format!("{} {last} {end}", before.join(", ")),
    }
}

/// Steps and parts by the words that makers look for.
fn stake_names(labels: &Map<String, Json>, names: &[Value]) -> Result<Vec<String>, Error> {
    let named = |name: &Value, key: &str, word: &str| -> Result<Option<String>, Error> {
        let number = name.get_attr(key)?;
        let label = label(labels, word).unwrap_or_default();
        Ok((!number.is_undefined()).then(|| label.replace("{n}", &number.to_string())))
    };
    let mut found = Vec::new();
    for name in names.iter().filter(|name| !name.is_none()) {
        found.extend(named(name, "step", "step")?);
        found.extend(named(name, "part", "offer_part")?);
    }
    Ok(found)
}

/// The first mail address in words; `None` where they hold none.
fn mail_in(words: &str) -> Option<String> {
    let mail = |word: &str| {
        let (name, host) = word.split_once('@')?;
        let plain = |text: &str| text.chars().all(|one| one.is_ascii_alphanumeric() || "._%+-".contains(one));
        (!name.is_empty() && host.contains('.') && plain(name) && plain(host)).then(|| word.to_owned())
    };
    let around = |letter: char| !letter.is_alphanumeric();
    words.split_whitespace().find_map(|word| mail(word.trim_matches(around)))
}

/// Where a reference leads on the page: the section, and the line in it where that has lines.
fn aim(to: &str) -> Value {
    let (kind, id) = to.split_once('-').unwrap_or((to, ""));
    let (section, line) = match kind {
        "figure" => (format!("step-{id}"), None),
        "piece" => ("pieces".to_owned(), Some(to)),
        "fabric" | "notion" => ("needs".to_owned(), Some(to)),
        "term" => ("words".to_owned(), Some(to)),
        _ => (to.to_owned(), None),
    };
    minijinja::context! { section, line }
}

/// The address of a picture, which needs no escaping when it holds the picture itself.
fn held(address: &str) -> Value {
    let plain = address.starts_with("data:image/") && !address.contains(['"', '<', '>', '&']);
    if plain { Value::from_safe_string(address.to_owned()) } else { Value::from(address) }
}

/// A number with its fractions set as such: `7 7/8` as 7⅞. The marks are ours, and the number is escaped.
fn fractions(number: &str) -> String {
    let mut out = String::new();
    for (at, word) in number.split_inclusive(&[' ', '\u{a0}', '(', ')', ','][..]).enumerate() {
        let (figure, after) = match word.char_indices().next_back() {
            Some((end, last)) if !last.is_ascii_digit() => (&word[..end], &word[end..]),
            _ => (word, ""),
        };
        match figure.split_once('/') {
            Some((above, below)) if is_number(above) && is_number(below) => {
                if at > 0 && out.ends_with('\u{a0}') {
                    out.pop();
                    out.push('\u{202f}');
                }
                out.push_str(&fraction(above, below));
            }
            _ => out.push_str(&escaped(figure)),
        }
        out.push_str(&escaped(after));
    }
    out
}

fn is_number(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit())
}

fn fraction(above: &str, below: &str) -> String {
    let sign = match (above, below) {
        ("1", "2") => "½",
        ("1", "4") => "¼",
        ("3", "4") => "¾",
        ("1", "8") => "⅛",
        ("3", "8") => "⅜",
        ("5", "8") => "⅝",
        ("7", "8") => "⅞",
        ("1", "3") => "⅓",
        ("2", "3") => "⅔",
        _ => {
            return format!("<span class=\"fraction\"><sup>{above}</sup>\u{2044}<sub>{below}</sub></span>");
        }
    };
    sign.to_owned()
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

//! A mail or web address cannot be what its author meant.
//!
//! ## Why it matters
//! A maker who is stuck writes to `contact`. If the address is mistyped, she gets no answer, and never learns why.
//!
//! ## Wrong
//! ```yaml
//! contact: help@saltmarsh-sewing
//! ```
//!
//! ## Right
//! ```yaml
//! contact: help@saltmarsh-sewing.example
//! ```
//!
//! ## Limits
//! Looks at `contact`, at `search:`, at the `video:` and at every link in words. A mail address has a name, one `@` and a domain with a dot; a web
//! address begins with `http://` or `https://` (a simple reading of RFC 5321 and RFC 3986, from memory). Whether anybody
//! answers there cannot be known. A phone number, a postal address and `@name` are left alone.

use super::judge::{Judge, Subject};
use super::said::each_prose;
use crate::diag::{Check, Finding, Findings, Group};
use crate::model::{Inline, Text};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("address-malformed", Group::Facts, include_str!("address_malformed.rs")).waivable(),
    run,
);

/// Looks at the contact and at every link.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    findings.extend(subject.draft.facts.contact.iter().filter_map(contact));
    let mut links = Vec::new();
    each_prose(subject.draft, &mut |blocks| {
        blocks.iter().for_each(|block| {
            block.each_inline(&mut |inline| {
                if let Inline::Link(address, _) = inline {
                    links.push(address);
                }
            });
        });
    });
    links.extend(subject.draft.facts.video.iter().map(|video| &video.url));
    // What a shop knows it by is words, and of one word where it is an address.
    let sought = subject.draft.facts.sourcing().flat_map(|sourcing| &sourcing.search);
    links.extend(sought.filter(|line| !line.text.contains(char::is_whitespace)));
    for address in links {
        if let Some(fault) = fault(&address.text) {
            findings.push(told(address, &address.text, fault));
        }
    }
}

/// The first faulty address of a contact, or that it holds none.
fn contact(text: &Text) -> Option<Finding> {
    let words = text.text.split_whitespace().map(|word| word.trim_matches(AROUND)).filter(|word| !word.is_empty());
    let words: Vec<&str> = words.collect();
    if let Some((word, fault)) = words.iter().find_map(|word| Some((word, fault(word)?))) {
        return Some(told(text, word, fault));
    }
    let [word] = words.as_slice() else { return None };
    let reaches = is_host(word) || word.starts_with('@') || word.contains(['@', '/', ':']);
    if reaches || word.chars().any(|letter| letter.is_ascii_digit()) {
        return None;
    }
    Some(told(text, word, "it has neither an `@` nor a domain"))
}

const AROUND: [char; 14] = ['<', '>', '(', ')', '[', ']', ',', ';', ':', '.', '!', '?', '"', '\''];

fn told(text: &Text, address: &str, fault: &str) -> Finding {
    CHECK
        .at(text.span, format!("`{address}` is no address: {fault}"))
        .hint("write it as `help@pebble-lane.example` or `https://pebble-lane.example`")
}

/// What is wrong with an address; `None` where nothing is, and where it is of another sort.
fn fault(address: &str) -> Option<&'static str> {
    let mail = address.strip_prefix("mailto:");
    if let Some(mail) = mail.or(address.contains('@').then_some(address)).filter(|_| !address.contains("://")) {
        // A name behind an `@` alone is known to a service.
        return mail_fault(mail.split('?').next().unwrap_or(mail)).filter(|_| !mail.starts_with('@'));
    }
    let web = address.contains("://") || address.to_lowercase().starts_with("http") || address.starts_with("www.");
    if web { web_fault(address) } else { None }
}

fn mail_fault(mail: &str) -> Option<&'static str> {
    let (name, host) = mail.split_once('@')?;
    if host.contains('@') {
        return Some("it has two `@`");
    }
    let right = |letter: char| letter.is_alphanumeric() || "._%+-'&".contains(letter);
    if name.is_empty() || !name.chars().all(right) || name.starts_with('.') || name.ends_with('.') {
        return Some("what stands before the `@` is no name");
    }
    (!is_host(host)).then_some("what stands behind the `@` is no domain, such as `pebble-lane.example`")
}

fn web_fault(address: &str) -> Option<&'static str> {
    let lower = address.to_lowercase();
    let rest = match lower.split_once("://") {
        Some(("http" | "https", rest)) => rest,
        Some((scheme, _)) if ["ftp", "ftps", "tel", "geo"].contains(&scheme) => return None,
        None if lower.starts_with("www.") => &lower,
        _ => return Some("a web address begins with `https://`"),
    };
    let host = rest.split(['/', '?', '#', ':']).next().unwrap_or("");
    (!is_host(host)).then_some("what stands behind `https://` is no domain, such as `pebble-lane.example`")
}

/// A domain with a dot: `pebble-lane.example`.
fn is_host(host: &str) -> bool {
    let label = |label: &str| {
        let right = label.chars().all(|letter| letter.is_alphanumeric() || letter == '-');
        right && !label.is_empty() && !label.starts_with('-') && !label.ends_with('-')
    };
    let labels: Vec<&str> = host.split('.').collect();
    let last = labels[labels.len() - 1];
    let top = last.chars().count() >= 2 && last.chars().any(char::is_alphabetic);
    labels.len() >= 2 && labels.iter().all(|part| label(part)) && top
}

//! Nothing that an author writes is read as marks, nothing runs but the house's script, and nothing is asked for.

use base64::Engine as _;
use base64::prelude::BASE64_STANDARD;
use notchbook::diag::Level;
use sha2::{Digest, Sha256};

use super::tags::{Bit, attribute, bits};
use super::{bench, facts, page, pouch};

/// The insides of all tags of one name.
fn inside(bits: &[Bit], tag: &str) -> Vec<String> {
    let pairs = bits.windows(2).filter_map(|pair| match pair {
        [Bit::Open(name, _), Bit::Words(words)] if name == tag => Some(words.clone()),
        _ => None,
    });
    pairs.collect()
}

fn tags(bits: &[Bit]) -> Vec<(String, Vec<String>)> {
    let tag = |bit: &Bit| match bit {
        Bit::Open(name, attributes) => {
            let keys = attributes.iter().map(|(key, _)| key.clone());
            Some((name.clone(), keys.collect()))
        }
        _ => None,
    };
    bits.iter().filter_map(tag).collect()
}

#[test]
fn nothing_runs_but_the_house_s_script_and_nothing_is_asked_for() {
    bench::demos(|name, workshop| {
        let bits = bits(&page(name, workshop).expect("a page"));
        let scripts = inside(&bits, "script");
        let styles = inside(&bits, "style");
        let house = std::fs::read_to_string(bench::root().join("templates/page.js"));
        assert_eq!(scripts, [house.expect("the house's script")], "{name}");
        assert_eq!(styles.len(), 1, "{name}");
        let hash = |text: &str| {
            let digest = Sha256::digest(text.as_bytes());
            format!("'sha256-{}'", BASE64_STANDARD.encode(digest))
        };
        let mut policies = Vec::new();
        for bit in &bits {
            let Bit::Open(tag, attributes) = bit else {
                continue;
            };
            for (key, value) in attributes {
                assert!(!key.starts_with("on"), "{name}: <{tag} {key}>");
                match key.as_str() {
                    "style" | "srcset" | "action" | "srcdoc" | "background" => {
                        panic!("{name}: <{tag} {key}=\"{value}\">")
                    }
                    "src" => assert!(value.starts_with("data:image/"), "{name}: {value}"),
                    "href" => assert!(
                        tag == "a"
                            && ["#", "https://", "http://", "mailto:"]
                                .iter()
                                .any(|start| value.starts_with(start)),
                        "{name}: <{tag} href=\"{value}\">"
                    ),
                    _ => {}
                }
            }
            if attribute(attributes, "http-equiv").is_some() {
                policies.extend(attribute(attributes, "content").map(str::to_owned));
            }
        }
        let policy = format!(
            "default-src 'none'; img-src data:; style-src {}; script-src {}; base-uri 'none'; form-action 'none'",
            hash(&styles[0]),
            hash(&scripts[0])
        );
        assert_eq!(policies, [policy], "{name}");
        assert!(
            !styles[0].contains("url(") && !styles[0].contains("@import"),
            "{name}"
        );
    });
}

/// Words that would do something if they were read as marks.
const LOUD: &str =
    "</script><script>alert(1)</script><img src=x onerror=alert(2)>\\\"'&lt;</style>";

#[test]
fn what_an_author_writes_is_words_on_the_page() {
    let quiet = |words: &str| {
        facts(&[
            (
                "title: Tide Pouch",
                &format!(
                    "title: \"{words}\"\nskill: \"{words}\"\nsummary: \"{words}\"\ncontact: \"{words}\""
                ),
            ),
            (
                "designer: Saltmarsh Sewing Room",
                &format!("designer: \"{words}\""),
            ),
            ("name: Small", &format!("name: \"Small {words}\"")),
            ("name: Cotton", &format!("name: \"{words}\"")),
            ("name: Sewing thread", &format!("name: \"{words}\"")),
            ("Sewing machine,", &format!("\"Sewing machine {words}\",")),
            ("  Width: width", &format!("  \"Width {words}\": width")),
        ])
    };
    let made = |words: &str| {
        pouch(&[("booklet.yaml", &quiet(words))], |workshop| {
            page("pouch", workshop).expect("a page")
        })
    };
    let (plain, loud) = (made("Quiet words"), made(LOUD));
    assert!(
        loud.contains("&lt;script&gt;alert(1)"),
        "the words are not there"
    );
    assert_eq!(tags(&bits(&plain)), tags(&bits(&loud)));
}

#[test]
fn markup_in_an_author_s_markdown_is_no_markup_of_the_page() {
    let path = bench::root().join("tests/checks/_base/make.md");
    let base = std::fs::read_to_string(path).expect("the base's steps");
    let own = "`<b onclick=\"x()\">` stays as typed, and so does \\<script>.\n\n    <iframe src=\"https://elsewhere.example\">\n";
    let html = pouch(&[("make.md", &format!("{base}\n{own}"))], |workshop| {
        assert_eq!(workshop.report.errors(), 0);
        page("pouch", workshop).expect("a page")
    });
    let bits = bits(&html);
    assert!(html.contains("&lt;iframe src="), "the words are not there");
    assert!(tags(&bits).iter().all(|(name, _)| name != "iframe"));
    assert_eq!(inside(&bits, "script").len(), 1);
}

#[test]
fn a_booklet_s_own_page_goes_first_but_never_its_script() {
    let own = "<title>{{ title }}</title></head><body><main><h1>Mine</h1>{% for s in sections %}<section id=\"{{ s.id }}\"></section>{% endfor %}</main></body></html>\n";
    pouch(&[("templates/page.html", own)], |workshop| {
        assert_eq!(workshop.report.errors(), 0);
        let html = page("pouch", workshop).expect("a page");
        assert!(html.contains("<h1>Mine</h1>") && html.contains("id=\"step-sew\""));
        assert!(html.contains("default-src 'none'"));
    });
    pouch(&[("templates/page.js", "alert(1)")], |workshop| {
        let found = &workshop.report.findings;
        let told: Vec<_> = found
            .iter()
            .filter(|one| one.level() == Level::Error)
            .map(|one| one.message.as_str())
            .collect();
        assert_eq!(
            told,
            ["`pouch/templates/page.js` is a script, and a booklet runs none"]
        );
    });
}

#[test]
fn a_booklet_s_own_page_sends_nobody_elsewhere() {
    let own = "<body><meta {{ \"http-\" ~ \"equiv\" }}=\"refresh\" content=\"0;url=https://elsewhere.example\"></body></html>";
    pouch(&[("templates/page.html", own)], |workshop| {
        let fault = page("pouch", workshop).expect_err("a fault");
        assert!(fault.message.contains("http-equiv"), "{fault:?}");
    });
}

#[test]
fn a_template_that_cannot_be_used_is_told_at_its_place() {
    for (name, text, at) in [
        (
            "page.html",
            "<main>\n{{ word(\"no_such_word\") }}</main>",
            "{{ word(\"no_such_word\") }}",
        ),
        (
            "page-step.html",
            "{% macro step_whole(s) %}{{ s.title",
            "{{ s.title",
        ),
    ] {
        let path = format!("templates/{name}");
        pouch(&[(&path, text)], |workshop| {
            let fault = page("pouch", workshop).expect_err("a fault");
            let finding = workshop
                .press_finding(&fault, &Default::default(), None)
                .expect("a finding");
            let place = workshop.sources.place(finding.span);
            let path = &workshop.sources.file(finding.span.file).path;
            assert_eq!(path, &format!("pouch/templates/{name}"), "{fault:?}");
            let line = text
                .lines()
                .position(|line| line.contains(at))
                .map(|at| at + 1);
            assert_eq!(Some(place.line), line, "{fault:?}");
        });
    }
}

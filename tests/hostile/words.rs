//! Markdown and work that go on for ever, or say what they do not seem to say.

use super::{Booklet, Case, right, told};

fn work(booklet: &mut Booklet, facts: &str) {
    booklet.change("make.md", "- cut: side\n", &format!("- cut: side\n{facts}"));
}

pub fn cases() -> Vec<Case> {
    vec![
        told("words: 45,000 open braces", "error[", |booklet| {
            booklet.words(&"{ ".repeat(45_000))
        }),
        told("words: 45,000 open braces in a row", "error[", |booklet| {
            booklet.words(&"{".repeat(45_000))
        }),
        told(
            "words: 4,000 choices in one another",
            "error[nested-too-deep]",
            |booklet| {
                booklet.words(&format!(
                    "{}x{}",
                    "{small: ".repeat(4_000),
                    "}".repeat(4_000)
                ));
            },
        ),
        told("words: 100,000 formulas", "error[", |booklet| {
            booklet.words(&"{no} ".repeat(100_000))
        }),
        told(
            "words: a formula 20,000 brackets deep",
            "error[",
            |booklet| {
                booklet.words(&format!(
                    "{{{}1 cm{}}}",
                    "(".repeat(20_000),
                    ")".repeat(20_000)
                ));
            },
        ),
        told("words: 20,000 quotes in one another", "[", |booklet| {
            booklet.words(&format!("{} deep", ">".repeat(20_000)));
        }),
        told("words: 3,000 lists in one another", "[", |booklet| {
            let deep: String = (0..900)
                .map(|depth| format!("{}- a\n", "  ".repeat(depth)))
                .collect();
            booklet.words(&deep);
        }),
        told(
            "words: 50,000 links that lead nowhere",
            "error[over-limit]",
            |booklet| {
                booklet.words(&"[](#nowhere) ".repeat(50_000));
            },
        ),
        told(
            "words: 19,000 links that lead nowhere",
            "error[reference-broken]",
            |booklet| {
                booklet.words(&"[](#nowhere) ".repeat(19_000));
            },
        ),
        right("words: 200,000 stars", |booklet| {
            booklet.words(&"*a **b ".repeat(40_000))
        }),
        right("words: 100,000 square brackets", |booklet| {
            booklet.words(&"[".repeat(100_000))
        }),
        told(
            "words: a table of 5,000 columns",
            "error[over-limit]",
            |booklet| {
                let row = |cell: &str| format!("|{}\n", format!("{cell}|").repeat(5_000));
                booklet.words(&format!("{}{}{}", row("a"), row("-"), row("b")));
            },
        ),
        told("words: a fence that never ends", "[", |booklet| {
            booklet.words("```work\n- cut: side")
        }),
        told(
            "words: 20,000 facts in one step",
            "error[over-limit]",
            |booklet| {
                work(booklet, &"- press: [side, flat]\n".repeat(20_000));
            },
        ),
        told(
            "words: 20,000 edges in one seam",
            "error[over-limit]",
            |booklet| {
                work(
                    booklet,
                    &format!(
                        "- sew: [{}]\n  allowance: seam\n",
                        vec!["front.left"; 20_000].join(", ")
                    ),
                );
            },
        ),
        told(
            "words: work 20,000 brackets deep",
            "nested too deep",
            |booklet| {
                work(booklet, &format!("- sew: {}\n", "[".repeat(20_000)));
            },
        ),
        told("words: 10,000 steps", "error[over-limit]", |booklet| {
            let steps: String = (0..10_000)
                .map(|step| format!("\n## Step {{#s{step}}}\n\nLook.\n"))
                .collect();
            let text =
                String::from_utf8(booklet.files["make.md"].clone()).expect("a text") + &steps;
            booklet.put("make.md", text);
        }),
        told("words: 30,000 pictures", "error[over-limit]", |booklet| {
            booklet.words(&"![The finished pouch](figures/turn.svg)\n\n".repeat(30_000));
        }),
        told("words: HTML", "error[", |booklet| {
            booklet.words("<script>alert(1)</script>")
        }),
        told("words: a link that runs", "error[", |booklet| {
            booklet.words("[Look](javascript:alert(1))")
        }),
        told("words: a link to a file", "error[", |booklet| {
            booklet.words("[Look](file:///etc/passwd)")
        }),
        told("words: a link to data", "error[", |booklet| {
            booklet.words("[Look](data:text/html;base64,PHNjcmlwdD4=)");
        }),
        told("words: escape codes", "[deceiving-letters]", |booklet| {
            booklet.words("Cut \u{1b}[2J\u{1b}[1;1Hclean.")
        }),
        told(
            "words: a waiver that hides itself",
            "[deceiving-letters]",
            |booklet| {
                booklet.words("<!-- waive not-pressed: it is \u{1b}[1A\u{1b}[2K right -->");
            },
        ),
        told(
            "words: letters of no width",
            "[deceiving-letters]",
            |booklet| booklet.words("Cut\u{200b}\u{2066} here."),
        ),
        right(
            "words: a soft hyphen and a joiner between scripts",
            |booklet| {
                booklet.words("Press the seam allow\u{ad}ances.");
            },
        ),
        right("words: 1.9 MB in one word", |booklet| {
            booklet.words(&"a".repeat(1_900_000))
        }),
        told("words: 3 MB", "error[", |booklet| {
            booklet.words(&"a ".repeat(1_500_000))
        }),
        told("words: noise", "error[", |booklet| {
            booklet.put(
                "make.md",
                (0..100_000u32)
                    .map(|at| (at * 7919 % 251) as u8)
                    .collect::<Vec<u8>>(),
            );
        }),
        told("words: nothing", "error[", |booklet| {
            booklet.put("make.md", "")
        }),
        told("words: 30,000 waivers", "error[over-limit]", |booklet| {
            booklet.words(&"<!-- waive not-pressed: so -->\n\n".repeat(30_000));
        }),
    ]
}

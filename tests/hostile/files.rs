//! Fonts, templates and folders of a stranger's own, and what the other commands make of them.

use super::{BUILD, Booklet, Case, not_built, right, told};

const FONT: &[u8] = include_bytes!("../../fonts/NotoSans-Regular.ttf");

/// The house's own typeface with every so-many-th byte of a part of it changed.
fn damaged(from: usize, step: usize) -> Vec<u8> {
    let mut bytes = FONT.to_vec();
    for at in (from..bytes.len()).step_by(step) {
        bytes[at] ^= 0x5a;
    }
    bytes
}

fn half(bytes: &[u8], at: usize) -> usize {
    usize::from(u16::from_be_bytes([bytes[at], bytes[at + 1]]))
}

fn word(bytes: &[u8], at: usize) -> usize {
    half(bytes, at) << 16 | half(bytes, at + 2)
}

/// The house's own typeface with one of its tables changed by somebody who keeps the checksums right.
fn meant(tag: &[u8; 4], change: fn(&mut [u8])) -> Vec<u8> {
    let mut bytes = FONT.to_vec();
    let mut records = (12..).step_by(16);
    let record = records.find(|at| &bytes[*at..at + 4] == tag);
    let record = record.expect("such a table");
    let start = word(&bytes, record + 8);
    // Tables are filled up to whole words.
    let end = start + word(&bytes, record + 12).next_multiple_of(4);
    change(&mut bytes[start..end]);
    let words = (start..end).step_by(4).map(|at| word(&bytes, at) as u32);
    let sum = words.fold(0u32, u32::wrapping_add);
    bytes[record + 4..record + 8].copy_from_slice(&sum.to_be_bytes());
    bytes
}

/// A list of letters that names every number there is.
fn endless(map: &mut [u8]) {
    let lists = (0..half(map, 2)).map(|list| word(map, 4 + 8 * list + 4));
    let mut long = lists.filter(|list| half(map, *list) == 12);
    let list = long.next().expect("a list of groups");
    map[list + 16..list + 24].copy_from_slice(&[0, 0, 0, 0, 255, 255, 255, 255]);
}

/// A rule for letters from a higher number to a lower.
fn backwards(rules: &mut [u8]) {
    let lookups = half(rules, 8);
    for lookup in 0..half(rules, lookups) {
        let lookup = lookups + half(rules, lookups + 2 + 2 * lookup);
        let first = lookup + half(rules, lookup + 6);
        let cover = first + half(rules, first + 2);
        // Not one that leads on to another place.
        if half(rules, lookup) != 7 && half(rules, first) == 1 && half(rules, cover) == 2 {
            rules[cover + 4..cover + 8].copy_from_slice(&[9, 9, 0, 3]);
            return;
        }
    }
    panic!("no rule for a range of letters");
}

/// A name that begins where no other could follow.
fn astray(names: &mut [u8]) {
    let last = 6 + 12 * (half(names, 2) - 1);
    names[last + 8..last + 12].copy_from_slice(&[0, 9, 0xff, 0xff]);
}

/// The house's own page with words of a stranger's put before it.
fn template(booklet: &mut Booklet, before: &str) {
    let house = include_str!("../../templates/booklet.typ");
    booklet.put("templates/booklet.typ", format!("{before}\n{house}"));
}

/// The house's own page with words of a stranger's put behind it.
fn ends(booklet: &mut Booklet, behind: &str) {
    let house = include_str!("../../templates/booklet.typ");
    booklet.put("templates/booklet.typ", format!("{house}\n{behind}\n"));
}

pub fn cases() -> Vec<Case> {
    vec![
        Case {
            name: "errata: a manifest of 61 MB",
            edit: |booklet| booklet.put("old.json", vec![b' '; 61_000_000]),
            args: &["errata", "tide-pouch/old.json", "tide-pouch"],
            exit: 1,
            tells: "do: take the manifest as it was published",
        },
        told(
            "shop: 21 pages to show",
            "there are more than 20 pages to show in one shop here",
            |booklet| {
                let pages = vec!["1"; 21].join(", ");
                let shop = format!("parts: [make.md]\nshop: {{preview: [{pages}]}}\n");
                booklet.change("booklet.yaml", "parts: [make.md]\n", &shop);
            },
        ),
        told(
            "help: 501 questions",
            "there are more than 500 questions in one booklet here",
            |booklet| {
                let question = |at: usize| format!("## Why, {at}?\n\nSo.\n\n");
                let questions: String = (0..501).map(question).collect();
                booklet.put("help.md", questions);
                let help = "parts: [make.md]\nhelp: help.md\n";
                booklet.change("booklet.yaml", "parts: [make.md]\n", help);
            },
        ),
        told(
            "help: outside the folder",
            "error[file-unreadable]",
            |booklet| {
                let help = "parts: [make.md]\nhelp: ../../../etc/hostname\n";
                booklet.change("booklet.yaml", "parts: [make.md]\n", help);
            },
        ),
        told("font: no font", "error[file-unreadable]", |booklet| {
            booklet.put("fonts/a.ttf", "no font at all")
        }),
        told("font: nothing", "error[file-unreadable]", |booklet| {
            booklet.put("fonts/a.ttf", "")
        }),
        told("font: half of one", "error[file-unreadable]", |booklet| {
            booklet.put("fonts/a.ttf", &FONT[..FONT.len() / 2])
        }),
        told(
            "font: every 64th byte wrong",
            "error[file-unreadable]",
            |booklet| booklet.put("fonts/a.ttf", damaged(12, 64)),
        ),
        told("font: every 997th byte wrong", "fonts/a.ttf", |booklet| {
            booklet.put("fonts/a.ttf", damaged(300, 997))
        }),
        told("font: every 9,973rd byte wrong", "fonts/a.ttf", |booklet| {
            booklet.put("fonts/a.ttf", damaged(400, 9_973))
        }),
        told(
            "font: more letters than there are",
            "says that it holds more letters than there are",
            |booklet| booklet.put("fonts/a.ttf", meant(b"cmap", endless)),
        ),
        told(
            "font: letters that run backwards",
            "a list of its letters ends before it begins",
            |booklet| booklet.put("fonts/a.ttf", meant(b"GSUB", backwards)),
        ),
        told(
            "font: names past all places",
            "its names lie farther off than a font can say",
            |booklet| booklet.put("fonts/a.ttf", meant(b"name", astray)),
        ),
        told("font: a collection", "error[file-unreadable]", |booklet| {
            booklet.put("fonts/a.ttc", FONT)
        }),
        told("font: 21 MB", "error[file-unreadable]", |booklet| {
            booklet.put("fonts/a.ttf", vec![0u8; 21_000_000])
        }),
        right("font: a good one", |booklet| {
            booklet.put("fonts/a.ttf", FONT)
        }),
        not_built(
            "template: for ever",
            "error[typesetting-failed]",
            |booklet| {
                template(
                    booklet,
                    "#{ for x in range(4000000000) { let y = range(1000) } }",
                );
            },
        ),
        not_built(
            "template: all memory",
            "error[typesetting-failed]",
            |booklet| {
                template(
                    booklet,
                    "#{ let x = (1,) * 1000\n for i in range(60) { x = x + x } }",
                );
            },
        ),
        not_built(
            "template: a program of another kind",
            "error[typesetting-failed]",
            |booklet| {
                template(
                    booklet,
                    "#let p = plugin(bytes((0, 97, 115, 109, 1, 0, 0, 0)))",
                );
            },
        ),
        not_built(
            "template: a link that runs",
            "error[typesetting-failed]",
            |booklet| {
                ends(booklet, "#link(\"javascript:app.alert(1)\")[Look]");
            },
        ),
        not_built(
            "template: a link to a file",
            "error[typesetting-failed]",
            |booklet| {
                ends(booklet, "#link(\"file:///etc/passwd\")[Look]");
            },
        ),
        not_built(
            "template: a file of the system",
            "error[typesetting-failed]",
            |booklet| {
                template(booklet, "#let x = read(\"/etc/passwd\")");
            },
        ),
        not_built(
            "template: a file above",
            "error[typesetting-failed]",
            |booklet| {
                template(booklet, "#let x = read(\"../booklet.yaml\")");
            },
        ),
        not_built("template: itself", "error[typesetting-failed]", |booklet| {
            template(booklet, "#let f(x) = f(x + 1)\n#f(0)");
        }),
        told("template: noise", "error[file-unreadable]", |booklet| {
            booklet.put(
                "templates/page.typ",
                (0..5_000u32)
                    .map(|at| (at * 7919 % 251) as u8)
                    .collect::<Vec<u8>>(),
            );
        }),
        told("template: labels that are no JSON", "error[", |booklet| {
            booklet.put("templates/labels-en.json", "{")
        }),
        told("template: labels 100,000 deep", "error[", |booklet| {
            booklet.put("templates/labels-en.json", "[".repeat(100_000));
        }),
        told(
            "template: words of checks that are no JSON",
            "error[",
            |booklet| {
                booklet.put("templates/vocabulary-en.json", "[1]");
            },
        ),
        told("template: 21 MB", "error[file-unreadable]", |booklet| {
            booklet.put("templates/page.typ", " ".repeat(21_000_000));
        }),
        told(
            "template: a style sheet of a million brackets",
            "error[",
            |booklet| {
                booklet.put("templates/figures.css", "{".repeat(1_000_000));
            },
        ),
        Case {
            name: "values: a cell that begins a formula",
            edit: |booklet| {
                booklet.change(
                    "booklet.yaml",
                    "  seam:",
                    "  minus: -seam + 3 * seam\n  seam:",
                )
            },
            args: &["values", "tide-pouch", "--format", "csv"],
            exit: 0,
            tells: ",'-seam + 3 * seam,",
        },
        Case {
            name: "trace: a name with escape codes",
            edit: |booklet| {
                booklet.change("booklet.yaml", "small: Small", "small: \"Sm\\e[31mall\"")
            },
            args: &["trace", "width", "--size", "small"],
            exit: 0,
            tells: "Sm\u{241b}[31mall",
        },
        Case {
            name: "sheets: 150 pieces",
            edit: |booklet| {
                let piece = |at: usize| {
                    format!(
                        "  p{at}:\n    name: Piece {at}\n    outline: {{rectangle: [{} mm, {} mm]}}\n    raw: all\n    \
                         grain: vertical\n    cut: {{outer: 1}}\n",
                        100 + at,
                        130 + at * 7 % 40
                    )
                };
                booklet.pieces(&(0..150).map(piece).collect::<String>());
                let names: Vec<String> = (0..150).map(|at| format!("p{at}")).collect();
                booklet.change(
                    "make.md",
                    "- cut: side\n",
                    &format!("- cut: [side, {}]\n", names.join(", ")),
                );
            },
            args: &["sheets", "tide-pouch", "--paper", "a4", "--size", "small"],
            exit: 0,
            tells: "a plain grid would take",
        },
        Case {
            name: "build: as it should be",
            edit: |_| {},
            args: BUILD,
            exit: 0,
            tells: "tide-pouch-all-a4.pdf",
        },
    ]
}

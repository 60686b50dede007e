//! Facts in their masses, at their depths, and out of all measure.

use super::{Case, right, told};

pub fn cases() -> Vec<Case> {
    vec![
        told(
            "facts: 80,000 unknown keys",
            "error[over-limit]",
            |booklet| {
                let keys: String = (0..80_000).map(|key| format!("k{key}: 1\n")).collect();
                booklet.change(
                    "booklet.yaml",
                    "parts: [make.md]\n",
                    &format!("parts: [make.md]\n{keys}"),
                );
            },
        ),
        told(
            "facts: 20,000 times one key",
            "error[duplicate-key]",
            |booklet| {
                let keys = "  seam: 1 cm\n".repeat(20_000);
                booklet.change("booklet.yaml", "  seam: 1.5 cm (5/8 in)\n", &keys);
            },
        ),
        told(
            "facts: 50,000 wrong lengths",
            "error[over-limit]",
            |booklet| {
                let keys: String = (0..50_000)
                    .map(|key| format!("  m{key}: 1 ell\n"))
                    .collect();
                booklet.change(
                    "booklet.yaml",
                    "measurements:\n",
                    &format!("measurements:\n{keys}"),
                );
            },
        ),
        told(
            "facts: 50,000 measurements that nothing uses",
            "error[over-limit]",
            |booklet| {
                let keys: String = (0..50_000).map(|key| format!("  m{key}: 1 cm\n")).collect();
                booklet.change(
                    "booklet.yaml",
                    "measurements:\n",
                    &format!("measurements:\n{keys}"),
                );
            },
        ),
        told(
            "facts: brackets 100,000 deep",
            "nested too deep",
            |booklet| {
                booklet.change(
                    "booklet.yaml",
                    "tools: [",
                    &format!("extra: {}\ntools: [", "[".repeat(100_000)),
                );
            },
        ),
        told(
            "facts: records 5,000 deep",
            "error[nested-too-deep]",
            |booklet| {
                let deep: String = (0..1_500)
                    .map(|depth| format!("{}a:\n", " ".repeat(depth)))
                    .collect();
                booklet.change(
                    "booklet.yaml",
                    "parts: [make.md]\n",
                    &format!("parts: [make.md]\n{deep}"),
                );
            },
        ),
        told(
            "facts: anchors that grow",
            "error[yaml-unreadable]",
            |booklet| {
                let mut bomb = "a0: &a0 [x, x, x, x, x, x, x, x, x]\n".to_owned();
                for at in 1..12 {
                    let last = format!("*a{}", at - 1);
                    bomb += &format!("a{at}: &a{at} [{}]\n", vec![last; 9].join(", "));
                }
                booklet.change(
                    "booklet.yaml",
                    "parts: [make.md]\n",
                    &format!("{bomb}parts: [make.md]\n"),
                );
            },
        ),
        told(
            "facts: a chain of 20,000 measurements",
            "error[over-limit]",
            |booklet| {
                let chain: String = (1..20_000)
                    .map(|at| format!("  m{at}: m{} + 1 mm\n", at - 1))
                    .collect();
                booklet.change(
                    "booklet.yaml",
                    "measurements:\n",
                    &format!("measurements:\n{chain}  m0: 1 cm\n"),
                );
            },
        ),
        told(
            "facts: a ring of 5,000 measurements",
            "error[over-limit]",
            |booklet| {
                let chain: String = (0..5_000)
                    .map(|at| format!("  m{at}: m{} + 1 mm\n", (at + 1) % 5_000))
                    .collect();
                booklet.change(
                    "booklet.yaml",
                    "measurements:\n",
                    &format!("measurements:\n{chain}"),
                );
            },
        ),
        told(
            "facts: measurements that double 200 times",
            "error[number-too-large]",
            |booklet| {
                let chain: String = (1..200)
                    .map(|at| format!("  m{at}: m{0} + m{0}\n", at - 1))
                    .collect();
                booklet.change(
                    "booklet.yaml",
                    "measurements:\n",
                    &format!("measurements:\n  m0: 1 cm\n{chain}"),
                );
            },
        ),
        told(
            "facts: a formula of 100,000 brackets",
            "error[",
            |booklet| {
                let formula = format!("{}1 cm{}", "(".repeat(100_000), ")".repeat(100_000));
                booklet.change("booklet.yaml", "width + 2 * seam", &formula);
            },
        ),
        told("facts: a formula of 100,000 sums", "error[", |booklet| {
            let formula = format!("width{}", " + seam".repeat(100_000));
            booklet.change("booklet.yaml", "width + 2 * seam", &formula);
        }),
        told("facts: a number of 100,000 digits", "error[", |booklet| {
            booklet.change(
                "booklet.yaml",
                "2 * seam\n",
                &format!("{} * seam\n", "9".repeat(100_000)),
            );
        }),
        told(
            "facts: a divisor of nothing",
            "error[division-by-zero]",
            |booklet| {
                booklet.change("booklet.yaml", "width + 2 * seam", "width / (seam - seam)");
            },
        ),
        told("facts: 3,000 sizes", "error[over-limit]", |booklet| {
            let sizes: String = (0..3_000)
                .map(|size| format!("  s{size}: Size {size}\n"))
                .collect();
            booklet.change("booklet.yaml", "  small: Small\n", &sizes);
        }),
        told(
            "facts: a piece of 999 m",
            "error[outline-wrong]",
            |booklet| {
                booklet.change(
                    "booklet.yaml",
                    "[cut_width, cut_height]",
                    "[999 m, cut_height]",
                );
            },
        ),
        told(
            "facts: a piece of 1,000,000 km",
            "error[outline-wrong]",
            |booklet| {
                booklet.change(
                    "booklet.yaml",
                    "[cut_width, cut_height]",
                    "[1000000000 m, cut_height]",
                );
            },
        ),
        told("facts: a piece of 0.001 mm", "error[", |booklet| {
            booklet.change(
                "booklet.yaml",
                "[cut_width, cut_height]",
                "[0.001 mm, cut_height]",
            );
        }),
        told(
            "facts: a piece of less than nothing",
            "error[outline-wrong]",
            |booklet| {
                booklet.change(
                    "booklet.yaml",
                    "[cut_width, cut_height]",
                    "[0 cm - cut_width, cut_height]",
                );
            },
        ),
        told("facts: 100,000 copies of a piece", "error[", |booklet| {
            booklet.change("booklet.yaml", "outer: [front, back]", "outer: 100000");
        }),
        told("facts: 2,000 pieces", "error[over-limit]", |booklet| {
            let piece = |at: usize| {
                format!(
                    "  p{at}:\n    name: Piece {at}\n    outline: {{rectangle: [{} mm, 40 cm]}}\n    \
                     allowance: seam\n    grain: vertical\n    cut: {{outer: 1}}\n",
                    100 + at
                )
            };
            booklet.pieces(&(0..2_000).map(piece).collect::<String>());
        }),
        told(
            "facts: 60 pieces that no sheet holds two of",
            "error[",
            |booklet| {
                let piece = |at: usize| {
                    format!(
                        "  p{at}:\n    name: Piece {at}\n    outline: {{rectangle: [{} mm, 90 cm]}}\n    \
                     allowance: seam\n    grain: vertical\n    cut: {{outer: 1}}\n",
                        700 + at
                    )
                };
                booklet.pieces(&(0..60).map(piece).collect::<String>());
            },
        ),
        told("facts: 50,000 notches", "error[over-limit]", |booklet| {
            let notches = vec!["top 1/3"; 50_000].join(", ");
            booklet.change(
                "booklet.yaml",
                "    cut:\n",
                &format!("    notches: [{notches}]\n    cut:\n"),
            );
        }),
        told(
            "facts: one part 900 times",
            "error[over-limit]",
            |booklet| {
                let parts = vec!["make.md"; 900].join(", ");
                booklet.change("booklet.yaml", "[make.md]", &format!("[{parts}]"));
            },
        ),
        told(
            "facts: 240 kB handed over and used 50,000 times",
            "error[over-limit]",
            |booklet| {
                let words = "long ".repeat(48_000);
                booklet.change(
                    "booklet.yaml",
                    "[make.md]",
                    &format!("[{{file: make.md, with: {{what: \"{words}\"}}}}]"),
                );
                booklet.words(&"{what} ".repeat(50_000));
            },
        ),
        told("facts: an empty title", "error[", |booklet| {
            booklet.change("booklet.yaml", "title: Tide Pouch", "title: \"\"");
        }),
        told(
            "facts: an unknown language",
            "[language-unknown]",
            |booklet| {
                booklet.change("booklet.yaml", "en-GB", "qq-ZZ");
            },
        ),
        told("facts: a language that is none", "error[", |booklet| {
            booklet.change("booklet.yaml", "en-GB", "\"not a language at all\"");
        }),
        told("facts: a date that is none", "error[", |booklet| {
            booklet.change(
                "booklet.yaml",
                "date: 2026-01-15\nlanguage",
                "date: 2026-13-45\nlanguage",
            );
        }),
        told("facts: NUL in a name", "error[", |booklet| {
            booklet.change(
                "booklet.yaml",
                "title: Tide Pouch",
                "title: \"Tide\\0Pouch\"",
            );
        }),
        told("facts: a raw NUL", "error[", |booklet| {
            booklet.change("booklet.yaml", "title: Tide Pouch", "title: Tide\0Pouch");
        }),
        told(
            "facts: a name that runs backwards",
            "[deceiving-letters]",
            |booklet| {
                booklet.change("booklet.yaml", "name: Cotton", "name: \"Cot\u{202e}not\"");
            },
        ),
        told(
            "facts: a name with letters of no width",
            "[deceiving-letters]",
            |booklet| {
                booklet.change("booklet.yaml", "name: Cotton", "name: \"Cot\u{200b}ton\"");
            },
        ),
        told(
            "facts: a name of two scripts",
            "[deceiving-letters]",
            |booklet| {
                booklet.change("booklet.yaml", "name: Cotton", "name: \"C\u{043e}tton\"");
            },
        ),
        right("facts: a name in another script", |booklet| {
            booklet.change("booklet.yaml", "designer: Your name", "designer: Ёлка");
        }),
        told(
            "facts: CR alone ends the lines",
            "booklet.yaml:",
            |booklet| {
                booklet.change("booklet.yaml", "skill: beginner", "skil: beginner");
                let text =
                    String::from_utf8(booklet.files["booklet.yaml"].clone()).expect("a text");
                booklet.put("booklet.yaml", text.replace('\n', "\r"));
            },
        ),
        told("facts: 16 bits a letter", "[file-unreadable]", |booklet| {
            let text = String::from_utf8(booklet.files["booklet.yaml"].clone()).expect("a text");
            let bytes: Vec<u8> = text.encode_utf16().flat_map(u16::to_le_bytes).collect();
            booklet.put("booklet.yaml", [vec![0xff, 0xfe], bytes].concat());
        }),
        told("facts: nothing", "error[", |booklet| {
            booklet.put("booklet.yaml", "")
        }),
        told("facts: noise", "error[", |booklet| {
            booklet.put(
                "booklet.yaml",
                (0..100_000u32)
                    .map(|at| (at * 7919 % 251) as u8)
                    .collect::<Vec<u8>>(),
            );
        }),
        told("facts: 1.9 MB in one line", "error[", |booklet| {
            booklet.put(
                "booklet.yaml",
                format!("title: {}\n", "a".repeat(1_900_000)),
            );
        }),
        told("facts: 1.9 MB of commas", "error[", |booklet| {
            booklet.put(
                "booklet.yaml",
                format!("title: [{}]\n", ",".repeat(1_900_000)),
            );
        }),
        told("facts: 1.9 MB of colons", "error[", |booklet| {
            booklet.put("booklet.yaml", "a: ".repeat(600_000));
        }),
    ]
}

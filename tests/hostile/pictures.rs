//! Drawings and pictures that are small to send and large to show.

use super::{Booklet, Case, not_built, right, told};

/// A grey PNG of so many dots each way; the whole of it is one value over and over.
fn png(across: u32, down: u32) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut encoder = png::Encoder::new(&mut bytes, across, down);
    encoder.set_color(png::ColorType::Grayscale);
    encoder.set_depth(png::BitDepth::One);
    let mut head = encoder.write_header().expect("a head");
    let mut writer = head.stream_writer().expect("a stream");
    let row = vec![0u8; across.div_ceil(8) as usize];
    for _ in 0..down {
        std::io::Write::write_all(&mut writer, &row).expect("a row");
    }
    writer.finish().expect("an end");
    drop(head);
    bytes
}

fn cover(booklet: &mut Booklet, name: &str, bytes: impl Into<Vec<u8>>) {
    booklet.change(
        "booklet.yaml",
        "parts: [make.md]\n",
        &format!("parts: [make.md]\nstyle: {{cover: {name}}}\n"),
    );
    booklet.put(name, bytes);
}

/// A drawing that draws each of its groups ten times within the next.
fn uses() -> String {
    let mut inner =
        "<defs><g id=\"g0\"><rect class=\"right-side\" width=\"1\" height=\"1\"/></g>".to_owned();
    for at in 1..9 {
        let one = format!("<use href=\"#g{}\"/>", at - 1);
        inner += &format!("<g id=\"g{at}\">{}</g>", one.repeat(10));
    }
    inner + "</defs><use href=\"#g8\"/>"
}

fn zigzag(points: usize, wide: f64) -> String {
    let corner = |at: usize| {
        format!(
            "L {} {} ",
            (at % 2) as f64 * wide + 10.0,
            10.0 + at as f64 * 150.0 / points as f64
        )
    };
    format!(
        "M 10 10 {} L 5 170 Z",
        (0..points).map(corner).collect::<String>()
    )
}

pub fn cases() -> Vec<Case> {
    vec![
        told("figure: no width at all", "figures/cut.svg:1", |booklet| {
            let svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 76 50\" width=\"0mm\" data-scale=\"1:5\">";
            booklet.put(
                "figures/cut.svg",
                format!("{svg}<rect width=\"{{cut_width}}\" height=\"9\"/></svg>"),
            );
        }),
        told(
            "figure: a scale of next to nothing",
            "figures/cut.svg:1",
            |booklet| {
                let svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 76 50\" width=\"76mm\" data-scale=\"999999999:0.000000001\">";
                booklet.put(
                    "figures/cut.svg",
                    format!("{svg}<rect width=\"{{cut_width}}\" height=\"9\"/></svg>"),
                );
            },
        ),
        told(
            "figure: a scale out of all measure",
            "figures/cut.svg:1",
            |booklet| {
                let svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 0.000000001 999999999\" width=\"999999999in\" data-scale=\"0.000000001:999999999\">";
                booklet.put(
                    "figures/cut.svg",
                    format!("{svg}<rect width=\"{{cut_width * cut_width}}\" height=\"9\"/></svg>"),
                );
            },
        ),
        told(
            "figure: 600 tspans in one another",
            "error[figure-not-drawable]",
            |booklet| {
                booklet.figure(&format!(
                    "<text x=\"5\" y=\"5\">{}a{}</text>",
                    "<tspan>".repeat(600),
                    "</tspan>".repeat(600)
                ));
            },
        ),
        told(
            "figure: 5,000 groups in one another",
            "error[figure-not-drawable]",
            |booklet| {
                booklet.figure(&format!("{}{}", "<g>".repeat(5_000), "</g>".repeat(5_000)));
            },
        ),
        told("figure: a million in one another", "error[", |booklet| {
            booklet.figure(&"<g>".repeat(600_000));
        }),
        told(
            "figure: turbulence",
            "error[figure-not-drawable]",
            |booklet| {
                booklet.figure("<filter id=\"f\"><feTurbulence baseFrequency=\"0.01\" numOctaves=\"100000\"/></filter><rect filter=\"url(#f)\" width=\"50\" height=\"50\"/>");
            },
        ),
        told(
            "figure: morphology",
            "error[figure-not-drawable]",
            |booklet| {
                booklet.figure("<filter id=\"f\"><feMorphology radius=\"1e9\"/></filter><rect filter=\"url(#f)\" width=\"50\" height=\"50\"/>");
            },
        ),
        told(
            "figure: a filter by its style",
            "error[figure-not-drawable]",
            |booklet| {
                booklet
                    .figure("<rect style=\"filter: blur(1000000px)\" width=\"50\" height=\"50\"/>");
            },
        ),
        told(
            "figure: a filter by its style sheet",
            "error[figure-not-drawable]",
            |booklet| {
                booklet.figure("<style>rect { filter: blur(1000000px) }</style><rect width=\"50\" height=\"50\"/>");
            },
        ),
        told(
            "figure: masks in one another",
            "error[figure-not-drawable]",
            |booklet| {
                let mask = |at: usize| {
                    format!(
                        "<mask id=\"m{at}\"><rect mask=\"url(#m{})\" width=\"9\" height=\"9\"/></mask>",
                        at + 1
                    )
                };
                let masks: String = (0..300).map(mask).collect();
                booklet.figure(&format!(
                    "{masks}<rect mask=\"url(#m0)\" width=\"9\" height=\"9\"/>"
                ));
            },
        ),
        told(
            "figure: patterns in one another",
            "error[figure-not-drawable]",
            |booklet| {
                let one = |at: usize| {
                    format!(
                        "<pattern id=\"p{at}\" width=\"0.001\" height=\"0.001\" patternUnits=\"userSpaceOnUse\"><rect fill=\"url(#p{})\" width=\"9\" height=\"9\"/></pattern>",
                        at + 1
                    )
                };
                let all: String = (0..30).map(one).collect();
                booklet.figure(&format!(
                    "{all}<rect fill=\"url(#p0)\" width=\"60\" height=\"40\"/>"
                ));
            },
        ),
        told(
            "figure: cut-outs in one another",
            "error[figure-not-drawable]",
            |booklet| {
                let one = |at: usize| {
                    format!(
                        "<clipPath id=\"c{at}\" clip-path=\"url(#c{})\"><rect width=\"9\" height=\"9\"/></clipPath>",
                        at + 1
                    )
                };
                let all: String = (0..3_000).map(one).collect();
                booklet.figure(&format!(
                    "{all}<rect clip-path=\"url(#c0)\" width=\"60\" height=\"40\"/>"
                ));
            },
        ),
        told(
            "figure: a group drawn a hundred million times",
            "error[figure-not-drawable]",
            |booklet| {
                booklet.figure(&uses());
            },
        ),
        told(
            "figure: a group in itself",
            "error[figure-not-drawable]",
            |booklet| {
                booklet
                    .figure("<g id=\"a\"><use href=\"#b\"/></g><g id=\"b\"><use href=\"#a\"/></g>");
            },
        ),
        told(
            "figure: markers at 200,000 corners",
            "error[figure-not-drawable]",
            |booklet| {
                let path = "l 1 0 l -1 0 ".repeat(100_000);
                booklet.figure(&format!("<marker id=\"m\"><path d=\"M 0 0 h 9\"/></marker><path marker-mid=\"url(#m)\" stroke=\"black\" d=\"M 5 5 {path}\"/>"));
            },
        ),
        told(
            "figure: a path of 400,000 lines",
            "error[figure-not-drawable]",
            |booklet| {
                booklet.figure(&format!(
                    "<path class=\"fold\" d=\"M 5 5 {}\"/>",
                    "h1 ".repeat(400_000)
                ));
            },
        ),
        told(
            "figure: dashes of next to nothing",
            "error[figure-not-drawable]",
            |booklet| {
                booklet.figure(
                    "<path stroke=\"black\" stroke-dasharray=\"0.000001\" d=\"M 0 0 H 70\"/>",
                );
            },
        ),
        told("figure: 1e38", "error[", |booklet| {
            booklet.figure("<rect class=\"right-side\" width=\"1e38\" height=\"1e38\"/>")
        }),
        told("figure: no number", "error[", |booklet| {
            booklet.figure("<rect class=\"right-side\" width=\"NaN\" height=\"inf\"/>")
        }),
        told(
            "figure: a frame of no number",
            "figures/cut.svg:1",
            |booklet| {
                booklet.put("figures/cut.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 NaN 1e400\" width=\"76mm\"/>");
            },
        ),
        told("figure: turned out of the world", "error[", |booklet| {
            booklet.figure("<g transform=\"scale(1e30) rotate(1e30) matrix(1e38 1e38 1e38 1e38 0 0)\"><rect class=\"right-side\" width=\"1\" height=\"1\"/></g>");
        }),
        told("figure: letters 1e30 high", "error[", |booklet| {
            booklet.figure("<text font-size=\"1e30\" x=\"5\" y=\"5\">a</text>");
        }),
        told("figure: 200,000 letters", "error[", |booklet| {
            booklet.figure(&format!(
                "<text class=\"label\" x=\"5\" y=\"5\">{}</text>",
                "a ".repeat(100_000)
            ));
        }),
        told(
            "figure: a picture of a gigadot",
            "error[figure-not-drawable]",
            |booklet| {
                let data = base64(&png(40_000, 40_000));
                booklet.figure(&format!(
                    "<image width=\"50\" height=\"40\" href=\"data:image/png;base64,{data}\"/>"
                ));
            },
        ),
        told(
            "figure: a drawing in a drawing in a drawing",
            "error[figure-not-drawable]",
            |booklet| {
                let mut svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\"><rect width=\"9\" height=\"9\"/></svg>".to_owned();
                for _ in 0..12 {
                    svg = format!(
                        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\"><image width=\"9\" height=\"9\" href=\"data:image/svg+xml;base64,{}\"/></svg>",
                        base64(svg.as_bytes())
                    );
                }
                booklet.figure(&format!(
                    "<image width=\"50\" height=\"40\" href=\"data:image/svg+xml;base64,{}\"/>",
                    base64(svg.as_bytes())
                ));
            },
        ),
        told("figure: entities that grow", "error[", |booklet| {
            let mut doctype = "<!DOCTYPE svg [<!ENTITY a0 \"aaaaaaaaaa\">".to_owned();
            for at in 1..10 {
                doctype += &format!(
                    "<!ENTITY a{at} \"{}\">",
                    format!("&a{};", at - 1).repeat(10)
                );
            }
            booklet.put("figures/cut.svg", format!("{doctype}]><svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 76 50\"><text>&a9;</text></svg>"));
        }),
        told("figure: an entity from a file", "error[", |booklet| {
            booklet.put("figures/cut.svg", "<!DOCTYPE svg [<!ENTITY x SYSTEM \"file:///etc/passwd\">]><svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 76 50\"><text>&x;</text></svg>");
        }),
        told("figure: 50,000 attributes", "error[", |booklet| {
            let all: String = (0..50_000).map(|at| format!(" a{at}=\"1\"")).collect();
            booklet.figure(&format!("<rect{all} width=\"9\" height=\"9\"/>"));
        }),
        told(
            "figure: a style sheet of 20,000 rules",
            "error[figure-not-drawable]",
            |booklet| {
                let rules: String = (0..20_000)
                    .map(|at| format!(".c{at} * * * * * rect {{ fill: red }}\n"))
                    .collect();
                booklet.figure(&format!(
                    "<style>{rules}</style>{}",
                    "<rect class=\"right-side\" width=\"9\" height=\"9\"/>".repeat(2_000)
                ));
            },
        ),
        told("figure: 100,000 formulas", "error[", |booklet| {
            booklet.figure(&"<rect width=\"{no}\" height=\"9\"/>".repeat(40_000));
        }),
        told(
            "figure: 4,000 choices in one another",
            "error[figure-not-drawable]",
            |booklet| {
                booklet.figure(&format!(
                    "<text x=\"5\" y=\"5\">{}x{}</text>",
                    "{small: ".repeat(4_000),
                    "}".repeat(4_000)
                ));
            },
        ),
        told("figure: a script", "error[script-in-figure]", |booklet| {
            booklet.figure("<script>x</script>")
        }),
        told(
            "figure: a file of the system",
            "error[outside-link]",
            |booklet| {
                booklet.figure("<image width=\"9\" height=\"9\" href=\"/etc/passwd\"/>");
            },
        ),
        told(
            "figure: a picture from the net",
            "error[outside-link]",
            |booklet| {
                booklet
                    .figure("<image width=\"9\" height=\"9\" href=\"https://example.org/a.png\"/>");
            },
        ),
        told(
            "figure: an import from the net",
            "error[outside-link]",
            |booklet| {
                booklet.figure("<style>@import url(https://example.org/a.css);</style>");
            },
        ),
        told("figure: noise", "error[", |booklet| {
            booklet.put(
                "figures/cut.svg",
                (0..50_000u32)
                    .map(|at| (at * 7919 % 251) as u8)
                    .collect::<Vec<u8>>(),
            );
        }),
        told("figure: nothing", "error[", |booklet| {
            booklet.put("figures/cut.svg", "")
        }),
        right("figure: 2,000 shapes", |booklet| {
            booklet.figure(
                &"<rect class=\"right-side\" x=\"5\" y=\"5\" width=\"9\" height=\"9\"/>"
                    .repeat(2_000),
            );
        }),
        told(
            "outline: a handle at 1e30",
            "error[outline-wrong]",
            |booklet| {
                booklet.outline("M 0 0 H 150 V 125 C 1e30 125 0 125 0 125 Z");
            },
        ),
        told(
            "outline: a handle at 4e9",
            "error[outline-wrong]",
            |booklet| {
                booklet.outline("M 0 0 H 150 V 125 C 4e9 125 0 125 0 125 Z");
            },
        ),
        told(
            "outline: a corner at 1e30",
            "error[outline-wrong]",
            |booklet| booklet.outline("M 0 0 H 1e30 V 125 H 0 Z"),
        ),
        told(
            "outline: 100,000 lines",
            "error[outline-wrong]",
            |booklet| booklet.outline(&zigzag(100_000, 100.0)),
        ),
        told(
            "outline: 5,000 lines across one another",
            "error[outline-wrong]",
            |booklet| {
                let line = |at: usize| format!("L {} {} ", at * 37 % 150, at * 71 % 149);
                booklet.outline(&format!(
                    "M 0 0 {} Z",
                    (0..5_000).map(line).collect::<String>()
                ));
            },
        ),
        told("outline: arcs of next to nothing", "error[", |booklet| {
            booklet.outline(&format!(
                "M 0 0 {} V 100 Z",
                "a 0.00001 0.00001 0 1 1 0.00001 0 ".repeat(5_000)
            ));
        }),
        told("outline: no number", "error[", |booklet| {
            booklet.outline("M 0 0 H NaN V 125 H 0 Z")
        }),
        told("outline: a point", "error[outline-wrong]", |booklet| {
            booklet.outline("M 0 0 L 0 0 L 0 0 Z")
        }),
        told("outline: scaled out of the world", "error[", |booklet| {
            booklet.outline("M 0 0 H 150 V 125 H 0 Z");
            booklet.put("pieces/side.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 200 200\" width=\"200mm\"><g transform=\"scale(1e20)\"><path id=\"side\" d=\"M 0 0 H 150 V 125 H 0 Z\"/></g></svg>");
        }),
        told(
            "cover: a picture of a gigadot",
            "error[file-unreadable]",
            |booklet| cover(booklet, "c.png", png(40_000, 40_000)),
        ),
        told(
            "cover: a picture cut short",
            "error[file-unreadable]",
            |booklet| {
                let whole = png(200, 200);
                cover(booklet, "c.png", &whole[..whole.len() / 2]);
            },
        ),
        told("cover: no picture", "error[file-unreadable]", |booklet| {
            cover(booklet, "c.jpg", "no picture at all")
        }),
        told(
            "cover: noise for a picture",
            "error[file-unreadable]",
            |booklet| {
                cover(
                    booklet,
                    "c.webp",
                    (0..50_000u32)
                        .map(|at| (at * 7919 % 251) as u8)
                        .collect::<Vec<u8>>(),
                );
            },
        ),
        told(
            "cover: turbulence",
            "error[figure-not-drawable]",
            |booklet| {
                cover(
                    booklet,
                    "c.svg",
                    "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\"><filter id=\"f\"><feTurbulence numOctaves=\"100000\"/></filter><rect filter=\"url(#f)\" width=\"9\" height=\"9\"/></svg>",
                );
            },
        ),
        told(
            "cover: a group drawn a hundred million times",
            "error[figure-not-drawable]",
            |booklet| {
                cover(
                    booklet,
                    "c.svg",
                    format!(
                        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\">{}</svg>",
                        uses()
                    ),
                );
            },
        ),
        told(
            "cover: a picture from the net in a drawing",
            "error[outside-link]",
            |booklet| {
                cover(
                    booklet,
                    "c.svg",
                    "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\"><image href=\"https://example.org/a.png\" width=\"9\" height=\"9\"/></svg>",
                );
            },
        ),
        not_built(
            "cover: letters that no font holds, large",
            "c.svg",
            |booklet| {
                cover(
                    booklet,
                    "c.svg",
                    "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\"><text font-size=\"1e30\">a</text></svg>",
                );
            },
        ),
    ]
}

/// RFC 4648, section 4.
fn base64(bytes: &[u8]) -> String {
    const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let four = |three: &[u8]| {
        let word = three
            .iter()
            .chain([0, 0].iter())
            .take(3)
            .fold(0u32, |word, byte| word << 8 | u32::from(*byte));
        let letter = |at: usize| match at <= three.len() {
            true => char::from(LETTERS[(word >> (18 - 6 * at) & 63) as usize]),
            false => '=',
        };
        [letter(0), letter(1), letter(2), letter(3)]
    };
    bytes.chunks(3).flat_map(four).collect()
}

//! Nothing that an author types runs: words that mean something to the typesetter come out of the
//! PDF as they were typed, as another reader finds them.

use notchbook::typeset::Paper;

use crate::bench::{print, written};
use crate::reader::Read;

/// Words with a meaning in Typst's markup, code or mathematics, or in PDF, none in Markdown's.
const WORDS: &[&str] = &[
    "#import \"x\"",
    "#include \"/data.json\"",
    "#panic()",
    "#sys.version",
    "#set page(width: 1cm)",
    "#eval(\"1 + 1\")",
    "#show: none",
    "#let a = 1",
    "$x^2$",
    "$ sum_(i=0)^n $",
    "@step-look",
    "= No heading",
    "/ Term: none",
    "~ no space",
    "-- no dash --- either",
    "'quotes' and \"quotes\"",
    "/* no comment */",
    "// no comment",
    "https:/ no link",
    "(a) Tj /F1 12 Tf",
];

fn bare(text: &str) -> String {
    text.chars()
        .filter(|letter| !letter.is_whitespace())
        .collect()
}

/// Quoted for YAML.
fn quoted(words: &str) -> String {
    format!("\"{}\"", words.replace('\\', "\\\\").replace('"', "\\\""))
}

#[test]
fn words_of_the_typesetter_come_out_as_typed() {
    for words in WORDS {
        let value = quoted(words);
        // Prose begins with a word, since Markdown has its own meaning for some of these at the
        // start of a line.
        let prose = quoted(&format!("So: {words}"));
        let facts = format!(
            "title: {value}\ndesigner: {value}\nedition: {value}\nskill: {value}\nsummary: {value}\n\
             sizes: {{one: {{name: {value}}}}}\nread_first: {prose}\ncautions: [{prose}]\n\
             fabrics: {{outer: {{name: {value}, note: {prose}}}}}\nnotions: {{thread: {{name: {value}, note: {prose}}}}}\n\
             tools: [{value}]\nwords: {{{value}: {prose}}}\ncare: {prose}\nterms: {prose}\ncontact: {value}\n\
             finished: {{{value}: 1 cm}}\neditions: [{{edition: {value}, changes: {prose}}}]\nparts: [make.md]\n"
        );
        let part = format!(
            "# Part: {words}\n\nSo: {words}\n\n## Step: {words} {{#look}}\n\n\
             So: {words}. *So: {words}* and **So: {words}** and `{words}`.\n\n\
             > [!TIP]\n> So: {words}\n\n- So: {words}\n\n| Head: {words} |\n| --- |\n| Cell: {words} |\n\n\
             ```\n{words}\n```\n\nA note.[^1] A [so: {words}](https://example.com).\n\n[^1]: So: {words}\n"
        );
        written(
            &[("booklet.yaml", &facts), ("make.md", &part)],
            |compiled| {
                let text = bare(&Read::of(&print(compiled, 0, Paper::A4)).text());
                let wanted = bare(words);
                let count = text.matches(&wanted).count();
                // 21 places in the facts and 14 in the part; running heads and the size flag add more.
                assert!(count >= 35, "`{words}` came out {count} times:\n{text}");
            },
        );
    }
}

/// Angle brackets are HTML to Markdown; behind a backslash, in code, and in facts they are letters.
#[test]
fn labels_and_backticks_come_out_as_typed() {
    let facts = "title: \"<label>\"\nedition: 1.0.0\nsizes: {one: One size}\ntools: [\"<step-look>\", \"a `b` c\"]\nparts: [make.md]\n";
    let part = "# Make it\n\n## Look {#look}\n\nType `<label>`, then \\<step-look>, then `` `raw` `` and \\`none\\`, and `#{1 + 1}`.\n\n\
                ```\n#panic(\"fence\") <label> $x$ {gap}\n```\n";
    written(&[("booklet.yaml", facts), ("make.md", part)], |compiled| {
        assert!(
            compiled.report.findings.is_empty(),
            "{:?}",
            compiled.report.findings
        );
        let text = bare(&Read::of(&print(compiled, 0, Paper::A4)).text());
        for words in [
            "<label>",
            "<step-look>",
            "a`b`c",
            "`raw`",
            "`none`",
            "#{1+1}",
            "#panic(\"fence\")<label>$x${gap}",
        ] {
            assert!(text.contains(words), "`{words}` is missing:\n{text}");
        }
        assert!(text.matches("<label>").count() >= 3, "{text}");
    });
}

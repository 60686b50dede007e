//! What the language leaves alone comes out as CommonMark 0.31.2 says: examples of the
//! specification (spec.commonmark.org/0.31.2, John MacFarlane, CC BY-SA 4.0; read from the npm
//! package commonmark-spec 0.31.2), as words of a step, compared as trees.
//!
//! Left out are examples with raw HTML, braces, pictures and headings, which mean something else
//! here. Titles of links and languages of code are not printed, and tight and loose lists are set
//! alike, so neither is compared.

use notchbook::resolve::{Block, Inline};
use roxmltree::{Document, Node};

use crate::bench::written;

/// One example: its number in the specification, the Markdown, the HTML.
struct Example<'a> {
    number: &'a str,
    markdown: String,
    html: String,
}

/// Reads the examples in the specification's own form: a fence of 32 backticks, a line with a dot
/// between Markdown and HTML, and an arrow for each tab; the number stands behind `example`.
fn examples(text: &str) -> Vec<Example<'_>> {
    let fence = "`".repeat(32);
    let mut found = Vec::new();
    let mut lines = text.lines();
    while let Some(line) = lines.next() {
        let Some(number) = line
            .strip_prefix(&fence)
            .and_then(|rest| rest.strip_prefix(" example "))
        else {
            continue;
        };
        let mut until = |end: &str| {
            let part = lines.by_ref().take_while(|line| *line != end);
            part.map(|line| format!("{}\n", line.replace('→', "\t")))
                .collect::<String>()
        };
        found.push(Example {
            number,
            markdown: until("."),
            html: until(&fence),
        });
    }
    found
}

fn escaped(words: &str) -> String {
    words
        .replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
}

/// A soft line break may be rendered as a space (specification, 6.8).
fn line(words: &str) -> String {
    escaped(&words.replace('\n', " "))
}

/// Our prose as plain HTML.
fn render(blocks: &[Block]) -> String {
    let mut html = String::new();
    for block in blocks {
        match block {
            Block::Paragraph { content } => html.push_str(&format!("<p>{}</p>", inlines(content))),
            Block::Heading { level, content } => {
                html.push_str(&format!("<h{level}>{}</h{level}>", inlines(content)))
            }
            Block::List {
                ordered: false,
                items,
                ..
            } => html.push_str(&format!("<ul>{}</ul>", list(items))),
            Block::List { start, items, .. } => {
                html.push_str(&format!("<ol start=\"{start}\">{}</ol>", list(items)))
            }
            Block::Quote { content } => {
                html.push_str(&format!("<blockquote>{}</blockquote>", render(content)))
            }
            Block::Code { text } => {
                html.push_str(&format!("<pre><code>{}</code></pre>", escaped(text)))
            }
            Block::Rule => html.push_str("<hr/>"),
            other => panic!("CommonMark has no such block: {other:?}"),
        }
    }
    html
}

fn list(items: &[Vec<Block>]) -> String {
    items
        .iter()
        .map(|item| format!("<li>{}</li>", render(item)))
        .collect()
}

fn inlines(content: &[Inline]) -> String {
    content
        .iter()
        .map(|inline| match inline {
            Inline::Text { text } => line(text),
            Inline::Strong { content } => format!("<strong>{}</strong>", inlines(content)),
            Inline::Emphasis { content } => format!("<em>{}</em>", inlines(content)),
            Inline::Code { text } => format!("<code>{}</code>", escaped(text)),
            Inline::Link { url, content } => {
                format!("<a href=\"{}\">{}</a>", escaped(url), inlines(content))
            }
            Inline::Break => "<br/>".to_owned(),
            other => panic!("CommonMark has no such inline: {other:?}"),
        })
        .collect()
}

/// The specification's HTML in the same plain form.
fn plain(node: Node<'_, '_>, out: &mut String) {
    let inline = |node: &Node<'_, '_>| {
        node.is_text()
            || matches!(
                node.tag_name().name(),
                "em" | "strong" | "code" | "a" | "br"
            )
    };
    let blank = |node: &Node<'_, '_>| {
        node.is_text() && node.text().is_some_and(|text| text.trim().is_empty())
    };
    let name = node.tag_name().name();
    let holds_blocks = matches!(name, "root" | "ul" | "ol" | "li" | "blockquote");
    let mut open = false;
    for child in node.children() {
        if holds_blocks && blank(&child) {
            continue;
        }
        // A tight item's words stand in no paragraph of their own.
        if name == "li" && inline(&child) != open {
            open = !open;
            out.push_str(if open { "<p>" } else { "</p>" });
        }
        element(child, out);
    }
    if open {
        out.push_str("</p>");
    }
}

fn element(node: Node<'_, '_>, out: &mut String) {
    if node.is_text() {
        let words = node.text().unwrap_or("");
        let kept = node.ancestors().any(|above| above.has_tag_name("pre"));
        out.push_str(&if kept { escaped(words) } else { line(words) });
        return;
    }
    let name = node.tag_name().name();
    match name {
        "br" | "hr" => out.push_str(&format!("<{name}/>")),
        "a" => out.push_str(&format!(
            "<a href=\"{}\">",
            escaped(node.attribute("href").unwrap_or(""))
        )),
        "ol" => out.push_str(&format!(
            "<ol start=\"{}\">",
            node.attribute("start").unwrap_or("1")
        )),
        _ => out.push_str(&format!("<{name}>")),
    }
    plain(node, out);
    if !matches!(name, "br" | "hr") {
        out.push_str(&format!("</{name}>"));
    }
}

/// A line break in HTML swallows the line end behind it, and the blanks around both.
fn tidy(html: &str) -> String {
    let mut html = html.replace("<br/> ", "<br/>");
    for end in ["</p>", "</li>"] {
        html = html.replace(&format!(" {end}"), end);
    }
    html
}

#[test]
fn commonmark_comes_out_as_the_specification_says() {
    let text = include_str!("commonmark.txt");
    let examples = examples(text);
    assert!(examples.len() >= 40, "only {} examples", examples.len());
    let facts = "title: Pouch\nedition: 1.0.0\nsizes: {one: One size}\nparts: [make.md]\n";
    let mut wrong = Vec::new();
    for example in &examples {
        let part = format!("# Make it\n\n## Look {{#look}}\n\n{}", example.markdown);
        let found = written(&[("booklet.yaml", facts), ("make.md", &part)], |compiled| {
            render(&compiled.editions()[0].parts[0].steps[0].body)
        });
        let html = format!("<root>{}</root>", example.html.replace("&nbsp;", "\u{a0}"));
        let document =
            Document::parse(&html).unwrap_or_else(|error| panic!("{}: {error}", example.number));
        let mut expected = String::new();
        plain(document.root_element(), &mut expected);
        if tidy(&found) != tidy(&expected) {
            wrong.push(format!(
                "example {}:\n{}  wanted {expected}\n  found  {found}\n",
                example.number, example.markdown
            ));
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

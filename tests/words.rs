//! Whatever an author writes is printed: the words of a booklet as its pages and diagrams get them.

use std::collections::BTreeMap;
use std::path::Path;

use notchbook::diag::Report;
use notchbook::pipeline::{Reach, Workshop};
use notchbook::source::{BookletFolder, Folder};
use notchbook::typeset::{Paper, Press};

/// A booklet as it would be printed in its first size.
struct Page {
    /// The data of the templates.
    data: String,
    /// The author's diagrams, in the order of their mentions' keys.
    figures: Vec<String>,
    report: Report,
}

/// The base booklet of the checks' cases: path and text.
fn base() -> BTreeMap<String, String> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/checks/_base");
    let read =
        |name: &str| std::fs::read_to_string(root.join(name)).expect("a file of the base booklet");
    ["booklet.yaml", "make.md", "figures/sew.svg"]
        .map(|name| (name.to_owned(), read(name)))
        .into()
}

/// Compiles the base booklet with some of its files replaced, and sets its first size.
fn page(files: &[(&str, &str)]) -> Page {
    let folder = tempfile::tempdir().expect("a folder of our own");
    let mut all = base();
    all.extend(
        files
            .iter()
            .map(|(name, text)| ((*name).to_owned(), (*text).to_owned())),
    );
    for (name, text) in &all {
        let path = folder.path().join("pouch").join(name);
        std::fs::create_dir_all(path.parent().expect("a folder above")).expect("a folder");
        std::fs::write(path, text).expect("a file of the booklet");
    }
    let opened = Folder::open(folder.path()).expect("the folder");
    let booklet = BookletFolder {
        name: "pouch".into(),
        path: Path::new("pouch").into(),
    };
    let compiled = Workshop::open(&opened, &booklet, Reach::Checks);
    let book = compiled.book(&compiled.editions()[0], Paper::A4.of_sheets());
    let sheaf = compiled.sheaf(&book, Paper::A4);
    if compiled.report.errors() == 0 {
        let printed = Press::new(&compiled.house).print(&sheaf);
        printed.expect("a booklet without errors can be set");
    }
    Page {
        data: sheaf.data.to_string(),
        figures: compiled
            .figures
            .of_size(0)
            .map(|(_, figure)| figure.svg.clone())
            .collect(),
        report: compiled.report,
    }
}

/// The base's facts with lines laid over them.
fn facts(lines: &str) -> String {
    format!("{}{lines}", base()["booklet.yaml"])
}

/// The base's steps and one more.
fn steps(words: &str) -> String {
    format!("{}\n## Look {{#look}}\n\n{words}\n", base()["make.md"])
}

#[track_caller]
fn clean(page: &Page) {
    let found: Vec<&str> = page
        .report
        .findings
        .iter()
        .map(|one| one.message.as_str())
        .collect();
    assert!(found.is_empty(), "{found:?}");
}

#[test]
fn braces_in_code_stand_as_they_are() {
    let words = "```` ``` ```` marks code, and {seam} does not.\n\n    an indented {seam}\n\nIn a line `{seam}`, and ``a `{seam}` tick``.\n";
    let page = page(&[("make.md", &steps(words))]);
    clean(&page);
    assert!(page.data.contains("an indented {seam}"), "{}", page.data);
    assert!(page.data.contains("a `{seam}` tick"));
    assert_eq!(page.data.matches("{seam}").count(), 3);
    assert!(!page.data.contains("xxxx"));
}

#[test]
fn three_ticks_inside_a_paragraph_open_nothing() {
    let words = "Words, then\n```short``` and {width}.\n\nAnd {height} below.\n";
    let page = page(&[("make.md", &steps(words))]);
    clean(&page);
    // The words of the house have places of that name, and stand before its language.
    let (_, own) = page
        .data
        .split_once("\"language\":\"")
        .expect("the language");
    assert!(
        !own.contains("{width}") && !own.contains("{height}"),
        "{own}"
    );
}

#[test]
fn notes_and_meanings_keep_all_their_blocks() {
    let text = base()["booklet.yaml"]
        .replace(
            "amount: [20 cm, 25 cm]}",
            "amount: [20 cm, 25 cm], note: \"First.\\n\\nSecond:\\n\\n1. third\\n2. fourth\\n\\n   fifth\\n\\n> sixth\\n\\n    seventh {seam}\\n\"}",
        )
        .replace("facing each other.", "facing each other. \"")
        .replace("together: With", "together: \"With")
        .replace("each other. \"", "each other.\\n\\n- eighth\\n- ninth\\n\"");
    let page = page(&[("booklet.yaml", &text)]);
    clean(&page);
    for word in [
        "First",
        "Second",
        "third",
        "fourth",
        "fifth",
        "sixth",
        "seventh {seam}",
        "eighth",
        "ninth",
        "\"ordered\":true",
    ] {
        assert!(
            page.data.contains(word),
            "`{word}` is lost in {}",
            page.data
        );
    }
}

#[test]
fn a_choice_keeps_what_looks_like_a_list_or_a_heading() {
    let words = "Sew {small: 1. the {seam} side `a|b` | else: # all} of it, {small: - once\n- and **again** | else: never}.\n\n> {small: turn\n> it out | else: leave it}\n";
    let page = page(&[("make.md", &steps(words))]);
    clean(&page);
    for word in ["1. the ", "a|b", "- once", "again", "turn it out"] {
        assert!(
            page.data.contains(word),
            "`{word}` is lost in {}",
            page.data
        );
    }
    assert!(!page.data.contains("{seam}"));
}

/// The seam lines of the last step, as the templates get them.
#[track_caller]
fn seam(facts: &str, work: &str) -> Vec<serde_json::Value> {
    let words = format!("```work\n{work}\n```\n\nLook.\n");
    let page = page(&[("booklet.yaml", facts), ("make.md", &steps(&words))]);
    clean(&page);
    let data: serde_json::Value = serde_json::from_str(&page.data).expect("the data of a page");
    let parts = data["parts"].as_array().expect("the parts");
    let steps = parts[0]["steps"].as_array().expect("the steps");
    let last = steps.last().expect("a step");
    last["seam"].as_array().expect("its lines").clone()
}

#[test]
fn every_fact_of_a_step_is_told_with_its_words_and_its_note() {
    let work = "- press: [front, along the seams]\n- press: back\n  note: \"no nearer than {seam} to the {small: first | large: second} **corner**\"\n- trim: [front.left, back.left]";
    let told = seam(&base()["booklet.yaml"], work);
    let verbs: Vec<&str> = told
        .iter()
        .filter_map(|fact| fact["verb"].as_str())
        .collect();
    assert_eq!(verbs, ["press", "press", "trim"]);
    assert_eq!(told[0]["words"][0], "along the seams");
    let note = told[1]["note"].to_string();
    assert!(
        note.contains("first") && note.contains("corner") && note.contains("\"number\":\"1\""),
        "{note}"
    );
    assert!(!note.contains('{') || !note.contains("{seam}"), "{note}");
}

#[test]
fn a_piece_and_its_edge_say_a_word_once() {
    let called =
        "    edges: {left: front edge, right: Side edge of the front, top: upper edge}\n    cut:";
    let text = base()["booklet.yaml"].replacen("    cut:", called, 1);
    let text = text.replace("[front, back]", "{front: Right front, back: Front}");
    let told = seam(
        &text,
        "- press: [front.left, front.top, front.bottom, back.left, back.right]",
    );
    let what = read(&told[0]);
    let right =
        "right front edge, right front: upper and bottom edge, front edge, side edge of the front";
    assert_eq!(what, right);
}

/// What a line says is done to what, as the page has it.
fn read(fact: &serde_json::Value) -> String {
    let list = |value: &serde_json::Value| -> Vec<String> {
        let items = value.as_array().expect("a list").iter();
        items
            .map(|item| item.as_str().expect("words").to_owned())
            .collect()
    };
    let done = |one: &serde_json::Value| {
        let parts = list(&one["parts"]);
        let name = one["name"].as_str().expect("a name").to_owned();
        let named = match parts.split_last() {
            Some((last, before)) => format!("{name}: {} and {last}", before.join(", ")),
            None => name,
        };
        match list(&one["marks"]).join(", ") {
            marks if marks.is_empty() => named,
            marks if one["several"] == true => format!("{named} at the marks {marks}"),
            marks => format!("{named} at the mark {marks}"),
        }
    };
    let sides = fact["what"].as_array().expect("sides").iter();
    let sides = sides.map(|side| {
        let side = side.as_array().expect("names").iter();
        side.map(done).collect::<Vec<_>>().join(", ")
    });
    sides.collect::<Vec<_>>().join(" to ")
}

#[test]
fn a_seam_tells_its_sides_apart_and_names_a_piece_once() {
    let text = base()["booklet.yaml"].replacen(
        "    cut:\n",
        "    marks:\n      dots: {line: [[3 cm, 2 cm], [3 cm, 8 cm]], count: 3}\n      dot: {point: [5 cm, 5 cm]}\n    cut:\n",
        1,
    );
    let text = text.replacen(
        "notions:\n",
        "notions:\n  buttons: {kind: button, name: Shirt button, size: 1 cm (3/8 in), count: 4}\n",
        1,
    );
    let told = seam(
        &text,
        "- {buttonhole: [front.dot, front.dots]}\n- {button: [buttons, back.dot, back.dots], count: 4}\n\
         - {topstitch: [[front.left, front.bottom], [back.left, back.bottom]], stitch: 3 mm, from: 1/6, to: 0.37}\n\
         - {topstitch: [front.left, back.left], stitch: 4 mm, from: 0 cm from top}\n- {press: [front, back, flat]}",
    );
    let lines: Vec<String> = told.iter().map(read).collect();
    let right = [
        "front at the marks dot, dots",
        "shirt button, back at the marks dot, dots",
        "front: left and bottom edge to back: left and bottom edge",
        "front left edge, back left edge",
        "front, back",
    ];
    assert_eq!(lines, right);
    let far = |at: usize| told[2]["places"][at]["far"]["first"]["number"].clone();
    assert_eq!([far(0), far(1)], ["1/6", "37\u{a0}%"]);
    let place = &told[3]["places"][0];
    assert_eq!(place["point"], "edge top edge");
    assert!(place["far"].is_null(), "nothing from the top is at the top");
}

#[test]
fn what_the_tool_converts_says_the_same_length() {
    let facts = base()["booklet.yaml"].replacen(
        "finished:\n",
        "  small: [7.68 mm, 1 cm]\nfinished:\n  Gap: 5 mm\n  Two: 2 mm\n  Reckoned: small * 1\n  Inches: 3/32 in\n  Wide: 20 cm\n",
        1,
    );
    let page = page(&[
        ("booklet.yaml", &facts),
        (
            "make.md",
            &steps("<!-- waive one-system-alone: a trial -->\n\nTrim to {5 mm | in}."),
        ),
    ]);
    clean(&page);
    let data: serde_json::Value = serde_json::from_str(&page.data).expect("the data of a page");
    let told = |at: usize| {
        let value = &data["finished"][at]["measure"]["values"][0];
        let one = |value: &serde_json::Value| {
            let part = |key: &str| value[key].as_str().expect("words").to_owned();
            format!("{} {}", part("number"), part("unit"))
        };
        format!("{} ({})", one(&value["first"]), one(&value["second"])).replace('\u{a0}', " ")
    };
    let rows: Vec<String> = (0..5).map(told).collect();
    let right = [
        "5 mm (3/16 in)",
        "2 mm (1/16 in)",
        "8 mm (5/16 in)",
        "2 mm (3/32 in)",
        "20 cm (7 7/8 in)",
    ];
    assert_eq!(rows, right);
    assert!(
        page.data.contains("\"3/16\""),
        "one unit alone says the same"
    );
}

#[test]
fn names_that_a_shared_part_is_handed_are_printed_as_words() {
    let text = base()["booklet.yaml"].replace(
        "parts: [make.md]",
        "parts: [{file: make.md, with: {edges: \"front.top, back.left\", what: flat}}]",
    );
    let page = page(&[
        ("booklet.yaml", &text),
        ("make.md", &steps("Press {edges} {what}.")),
    ]);
    clean(&page);
    assert!(
        page.data.contains("front top edge and back left edge"),
        "{}",
        page.data
    );
}

const LABEL: &str = r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 76 44" width="76mm" data-scale="1:5">
  <text class="label" x="5" y="20">WORDS</text>
</svg>"#;

#[test]
fn one_diagram_in_two_steps_shows_the_figures_of_each() {
    let make = base()["make.md"].replacen(
        "Hem the top edges.",
        "Hem the top edges.\n\n![The seam](figures/sew.svg)\n",
        1,
    );
    let again = "\n## Sew again {#again}\n\n```work\n- topstitch: front.left\n  allowance: 3 mm (1/8 in)\n  stitch: 3 mm\n```\n\nTopstitch.\n\n![The seam](figures/sew.svg)\n";
    let svg = LABEL.replace("WORDS", "{allowance | mm}");
    let page = page(&[
        ("make.md", &format!("{make}{again}")),
        ("figures/sew.svg", &svg),
    ]);
    let figures = page.figures.join("\n");
    assert!(figures.contains(">10\u{a0}mm<"), "{figures}");
    assert!(figures.contains(">3\u{a0}mm<"), "{figures}");
}

#[test]
fn what_is_handed_over_may_hold_any_sign() {
    let facts = facts("").replace(
        "parts: [make.md]",
        "parts: [{file: make.md, with: {what: 'the \"front\" & <back>', id: 'x\" onload=\"y'}}]",
    );
    let svg = LABEL
        .replace("WORDS", "{what}")
        .replace("x=\"5\"", "x=\"5\" id=\"{id}\"");
    let page = page(&[("booklet.yaml", &facts), ("figures/sew.svg", &svg)]);
    clean(&page);
    assert_eq!(page.figures.len(), 1);
    assert!(
        page.figures[0].contains("the &quot;front&quot; &amp; &lt;back&gt;"),
        "{}",
        page.figures[0]
    );
    assert!(!page.figures[0].contains("onload=\"y\""));
}

#[test]
fn a_label_says_what_its_choice_says() {
    let svg = LABEL.replace(
        "WORDS",
        "{small: lining &amp; *pocket* `two` | else: lining}, \\{{seam | mm}\\}",
    );
    let page = page(&[("figures/sew.svg", &svg)]);
    clean(&page);
    assert!(
        page.figures[0].contains(">lining &amp; *pocket* `two`, {10\u{a0}mm}<"),
        "{}",
        page.figures[0]
    );
}

#[test]
fn an_abbreviation_keeps_its_capitals_in_the_line_of_a_seam() {
    let facts = base()["booklet.yaml"].replace("  side:\n", "  side:\n    name: PUL side\n");
    let words = "```work\n- press: side\n  note: gently\n```\n\nPress the [](piece:side).\n";
    let page = page(&[("booklet.yaml", &facts), ("make.md", &steps(words))]);
    clean(&page);
    assert!(
        page.data
            .contains("\"what\":[[{\"marks\":[],\"name\":\"PUL side\""),
        "{}",
        page.data
    );
    assert!(page.data.contains("\"name\":\"PUL side\""), "{}", page.data);
}

/// The names of copies and edges that an author gives stand wherever the page names them, and the ids nowhere.
#[test]
fn names_of_copies_and_edges_reach_the_page() {
    let pieces = "pieces:\n  side:\n    outline: {rectangle: [width + 2 * seam, height + 2 * seam]}\n    \
                  allowance: {all: seam}\n    edges: {left: Left side seam, bottom: base seam}\n    cut:\n      \
                  outer: {pane_a: Front of the pouch, pane_b: Back of the pouch}\n";
    let base = base();
    let yaml = &base["booklet.yaml"];
    let at = yaml.find("pieces:").expect("the pieces");
    let end = yaml.find("words:").expect("the words");
    let yaml = format!("{}{pieces}{}", &yaml[..at], &yaml[end..]);
    let make = base["make.md"]
        .replace("front", "pane_a")
        .replace("back", "pane_b");
    let page = page(&[
        ("booklet.yaml", &yaml),
        (
            "make.md",
            &format!("{make}\nLook at the [](piece:pane_a).\n"),
        ),
    ]);
    clean(&page);
    for words in [
        "front of the pouch left side seam",
        "back of the pouch base seam",
        "front of the pouch right edge",
    ] {
        assert!(page.data.contains(words), "“{words}” is not printed");
    }
    // In the cutting list and in the reference they stand alone.
    assert!(page.data.contains("\"front of the pouch\""));
    assert!(!page.data.contains("pane"), "an id is printed");
}

/// Every figure of a notion is printed.
#[test]
fn every_figure_of_a_notion_reaches_the_page() {
    let yaml = base()["booklet.yaml"].replace(
        "notions:\n",
        "notions:\n  band: {kind: elastic, length: 61 cm, width: 2.5 cm, amount: 183 cm, count: \"up(height / 4 cm, 1)\"}\n  \
         pad: {size: 39 cm}\n",
    );
    let make = format!(
        "{}\nTake the [](notion:band) and the [](notion:pad).\n",
        base()["make.md"]
    );
    let page = page(&[("booklet.yaml", &yaml), ("make.md", &make)]);
    clean(&page);
    for figure in ["\"61\"", "\"2.5\"", "\"183\"", "\"39\"", "\"count\":3"] {
        assert!(page.data.contains(figure), "{figure} is not printed");
    }
}

#[test]
fn several_of_a_notion_are_called_by_their_plural_and_told_in_all() {
    let yaml = base()["booklet.yaml"].replace(
        "notions:\n",
        "notions:\n  buttons: {kind: button, name: Shirt button, plural: Shirt buttons, size: 1 cm (3/8 in), count: [1, 9]}\n  \
         cord: {kind: tape, name: Braided cord, length: 109.1 cm, count: 2}\n",
    );
    let make = format!(
        "{}\nSew the {{buttons.count | words}} [](notion:buttons) on, near the first [](notion:buttons), with the [](notion:cord).\n",
        base()["make.md"]
    );
    for (size, wanted) in [(0, "shirt button"), (1, "shirt buttons")] {
        let words = spoken_of(size, &yaml, &make);
        assert_eq!(words, [wanted, "shirt button", "braided cord"]);
    }
    let page = page(&[("booklet.yaml", &yaml), ("make.md", &make)]);
    clean(&page);
    let data: serde_json::Value = serde_json::from_str(&page.data).expect("the data of a page");
    let cord = &data["notions"][1]["amounts"][0];
    assert_eq!(cord["count"], 2);
    assert_eq!(cord["amount"]["first"]["number"], "220");
}

/// The names of the notions that the last words of a size refer to.
fn spoken_of(size: usize, yaml: &str, make: &str) -> Vec<String> {
    // The page is of the first size: the other comes first where the sizes are told the other way round.
    let turned = yaml
        .replace(
            "small: Small\n  large: Large",
            "large: Large\n  small: Small",
        )
        .replace("count: [1, 9]", "count: [9, 1]");
    let page = page(&[
        ("booklet.yaml", if size == 0 { yaml } else { &turned }),
        ("make.md", make),
    ]);
    let data: serde_json::Value = serde_json::from_str(&page.data).expect("the data of a page");
    let mut found = Vec::new();
    names(&data["parts"], &mut found);
    found
}

fn names(data: &serde_json::Value, found: &mut Vec<String>) {
    match data {
        serde_json::Value::Array(items) => items.iter().for_each(|item| names(item, found)),
        serde_json::Value::Object(map) => {
            if map.get("aim").is_some_and(|aim| aim == "notion") {
                found.extend(
                    map.get("name")
                        .and_then(|name| name.as_str())
                        .map(str::to_owned),
                );
            }
            map.values().for_each(|item| names(item, found));
        }
        _ => {}
    }
}

#[test]
fn a_stated_time_is_worked_out_and_told_by_size() {
    let told = facts("time: \"About {90 min}, [slowly](https://time.example)\"\n");
    let page = page(&[("booklet.yaml", &told)]);
    clean(&page);
    let data: serde_json::Value = serde_json::from_str(&page.data).expect("data");
    let words = data["time"].to_string();
    for word in ["About ", "\"90\"", "\"min\"", "slowly"] {
        assert!(words.contains(word), "{word}: {words}");
    }
}

#[test]
fn questions_and_answers_keep_all_that_is_written() {
    let help = "## Why *does* it `wave`? {#sew}\n\nFirst.\n\n1. second\n2. third {seam}[^1]\n\n> [!TIP]\n> Fourth.\n\n### Fifth\n\n| a | b |\n|---|---|\n| sixth | {width} |\n\n[^1]: Seventh.\n";
    let page = page(&[
        ("booklet.yaml", &facts("help: help.md\n")),
        ("help.md", help),
    ]);
    clean(&page);
    for words in [
        "does", "wave", "First.", "second", "third ", "Fourth.", "Fifth", "sixth", "Seventh.",
    ] {
        assert!(
            page.data.contains(&format!("\"text\":\"{words}\"")),
            "{words}: {}",
            page.data
        );
    }
}

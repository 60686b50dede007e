//! What a stranger may send: the small booklet that `new` makes, with one thing in it that no author means.

mod facts;
mod files;
mod pictures;
mod words;

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

/// A booklet's files by their paths.
pub struct Booklet {
    pub files: BTreeMap<String, Vec<u8>>,
}

impl Booklet {
    /// Puts other words in the place of some that stand in a file.
    pub fn change(&mut self, file: &str, find: &str, put: &str) {
        let text = String::from_utf8(self.files[file].clone()).expect("a text");
        assert!(text.contains(find), "{file} holds no {find}");
        self.files
            .insert(file.into(), text.replacen(find, put, 1).into_bytes());
    }

    /// Puts a file in.
    pub fn put(&mut self, file: &str, bytes: impl Into<Vec<u8>>) {
        self.files.insert(file.into(), bytes.into());
    }

    /// Draws the first diagram anew: the frame of the house's own with `inner` in it.
    pub fn figure(&mut self, inner: &str) {
        let frame = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 76 50\" width=\"76mm\" data-scale=\"1:5\">";
        self.put("figures/cut.svg", format!("{frame}{inner}</svg>"));
    }

    /// Takes its one piece's outline from a drawing that holds the path `d`.
    pub fn outline(&mut self, d: &str) {
        self.change(
            "booklet.yaml",
            "{rectangle: [cut_width, cut_height]}",
            "{svg: pieces/side.svg, id: side}",
        );
        let root =
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 200 200\" width=\"200mm\">";
        self.put(
            "pieces/side.svg",
            format!("{root}<path id=\"side\" d=\"{d}\"/></svg>"),
        );
    }

    /// Puts facts behind the piece's outline.
    pub fn pieces(&mut self, more: &str) {
        self.change("booklet.yaml", "\nwords:\n", &format!("{more}\nwords:\n"));
    }

    /// Puts words behind those of the first step.
    pub fn words(&mut self, more: &str) {
        self.change(
            "make.md",
            "Cut two pieces,",
            &format!("{more}\n\nCut two pieces,"),
        );
    }

    pub fn write(&self, folder: &Path) {
        for (path, bytes) in &self.files {
            let path = folder.join(path);
            fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
            fs::write(path, bytes).expect("a file");
        }
    }
}

/// A hostile booklet, and what must come of it.
pub struct Case {
    pub name: &'static str,
    pub edit: fn(&mut Booklet),
    pub args: &'static [&'static str],
    /// The exit code.
    pub exit: i32,
    /// What must stand in what is printed: most often the check and the file.
    pub tells: &'static str,
}

const CHECK: &[&str] = &["check", "tide-pouch"];
const BUILD: &[&str] = &["build", "tide-pouch"];

/// A booklet in which `check` finds something.
const fn told(name: &'static str, tells: &'static str, edit: fn(&mut Booklet)) -> Case {
    Case {
        name,
        edit,
        args: CHECK,
        exit: 1,
        tells,
    }
}

/// A booklet that is odd, and right.
const fn right(name: &'static str, edit: fn(&mut Booklet)) -> Case {
    Case {
        name,
        edit,
        args: CHECK,
        exit: 0,
        tells: "0 errors",
    }
}

/// A booklet that `build` must not let through.
const fn not_built(name: &'static str, tells: &'static str, edit: fn(&mut Booklet)) -> Case {
    Case {
        name,
        edit,
        args: BUILD,
        exit: 1,
        tells,
    }
}

pub fn all() -> Vec<Case> {
    [
        facts::cases(),
        words::cases(),
        pictures::cases(),
        files::cases(),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// A good booklet of 1,000 steps and 24 sizes.
pub fn long(booklet: &mut Booklet) {
    let names: Vec<String> = (1..=24)
        .map(|size| format!("  s{size}: Size {size}\n"))
        .collect();
    booklet.change(
        "booklet.yaml",
        "  small: Small\n  large: Large\n",
        &names.concat(),
    );
    let values = |from: i32| -> String {
        let each: Vec<String> = (0..24)
            .map(|size| format!("{}.{} cm", from + size / 10, size % 10))
            .collect();
        each.join(", ")
    };
    booklet.change(
        "booklet.yaml",
        "15 cm (5 7/8 in), 21 cm (8 1/4 in)",
        &values(15),
    );
    booklet.change(
        "booklet.yaml",
        "12.5 cm (4 7/8 in), 16 cm (6 1/4 in)",
        &values(12),
    );
    let steps = (0..997).map(|step| {
        format!(
            "\n## Look at the seam, {} times {{#look-{step}}}\n\nLook at the seam of [](#sew) once more.\n",
            step + 2
        )
    });
    let steps: String = steps.collect();
    let text = String::from_utf8(booklet.files["make.md"].clone()).expect("a text") + &steps;
    booklet.put("make.md", text);
}

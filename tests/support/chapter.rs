//! Literate tests: a Markdown file of cases, each a small booklet whose findings stand on marked
//! lines below the lines that are at fault.
//!
//! A fence names its file: ```` ```yaml booklet.yaml ````. With a `+` before the name the block is
//! laid over the file of the same name in `tests/checks/_base`. Lines that begin with `//~` are
//! marks; they are taken out before the booklet is compiled.

use std::ops::Range;
use std::path::{Path, PathBuf};

/// What a marked line begins with.
pub const MARK: &str = "//~";

/// One file of cases.
pub struct Chapter {
    /// Where it stands.
    pub path: PathBuf,
    /// The check that it is about: the file's name.
    pub code: String,
    /// Files for every case that does not bring its own.
    pub common: Vec<Block>,
    /// The cases, in order.
    pub cases: Vec<Case>,
    lines: Vec<String>,
}

/// One small booklet.
pub struct Case {
    /// Its heading.
    pub name: String,
    /// The files that it brings.
    pub blocks: Vec<Block>,
}

/// One file of a case.
#[derive(Clone)]
pub struct Block {
    /// Its path from the booklet's folder.
    pub file: String,
    /// Whether it is laid over the base's file.
    pub over: bool,
    /// Whether its lines are bytes in hexadecimal.
    pub hex: bool,
    /// Its lines without the marks.
    pub text: Vec<String>,
    /// The marks after so many lines of it.
    pub marks: Vec<Vec<String>>,
    lines: Range<usize>,
}

impl Block {
    /// The file of the booklet as it was published, where this is one.
    pub fn published(&self) -> Option<Block> {
        let file = self.file.strip_prefix("published/")?.to_owned();
        Some(Block {
            file,
            ..self.clone()
        })
    }

    /// A file without marks; `+` before its name lays it over the base's.
    pub fn new(name: &str, text: &str) -> Block {
        Block {
            file: name.trim_start_matches('+').to_owned(),
            over: name.starts_with('+'),
            hex: false,
            text: text.lines().map(str::to_owned).collect(),
            marks: Vec::new(),
            lines: 0..0,
        }
    }
}

impl Chapter {
    /// Reads a file of cases.
    pub fn read(path: &Path) -> Chapter {
        let text = std::fs::read_to_string(path).expect("a readable file of cases");
        let lines: Vec<String> = text.lines().map(str::to_owned).collect();
        let code = path
            .file_stem()
            .and_then(|stem| stem.to_str())
            .expect("a name")
            .to_owned();
        let mut chapter = Chapter {
            path: path.to_path_buf(),
            code,
            common: Vec::new(),
            cases: Vec::new(),
            lines,
        };
        let mut at = 0;
        let mut common = true;
        while at < chapter.lines.len() {
            let line = chapter.lines[at].clone();
            at += 1;
            if let Some(name) = line.strip_prefix("## ") {
                common = name == "common";
                if !common {
                    chapter.cases.push(Case {
                        name: name.to_owned(),
                        blocks: Vec::new(),
                    });
                }
            } else if let Some((fence, info)) = opening(&line) {
                let end = chapter.lines[at..]
                    .iter()
                    .position(|line| line == fence)
                    .expect("a closing fence")
                    + at;
                let block = Block::read(info, &chapter.lines[at..end], at..end);
                at = end + 1;
                match chapter.cases.last_mut() {
                    Some(case) if !common => case.blocks.push(block),
                    _ => chapter.common.push(block),
                }
            }
        }
        chapter
    }

    /// Writes the file with other marks in its cases: those of `found`, block by block.
    pub fn rewrite(&self, found: &[Vec<Block>]) {
        let mut lines = self.lines.clone();
        for block in found.iter().flatten().rev() {
            lines.splice(block.lines.clone(), block.render());
        }
        std::fs::write(&self.path, lines.join("\n") + "\n").expect("a writable file of cases");
    }
}

/// The fence and what is written after it.
fn opening(line: &str) -> Option<(&str, &str)> {
    let mark = line
        .chars()
        .next()
        .filter(|mark| matches!(mark, '`' | '~'))?;
    let length = line.chars().take_while(|letter| *letter == mark).count();
    (length >= 3)
        .then(|| line.split_at(length))
        .map(|(fence, info)| (fence, info.trim()))
}

impl Block {
    fn read(info: &str, written: &[String], lines: Range<usize>) -> Block {
        let (language, file) = info.split_once(' ').expect("a fence that names its file");
        let (file, over) = file
            .strip_prefix('+')
            .map_or((file, false), |file| (file, true));
        let mut block = Block {
            file: file.to_owned(),
            over,
            hex: language == "hex",
            text: Vec::new(),
            marks: vec![Vec::new()],
            lines,
        };
        for line in written {
            if line.starts_with(MARK) {
                block
                    .marks
                    .last_mut()
                    .expect("a place for marks")
                    .push(line.clone());
            } else {
                block.text.push(line.clone());
                block.marks.push(Vec::new());
            }
        }
        block
    }

    /// The same block, given by a page rather than by a case.
    pub fn of_page(file: &str, over: bool, text: &str) -> Block {
        let text: Vec<String> = text.lines().map(str::to_owned).collect();
        let marks = vec![Vec::new(); text.len() + 1];
        Block {
            file: file.to_owned(),
            over,
            hex: false,
            text,
            marks,
            lines: 0..0,
        }
    }

    /// The same block with no marks.
    pub fn bare(&self) -> Block {
        Block {
            marks: vec![Vec::new(); self.text.len() + 1],
            ..self.clone()
        }
    }

    fn render(&self) -> Vec<String> {
        let mut lines = self.marks[0].clone();
        for (text, marks) in self.text.iter().zip(&self.marks[1..]) {
            lines.push(text.clone());
            lines.extend(marks.iter().cloned());
        }
        lines
    }

    /// The block as it ought to be written, `-` before marks that nothing was found for and `+`
    /// before findings that have no mark.
    pub fn compare(&self, found: &Block) -> String {
        let mut shown = format!("    {}\n", self.file);
        for at in 0..self.marks.len() {
            if at > 0 {
                shown.push_str(&format!("  {}\n", self.text[at - 1]));
            }
            if self.marks[at] == found.marks[at] {
                self.marks[at]
                    .iter()
                    .for_each(|mark| shown.push_str(&format!("  {mark}\n")));
            } else {
                self.marks[at]
                    .iter()
                    .for_each(|mark| shown.push_str(&format!("- {mark}\n")));
                found.marks[at]
                    .iter()
                    .for_each(|mark| shown.push_str(&format!("+ {mark}\n")));
            }
        }
        shown
    }
}

//! Rust source as the tidy rules read it: comments and the insides of strings blanked out, so that
//! a rule never trips over words that are only quoted or told.

use std::path::{Path, PathBuf};

/// One source file.
pub struct SourceFile {
    /// Its path from the project's folder, with `/` between names.
    pub path: String,
    /// The whole text.
    pub text: String,
    /// The text with comments and the insides of strings as spaces; of the same lines.
    pub code: String,
}

impl SourceFile {
    /// The stage of the pipeline: the folder below `src`, or the file's stem where it stands in
    /// `src` itself.
    pub fn stage(&self) -> &str {
        let below = self.path.strip_prefix("src/").unwrap_or(&self.path);
        let first = below.split('/').next().unwrap_or(below);
        first.strip_suffix(".rs").unwrap_or(first)
    }

    /// The lines of code that hold `token` as a word of its own, counted from 1.
    pub fn lines_with(&self, token: &str) -> Vec<usize> {
        let holds = |line: &str| {
            line.match_indices(token)
                .any(|(at, _)| stands_alone(line, at, token))
        };
        let numbered = self.code.lines().zip(1..);
        numbered
            .filter(|(line, _)| holds(line))
            .map(|(_, number)| number)
            .collect()
    }

    /// The first names behind `crate::`, each with its line: `crate::diag::Finding` and
    /// `crate::{diag, model::Text}` both name `diag`.
    pub fn imports(&self) -> Vec<(String, usize)> {
        let mut found = Vec::new();
        for (at, word) in self.code.match_indices("crate::") {
            if !stands_alone(&self.code, at, word) {
                continue;
            }
            let line = self.code[..at].matches('\n').count() + 1;
            let rest = &self.code[at + word.len()..];
            let names = match rest.strip_prefix('{') {
                Some(group) => first_names(group),
                None => vec![name(rest)],
            };
            found.extend(names.into_iter().map(|name| (name, line)));
        }
        found
    }

    /// The longest chain of `super::` that still stays inside the file's own stage.
    pub fn supers(&self) -> usize {
        let depth = self.path.matches('/').count();
        let is_folder = self.path.ends_with("/mod.rs");
        (depth - usize::from(is_folder)).saturating_sub(1)
    }
}

/// Every Rust file below a folder of the project, sorted by path.
pub fn rust_files(root: &Path, folder: &str) -> Vec<SourceFile> {
    files(root, folder)
        .into_iter()
        .filter(|path| path.ends_with(".rs"))
        .map(|path| {
            let text = std::fs::read_to_string(root.join(&path)).expect("a source file");
            SourceFile {
                code: blanked(&text),
                path,
                text,
            }
        })
        .collect()
}

/// Every file below a folder of the project, sorted, with `/` between names; none when there is no
/// such folder.
pub fn files(root: &Path, folder: &str) -> Vec<String> {
    let mut found = Vec::new();
    let mut waiting: Vec<PathBuf> = vec![root.join(folder)];
    while let Some(folder) = waiting.pop() {
        let Ok(entries) = std::fs::read_dir(&folder) else {
            continue;
        };
        for entry in entries {
            let path = entry.expect("an entry of a folder").path();
            if path.is_dir() {
                waiting.push(path);
            } else if let Ok(inside) = path.strip_prefix(root) {
                found.push(inside.to_string_lossy().replace('\\', "/"));
            }
        }
    }
    found.sort();
    found
}

/// Whether the letters around a find belong to other words.
fn stands_alone(text: &str, at: usize, token: &str) -> bool {
    let part = |letter: char| letter.is_alphanumeric() || letter == '_';
    let starts = token.starts_with(part);
    let ends = token.ends_with(part);
    let before = text[..at].chars().next_back();
    let after = text[at + token.len()..].chars().next();
    let touches = (starts && before.is_some_and(part)) || (ends && after.is_some_and(part));
    !touches
}

fn name(text: &str) -> String {
    text.chars()
        .take_while(|letter| letter.is_alphanumeric() || *letter == '_')
        .collect()
}

/// The first name of each entry of a group, which ends with its closing brace.
fn first_names(group: &str) -> Vec<String> {
    let mut names = vec![name(group.trim_start())];
    let mut depth = 0;
    for (at, letter) in group.char_indices() {
        match letter {
            '{' => depth += 1,
            '}' if depth == 0 => break,
            '}' => depth -= 1,
            ',' if depth == 0 => names.push(name(group[at + 1..].trim_start())),
            _ => {}
        }
    }
    names.retain(|name| !name.is_empty());
    names
}

/// The text with comments and the insides of strings as spaces.
fn blanked(text: &str) -> String {
    let letters: Vec<char> = text.chars().collect();
    let mut out = String::with_capacity(text.len());
    let mut at = 0;
    while at < letters.len() {
        let end = skip(&letters, at);
        if end == at {
            out.push(letters[at]);
            at += 1;
            continue;
        }
        out.extend(
            letters[at..end]
                .iter()
                .map(|letter| if *letter == '\n' { '\n' } else { ' ' }),
        );
        at = end;
    }
    out
}

/// The end of the comment, string or character that begins here; `at` when none does.
fn skip(letters: &[char], at: usize) -> usize {
    let starts = |words: &str| {
        words
            .chars()
            .eq(letters[at..].iter().copied().take(words.len()))
    };
    if starts("//") {
        return until(letters, at, "\n");
    }
    if starts("/*") {
        return comment_end(letters, at);
    }
    let word_before = at > 0 && (letters[at - 1].is_alphanumeric() || letters[at - 1] == '_');
    if letters[at] == 'r' && !word_before {
        let hashes = letters[at + 1..]
            .iter()
            .take_while(|letter| **letter == '#')
            .count();
        if letters.get(at + 1 + hashes) == Some(&'"') {
            let close = format!("\"{}", "#".repeat(hashes));
            let inside = at + hashes + 2;
            return (until(letters, inside, &close) + close.len()).min(letters.len());
        }
    }
    match letters[at] {
        '"' => quoted_end(letters, at, '"'),
        // A lifetime has no closing quote behind its first letter.
        '\'' if letters.get(at + 1) == Some(&'\\') || letters.get(at + 2) == Some(&'\'') => {
            quoted_end(letters, at, '\'')
        }
        _ => at,
    }
}

fn until(letters: &[char], from: usize, mark: &str) -> usize {
    let mark: Vec<char> = mark.chars().collect();
    let found = letters[from..]
        .windows(mark.len())
        .position(|window| window == mark);
    found.map_or(letters.len(), |at| from + at)
}

fn quoted_end(letters: &[char], at: usize, quote: char) -> usize {
    let mut end = at + 1;
    while end < letters.len() {
        match letters[end] {
            '\\' => end += 2,
            letter if letter == quote => return end + 1,
            _ => end += 1,
        }
    }
    letters.len()
}

/// Block comments nest.
fn comment_end(letters: &[char], at: usize) -> usize {
    let mut depth = 0;
    let mut end = at;
    while end + 1 < letters.len() {
        match (letters[end], letters[end + 1]) {
            ('/', '*') => (depth, end) = (depth + 1, end + 2),
            ('*', '/') => (depth, end) = (depth - 1, end + 2),
            _ => end += 1,
        }
        if depth == 0 {
            return end;
        }
    }
    letters.len()
}

#[test]
fn only_code_is_read() {
    let text = "let a = \"panic!\"; // panic!\nlet b = r#\"unsafe\"#; /* x /* y */ z */ let c: &'a str = '\\'';";
    let code = blanked(text);
    assert!(
        !code.contains("panic!") && !code.contains("unsafe") && !code.contains('z'),
        "{code}"
    );
    assert!(code.contains("let c: &'a str ="), "{code}");
    assert_eq!(code.lines().count(), 2);
}

#[test]
fn grouped_imports_are_seen() {
    let file = SourceFile {
        path: "src/figure/bind.rs".into(),
        text: String::new(),
        code: "use crate::{diag::{Finding, Findings}, model};\nlet x = crate::source::Span;".into(),
    };
    let found: Vec<String> = file
        .imports()
        .into_iter()
        .map(|(name, line)| format!("{name} {line}"))
        .collect();
    assert_eq!(found, ["diag 1", "model 1", "source 2"]);
    assert_eq!((file.stage(), file.supers()), ("figure", 1));
}

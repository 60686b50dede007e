//! Spans (a file and a byte range) and what people call them: line and column.

use std::ops::Range;

/// One file among [`Sources`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct FileId(u32);

/// A byte range of one file.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Span {
    /// The file.
    pub file: FileId,
    /// The first byte.
    pub start: u32,
    /// The byte after the last one.
    pub end: u32,
}

impl Span {
    /// The bytes `range` of `file`.
    pub fn new(file: FileId, range: Range<usize>) -> Span {
        let clamp = |byte: usize| u32::try_from(byte).unwrap_or(u32::MAX);
        Span { file, start: clamp(range.start), end: clamp(range.end.max(range.start)) }
    }

    /// The bytes, for slicing the file's text.
    pub fn range(self) -> Range<usize> {
        self.start as usize..self.end as usize
    }

    /// Whether `other` lies wholly inside this span.
    pub fn holds(self, other: Span) -> bool {
        self.file == other.file && self.start <= other.start && other.end <= self.end
    }

    /// The part of this span at `range`, counted from its start and kept inside it.
    pub fn part(self, range: Range<usize>) -> Span {
        let start = (self.start as usize + range.start).min(self.end as usize);
        let end = (self.start as usize + range.end).min(self.end as usize);
        Span::new(self.file, start..end)
    }
}

/// Where a span is, as people count: from 1, columns in characters.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Place {
    /// Line of the first character.
    pub line: usize,
    /// Column of the first character.
    pub column: usize,
    /// Line of the end.
    pub end_line: usize,
    /// Column after the last character.
    pub end_column: usize,
}

/// A file that was read, or that could not be read (then its text is empty).
#[derive(Debug, Clone)]
pub struct SourceFile {
    /// The path as it is shown to people, from the folder that the command was given.
    pub path: String,
    /// The whole text, without a byte order mark.
    pub text: String,
    lines: Vec<usize>,
}

/// Every text that findings may point into.
#[derive(Debug, Clone, Default)]
pub struct Sources {
    files: Vec<SourceFile>,
}

impl Sources {
    /// Takes in a file's text under the path that people see.
    pub fn add(&mut self, path: impl Into<String>, text: impl Into<String>) -> FileId {
        let text = text.into();
        let lines = std::iter::once(0).chain(text.match_indices('\n').map(|(at, _)| at + 1)).collect();
        self.files.push(SourceFile { path: path.into(), text, lines });
        FileId(u32::try_from(self.files.len() - 1).unwrap_or(u32::MAX))
    }

    /// Every file, in the order in which they were taken in.
    pub fn ids(&self) -> impl Iterator<Item = FileId> {
        (0..self.files.len()).filter_map(|at| u32::try_from(at).ok()).map(FileId)
    }

    /// The file behind an id that [`Sources::add`] gave.
    pub fn file(&self, id: FileId) -> &SourceFile {
        &self.files[id.0 as usize]
    }

    /// The id of a file by the path that people see; `None` when no such file was taken in.
    pub fn by_path(&self, path: &str) -> Option<FileId> {
        let at = self.files.iter().position(|file| file.path == path)?;
        Some(FileId(u32::try_from(at).ok()?))
    }

    /// The characters under a span.
    pub fn text(&self, span: Span) -> &str {
        self.file(span.file).text.get(span.range()).unwrap_or("")
    }

    /// The span as line and column.
    pub fn place(&self, span: Span) -> Place {
        let file = self.file(span.file);
        let (line, column) = file.line_and_column(span.start as usize);
        let (end_line, end_column) = file.line_and_column(span.end as usize);
        Place { line, column, end_line, end_column }
    }
}

impl SourceFile {
    fn line_and_column(&self, byte: usize) -> (usize, usize) {
        let byte = byte.min(self.text.len());
        let line = self.lines.partition_point(|&start| start <= byte).max(1);
        let start = self.lines[line - 1];
        let column = self.text.get(start..byte).map_or(0, |before| before.chars().count());
        (line, column + 1)
    }

    /// The bytes of one line (counted from 1), without its line end; `None` past the last.
    pub fn line_range(&self, line: usize) -> Option<Range<usize>> {
        let start = *self.lines.get(line.checked_sub(1)?)?;
        let end = self.lines.get(line).map_or(self.text.len(), |next| next - 1);
        Some(start..end.max(start))
    }
}

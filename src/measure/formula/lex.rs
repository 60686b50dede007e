//! Cutting a formula into figures, names and signs. Figures go to the reader that measurements use,
//! so that `1 1/2 in` means the same in both.

use std::ops::Range;

use super::tree::Comparison;
use crate::measure::number::Slash;
use crate::measure::problem::Problem;
use crate::measure::quantity::Measure;
use crate::measure::read::{measure_at, starts_figure};
use crate::measure::scan::skip_spaces;

/// The sorts of token.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    Figure(Measure),
    Name,
    Plus,
    Minus,
    Times,
    Over,
    Compare(Comparison),
    Open,
    Close,
    OpenList,
    CloseList,
    Comma,
}

/// A token and its characters.
#[derive(Debug, Clone)]
pub(super) struct Token {
    pub kind: Kind,
    pub range: Range<usize>,
}

/// Cuts the text up. A name with a hyphen in it is noted and reading goes on; anything else that
/// cannot be read ends it.
pub(super) fn tokens(text: &str, problems: &mut Vec<Problem>) -> Result<Vec<Token>, Problem> {
    let mut tokens: Vec<Token> = Vec::new();
    let mut at = skip_spaces(text, 0);
    while let Some(first) = text[at..].chars().next() {
        let (kind, end) = if starts_figure(text, at) {
            figure(text, at, tokens.last())?
        } else if starts_name(first) {
            (Kind::Name, name(text, at, problems)?)
        } else {
            sign(text, at, first)?
        };
        tokens.push(Token { kind, range: at..end });
        at = skip_spaces(text, end);
    }
    Ok(tokens)
}

fn figure(text: &str, at: usize, before: Option<&Token>) -> Result<(Kind, usize), Problem> {
    // After `*` or `/`, `3 / 8 in` goes on with the row of signs; only `3/8 in` is a fraction.
    let in_row = before.filter(|token| matches!(token.kind, Kind::Times | Kind::Over));
    let slash = match in_row {
        Some(_) => Slash::TightFractionWithUnit,
        None => Slash::FractionWithUnit,
    };
    let (measure, end) = measure_at(text, at, slash)?;
    if let Some(sign) = in_row {
        let written = &text[at..end];
        let divided = sign.kind == Kind::Over && sign.range.end == at;
        if divided && written.contains('/') && measure.other.is_none() {
            return Err(Problem::unreadable(
                sign.range.start..end,
                "two divisions run together with a fraction can be read in two ways",
                format!("put the fraction in brackets, / ({written}), or put spaces round each /"),
            ));
        }
    }
    Ok((Kind::Figure(measure), end))
}

fn starts_name(c: char) -> bool {
    c.is_alphabetic() || c == '_'
}

fn name_part_end(text: &str, at: usize) -> usize {
    let rest = &text[at..];
    let inside = |c: char| c.is_alphabetic() || c.is_ascii_digit() || matches!(c, '_' | '.');
    at + rest.find(|c| !inside(c)).unwrap_or(rest.len())
}

/// The end of the name that starts at `at`, hyphens included.
fn name(text: &str, at: usize, problems: &mut Vec<Problem>) -> Result<usize, Problem> {
    let mut end = name_part_end(text, at);
    while let Some(hyphen @ ('-' | '\u{2010}' | '\u{2011}')) = text[end..].chars().next() {
        let next = end + hyphen.len_utf8();
        let next_end = name_part_end(text, next);
        let is_call = text[skip_spaces(text, next_end)..].starts_with('(');
        if is_call || !text[next..].starts_with(starts_name) {
            break;
        }
        end = next_end;
    }
    let written = &text[at..end];
    if written.ends_with('.') || written.contains("..") {
        return Err(Problem::unreadable(
            at..end,
            format!("“{written}” has a point with no name after it"),
            "write the part after the point, as in body.top, or leave the point out",
        ));
    }
    let hyphens = ['-', '\u{2010}', '\u{2011}'];
    if written.contains(hyphens) {
        problems.push(Problem::unreadable(
            at..end,
            format!("“{written}” has a hyphen in it, which a name cannot hold"),
            format!(
                "write {} if it is one name; to take one from the other, put spaces round the \
                 minus: {}",
                written.replace(hyphens, "_"),
                written.replace(hyphens, " - ")
            ),
        ));
    }
    Ok(end)
}

fn sign(text: &str, at: usize, first: char) -> Result<(Kind, usize), Problem> {
    let end = at + first.len_utf8();
    let kind = match first {
        '+' => Kind::Plus,
        '-' | '\u{2212}' => Kind::Minus,
        '*' | '×' => Kind::Times,
        '/' | '÷' => Kind::Over,
        '(' => Kind::Open,
        ')' => Kind::Close,
        '[' => Kind::OpenList,
        ']' => Kind::CloseList,
        ',' => Kind::Comma,
        '<' | '>' | '=' | '≤' | '≥' | '!' => return comparison(text, at),
        _ => return Err(stray(at..end, first)),
    };
    if kind == Kind::Times && text[end..].starts_with('*') {
        return Err(Problem::unreadable(
            at..end + 1,
            "** is not a sign used here",
            "to square a value, multiply it by itself: depth * depth",
        ));
    }
    Ok((kind, end))
}

fn comparison(text: &str, at: usize) -> Result<(Kind, usize), Problem> {
    let rest = &text[at..];
    let end = at + rest.find(|c| !matches!(c, '<' | '>' | '=' | '≤' | '≥' | '!')).unwrap_or(rest.len());
    let written = &text[at..end];
    let comparison = match written {
        "<" => Comparison::Less,
        "<=" | "≤" => Comparison::AtMost,
        "=" => Comparison::Equal,
        ">=" | "≥" => Comparison::AtLeast,
        ">" => Comparison::Greater,
        _ => {
            let hint = match written {
                "==" => "write =".to_owned(),
                "=<" => "write <=".to_owned(),
                "=>" => "write >=".to_owned(),
                _ => "compare with < <= = >= or >".to_owned(),
            };
            return Err(Problem::unreadable(at..end, format!("{written} is not a sign used here"), hint));
        }
    };
    Ok((Kind::Compare(comparison), end))
}

fn stray(range: Range<usize>, c: char) -> Problem {
    let hint = match c {
        '\u{201c}' | '\u{201d}' | '"' | '″' => "for inches, write in straight after the number: 3/8 in",
        '\'' | '\u{2018}' | '\u{2019}' | '′' => "for feet, write ft straight after the number: 2 ft",
        '\u{2010}' | '\u{2011}' | '\u{2013}' | '\u{2014}' => "for a minus, write -",
        '^' | '²' => "to square a value, multiply it by itself: depth * depth",
        '%' => "a percentage needs a number in front: 3 %",
        '°' => "an angle or a temperature needs a number in front: 45°",
        '.' => "a name or a number must stand on the side of the point that is empty",
        ';' => "put a comma between the values of a list",
        ':' => "a colon has no meaning in a formula; leave it out",
        _ => "use figures, names, + - * / and brackets",
    };
    let message = format!("“{c}” has no meaning here");
    Problem::unreadable(range, message, hint)
}

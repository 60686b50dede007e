//! Words of several sizes laid over one another.

use super::order::alike;
use crate::book::amount::Value;
use crate::book::prose::{Block, BlockBranch, Inline, InlineBranch, Picture, Reference, View};

/// The words of one size, or of sizes that share them.
pub(super) type Row<'a, T> = (&'a [usize], &'a T);

/// Blocks laid over one another. Where one differs in its build, each size's stands under its name.
pub(super) fn blocks(rows: &[Row<'_, [Block]>]) -> Vec<Block> {
    if let Some(same) = all_same(rows) {
        return same.to_vec();
    }
    let (before, after) = shared_ends(rows, block);
    let mut out: Vec<Block> = before;
    let middles: Vec<(Vec<usize>, Vec<Block>)> = rows
        .iter()
        .map(|(sizes, blocks)| (sizes.to_vec(), blocks[out.len()..blocks.len() - after.len()].to_vec()))
        .collect();
    if middles.iter().any(|(_, middle)| !middle.is_empty()) {
        let branches = alike(&middles).into_iter().filter(|(_, content)| !content.is_empty());
        out.push(Block::BySize { branches: branches.map(|(sizes, content)| BlockBranch { sizes, content }).collect() });
    }
    out.extend(after);
    out
}

/// Runs of words laid over one another. What differs in more than figures is told size by size.
pub(super) fn inlines(rows: &[Row<'_, [Inline]>]) -> Vec<Inline> {
    if let Some(same) = all_same(rows) {
        return same.to_vec();
    }
    let (before, after) = shared_ends(rows, inline);
    let mut out: Vec<Inline> = before;
    let middles: Vec<(Vec<usize>, Vec<Inline>)> = rows
        .iter()
        .map(|(sizes, words)| (sizes.to_vec(), words[out.len()..words.len() - after.len()].to_vec()))
        .collect();
    if middles.iter().any(|(_, middle)| !middle.is_empty()) {
        out.push(by_size(&middles));
    }
    out.extend(after);
    out
}

fn by_size(own: &[(Vec<usize>, Vec<Inline>)]) -> Inline {
    let branches = alike(own).into_iter().filter(|(_, content)| !content.is_empty());
    Inline::BySize { branches: branches.map(|(sizes, content)| InlineBranch { sizes, content }).collect() }
}

fn all_same<'a, T: PartialEq + ?Sized>(rows: &[Row<'a, T>]) -> Option<&'a T> {
    let (_, first) = rows.first()?;
    rows.iter().all(|(_, one)| one == first).then_some(*first)
}

/// What all rows have in common from their beginning, and from there to their end.
fn shared_ends<T>(rows: &[Row<'_, [T]>], merge: impl Fn(&[Row<'_, T>]) -> Option<T>) -> (Vec<T>, Vec<T>) {
    let shortest = rows.iter().map(|(_, row)| row.len()).min().unwrap_or(0);
    let at = |place: &dyn Fn(usize) -> usize| {
        let row: Vec<Row<'_, T>> = rows.iter().map(|(sizes, row)| (*sizes, &row[place(row.len())])).collect();
        merge(&row)
    };
    let mut before = Vec::new();
    while before.len() < shortest {
        let here = before.len();
        let Some(one) = at(&|_| here) else { break };
        before.push(one);
    }
    let mut after = Vec::new();
    while before.len() + after.len() < shortest {
        let back = after.len() + 1;
        let Some(one) = at(&|length| length - back) else { break };
        after.push(one);
    }
    after.reverse();
    (before, after)
}

/// One block; `None` where the sizes differ in its build.
fn block(row: &[Row<'_, Block>]) -> Option<Block> {
    if let Some(same) = all_same(row) {
        return Some(same.clone());
    }
    match row.first()?.1 {
        Block::Paragraph { .. } => {
            let content = of(row, |one| match one {
                Block::Paragraph { content } => Some(content.as_slice()),
                _ => None,
            })?;
            Some(Block::Paragraph { content: inlines(&content) })
        }
        Block::Heading { level, .. } => {
            let content = of(row, |one| match one {
                Block::Heading { level: other, content } if other == level => Some(content.as_slice()),
                _ => None,
            })?;
            Some(Block::Heading { level: *level, content: inlines(&content) })
        }
        Block::List { ordered, start, .. } => {
            let items = of(row, |one| match one {
                Block::List { ordered: other, start: from, items } if (other, from) == (ordered, start) => {
                    Some(items.as_slice())
                }
                _ => None,
            })?;
            Some(Block::List { ordered: *ordered, start: *start, items: each(&items, blocks)? })
        }
        Block::Tasks { .. } => {
            let items = of(row, |one| match one {
                Block::Tasks { items } => Some(items.as_slice()),
                _ => None,
            })?;
            Some(Block::Tasks { items: each(&items, blocks)? })
        }
        Block::Quote { .. } => {
            let content = of(row, |one| match one {
                Block::Quote { content } => Some(content.as_slice()),
                _ => None,
            })?;
            Some(Block::Quote { content: blocks(&content) })
        }
        Block::Notice { notice, .. } => {
            let content = of(row, |one| match one {
                Block::Notice { notice: other, content } if other == notice => Some(content.as_slice()),
                _ => None,
            })?;
            Some(Block::Notice { notice: *notice, content: blocks(&content) })
        }
        Block::Table { align, .. } => table(row, align),
        Block::Figure(_) => {
            let pictures = of(row, |one| match one {
                Block::Figure(picture) => Some(picture),
                _ => None,
            })?;
            picture(&pictures).map(Block::Figure)
        }
        Block::Code { .. } | Block::Rule | Block::BySize { .. } => None,
    }
}

fn table(row: &[Row<'_, Block>], align: &[crate::book::prose::Side]) -> Option<Block> {
    let cells = |line: &[Row<'_, [Vec<Inline>]>]| each(line, inlines);
    let header = of(row, |one| match one {
        Block::Table { align: other, header, .. } if other == align => Some(header.as_slice()),
        _ => None,
    })?;
    let lines = of(row, |one| match one {
        Block::Table { rows, .. } => Some(rows.as_slice()),
        _ => None,
    })?;
    let length = lines.first()?.1.len();
    if lines.iter().any(|(_, one)| one.len() != length) {
        return None;
    }
    let merged: Option<Vec<Vec<Vec<Inline>>>> = (0..length)
        .map(|at| cells(&lines.iter().map(|(sizes, one)| (*sizes, one[at].as_slice())).collect::<Vec<_>>()))
        .collect();
    Some(Block::Table { align: align.to_vec(), header: cells(&header)?, rows: merged? })
}

/// A field of every size's thing; `None` where one is another sort of thing.
fn of<'a, T, F: ?Sized>(row: &[Row<'a, T>], field: impl Fn(&'a T) -> Option<&'a F>) -> Option<Vec<Row<'a, F>>> {
    row.iter().map(|(sizes, one)| Some((*sizes, field(one)?))).collect()
}

/// The items of lists of one length, one after the other; `None` where their lengths differ.
fn each<T, M>(lists: &[Row<'_, [Vec<T>]>], merge: impl Fn(&[Row<'_, [T]>]) -> M) -> Option<Vec<M>> {
    let length = lists.first()?.1.len();
    if lists.iter().any(|(_, list)| list.len() != length) {
        return None;
    }
    let at = |at: usize| lists.iter().map(|(sizes, list)| (*sizes, list[at].as_slice())).collect::<Vec<_>>();
    Some((0..length).map(|place| merge(&at(place))).collect())
}

/// A diagram with the drawings of all sizes; `None` where they are not one diagram.
pub(super) fn picture(row: &[Row<'_, Picture>]) -> Option<Picture> {
    let (_, first) = row.first()?;
    if row.iter().any(|(_, one)| one.id != first.id) {
        return None;
    }
    let alts: Vec<Row<'_, [Inline]>> = row.iter().map(|(sizes, one)| (*sizes, one.alt.as_slice())).collect();
    let views: Vec<View> = row.iter().flat_map(|(_, one)| one.views.iter().cloned()).collect();
    Some(Picture { id: first.id.clone(), alt: inlines(&alts), views, notes: Vec::new() })
}

/// One run; `None` where the sizes differ in its build.
fn inline(row: &[Row<'_, Inline>]) -> Option<Inline> {
    if let Some(same) = all_same(row) {
        return Some(same.clone());
    }
    match row.first()?.1 {
        Inline::Value { .. } => {
            let values = of(row, |one| match one {
                Inline::Value { value } => Some(value),
                _ => None,
            })?;
            Some(Inline::Value { value: Value::merge(&values) })
        }
        Inline::Choice { .. } => {
            let taken: Option<Vec<Taken<'_>>> = row.iter().map(taken).collect();
            Some(choice(&taken?))
        }
        Inline::Strong { .. } => {
            let content = of(row, |one| match one {
                Inline::Strong { content } => Some(content.as_slice()),
                _ => None,
            })?;
            Some(Inline::Strong { content: inlines(&content) })
        }
        Inline::Emphasis { .. } => {
            let content = of(row, |one| match one {
                Inline::Emphasis { content } => Some(content.as_slice()),
                _ => None,
            })?;
            Some(Inline::Emphasis { content: inlines(&content) })
        }
        Inline::Link { url, .. } => {
            let content = of(row, |one| match one {
                Inline::Link { url: other, content } if other == url => Some(content.as_slice()),
                _ => None,
            })?;
            Some(Inline::Link { url: url.clone(), content: inlines(&content) })
        }
        Inline::Reference(reference) => {
            let content = of(row, |one| match one {
                Inline::Reference(other)
                    if (other.to, &other.id, &other.name) == (reference.to, &reference.id, &reference.name) =>
                {
                    Some(other.content.as_slice())
                }
                _ => None,
            })?;
            Some(Inline::Reference(Reference { content: inlines(&content), ..reference.clone() }))
        }
        Inline::Footnote { .. } => {
            let content = of(row, |one| match one {
                Inline::Footnote { content } => Some(content.as_slice()),
                _ => None,
            })?;
            Some(Inline::Footnote { content: blocks(&content) })
        }
        Inline::Text { .. } | Inline::Code { .. } | Inline::BySize { .. } | Inline::Break => None,
    }
}

/// What some sizes take of a choice: the sizes, the branch, its words.
type Taken<'a> = (&'a [usize], usize, &'a [Inline]);

fn taken<'a>((sizes, one): &Row<'a, Inline>) -> Option<Taken<'a>> {
    match one {
        Inline::Choice { branch, content } => Some((*sizes, *branch, content.as_slice())),
        _ => None,
    }
}

/// A choice by size stays whole, so that its words can be read: of one branch the figures of all its sizes stand in a
/// row, and branches are laid into one another only where they hold nothing but a figure.
fn choice(taken: &[Taken<'_>]) -> Inline {
    let figures = taken.iter().all(|(.., content)| matches!(content, [Inline::Value { .. }]));
    let mut branches: Vec<usize> = taken.iter().map(|(_, branch, _)| *branch).collect();
    branches.dedup();
    let rows = |of: Option<usize>| -> Vec<Row<'_, [Inline]>> {
        let own = taken.iter().filter(|(_, branch, _)| of.is_none_or(|of| of == *branch));
        own.map(|(sizes, _, content)| (*sizes, *content)).collect()
    };
    let same = taken.windows(2).all(|pair| pair[0].2 == pair[1].2);
    if let (Some(first), true) = (branches.first(), figures || same || branches.len() == 1) {
        return Inline::Choice { branch: *first, content: inlines(&rows(None)) };
    }
    branches.sort_unstable();
    branches.dedup();
    let own = |branch: usize| {
        let rows = rows(Some(branch));
        let sizes = rows.iter().flat_map(|(sizes, _)| sizes.iter().copied()).collect();
        (sizes, inlines(&rows))
    };
    let mut told: Vec<(Vec<usize>, Vec<Inline>)> = branches.into_iter().map(own).collect();
    told.sort_by_key(|(sizes, _)| sizes.first().copied());
    by_size(&told)
}

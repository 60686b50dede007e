//! Sizes, and values that differ by size.

use super::text::{Expression, Name, Text};
use crate::source::Span;

/// One size.
#[derive(Debug, Clone)]
pub struct Size {
    /// Its name in the files.
    pub id: Name,
    /// Its name on the page.
    pub name: String,
    /// Where that name stands.
    pub name_at: Span,
    /// Who wears or uses it.
    pub wearer: Wearer,
    /// Where that is stated; `None` where the author does not say.
    pub wearer_at: Option<Span>,
    /// The thing that it is a size of; `None` where the pattern is for one thing alone.
    pub view: Option<View>,
}

/// One of several things in one pattern: a named set of sizes. Every size belongs to one, or there are none.
#[derive(Debug, Clone)]
pub struct View {
    /// Its name in the files.
    pub id: Name,
    /// Its name on the page.
    pub name: Text,
}

impl Size {
    /// Whether another size is one of the same thing.
    pub fn shares_view(&self, other: &Size) -> bool {
        let id = |size: &Size| size.view.as_ref().map(|view| view.id.text.clone());
        id(self) == id(other)
    }
}

/// The sizes of each thing, by their places in `sizes` and in the order in which things first have one: those
/// that are graded from one another.
pub fn by_view(sizes: &[Size]) -> Vec<Vec<usize>> {
    let mut views: Vec<Vec<usize>> = Vec::new();
    for (at, size) in sizes.iter().enumerate() {
        match views.iter_mut().find(|own| sizes[own[0]].shares_view(size)) {
            Some(own) => own.push(at),
            None => views.push(vec![at]),
        }
    }
    views
}

/// Who a size is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Wearer {
    /// A grown-up, or nobody in particular.
    Adult,
    /// A child: the booklet then carries the caution on cords, small parts and flammability.
    Child,
}

/// A value that may differ by size.
#[derive(Debug, Clone)]
pub enum BySize {
    /// The same formula for every size.
    Same(Box<Expression>),
    /// One formula a size (by its place in `sizes`); `None` where the author left one out, which
    /// has been reported unless the size is one that does without.
    Each(Vec<Option<Expression>>),
}

impl BySize {
    /// The formula for a size.
    pub fn get(&self, size: usize) -> Option<&Expression> {
        match self {
            BySize::Same(expression) => Some(expression),
            BySize::Each(each) => each.get(size)?.as_ref(),
        }
    }

    /// All formulas.
    pub fn all(&self) -> Vec<&Expression> {
        match self {
            BySize::Same(expression) => vec![expression],
            BySize::Each(each) => each.iter().flatten().collect(),
        }
    }
}

/// Sizes as makers know them, thing by thing: "Flat sleeve: Short, Tall; Deep caddy"; their names alone where the
/// pattern is for one thing.
pub fn spoken_sizes(sizes: &[Size], of: &[usize]) -> String {
    let name = |at: &usize| sizes[*at].name.as_str();
    let own = |view: Vec<usize>| {
        let shown: Vec<usize> = view.iter().copied().filter(|at| of.contains(at)).collect();
        let names = shown.iter().map(name).collect::<Vec<_>>().join(", ");
        match &sizes[*shown.first()?].view {
            None => Some(names),
            Some(view) if view.name.text == names => Some(names),
            Some(view) => Some(format!("{}: {names}", view.name.text)),
        }
    };
    by_view(sizes).into_iter().filter_map(own).collect::<Vec<_>>().join("; ")
}

/// The same in few words: a thing by its name alone where all its sizes are meant.
pub fn brief_sizes(sizes: &[Size], of: &[usize]) -> String {
    let own = |view: Vec<usize>| match &sizes[view[0]].view {
        Some(named) if view.iter().all(|at| of.contains(at)) => named.name.text.clone(),
        _ => spoken_sizes(sizes, &view.into_iter().filter(|at| of.contains(at)).collect::<Vec<_>>()),
    };
    by_view(sizes).into_iter().map(own).filter(|name| !name.is_empty()).collect::<Vec<_>>().join(", ")
}

/// Whether something that may be for some sizes only is for the size at `size`.
pub fn is_for(sizes: Option<&Vec<usize>>, size: usize) -> bool {
    sizes.is_none_or(|sizes| sizes.contains(&size))
}

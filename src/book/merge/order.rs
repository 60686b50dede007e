//! Things of several sizes brought together by their ids.

/// Things of one id: the sizes (by their places among the books) that have it, each with its own.
pub(super) struct Group<'a, T> {
    /// The thing of each size that has it, with the size's place in `sizes`.
    pub own: Vec<(usize, &'a T)>,
}

impl<'a, T> Group<'a, T> {
    /// The first size's.
    pub fn first(&self) -> &'a T {
        self.own[0].1
    }

    /// One value for each size shown; `None` where a size lacks the thing.
    pub fn columns<V>(&self, shown: &[usize], of: impl Fn(&'a T) -> V) -> Vec<Option<V>> {
        let own = |size: &usize| self.own.iter().find(|(known, _)| known == size).map(|(_, thing)| of(thing));
        shown.iter().map(own).collect()
    }
}

/// The things of all sizes, each id once, in the order of their places as written.
pub(super) fn together<'a, T, K: PartialEq>(
    sizes: &[(usize, &'a [T])],
    id: impl Fn(&'a T) -> K,
    place: impl Fn(&'a T) -> usize,
) -> Vec<Group<'a, T>> {
    let mut groups: Vec<(usize, K, Group<'a, T>)> = Vec::new();
    for (size, things) in sizes {
        for thing in *things {
            let own = id(thing);
            match groups.iter_mut().find(|(_, known, _)| *known == own) {
                Some((.., group)) => group.own.push((*size, thing)),
                None => groups.push((place(thing), own, Group { own: vec![(*size, thing)] })),
            }
        }
    }
    groups.sort_by_key(|(place, ..)| *place);
    groups.into_iter().map(|(.., group)| group).collect()
}

/// Sizes that have the same thing, put together: each thing once, with its sizes, in their order.
pub(super) fn alike<T: PartialEq + Clone>(own: &[(Vec<usize>, T)]) -> Vec<(Vec<usize>, T)> {
    let mut groups: Vec<(Vec<usize>, T)> = Vec::new();
    for (sizes, thing) in own {
        match groups.iter_mut().find(|(_, known)| known == thing) {
            Some((known, _)) => known.extend(sizes),
            None => groups.push((sizes.clone(), thing.clone())),
        }
    }
    groups
}

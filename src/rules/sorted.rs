//! Putting things in order, in little code: the sort of the standard library is quicker for thousands of things out of
//! order and weighs more than a screen.

use std::cmp::Ordering;

/// Things in the order that `compare` tells; those that are alike in it stay in the order they came in.
///
/// Things that come in order already, as entries of a journal do, are each put at the end.
#[must_use]
pub fn sorted<T>(things: Vec<T>, compare: impl Fn(&T, &T) -> Ordering) -> Vec<T> {
    let mut sorted: Vec<T> = Vec::with_capacity(things.len());
    for thing in things {
        let place = sorted.partition_point(|other| compare(other, &thing) != Ordering::Greater);
        sorted.insert(place, thing);
    }
    sorted
}

#[cfg(test)]
mod tests {
    use super::sorted;

    #[test]
    fn things_stand_by_their_keys_and_else_as_they_came() {
        let things = vec![(2, 'a'), (1, 'b'), (2, 'c'), (0, 'd'), (1, 'e')];
        let expected = vec![(0, 'd'), (1, 'b'), (1, 'e'), (2, 'a'), (2, 'c')];
        assert_eq!(sorted(things, |a, b| a.0.cmp(&b.0)), expected);
    }
}

//! Sorting of a few entries in place: the standard library's sort is made for many, is large, and can panic.

use core::cmp::Ordering;

/// Sorts by insertion; equal entries keep their order.
pub(crate) fn sort_by<T>(items: &mut [T], compare: impl Fn(&T, &T) -> Ordering) {
    for end in 1..items.len() {
        let mut at = end;
        while let Some([before, after]) = at.checked_sub(1).and_then(|first| items.get_mut(first..=at)) {
            if compare(after, before) != Ordering::Less {
                break;
            }
            core::mem::swap(before, after);
            at -= 1;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::sort_by;

    #[test]
    fn entries_come_in_order_and_equal_ones_stay() {
        let mut items = [(3, 'a'), (1, 'b'), (3, 'c'), (2, 'd'), (1, 'e'), (0, 'f')];
        sort_by(&mut items, |a, b| a.0.cmp(&b.0));
        assert_eq!(items, [(0, 'f'), (1, 'b'), (1, 'e'), (2, 'd'), (3, 'a'), (3, 'c')]);
        sort_by(&mut [] as &mut [i32], i32::cmp);
    }
}

//! Names that do not exist: which ones do, the nearest first.

/// Names listed in one message.
const LISTED_MOST: usize = 10;

/// The names allowed instead of a wrong one, nearest first, at most ten and then "…".
pub(super) fn nearest<'a>(wrong: &str, names: impl IntoIterator<Item = &'a str>) -> String {
    let mut all: Vec<(usize, &str)> = names.into_iter().map(|name| (distance(wrong, name), name)).collect();
    all.sort_unstable();
    all.dedup();
    let mut listed: Vec<&str> = all.iter().take(LISTED_MOST).map(|(_, name)| *name).collect();
    if all.len() > LISTED_MOST {
        listed.push("…");
    }
    if listed.is_empty() { "none stands there".to_owned() } else { listed.join(", ") }
}

/// Letters to change, add or leave out from one name to the other.
fn distance(a: &str, b: &str) -> usize {
    let mut row: Vec<usize> = (0..=b.chars().count()).collect();
    for (i, x) in a.chars().enumerate() {
        let mut before = i;
        let mut left = i + 1;
        for (y, cell) in b.chars().zip(row.iter_mut().skip(1)) {
            let above = *cell;
            let changed = before + usize::from(x != y);
            left = changed.min(above + 1).min(left + 1);
            before = above;
            *cell = left;
        }
        if let Some(first) = row.first_mut() {
            *first = i + 1;
        }
    }
    row.last().copied().unwrap_or(0)
}

/// Whether a name is of small Latin letters, digits and the marks given, and not empty.
pub(super) fn is_slug(name: &str, marks: &[char]) -> bool {
    !name.is_empty()
        && name.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || marks.contains(&c))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_nearest_name_stands_first_and_a_long_list_is_cut() {
        assert_eq!(nearest("koaa", ["mahogany", "koa", "ash"]), "koa, ash, mahogany");
        let many: Vec<String> = (10..30).map(|n| n.to_string()).collect();
        assert!(nearest("10", many.iter().map(String::as_str)).ends_with(", …"));
    }
}

//! One file by itself: what it is, by its own keys, and what is wrong with it.

use super::files::{LIST_FILES, LIST_FOLDERS};
use super::place::line_at;
use super::{Problem, Source, load, set, sheet, spray, walk};
use crate::content::Content;
use std::path::{Path, PathBuf};

/// What a single content file is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FileKind {
    /// A shop sheet: it names its `coating`.
    Sheet,
    /// A scenario set: it says what it asks, its `task`.
    Set,
    /// A walk: it names its `outline`.
    Walk,
    /// A spray task: it says which `coat` is sprayed.
    Spray,
    /// Entries of the list of that name.
    List(&'static str),
}

impl FileKind {
    /// The kind in a word.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Sheet => "sheet",
            Self::Set => "set",
            Self::Walk => "walk",
            Self::Spray => "spray task",
            Self::List(list) => list,
        }
    }

    /// The kind that a file's top-level keys tell.
    fn of(source: &Source) -> Result<Self, Problem> {
        let problem = |line, message| Problem { file: source.path.clone(), line, message };
        let table: toml::Table = toml::from_str(&source.text).map_err(|error| {
            let line = error.span().map_or(0, |span| line_at(&source.text, span.start));
            problem(line, error.message().to_owned())
        })?;
        let lists = || LIST_FILES.into_iter().chain(LIST_FOLDERS).map(|(_, list)| list);
        let has = |key: &str| table.get(key).is_some_and(|value| !value.is_table());
        if table.get("task").is_some_and(toml::Value::is_table) {
            Ok(Self::Set)
        } else if has("coating") {
            Ok(Self::Sheet)
        } else if has("outline") {
            Ok(Self::Walk)
        } else if has("coat") {
            Ok(Self::Spray)
        } else if let Some(list) = lists().find(|list| has(list)) {
            Ok(Self::List(list))
        } else {
            let message = format!(
                "the kind of file is not known by its keys: a shop sheet has `coating`, a set has `task`, a walk has \
                 `outline`, a spray task has `coat`, a list has entries of {}; texts are checked with their content folder",
                lists().collect::<Vec<_>>().join(", ")
            );
            Err(problem(0, message))
        }
    }
}

/// Checks one file by what its own keys say it is: a sheet, a set, a walk or a spray task against the checked content, a list as part of the
/// content that ships, in place of the shipped file of that name.
///
/// # Errors
/// Every [`Problem`] found; those in other files, which no longer fit, are named under `content/`.
pub fn file(source: &Source, content: &Content, shipped: &[Source]) -> Result<FileKind, Vec<Problem>> {
    let kind = FileKind::of(source).map_err(|problem| vec![problem])?;
    match kind {
        FileKind::Sheet => sheet(source, content).map(|_| kind),
        FileKind::Set => set(source, content).map(|_| kind),
        FileKind::Walk => walk(source, content).map(|_| kind),
        FileKind::Spray => spray(source, content).map(|_| kind),
        FileKind::List(list) => {
            let place = place_of(list, &source.path);
            let mut all: Vec<Source> = shipped.iter().filter(|one| one.path != place).cloned().collect();
            all.push(Source { path: place.clone(), text: source.text.clone() });
            all.sort_by(|a, b| a.path.cmp(&b.path));
            let named = |problem: Problem| Problem {
                file: if problem.file == place {
                    source.path.clone()
                } else {
                    Path::new("content").join(problem.file)
                },
                ..problem
            };
            load(&all).map(|_| kind).map_err(|problems| problems.into_iter().map(named).collect())
        }
    }
}

/// The path under `content/` at which a file with entries of that list stands.
fn place_of(list: &str, path: &Path) -> PathBuf {
    if let Some((file, _)) = LIST_FILES.iter().find(|(_, name)| *name == list) {
        return PathBuf::from(file);
    }
    let folder = LIST_FOLDERS.iter().find(|(_, name)| *name == list).map_or("", |(folder, _)| folder);
    Path::new(folder).join(path.file_name().unwrap_or_default()).with_extension("toml")
}

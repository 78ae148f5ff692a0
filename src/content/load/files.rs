//! Which files belong under `content/`, and what each of them holds.

use super::{Problem, Reader, Source};
use std::path::Path;

/// A content file as the loader takes it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Holds {
    /// Entries of a list.
    List(&'static str),
    /// One shop sheet.
    Sheet,
    /// One scenario set.
    Set,
    /// One walk.
    Walk,
    /// One spray task.
    Spray,
    /// Messages of a language.
    Texts,
    /// A JSON Schema; the loader leaves it alone.
    Schema,
}

/// The lists that stand in one file each, and their names.
pub(super) const LIST_FILES: [(&str, &str); 14] = [
    ("settings.toml", "setting"),
    ("woods.toml", "wood"),
    ("solvents.toml", "solvent"),
    ("looks.toml", "look"),
    ("dresses.toml", "dress"),
    ("panels.toml", "panel"),
    ("faults.toml", "fault"),
    ("cups.toml", "cup"),
    ("lookalikes.toml", "pair"),
    ("tickets.toml", "ticket"),
    ("at_hand.toml", "tool"),
    ("cautions.toml", "caution"),
    ("competencies.toml", "competency"),
    ("trade_words.toml", "word"),
];
/// The lists that are spread over the files of a folder, and their names.
pub(super) const LIST_FOLDERS: [(&str, &str); 4] =
    [("facts", "fact"), ("families", "family"), ("rules", "rule"), ("consequences", "consequence")];
const SHEETS: &str = "sheets";
const SETS: &str = "sets";
const WALKS: &str = "walks";
const SPRAYS: &str = "sprays";
/// The English messages that nothing else would miss: the screens read them.
const ENGLISH: [&str; 12] = [
    "app.toml",
    "bench.toml",
    "cautions.toml",
    "common.toml",
    "faults.toml",
    "language.toml",
    "sets.toml",
    "settings.toml",
    "spraying.toml",
    "tickets.toml",
    "walk.toml",
    "woods.toml",
];
/// Where the English messages stand.
pub(super) const ENGLISH_FOLDER: &str = "text/en";

/// What the file of that path holds; `None` where no content belongs.
pub(super) fn holds(path: &Path) -> Option<Holds> {
    let parts: Option<Vec<&str>> = path.iter().map(|part| part.to_str()).collect();
    let find = |lists: &[(&str, &'static str)], wanted: &str| {
        lists.iter().find(|(file, _)| *file == wanted).map(|(_, list)| *list)
    };
    let toml = path.extension().is_some_and(|extension| extension == "toml");
    match parts?.as_slice() {
        [file] => find(&LIST_FILES, file).map(Holds::List),
        ["schema", _] if path.extension().is_some_and(|extension| extension == "json") => Some(Holds::Schema),
        _ if !toml => None,
        [SHEETS, _] => Some(Holds::Sheet),
        [SETS, _] => Some(Holds::Set),
        [WALKS, _] => Some(Holds::Walk),
        [SPRAYS, _] => Some(Holds::Spray),
        ["text", _, _] => Some(Holds::Texts),
        [folder, _] => find(&LIST_FOLDERS, folder).map(Holds::List),
        _ => None,
    }
}

/// Where content belongs, for messages.
pub(super) fn allowed() -> String {
    let files = LIST_FILES.iter().map(|(file, _)| (*file).to_owned());
    let folders = LIST_FOLDERS.iter().map(|(folder, _)| *folder).chain([SHEETS, SETS, WALKS, SPRAYS]);
    let rest = ["text/<language>/*.toml", "schema/*.json"].map(str::to_owned);
    files.chain(folders.map(|folder| format!("{folder}/*.toml"))).chain(rest).collect::<Vec<_>>().join(", ")
}

/// Reports lists, sheets, sets, walks, spray tasks and English messages of which no file stands there at all.
pub(super) fn missing(sources: &[Source], reader: &mut Reader) {
    for (file, list) in LIST_FILES {
        if !sources.iter().any(|source| source.path == Path::new(file)) {
            reader.whole(file, format!("is missing; it holds the [[{list}]] entries"));
            reader.broken.insert(list);
        }
    }
    let folders = LIST_FOLDERS.into_iter().chain([
        (SHEETS, "sheet"),
        (SETS, "set"),
        (WALKS, "walk"),
        (SPRAYS, "spray task"),
    ]);
    for (folder, list) in folders {
        let there = |source: &Source| source.path.starts_with(folder) && holds(&source.path).is_some();
        if !sources.iter().any(there) {
            reader.whole(folder, format!("at least one .toml file with a {list} is needed here"));
            reader.broken.insert(list);
        }
    }
    for file in ENGLISH {
        let path = Path::new(ENGLISH_FOLDER).join(file);
        if !sources.iter().any(|source| source.path == path) {
            reader.problems.push(Problem {
                file: path,
                line: 0,
                message: "is missing; English is complete, and stands where another language leaves a gap"
                    .to_owned(),
            });
            reader.broken.insert("text");
        }
    }
}

/// Reads every file under a folder, in the order of their paths. Only `.toml` files are read; of the others the path
/// is enough to say whether they belong there.
///
/// # Errors
/// A [`Problem`] for the folder or file that cannot be read.
pub fn sources(folder: &Path) -> Result<Vec<Source>, Problem> {
    let mut found = Vec::new();
    let mut folders = vec![folder.to_path_buf()];
    while let Some(next) = folders.pop() {
        let unreadable = |file: &Path, error: &std::io::Error| Problem {
            file: file.strip_prefix(folder).unwrap_or(file).to_path_buf(),
            line: 0,
            message: error.to_string(),
        };
        for entry in std::fs::read_dir(&next).map_err(|error| unreadable(&next, &error))? {
            let path = entry.map_err(|error| unreadable(&next, &error))?.path();
            if path.is_dir() {
                folders.push(path);
                continue;
            }
            let text = if path.extension().is_some_and(|extension| extension == "toml") {
                std::fs::read_to_string(&path).map_err(|error| unreadable(&path, &error))?
            } else {
                String::new()
            };
            found.push(Source { path: path.strip_prefix(folder).unwrap_or(&path).to_path_buf(), text });
        }
    }
    found.sort_by(|a, b| a.path.cmp(&b.path));
    Ok(found)
}

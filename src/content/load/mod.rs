//! Reads and checks the files under `content/`: every problem with file, line and what is allowed.

mod cautions;
mod check;
mod competencies;
mod faults;
mod files;
mod kind;
mod languages;
mod names;
mod place;
mod reader;
mod sprays;
mod texts;
mod tools;
mod values;
mod walks;

pub use files::sources;
pub use kind::{FileKind, file};

use super::{Caution, Consequence};
use super::{
    Competency, Content, Dress, FactInfo, FamilyInfo, Look, Panel, RuleInfo, ScenarioSet, SettingInfo,
    SheetSource, SprayTask, Ticket, Tool, TradeWord, WalkInfo,
};
use crate::rules::fault::{Fault, Pair};
use crate::rules::hazard::Solvent;
use crate::rules::mixing::Cup;
use crate::rules::sheet::Sheet;
use crate::rules::wood::Wood;
use files::Holds;
use reader::Reader;
use serde::{Deserialize, Serialize};
use std::path::PathBuf;

/// Something wrong in a content file.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{}{}: {message}", file.display(), if *line > 0 { format!(":{line}") } else { String::new() })]
pub struct Problem {
    /// The file.
    pub file: PathBuf,
    /// Line, from 1; 0 when the whole file is meant.
    pub line: usize,
    /// What is wrong and what is allowed.
    pub message: String,
}

/// A content file as text.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct Source {
    /// Path relative to the content folder, with `/`.
    pub path: PathBuf,
    /// Its text.
    pub text: String,
}

/// A list of entries under one name.
macro_rules! list_file {
    ($name:ident, $field:ident, $entry:ty) => {
        #[derive(Deserialize)]
        #[serde(deny_unknown_fields)]
        struct $name {
            #[serde(default)]
            $field: Vec<$entry>,
        }
    };
}

list_file!(SettingFile, setting, SettingInfo);
list_file!(WoodFile, wood, Wood);
list_file!(SolventFile, solvent, Solvent);
list_file!(FaultFile, fault, Fault);
list_file!(CupFile, cup, Cup);
list_file!(LookFile, look, Look);
list_file!(DressFile, dress, Dress);
list_file!(PanelFile, panel, Panel);
list_file!(PairFile, pair, Pair);
list_file!(TicketFile, ticket, Ticket);
list_file!(ToolFile, tool, Tool);
list_file!(FactFile, fact, FactInfo);
list_file!(CompetencyFile, competency, Competency);
list_file!(FamilyFile, family, FamilyInfo);
list_file!(RuleFile, rule, RuleInfo);
list_file!(CautionFile, caution, Caution);
list_file!(WordFile, word, TradeWord);
list_file!(ConsequenceFile, consequence, Consequence);

/// Parses and checks all files together.
///
/// # Errors
/// Every [`Problem`] found, not only the first.
pub fn load(sources: &[Source]) -> Result<Content, Vec<Problem>> {
    let mut reader = Reader::default();
    let mut content = Content::default();
    let mut sheets = Vec::new();
    for source in sources {
        match files::holds(&source.path) {
            Some(Holds::List(list)) => entries(list, source, &mut content, &mut reader),
            Some(Holds::Sheet) => sheets.extend(reader.one::<SheetSource>(source, "sheet")),
            Some(Holds::Set) => content.sets.extend(reader.one::<ScenarioSet>(source, "set")),
            Some(Holds::Walk) => content.walks.extend(reader.one::<WalkInfo>(source, "walk")),
            Some(Holds::Spray) => content.sprays.extend(reader.one::<SprayTask>(source, "spray")),
            Some(Holds::Texts) => reader.texts(source, &mut content.texts),
            Some(Holds::Schema) => {}
            None => {
                reader.problem(source, 0, format!("no content belongs here; allowed: {}", files::allowed()));
            }
        }
    }
    files::missing(sources, &mut reader);
    content.facts.extend(content.solvents.iter().map(FactInfo::reading_of));
    reader.sort_settings(&mut content.settings);
    check::settings(&content.settings, &mut reader);
    if reader.knows("setting") {
        for (index, sheet) in sheets.into_iter().enumerate() {
            content.sheets.push(reader.resolve(index, &content.settings, sheet));
        }
    } else {
        reader.broken.insert("sheet");
    }
    check::check(&content, &mut reader);
    languages::fill_gaps(&mut content);
    if reader.problems.is_empty() { Ok(content) } else { Err(reader.problems) }
}

fn entries(list: &'static str, source: &Source, content: &mut Content, reader: &mut Reader) {
    match list {
        "setting" => reader.take::<SettingFile, _>(source, &mut content.settings, |f| f.setting, list),
        "wood" => reader.take::<WoodFile, _>(source, &mut content.woods, |f| f.wood, list),
        "solvent" => reader.take::<SolventFile, _>(source, &mut content.solvents, |f| f.solvent, list),
        "fault" => reader.take::<FaultFile, _>(source, &mut content.faults, |f| f.fault, list),
        "dress" => reader.take::<DressFile, _>(source, &mut content.dresses, |f| f.dress, list),
        "panel" => reader.take::<PanelFile, _>(source, &mut content.panels, |f| f.panel, list),
        "look" => reader.take::<LookFile, _>(source, &mut content.looks, |f| f.look, list),
        "cup" => reader.take::<CupFile, _>(source, &mut content.cups, |f| f.cup, list),
        "pair" => reader.take::<PairFile, _>(source, &mut content.pairs, |f| f.pair, list),
        "ticket" => reader.take::<TicketFile, _>(source, &mut content.tickets, |f| f.ticket, list),
        "tool" => reader.take::<ToolFile, _>(source, &mut content.tools, |f| f.tool, list),
        "fact" => reader.take::<FactFile, _>(source, &mut content.facts, |f| f.fact, list),
        "competency" => {
            reader.take::<CompetencyFile, _>(source, &mut content.competencies, |f| f.competency, list);
        }
        "family" => reader.take::<FamilyFile, _>(source, &mut content.families, |f| f.family, list),
        "rule" => reader.take::<RuleFile, _>(source, &mut content.rules, |f| f.rule, list),
        "word" => reader.take::<WordFile, _>(source, &mut content.words, |f| f.word, list),
        "caution" => reader.take::<CautionFile, _>(source, &mut content.cautions, |f| f.caution, list),
        _ => reader.take::<ConsequenceFile, _>(source, &mut content.consequences, |f| f.consequence, list),
    }
}

/// Reads one shop sheet that does not ship, against the settings of the checked content.
///
/// # Errors
/// Every [`Problem`] found; also a slug that ships with other values, since a card is found again by the slug of its
/// sheet.
pub fn sheet(source: &Source, content: &Content) -> Result<Sheet, Vec<Problem>> {
    let mut reader = Reader::default();
    let read = reader.one::<SheetSource>(source, "sheet").map(|sheet| {
        let sheet = reader.resolve(0, &content.settings, sheet);
        check::slug("sheet", 0, "slug", &sheet.slug, &mut reader);
        if content.sheet(&sheet.slug).is_some_and(|shipped| *shipped != sheet) {
            let message =
                format!("`{}` is a shop sheet that ships with other values; take another slug", sheet.slug);
            reader.at("sheet", 0, "slug", message);
        }
        sheet
    });
    match read {
        Some(sheet) if reader.problems.is_empty() => Ok(sheet),
        _ => Err(reader.problems),
    }
}

/// Reads one scenario set that does not ship, against the checked content.
///
/// # Errors
/// Every [`Problem`] found.
pub fn set(source: &Source, content: &Content) -> Result<ScenarioSet, Vec<Problem>> {
    let mut reader = Reader::default();
    let read = reader.one::<ScenarioSet>(source, "set");
    if let Some(set) = &read {
        check::slug("set", 0, "slug", &set.slug, &mut reader);
        check::set(content, 0, set, &mut reader);
    }
    match read {
        Some(set) if reader.problems.is_empty() => Ok(set),
        _ => Err(reader.problems),
    }
}

/// Reads one walk that does not ship, against the checked content.
///
/// # Errors
/// Every [`Problem`] found.
pub fn walk(source: &Source, content: &Content) -> Result<WalkInfo, Vec<Problem>> {
    let mut reader = Reader::default();
    let read = reader.one::<WalkInfo>(source, "walk");
    if let Some(walk) = &read {
        check::slug("walk", 0, "slug", &walk.slug, &mut reader);
        walks::walk(content, 0, walk, &mut reader);
    }
    match read {
        Some(walk) if reader.problems.is_empty() => Ok(walk),
        _ => Err(reader.problems),
    }
}

/// Reads one spray task that does not ship, against the checked content.
///
/// # Errors
/// Every [`Problem`] found.
pub fn spray(source: &Source, content: &Content) -> Result<SprayTask, Vec<Problem>> {
    let mut reader = Reader::default();
    let read = reader.one::<SprayTask>(source, "spray");
    if let Some(task) = &read {
        check::slug("spray", 0, "slug", &task.slug, &mut reader);
        sprays::task(content, 0, task, &mut reader);
    }
    match read {
        Some(task) if reader.problems.is_empty() => Ok(task),
        _ => Err(reader.problems),
    }
}

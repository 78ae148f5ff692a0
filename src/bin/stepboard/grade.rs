//! `grade`: answers, one JSON object a line.

use crate::args::{Args, file_text, piped, sheet};
use crate::{Output, face, wire};
use serde::Deserialize;
use serde_json::json;
use std::collections::BTreeMap;
use stepboard::card::{self, Voice};
use stepboard::content::{Content, ENGLISH, World};
use stepboard::record::Certainty;
use stepboard::rules::sheet::Sheet;

/// One line of answers.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Line {
    family: String,
    version: u32,
    seed: u32,
    sheet: String,
    #[serde(default)]
    sheet_hash: Option<String>,
    answer: serde_json::Value,
    #[serde(default)]
    certainty: Option<Certainty>,
}

pub(crate) fn run(content: &Content, mut args: Args) -> Output {
    let units = wire::units(args.take("units").as_deref())?;
    args.nothing_left(&["units"])?;
    let text = match args.names.as_slice() {
        [] => piped()?,
        [file] => file_text(file)?,
        _ => return Err(vec!["one file of answers, or none for standard input".to_owned()]),
    };
    let voice = Voice::new(content, ENGLISH, units);
    let mut sheets = BTreeMap::new();
    let (mut graded, mut wrong) = (Vec::new(), Vec::new());
    for (number, line) in text.lines().enumerate().filter(|(_, line)| !line.trim().is_empty()) {
        match one(content, &voice, &mut sheets, line) {
            Ok(json) => graded.push(json),
            Err(message) => wrong.push(format!("line {}: {message}", number + 1)),
        }
    }
    if graded.is_empty() && wrong.is_empty() {
        return Err(vec!["no answers came; one JSON object a line is needed".to_owned()]);
    }
    if wrong.is_empty() { Ok(graded.join("\n")) } else { Err(wrong) }
}

fn one(
    content: &Content,
    voice: &Voice<'_>,
    sheets: &mut BTreeMap<String, Sheet>,
    line: &str,
) -> Result<String, String> {
    let line: Line = serde_json::from_str(line).map_err(|error| error.to_string())?;
    if !sheets.contains_key(&line.sheet) {
        let read = sheet(content, &line.sheet).map_err(|problems| problems.join("; "))?;
        sheets.insert(line.sheet.clone(), read);
    }
    let used = sheets.get(&line.sheet).ok_or("no such sheet")?;
    let world = World { content, sheet: used };
    let card = card::deal(&world, &line.family, line.seed).map_err(|error| error.to_string())?;
    if card.version != line.version {
        return Err(format!("`version` is {}; this program deals version {}", line.version, card.version));
    }
    if line.sheet_hash.as_ref().is_some_and(|hash| *hash != card.sheet) {
        return Err(format!(
            "`sheet_hash` is not that of `{}`: its values are others ({})",
            line.sheet, card.sheet
        ));
    }
    let given = wire::answer(&card, &wire::sent(line.answer)?)?;
    let graded = card::grade(&card, &world, &given).ok_or("no such family")?;
    let after = graded.after.and_then(|id| content.consequence(id)).map(|one| {
        let say = |moment: &str| voice.texts.get(&format!("after.{}.{moment}", one.id)).to_owned();
        json!({
            "id": one.id, "fault": one.fault, "made": one.made, "shows": one.shows,
            "now": say("now"), "later": say("later"), "fix": say("fix"),
            "rework_hours": one.rework_h, "wait_hours": one.wait_h,
        })
    });
    let slip = graded.slip.map(|id| json!({ "id": id, "words": voice.texts.get(&format!("slip.{id}")) }));
    Ok(json!({
        "family": line.family, "version": line.version, "seed": line.seed, "sheet": line.sheet,
        "mark": graded.mark, "certainty": line.certainty,
        "solution": wire::solution(voice, &card, &graded.solution),
        "slip": slip, "after": after, "sprayed": face::came_of(&card, &world, &given, voice.texts),
    })
    .to_string())
}

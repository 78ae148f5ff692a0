//! What open standards carry, each as one file named by its content.

use super::folder::{hash, write};
use crate::Output;
use crate::args::{Args, base_sheet, sheet};
use crate::clock;
use crate::deal;
use crate::results::{Read, read_all};
use serde_json::{Value, json};
use std::path::Path;
use stepboard::content::{Content, ENGLISH, Units, World};
use stepboard::exchange::paper::PaperCode;
use stepboard::exchange::{Actors, Home, Items, Refused, framework, items, items_of_set, statements, zip};
use stepboard::rules::term::Term;
use stepboard::signoff::When;

/// Statements of xAPI 1.0.3, as the list that a store takes.
pub(super) fn xapi(content: &Content, mut args: Args, out: &str) -> Output {
    let home = home(&mut args)?;
    args.nothing_left(&["FILE ...", "out=FOLDER", "format=xapi", "home=ADDRESS"])?;
    let Read { content, events, people } = read_all(content, &args.names)?;
    let told = statements(&content, &home, &Actors::new(&people), &events);
    let file = save(out, "xapi", "json", &lines(&told.all))?;
    Ok(json!({ "statements": told.all.len(), "answers_of_nobody": told.nobodys, "answers_found_wrong": told.void, "file": file }).to_string())
}

/// A list, one member a line.
fn lines(all: &[Value]) -> Vec<u8> {
    let members: Vec<String> = all.iter().map(Value::to_string).collect();
    format!("[\n{}\n]\n", members.join(",\n")).into_bytes()
}

/// The competency list as a framework of CASE 1.1.
pub(super) fn case(content: &Content, mut args: Args, out: &str) -> Output {
    let home = home(&mut args)?;
    let (creator, changed) = (args.take("creator"), args.take("changed"));
    args.nothing_left(&["out=FOLDER", "format=case", "home=ADDRESS", "creator=NAME", "changed=DATE"])?;
    if !args.names.is_empty() {
        return Err(vec![format!("`{}`: no file is read for this", args.names.join(" "))]);
    }
    let creator = creator.unwrap_or_else(|| home.text().to_owned());
    let changed = changed.map_or_else(clock::now, |text| When::day_or_moment(&text));
    let changed = changed.map_err(|refusal| {
        vec![format!("`changed` is `{}`; a day like 2027-03-12 or a moment is allowed", refusal.at)]
    })?;
    let told = framework(content, &home, &creator, changed.text());
    let count = told["CFItems"].as_array().map_or(0, Vec::len);
    let text = serde_json::to_vec_pretty(&told).map_err(|error| vec![error.to_string()])?;
    Ok(json!({ "items": count, "file": save(out, "case", "json", &text)? }).to_string())
}

/// Cards as a package of QTI 3.0: some by name, or those of a set as one of its worksheets has them.
pub(super) fn qti(content: &Content, mut args: Args, out: &str) -> Output {
    let (named, code) = (args.take_sheet(), args.take("code"));
    args.nothing_left(&[
        "FAMILY:SEED ... or SET",
        "out=FOLDER",
        "format=qti",
        "sheet=SLUG or FILE",
        "code=CODE",
    ])?;
    let (package, code) = match args.names.as_slice() {
        [] => return Err(vec!["at least one card is needed, as FAMILY:SEED, or one set".to_owned()]),
        [name] if card(content, name).is_err() && is_set(content, name) => {
            if named.is_some() {
                return Err(vec!["`sheet` is told by the set itself".to_owned()]);
            }
            of_set(content, name, code)?
        }
        names => {
            if code.is_some() {
                return Err(vec!["`code` goes with one set alone".to_owned()]);
            }
            let sheet = sheet(content, &named.map_or_else(|| base_sheet(content), Ok)?)?;
            let cards = names.iter().map(|name| card(content, name)).collect::<Result<Vec<_>, _>>()?;
            (items(&World { content, sheet: &sheet }, Units::METRIC, &cards), None)
        }
    };
    let left: Vec<Value> = package
        .left_out
        .iter()
        .map(|(family, seed, why)| {
            let words = content.texts(ENGLISH).get(&format!("app.programs.left.{}", why.slug())).to_owned();
            json!({ "family": family, "seed": seed, "why": why.slug(), "words": words })
        })
        .collect();
    let archive =
        zip(&package.files).ok_or_else(|| vec!["these are more cards than a file holds".to_owned()])?;
    let file = save(out, "qti", "zip", &archive)?;
    let items = package.files.len().saturating_sub(1);
    Ok(json!({ "items": items, "code": code, "left_out": left, "file": file }).to_string())
}

/// Whether a name is a set's and not meant for a card.
fn is_set(content: &Content, name: &str) -> bool {
    content.sets.iter().any(|set| set.slug == name) || Path::new(name).is_file()
}

/// The cards of a set on its own sheet, those of the worksheet with that code; with none, of the first without a name.
fn of_set(
    content: &Content,
    name: &str,
    code: Option<String>,
) -> Result<(Items, Option<String>), Vec<String>> {
    let refused = |refused: Refused| vec![format!("{name}: {refused}")];
    let (id, set) = deal::set(content, name)?;
    let sheet = set.sheet_of(content).map_err(refused)?;
    let world = World { content, sheet: &sheet };
    let code = code.map_or_else(|| Ok(PaperCode::of(&id, "", 0)), |code| PaperCode::read(&code, &id));
    let code = code.map_err(refused)?;
    let package = items_of_set(&world, Units::METRIC, &code.cards(&set, &id, &world));
    Ok((package, Some(code.to_string())))
}

fn card(content: &Content, name: &str) -> Result<(String, u32), Vec<String>> {
    let read = || {
        let (family, seed) = name.split_once(':')?;
        Some((content.family(family)?.id.clone(), seed.parse().ok()?))
    };
    read().ok_or_else(|| {
        vec![format!(
            "`{name}` is no card; a family and a seed from 0 to {} are allowed, as wants-filler:7",
            u32::MAX
        )]
    })
}

fn home(args: &mut Args) -> Result<Home, Vec<String>> {
    let text = args.take("home").ok_or_else(|| {
        vec!["home=ADDRESS is needed: the shop's own, under which its numbers mean something".to_owned()]
    })?;
    Home::new(&text).map_err(|refused| vec![refused.to_string()])
}

fn save(out: &str, what: &str, ending: &str, bytes: &[u8]) -> Result<String, Vec<String>> {
    let path = Path::new(out).join(format!("{what}-{}.{ending}", hash(bytes)));
    write(&path, bytes)?;
    Ok(path.display().to_string())
}

//! `deal`: cards of a family, a set that ships, or a set file.

use crate::args::{Args, base_sheet, sheet};
use crate::{Output, wire};
use serde_json::{Value, json};
use stepboard::card::{self, Dice, Voice};
use stepboard::content::{Content, ScenarioSet, World, load};

/// Most cards dealt in one call.
const COUNT_MOST: u32 = 100_000;

pub(crate) fn run(content: &Content, mut args: Args) -> Output {
    let named = args.take_sheet();
    let units = wire::units(args.take("units").as_deref())?;
    let seed = args.take_count("seed", 0, u32::MAX)?;
    let keyed = args.take("family").or_else(|| args.take("set"));
    let name = match (args.names.as_slice(), keyed) {
        ([name], None) => name.clone(),
        ([], Some(name)) => name,
        _ => return Err(vec!["one family or set is needed".to_owned()]),
    };
    let set = if content.family(&name).is_some() { None } else { Some(set(content, &name)?) };
    let count = args.take_count("count", set.as_ref().map_or(1, |set| set.count), COUNT_MOST)?;
    args.nothing_left(&["family", "set", "seed", "count", "sheet", "units"])?;
    if count > 0 && seed.checked_add(count - 1).is_none() {
        return Err(vec![format!("seeds end at {}; seed {seed} and count {count} run past it", u32::MAX)]);
    }
    let name_of_sheet = match named.or_else(|| set.as_ref().map(|set| set.sheet.clone())) {
        Some(name) => name,
        None => base_sheet(content)?,
    };
    let sheet_used = sheet(content, &name_of_sheet)?;
    let world = World { content, sheet: &sheet_used };
    let voice = Voice::new(content, "en", units);
    let with_key = args.switches.iter().any(|switch| switch == "key");
    let mut cards = Vec::new();
    for (family, seed) in drawn(content, &name, set.as_ref(), seed, count) {
        let card = card::deal(&world, &family, seed).map_err(|error| vec![error.to_string()])?;
        let mut shown = wire::card(&voice, &name_of_sheet, &card);
        if with_key && let (Some(solution), Value::Object(fields)) = (card::solve(&card, &world), &mut shown)
        {
            fields.insert("solution".into(), wire::solution(&voice, &card, &solution));
        }
        cards.push(shown);
    }
    Ok(json!({ "format": "stepboard-deal", "format_version": 1, "cards": cards }).to_string())
}

/// Families and seeds: one family over running seeds, or a set's families in turn, in an order drawn from the seed.
fn drawn(
    content: &Content,
    name: &str,
    set: Option<&ScenarioSet>,
    seed: u32,
    count: u32,
) -> Vec<(String, u32)> {
    let Some(set) = set else {
        return (0..count).map(|n| (name.to_owned(), seed + n)).collect();
    };
    let mut ids: Vec<&str> =
        set.families(&content.families).iter().map(|family| family.id.as_str()).collect();
    let mut dice = Dice::new(&format!("set/{}/{seed}", set.slug));
    dice.shuffle(&mut ids);
    let mut ids = ids.into_iter().cycle();
    (0..count).filter_map(|n| ids.next().map(|id| (id.to_owned(), seed + n))).collect()
}

fn set(content: &Content, name: &str) -> Result<ScenarioSet, Vec<String>> {
    if let Some(set) = content.sets.iter().find(|set| set.slug == name) {
        return Ok(set.clone());
    }
    let text = std::fs::read_to_string(name).map_err(|error| {
        let sets: Vec<&str> = content.sets.iter().map(|set| set.slug.as_str()).collect();
        let families: Vec<&str> = content.families.iter().map(|family| family.id.as_str()).collect();
        vec![format!(
            "`{name}` is no family, no set and no set file that can be read ({error}); sets: {}; families: {}",
            sets.join(", "),
            families.join(", ")
        )]
    })?;
    let source = load::Source { path: name.into(), text };
    load::set(&source, content).map_err(|problems| problems.iter().map(ToString::to_string).collect())
}

//! `deal`: cards of a family, or of a set: one that ships, a set file of content, or one that travels.

use crate::args::{Args, base_sheet, sheet};
use crate::{Output, face, wire};
use serde_json::{Value, json};
use stepboard::card::{self, Card, Voice};
use stepboard::content::{Content, ENGLISH, Task, World, load};
use stepboard::exchange::set::{Set, SetCard, cards};

/// Most cards of a family dealt in one call.
const COUNT_MOST: u32 = 100_000;

/// What is dealt.
enum Dealt {
    Family(String),
    /// A set by its id.
    Set(String, Box<Set>),
}

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
    let mut dealt = if content.family(&name).is_some() {
        Dealt::Family(name)
    } else {
        set(content, &name).map(|(id, set)| Dealt::Set(id, Box::new(set)))?
    };
    let (usual, most) = match &dealt {
        Dealt::Family(_) => (1, COUNT_MOST),
        Dealt::Set(_, set) => (set.task.count, Task::COUNT_MOST),
    };
    let count = args.take_count("count", usual, most)?;
    let person = args.take("person").unwrap_or_default();
    args.nothing_left(&["family", "set", "seed", "count", "person", "sheet", "units"])?;
    if count > 0 && seed.checked_add(count - 1).is_none() && matches!(dealt, Dealt::Family(_)) {
        return Err(vec![format!("seeds end at {}; seed {seed} and count {count} run past it", u32::MAX)]);
    }
    if let Dealt::Set(_, set) = &mut dealt {
        set.task.count = count;
    }
    let sheet_used = match (&named, &dealt) {
        (Some(name), _) => sheet(content, name)?,
        (None, Dealt::Family(_)) => sheet(content, &base_sheet(content)?)?,
        (None, Dealt::Set(_, set)) => set.sheet_of(content).map_err(|refused| vec![refused.to_string()])?,
    };
    let world = World { content, sheet: &sheet_used };
    let teller = Teller {
        world: &world,
        voice: Voice::new(content, ENGLISH, units),
        sheet: named.unwrap_or_else(|| sheet_used.slug.clone()),
        with_key: args.switches.iter().any(|switch| switch == "key"),
    };
    let told = match &dealt {
        Dealt::Family(family) => (0..count)
            .map(|nth| card::deal(&world, family, seed + nth).map(|card| teller.card(&card)))
            .collect::<Result<Vec<Value>, _>>()
            .map_err(|error| vec![error.to_string()])?,
        Dealt::Set(id, set) => {
            let dealt = cards(set, id, &world, &person, &seed.to_string());
            dealt.iter().map(|one| teller.of_set(one)).collect()
        }
    };
    Ok(json!({ "format": "stepboard-deal", "format_version": 1, "cards": told }).to_string())
}

/// Tells cards as JSON.
struct Teller<'a> {
    world: &'a World<'a>,
    voice: Voice<'a>,
    /// The sheet as it was named.
    sheet: String,
    with_key: bool,
}

impl Teller<'_> {
    fn card(&self, card: &Card) -> Value {
        let mut shown = wire::card(&self.voice, &self.sheet, card);
        if let (Some(face), Value::Object(fields)) = (face::face(card, self.world), &mut shown) {
            fields.insert("face".into(), face);
        }
        if self.with_key
            && let (Some(solution), Value::Object(fields)) = (card::solve(card, self.world), &mut shown)
        {
            let mut told = wire::solution(&self.voice, card, &solution);
            if let (Value::Object(told), Some(run)) = (&mut told, face::good_run(card, self.world)) {
                told.insert("answer".into(), run);
            }
            fields.insert("solution".into(), told);
        }
        shown
    }

    fn of_set(&self, card: &SetCard<'_>) -> Value {
        match card {
            SetCard::Computed(card) => self.card(card),
            SetCard::Own(_, own) => {
                let mut shown = json!({
                    "family": own.id(), "tag": own.tag, "ask": own.question, "options": own.options,
                });
                if let (true, Value::Object(fields)) = (self.with_key, &mut shown) {
                    fields.insert("right".into(), json!(own.right));
                    fields.insert("why".into(), json!(own.why));
                }
                shown
            }
        }
    }
}

/// A set by its slug or its file, with its id.
pub(crate) fn set(content: &Content, name: &str) -> Result<(String, Set), Vec<String>> {
    let ready = |ships| Set::ready(content, ships).map(|set| (ships.slug.clone(), set));
    if let Some(dealt) = content.sets.iter().find(|set| set.slug == name).and_then(ready) {
        return Ok(dealt);
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
    if text.trim_start().starts_with('{') {
        let set =
            Set::read(text.as_bytes(), content).map_err(|refused| vec![format!("{name}: {refused}")])?;
        return Ok((set.id(), set));
    }
    let source = load::Source { path: name.into(), text };
    let ships =
        load::set(&source, content).map_err(|all| all.iter().map(ToString::to_string).collect::<Vec<_>>())?;
    ready(&ships).ok_or_else(|| vec![format!("{name}: `{}` is no shop sheet", ships.sheet)])
}

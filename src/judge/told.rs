//! A description of a job and of what was done, read from JSON.

use super::document::{At, Fields, Mistakes};
use super::step;
use crate::content::{Content, Ticket};
use crate::process::air::Reading;
use crate::process::technique::Pass;
use crate::quantity::{HOURS_A_DAY, Hours, MoistureContent};
use crate::rules::sequence::job::{Job, Part};
use crate::rules::sequence::plan::{Detail, Plan, Step, Told};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::term::Term;
use serde_json::Value;

/// Most parts of one job.
const PARTS_MOST: usize = 32;
/// Most steps of one job.
const STEPS_MOST: usize = 2_000;
/// Keys of a description.
const KEYS: [&str; 10] =
    ["sheet", "settings", "ticket", "job", "moisture", "start_h", "air", "detail", "steps", "handed_over"];
/// Keys of a job told in full.
const JOB_KEYS: [&str; 8] = ["parts", "look", "class", "colour", "shaded", "binding", "filler", "coating"];
/// Keys of a part.
const PART_KEYS: [&str; 3] = ["name", "wood", "figured"];
/// Names of how much a plan tells, in the order of [`DETAILS`].
const DETAIL_NAMES: [&str; 3] = ["every", "main", "some"];
const DETAILS: [Detail; 3] = [Detail::Every, Detail::Main, Detail::Some];

/// A job as it was told.
#[derive(Debug, Clone, PartialEq)]
pub struct Account {
    /// The shop sheet, with what was told to differ on it.
    pub sheet: Sheet,
    /// Slug of the ticket, where one was named.
    pub ticket: Option<String>,
    /// What is to be finished.
    pub job: Job,
    /// Names of its parts, in their order.
    pub parts: Vec<String>,
    /// Hour of the day at which the job began; the sheet's first working hour unless told.
    pub start: f64,
    /// The air over the job, in the order of time; empty: kept as the sheet asks.
    pub air: Vec<Reading>,
    /// What was done.
    pub plan: Plan,
    /// How the gun was used at each step, as far as it was measured.
    pub passes: Vec<Pass>,
    /// Whether the work was handed over; else more may follow.
    pub handed_over: bool,
}

/// Reads a description. `sheet` names the shop sheet where the description names none.
///
/// # Errors
/// Every mistake with its place in the document, what stands there and what is allowed.
pub fn read(document: &Value, content: &Content) -> Result<Account, Vec<String>> {
    let mut mistakes = Mistakes::default();
    let account = account(document, content, &mut mistakes);
    match account {
        Some(account) if mistakes.0.is_empty() => Ok(account),
        _ => Err(mistakes.0),
    }
}

fn account(document: &Value, content: &Content, mistakes: &mut Mistakes) -> Option<Account> {
    let fields = At::whole(document).fields(&KEYS, mistakes)?;
    let ticket = ticket(&fields, content, mistakes);
    let sheet = sheet(&fields, ticket, content, mistakes)?;
    let (mut job, parts) = job(&fields, ticket, &sheet, content, mistakes)?;
    moisture(&fields, &parts, &mut job, mistakes);
    let start = fields.get("start_h").and_then(|at| at.number(0.0, HOURS_A_DAY, mistakes));
    let air = air(&fields, content, mistakes);
    let detail = fields.get("detail").and_then(|at| at.among(&DETAIL_NAMES, mistakes));
    let detail = detail.and_then(|place| DETAILS.get(place).copied()).unwrap_or_default();
    let (steps, passes) = steps(&fields, &parts, content, mistakes).into_iter().unzip();
    let handed_over = fields.get("handed_over").map_or(Some(false), |at| at.flag(mistakes))?;
    let start = start.unwrap_or_else(|| sheet.get(Setting::DayFrom));
    let ticket = ticket.map(|ticket| ticket.slug.clone());
    Some(Account { sheet, ticket, job, parts, start, air, plan: Plan { steps, detail }, passes, handed_over })
}

fn ticket<'c>(fields: &Fields<'_>, content: &'c Content, mistakes: &mut Mistakes) -> Option<&'c Ticket> {
    let slugs: Vec<&str> = content.tickets.iter().map(|ticket| ticket.slug.as_str()).collect();
    let place = fields.get("ticket")?.among(&slugs, mistakes)?;
    content.tickets.get(place)
}

/// The sheet that is named, else that of the ticket, else the first that ships; with the values told to differ.
fn sheet(
    fields: &Fields<'_>,
    ticket: Option<&Ticket>,
    content: &Content,
    mistakes: &mut Mistakes,
) -> Option<Sheet> {
    let slugs: Vec<&str> = content.sheets.iter().map(|sheet| sheet.slug.as_str()).collect();
    let mut sheet = match (fields.get("sheet"), ticket) {
        (Some(at), _) => content.sheets.get(at.among(&slugs, mistakes)?)?,
        (None, Some(ticket)) => content.sheet(&ticket.sheet)?,
        (None, None) => content.sheets.first()?,
    }
    .clone();
    let settings = fields.get("settings").and_then(|at| at.any_fields(mistakes));
    for (key, at) in settings.iter().flat_map(Fields::each) {
        let Some(setting) = Setting::from_slug(key) else {
            let known: Vec<&str> = Setting::ALL.iter().map(|setting| setting.slug()).collect();
            mistakes.0.push(format!("`{}` is no setting; allowed: {}", at.path(), known.join(", ")));
            continue;
        };
        let held = sheet.held(setting);
        if let Some(value) = at.number(held.floor, held.ceiling, mistakes)
            && let Ok(changed) = sheet.with(setting, value)
        {
            sheet = changed;
        }
    }
    Some(sheet)
}

/// The job of the ticket, or one told in full; never both.
fn job(
    fields: &Fields<'_>,
    ticket: Option<&Ticket>,
    sheet: &Sheet,
    content: &Content,
    mistakes: &mut Mistakes,
) -> Option<(Job, Vec<String>)> {
    match (ticket, fields.get("job")) {
        (Some(_), Some(_)) => {
            mistakes.0.push("`ticket` and `job` are both told; one of them is allowed".to_owned());
            None
        }
        (Some(ticket), None) => {
            let job = crate::content::World { content, sheet }.job(ticket).ok()?;
            Some((job, ticket.parts.iter().map(|part| part.slug.clone()).collect()))
        }
        (None, Some(at)) => full_job(&at, sheet, content, mistakes),
        (None, None) => {
            if fields.get("ticket").is_none() {
                mistakes.0.push("`ticket` or `job` is missing".to_owned());
            }
            None
        }
    }
}

fn full_job(
    at: &At<'_>,
    sheet: &Sheet,
    content: &Content,
    mistakes: &mut Mistakes,
) -> Option<(Job, Vec<String>)> {
    let fields = at.fields(&JOB_KEYS, mistakes)?;
    let (parts, names) = parts(&fields, content, mistakes)?;
    let look = fields.need_term("look", mistakes);
    let class = fields.need_term("class", mistakes);
    let colour = fields.need_term("colour", mistakes);
    let filler = fields.need_term("filler", mistakes);
    let shaded = fields.get("shaded").map_or(Some(false), |at| at.flag(mistakes));
    let binding =
        fields.get("binding").map_or(Some(crate::rules::term::Binding::None), |at| at.term(mistakes));
    let coating = fields.get("coating").map_or(Some(sheet.coating()), |at| at.term(mistakes));
    let coating = coating?;
    let job = Job {
        parts,
        look: look?,
        class: class?,
        colour: colour?,
        water_dye: false,
        shaded: shaded?,
        binding: binding?,
        filler: filler?,
        coating,
        melts: Job::melting(coating),
    };
    Some((job, names))
}

fn parts(
    fields: &Fields<'_>,
    content: &Content,
    mistakes: &mut Mistakes,
) -> Option<(Vec<Part>, Vec<String>)> {
    let at = fields.need("parts", mistakes)?;
    let list = at.list(mistakes);
    if !(1..=PARTS_MOST).contains(&list.len()) {
        at.refuse(&format!("1 to {PARTS_MOST} parts"), mistakes);
        return None;
    }
    let slugs: Vec<&str> = content.woods.iter().map(|wood| wood.slug.as_str()).collect();
    let (mut parts, mut names) = (Vec::new(), Vec::<String>::new());
    for at in list {
        let Some(fields) = at.fields(&PART_KEYS, mistakes) else { continue };
        let name = fields.need("name", mistakes).and_then(|at| at.text(mistakes));
        let wood = fields.need("wood", mistakes).and_then(|at| at.among(&slugs, mistakes));
        let figured = fields.get("figured").map_or(Some(false), |at| at.flag(mistakes));
        if let (Some(name), Some(wood), Some(figured)) =
            (name, wood.and_then(|at| content.woods.get(at)), figured)
        {
            if names.iter().any(|known| known == name) {
                mistakes.0.push(format!("`{}.name` is `{name}`, the name of two parts", at.path()));
            }
            names.push(name.to_owned());
            parts.push(Part { figured, ..Part::of(wood) });
        }
    }
    Some((parts, names))
}

/// Moisture by part, in per cent; `null`: not measured.
fn moisture(fields: &Fields<'_>, parts: &[String], job: &mut Job, mistakes: &mut Mistakes) {
    let names: Vec<&str> = parts.iter().map(String::as_str).collect();
    let told = fields.get("moisture").and_then(|at| at.fields(&names, mistakes));
    for (name, at) in told.iter().flat_map(Fields::each) {
        let moisture = if at.is_null() {
            Some(Told::Untold)
        } else {
            at.number(MoistureContent::MIN, MoistureContent::MAX, mistakes)
                .map(|number| Told::Is(MoistureContent::saturating(number)))
        };
        let part = names.iter().position(|known| *known == name).and_then(|place| job.parts.get_mut(place));
        if let (Some(part), Some(moisture)) = (part, moisture) {
            part.moisture = moisture;
        }
    }
}

/// The readings in the order of time.
fn air(fields: &Fields<'_>, content: &Content, mistakes: &mut Mistakes) -> Vec<Reading> {
    let Some(at) = fields.get("air") else { return Vec::new() };
    let mut readings = Vec::new();
    for at in at.list(mistakes) {
        let Some(fields) = at.fields(&["from_h", "air_c", "rh", "work_c"], mistakes) else { continue };
        let from = fields.need("from_h", mistakes);
        let from = from.and_then(|at| at.number(Hours::MIN, Hours::MAX, mistakes)).map(Hours::saturating);
        if let (Some(from), Some(climate)) = (from, step::climate(&fields, content, mistakes)) {
            readings.push(Reading { from, climate });
        }
    }
    crate::rules::sorted::sorted(readings, |a, b| a.from.get().total_cmp(&b.from.get()))
}

fn steps(
    fields: &Fields<'_>,
    parts: &[String],
    content: &Content,
    mistakes: &mut Mistakes,
) -> Vec<(Step, Pass)> {
    let Some(at) = fields.need("steps", mistakes) else { return Vec::new() };
    let list = at.list(mistakes);
    if list.len() > STEPS_MOST {
        at.refuse(&format!("at most {STEPS_MOST} steps"), mistakes);
        return Vec::new();
    }
    list.iter().filter_map(|at| step::read(at, parts, content, mistakes)).collect()
}

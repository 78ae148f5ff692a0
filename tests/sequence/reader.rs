//! Reads a published schedule (`tests/data/schedules.csv`) as a plan, a job and a sheet set to the schedule's own values.
//!
//! A wait belongs to the end of its step, or lies between the coats of the step where the row says so. What a row does not
//! print counts as kept. Floors stay those of the sheet: a schedule that undercuts one is refused.

use crate::support::table::{Row, table};
use crate::work::{h, job, nitro, water};
use stepboard::rules::sequence::job::Job;
use stepboard::rules::sequence::manner::Manner;
use stepboard::rules::sequence::operation::{LAID, Operation as Op};
use stepboard::rules::sequence::plan::{Detail, Plan, Step, Told};
use stepboard::rules::sheet::{Setting, Sheet};
use stepboard::rules::term::{Binding, Coating, ColourPlan, Filler, WorkClass};

/// A schedule as the checker takes it.
pub(crate) struct Read {
    pub(crate) job: Job,
    pub(crate) plan: Plan,
    pub(crate) sheet: Sheet,
}

pub(crate) fn sources() -> Vec<String> {
    let mut names: Vec<String> =
        table("schedules.csv").into_iter().map(|row| row["source"].clone()).collect();
    names.dedup();
    names
}

pub(crate) fn rows(source: &str) -> Vec<Row> {
    table("schedules.csv").into_iter().filter(|row| row["source"] == source).collect()
}

pub(crate) fn number(row: &Row, column: &str) -> Option<f64> {
    row[column].parse().ok()
}

fn numbers(text: &str) -> Vec<u32> {
    text.split(|c: char| !c.is_ascii_digit()).filter_map(|word| word.parse().ok()).collect()
}

/// The least number of coats that a row prints: the number before the word `coat`, the lower of a range; of two classes of
/// work the first class, which is the one that is rubbed.
pub(crate) fn coats(text: &str) -> Option<u32> {
    let words: Vec<&str> = text.split([' ', ',', ';', ':']).filter(|word| !word.is_empty()).collect();
    if let Some(at) = words.windows(2).position(|pair| pair == ["first", "class"]) {
        return words[at.checked_sub(1)?].parse().ok();
    }
    let at = words.iter().position(|word| word.starts_with("coat"))?;
    let last = words[..at].iter().rposition(|word| word.parse::<u32>().is_ok())?;
    if at - last > 2 {
        return None;
    }
    let low = last.checked_sub(2).filter(|_| words[last - 1] == "to").unwrap_or(last);
    words[low].parse().ok()
}

fn operations(row: &Row, filled: bool) -> Vec<Op> {
    let text = format!("{} {}", row["material_class"], row["conditions"]);
    row["operation"]
        .split(';')
        .flat_map(|word| match word.trim() {
            "sand" if text.contains("damp") => vec![Op::Damp],
            "sand" if filled => vec![Op::SandFiller],
            "sand" => vec![Op::Sand],
            "bleach" => vec![Op::Damp],
            "stain" if text.contains("sanded back") => vec![Op::Stain, Op::SandBack, Op::Stain],
            "stain" => vec![Op::Stain],
            "fill" => vec![Op::Fill],
            "seal" => vec![Op::Seal],
            "washcoat" => vec![Op::Washcoat],
            "colour" => vec![Op::Colour],
            "shade" => vec![Op::Shade],
            "clear" => vec![Op::Clear],
            "scuff" => vec![Op::Scuff],
            "level" => vec![Op::Level],
            "buff" => vec![Op::Buff],
            "rework" => vec![Op::Rework],
            "mask" => vec![Op::Mask],
            "scrape" => vec![Op::Scrape, Op::Unmask],
            "wax" => vec![Op::Polish],
            "wait" | "skip fill" => Vec::new(),
            other => panic!("no operation for `{other}`"),
        })
        .collect()
}

fn manners(op: Op, text: &str, all: &str) -> Vec<Manner> {
    let says = |word: &str| text.contains(word);
    let pairs = [
        (says("thin ") && op != Op::Fill, Manner::Thin),
        (says("mist") && !says("not misted"), Manner::Mist),
        (op == Op::Scuff && says("light"), Manner::Light),
        (op == Op::Stain && says("water stain"), Manner::WaterDye),
        (op == Op::SandBack, Manner::Evenly),
        (op == Op::Fill && says("coloured"), Manner::Coloured),
        // Water stain under paste filler: neither dissolves the other; "coloured to the stain" is the tone agreed on.
        (op == Op::Fill && says("coloured to the stain") && all.contains("water stain"), Manner::KeptApart),
        (op == Op::Fill && says("coloured to the stain"), Manner::Sample),
        (says("pores filled by lacquer alone"), Manner::BuildsFill),
        (says("sanded") || says("sand between coats"), Manner::ScuffedBetween),
        (op == Op::Level && says("wet"), Manner::WithWater),
    ];
    pairs.into_iter().filter(|(holds, _)| *holds).map(|(_, manner)| manner).collect()
}

/// The part that a row speaks of; `None`: the whole work. Open-grained first, else the part worked on first.
fn part(row: &Row, mixed: bool, instrument_top: bool) -> Option<usize> {
    let text = format!("{} {}", row["material_class"], row["conditions"]);
    if text.contains("back and sides") || text.contains("all but the top") || text.contains("top only") {
        return Some(1);
    }
    match row["wood_class"].as_str() {
        "open" if mixed => Some(0),
        "close" if mixed => Some(1),
        "close" if instrument_top => Some(0),
        _ if text.ends_with("; neck") => Some(0),
        _ => None,
    }
}

fn set(sheet: &mut Sheet, setting: Setting, value: f64) {
    *sheet = sheet.tried(setting, value);
}

fn least(sheet: &mut Sheet, setting: Setting, value: f64) {
    let held = sheet.get(setting);
    set(sheet, setting, held.min(value));
}

/// Reads a schedule with a kind of filler; `left_out` names steps that stand for another way.
pub(crate) fn read(source: &str, filler: Filler, left_out: &[&str]) -> Read {
    let rows: Vec<Row> =
        rows(source).into_iter().filter(|row| !left_out.contains(&row["step_number"].as_str())).collect();
    let text = |row: &Row| format!("{} {} {}", row["material_class"], row["conditions"], row["note"]);
    let all: String = rows.iter().map(text).collect();
    let water_borne = all.contains("water-borne");
    let mut sheet = if water_borne { water() } else { nitro() };
    let class = |name: &str| rows.iter().any(|row| row["wood_class"] == name);
    let mixed = class("open") && (class("close") || all.contains("top only"));
    let top = all.contains("all but the top");
    let necked = all.contains("neck");
    let woods: &[&str] = match (class("open"), mixed) {
        (true, true) => &["mahogany", "hard-maple"],
        (true, false) => &["mahogany"],
        _ if top || necked => &["hard-maple", "hard-maple"],
        _ => &["hard-maple"],
    };
    let mut steps: Vec<Step> = Vec::new();
    let mut wait: Option<f64> = None;
    let mut cured = false;
    for row in &rows {
        let filled = steps
            .iter()
            .rfind(|step| LAID.contains(&step.operation))
            .is_some_and(|s| s.operation == Op::Fill);
        let printed = row["wait"].as_str();
        let hours = number(row, "wait_min_h");
        let between = printed.contains("between")
            || printed.contains("from mist")
            || printed.contains("recoating")
            || row["conditions"].contains("a coat each")
            || row["material_class"].contains("a coat each");
        let mut fillings = 1;
        for op in operations(row, filled) {
            let mut step = Step::of(op);
            step.part = part(row, mixed, top);
            step.manners = manners(op, &text(row), &all);
            if let Some(hours) = wait.take() {
                step.after = Told::Is(h(hours));
            } else if let Some(last) = steps.last()
                && !LAID.contains(&last.operation)
                && matches!(last.after, Told::Is(_))
            {
                step.after = Told::Is(h(0.0));
            }
            if op == Op::Level && cured {
                step.manners.push(Manner::Powder);
            }
            if LAID.contains(&op) {
                step.coats = coats(&row["material_class"]).map_or(Told::Kept, Told::Is);
                if between && let Some(hours) = hours {
                    step.between = Told::Is(h(hours));
                }
            }
            if matches!(op, Op::Sand | Op::Level) {
                step.grit = numbers(&row["material_class"]).into_iter().max().map_or(Told::Kept, Told::Is);
            }
            if op == Op::Rework
                && let Some(hours) = hours
            {
                step.after = Told::Is(h(hours));
            }
            if op == Op::Fill && row["note"].contains("two or three fillings") {
                fillings = 2;
            }
            if row["material_class"].contains("on neck") {
                let counts = numbers(&row["material_class"]);
                steps.push(Step { part: Some(0), coats: Told::Is(counts[0]), ..step.clone() });
                steps.push(Step { part: Some(1), coats: Told::Is(counts[1]), after: Told::Kept, ..step });
            } else {
                steps.push(step);
            }
        }
        let wiped = printed.contains("wipe") || printed.contains("rub off");
        match (hours, number(row, "wait_max_h")) {
            (Some(low), Some(high)) if wiped => {
                let mut wipe = Step::of(Op::WipeFiller).after(h((low + high) / 2.0));
                wipe.part = part(row, mixed, top);
                steps.push(wipe);
                let latest = sheet.get(Setting::FillerWipeTo);
                set(&mut sheet, Setting::FillerWipeTo, latest.max(20.0 * f64::from(u8::from(high > 0.2))));
            }
            (Some(hours), _) if !between && row["operation"] != "rework" => wait = Some(hours),
            _ => {}
        }
        if fillings == 2
            && let (Some(fill), Some(hours)) = (steps.last().cloned(), wait)
        {
            steps.push(Step { operation: Op::SandFiller, after: Told::Is(h(hours)), ..fill.clone() });
            steps.push(Step { after: Told::Is(h(0.0)), ..fill });
        }
        cured = printed.contains("cure") || (row["operation"] != "wait" && cured && printed.is_empty());
    }
    // A wait after the last filling is the wait for the coat that comes next.
    let last_laid = steps.iter().rfind(|step| LAID.contains(&step.operation)).map(|step| step.operation);
    if last_laid == Some(Op::Fill) {
        let hours = wait.unwrap_or(0.0);
        steps.push(Step { part: Some(0), ..Step::of(Op::Seal).after(h(hours)) });
    }
    let seal_under_filler = steps.iter().position(|step| step.operation == Op::Seal);
    let refilled = steps.iter().rposition(|step| step.operation == Op::Fill);
    if let (Some(seal), Some(fill)) = (seal_under_filler, refilled)
        && seal < fill
    {
        // The filler still finds the pores: the seal under it is thin (variant sv-25 names these two schedules).
        for step in &mut steps[..fill] {
            if step.operation == Op::Seal {
                step.manners.push(Manner::Thin);
            }
        }
        steps[fill].manners.push(Manner::Compatible);
    }
    let has = |op: Op| steps.iter().any(|step| step.operation == op);
    let mut job = job(woods);
    job.filler = filler;
    job.coating = if water_borne { Coating::WaterBorne } else { Coating::Nitrocellulose };
    job.melts = !(water_borne || all.contains("varnish: "));
    job.shaded = has(Op::Shade);
    job.binding = if has(Op::Scrape) { Binding::Plastic } else { Binding::None };
    job.colour = match (has(Op::Colour), has(Op::Stain)) {
        (true, _) if all.contains("solid colour") => ColourPlan::Solid,
        (true, _) => ColourPlan::Transparent,
        (false, true) => ColourPlan::Stained,
        (false, false) => ColourPlan::Natural,
    };
    job.class = match (has(Op::Level), all.contains("turned")) {
        (true, true) => WorkClass::Turned,
        (true, false) => WorkClass::InstrumentGloss,
        (false, _) => WorkClass::Satin,
    };
    if let Some(clear) = steps.iter_mut().rfind(|step| step.operation == Op::Clear)
        && job.class == WorkClass::Satin
    {
        // Left as the source leaves it.
        clear.manners.push(Manner::CleanLastCoat);
    }
    if all.contains("oil and pumice to an even dull sheen") {
        // Rubbing dull takes little film: the least that a sheet may hold.
        let least = sheet.held(Setting::LevelTakeOff).floor;
        set(&mut sheet, Setting::LevelTakeOff, least);
    }
    own_values(&steps, filler, &mut sheet);
    Read { job, plan: Plan { steps, detail: Detail::Main }, sheet }
}

/// Sets the sheet to the schedule's own values; floors stay.
fn own_values(steps: &[Step], filler: Filler, sheet: &mut Sheet) {
    let filler_wait = match filler {
        Filler::OilPaste => Setting::FillerOilWait,
        Filler::FastSolvent => Setting::FillerFastWait,
        Filler::WaterBorne => Setting::FillerWaterWait,
        Filler::TwoPart => Setting::FillerTwoPartWait,
    };
    let mut stain_seen = false;
    for (at, step) in steps.iter().enumerate() {
        let own = match step.operation {
            Op::Seal => Some(Setting::SealWait),
            Op::Colour | Op::Shade => Some(Setting::ColourWait),
            Op::Clear => Some(Setting::ClearWait),
            Op::Fill | Op::WipeFiller => Some(filler_wait),
            Op::Washcoat => Some(Setting::WashcoatWait),
            _ => None,
        };
        let next: f64 = steps[at + 1..]
            .iter()
            .scan(true, |open, step| {
                let go = *open;
                *open = !LAID.contains(&step.operation);
                go.then_some(step.after)
            })
            .filter_map(|after| if let Told::Is(hours) = after { Some(hours.get()) } else { None })
            .sum();
        if let Some(setting) = own {
            let between = if let Told::Is(hours) = step.between { Some(hours.get()) } else { None };
            let printed = between.or((next > 0.0).then_some(next));
            if let Some(hours) = printed {
                least(sheet, setting, hours);
            }
        }
        stain_seen |= step.operation == Op::Stain;
        if step.operation == Op::Fill && !stain_seen {
            set(sheet, Setting::StainFirst, 0.0);
        }
        if step.operation == Op::Sand
            && let Told::Is(grit) = step.grit
        {
            set(sheet, Setting::LastGrit, sheet.get(Setting::LastGrit).max(f64::from(grit)));
        }
        if step.operation == Op::Level {
            for setting in [Setting::BuffWaitInstrument, Setting::BuffWaitTurned] {
                if let Told::Is(hours) = step.after
                    && hours.get() > 0.0
                {
                    least(sheet, setting, hours.get());
                }
            }
            if let Told::Is(grit) = step.grit {
                least(sheet, Setting::CompoundGrit, f64::from(grit));
            }
        }
    }
}

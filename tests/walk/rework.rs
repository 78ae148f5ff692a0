//! The rework that published rows ask for (`tests/data/faults.csv`, `rework`), read as steps, and the hours that they cost.
//!
//! No row tells hours. Those of a step are settings of the shop sheet (common practice, no source), its waits the sheet's;
//! which steps there are is the row's.

use crate::support::content;
use crate::support::table::table;
use std::collections::BTreeMap;
use stepboard::rules::drying::waits::{buff_setting, filler_setting};
use stepboard::rules::fault::{Redo, Rework};
use stepboard::rules::sequence::operation::{COATS, LAID, Operation as Op};
use stepboard::rules::sheet::Setting;
use stepboard::rules::term::{ColourPlan, Stage};
use stepboard::walk::Walk;
use stepboard::walk::report::Found;

use Redo::{Again, Recoat, Strip};

const PLACE: Redo = Redo::Do(Op::Rework);
const SEAL: Redo = Redo::Do(Op::Seal);
const CLEAR: Redo = Redo::Do(Op::Clear);
const COLOUR: Redo = Redo::Do(Op::Colour);
const LEVEL: Redo = Redo::Do(Op::Level);
const BUFF: Redo = Redo::Do(Op::Buff);
const SCUFF: Redo = Redo::Do(Op::Scuff);
const SAND: Redo = Redo::Do(Op::Sand);

/// Work begun anew: at the least sealed and cleared.
const ANEW: &[Redo] = &[Strip, SAND, SEAL, CLEAR];

/// What the row of a fault asks for: its words in their order, each with the steps that they name.
type Asked = (&'static str, &'static [(&'static str, &'static [Redo])]);

#[rustfmt::skip]
const ROWS: &[Asked] = &[
    ("fish-eye", &[("level the craters", &[PLACE]), ("wash with solvent", &[Redo::Do(Op::SolventWipe)]), ("barrier coat", &[SEAL])]),
    ("orange-peel", &[("block sand level", &[PLACE]), ("respray", &[Recoat])]),
    ("run-sag", &[("cut down", &[PLACE]), ("recoat", &[Recoat])]),
    ("blush", &[("rub the surface lightly", &[PLACE]), ("then recoat", &[Recoat])]),
    ("dry-spray", &[("Rub lightly", &[PLACE]), ("respray wet", &[Recoat])]),
    ("solvent-pop", &[("sand below the pits", &[PLACE]), ("recoat thin", &[Recoat])]),
    ("pore-pinhole", &[("Sand back", &[PLACE]), ("thin seal coats", &[SEAL])]),
    ("dust-nib", &[("Nib off", &[PLACE]), ("recoat", &[Recoat])]),
    ("sand-through", &[("Seal the bare spot", &[SEAL]), ("mist the colour", &[COLOUR]), ("then clear", &[CLEAR])]),
    ("witness-line", &[("Scuff the whole face", &[SCUFF]), ("one full final coat", &[CLEAR]), ("then level", &[LEVEL])]),
    ("cold-check", &[("strip and refinish", ANEW)]),
    ("substrate-crack", &[("refinish that part", ANEW)]),
    ("wrinkle-lift", &[("sand smooth", &[PLACE]), ("isolate", &[SEAL]), ("recoat thin", &[Recoat])]),
    ("crows-foot", &[("Sand out", &[PLACE]), ("recoat thin", &[Recoat])]),
    ("dye-bleed", &[("Mist on light coats", &[Recoat])]),
    ("extractive-bleed", &[("Scrape the pale part clean", &[PLACE]), ("seal light and dark parts", &[SEAL])]),
    ("grain-sink", &[("then level again", &[LEVEL]), ("buff", &[BUFF])]),
    ("grey-pore", &[("Otherwise strip", &[Strip]), ("re-fill", &[Redo::Do(Op::Fill), SEAL, CLEAR])]),
    ("white-filler-pore", &[("Tone with tinted coat", &[COLOUR])]),
    ("filler-haze", &[("When hard, sand lightly", &[Redo::Do(Op::SandFiller)])]),
    ("glue-spot", &[("Scrape or sand the spot", &[PLACE]), ("re-stain", &[Redo::Do(Op::Stain)])]),
    ("stain-blotch", &[("Even up with tinted coats", &[COLOUR])]),
    ("sanding-scratch", &[("Go back to the grit", &[Again])]),
    ("chatter-mark", &[("Scrape at a skew", &[Again])]),
    ("lap-stripe", &[("Even with very weak passes", &[Again])]),
    ("metallic-mottle", &[("even control coat", &[Again])]),
    ("peeling", &[("Strip the loose layers", ANEW)]),
    ("soft-film", &[("Wait", &[LEVEL, BUFF])]),
    ("bloom-haze", &[("re-polish", &[BUFF])]),
    ("catalyst-bloom", &[("Strip and refinish", ANEW)]),
    ("edge-pullback", &[("Ease edges", &[PLACE]), ("then full coats", &[Recoat])]),
    ("fat-edge", &[("Level with a hard block", &[PLACE]), ("recoat", &[Recoat])]),
    ("tape-bleed", &[("Scrape the pale part", &[PLACE]), ("touch in", &[COLOUR])]),
    ("tape-bridge", &[("Feather the step", &[PLACE]), ("drop fill", &[CLEAR])]),
    ("colour-off", &[("weak tinted coat", &[COLOUR])]),
    ("dark-edge", &[("widen the fade", &[Redo::Do(Op::Shade)])]),
    ("water-spot", &[("level again", &[LEVEL])]),
    ("buff-swirl", &[("finish with the finest compound", &[BUFF])]),
    ("buff-burn", &[("level", &[PLACE]), ("respray", &[Recoat])]),
    ("raised-grain", &[("Scuff with fine paper", &[SCUFF])]),
];

/// The steps that a fault's row asks for.
fn asked(fault: &str) -> Vec<Redo> {
    let row = ROWS.iter().find(|(known, _)| *known == fault);
    let (_, words) = row.unwrap_or_else(|| panic!("nobody has read the rework of {fault} yet"));
    words.iter().flat_map(|(_, steps)| steps.iter().copied()).collect()
}

/// `faults.csv`, `rework`: the words stand there in this order, and the content asks for the same. Stripping is its
/// `severity` 4.
#[test]
fn the_rework_of_each_fault_is_that_of_its_row() {
    let content = content();
    let rows = table("faults.csv");
    let said: BTreeMap<&str, &str> =
        rows.iter().map(|row| (row["id"].as_str(), row["rework"].as_str())).collect();
    assert_eq!((ROWS.len(), said.len()), (content.faults.len(), content.faults.len()));
    for (id, words) in ROWS {
        let mut rest = said[id];
        for (word, _) in *words {
            let at = rest.find(word).unwrap_or_else(|| panic!("{id}: no `{word}` in `{rest}`"));
            rest = &rest[at + word.len()..];
        }
        let fault = content.fault(id).expect("a fault of the table");
        assert_eq!(fault.rework, asked(id), "{id}");
        assert_eq!(fault.rework.contains(&Strip), fault.severity == Rework::Strip, "{id}");
    }
}

/// Hours of work and of waiting that a fault of a walk costs by its row.
pub(crate) fn cost(walk: &Walk, found: &Found, fault: &str) -> (f64, f64) {
    let film = found.shows_in.is_none_or(|shows| shows >= Stage::Seal);
    let steps: Vec<Option<Op>> =
        steps(walk, found, fault).into_iter().chain(finish(walk, found, fault)).collect();
    let hours = |setting| walk.start().sheet.wait(setting);
    let work = steps.iter().map(|step| step.map_or(STRIP_H, |op| hours(takes(op)))).sum();
    let waits = steps.iter().flatten().filter(|op| film || **op != Op::Rework);
    (work, waits.filter_map(|op| waits_for(walk, *op)).map(hours).fold(0.0, |sum, wait| sum + wait))
}

/// Whether the way on did the steps since the fault showed, in their order: then nothing is lost beside the hours of the walk.
pub(crate) fn is_mended(walk: &Walk, found: &Found, fault: &str) -> bool {
    let turn = walk.shown()[found.shown].turn;
    let mut since = walk.lines().iter().filter(|line| line.turn > turn).map(|line| Some(line.operation));
    steps(walk, found, fault).into_iter().all(|step| since.any(|done| done == step))
}

/// Hours of stripping: a setting (common practice, no source).
const STRIP_H: f64 = 4.0;

/// The steps on a walk. What was done wrong on bare wood is done again; under what was laid the wood is stripped for it, and
/// re-coloured where it had colour (sanding-scratch: "re-colour the whole area").
fn steps(walk: &Walk, found: &Found, fault: &str) -> Vec<Option<Op>> {
    let (made, at) = found.made;
    let turn = walk.shown()[found.shown].turn;
    let on_wood = made.stage() <= Stage::Fill
        && !matches!(made, Op::SolventWipe | Op::CleanOff | Op::Trim | Op::Prefit);
    let mut since = walk.lines().iter().skip(at).take_while(|line| line.turn <= turn);
    if on_wood && !since.any(|line| LAID.contains(&line.operation)) {
        return vec![Some(made)];
    }
    let stained = walk.start().job.colour == ColourPlan::Stained;
    let one = |step: Redo| match step {
        Strip => vec![None],
        Again if on_wood && made == Op::Sand => vec![None, Some(made), Some(Op::Stain)],
        Again if on_wood => vec![None, Some(made)],
        Again => vec![Some(made)],
        Recoat => vec![Some(if COATS.contains(&made) { made } else { Op::Clear })],
        Redo::Do(op) => vec![Some(op)],
    };
    let all = asked(fault).into_iter().flat_map(one);
    all.filter(|step| stained || *step != Some(Op::Stain)).collect()
}

/// A coat on the finished film is levelled and buffed, and a levelled one buffed ("last coat: level and buff", dust-nib).
fn finish(walk: &Walk, found: &Found, fault: &str) -> Vec<Option<Op>> {
    let job = &walk.start().job;
    let finished =
        found.shows_in.is_none_or(|shows| shows >= Stage::Cure) && job.look.is_rubbed_out(job.class);
    let done = steps(walk, found, fault);
    let laid = done.iter().flatten().any(|op| COATS.contains(op));
    let lacks = |op: Op| !done.contains(&Some(op));
    let level = finished && laid && lacks(Op::Level);
    let buff = finished && (laid || !lacks(Op::Level)) && lacks(Op::Buff);
    level.then_some(Some(Op::Level)).into_iter().chain(buff.then_some(Some(Op::Buff))).collect()
}

/// The setting that says how long a step takes: small ones as long as a scuff.
fn takes(op: Op) -> Setting {
    match op {
        Op::Sand => Setting::WorkPrepare,
        Op::Fill => Setting::WorkFill,
        Op::Shade => Setting::WorkShade,
        Op::Level => Setting::WorkLevel,
        Op::Buff => Setting::WorkBuff,
        op if LAID.contains(&op) => Setting::WorkCoat,
        _ => Setting::WorkScuff,
    }
}

/// The wait of a step: before the film or filler is cut ("When hard", "Wait until it is hard"), after anything is laid.
fn waits_for(walk: &Walk, op: Op) -> Option<Setting> {
    let job = &walk.start().job;
    match op {
        Op::Rework => Some(Setting::RunWait),
        Op::Level => Some(buff_setting(job.class)),
        Op::Stain => Some(Setting::StainDyeWait),
        Op::Fill | Op::SandFiller => Some(filler_setting(job.filler)),
        Op::Seal => Some(Setting::SealWait),
        Op::Colour | Op::Shade => Some(Setting::ColourWait),
        Op::Clear | Op::Protect => Some(Setting::ClearWait),
        _ => None,
    }
}

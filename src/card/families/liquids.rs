//! Flammable liquids and residues: containers in the room, what the shift needs, what cleans with what, sorting waste.

use crate::bench::Facts;
use crate::bench::hazard::told_litres;
use crate::card::question::{After, Ask, Item, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::quantity::{ML_A_LITRE, Measure, Millilitres, Unit};
use crate::rules::hazard::store::{Can, CanFault, Cleaned, WashMove, can_fault, shift_need, wash_move};
use crate::rules::hazard::{Place, Residue, place_for};
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Question] = &[&CAN_IN_ROOM, &SHIFT_NEED, &WASH_WITH, &WASTE_STREAM];

/// What is wrong with this container? Misconceptions: what is used often may stand open; everyone knows what is in it.
const CAN_IN_ROOM: Question = Question {
    id: "can-in-room",
    settle: keep,
    ask: Ask::All { items: can_items, holds: can_wrong },
    after: After::is("booth-fire"),
};

/// How much is brought in? Misconceptions: a whole drum saves a walk; what stands there already does not count.
const SHIFT_NEED: Question = Question {
    id: "shift-need",
    settle: less_in_room,
    ask: Ask::Number { answer: needed, tempt: need_tempts, unit: Unit::Litre },
    after: After::is("booth-fire").below("time-lost"),
};

/// May this solvent clean it? Misconceptions: any will do with the fan on; the fastest cleans best.
const WASH_WITH: Question = Question {
    id: "wash-with",
    settle: keep,
    ask: Ask::One { answer: washed, tempt: wash_tempts },
    after: After::is("booth-fire"),
};

/// Which of these go in here? Misconception: waste is waste.
const WASTE_STREAM: Question = Question {
    id: "waste-stream",
    settle: keep,
    ask: Ask::All { items: waste, holds: goes_in },
    after: After::is("booth-fire"),
};

fn can_items(_: &Facts, _: &World<'_>, _: &mut Dice) -> Vec<Item> {
    let slip = |fault| match fault {
        CanFault::Open => "open-while-in-use",
        CanFault::Glass => "glass-is-no-can",
        CanFault::NoContent | CanFault::NoDate | CanFault::NoHazard => "label-is-whole",
        CanFault::TooMuch => "drum-saves-a-walk",
    };
    CanFault::ALL.iter().map(|fault| Item::new(fault.slug(), slip(*fault))).collect()
}

fn can_wrong(facts: &Facts, _: &World<'_>, slug: &str) -> Judged<bool> {
    let fault = CanFault::from_slug(slug).ok_or_else(|| CannotJudge::without("fault"))?;
    let named = |key| facts.maybe_slug(key).map(|one| one == "on-the-label");
    let can = Can {
        lid: facts.term("can_lid").ok(),
        vessel: facts.term("can_of").ok(),
        content: named("label_content"),
        date: named("label_date"),
        hazard: named("label_hazard"),
        held: told_litres(facts, "held_l").ok(),
        need: told_litres(facts, "need_l").ok(),
    };
    can_fault(fault, can)
}

/// What stands in the room is less than the shift uses.
fn less_in_room(facts: &mut Facts, world: &World<'_>, _: &mut Dice) {
    facts.0.entry("in_room_l".to_owned()).or_insert(crate::bench::FactValue::Number(0.0));
    if needed(facts, world).is_ok_and(|need| need.answer.value <= 0.0) {
        facts.set("in_room_l", 0.0);
    }
}

fn litres(value: Millilitres) -> Measure {
    Measure::new(value.get() / ML_A_LITRE, Unit::Litre, 2)
}

fn needed(facts: &Facts, _: &World<'_>) -> Judged<Measure> {
    let a_coat =
        Millilitres::new(facts.number("a_coat_ml")?).map_err(|_| CannotJudge::without("a_coat_ml"))?;
    let in_room = told_litres(facts, "in_room_l")?;
    Ok(shift_need(facts.number("pieces")?, facts.number("coats_today")?, a_coat, in_room).map(litres))
}

fn need_tempts(facts: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let told = |key| facts.maybe_number(key).unwrap_or_default();
    let all = told("pieces") * told("coats_today") * told("a_coat_ml");
    vec![
        Tempt::number(litres(Millilitres::saturating(all)), "stock-in-room-forgotten"),
        Tempt::number(
            litres(Millilitres::saturating(told("pieces") * told("a_coat_ml"))),
            "one-coat-counted",
        ),
    ]
}

fn washed(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let flash = facts.celsius("flash_c")?;
    let ruling = wash_move(facts.term::<Cleaned>("cleaned")?, flash, facts.celsius("sprayed_flash_c").ok())?;
    Ok(ruling.map(|next| Answer::term(next.slug())))
}

fn wash_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(WashMove::Use.slug(), "flash-point-misread", ""),
        Tempt::term(WashMove::HigherFlash.slug(), "flash-point-misread", "time-lost"),
        Tempt::term("outside-the-booth", "away-from-the-fan", ""),
        Tempt::term("lower-dries-faster", "fast-cleans-best", ""),
        Tempt::term("soak-in-a-tray", "open-while-in-use", ""),
    ]
}

fn waste(_: &Facts, _: &World<'_>, dice: &mut Dice) -> Vec<Item> {
    const LEAST: usize = 4;
    let mut all = Residue::ALL.to_vec();
    dice.shuffle(&mut all);
    let count = LEAST + usize::from(dice.one_in(2));
    all.into_iter().take(count).map(|residue| Item::new(residue.slug(), "waste-is-waste")).collect()
}

fn goes_in(facts: &Facts, _: &World<'_>, slug: &str) -> Judged<bool> {
    let stream = facts.term::<Place>("stream")?;
    let residue = Residue::from_slug(slug).ok_or_else(|| CannotJudge::without("residue"))?;
    Ok(place_for(residue).map(|place| place == stream))
}

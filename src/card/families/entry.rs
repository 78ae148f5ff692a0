//! Entry: who comes in and how, what a stray thing makes, what to do about fish-eyes.

use crate::bench::Facts;
use crate::card::question::{After, Ask, Item, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::{ColourPlan, World};
use crate::rules::contamination::{
    CoatState, DoorMove, Entrant, FishEyeMove, Hands, Mark, Stray, Suit, Under, at_the_door, fish_eye_move,
    makes,
};
use crate::rules::term::{Stage, Term};
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Question] = &[&AT_THE_DOOR, &STRAY_MAKES, &FISH_EYE_MOVE];

/// What happens at the door? Misconceptions: a visit of a minute does no harm; gloves over cream; a brushed suit.
const AT_THE_DOOR: Question = Question {
    id: "at-the-door",
    settle: mostly_crew,
    ask: Ask::One { answer: door, tempt: door_tempts },
    after: After::is("fish-eyes-open"),
};

/// Which of these make the mark? Misconceptions: every fault is dust; the air line is always clean.
const STRAY_MAKES: Question = Question {
    id: "stray-makes",
    settle: keep,
    ask: Ask::All { items: strays, holds: stray_makes },
    after: After::is("nibs-stand-up"),
};

/// What now? Misconceptions: more material fills them; wiping is safe over colour; dry means done.
const FISH_EYE_MOVE: Question = Question {
    id: "fish-eye-move",
    settle: keep,
    ask: Ask::One { answer: mended, tempt: mend_tempts },
    after: After::is("fish-eyes-open"),
};

fn mostly_crew(facts: &mut Facts, _: &World<'_>, dice: &mut Dice) {
    /// One visitor in so many is taken for crew, so that visitors stay the rarer case.
    const CREW_ONE_IN: u32 = 2;
    if dice.one_in(CREW_ONE_IN) {
        facts.set_term("who", Entrant::Crew.slug());
    }
}

fn door(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let who = facts.term::<Entrant>("who")?;
    let ruling = at_the_door(who, facts.term::<Suit>("suit").ok(), facts.term::<Hands>("hands").ok())?;
    Ok(ruling.map(|way| Answer::term(way.slug())))
}

fn door_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let slip = |way| match way {
        DoorMove::Enter => "a-minute-does-no-harm",
        DoorMove::SuitFirst => "hands-forgotten",
        DoorMove::WashFirst => "suit-forgotten",
        DoorMove::WashAndSuit => "more-than-needed",
        DoorMove::StayOut => "crew-turned-away",
    };
    let mut tempts: Vec<Tempt> =
        DoorMove::ALL.iter().map(|way| Tempt::term(way.slug(), slip(*way), "")).collect();
    tempts.push(Tempt::term("gloves-over", "gloves-over-cream", ""));
    tempts.push(Tempt::term("brush-down", "brushing-cleans", "nibs-stand-up"));
    tempts
}

fn strays(_: &Facts, _: &World<'_>, dice: &mut Dice) -> Vec<Item> {
    let slip = |stray| match makes(stray).answer {
        Mark::FishEye => "grease-taken-for-dust",
        Mark::DustNib => "dust-taken-for-grease",
    };
    let mut items: Vec<Item> = Stray::ALL.iter().map(|stray| Item::new(stray.slug(), slip(*stray))).collect();
    dice.shuffle(&mut items);
    items
}

fn stray_makes(facts: &Facts, _: &World<'_>, slug: &str) -> Judged<bool> {
    let mark = facts.term::<Mark>("film_mark")?;
    let stray = Stray::from_slug(slug).ok_or_else(|| CannotJudge::without("stray"))?;
    Ok(makes(stray).map(|made| made == mark))
}

fn mended(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let under = match (facts.term::<Stage>("coat_of"), world.ticket(facts.slug("ticket")?)?.colour) {
        (Ok(Stage::Seal), ColourPlan::Natural | ColourPlan::Solid | ColourPlan::Transparent) => {
            Some(Under::BareWood)
        }
        (Ok(_), _) => Some(Under::ColourOrFinish),
        (Err(_), _) => None,
    };
    let ruling = fish_eye_move(facts.term::<CoatState>("coat_state")?, under)?;
    Ok(ruling.map(|way| Answer::term(way.slug())))
}

fn mend_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(FishEyeMove::WipeOff.slug(), "wiped-over-colour", "colour-dragged"),
        Tempt::term(FishEyeMove::LetDry.slug(), "chance-to-wipe-missed", ""),
        Tempt::term(FishEyeMove::LevelWashBarrier.slug(), "wet-coat-levelled", ""),
        Tempt::term("flood-coat", "more-fills-them", ""),
    ]
}

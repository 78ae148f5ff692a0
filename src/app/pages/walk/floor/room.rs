//! The room: what is worn and the duties, seen to in one go.

use super::{Ground, Hand, once, words};
use crate::app::parts::{Picture, icon};
use crate::content::Place;
use crate::rules::term::Term;
use crate::walk::clock::moment;
use crate::walk::names::{Protection, Suit};
use crate::walk::{RoomAct, Worn, again};
use yew::prelude::*;

pub(super) fn room(ground: &Ground<'_>) -> Html {
    let Ground { shop, walk, hand, .. } = ground;
    let worn = hand.worn;
    let toggles = [
        ("sealed", worn.sealed, switch(ground, |worn| worn.sealed = !worn.sealed)),
        ("gloves", worn.gloves, switch(ground, |worn| worn.gloves = !worn.gloves)),
        ("eyes", worn.eyes, switch(ground, |worn| worn.eyes = !worn.eyes)),
    ];
    let suits = Suit::ALL.iter().map(|suit| {
        let suit = *suit;
        let set = ground.on(move |hand: &mut Hand, _: Event| hand.worn.suit = suit);
        radio("suit", suit.slug(), shop.say(&format!("walk.suit.{}", suit.slug())), worn.suit == suit, set)
    });
    let masks = std::iter::once(None).chain(Protection::ALL.iter().copied().map(Some)).map(|mask| {
        let set = ground.on(move |hand: &mut Hand, _: Event| hand.worn.respirator = mask);
        let slug = mask.map_or("nothing", Term::slug);
        radio("mask", slug, shop.say(&format!("walk.respirator.{slug}")), worn.respirator == mask, set)
    });
    let fan = if walk.room().fan { RoomAct::FanOn } else { RoomAct::FanOff };
    let duties = RoomAct::ALL.iter().filter(|duty| **duty != fan);
    html! {
        <div key="room" class="walk-room">
            { as_before(ground) }
            <fieldset key="mask" class="walk-choice"><legend>{ shop.say("walk.respirator") }</legend>{ for masks }</fieldset>
            <fieldset key="suit" class="walk-choice"><legend>{ shop.say("walk.suit") }</legend>{ for suits }</fieldset>
            <fieldset key="more" class="walk-choice"><legend>{ shop.say("walk.worn") }</legend>
                { for toggles.into_iter().map(|(key, on, set)| check(key, shop.say(&format!("walk.worn.{key}")), AttrValue::default(), on, set)) }
            </fieldset>
            <fieldset key="duties" class="walk-choice"><legend>{ shop.say("walk.duties") }</legend>
                { for duties.map(|duty| duty_row(ground, *duty)) }
            </fieldset>
        </div>
    }
}

fn switch(ground: &Ground<'_>, set: fn(&mut Worn)) -> Callback<Event> {
    ground.on(move |hand: &mut Hand, _: Event| set(&mut hand.worn))
}

fn radio(
    group: &'static str,
    slug: &'static str,
    name: AttrValue,
    picked: bool,
    onchange: Callback<Event>,
) -> Html {
    html! {
        <label key={slug} class={classes!("unit", picked.then_some("picked"))}>
            <input type="radio" name={group} value={slug} checked={picked} {onchange} />{ icon(Picture::Tick) }<span>{ name }</span>
        </label>
    }
}

fn check(key: &'static str, name: AttrValue, state: AttrValue, on: bool, onchange: Callback<Event>) -> Html {
    html! {
        <label key={key} class={classes!("unit", on.then_some("picked"))}>
            <input type="checkbox" value={key} checked={on} {onchange} />{ icon(Picture::Tick) }<span>{ name }<small>{ state }</small></span>
        </label>
    }
}

fn duty_row(ground: &Ground<'_>, duty: RoomAct) -> Html {
    let on = ground.hand.duties.contains(&duty);
    let set = ground.on(move |hand: &mut Hand, _: Event| {
        if !hand.duties.remove(&duty) {
            hand.duties.insert(duty);
        }
    });
    let name = ground.shop.text(&format!("walk.room.{}", duty.slug()));
    check(duty.slug(), name, standing(ground, duty), on, set)
}

/// How it stands with what a duty is about, as far as it can be seen.
fn standing(ground: &Ground<'_>, duty: RoomAct) -> AttrValue {
    let (shop, room) = (ground.shop, ground.walk.room());
    let say = |is: bool, key: &str| if is { shop.say(key) } else { AttrValue::default() };
    match duty {
        RoomAct::FanOn | RoomAct::FanOff => {
            shop.say(if room.fan { "walk.standing.fan-runs" } else { "walk.standing.fan-still" })
        }
        RoomAct::GaugeRead => say(room.gauge_read, "walk.standing.today"),
        RoomAct::FiltersChanged | RoomAct::MeterRead => AttrValue::default(),
        RoomAct::AirRead => room.air_read.map_or_else(AttrValue::default, |clock| {
            shop.say_with("walk.standing.read-at", &[("time", words::time(moment(clock).hour))])
        }),
        RoomAct::SourcesOut => say(room.sources_out, "walk.standing.today"),
        RoomAct::RagsAway => say(room.rags_about(), "walk.standing.rags"),
        RoomAct::GunCleaned => say(room.gun_dirty(), "walk.standing.gun"),
        RoomAct::WheelChecked => say(room.wheel_checked, "walk.standing.today"),
    }
}

/// What was put on and seen to before, by place, done at one touch.
fn as_before(ground: &Ground<'_>) -> Html {
    let (shop, start) = (ground.shop, ground.walk.start());
    let one = |place: &Place| {
        let decisions = again::ready_as_before(ground.walk, shop.content(), *place);
        let named = [("place", shop.text(&format!("walk.place.{}", place.slug())).to_string())];
        let name = shop.say_with("walk.as-before", &named).to_string();
        let values = once::of_room(shop, start, &decisions);
        let hidden = decisions.is_empty();
        html! { <div key={place.slug()} {hidden}>{ once::offered(ground, "walk.do-now", &name, values, place.slug(), decisions) }</div> }
    };
    html! { <div key="before">{ for Place::ALL.iter().map(one) }</div> }
}

//! One card family as the answers have it: how hard, whether who knows more is right more often, which options are taken, why
//! to look at it, and the rule that decides it.

use super::card_title::card_title;
use super::void::VoidForm;
use super::void_what::{decided_by, of_cards};
use crate::app::parts::{Picture, icon, rules};
use crate::app::route::Route;
use crate::app::state::{SetsContext, Shop};
use crate::card::Answer;
use crate::exchange::crew::Gathered;
use crate::learn::calibration::share_range;
use crate::learn::items::{ASKED_LEAST, FamilyReport, NOT_ENOUGH, OptionUse, RIGHT};
use crate::quantity::PERCENT_A_WHOLE;
use crate::record::{CardKind, Event, Voids};
use crate::rules::term::Term;
use yew::prelude::*;

fn percent(share: f64) -> String {
    format!("{:.0}", share * PERCENT_A_WHOLE)
}

/// What a row needs to know of the sets that are here and of what is void, and who is told before something is voided.
pub(super) struct Voiding<'a> {
    pub(super) sets: &'a SetsContext,
    pub(super) voids: &'a Voids<'a>,
    pub(super) voiding: Callback<()>,
}

pub(super) fn card_row(shop: &Shop, gathered: &Gathered, one: &FamilyReport, voiding: &Voiding<'_>) -> Html {
    let item = &one.item;
    let (right, asked) = (u32::try_from(item.right).unwrap_or(0), u32::try_from(item.asked).unwrap_or(0));
    let (low, high) = share_range(right, asked).unwrap_or((0.0, 1.0));
    let told = [
        ("asked", item.asked.to_string()),
        ("right", item.right.to_string()),
        ("share", percent(item.difficulty)),
        ("low", percent(low)),
        ("high", percent(high)),
    ];
    let void = voiding.voids.of_cards(&one.family, one.version).is_some();
    let look = one.to_look_at();
    let state = match (void, look, one.is_told()) {
        (true, ..) => shop.say("record.void"),
        (_, true, _) => shop.say_with("crew.items.look", &[("n", one.flags.len().to_string())]),
        (_, _, true) => shop.say("crew.items.no-look"),
        _ => shop.say_with("crew.items.too-few", &[("n", ASKED_LEAST.to_string())]),
    };
    let picture = if look && !void { Picture::Caution } else { Picture::Dash };
    let flags = one.flags.iter().map(|flag| {
        html! { <li key={flag.slug()}>{ icon(Picture::Caution) }<span>{ shop.text(&format!("items.{}", flag.slug())) }</span></li> }
    });
    let entry = gathered.find(&one.example).and_then(Event::answer);
    let decided = entry.map(|entry| decided_by(shop, entry)).unwrap_or_default();
    let to = Route::CrewAnswer { device: one.example.device.clone(), sequence: one.example.sequence };
    let choices = of_cards(shop, CardKind { family: one.family.clone(), version: one.version }, &decided);
    html! {
        <li key={format!("{}-{}", one.family, one.version)}>
            <details>
                <summary>
                    { icon(picture) }
                    <span class="words">
                        <b>{ card_title(shop, voiding.sets, &one.family) }</b>
                        <span>{ shop.say_with("crew.items.right", &told) }</span>
                        <span class={if void { "struck-out" } else { "note" }}>{ state }</span>
                    </span>
                </summary>
                <ul class="flags" hidden={!look}>{ for flags }</ul>
                { slips(shop, one) }
                <p class="note" hidden={one.undealt == 0}>{ shop.say_with("crew.items.undealt", &[("n", one.undealt.to_string())]) }</p>
                <div hidden={decided.is_empty()}>{ rules(shop, &decided) }</div>
                <details class="seen figures" hidden={!one.is_told()}>
                    <summary>{ shop.say("crew.items.figures") }</summary>
                    { figures(shop, one) }
                    { options(shop, one) }
                </details>
                <p class="people"><a href={to.address()} class="control">{ shop.say("crew.items.example") }{ icon(Picture::Go) }</a></p>
                <VoidForm id={format!("void-{}-{}", one.family, one.version)} {choices} voiding={voiding.voiding.clone()} />
            </details>
        </li>
    }
}

fn figures(shop: &Shop, one: &FamilyReport) -> Html {
    let two = |value: f64| shop.figure(value, 2);
    let item = &one.item;
    let rest = match (item.with_rest, item.range) {
        (Some(r), Some(range)) => {
            let told = [("r", two(r)), ("from", two(range.from)), ("to", two(range.to))];
            shop.say_with("crew.items.with-rest-range", &told)
        }
        (Some(r), None) => shop.say_with("crew.items.with-rest-few", &[("r", two(r))]),
        (None, _) => shop.say("crew.items.no-spread"),
    };
    let known = one.luck.and_then(|luck| item.known(luck)).map(|known| percent(known.max(0.0)));
    let row = |key: &'static str, value: AttrValue| {
        html! { <tr {key}><th scope="row">{ shop.say(&format!("crew.items.{key}")) }<small>{ shop.say(&format!("crew.items.{key}.why")) }</small></th><td>{ value }</td></tr> }
    };
    html! {
        <div class="paper"><table class="working"><tbody>
            { row("with-rest", rest) }
            { row("upper-lower", AttrValue::from(two(item.upper_less_lower))) }
            { for known.map(|known| row("known", shop.say_with("crew.items.percent", &[("share", known)]))) }
            { row("sure", AttrValue::from(one.sure_and_wrong.to_string())) }
        </tbody></table></div>
    }
}

fn options(shop: &Shop, one: &FamilyReport) -> Html {
    let name = |option: &str| match option {
        RIGHT => shop.say("crew.items.option-right"),
        NOT_ENOUGH => shop.say("card.not-enough"),
        slug => {
            let answer = serde_json::from_str(slug).unwrap_or_else(|_| Answer::term(slug));
            AttrValue::from(shop.voice().answer(&one.family, &answer))
        }
    };
    let row = |option: &OptionUse| {
        let rest =
            option.with_rest.map_or_else(|| shop.say("crew.items.none").to_string(), |r| shop.figure(r, 2));
        html! {
            <tr key={option.option.clone()}><th scope="row">{ name(&option.option) }</th><td>{ option.offered }</td><td>{ option.chosen }</td>
                <td>{ format!("{}/{}", option.upper, option.upper_of) }</td><td>{ option.lower }</td><td>{ rest }</td></tr>
        }
    };
    let head = ["option", "offered", "chosen", "upper", "lower", "rest"].map(
        |key| html! { <th key={key} scope="col">{ shop.say(&format!("crew.items.options.{key}")) }</th> },
    );
    html! {
        <div class="paper scroll" tabindex="0" role="region" aria-label={shop.say("crew.items.options")} hidden={one.options.is_empty()}>
            <h3>{ shop.say("crew.items.options") }</h3>
            <table class="working counts"><thead><tr>{ for head }</tr></thead><tbody>{ for one.options.iter().map(row) }</tbody></table>
        </div>
    }
}

fn slips(shop: &Shop, one: &FamilyReport) -> Html {
    let row = |(slip, n): (&String, &usize)| {
        html! { <li key={slip.clone()}><span class="words">{ shop.text(&format!("slip.{slip}")) }</span><span>{ shop.say_with("crew.items.times", &[("n", n.to_string())]) }</span></li> }
    };
    html! {
        <div hidden={one.slips.is_empty()}><h3>{ shop.say("crew.items.slips") }</h3><ul class="rows">{ for one.slips.iter().map(row) }</ul></div>
    }
}

//! What the answers say of the cards: which to look at first, all kinds, and what was found wrong.

use super::card_row::{Voiding, card_row};
use super::export::save_cards;
use super::practised::practised_section;
use super::report::{shown, use_report};
use super::set_figures::set_figures;
use super::void_what::known_voidings;
use super::voidings::Voidings;
use crate::app::hooks::{use_book, use_crew, use_sets};
use crate::app::parts::{Frame, Picture, icon};
use crate::app::route::Route;
use crate::app::state::{ContentContext, use_shop};
use crate::learn::items::{FamilyReport, Report};
use crate::record::Voids;
use std::rc::Rc;
use yew::prelude::*;

/// Rows that are shown before more are asked for.
const FIRST: usize = 20;

#[component]
pub(in crate::app) fn CrewCards() -> Html {
    let shop = use_shop();
    let (books, crew, known_sets) = (use_book(), use_crew(), use_sets());
    use_effect_with(crew.load.clone(), |load| load.emit(()));
    let told = use_report(crew.view.clone(), crew.content.clone());
    // The report as it was when the first thing was voided: nothing moves under the finger.
    let before = use_state(|| None::<Rc<Report>>);
    let all = use_state(|| false);
    let more = {
        let all = all.clone();
        Callback::from(move |_: MouseEvent| all.set(!*all))
    };
    let save = {
        let (shop, sets, told) = (shop.clone(), known_sets.clone(), told.clone());
        Callback::from(move |_: MouseEvent| {
            if let Some(told) = &told {
                save_cards(&shop, &sets, &told.report);
            }
        })
    };
    let voiding = {
        let (told, before) = (told.clone(), before.clone());
        Callback::from(move |()| {
            if let (Some(told), None) = (&told, &*before) {
                before.set(Some(Rc::new(told.report.clone())));
            }
        })
    };
    let known = shop.on(crew.content.clone());
    let voidings = known_voidings(&books, &crew);
    let voiding = Voiding { sets: &known_sets, voids: &Voids::of(&voidings), voiding };
    let body = match (&told, &crew.gathered) {
        (Some(told), Some(gathered)) => {
            let report = shown(before.as_deref(), &told.report);
            let (first, rest): (Vec<&FamilyReport>, Vec<&FamilyReport>) =
                report.families.iter().partition(|one| one.to_look_at());
            let row = |one: &&FamilyReport| card_row(&known, gathered, one, &voiding);
            let listed = if *all { rest.len() } else { FIRST };
            let counts = [
                ("counted", report.counted.to_string()),
                ("answers", report.answers.to_string()),
                ("people", report.people.len().to_string()),
            ];
            html! {
                <div key="report" class="contents">
                    <p key="counts" class="lead">{ shop.say_with("crew.items.counts", &counts) }</p>
                    <p key="few" class="note">{ shop.say("crew.items.few") }</p>
                    <section key="first" hidden={report.families.is_empty()}>
                        <h2>{ shop.say("crew.items.first") }</h2>
                        <p key="none" class="note" hidden={!first.is_empty()}>{ shop.say("crew.items.none-first") }</p>
                        <ul key="rows" class="rows item-rows" hidden={first.is_empty()}>{ for first.iter().map(row) }</ul>
                    </section>
                    <section key="families" hidden={rest.is_empty()}>
                        <h2>{ shop.say("crew.items.families") }</h2>
                        <ul class="rows item-rows">{ for rest.iter().take(listed).map(row) }</ul>
                        <p class="people">
                            <button type="button" class="control" hidden={rest.len() <= FIRST} aria-expanded={(*all).to_string()} onclick={more}>
                                { if *all { shop.say("crew.fewer") } else { shop.say_with("crew.all", &[("n", rest.len().to_string())]) } }
                            </button>
                            <button type="button" class="control" onclick={save}>{ icon(Picture::Save) }{ shop.say("crew.csv") }</button>
                        </p>
                    </section>
                    { practised_section(&known, &known_sets, &told.practised, voiding.voids) }
                    { set_figures(&shop, &known_sets, &report.sets, &voiding) }
                    <Voidings key="voidings" />
                </div>
            }
        }
        _ => html! { <p key="working" class="lead" role="status">{ shop.say("crew.items.working") }</p> },
    };
    html! {
        <Frame class="sheet crew" title={shop.say("crew.cards")} back={Some(Route::Crew)} cautions={shop.cautions_for(&[])}>
            <ContextProvider<ContentContext> context={crew.content.clone()}>{ body }</ContextProvider<ContentContext>>
        </Frame>
    }
}

//! The screen on which worksheets and their keys are looked at and printed.

use super::super::sets::kept_back;
use super::key::key;
use super::nameless::{Nameless, any_first, nameless};
use super::whom::{names, whom, worksheets};
use super::worksheet::worksheet;
use super::{OnPaper, Worksheet};
use crate::app::hooks::use_people;
use crate::app::parts::{Frame, Picture, icon, paper};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::card::scene;
use crate::exchange::set::{SetCard, is_all_sprayed};
use crate::rules::term::Term;
use crate::terms;
use std::rc::Rc;
use yew::prelude::*;

terms! {
    /// What is printed of a set. Text: `app.worksheet.print.<slug>`.
    Printed {
        /// The worksheets.
        Worksheets = "worksheets",
        /// Their keys.
        Keys = "keys",
        /// Both.
        Both = "both",
    }
}

#[derive(Properties, PartialEq)]
pub(in crate::app) struct SetPaperProps {
    pub(in crate::app) id: String,
}

#[component]
pub(in crate::app) fn SetPaper(props: &SetPaperProps) -> Html {
    let shop = use_shop();
    let crew = use_people().crew;
    let (set, answers) = super::use_set(&props.id);
    let lines = use_state(String::new);
    let picked = use_state(|| Printed::Worksheets);
    let printed = *picked;
    let on = use_memo((shop.clone(), props.id.clone(), set), |(shop, id, set)| {
        set.as_ref().and_then(|set| OnPaper::of(shop, id, set))
    });
    let copies = Nameless { typed: use_state(|| None), first: use_state(any_first) };
    let named = !names(&lines).is_empty();
    let same = on.as_ref().as_ref().is_some_and(|on| on.set.task.same_seed.is_some());
    // Where everybody gets the same cards, one worksheet is copied for all.
    let count = if same { usize::from(!named) } else { copies.count(named).unwrap_or_default() };
    // Where everybody gets the same cards a code tells nobody apart, and stays.
    let from = if same { 0 } else { *copies.first };
    let asked = (props.id.clone(), (*lines).clone(), Rc::clone(&crew), count, from);
    let sheets = use_memo(asked, |(id, lines, crew, count, from)| worksheets(id, lines, crew, *count, *from));
    let Some(on) = (*on).clone() else { return super::gone(&shop, &props.id) };
    if answers.are_kept_back() {
        return html! {
            <Frame class="sheet set-paper" title={shop.say("worksheet.title")} back={Some(super::back(&props.id))} cautions={shop.cautions_for(&[])}>
                { kept_back(&shop, answers) }
            </Frame>
        };
    }
    if is_all_sprayed(&on.set, shop.content()) {
        return html! {
            <Frame class="sheet set-paper" title={shop.say("worksheet.title")} back={Some(super::back(&props.id))} cautions={shop.cautions_for(&[])}>
                <p class="kraft" role="status">{ shop.say("worksheet.all-sprayed") }</p>
            </Frame>
        };
    }
    let choice = |one: &Printed| {
        let (one, set) = (*one, picked.setter());
        let picked = printed == one;
        let onchange = Callback::from(move |_: Event| set.set(one));
        html! {
            <label key={one.slug()} class={classes!("unit", picked.then_some("picked"))}>
                <input type="radio" name="printed" checked={picked} {onchange} />
                { icon(Picture::Tick) }<span>{ shop.say(&format!("worksheet.print.{}", one.slug())) }</span>
            </label>
        }
    };
    let sprayed = on.set.task.families_of(shop.content()).iter().any(|family| family.is_sprayed());
    // Drawn anew as a whole when anything changes, so that its pictures are counted from the first.
    let codes = sheets.iter().map(|sheet| sheet.code.to_string()).collect::<Vec<_>>().join(" ");
    let name = format!("{}/{codes}", printed.slug());
    html! {
        <Frame class="sheet set-paper" title={shop.say("worksheet.title")} back={Some(super::back(&props.id))} cautions={shop.cautions_for(&[])}>
            <div key="choices" class="not-on-paper form">
                <p class="lead">{ shop.say("worksheet.lead") }</p>
                <p key="sprayed" class="kraft" hidden={!sprayed}>{ shop.say("worksheet.not-on-paper") }</p>
                { whom(&shop, &lines, &crew, count) }
                { nameless(&shop, &on, &copies, named) }
                <fieldset key="what" class="setting">
                    <legend>{ shop.say("worksheet.what") }</legend>
                    <div class="segments">{ for Printed::ALL.iter().map(choice) }</div>
                </fieldset>
                { kept_back(&shop, answers) }
                <p key="enter" class="how"><a href={Route::PaperEnter { id: props.id.clone() }.address()} class="text-link">{ shop.say("worksheet.to-enter") }{ icon(Picture::Go) }</a></p>
            </div>
            <Preview key={name} {on} {sheets} {printed} />
        </Frame>
    }
}

#[derive(Properties, PartialEq)]
struct PreviewProps {
    on: OnPaper,
    sheets: Rc<Vec<Worksheet>>,
    printed: Printed,
}

#[component]
fn Preview(props: &PreviewProps) -> Html {
    let shop = use_shop();
    let (on, sheets) = (&props.on, &props.sheets);
    let drawn = use_reducer(Drawn::default);
    let on_drawn = {
        let drawn = drawn.dispatcher();
        Callback::from(move |()| drawn.dispatch(()))
    };
    let (answer, check) = (props.printed != Printed::Keys, props.printed != Printed::Worksheets);
    let asked = (shop.clone(), on.clone(), Rc::clone(sheets), answer);
    let pictures =
        use_memo(
            asked,
            |(shop, on, sheets, answer)| {
                if *answer { sheets.iter().map(|sheet| pictures(shop, on, sheet)).sum() } else { 0 }
            },
        );
    let papers = use_memo((shop.clone(), on.clone(), Rc::clone(sheets)), |(shop, on, sheets)| {
        let worksheets = sheets.iter().filter(|_| answer).map(|sheet| worksheet(shop, on, sheet, &on_drawn));
        let keys = sheets.iter().filter(|_| check).map(|sheet| key(shop, on, sheet));
        html! { <div class="papers-of-set">{ for worksheets.chain(keys) }</div> }
    });
    let ready = drawn.0 >= *pictures;
    let said = [("done", drawn.0.to_string()), ("of", pictures.to_string())];
    let said = if ready { shop.say("worksheet.ready") } else { shop.say_with("worksheet.drawing", &said) };
    html! {
        <>
            <div key="go" class="not-on-paper to-print">
                <p role="status">{ said }</p>
                <span hidden={!ready}>{ paper::print_button(&shop) }</span>
            </div>
            { (*papers).clone() }
        </>
    }
}

/// How many pictures are drawn.
#[derive(Default)]
struct Drawn(usize);

impl Reducible for Drawn {
    type Action = ();

    fn reduce(self: Rc<Self>, (): ()) -> Rc<Self> {
        Rc::new(Self(self.0 + 1))
    }
}

/// How many pictures a worksheet has.
fn pictures(shop: &Shop, on: &OnPaper, sheet: &Worksheet) -> usize {
    let of = |card: &SetCard<'_>| match card {
        SetCard::Computed(card) => scene::panels(card, shop.content()).len(),
        SetCard::Own(..) => 0,
    };
    on.cards(shop, &sheet.code).iter().map(of).sum()
}

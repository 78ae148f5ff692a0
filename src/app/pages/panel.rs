//! A panel to be looked at: a wood, how far its finish has come, a fault, and how much of it.

use crate::app::parts::{Frame, Panel as Bench, Place, Seen, Shown, Tried};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::card::scene;
use crate::content::{Content, View};
use crate::picture::{Fault, Finish, Recipe, Severity};
use crate::rules::term::Term;
use wasm_bindgen::JsCast;
use web_sys::HtmlSelectElement;
use yew::prelude::*;

/// What is looked at.
#[derive(Debug, Clone, PartialEq)]
struct Chosen {
    look: String,
    dress: String,
    finish: Finish,
    fault: Option<Fault>,
    severity: Severity,
    piece: u32,
}

impl Chosen {
    /// The first fault that is shown, as it is shown.
    fn first(shop: &Shop) -> Self {
        let content = shop.content();
        let bare = Self {
            look: content.looks.first().map(|look| look.slug.clone()).unwrap_or_default(),
            dress: content.dresses.first().map(|dress| dress.slug.clone()).unwrap_or_default(),
            finish: Finish::Cleared,
            fault: None,
            severity: Severity::Plain,
            piece: 1,
        };
        bare.with(shop, Fault::ALL.first().copied())
    }

    /// The same panel with another fault, changed where it would not show on it.
    fn with(&self, shop: &Shop, fault: Option<Fault>) -> Self {
        let mut next = Self { fault, ..self.clone() };
        if let Some(shown) = fault.and_then(|fault| shop.content().panel(fault.slug())) {
            if let (false, Some(first)) = (shown.finishes.contains(&next.finish), shown.finishes.first()) {
                next.finish = *first;
            }
            for (now, fits) in [(&mut next.look, &shown.looks), (&mut next.dress, &shown.dresses)] {
                if let (false, Some(first)) = (fits.contains(now), fits.first()) {
                    now.clone_from(first);
                }
            }
        }
        next
    }

    fn recipe(&self, content: &Content) -> Option<Recipe> {
        let (look, dress) = (content.look(&self.look)?, content.dress(&self.dress)?);
        let mut recipe = dress.on(&look.species, self.finish, self.piece);
        if self.finish < Finish::Coloured {
            // Colour comes after the sealer.
            (recipe.amber, recipe.opaque, recipe.shaded) = (0.0, None, false);
        }
        recipe.fault = self.fault.map(|fault| (fault, self.severity));
        Some(recipe)
    }
}

#[component]
pub(in crate::app) fn Panel() -> Html {
    let shop = use_shop();
    let chosen = use_state_eq(|| Chosen::first(&shop));
    let place = use_state_eq(|| None::<Place>);
    let on_place = use_callback((), {
        let set = place.setter();
        move |place, ()| set.set(Some(place))
    });
    let words = use_callback((shop.clone(), chosen.fault), |seen, (shop, fault)| told(shop, *fault, seen));
    let moved_on = use_state_eq(AttrValue::default);
    let choose = {
        let (set, place, moved_on) = (chosen.clone(), place.setter(), moved_on.setter());
        let shop = shop.clone();
        Callback::from(move |next: Chosen| {
            moved_on.set(moved_on_to(&shop, &set, &next));
            set.set(next);
            place.set(None);
        })
    };
    let view = use_state_eq(|| None::<View>);
    let cautions = shop.cautions_for(&[]);
    let Some(mut recipe) = chosen.recipe(shop.content()) else {
        return html! { <Frame class="sheet" title={shop.say("panel.title")} back={Some(Route::Bench)} {cautions}><p></p></Frame> };
    };
    recipe.probe = view.map(View::probe).unwrap_or_default();
    let tried = view.map(|view| Tried { test: view.slug().into(), view: Some(view) });
    let below = tests(&shop, &chosen, &view);
    let note = shop.say_with("panel.piece", &[("n", chosen.piece.to_string())]);
    let at = match *place {
        None => shop.say("panel.no-place"),
        Some(Place { x, y }) => {
            shop.say_with("panel.at", &[("x", x.round().to_string()), ("y", y.round().to_string())])
        }
    };
    let faces = vec![Shown { recipe, alt: alt(&shop, &chosen), name: AttrValue::default() }];
    html! {
        <Frame class="panel-page" title={shop.say("panel.title")} {note} back={Some(Route::Bench)} {cautions}>
            <Bench key="bench" {faces} {words} place={*place} {on_place} {tried} {below} />
            <section key="choice" class="ticket form">
                <span class="hole" aria-hidden="true"></span>
                { choices(&shop, &chosen, &choose) }
                <p key="moved-on" class="note" role="status">{ &*moved_on }</p>
                <p key="at" class="note" role="status">{ at }</p>
            </section>
        </Frame>
    }
}

/// What a fault that was chosen has changed beside itself, in words; nothing where it stands on the panel as it was.
fn moved_on_to(shop: &Shop, now: &Chosen, next: &Chosen) -> AttrValue {
    let changes = [
        (now.look != next.look, "wood"),
        (now.finish != next.finish, "finish"),
        (now.dress != next.dress, "colour"),
    ];
    let names: Vec<String> = changes
        .into_iter()
        .filter(|(changed, _)| *changed)
        .map(|(_, name)| shop.say(&format!("panel.{name}")).to_string())
        .collect();
    let fault = next.fault.filter(|fault| now.fault != Some(*fault) && !names.is_empty());
    let Some(fault) = fault else { return AttrValue::default() };
    let named = [("changed", names.join(", ")), ("fault", shop.voice().term("", fault.slug()))];
    shop.say_with("panel.moved-on", &named)
}

/// What can be done to the panel to see better, and what comes of it by the rules.
fn tests(shop: &Shop, chosen: &Chosen, view: &UseStateHandle<Option<View>>) -> Html {
    let one = |at: &View| {
        let (at, on) = (*at, **view == Some(*at));
        let set = view.setter();
        let onclick = Callback::from(move |_: MouseEvent| set.set(Some(at).filter(|_| !on)));
        html! {
            <button key={at.slug()} type="button" class={classes!("control", on.then_some("picked"))} aria-pressed={on.to_string()} {onclick}>
                { shop.say(&format!("panel.view.{}", at.slug())) }
            </button>
        }
    };
    let said = view.map(|view| shown(shop, chosen.fault, view)).unwrap_or_default();
    html! {
        <div key="tests" class="panel-views" role="group" aria-label={shop.say("card.tests")}>
            { for View::ALL.iter().map(one) }
            <p class="note" aria-live="polite">{ said }</p>
        </div>
    }
}

/// What the tests that are seen that way show of a fault, in words.
fn shown(shop: &Shop, fault: Option<Fault>, view: View) -> AttrValue {
    let voice = shop.voice();
    let fault = fault.and_then(|fault| shop.content().fault(fault.slug()));
    let seen = shop.content().facts.iter().filter(|fact| fact.view == Some(view)).filter_map(|fact| {
        let answers = fault?.seen.get(&fact.key)?;
        let answers: Vec<String> = answers.iter().map(|answer| voice.term("", answer)).collect();
        Some(format!("{}: {}.", voice.fact_name(&fact.key), answers.join(" / ")))
    });
    let seen: Vec<String> = seen.collect();
    if seen.is_empty() { shop.text("answer.tells-nothing") } else { seen.join(" ").into() }
}

/// The fields of the ticket.
fn choices(shop: &Shop, chosen: &Chosen, choose: &Callback<Chosen>) -> Html {
    let say = |word: &str| shop.say(&format!("panel.{word}"));
    let now = || chosen.clone();
    let woods = shop.content().looks.iter().map(|look| {
        (look_name(shop, &look.slug), look.slug == chosen.look, Chosen { look: look.slug.clone(), ..now() })
    });
    let finishes =
        Finish::ALL.map(|finish| (say(finish.slug()), finish == chosen.finish, Chosen { finish, ..now() }));
    let dresses = shop.content().dresses.iter().map(|dress| {
        let name = shop.voice().term("", &dress.slug).into();
        (name, dress.slug == chosen.dress, Chosen { dress: dress.slug.clone(), ..now() })
    });
    let none = (say("no-fault"), chosen.fault.is_none(), chosen.with(shop, None));
    let faults = Fault::ALL.iter().map(|fault| {
        let name = shop.voice().term("", fault.slug()).into();
        (name, chosen.fault == Some(*fault), chosen.with(shop, Some(*fault)))
    });
    let severities = Severity::ALL
        .map(|severity| (say(severity.slug()), severity == chosen.severity, Chosen { severity, ..now() }));
    let next = Chosen { piece: chosen.piece % PIECES + 1, ..now() };
    let another = choose.reform(move |_: MouseEvent| next.clone());
    html! {
        <>
            { field(say("wood"), "panel-wood", woods.collect(), choose) }
            { field(say("finish"), "panel-finish", finishes.to_vec(), choose) }
            { field(say("colour"), "panel-colour", dresses.collect(), choose) }
            { field(say("fault"), "panel-fault", std::iter::once(none).chain(faults).collect(), choose) }
            { field(say("severity"), "panel-severity", severities.to_vec(), choose) }
            <button key="another" type="button" class="control" onclick={another}>{ say("another") }</button>
        </>
    }
}

/// Pieces that are offered, one after the other.
const PIECES: u32 = 99;

/// One thing to choose by its name, whether it is chosen, and what it leads to.
type Choice = (AttrValue, bool, Chosen);

fn field(label: AttrValue, id: &'static str, choices: Vec<Choice>, choose: &Callback<Chosen>) -> Html {
    let option = |(number, (name, selected, _)): (usize, &Choice)| {
        html! { <option key={number} value={number.to_string()} selected={*selected}>{ name }</option> }
    };
    let options: Vec<Html> = choices.iter().enumerate().map(option).collect();
    let choose = choose.clone();
    let onchange = Callback::from(move |event: Event| {
        let select = event.target().and_then(|target| target.dyn_into::<HtmlSelectElement>().ok());
        let number = select.and_then(|select| usize::try_from(select.selected_index()).ok());
        if let Some((_, _, next)) = number.and_then(|number| choices.get(number)) {
            choose.emit(next.clone());
        }
    });
    html! {
        <p key={id} class="field"><label for={id}>{ label }</label><select {id} {onchange}>{ for options }</select></p>
    }
}

/// A look by name: its own where the wood has several, else the wood's.
fn look_name(shop: &Shop, slug: &str) -> AttrValue {
    let own = format!("app.panel.look.{slug}");
    let wood = shop.content().look(slug).map(|look| shop.voice().term("", &look.wood)).unwrap_or_default();
    match shop.texts().find(&own) {
        Some(name) => name.to_owned().into(),
        None => wood.into(),
    }
}

/// The whole picture in a sentence.
fn alt(shop: &Shop, chosen: &Chosen) -> AttrValue {
    let seen = match chosen.fault {
        Some(fault) => shop.text(&format!("fault.{}.looks", fault.slug())),
        None => shop.say("panel.sound"),
    };
    let named = [
        ("wood", look_name(shop, &chosen.look).to_string()),
        ("finish", shop.say(&format!("panel.{}", chosen.finish.slug())).to_lowercase()),
        ("seen", seen.to_string()),
    ];
    shop.say_with("panel.alt", &named)
}

/// A cell in words, without the fault's name.
fn told(shop: &Shop, fault: Option<Fault>, seen: Seen) -> AttrValue {
    match fault.filter(|_| scene::is_told(seen.share)) {
        Some(fault) => shop.text(&format!("fault.{}.looks", fault.slug())),
        None => shop.say("panel.nothing"),
    }
}

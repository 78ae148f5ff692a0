//! People by competencies, at a glance: a sign and a word in each field.

use crate::app::parts::{Field, Picture, icon, typed_into};
use crate::app::route::Route;
use crate::app::state::{CrewView, Shared, Shop, use_shop};
use crate::device::clock;
use crate::exchange::crew::{Cell, Glance, Stands};
use crate::rules::term::Term;
use yew::prelude::*;

/// Rows on a page: more are not seen at once on most tablets, and drawing them takes time.
const ROWS: usize = 12;

#[derive(Properties, PartialEq)]
pub(super) struct GridProps {
    pub(super) view: Shared<CrewView>,
}

#[component]
pub(super) fn Grid(props: &GridProps) -> Html {
    let shop = use_shop();
    let (page, name) = (use_state(|| 0_usize), use_state(String::new));
    let sought = name.trim().to_lowercase();
    let fits = |one: &&Glance| {
        let number = one.number.as_deref().unwrap_or_default();
        one.name.to_lowercase().contains(&sought) || number.contains(&sought)
    };
    let found: Vec<&Glance> = props.view.glances.iter().filter(fits).collect();
    let pages = found.len().div_ceil(ROWS).max(1);
    let at = (*page).min(pages - 1);
    let turn = |to: usize| {
        let set = page.setter();
        Callback::from(move |_: MouseEvent| set.set(to))
    };
    let (first, last) = (at * ROWS + 1, ((at + 1) * ROWS).min(found.len()));
    let shown = [("first", first.to_string()), ("last", last.to_string()), ("n", found.len().to_string())];
    let competencies = &shop.content().competencies;
    let words = |stands: &Stands| shop.say(&format!("crew.stands.{}", stands.slug()));
    let words: Vec<AttrValue> = Stands::ALL.iter().map(words).collect();
    let head = |slug: &String| html! { <th key={slug.clone()} scope="col"><span>{ shop.text(&format!("competency.{slug}")) }</span></th> };
    html! {
        <div class="crew-grid">
            <div key="seek" class="seek" hidden={props.view.people.len() <= ROWS}>
                <Field id="seek" label={shop.say("crew.seek")} value={(*name).clone()} on_input={typed_into(&name)} />
            </div>
            <div key="table" class="grid-scroll" tabindex="0" role="region" aria-label={shop.say("crew.grid")}>
                <table class="glances">
                    <thead><tr><th scope="col" class="who">{ shop.say("crew.person") }</th>{ for competencies.iter().map(|one| head(&one.slug)) }</tr></thead>
                    <tbody>{ for found.iter().skip(at * ROWS).take(ROWS).map(|one| row(&shop, one, &words)) }</tbody>
                </table>
            </div>
            <ul key="legend" class="legend" aria-label={shop.say("crew.legend")}>{ for Stands::ALL.iter().map(|stands| legend(&shop, *stands)) }</ul>
            <div key="pages" class="people pages" hidden={pages < 2}>
                <button type="button" class="control" disabled={at == 0} onclick={turn(at.saturating_sub(1))}>{ icon(Picture::Back) }{ shop.say("crew.before") }</button>
                <span role="status">{ shop.say_with("crew.page", &shown) }</span>
                <button type="button" class="control" disabled={at + 1 >= pages} onclick={turn(at + 1)}>{ shop.say("crew.after") }{ icon(Picture::Go) }</button>
            </div>
        </div>
    }
}

/// The sign of a standing; its outline alone tells it from the others.
pub(super) const fn picture(stands: Stands) -> Picture {
    match stands {
        Stands::Held => Picture::Tick,
        Stands::Soon => Picture::Caution,
        Stands::Sufficient => Picture::Check,
        Stands::Blocked => Picture::Cross,
        Stands::Going => Picture::Pencil,
        Stands::Ended => Picture::NotEnough,
        Stands::Practised => Picture::Bench,
        Stands::Nothing => Picture::Dash,
    }
}

fn legend(shop: &Shop, stands: Stands) -> Html {
    let slug = stands.slug();
    html! {
        <li key={slug} class={slug}>{ icon(picture(stands)) }<b>{ shop.say(&format!("crew.stands.{slug}")) }</b><span>{ shop.say(&format!("crew.stands.{slug}.why")) }</span></li>
    }
}

/// `words` are those of each standing, in their order.
fn row(shop: &Shop, one: &Glance, words: &[AttrValue]) -> Html {
    let to = Route::CrewPerson { key: one.key.clone() };
    html! {
        <tr key={one.key.clone()}>
            <th scope="row" class="who"><a href={to.address()}>{ name_of(shop, &one.name) }<small>{ one.number.clone().unwrap_or_default() }</small></a></th>
            { for one.cells.iter().map(|cell| field(cell, words)) }
        </tr>
    }
}

/// Whose name it is; answers may stand under none.
pub(super) fn name_of(shop: &Shop, name: &str) -> AttrValue {
    if name.is_empty() { shop.say("crew.nameless") } else { AttrValue::from(name.to_owned()) }
}

fn field(cell: &Cell, words: &[AttrValue]) -> Html {
    let slug = cell.stands.slug();
    let word = words.get(cell.stands as usize).cloned().unwrap_or_default();
    let more = match (cell.stands, cell.until) {
        (Stands::Held | Stands::Soon | Stands::Ended, Some(until)) => clock::local_day(until),
        (Stands::Going, _) => format!("{}/{}", cell.right, cell.answers),
        _ => String::new(),
    };
    html! {
        <td key={cell.competency.clone()} class={slug}>{ icon(picture(cell.stands)) }<span>{ word }</span>if !more.is_empty() {<small>{ more }</small>}</td>
    }
}

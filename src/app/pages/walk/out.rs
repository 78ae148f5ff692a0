//! A walk of this tablet handed out: what the file tells, and the ways to hand it out.

use super::about::about;
use crate::app::hooks::{use_people, use_sheets, use_walks};
use crate::app::parts::{Frame, HandOut};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::device::clock;
use crate::exchange::{Named, Refused, WALK, WalkFile, save_name};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct WalkOutProps {
    pub(in crate::app) id: String,
}

#[component]
pub(in crate::app) fn WalkOut(props: &WalkOutProps) -> Html {
    let shop = use_shop();
    let walks = use_walks();
    let crew = use_people().crew;
    let editions = use_sheets().editions;
    let kept = walks.find(&props.id).cloned();
    // What is handed out is what is stored: another window may have gone on.
    let reread = use_state(|| false);
    use_effect_with((), {
        let (read, reread) = (walks.reread.clone(), reread.setter());
        move |()| read.emit(Callback::from(move |()| reread.set(true)))
    });
    let made =
        use_memo((shop.clone(), kept, crew, editions, *reread), |(shop, kept, crew, editions, reread)| {
            let kept = kept.as_deref().filter(|_| *reread)?;
            let typed =
                || Named { journal: kept.person.clone(), number: String::new(), name: kept.person.clone() };
            let who = crew.of_journal(&kept.person).map_or_else(typed, Named::from);
            Some(WalkFile::of(kept, who, &clock::now(), editions, shop.content()))
        });
    let inside = match made.as_ref() {
        None => {
            let key = if walks.loaded && *reread { "walk.gone" } else { "walk.loading" };
            html! { <p key="gone" class="lead" role="status">{ shop.say(key) }</p> }
        }
        Some(Err(refused)) => not_made(&shop, refused),
        Some(Ok(file)) => handed(&shop, file),
    };
    let back = Route::WalkOf { id: props.id.clone() };
    html! {
        <Frame class="sheet" title={shop.say("walk-file.out")} back={Some(back)} cautions={shop.cautions_for(&[])}>
            { inside }
        </Frame>
    }
}

fn handed(shop: &Shop, file: &WalkFile) -> Html {
    let Ok(text) = file.write() else { return Html::default() };
    let title = shop.text(&format!("walk.name.{}", file.walk));
    let name = save_name(WALK.format, &format!("{title} {}", file.who.name), clock::today(), "json");
    html! {
        <>
            <section key="what" class="paper opened">
                { about(shop, file) }
                <p class="note">{ shop.say("walk-file.out-why") }</p>
            </section>
            <HandOut key="out" {name} {text} {title} />
        </>
    }
}

fn not_made(shop: &Shop, refused: &Refused) -> Html {
    html! {
        <div key="refused" class="kraft" role="alert">
            <p>{ shop.refused(refused) }</p>
            <p>{ shop.say("walk.refused-now") }</p>
        </div>
    }
}

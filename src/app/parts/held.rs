//! How somebody stands in competencies, by the sign-off book.

use super::{Picture, icon, refusals};
use crate::app::route::Route;
use crate::app::state::Shop;
use crate::device::clock;
use crate::record::LocalDate;
use crate::signoff::{Book, Credential, SOON_DAYS, ShopNumber, Standing, When};
use yew::prelude::*;

/// In one competency, in words with a sign.
pub(in crate::app) fn standing(shop: &Shop, standing: &Standing<'_>, now: &When) -> Html {
    let until = |one: &Credential| [("until", clock::day(&one.until))];
    let (class, picture, said) = match standing {
        Standing::Never => return Html::default(),
        Standing::Held(one) if soon(one, now) => {
            ("wrong", Picture::Caution, shop.say_with("standing.runs-out", &until(one)))
        }
        Standing::Held(one) => ("ok", Picture::Tick, shop.say_with("standing.held", &until(one))),
        Standing::Expired(one) => ("wrong", Picture::Dash, shop.say_with("standing.expired", &until(one))),
        Standing::Withdrawn(_, withdrawal) => {
            let named = [("at", clock::day(&withdrawal.at)), ("reason", withdrawal.reason.clone())];
            ("wrong", Picture::Cross, shop.say_with("standing.withdrawn", &named))
        }
        Standing::Refused(..) => ("wrong", Picture::Cross, shop.say("standing.refused")),
    };
    let why =
        if let Standing::Refused(_, reasons) = standing { refusals(shop, reasons) } else { Html::default() };
    html! {
        <div class="how-it-stands">
            <span key="word" class={classes!("standing", class)}>{ icon(picture) }<span>{ said }</span></span>
            { why }
        </div>
    }
}

fn soon(one: &Credential, now: &When) -> bool {
    let days = one.until.date().zip(now.date()).map(|(end, day)| left(end, day));
    days.is_some_and(|days| days <= SOON_DAYS)
}

fn left(end: LocalDate, day: LocalDate) -> i32 {
    end.number() - day.number()
}

/// In all competencies in which something was ever signed; nothing where nothing was. With links to the sign-offs where the
/// reader keeps the book.
pub(in crate::app) fn held(
    shop: &Shop,
    book: &Book,
    number: &ShopNumber,
    now: &When,
    links: bool,
) -> Option<Html> {
    let all = shop.content().shipped();
    let row = |slug: &String| {
        let stands = book.standing(number, slug, all, now);
        let one = match &stands {
            Standing::Never => return None,
            Standing::Held(one)
            | Standing::Expired(one)
            | Standing::Withdrawn(one, _)
            | Standing::Refused(one, _) => one,
        };
        let words = html! {
            <span class="words"><b>{ &one.achievement.name }</b>{ standing(shop, &stands, now) }</span>
        };
        let to = Route::sign_off(&one.id);
        Some(html! {
            <li key={slug.clone()}>
                { if links { html! { <a href={to.address()} class="row-link">{ words }{ icon(Picture::Go) }</a> } } else { words } }
            </li>
        })
    };
    // Those that the content no longer knows stand in the book alone.
    let rows: Vec<Html> = all.iter().filter_map(|one| row(&one.slug)).collect();
    (!rows.is_empty())
        .then(|| html! { <ul class={classes!("rows", links.then_some("links"))}>{ for rows }</ul> })
}

//! What came of a file of results.

use crate::app::parts::{Picture, icon};
use crate::app::state::{Came, NotIn, Shop};
use yew::prelude::*;

/// A row that says it; `nth` keeps it apart from others.
pub(in crate::app) fn came(shop: &Shop, nth: usize, one: &Came) -> Html {
    let (picture, class, said) = match &one.what {
        Ok(added) if added.events == 0 => (Picture::Tick, "", shop.say("crew.came.nothing-new")),
        Ok(added) => {
            let told = [
                ("n", added.answers.to_string()),
                ("others", added.events.saturating_sub(added.answers).to_string()),
                ("known", added.known.to_string()),
            ];
            (Picture::Tick, "", shop.say_with("crew.came.added", &told))
        }
        Err(NotIn::Unread) => (Picture::Cross, "wrong", shop.say("crew.came.unread")),
        Err(NotIn::NotStored) => (Picture::Cross, "wrong", shop.say("crew.came.not-stored")),
        Err(NotIn::Clash(clash)) => {
            let told = [("device", clash.device.clone()), ("n", clash.sequence.to_string())];
            (Picture::Cross, "wrong", shop.say_with("crew.came.clash", &told))
        }
        Err(NotIn::Refused(refused)) => {
            let why = shop.refused(refused);
            (Picture::Cross, "wrong", shop.say_with("crew.came.refused", &[("why", why.to_string())]))
        }
    };
    html! {
        <li key={nth} {class}>{ icon(picture) }<span class="words"><b>{ &one.name }</b><span>{ said }</span></span></li>
    }
}

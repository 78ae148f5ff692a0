//! A walk of somebody gone through: its report, and its time line with what was known, and where each fault was made and
//! where it showed. It stands beside the walks of this tablet, is not kept here and counts for nobody.

use super::about::who;
use super::inspect::groups;
use super::pins::Pins;
use super::report::sections;
use super::scrub::Scrub;
use crate::app::state::{ContentContext, Shared, Shop, use_shop};
use crate::device::page;
use crate::exchange::WalkFile;
use crate::walk::inspect::inspect;
use crate::walk::report::report;
use crate::walk::{Mode, Walk};
use std::rc::Rc;
use yew::prelude::*;

/// The heading that takes the focus.
const TOP: &str = "walk-looked";

#[derive(Properties)]
pub(in crate::app::pages) struct WalkLookedProps {
    pub(in crate::app::pages) file: Rc<WalkFile>,
}

impl PartialEq for WalkLookedProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.file, &other.file)
    }
}

#[component]
pub(in crate::app::pages) fn WalkLooked(props: &WalkLookedProps) -> Html {
    let shop = use_shop();
    let file = &props.file;
    // Its sheet may be an edition that is not on this tablet.
    let known = use_memo((shop.clone(), Rc::as_ptr(file)), |(shop, _)| {
        ContentContext(Rc::new(file.sheet.known_in(shop.content())))
    });
    let walk =
        use_memo((shop.clone(), Rc::as_ptr(file)), |(shop, _)| file.walked(shop.content()).map(Shared::new));
    use_effect_with((), |()| page::focus(TOP));
    let shop = shop.on((*known).clone());
    let Ok(walk) = walk.as_ref() else { return Html::default() };
    let pins = match (file.is_sealed(), file.mode) {
        (false, _) => Pins::All,
        (true, Mode::Own) => Pins::Showed,
        (true, _) => Pins::Nothing,
    };
    let named = [
        ("name", shop.text(&format!("walk.name.{}", file.walk)).to_string()),
        ("who", who(&shop, &file.who).to_string()),
    ];
    html! {
        <ContextProvider<ContentContext> context={(*known).clone()}>
            <div class="walk-report walk-looked">
                <h2 id={TOP} tabindex="-1">{ shop.say_with("walk-file.looked", &named) }</h2>
                <p key="why" class="note">{ shop.say_with("walk-file.looked-why", &named) }</p>
                <p key="sealed" class="kraft" hidden={!file.is_sealed()}>{ shop.say("walk-file.sealed") }</p>
                { for (!file.is_sealed()).then(|| told(&shop, file, walk)) }
                <Scrub key="scrub" walk={walk.clone()} first=0 {pins} again={None::<Callback<Shared<Walk>>>} />
            </div>
        </ContextProvider<ContentContext>>
    }
}

/// What it came to, and what was found in it where it was somebody else's.
fn told(shop: &Shop, file: &WalkFile, walk: &Shared<Walk>) -> Html {
    let found = if file.mode == Mode::Inspect {
        groups(shop, walk, &inspect(walk, &file.named, shop.content()))
    } else {
        Html::default()
    };
    html! { <>{ found }{ sections(shop, walk, &report(walk, shop.content())) }</> }
}

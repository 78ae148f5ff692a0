//! Addresses of the screens, behind the `#` so that they work from any folder and without a network.

use yew_router::prelude::*;

#[derive(Debug, Clone, PartialEq, Eq, Routable)]
pub(super) enum Route {
    #[at("/")]
    Home,
    #[at("/band/:stage")]
    Band { stage: String },
    #[at("/practise")]
    Practise,
    #[at("/bench")]
    Bench,
    #[at("/bench/:name")]
    Calculation { name: String },
    #[at("/record")]
    Record,
    #[at("/record/:sequence")]
    Entry { sequence: u64 },
    #[at("/sheet")]
    Sheet,
    #[at("/practise/sheet")]
    CardSheet,
    #[at("/menu")]
    Menu,
    #[not_found]
    #[at("/lost")]
    Lost,
}

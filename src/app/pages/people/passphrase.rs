//! A new passphrase, typed twice.

use crate::app::parts::{Field, typed_into};
use crate::app::state::use_shop;
use yew::prelude::*;

/// What was typed, and what is wrong with it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Passphrase {
    pub(super) first: UseStateHandle<String>,
    pub(super) again: UseStateHandle<String>,
    pub(super) wrong: UseStateHandle<(AttrValue, AttrValue)>,
}

#[hook]
pub(super) fn use_passphrase() -> Passphrase {
    Passphrase {
        first: use_state(String::new),
        again: use_state(String::new),
        wrong: use_state(Default::default),
    }
}

impl Passphrase {
    /// The passphrase where it is fit; else says beside it what is wrong.
    pub(super) fn checked(&self, shop: &crate::app::state::Shop) -> Option<String> {
        let wrong = super::made::unfit(shop, &self.first, &self.again);
        let fit = wrong.0.is_empty() && wrong.1.is_empty();
        self.wrong.set(wrong);
        fit.then(|| (*self.first).clone())
    }

    /// Forgets it.
    pub(super) fn clear(&self) {
        self.first.set(String::new());
        self.again.set(String::new());
    }
}

#[derive(Properties, PartialEq)]
pub(super) struct PassphraseProps {
    pub(super) id: &'static str,
    pub(super) label: AttrValue,
    pub(super) of: Passphrase,
}

#[component]
pub(super) fn PassphraseFields(props: &PassphraseProps) -> Html {
    let shop = use_shop();
    let Passphrase { first, again, wrong } = &props.of;
    html! {
        <div class="pair">
            <Field id={props.id} label={props.label.clone()} kind="password" autocomplete="new-password" hint={shop.say("people.passphrase-hint")}
                value={(**first).clone()} on_input={typed_into(first)} wrong={wrong.0.clone()} />
            <Field id={format!("{}-again", props.id)} label={shop.say("people.again")} kind="password" autocomplete="new-password"
                value={(**again).clone()} on_input={typed_into(again)} wrong={wrong.1.clone()} />
        </div>
    }
}
